/** Signs as small notes at their note: the rhythm stays as it is written. */
import { compare, divide, earliest, equal, latest, subtract, type Time, time, ZERO } from '../../../grammar/time';
import type { PerformedEvent } from '../../score/performance';
import type { NoteMember, VoiceEvent } from '../../score/score';
import { marksUpon, type PlacedEvent } from '../../score/walk';
import { type NoteValue, noteValue } from '../values';
import { beamedTogether, type Numbers } from './beams';
import { addressOfPart, BARE, eventLike, noteLike, noteOn, valueForm } from './events';
import type { Replacement } from './replaced';
import { byHeight, type Group, isWrittenOut, soundsAs } from './strands';

export interface WritingSmall {
  readonly numbers: Numbers;
  readonly keepSigns: boolean;
  /** The notes that have no accidental yet. */
  readonly made: Set<NoteMember>;
}

/** A written event between the small notes of its signs. */
export interface WithSmallNotes {
  readonly replacements: readonly Replacement[];
  /** Strokes that are left out: small notes show what is played, not how often. */
  readonly leftOut: readonly PerformedEvent[];
}

/** So many small notes are drawn before a note. */
const MOST = 8;

/** The events that stand for a written one; undefined where none of its signs has small notes. */
export function withSmallNotes(
  placed: PlacedEvent,
  groups: readonly Group[],
  out: WritingSmall,
): WithSmallNotes | undefined {
  const drawn = groups.filter((group) => isDrawnAt(group, placed));
  const { before, stands, after } = aroundMain(drawn);
  if (before.length + after.length === 0) return undefined;
  const { event } = placed;
  const shown = withFewerStrokes(before);
  const first = smallEvents(shown, 'next', stands, 2, event, out);
  const last = smallEvents(after, 'previous', undefined, 2 + shown.length, event, out);
  const signs = new Set(out.keepSigns ? [] : drawn.flatMap((group) => [...group.signs]));
  const main = {
    event: withoutSigns(event, signs),
    heads: event.members.map((_, member) => ({ event: placed.index, member })),
  };
  const leftOut = before.filter((moment) => !shown.includes(moment)).flat();
  return { replacements: [...first, main, ...last], leftOut };
}

/** Of notes tied together the one that bears the sign is where its small notes stand; those of the source have no others. */
function isDrawnAt({ from, signs }: Group, { event, index, voice, system }: PlacedEvent): boolean {
  if (signs.size === 0 || event.small !== undefined) return false;
  const bears = ({ placed, member }: Group['from'][number]): boolean =>
    marksUpon(placed.event, member).some((mark) => isWrittenOut(mark, signs));
  const { placed } = from.find(bears) ?? from[0];
  return placed.index === index && placed.voice.voice === voice.voice && placed.system === system;
}

// ─── what is played around the main note ─────────────────────────────────────────────────────────────────────────

/** Notes that are struck together. */
type Moment = readonly PerformedEvent[];

interface Around {
  readonly before: readonly Moment[];
  /** When the main note, of a chord its last one, stands. */
  readonly stands: Time | undefined;
  readonly after: readonly Moment[];
}

/** What is played until the last note of a chord stands, and what after that. */
function aroundMain(groups: readonly Group[]): Around {
  const all = groups.flatMap(({ played }) => played.filter(isOfSign));
  const mains = groups.flatMap((group) => mainOf(group) ?? []);
  const stands = mains
    .map(({ onset }) => onset)
    .reduce<Time | undefined>((last, at) => (last ? latest(last, at) : at), undefined);
  if (stands === undefined) return { before: [], stands, after: [] };
  const isMain = (event: PerformedEvent): boolean => mains.includes(event);
  const moments = momentsOf(all.filter((event) => !isMain(event) || compare(event.onset, stands) < 0));
  const begins = ([event]: Moment): number => compare(event?.onset ?? ZERO, stands);
  return {
    before: moments.filter((moment) => begins(moment) < 0),
    stands,
    after: moments.filter((moment) => begins(moment) >= 0),
  };
}

/** A note that sounds for a sign, not for a small note of the source. */
const isOfSign = ({ pitch, realised }: PerformedEvent): boolean =>
  pitch !== undefined && realised !== undefined && realised.row !== '';

/** The longest note of the written pitch: of several the last, or the first if the sign begins with it. */
function mainOf({ from, played }: Group): PerformedEvent | undefined {
  const { member } = from[0];
  const notes = played.filter(isOfSign);
  const same = notes.filter(({ pitch }) => member !== undefined && pitch !== undefined && soundsAs(pitch, member));
  const isLongest = ({ duration }: PerformedEvent): boolean =>
    same.every((one) => compare(one.duration, duration) <= 0);
  const [first] = notes;
  return first !== undefined && same[0] === first && isLongest(first) ? first : same.findLast(isLongest);
}

function momentsOf(events: readonly PerformedEvent[]): readonly Moment[] {
  const moments: PerformedEvent[][] = [];
  for (const event of [...events].sort((a, b) => compare(a.onset, b.onset))) {
    const last = moments.at(-1);
    if (last?.[0] !== undefined && equal(last[0].onset, event.onset)) last.push(event);
    else moments.push([event]);
  }
  return moments;
}

const keysOf = (moment: Moment | undefined): string => (moment ?? []).map(({ pitch }) => pitch?.midi).join(' ');

/** A pair of strokes fewer, as long as there are too many and one repeats that before it. */
function withFewerStrokes(moments: readonly Moment[]): readonly Moment[] {
  if (moments.length <= MOST) return moments;
  const repeats = (at: number): boolean => keysOf(moments[at]) === keysOf(moments[at + 2]);
  const pair = moments.findIndex((_, at) => at + 3 < moments.length && repeats(at) && repeats(at + 1));
  return pair < 0 ? moments : withFewerStrokes(moments.filter((_, at) => at !== pair && at !== pair + 1));
}

// ─── writing ─────────────────────────────────────────────────────────────────────────────────────────────────────

/**
 * @param ends when the last of them ends at the latest
 * @param number of the first of them among what stands for the written event
 */
function smallEvents(
  moments: readonly Moment[],
  to: 'next' | 'previous',
  ends: Time | undefined,
  number: number,
  written: VoiceEvent,
  { numbers, made }: WritingSmall,
): readonly Replacement[] {
  if (moments.length === 0) return [];
  const small = { to, group: numbers.take() };
  const events = moments.map((moment, i) => {
    const value = { value: valueBelow(lengthOf(moment, moments[i + 1]?.[0]?.onset ?? ends)), length: ZERO };
    return eventLike(written, {
      ...BARE,
      kind: 'note',
      onset: written.onset,
      duration: ZERO,
      value: valueForm(value),
      wholeBar: false,
      small,
      members: notesOf(moment, made),
      tuplets: [],
      beam: undefined,
      address: addressOfPart(written, number + i),
    });
  });
  return beamedTogether(events, numbers).map((event) => ({ event, heads: [] }));
}

function notesOf(moment: Moment, made: Set<NoteMember>): readonly NoteMember[] {
  const byPitch = [...moment].sort((a, b) => (a.pitch && b.pitch ? byHeight(a.pitch, b.pitch) : 0));
  return byPitch.flatMap(({ pitch, realised, from: [{ member }] }) => {
    if (pitch === undefined || member === undefined) return [];
    const note = noteOn(pitch, member, realised);
    made.add(note);
    return [note];
  });
}

const [QUAVER, SHORTEST] = [time(1, 8), time(1, 64)];

/** As long as it is held, but no longer than until the next is struck. */
const lengthOf = ([event]: Moment, next: Time | undefined): Time =>
  event === undefined || next === undefined
    ? (event?.duration ?? ZERO)
    : earliest(event.duration, subtract(next, event.onset));

/** The longest plain value that is no longer, of quavers and less. */
function valueBelow(length: Time): NoteValue {
  let base = QUAVER;
  while (compare(base, length) > 0 && compare(base, SHORTEST) > 0) base = divide(base, time(2));
  const value = noteValue(base, 0);
  if (value === undefined) throw new RangeError('a quaver or less is a value');
  return value;
}

function withoutSigns(event: VoiceEvent, signs: ReadonlySet<string>): VoiceEvent {
  const left = (marks: VoiceEvent['marks']): VoiceEvent['marks'] => marks.filter((mark) => !isWrittenOut(mark, signs));
  const members = event.members.map((note) => noteLike(note, { marks: left(note.marks) }));
  return signs.size === 0 ? event : eventLike(event, { members, marks: left(event.marks) });
}
