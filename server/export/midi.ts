/**
 * What is played as a Standard MIDI File 1.0: a track for tempo, meter and markers, then one a voice or manual.
 *
 * Times are those of the timeline, to a ten-thousandth of a crotchet. There is no touch in it: how a key is struck and let go is
 * the synthesiser’s.
 */
import { add, divide, type Time, time, toNumber, ZERO } from '../../grammar/time';
import { type Clock, isThreefold } from '../score/clock';
import type { Meter, PlacedProblem, Score } from '../score/score';
import type { ExportOptions } from './formats';
import { Losses, NOWHERE } from './losses';
import { bigEndian, META, meta, metaText, midiFile, type TrackEvent } from './midi/bytes';
import { type Keyboard, keyboardFor } from './midi/keys';
import { type PlayedKey, playedKeys, programOf } from './midi/tracks';
import { type SoundingPiece, soundingOf } from './sounding';

export interface MidiExport {
  /** Empty where the score is refused, which a problem of level `error` says. */
  readonly bytes: Uint8Array;
  readonly problems: readonly PlacedProblem[];
}

/** Ticks of a crotchet: whole for values down to 1/128 of a semibreve, triplets of triplets, quintuplets and septuplets. */
export const TICKS = 10080;

const ticksOf = (length: Time): number => Math.round((Number(length.n) * 4 * TICKS) / Number(length.d));

/** A piece and the time at which it begins, pieces one after another. */
export interface Begun {
  readonly piece: SoundingPiece;
  readonly start: Time;
}

export function exportMidi(score: Score, options: ExportOptions): MidiExport {
  const { heard, problems } = soundingOf(score, options);
  if (heard === undefined) return { bytes: new Uint8Array(), problems };
  const begun = beginnings(heard.pieces);
  const keyboard = keyboardFor(heard.tuning, options.midiTuning ?? 'notes');
  const tracks = playedKeys(score, begun, keyboard, options.tracks ?? 'voice', ticksOf);
  const losses = new Losses();
  for (const { code, slots } of keyboard.unsaid) losses.add(code, slots, NOWHERE);
  const program = programOf(score.environment);
  const notes = tracks.map(({ name, keys }) => noteTrack(name, keys, keyboard, program));
  return {
    bytes: midiFile([conductor(score, begun, keyboard), ...notes], TICKS),
    problems: [...problems, ...losses.problems()],
  };
}

function beginnings(pieces: readonly SoundingPiece[]): readonly Begun[] {
  let start = ZERO;
  return pieces.map((piece) => {
    const begun = { piece, start };
    start = add(start, piece.duration);
    return begun;
  });
}

// ─── tempo, meter, markers ───────────────────────────────────────────────────────────────────────────────────────

function conductor(score: Score, begun: readonly Begun[], keyboard: Keyboard): readonly TrackEvent[] {
  const { title } = score.environment;
  const name = title === undefined ? [] : [{ tick: 0, bytes: metaText(META.trackName, title) }];
  const tuning = keyboard.messages.map((bytes) => ({ tick: 0, bytes }));
  const events = begun.flatMap(({ piece, start }): TrackEvent[] => [
    ...markers(piece).map(({ onset, text }) => ({
      tick: ticksOf(add(start, onset)),
      bytes: metaText(META.marker, text),
    })),
    ...piece.meters.flatMap(({ onset, what }) => {
      const bytes = meterBytes(what);
      return bytes === undefined ? [] : [{ tick: ticksOf(add(start, onset)), bytes }];
    }),
    ...piece.tempi.map(({ onset, what }) => ({ tick: ticksOf(add(start, onset)), bytes: tempoBytes(what) })),
  ]);
  return [...name, ...tuning, ...events.sort((a, b) => a.tick - b.tick)];
}

/** Where a piece begins, and each section as often as it is played. */
function markers({ piece, passes }: SoundingPiece): { readonly onset: Time; readonly text: string }[] {
  const sections = passes.flatMap(({ section, time: often, onset, bars }, index) => {
    const goesOn = passes[index - 1]?.section === section && passes[index - 1]?.time === often;
    const bar = `bar ${bars[0].number}`;
    const text = section === undefined ? bar : `${section}${often > 1 ? ` (${often})` : ''}, ${bar}`;
    return goesOn ? [] : [{ onset, text }];
  });
  return piece.name === '' ? sections : [{ onset: ZERO, text: piece.name }, ...sections];
}

/** Microseconds of a crotchet, in three bytes. */
const tempoBytes = ({ perSecond }: Clock): number[] => {
  const microseconds = Math.round(1e6 * toNumber(divide(time(1, 4), perSecond)));
  return meta(META.tempo, bigEndian(Math.min(0xffffff, Math.max(1, microseconds)), 3));
};

/** Beats, their value as a power of two, MIDI clocks (24 a crotchet) of a beat; a value that is no such power cannot be said. */
function meterBytes({ beats, beatValue }: Meter): number[] | undefined {
  const power = Math.log2(beatValue);
  if (!Number.isInteger(power) || beats > 255) return undefined;
  const clocks = (96 / beatValue) * (isThreefold({ beats }) ? 3 : 1);
  return meta(META.meter, [beats, power, Math.min(255, Math.max(1, Math.round(clocks))), 8]);
}

// ─── notes ───────────────────────────────────────────────────────────────────────────────────────────────────────

/** Plucked strings know no loud and soft. */
const VELOCITY = 80;

function noteTrack(name: string, keys: readonly PlayedKey[], keyboard: Keyboard, program: number): TrackEvent[] {
  const channels = [...new Set(keys.map(({ channel }) => channel))].sort((a, b) => a - b);
  const settings = channels.flatMap((channel) => [[0xc0 | channel, program], ...keyboard.onChannel(channel)]);
  const strokes = keys.flatMap(({ key, channel, from, to }) => [
    { tick: from, isEnd: false, bytes: [0x90 | channel, key, VELOCITY] },
    { tick: to, isEnd: true, bytes: [0x80 | channel, key, 0] },
  ]);
  // A key comes up before it is struck again at the same moment.
  strokes.sort((a, b) => a.tick - b.tick || Number(b.isEnd) - Number(a.isEnd));
  return [
    { tick: 0, bytes: metaText(META.trackName, name) },
    ...settings.map((bytes) => ({ tick: 0, bytes })),
    ...strokes.map(({ tick, bytes }) => ({ tick, bytes })),
  ];
}
