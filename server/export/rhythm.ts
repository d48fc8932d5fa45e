/**
 * Rhythm in another form: a score that writes what its reading plays, in standard values. Whoever writes or draws a score
 * writes and draws its performed rhythm then, and need not know of it.
 */
import { add, compare, equal, subtract, type Time } from '../../grammar/time';
import { perform } from '../readings/perform';
import { type PerformedPiece, performedOnset } from '../score/performance';
import type { NoteMember, Piece, PlacedProblem, Score, ScoreSystem, VoiceEvent } from '../score/score';
import { eventsOf, type PlacedEvent, placeOfEvent } from '../score/walk';
import { Losses } from './losses';
import { type BarsChosen, barsChosen, problemsWithin } from './measures';
import { addressOfPart, BARE, eventLike, noteLike, PLAIN_TIE, valueForm } from './ornaments/events';
import { type Replacement, withReplaced } from './ornaments/replaced';
import { withoutLoneBeams } from './rhythm/beams';
import { type Noted, notated, onsetsOf, type Timed } from './rhythm/notation';
import { withWholeTuplets } from './rhythm/tuplets';

/** As the source has it, or as the reading plays it. */
export type RhythmForm = 'written' | 'played';

export interface RhythmOptions {
  /** As a rule `written`. */
  readonly rhythm?: RhythmForm;
}

export interface InRhythm {
  readonly score: Score;
  /** What has no standard values and stands as it is written. */
  readonly problems: readonly PlacedProblem[];
}

export function withRhythm(score: Score, options: RhythmOptions & BarsChosen): InRhythm {
  const { rhythm = 'written' } = options;
  if (rhythm === 'written') return { score, problems: [] };
  const losses = new Losses(score.pieces, barsChosen(score, options));
  const performance = perform(score, { ornaments: 'sign' });
  const pieces = performance.pieces.map((performed) => inPerformedTime(performed, losses));
  return {
    score: { ...score, pieces },
    problems: [...problemsWithin(performance.problems, score, options), ...losses.problems()],
  };
}

function inPerformedTime(performed: PerformedPiece, losses: Losses): Piece {
  if (performed.events.every(({ altered }) => altered === undefined)) return performed.piece;
  const played = timesOf(performed);
  const replacements = new Map<ScoreSystem, Map<number, Map<number, readonly Replacement[]>>>();
  for (const line of linesOf(performed.piece, played)) {
    for (const run of runsOf(line)) {
      const noted = notated(run.flatMap(timedOf));
      if (noted === undefined) {
        tellUnprintable(run, losses);
        continue;
      }
      for (const { placed, by } of replaced(run, noted)) put(replacements, placed, by);
    }
    for (const { placed, onset } of line.filter(({ placed }) => placed.event.small !== undefined)) {
      if (equal(onset, placed.onset)) continue;
      put(replacements, placed, [replacementOf(placed, { onset: subtract(onset, placed.system.onset) })]);
    }
  }
  return withoutLoneBeams(withWholeTuplets(withReplaced(performed.piece, replacements)));
}

function put(
  replacements: Map<ScoreSystem, Map<number, Map<number, readonly Replacement[]>>>,
  placed: PlacedEvent,
  by: readonly Replacement[],
): void {
  const { system, voice, index } = placed;
  const voices = replacements.get(system) ?? new Map<number, Map<number, readonly Replacement[]>>();
  const events = voices.get(voice.voice) ?? new Map<number, readonly Replacement[]>();
  replacements.set(system, voices.set(voice.voice, events.set(index, by)));
}

// ─── when each written event is played ───────────────────────────────────────────────────────────────────────────

interface Played {
  readonly onset: Time;
  readonly end: Time;
  /** When it falls silent, if before its end. */
  readonly silentFrom: Time | undefined;
}

function timesOf({ events }: PerformedPiece): ReadonlyMap<string, Played> {
  const times = new Map<string, Played>();
  for (const event of events) {
    for (const [index, { placed }] of event.from.entries()) {
      const key = placeOfEvent(placed);
      const known = times.get(key);
      const isLast = index === event.from.length - 1;
      const end = isLast ? add(event.onset, event.duration) : performedOnset(event, index + 1);
      const isSilence = event.kind !== placed.event.kind;
      if (known === undefined) times.set(key, { onset: performedOnset(event, index), end, silentFrom: undefined });
      else if (isSilence && isLast) times.set(key, { ...known, end, silentFrom: event.onset });
    }
  }
  return times;
}

/** A written event with the time in which it is played. */
interface PlayedEvent extends Played {
  readonly placed: PlacedEvent;
}

function linesOf(piece: Piece, played: ReadonlyMap<string, Played>): readonly (readonly PlayedEvent[])[] {
  const lines = new Map<number, PlayedEvent[]>();
  for (const placed of eventsOf(piece)) {
    const { onset, event } = placed;
    const own = played.get(placeOfEvent(placed)) ?? { onset, end: add(onset, event.duration), silentFrom: undefined };
    const line = lines.get(event.voice);
    if (line === undefined) lines.set(event.voice, [{ placed, ...own }]);
    else line.push({ placed, ...own });
  }
  return [...lines.values()];
}

const isMoved = ({ placed, onset, end, silentFrom }: PlayedEvent): boolean =>
  silentFrom !== undefined || !equal(onset, placed.onset) || !equal(end, writtenEnd(placed));

const writtenEnd = ({ onset, event }: PlacedEvent): Time => add(onset, event.duration);

/** Events that follow one another and are played otherwise, each run as short as it can be. */
function runsOf(line: readonly PlayedEvent[]): readonly (readonly PlayedEvent[])[] {
  const runs: PlayedEvent[][] = [];
  let open = false;
  for (const event of line) {
    if (event.placed.event.small !== undefined || !isMoved(event)) continue;
    if (open) runs.at(-1)?.push(event);
    else runs.push([event]);
    open = !equal(event.end, writtenEnd(event.placed));
  }
  return runs;
}

// ─── its notes ───────────────────────────────────────────────────────────────────────────────────────────────────

/** The note and, where it falls silent, the rest after it. */
function timedOf({ placed, onset, end, silentFrom = end }: PlayedEvent): Timed[] {
  const { tuplets } = placed.event;
  const note = { length: subtract(silentFrom, onset), tuplets };
  return equal(silentFrom, end) ? [note] : [note, { length: subtract(end, silentFrom), tuplets }];
}

function replaced(
  run: readonly PlayedEvent[],
  noted: readonly Noted[],
): { readonly placed: PlacedEvent; readonly by: readonly Replacement[] }[] {
  let next = 0;
  return run.map((played) => {
    const { placed, onset, silentFrom } = played;
    const note = noted[next++];
    const rest = silentFrom === undefined ? undefined : noted[next++];
    const notes = note === undefined ? [] : parts(placed, onset, note);
    const silence = rest === undefined || silentFrom === undefined ? [] : rests(placed, silentFrom, rest, notes.length);
    return { placed, by: [...notes, ...silence] };
  });
}

/** The values that tied together stand for an event. */
function parts(placed: PlacedEvent, onset: Time, { values, tuplets }: Noted): Replacement[] {
  const onsets = onsetsOf(values, onset);
  return values.map((value, i) => {
    const isLast = i === values.length - 1;
    return replacementOf(placed, {
      ...(i === 0 ? {} : BARE),
      onset: subtract(onsets[i] ?? onset, placed.system.onset),
      duration: value.length,
      value: valueForm(value),
      tuplets,
      members: placed.event.members.map((member) => partOf(member, i === 0, isLast)),
      address: addressOfPart(placed.event, i + 1),
      ...beamFor(placed.event, value.value.base),
    });
  });
}

const partOf = (member: NoteMember, isFirst: boolean, isLast: boolean): NoteMember =>
  noteLike(member, {
    tiedFrom: !isFirst || member.tiedFrom,
    tie: isLast ? member.tie : PLAIN_TIE,
    ...(isFirst ? {} : { marks: [], annotations: [] }),
  });

function rests(placed: PlacedEvent, onset: Time, { values, tuplets }: Noted, after: number): Replacement[] {
  const onsets = onsetsOf(values, onset);
  return values.map((value, i) => ({
    event: eventLike(placed.event, {
      ...BARE,
      kind: 'rest',
      members: [],
      beam: undefined,
      onset: subtract(onsets[i] ?? onset, placed.system.onset),
      duration: value.length,
      value: valueForm(value),
      tuplets,
      address: addressOfPart(placed.event, after + i + 1),
    }),
    heads: [],
  }));
}

/** A crotchet has no beam. */
const beamFor = ({ beam }: VoiceEvent, base: Time): Pick<VoiceEvent, 'beam'> => ({
  beam: compare(base, { n: 1, d: 8 }) > 0 ? undefined : beam,
});

const replacementOf = (placed: PlacedEvent, changed: Partial<VoiceEvent>): Replacement => ({
  event: eventLike(placed.event, changed),
  heads: placed.event.members.map((_, member) => ({ event: placed.index, member })),
});

function tellUnprintable(run: readonly PlayedEvent[], losses: Losses): void {
  const [first] = run;
  if (first === undefined) return;
  const { system, bar, event } = first.placed;
  losses.add('rhythm-unprintable', {}, { source: event.source, system, bar });
}
