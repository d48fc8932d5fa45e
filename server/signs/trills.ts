/** How many strokes a trill has and how long they are: lean, strokes, stop and suffix share the time of the note. */
import { compare, divide, isNegative, multiply, subtract, type Time, time, toNumber, ZERO } from '../../grammar/time';
import type { RecipePhrase } from '../../grammar/tree';
import { type Atom, isFixed, isMain, MAIN, type Slice, type Step, sumOf, withinNote } from './atoms';
import { evenPart, isTooQuick, onGrid, type Place, STROKES, seconds, share, speedOf } from './place';

/** Seconds: a shorter note is played plain; has two strokes; has four. Common practice. */
const LEAST = { two: 0.16, four: 0.3, many: 0.45 } as const;
/** The first stroke of a slow start to the last; full from the one, nothing below the other, in seconds. */
const SLOW_START = { ratio: 1.6, full: 0.8, none: 0.4 } as const;

/** A trill: what is repeated, and the notes before and after it. */
export interface Trill {
  readonly lead: readonly Atom[];
  readonly cycle: RecipePhrase;
  readonly tail: readonly Atom[];
}

/** The slices of a trill that fill a note; undefined where the note is too short for any, or for the speed that is stated. */
export function trill(stated: Trill, place: Place): readonly Slice[] | undefined {
  const speed = strokeOf(stated.cycle, place);
  if (seconds(place) < LEAST.two || (speed !== undefined && isTooQuick(place, speed))) return undefined;
  const few = twoStrokes(stated, place);
  if (place.upbeat || seconds(place) < LEAST.four) return few;
  const many = allStrokes(place.cadential ? leaning(stated) : stated, place);
  return many?.some(({ length }) => isTooQuick(place, length)) === true ? few : many;
}

/** The trill with its first note, if that is another than the main note, leaned on. */
function leaning(whole: Trill): Trill {
  const { lead, cycle, tail } = whole;
  const [first, ...others] = cycle.steps;
  if (first === undefined || lead.length > 0 || isMain(first) || cycle.share !== undefined) return whole;
  return {
    lead: [{ step: first, length: 'lean' }],
    cycle: { ...cycle, steps: [...others, first] },
    tail: tail.length === 0 ? [{ step: MAIN, length: 'open' }] : [{ step: MAIN, length: 'quick' }, ...tail],
  };
}

function allStrokes(whole: Trill, place: Place): Slice[] | undefined {
  const { cycle } = whole;
  const brief = seconds(place) < LEAST.many;
  const ways = brief ? [{ lean: ZERO, stop: ZERO }] : waysToShare(place);
  const sized = ways.map(({ lean, stop }) => withLengths(whole, lean, stop, place));
  const roomy = sized.find((one) => strokesIn(one, roomOf(one, place), place) >= quickIn(one) + cycle.steps.length);
  const chosen = roomy ?? sized.at(-1);
  return chosen && strokesOf(chosen, place, brief);
}

/** The note that is beaten and the main note, without the beginning of the sign; from the main note three. */
function twoStrokes({ lead, cycle, tail }: Trill, place: Place): Slice[] | undefined {
  const beaten = cycle.steps.find((step) => !isMain(step));
  const first =
    beaten ?? [...lead, ...tail].map(({ step }) => step).find((step) => step !== undefined && !isMain(step));
  const fromMain = isMain(lead.length > 0 ? lead[0]?.step : cycle.steps[0]) || place.tied;
  const played = fromMain ? [MAIN, first, MAIN] : [first, MAIN];
  const each = evenPart(place.length, played.length, place);
  const strokes = played.map((step) => ({ step, length: each }));
  return isTooQuick(place, each) ? undefined : toTheEnd(strokes, place);
}

/** Lean and stop by rule; where that leaves no strokes, without the stop, then without both. */
function waysToShare(place: Place): { readonly lean: Time; readonly stop: Time }[] {
  const lean = onGrid(place, share(place.length, 1, place.slow ? 2 : 4));
  const stop = onGrid(place, place.stop);
  return [
    { lean, stop },
    { lean, stop: ZERO },
    { lean: ZERO, stop: ZERO },
  ];
}

const setTo = (atoms: readonly Atom[], kind: 'lean' | 'open', length: Time): Atom[] =>
  atoms.map((atom) => {
    if (atom.length !== kind) return atom;
    return { step: atom.step, length: toNumber(length) === 0 ? 'quick' : length };
  });

/** The trill with its lean and stop as long as said; one of no time is a stroke, if the main note needs one. */
function withLengths({ lead, cycle, tail }: Trill, lean: Time, stop: Time, place: Place): Trill {
  const endsOnMain = isMain(cycle.steps.at(-1));
  const noStop = toNumber(stop) === 0 && endsOnMain;
  const rest = noStop ? tail.filter(({ length }) => length !== 'open') : tail;
  const around = withinNote([...setTo(lead, 'lean', lean), ...setTo(setTo(rest, 'lean', lean), 'open', stop)], place);
  return { lead: around.slice(0, lead.length), cycle, tail: around.slice(lead.length) };
}

const quickIn = ({ lead, tail }: Trill): number => [...lead, ...tail].filter(({ length }) => length === 'quick').length;

const ownShare = ({ cycle }: Trill, place: Place): Time | undefined =>
  cycle.share && onGrid(place, share(place.length, cycle.share.n, cycle.share.d));

/** What is left for strokes: those of the repetition, and, unless it says for how long it lasts, the quick ones around it. */
function roomOf(whole: Trill, place: Place): Time {
  const fixed = sumOf([...whole.lead, ...whole.tail].filter(isFixed).map(({ length }) => length));
  const room = ownShare(whole, place) ?? subtract(place.length, fixed);
  return isNegative(room) ? ZERO : room;
}

/** How many strokes fit into a room at the speed of the recipe, or the usual one; in print, of the smallest value. */
function strokesIn({ cycle }: Trill, room: Time, place: Place): number {
  const stroke = strokeOf(cycle, place);
  return stroke === undefined
    ? Math.floor(seconds(place, room) * place.strokes)
    : Math.floor(toNumber(divide(room, stroke)));
}

/** The length of a stroke where it is not the usual one. */
const strokeOf = ({ speed }: RecipePhrase, place: Place): Time | undefined =>
  speed?.kind === 'value' || place.grid === undefined ? speed && speedOf(speed, place.clock) : place.grid;

function strokesOf(whole: Trill, place: Place, brief: boolean): Slice[] {
  const room = roomOf(whole, place);
  const around = ownShare(whole, place) === undefined ? quickIn(whole) : 0;
  const each = whole.cycle.steps.length;
  const fitting = brief ? 4 : strokesIn(whole, room, place);
  const cycles = cyclesIn(whole, room, fitting - around, around, place);
  const count = cycles * each;
  const stroke = strokeLength(whole, room, count + around, place);
  const beaten = lengthsOf(whole, stroke, count, place);
  const steps = Array.from({ length: count }, (_, i): Step | undefined => whole.cycle.steps[i % each]);
  const slices = [
    ...sliced(whole.lead, stroke),
    ...steps.map((step, i) => ({ step, length: beaten[i] ?? stroke })),
    ...sliced(whole.tail, around === 0 ? lastLength(whole, place, multiply(stroke, time(count))) : stroke),
  ];
  return toTheEnd(slices, place);
}

/**
 * How often the repetition fits; once more where its strokes would else be slower than those of slow movements, and are then
 * no quicker than those of gay ones.
 */
function cyclesIn({ cycle }: Trill, room: Time, fitting: number, around: number, place: Place): number {
  const each = cycle.steps.length;
  const fewer = Math.max(1, Math.floor(fitting / each));
  const speedOf = (cycles: number): number => (cycles * each + around) / seconds(place, room);
  const isUsual = cycle.speed === undefined && place.grid === undefined;
  return isUsual && speedOf(fewer) < STROKES.slow && speedOf(fewer + 1) <= STROKES.gay ? fewer + 1 : fewer;
}

/** In performance strokes fill their room; values, written or of print, leave what is left over to the last note. */
function strokeLength({ cycle }: Trill, room: Time, count: number, place: Place): Time {
  const even = divide(room, time(count));
  const isValue = cycle.speed?.kind === 'value';
  let exact = isValue && cycle.speed !== undefined ? speedOf(cycle.speed, place.clock) : place.grid;
  if (exact === undefined || compare(exact, even) > 0) return evenPart(room, count, place);
  while (!isValue && compare(multiply(exact, time(2)), even) <= 0) exact = multiply(exact, time(2));
  return exact;
}

/** After a repetition that says for how long it lasts the other notes share what is left. */
function lastLength(whole: Trill, place: Place, beaten: Time): Time {
  const fixed = sumOf([...whole.lead, ...whole.tail].filter(isFixed).map(({ length }) => length));
  const left = subtract(place.length, sumOf([fixed, beaten]));
  return quickIn(whole) === 0 ? ZERO : divide(left, time(quickIn(whole)));
}

const sliced = (atoms: readonly Atom[], stroke: Time): Slice[] =>
  atoms.map((atom) => (isFixed(atom) ? atom : { step: atom.step, length: stroke }));

/** The last note takes what is left, so that time is conserved. */
function toTheEnd(slices: readonly Slice[], { length }: Place): Slice[] {
  const last = slices.at(-1);
  const left = subtract(length, sumOf(slices.map((slice) => slice.length)));
  return last === undefined ? [] : [...slices.slice(0, -1), { step: last.step, length: sumOf([last.length, left]) }];
}

/** Even strokes; by the rule of some tables those of a long trill begin slowly. Their sum is the same. */
function lengthsOf({ cycle }: Trill, stroke: Time, count: number, place: Place): readonly Time[] {
  const grown = (seconds(place) - SLOW_START.none) / (SLOW_START.full - SLOW_START.none);
  const ratio = 1 + (SLOW_START.ratio - 1) * Math.min(1, Math.max(0, grown));
  const isTrill = cycle.steps.some(({ step }) => step > 0);
  if (!isTrill || !place.slowStart || place.grid !== undefined || ratio === 1) return Array<Time>(count).fill(stroke);
  // Whole weights keep the fractions small.
  const weights = Array.from({ length: count }, (_, i) => Math.round(20 * ratio ** (1 - i / Math.max(1, count - 1))));
  const whole = multiply(stroke, time(count));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => multiply(whole, time(weight, total)));
}
