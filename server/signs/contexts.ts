/** Where a note stands, as far as it helps an editor to say what a sign means: what rows can ask for, and what they cannot. */
import { compare, equal } from '../../grammar/time';
import { endOf } from '../score/clock';
import type { PerformedEvent } from '../score/performance';
import { isSpecial } from '../score/score';
import { marksUpon } from '../score/walk';
import { conditionNames, holds, nearestPitch } from './conditions';
import { degreeOf } from './degrees';
import type { Passage } from './passage';
import type { Condition } from './tables/table';

/** A note in its piece. */
export interface NoteHere {
  readonly passage: Passage;
  readonly event: PerformedEvent;
  /** The written note that is looked at, of several tied ones. */
  readonly written: PerformedEvent['from'][number];
}

/** Degrees between a note and the one before in its voice; undefined after a rest and at the beginning. */
function interval({ passage, event }: NoteHere): number | undefined {
  const before = event.pitch && nearestPitch(passage.before(event), event.pitch);
  return before && event.pitch && Math.abs(degreeOf(before) - degreeOf(event.pitch));
}

/** The note after is the last of its voice before the end, a double bar or a repeat sign, or rests under a fermata. Common practice. */
function isBeforeClose({ passage, event }: NoteHere): boolean {
  const [next] = passage.after(event)?.events ?? [];
  if (next === undefined || next.kind !== 'note') return false;
  const [{ placed }] = next.from;
  const ends = compare(endOf(next), endOf(placed.bar)) >= 0;
  const [after] = passage.after(next)?.events ?? [];
  return after === undefined || (ends && isSpecial(placed.bar.closing)) || hasFermata(next);
}

const hasFermata = ({ from: [{ placed, member }] }: PerformedEvent): boolean =>
  marksUpon(placed.event, member).some(({ form }) => form.name === 'fermata');

const isOnDownbeat = ({ written: { placed } }: NoteHere): boolean => equal(placed.onset, placed.bar.onset);

const others = {
  downbeat: isOnDownbeat,
  upbeat: (at) => !isOnDownbeat(at) && equal(endOf(at.event), endOf(at.written.placed.bar)),
  'after a step': (at) => interval(at) === 1,
  'after a leap': (at) => (interval(at) ?? 0) > 1,
  repeated: (at) => interval(at) === 0,
  cadence: isBeforeClose,
  'over a rest': ({ passage, event }) => passage.isOverRest(event),
  chord: ({ written }) => written.placed.event.members.length > 1,
} satisfies Readonly<Record<string, (at: NoteHere) => boolean>>;

/** The contexts that hold for a note. */
export const contextsOf = (at: NoteHere): string[] => [
  ...conditionNames.filter((condition) => holds(condition, { ...at, sign: at })),
  ...Object.entries(others).flatMap(([name, isSo]) => (isSo(at) ? name : [])),
];

const words = {
  rising: 'after a lower note',
  falling: 'after a higher note',
  dotted: 'on dotted notes',
  short: 'on quavers or shorter notes',
  'before rest': 'before a rest',
  'before higher': 'before a higher note',
  'before lower': 'before a lower note',
  'before rising third': 'before a third upwards',
  'before falling third': 'before a third downwards',
  'slurred from above': 'slurred from the note above',
  downbeat: 'on the first beat of a bar',
  upbeat: 'on the last note of a bar',
  'after a step': 'approached by step',
  'after a leap': 'approached by leap',
  repeated: 'on a repeated note',
  cadence: 'before the last note of a cadence',
  'over a rest': 'over or under a rest of another voice',
  chord: 'in a chord',
} satisfies Readonly<Record<Condition | keyof typeof others, string>>;

/** Contexts in words, as they follow a number: "190 on dotted notes". */
export const contextWords: Readonly<Record<string, string>> = words;
