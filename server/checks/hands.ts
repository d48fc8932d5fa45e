/**
 * What two hands cannot reach together with ease (common practice): more than a ninth of keys, or more notes than a hand has
 * fingers.
 *
 * At each moment the best division of all that sounds between the hands is looked for; where one will do, nothing is said. A
 * signed arpeggio reaches an eleventh. What counts is where a key lies: on a short octave a tenth may be an octave of keys.
 * Tenths fit some hands and not others: they are told once a piece, with their bars; what is wider is told at its place.
 */
import { keeping } from '../../grammar/keeping';
import { type Instrument, keyFor, namesInstrument } from '../instrument/instrument';
import { barsInWords } from '../score/barsInWords';
import type { Environment } from '../score/environment';
import type { Piece, PlacedProblem } from '../score/score';
import { check } from './check';
import type { Passage } from './lines';
import { momentsOf } from './moments';
import { noteName } from './pitches';
import type { Sounding } from './sounding';
import {
  type Facts,
  type Found,
  factsOf,
  inPiece,
  keepingLooks,
  type Look,
  problemIn,
  type SystemProblem,
} from './systems';

/**
 * White keys from the first to the last: a ninth, a tenth and an eleventh, each with the half key more that it has where one
 * end of it is a sharp.
 */
const REACH = 8.5;
const TENTH = 9.5;
const SPREAD_REACH = 10.5;
const FINGERS = 5;

/** Where the keys of an octave lie, in white keys. */
const LIE = [0, 0.5, 1, 1.5, 2, 3, 3.5, 4, 4.5, 5, 5.5, 6];

/** Where a key lies, in white keys from the left. */
export const lieOf = (key: number): number => 7 * Math.floor(key / 12) + (LIE[key % 12] ?? 0);

/** By what a note sounds: where its key lies; a note without a key lies where it would. */
const liesOn = keeping((instrument: Instrument): readonly number[] =>
  Array.from({ length: 128 }, (_, midi) => lieOf(keyFor(instrument, midi)?.lies ?? midi)),
);

interface Placed {
  readonly note: Sounding;
  readonly lies: number;
}

interface Hand {
  readonly name: 'left' | 'right';
  /** From the left. */
  readonly notes: readonly Placed[];
}

/** Where the notes of a hand lie, from the left. */
interface Held {
  readonly notes: readonly { readonly lies: number }[];
}

const spanOf = ({ notes }: Held): number => (notes.at(-1)?.lies ?? 0) - (notes[0]?.lies ?? 0);

/** How far beyond what a hand can do; a note too many is worse than any stretch. */
export const strainOf = (hand: Held, reach = REACH): number =>
  Math.max(0, spanOf(hand) - reach) + 100 * Math.max(0, hand.notes.length - FINGERS);

interface Division {
  readonly worse: Hand;
  readonly strain: number;
}

const divided = (left: readonly Placed[], right: readonly Placed[], reach: number): Division => {
  const hands: readonly Hand[] = [
    { name: 'left', notes: left },
    { name: 'right', notes: right },
  ];
  const strains = hands.map((hand) => strainOf(hand, reach));
  const strain = Math.max(...strains);
  return { worse: hands[strains.indexOf(strain)] as Hand, strain };
};

/**
 * The division that strains least. It is always one by height: hands that cross, on one manual or two, span no less than if
 * they changed their notes about.
 */
function bestDivision(notes: readonly Placed[], reach: number): Division {
  let best = divided(notes, [], reach);
  for (let count = 0; count < notes.length && best.strain > 0; count++) {
    const one = divided(notes.slice(0, count), notes.slice(count), reach);
    if (one.strain < best.strain) best = one;
  }
  return best;
}

/** Each key once, from the left: two voices on one key are one finger. */
function placedKeys(sounding: readonly Sounding[], lies: readonly number[]): readonly Placed[] {
  const placed = sounding.map((note) => ({ note, lies: lies[note.midi] ?? 0 })).sort((a, b) => a.lies - b.lies);
  return placed.filter((one, index) => one.note.midi !== placed[index - 1]?.note.midi);
}

/** Signs that every table reads as a broken chord. */
const SPREADING: ReadonlySet<string> = new Set(['arp', 'arpu', 'arpd', 'scu', 'scd', 'scs']);

const isSpread = ({ event }: Sounding): boolean =>
  event.members.some(({ marks }) => marks.some(({ shapes }) => shapes.some((shape) => SPREADING.has(shape))));

// ─── telling ─────────────────────────────────────────────────────────────────────────────────────────────────────

const NAMES = ['unison', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'octave', 'ninth', 'tenth'];
const MORE = ['eleventh', 'twelfth', 'thirteenth', 'fourteenth', 'fifteenth'];
const INTERVALS = [...NAMES, ...MORE];

/** "a tenth", "an eleventh"; of two octaves and more their steps. */
function intervalName(steps: number): string {
  const name = INTERVALS[steps];
  if (name === undefined) return `${steps} steps`;
  return `${/^[aeio]/.test(name) ? 'an' : 'a'} ${name}`;
}

function told({ worse }: Division, at: Sounding): SystemProblem {
  const { notes, name: hand } = worse;
  const bar = at.bar.bar;
  if (notes.length > FINGERS)
    return problemIn({ code: 'hand-full', at: at.member.source, bar, slots: { hand, count: notes.length } });
  const [low, high] = [notes[0] as Placed, notes.at(-1) as Placed];
  const ends = { hand, low: noteName(low.note.member), high: noteName(high.note.member) };
  if (high.lies - low.lies <= TENTH) return problemIn({ code: 'hand-tenth', at: at.member.source, bar, slots: ends });
  const steps = high.note.step - low.note.step;
  const keys = Math.round(high.lies - low.lies);
  // A half is a sharp: only a whole step or more is a short octave’s doing.
  const onKeys = Math.abs(high.lies - low.lies - steps) < 1 ? '' : `, ${intervalName(keys)} on the keys`;
  const slots = { ...ends, interval: `${intervalName(steps)}${onKeys}` };
  return problemIn({ code: 'hand-stretch', at: at.member.source, bar, slots });
}

/** Chords of one passage that are too wide, each where it is struck first. */
function stretches(passage: Passage, lies: readonly number[], hasPedal: boolean): SystemProblem[] {
  const found: SystemProblem[] = [];
  // A chord that comes back in the system is told once, a tenth in each of its bars.
  const known = new Set<string>();
  for (const { at, sounding } of momentsOf(passage)) {
    if (sounding.length < 3) continue;
    const all = placedKeys(sounding, lies);
    const notes = hasPedal ? all.slice(1) : all;
    if ((notes.at(-1)?.lies ?? 0) - (notes[0]?.lies ?? 0) <= REACH && notes.length <= FINGERS) continue;
    const reach = sounding.some(isSpread) ? SPREAD_REACH : REACH;
    const division = bestDivision(notes, reach);
    const struck = division.worse.notes.find(({ note }) => note.onset === at)?.note;
    if (division.strain === 0 || struck === undefined || !struck.bar.own) continue;
    const problem = told(division, struck);
    const { code, slots } = problem.problem;
    const chord = JSON.stringify([slots, code === 'hand-tenth' ? problem.bar : undefined]);
    if (!known.has(chord)) found.push(problem);
    known.add(chord);
  }
  return found;
}

/** Where no compass is stated. */
const EVERY_KEY = Array.from({ length: 128 }, (_, midi) => lieOf(midi));

const look: Look = ({ score, passages, facts }) => {
  const { instrument, isNamed, hasPedal } = facts.keyboard;
  if (!isNamed || score.kind === 'free') return [];
  const lies = instrument === undefined ? EVERY_KEY : liesOn(instrument);
  return passages.flatMap((passage) => stretches(passage, lies, hasPedal));
};

/** What is found in a system; undefined where the file names no instrument. */
const foundInSystem = keepingLooks([look]);
export const handsIn = (environment: Environment): Found | undefined =>
  namesInstrument(environment) ? foundInSystem : undefined;

// ─── a piece ─────────────────────────────────────────────────────────────────────────────────────────────────────

/** The tenths of one hand in a piece. */
interface Tenths {
  readonly first: PlacedProblem;
  /** By their indices in the piece. */
  readonly bars: Set<number>;
}

/** What is wider than a tenth each at its place, tenths of a hand together where the first of them stands. */
function gathered(piece: Piece, facts: Facts): readonly PlacedProblem[] {
  const tenths = new Map<unknown, Tenths>();
  const told = piece.systems.flatMap(({ score, firstBar }, index) =>
    foundInSystem(score, piece.systems[index - 1]?.score, undefined, facts).flatMap((problem) => {
      const placed = inPiece(problem, piece, index);
      const { code, slots } = placed.problem;
      if (code !== 'hand-tenth') return [placed];
      const known = tenths.get(slots.hand) ?? { first: placed, bars: new Set() };
      tenths.set(slots.hand, known);
      known.bars.add(firstBar + (problem.bar ?? 0));
      return [];
    }),
  );
  return [...told, ...[...tenths.values()].map((one) => inBars(one, piece))];
}

function inBars({ first, bars }: Tenths, piece: Piece): PlacedProblem {
  const slots = { ...first.problem.slots, bars: barsInWords(bars, piece.bars) };
  return { ...first, problem: { ...first.problem, slots } };
}

export const handStretches = check('hands', ['environment', 'score'], ({ environment, score }) => {
  if (handsIn(environment) === undefined) return [];
  const facts = factsOf(environment, score.choice);
  return score.pieces.flatMap((piece) => gathered(piece, facts));
});
