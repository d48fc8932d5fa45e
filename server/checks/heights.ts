/** Notes that stand oddly high or low: an octave from their neighbours, or far from the stave. */
import { compare, type Time } from '../../grammar/time';
import type { Clef } from '../../grammar/tree';
import { clefText, lineUnder } from '../../grammar/vocabulary/clefs';
import { HIGHEST_OCTAVE } from '../../grammar/vocabulary/pitches';
import { degreeOf } from '../score/heights';
import type { NoteMember, VoiceEvent } from '../score/score';
import { OCTAVE, type Passage } from './lines';
import { noteName } from './pitches';
import { isSounding, type Line, membersWhere, type Sounding, type Struck, surveyOf } from './sounding';
import { alongPassages, type Facts, type Look, problemIn, type SystemProblem, type View } from './systems';

// ─── against its neighbours ──────────────────────────────────────────────────────────────────────────────────────

/** In steps: a seventh. */
const FAR = 6;
/** In steps: a fourth. */
const NEAR = 3;

/** In steps, where a line goes far from its neighbours and back: an octave up (1) or down (-1) mends it; 0 elsewhere. */
function slipOf(before: Sounding, note: Sounding, after: Sounding): -1 | 0 | 1 {
  const [from, to] = [note.step - before.step, note.step - after.step];
  if (from * to <= 0 || !isOctaveOff(Math.abs(from)) || !isOctaveOff(Math.abs(to))) return 0;
  // Whoever changes the stave goes to the other hand.
  const { stave } = note.member;
  if (before.member.stave !== stave || after.member.stave !== stave) return 0;
  return from > 0 ? -1 : 1;
}

/** A leap that an octave makes small. One of plain octaves is an idiom of the bass. */
const isOctaveOff = (leap: number): boolean => leap >= FAR && leap % OCTAVE !== 0 && Math.abs(leap - OCTAVE) <= NEAR;

/** Two lines written as one: the note over the next or the last but one belongs to the other. */
const isOfTwoLines = (line: Line, index: number): boolean =>
  [line[index - 2], line[index + 2]].some(
    (other) => other !== undefined && Math.abs(other.step - (line[index] as Sounding).step) <= NEAR + 1,
  );

function findSlips(line: Line, { voices }: Facts, found: SystemProblem[]): void {
  for (let index = 1; index + 1 < line.length; index++) {
    const [before, note, after] = [line[index - 1], line[index], line[index + 1]] as [Sounding, Sounding, Sounding];
    const by = slipOf(before, note, after);
    // The last note of a system is judged with the next.
    if (by === 0 || !after.bar.own || before.bar.strain !== after.bar.strain || isOfTwoLines(line, index)) continue;
    const { member, bar } = note;
    const slots = {
      voice: voices[note.voice] ?? '',
      note: noteName(member),
      meant: noteName({ ...member, octave: member.octave + by }),
    };
    const { system } = bar;
    found.push(problemIn({ code: 'octave-slip', at: member.source, system, slots, bars: [bar, bar] }));
  }
}

export const octaveSlips: Look = alongPassages(({ melodies }: Passage, facts) => {
  const found: SystemProblem[] = [];
  for (const line of melodies) findSlips(line, facts, found);
  return found;
});

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

/** Lines beyond the stave that a note at a position needs. */
function ledgerLines(position: number, clef: Clef, lines: number): number {
  const [bottom, top] = [lineUnder(clef, 1), lineUnder(clef, lines)];
  return Math.max(0, Math.floor((position - top) / 2), Math.floor((bottom - position) / 2));
}

/** Whether the highest or lowest note of a stave is far from it under any clef that it bears meanwhile. */
function mayBeFar({ score, before, facts }: View): boolean {
  return surveyOf(score).heights.some((heights, stave) => {
    if (heights === undefined) return false;
    const changes = score.changes.filter((one) => one.stave === stave).map(({ clefs }) => clefs?.[0]);
    const lines = facts.staves[stave]?.lines ?? 0;
    return [before?.carryOut.clefs[stave]?.[0], ...changes].some(
      (clef) =>
        clef !== undefined &&
        Math.max(ledgerLines(heights.low, clef, lines), ledgerLines(heights.high, clef, lines)) > MOST_LEDGER_LINES,
    );
  });
}

type Run = readonly [Struck, ...Struck[]];

/** Of notes those together that follow one another on one stave. */
function runsOf(all: readonly Struck[]): readonly Run[] {
  const runs: [Struck, ...Struck[]][] = [];
  for (const one of all) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    const goesOn = last?.voice === one.voice && one.index - last.index <= 1 && last.member.stave === one.member.stave;
    if (goesOn) run?.push(one);
    else runs.push([one]);
  }
  return runs;
}

export const farFromStave: Look = (view) => {
  if (!mayBeFar(view)) return [];
  const clefAt = clefsIn(view);
  const linesFor = (member: NoteMember, { onset }: VoiceEvent): number => {
    const clef = clefAt(member.stave, onset);
    const lines = view.facts.staves[member.stave]?.lines ?? 0;
    return clef === undefined ? 0 : ledgerLines(degreeOf(member), clef, lines);
  };
  const isFar = (member: NoteMember, event: VoiceEvent): boolean =>
    // An octave that no keyboard has is told where it is typed.
    !member.tiedFrom &&
    member.octave <= HIGHEST_OCTAVE &&
    isSounding(event) &&
    linesFor(member, event) > MOST_LEDGER_LINES;
  return runsOf(membersWhere(view.score, isFar)).map(([{ voice, event, member }, ...after]) => {
    const clef = clefAt(member.stave, event.onset);
    const slots = {
      more:
        after.length === 0
          ? ''
          : `, and so ${after.length === 1 ? 'does the note' : `do ${after.length} notes`} after it`,
      voice: view.facts.voices[voice.voice] ?? '',
      note: noteName(member),
      count: linesFor(member, event),
      clef: clef === undefined ? '' : clefText(clef),
      stave: view.facts.staves[member.stave]?.name ?? '',
    };
    return problemIn({ code: 'ledger-lines', at: member.source, slots, bar: event.bar });
  });
};
