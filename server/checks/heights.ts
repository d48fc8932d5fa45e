/** Notes that stand oddly high or low: an octave from their neighbours, or far from the stave. */
import { compare, type Time } from '../../grammar/time';
import type { Clef } from '../../grammar/tree';
import { clefText, lineUnder } from '../../grammar/vocabulary/clefs';
import type { NoteMember, VoiceEvent } from '../score/score';
import {
  isParted,
  isSounding,
  type Line,
  melodiesOver,
  membersWhere,
  noteName,
  positionOf,
  type Sounding,
} from './lines';
import { overSystems, problemIn, type View } from './systems';

// ─── against its neighbours ──────────────────────────────────────────────────────────────────────────────────────

const OCTAVE = 7;
/** In steps: a seventh. */
const FAR = 6;
/** In steps: a fourth. */
const NEAR = 3;

/** In steps, where a line goes far from its neighbours and back: an octave up (1) or down (-1) mends it; 0 elsewhere. */
function slipOf(line: Line, index: number): -1 | 0 | 1 {
  const [before, note, after] = [line[index - 1], line[index], line[index + 1]];
  if (before === undefined || note === undefined || after === undefined) return 0;
  const height = positionOf(note.member);
  const [from, to] = [height - positionOf(before.member), height - positionOf(after.member)];
  if (from * to <= 0 || !isOctaveOff(Math.abs(from)) || !isOctaveOff(Math.abs(to))) return 0;
  // Whoever changes the stave goes to the other hand.
  if ([before, after].some(({ member }) => member.stave !== note.member.stave)) return 0;
  return from > 0 ? -1 : 1;
}

/** A leap that an octave makes small. One of plain octaves is an idiom of the bass. */
const isOctaveOff = (leap: number): boolean => leap >= FAR && leap % OCTAVE !== 0 && Math.abs(leap - OCTAVE) <= NEAR;

/** Two lines written as one: the note over the next or the last but one belongs to the other. */
const isOfTwoLines = (line: Line, index: number): boolean =>
  [line[index - 2], line[index + 2]].some(
    (other) =>
      other !== undefined &&
      Math.abs(positionOf(other.member) - positionOf((line[index] as Sounding).member)) <= NEAR + 1,
  );

const isBetweenStrains = (view: View, line: Line, index: number): boolean => {
  const [before, after] = [line[index - 1], line[index + 1]];
  return before === undefined || after === undefined || isParted(view, before.at, after.at);
};

export const octaveSlips = overSystems('octave-slip', (view) =>
  melodiesOver(view).flatMap((line) =>
    line.flatMap((note, index) => {
      const by = slipOf(line, index);
      // The last note of a system is judged with the next.
      if (by === 0 || line[index + 1]?.at.system !== 0 || isOfTwoLines(line, index)) return [];
      if (isBetweenStrains(view, line, index)) return [];
      const { member } = note;
      const slots = {
        voice: view.facts.voices[note.voice] ?? '',
        note: noteName(member),
        meant: noteName({ ...member, octave: member.octave + by }),
      };
      const { system } = note.at;
      return [problemIn({ code: 'octave-slip', at: member.source, system, slots, bars: [note.at, note.at] })];
    }),
  ),
);

// ─── against its stave ───────────────────────────────────────────────────────────────────────────────────────────

/** More than these are seldom written. */
const MOST_LEDGER_LINES = 4;

/** Tells the clef of a stave at a moment. */
function clefsIn({ score, before }: View): (stave: number, onset: Time) => Clef | undefined {
  const changes = score.changes.filter(({ clefs }) => clefs !== undefined);
  return (stave, onset) => {
    const last = changes.findLast((one) => one.stave === stave && compare(one.onset, onset) <= 0);
    return (last?.clefs ?? before?.carryOut.clefs[stave])?.[0];
  };
}

/** Lines beyond the stave that a note needs. */
function ledgerLines(member: NoteMember, clef: Clef, lines: number): number {
  const position = positionOf(member);
  const [bottom, top] = [lineUnder(clef, 1), lineUnder(clef, lines)];
  return Math.max(0, Math.floor((position - top) / 2), Math.floor((bottom - position) / 2));
}

export const farFromStave = overSystems('ledger-lines', (view) => {
  const clefAt = clefsIn(view);
  const linesFor = (member: NoteMember, { onset }: VoiceEvent): number => {
    const clef = clefAt(member.stave, onset);
    return clef === undefined ? 0 : ledgerLines(member, clef, view.facts.staves[member.stave]?.lines ?? 0);
  };
  const isFar = (member: NoteMember, event: VoiceEvent): boolean =>
    !member.tiedFrom && isSounding(event) && linesFor(member, event) > MOST_LEDGER_LINES;
  return membersWhere(view.score, isFar).map(({ voice, event, member }) => {
    const clef = clefAt(member.stave, event.onset);
    const slots = {
      voice: view.facts.voices[voice.voice] ?? '',
      note: noteName(member),
      count: linesFor(member, event),
      clef: clef === undefined ? '' : clefText(clef),
      stave: view.facts.staves[member.stave]?.name ?? '',
    };
    return problemIn({ code: 'ledger-lines', at: member.source, slots, bar: event.bar });
  });
});
