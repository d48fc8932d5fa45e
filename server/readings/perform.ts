/** From a score to a performance. */
import { finished } from '../../grammar/finished';
import { add, compare, equal, type Time } from '../../grammar/time';
import { alteringRhythm } from '../practice/alter';
import { endOf, type Opening } from '../score/clock';
import { isSamePitch } from '../score/heights';
import {
  inOrder,
  insertInOrder,
  type Performance,
  type PerformedEvent,
  type PerformedPiece,
  type SoundingPitch,
  type WrittenEvent,
} from '../score/performance';
import type { NoteMember, Piece, Score } from '../score/score';
import { eventsOf, type PlacedEvent } from '../score/walk';
import { realisingSigns } from '../signs/realise';
import { tableInForce } from '../signs/rows';
import { practicesOfReading, statedTempo, tableOfReading } from './choices';
import { unfolded } from './unfold';

export interface PerformOptions {
  /** `full`: what signs and small notes mean by the reading's table; `sign`: they are left as they stand. As a rule `full`. */
  readonly ornaments?: 'sign' | 'full';
  /** `played`: in the time of the reading's practices; `written`: as the source has it. As a rule `played`. */
  readonly rhythm?: 'written' | 'played';
  /** `played`: sections in their order, repeats and endings played out; `written`: as the source draws them. As a rule `written`. */
  readonly repeats?: 'written' | 'played';
  /** `play`: exact times; `print`: values that can be printed. As a rule `play`. */
  readonly form?: 'play' | 'print';
  /** The sign table to go by; as a rule the reading's. */
  readonly table?: string;
  /** By how much it is quicker than the tempi stated; as a rule 1. Signs have as many strokes as there is time for. */
  readonly pace?: Time;
  /** Whether the problems tell also what a player has to decide of the rhythm, for nothing is said of it. As a rule they do. */
  readonly undecided?: boolean;
}

/**
 * The score as it is played. Tied notes are one; practices of rhythm are played; where the reading has a sign table, signs
 * and small notes are realised, in the time that practices leave them. `written` realises nothing. Never fails.
 */
export const perform = (score: Score, options: PerformOptions = {}): Performance =>
  finished(performing(score, options));

/** The same a piece of work at a time. */
export function* performing(score: Score, options: PerformOptions = {}): Generator<undefined, Performance> {
  const plain = yield* withoutSigns(score, options);
  const performance = options.ornaments === 'sign' ? plain : yield* withSigns(plain, options);
  return options.repeats === 'played' ? unfolded(performance) : performance;
}

/** A performance with its signs as they stand, and with what they mean. */
export interface BothPerformances {
  readonly plain: Performance;
  readonly played: Performance;
}

/** The score as it is played, without its signs and with them, a piece of work at a time. */
export function* performingBoth(
  score: Score,
  options: Pick<PerformOptions, 'undecided' | 'table'> = {},
): Generator<undefined, BothPerformances> {
  const plain = yield* withoutSigns(score, options);
  return { plain, played: yield* withSigns(plain, options) };
}

/** In its time, in the order of the source. */
function* withoutSigns(score: Score, options: PerformOptions): Generator<undefined, Performance> {
  const written = yield* performingAsWritten(score);
  yield;
  if (options.rhythm === 'written' || score.choice.name === 'written') return written;
  return yield* inPractice(written, openingOf(score, options), options);
}

function* withSigns(plain: Performance, options: PerformOptions): Generator<undefined, Performance> {
  const { score } = plain;
  const { table: name = tableOfReading(score.environment, score.choice.name), form = 'play' } = options;
  yield;
  const table = name === undefined ? undefined : tableInForce(name, score.environment);
  yield;
  return table === undefined ? plain : yield* realisingSigns(plain, { table, ...openingOf(score, options), form });
}

/** With what tempo a score is begun. */
export function openingOf({ environment, choice }: Score, { pace }: Pick<PerformOptions, 'pace'>): Opening {
  const stated = statedTempo(environment, choice.name);
  return {
    tempo: stated ?? environment.tempo,
    ownTempo: stated !== undefined,
    ...(pace === undefined ? {} : { pace }),
  };
}

function inPractice(
  written: Performance,
  tempi: Opening,
  { undecided = true }: PerformOptions,
): Generator<undefined, Performance> {
  const practices = practicesOfReading(written.score.environment, written.reading);
  return alteringRhythm(written, { practices, undecided, ...tempi });
}

function* performingAsWritten(score: Score): Generator<undefined, Performance> {
  const pieces: PerformedPiece[] = [];
  for (const piece of score.pieces) pieces.push({ piece, events: yield* eventsAsWritten(piece) });
  return { score, reading: score.choice.name, pieces, problems: [] };
}

/** An event that a tie may still lengthen. */
interface Growing extends PerformedEvent {
  duration: Time;
  readonly from: [WrittenEvent, ...WrittenEvent[]];
}

/** One voice of one system after another: in turns, and each system is put in order by itself. */
function* eventsAsWritten(piece: Piece): Generator<undefined, PerformedPiece['events']> {
  const all: Growing[] = [];
  let ofSystem: Growing[] = [];
  let before: PlacedEvent | undefined;
  /** By voice: the notes that a tie can continue. */
  const sounding: Sounding = new Map();
  for (const placed of eventsOf(piece)) {
    if (placed.voice !== before?.voice) yield;
    if (placed.system !== before?.system) {
      putInOrder(ofSystem, all);
      ofSystem = [];
    }
    before = placed;
    take(placed, sounding, ofSystem);
  }
  putInOrder(ofSystem, all);
  return all;
}

/** A note may be drawn in one system and sound among those of the next, but what a system has mostly comes after all before it. */
function putInOrder(ofSystem: Growing[], all: Growing[]): void {
  for (const event of ofSystem.sort(inOrder)) insertInOrder(all, event);
}

/** Adds the notes of a written event, or lets those sound on to which they are tied. */
function take(placed: PlacedEvent, sounding: Sounding, events: Growing[]): void {
  const { voice, duration, members, small } = placed.event;
  const before = sounding.get(voice) ?? NOTHING;
  const notes = (members.length === 0 ? UNPITCHED : members).map((member): Growing => {
    const written = { placed, member };
    const tied = continued(before, written);
    if (tied !== undefined) {
      tied.from.push(written);
      tied.duration = add(tied.duration, duration);
      return tied;
    }
    const event = asPerformed(written);
    events.push(event);
    return event;
  });
  // Time stands still at small notes: they neither continue a tie nor break one.
  if (small === undefined && (before.length > 0 || notes.some(leadsOn)))
    sounding.set(voice, [...stillSounding(before, notes, placed.onset), ...notes.filter(leadsOn)]);
}

const NOTHING: readonly never[] = [];
/** A rest, gap or lacuna is one event. */
const UNPITCHED: readonly undefined[] = [undefined];

/** By voice: the notes that a tie can continue. */
type Sounding = Map<number, readonly Growing[]>;

/** The sounding note that this one continues: tied to it, of the same pitch, ending where this begins. */
function continued(sounding: readonly Growing[], { placed, member }: WrittenEvent): Growing | undefined {
  if (member === undefined || !member.tiedFrom || placed.event.small !== undefined) return undefined;
  return sounding.find(
    (note) =>
      note.from[0].member !== undefined &&
      leadsOn(note) &&
      isSamePitch(note.from[0].member, member) &&
      equal(endOf(note), placed.onset),
  );
}

/** A tie leads on from its last written note: one from before a first ending enters the second and joins no note of the first. */
const leadsOn = (note: Growing): boolean => note.from.at(-1)?.member?.tie !== undefined;

/** The notes that sound on when others begin: one may run through a barline. */
const stillSounding = (before: readonly Growing[], notes: readonly Growing[], onset: Time): Growing[] =>
  before.filter((note) => !notes.includes(note) && compare(endOf(note), onset) > 0);

function asPerformed(written: WrittenEvent): Growing {
  const { placed, member } = written;
  const { kind, voice, stave, duration, small } = placed.event;
  const event: Growing = {
    kind,
    voice,
    stave: member?.stave ?? stave,
    onset: placed.onset,
    duration,
    pitch: member && soundingPitch(member),
    small: small !== undefined,
    from: [written],
  };
  return member?.realised === undefined ? event : { ...event, realised: member.realised };
}

const soundingPitch = (member: NoteMember): SoundingPitch => ({
  letter: member.spelling.letter,
  alteration: member.alteration,
  octave: member.octave,
  midi: member.midi,
});
