/**
 * How keys are touched: what a plucked instrument has in the place of loud and soft (common practice).
 *
 * Quick notes are let go before their end, slurred and ornamental ones are held; chords that no sign spreads are spread a little;
 * a key comes up in time to speak again.
 */
import { putUnder } from '../../grammar/lists';
import { add, compare, equal, latest, time, ZERO } from '../../grammar/time';
import { curvesOf, placeOfEvent } from '../score/walk';
import { RELEASE } from '../signs/keys';
import type { Seconds } from './seconds';
import type { SoundingNote, SoundingPiece } from './sounding';
import { manualNamesIn } from './stops';

/** A key from its stroke until it comes up, in seconds from the beginning of its piece. */
export interface Touched {
  readonly note: SoundingNote;
  readonly at: number;
  readonly until: number;
}

/** The part of its value for which a key is held: of quavers and less, of crotchets that go on by step. */
const QUICK = { most: time(1, 8), part: 0.88 };
const BY_STEP = { most: time(1, 4), part: 0.95 };
/** A second, in semitones. */
const STEP = 2;
/** Seconds between the notes of a chord of so many that no sign spreads. */
const SPREAD = 0.01;
const SPREAD_FROM = 3;
/** The part of its time over which the last chord of music without measure is spread. */
const LAST_SPREAD = 0.3;
/** Strokes of one key that are nearer in seconds are one: voices that meet, one of them spread or ornamented. */
export const ONE_STROKE = 0.04;

export function touched(piece: SoundingPiece, seconds: Seconds): readonly Touched[] {
  const slurred = slurredIn(piece);
  const next = nextInVoice(piece.notes);
  const held = piece.notes.map((note) => {
    const at = seconds.at(note.onset);
    const until = seconds.at(add(note.onset, note.duration));
    const part = partHeld(note, next.get(note), slurred.has(placeOfEvent(note.event.from[0].placed)));
    return { note, at, until: at + (until - at) * part };
  });
  return speakingAgain(spread(held, lastOf(piece)), piece);
}

function partHeld(note: SoundingNote, next: SoundingNote | undefined, isSlurred: boolean): number {
  const { duration, event, pitch } = note;
  if (isSlurred || event.realised !== undefined) return 1;
  if (compare(duration, QUICK.most) <= 0) return QUICK.part;
  const goesByStep = next !== undefined && Math.abs(next.pitch.midi - pitch.midi) <= STEP;
  return goesByStep && compare(duration, BY_STEP.most) <= 0 ? BY_STEP.part : 1;
}

/** The note that a voice strikes after each. */
function nextInVoice(notes: readonly SoundingNote[]): ReadonlyMap<SoundingNote, SoundingNote> {
  const last = new Map<number, SoundingNote[]>();
  const next = new Map<SoundingNote, SoundingNote>();
  for (const note of notes) {
    const before = last.get(note.voice) ?? [];
    const [one] = before;
    if (one !== undefined && compare(one.onset, note.onset) < 0) {
      for (const each of before) next.set(each, note);
      last.set(note.voice, [note]);
    } else last.set(note.voice, [...before, note]);
  }
  return next;
}

/** The events under curves, but for those on which they end. */
function slurredIn({ piece, notes }: SoundingPiece): ReadonlySet<string> {
  const curves = curvesOf(piece).flatMap(({ kind, start, end }) => {
    if (kind !== 'u' || start === undefined) return [];
    const from = { block: start.system.block, index: start.end.event };
    const to = end === undefined ? from : { block: end.system.block, index: end.end.event };
    return [{ voice: start.voice.voice, from, to }];
  });
  const isWithin = ({ voice, from, to }: (typeof curves)[number], block: number, of: number, index: number): boolean =>
    voice === of &&
    (block > from.block || (block === from.block && index >= from.index)) &&
    (block < to.block || (block === to.block && index < to.index));
  const slurred = new Set<string>();
  if (curves.length === 0) return slurred;
  for (const { event } of notes) {
    const { placed } = event.from[0];
    const { system, voice, index } = placed;
    if (curves.some((curve) => isWithin(curve, system.block, voice.voice, index))) slurred.add(placeOfEvent(placed));
  }
  return slurred;
}

/** The last notes of a piece that ends without measure, if they are among what sounds. */
function lastOf({ piece, notes }: SoundingPiece): ReadonlySet<SoundingNote> {
  const end = notes.reduce((last, { onset }) => latest(last, onset), ZERO);
  const isLast = ({ onset, event: { from } }: SoundingNote): boolean =>
    equal(onset, end) &&
    from.some(({ placed: { bar, system } }) => bar === piece.bars.at(-1) && system.score.kind === 'free');
  return new Set(notes.filter(isLast));
}

/**
 * Notes of one moment one after another from the lowest; what a sign plays keeps its time.
 * @param last those of the last chord of music without measure, which is spread slowly
 */
function spread(all: readonly Touched[], last: ReadonlySet<SoundingNote>): readonly Touched[] {
  const moments = new Map<number, Touched[]>();
  for (const one of all) {
    if (one.note.event.realised !== undefined) continue;
    putUnder(moments, one.at, one);
  }
  const later = new Map<Touched, number>();
  for (const chord of moments.values()) {
    const keys = [...new Set(chord.map(({ note }) => note.pitch.midi))].sort((a, b) => a - b);
    if (keys.length < SPREAD_FROM) continue;
    const each = ({ note, at, until }: Touched): number =>
      last.has(note) ? ((until - at) * LAST_SPREAD) / (keys.length - 1) : SPREAD;
    for (const one of chord) later.set(one, keys.indexOf(one.note.pitch.midi) * each(one));
  }
  return all.map((one) => {
    const by = later.get(one) ?? 0;
    return by === 0 ? one : { ...one, at: one.at + by, until: Math.max(one.until, one.at + 2 * by) };
  });
}

/** The seconds for which a key is up before it is struck again: an eighth of the time between, within bounds; at most half. */
const releaseIn = (seconds: number): number =>
  Math.min(Math.max(RELEASE.least, Math.min(RELEASE.most, seconds / 8)), seconds / 2);

/** Each key comes up before it is struck again; a key of another manual is another key. */
function speakingAgain(all: readonly Touched[], { piece }: SoundingPiece): readonly Touched[] {
  const manualOf = manualNamesIn(piece);
  const byKey = new Map<string, Touched[]>();
  for (const one of all) {
    const key = `${manualOf(one.note) ?? ''} ${one.note.pitch.midi}`;
    const strokes = byKey.get(key);
    if (strokes === undefined) byKey.set(key, [one]);
    else strokes.push(one);
  }
  const found = new Map<Touched, Touched>();
  for (const strokes of byKey.values()) {
    strokes.sort((a, b) => a.at - b.at);
    for (const [index, one] of strokes.entries()) {
      const again = strokes.find(({ at }, later) => later > index && at > one.at + ONE_STROKE);
      const until = again === undefined ? one.until : again.at - releaseIn(again.at - one.at);
      if (until < one.until) found.set(one, { ...one, until });
    }
  }
  return all.map((one) => found.get(one) ?? one);
}
