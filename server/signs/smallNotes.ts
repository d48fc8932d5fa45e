/** Small notes: which note each belongs to, and how much of its time they take. */
import { putUnder } from '../../grammar/lists';
import { add, compare, divide, earliest, isZero, multiply, subtract, type Time, time } from '../../grammar/time';
import { type Clock, endOf, partOf } from '../score/clock';
import type { PerformedEvent, SoundingPitch } from '../score/performance';
import { appoggiaturaOf, isHarmful, isPassing, type Leaning } from './appoggiatura';
import { degreeOf } from './degrees';
import type { Moment, Passage } from './passage';
import type { Piece, Pieces } from './pieces';
import { evenPart, type Place, shareOnGrid } from './place';
import type { PlayedTable } from './rows';

/** Seconds that each of several small notes lasts at most; together no more than half of their note. Common practice. */
const EACH = 0.09;

export interface SmallGroup {
  readonly notes: readonly PerformedEvent[];
  /** The main note: of a chord the one nearest to the last small note. */
  readonly main: PerformedEvent;
  readonly after: boolean;
}

/** The small notes of a piece by the note that they belong to. */
export function smallGroups(passage: Passage): SmallGroup[] {
  const { events } = passage.performed;
  if (!events.some(({ small }) => small)) return [];
  const groups: Waiting[] = [];
  const lastOf = new Map<number, PerformedEvent>();
  const waiting = new Map<number, Waiting[]>();
  for (const event of events) {
    const { small } = event.from[0].placed.event;
    if (small === undefined) {
      lastOf.set(event.voice, event);
      for (const group of waiting.get(event.voice) ?? []) group.beside = event;
      waiting.delete(event.voice);
    } else {
      const after = small.to === 'previous';
      const last = groups.findLast(({ notes: [note] }) => note?.voice === event.voice);
      if (last !== undefined && isOneGroup(last.notes[0], event)) last.notes.push(event);
      else {
        const group = { notes: [event], beside: after ? lastOf.get(event.voice) : undefined, after };
        groups.push(group);
        if (!after) putUnder(waiting, event.voice, group);
      }
    }
  }
  return groups.flatMap(({ notes, beside, after }) => {
    const main = beside && mainNote(passage.momentOf(beside), notes.at(-1)?.pitch);
    return main === undefined ? [] : [{ notes, main, after }];
  });
}

/** Small notes whose main note is still to be found. */
interface Waiting {
  readonly notes: PerformedEvent[];
  beside: PerformedEvent | undefined;
  readonly after: boolean;
}

function isOneGroup(first: PerformedEvent | undefined, event: PerformedEvent): boolean {
  const [a, b] = [first?.from[0].placed, event.from[0].placed];
  return a?.system === b.system && a.event.small?.group === b.event.small?.group;
}

function mainNote(moment: Moment | undefined, small: SoundingPitch | undefined): PerformedEvent | undefined {
  const distance = ({ pitch }: PerformedEvent): number =>
    pitch === undefined || small === undefined ? Infinity : Math.abs(degreeOf(pitch) - degreeOf(small));
  const notes = (moment?.events ?? []).filter(({ kind }) => kind === 'note');
  return notes.reduce<PerformedEvent | undefined>(
    (best, note) => (best === undefined || distance(note) < distance(best) ? note : best),
    undefined,
  );
}

export interface SmallContext {
  readonly passage: Passage;
  readonly pieces: Pieces;
  readonly table: PlayedTable;
  readonly clock: Clock;
  readonly grid: Place['grid'];
}

/** Gives small notes their time: of the note after them, of the note before, or, of appoggiaturas, by their rule. */
export function playSmall(group: SmallGroup, context: SmallContext): void {
  const [only] = group.notes;
  if (group.after) playAtEnd(group, context);
  else if (group.notes.length === 1 && only !== undefined) playAppoggiatura(group, only, context);
  else playBefore(group, lengthOfEach(group.notes.length, group.main.duration, context), context);
}

const realisedBy = ({ table }: SmallContext): Piece['realised'] => ({ sign: 'small', table: table.name, row: '' });

const lengthOfEach = (count: number, among: Time, { clock, grid }: SmallContext): Time =>
  grid === undefined ? partOf(clock, among, EACH, 2 * count) : earliest(grid, evenPart(among, 2 * count, { grid }));

/** On the beat, one after another; the main note has the rest. */
function playBefore({ notes, main }: SmallGroup, each: Time, context: SmallContext): void {
  const realised = realisedBy(context);
  notes.forEach((note, index) => {
    const onset = add(main.onset, multiply(each, time(index)));
    context.pieces.set(note, [{ pitch: note.pitch, onset, duration: each, realised }]);
  });
  context.pieces.begin(main, add(main.onset, multiply(each, time(notes.length))), realised);
}

/** In the last moments of the note before, of what its own appoggiatura has left of it. */
function playAtEnd({ notes, main }: SmallGroup, context: SmallContext): void {
  const last = context.pieces.of(main).at(-1);
  if (last === undefined) return;
  const each = lengthOfEach(notes.length, last.duration, context);
  const end = endOf(last);
  const realised = realisedBy(context);
  const begin = subtract(end, multiply(each, time(notes.length)));
  notes.forEach((note, index) => {
    const onset = add(begin, multiply(each, time(index)));
    context.pieces.set(note, [{ pitch: note.pitch, onset, duration: each, realised }]);
  });
  context.pieces.lengthen(main, begin);
}

function playAppoggiatura(group: SmallGroup, small: PerformedEvent, context: SmallContext): void {
  const { passage, table } = context;
  const { main } = group;
  if (small.pitch === undefined) return;
  const rest = restTaken(main, small.pitch, context);
  if (table.rules.passing !== undefined && isPassing(passage, main, small.pitch)) playPassing(main, small, context);
  else if (rest !== undefined) playWhole(main, small, rest, context);
  else playBefore(group, shareOnGrid(context, leanOf(main, small.pitch, context), main.duration), context);
}

/** The whole of a note that is tied on, where the table has that rule; else as long as an appoggiatura lasts. */
function leanOf(main: PerformedEvent, small: SoundingPitch, context: SmallContext): Time {
  const tied = main.from.length > 1 && context.table.rules.whole !== undefined;
  return appoggiaturaOf(leaningOn(main, small, context), tied ? firstOfTied(main) : undefined);
}

/** The part of tied notes that the first has. */
function firstOfTied({ from, duration }: PerformedEvent): Time {
  const [first, ...others] = from.map(({ placed }) => placed.event.duration);
  return first === undefined ? duration : multiply(duration, divide(first, others.reduce(add, first)));
}

const leaningOn = (event: PerformedEvent, small: SoundingPitch, { passage, clock, table }: SmallContext): Leaning => ({
  passage,
  event,
  onset: event.onset,
  length: event.duration,
  clock,
  small,
  longDotted: table.rules.dotted !== undefined,
});

/** The rest that a note is put off into, by the rule of the table, if there is room for it and the harmony allows it. */
function restTaken(main: PerformedEvent, small: SoundingPitch, context: SmallContext): PerformedEvent | undefined {
  const { passage, table } = context;
  if (table.rules.beforeRest === undefined || isHarmful(leaningOn(main, small, context), main.duration))
    return undefined;
  const [after] = passage.after(main)?.events ?? [];
  return after?.kind === 'rest' && compare(after.duration, main.duration) >= 0 ? after : undefined;
}

/** It takes the time of the note, and the note as much of that of the rest. */
function playWhole(main: PerformedEvent, small: PerformedEvent, rest: PerformedEvent, context: SmallContext): void {
  const realised = realisedBy(context);
  const { pieces } = context;
  pieces.set(small, [{ pitch: small.pitch, onset: main.onset, duration: main.duration, realised }]);
  pieces.set(main, [{ pitch: main.pitch, onset: rest.onset, duration: main.duration, realised }]);
  const left = subtract(rest.duration, main.duration);
  const silence = { pitch: undefined, onset: add(rest.onset, main.duration), duration: left, realised: undefined };
  pieces.set(rest, isZero(left) ? [] : [silence]);
}

/** Short, in the time of the note before. */
function playPassing(main: PerformedEvent, small: PerformedEvent, context: SmallContext): void {
  const { passage, pieces, clock, grid } = context;
  const before = passage.before(main)?.events.at(-1);
  const last = before && pieces.of(before).at(-1);
  if (before === undefined || last === undefined) return;
  const most = partOf(clock, last.duration, EACH, 2);
  const length = grid === undefined ? most : earliest(grid, divide(last.duration, time(2)));
  pieces.shorten(before, length);
  const onset = subtract(main.onset, length);
  pieces.set(small, [{ pitch: small.pitch, onset, duration: length, realised: realisedBy(context) }]);
}
