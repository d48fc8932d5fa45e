/**
 * Bars that equal an earlier one but for a single note: the repetition may be the composer's, and one of the two a slip.
 *
 * Each system keeps the prints of its bars; the search goes over prints alone.
 */
import { format, subtract } from '../../grammar/time';
import type { NoteMember, Piece, PlacedProblem, SystemScore, VoiceEvent } from '../score/score';
import { check, problemAt } from './check';
import { eventNumber, noteName, positionOf } from './lines';

interface PrintedNote {
  readonly event: VoiceEvent;
  readonly member: NoteMember;
  /** Says letter, octave and alteration in one number. */
  readonly pitch: number;
}

/** A bar as values and rests, and apart from them its notes in order. */
interface Print {
  readonly skeleton: string;
  readonly notes: readonly PrintedNote[];
}

/** A bar with fewer notes is too short for likeness to mean anything. */
const FEWEST_NOTES = 6;
/** In how many earlier bars of the same values a likeness is looked for. */
const FARTHEST = 100;

const pitchOf = (member: NoteMember): number => positionOf(member) * 5 + member.alteration + 2;

function printOf({ bars, voices }: SystemScore, index: number): Print | undefined {
  const bar = bars[index];
  // A bar on two systems is compared in neither half.
  if (bar === undefined || bar.continues || bar.closing === undefined || bar.broken) return undefined;
  const notes: PrintedNote[] = [];
  const skeleton: string[] = [];
  for (const { voice, events } of voices) {
    for (const event of events) {
      if (event.bar !== index) continue;
      const onset = format(subtract(event.onset, bar.onset));
      skeleton.push(`${voice} ${onset} ${format(event.duration)} ${event.kind} ${event.members.length}`);
      for (const member of event.members) notes.push({ event, member, pitch: pitchOf(member) });
    }
  }
  return notes.length < FEWEST_NOTES ? undefined : { skeleton: skeleton.join(';'), notes };
}

const kept = new WeakMap<SystemScore, readonly (Print | undefined)[]>();

function printsOf(score: SystemScore): readonly (Print | undefined)[] {
  const known = kept.get(score);
  if (known !== undefined) return known;
  const prints = score.kind === 'measured' ? score.bars.map((_, index) => printOf(score, index)) : [];
  kept.set(score, prints);
  return prints;
}

interface PlacedPrint extends Print {
  /** Index in the piece's bars. */
  readonly bar: number;
  readonly block: number;
}

/** The one note in which two bars of the same values differ: its index; -1 if none does, undefined if several do. */
function onlyDifference(a: Print, b: Print): number | undefined {
  let found = -1;
  for (const [index, note] of a.notes.entries()) {
    if (note.pitch === b.notes[index]?.pitch) continue;
    if (found >= 0) return undefined;
    found = index;
  }
  return found;
}

/** In steps: what a slip of the pen is wide, at most a third, or an octave. */
const isSlip = (a: NoteMember, b: NoteMember): boolean => {
  const steps = Math.abs(positionOf(a) - positionOf(b));
  return steps <= 2 || steps === 7;
};

interface Likeness {
  readonly earlier: PlacedPrint;
  readonly note: number;
}

/** The nearest earlier bar that differs in one note, if no earlier one is the same throughout. */
function likenessOf(print: PlacedPrint, earlier: readonly PlacedPrint[]): Likeness | undefined {
  let found: Likeness | undefined;
  for (let index = earlier.length - 1; index >= Math.max(0, earlier.length - FARTHEST); index--) {
    const other = earlier[index];
    if (other === undefined) break;
    const note = onlyDifference(print, other);
    if (note === -1) return undefined;
    // A figure that moves on from bar to bar changes one note at a time.
    if (found === undefined && note !== undefined && print.bar - other.bar > 1) found = { earlier: other, note };
  }
  return found;
}

function placedPrints({ systems }: Piece): PlacedPrint[] {
  return systems.flatMap(({ score, firstBar, block }) =>
    printsOf(score).flatMap((print, index) =>
      print === undefined ? [] : [{ ...print, bar: firstBar + index, block }],
    ),
  );
}

function nearRepeats(piece: Piece, voiceName: (voice: number) => string): PlacedProblem[] {
  const bySkeleton = new Map<string, PlacedPrint[]>();
  return placedPrints(piece).flatMap((print) => {
    const earlier = bySkeleton.get(print.skeleton) ?? [];
    const like = likenessOf(print, earlier);
    bySkeleton.set(print.skeleton, earlier);
    earlier.push(print);
    const [here, there] = [print.notes[like?.note ?? -1], like?.earlier.notes[like.note]];
    if (like === undefined || here === undefined || there === undefined || !isSlip(here.member, there.member))
      return [];
    const slots = {
      bar: piece.bars[print.bar]?.number ?? '',
      earlier: piece.bars[like.earlier.bar]?.number ?? '',
      voice: voiceName(here.event.voice),
      event: eventNumber(here.event),
      here: noteName(here.member),
      there: noteName(there.member),
    };
    const problem = problemAt('bar-nearly-repeats', { ...here.member.source, block: print.block }, slots);
    const source = { ...there.member.source, block: like.earlier.block };
    return [{ ...problem, related: [{ message: `${slots.there} in bar ${slots.earlier}`, source }] }];
  });
}

export const nearlyRepeated = check('bar-nearly-repeats', ['score', 'environment'], ({ score, environment }) =>
  // Witnesses differ in single notes by their nature.
  score.choice.name === 'written'
    ? score.pieces.flatMap((piece) => nearRepeats(piece, (voice) => environment.voices[voice]?.name ?? ''))
    : [],
);
