/**
 * Keys that an ornament strikes while another note has them: that note gives way, and this is told. A key that is struck again
 * has to come up first. Common practice.
 */
import { compare, divide, earliest, equal, isZero, latest, subtract, type Time, time } from '../../grammar/time';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { type Clocks, endOf, lasting } from '../score/clock';
import type { PerformedEvent } from '../score/performance';
import type { BorneSign } from './bearing';
import { MOMENT, type Passage } from './passage';
import type { Piece, Pieces } from './pieces';
import type { Remarks } from './remarks';

/** Seconds before it is struck again that a key comes up: an eighth of its note, no less than the one and no more than the other. */
export const RELEASE = { least: 0.08, most: 0.25 } as const;

export interface Keyboard {
  readonly passage: Passage;
  readonly pieces: Pieces;
  readonly clocks: Clocks;
  readonly signs: ReadonlyMap<PerformedEvent, readonly BorneSign[]>;
  readonly remarks: Remarks;
  voiceName(voice: number): string;
}

/** A note that is played for a sign or a small note. */
type Stroke = Piece & { readonly pitch: NonNullable<Piece['pitch']> };

const isStroke = (piece: Piece): piece is Stroke => piece.pitch !== undefined && piece.realised !== undefined;

/** Frees the keys that the signs and small notes of a piece strike, those of one note at a time. */
export function* freeingKeys(keyboard: Keyboard): Generator<undefined, void> {
  for (const { event, strokes } of ornamentsOf(keyboard.pieces)) {
    yield;
    const last = strokes.at(-1);
    if (last === undefined) continue;
    for (const other of besides(keyboard, event, strokes)) giveWay(keyboard, event, strokes, other);
    releaseBefore(keyboard, event, last);
  }
}

/** What is played for the signs and small notes of one event. */
interface Ornament {
  readonly event: PerformedEvent;
  readonly strokes: readonly Stroke[];
}

/** All of them as they are before any key is freed. */
function ornamentsOf({ realised }: Pieces): Ornament[] {
  const found: Ornament[] = [];
  for (const [event, pieces] of realised) {
    const strokes = pieces.every(isStroke) ? pieces : pieces.filter(isStroke);
    if (strokes.length > 0) found.push({ event, strokes });
  }
  return found;
}

/** Notes on the manual of an event and on the keys of its strokes that sound with them, or until then. */
function besides({ passage }: Keyboard, event: PerformedEvent, strokes: readonly Stroke[]): readonly PerformedEvent[] {
  const [first, last] = [strokes[0] ?? event, strokes.at(-1) ?? event];
  const near = passage.onKeysNear(event, keysOf(strokes), subtract(first.onset, MOMENT), endOf(last));
  if (near.length === 0) return near;
  const manual = passage.manualAt(event.voice, event.onset);
  return near.filter((other) => passage.manualAt(other.voice, other.onset) === manual);
}

/** The keys of strokes, each once: they are few, however many strokes there are. */
function keysOf(strokes: readonly Stroke[]): number[] {
  const keys: number[] = [];
  for (const { pitch } of strokes) if (!keys.includes(pitch.midi)) keys.push(pitch.midi);
  return keys;
}

/** What another note leaves to the strokes on its key. */
function giveWay(keyboard: Keyboard, event: PerformedEvent, strokes: readonly Stroke[], other: PerformedEvent): void {
  const all = keyboard.pieces.of(other);
  const left = all.flatMap((piece) => {
    const onKey = strokes.filter(({ pitch }) => pitch.midi === piece.pitch?.midi);
    const struck = onKey.find(({ onset }) => isWithin(onset, piece));
    if (struck === undefined || isOneStroke(struck, piece, onKey)) return [piece];
    const isMain = struck.pitch.midi === event.pitch?.midi;
    const held = compare(struck.onset, endOf(piece)) < 0;
    if (held) tell(keyboard, event, other, struck, isMain ? 'key-shared' : 'key-held');
    if (!held) return [withRelease(keyboard, piece)];
    const begunBefore = compare(piece.onset, strokes[0]?.onset ?? piece.onset) < 0;
    return isMain
      ? sharing(keyboard, piece, begunBefore ? struck.onset : piece.onset, onKey.at(-1) ?? struck)
      : yielding(keyboard, piece, struck);
  });
  if (left.some((piece, index) => piece !== all[index])) keyboard.pieces.set(other, left);
}

const isWithin = (onset: Time, piece: Piece): boolean =>
  compare(piece.onset, onset) <= 0 && compare(onset, endOf(piece)) <= 0;

/** Both are struck at once, and the other is played for a sign too, or the ornament's is the longer or the last on its key. */
const isOneStroke = (struck: Stroke, piece: Piece, onKey: readonly Stroke[]): boolean =>
  equal(struck.onset, piece.onset) &&
  (isStroke(piece) || compare(endOf(piece), endOf(struck)) <= 0 || struck === onKey.at(-1));

/** A held note ends where its key is struck, or, if that is at its own beginning, with the stroke. */
function yielding(keyboard: Keyboard, piece: Piece, struck: Stroke): Piece[] {
  const atOnce = equal(struck.onset, piece.onset);
  const until = atOnce ? endOf(struck) : struck.onset;
  const before = { ...piece, duration: subtract(until, piece.onset) };
  return [atOnce ? before : withRelease(keyboard, before), silence(until, endOf(piece))];
}

/** The same note in another voice ends where the ornament begins, and sounds again with its last note. */
function sharing(keyboard: Keyboard, piece: Piece, until: Time, joined: Stroke): Piece[] {
  const end = endOf(piece);
  const again = earliest(joined.onset, end);
  return [
    withRelease(keyboard, { ...piece, duration: subtract(until, piece.onset) }),
    silence(until, again),
    { ...piece, onset: again, duration: subtract(end, again) },
  ].filter(({ duration }) => !isZero(duration));
}

const silence = (from: Time, to: Time): Piece => ({
  pitch: undefined,
  onset: from,
  duration: subtract(to, from),
  realised: undefined,
});

/** The note with the time that its key needs to come up before it is struck again, at most half of it. */
function withRelease({ clocks }: Keyboard, piece: Piece): Piece {
  const clock = clocks.at(piece.onset);
  const eighth = earliest(divide(piece.duration, time(8)), lasting(clock, RELEASE.most));
  const release = latest(lasting(clock, RELEASE.least), eighth);
  return { ...piece, released: earliest(release, divide(piece.duration, time(2))) };
}

/** The last note of a sign comes up before the next note, if that has the same key. */
function releaseBefore(keyboard: Keyboard, event: PerformedEvent, last: Stroke): void {
  const { passage, pieces } = keyboard;
  const again = (passage.after(event)?.events ?? []).some((note) => {
    const first = pieces.firstOf(note);
    return first?.pitch?.midi === last.pitch.midi && equal(first.onset, endOf(last));
  });
  const all = pieces.of(event);
  if (again && all.at(-1) === last) pieces.set(event, [...all.slice(0, -1), withRelease(keyboard, last)]);
}

function tell(
  { signs, remarks, voiceName }: Keyboard,
  event: PerformedEvent,
  other: PerformedEvent,
  { pitch }: Stroke,
  code: 'key-held' | 'key-shared',
): void {
  const slots = { pitch: pitchText(pitch), voice: voiceName(other.voice) };
  const [sign] = signs.get(event) ?? [];
  if (sign !== undefined) remarks.ofSign(sign, code, slots);
  else remarks.ofSmall(event, code, slots);
}
