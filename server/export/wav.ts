/**
 * What is played as sound: a plucked instrument in its tuning, with its stops and its touch, as a WAV file (RIFF, PCM of 16
 * bits, one channel). The bytes come block by block, so that a long piece needs no more memory than a short one.
 */
import { instrumentName } from '../instrument/instrument';
import type { PlacedProblem, Score } from '../score/score';
import { lengthOf, mixed, type Stroke } from '../sound/mix';
import type { ExportOptions } from './formats';
import type { Chunks } from './inChunks';
import { Losses, NOWHERE } from './losses';
import { Seconds } from './seconds';
import { type Heard, soundingOf } from './sounding';
import { pluckedOnce, strokesOf } from './strokes';

export interface WavExport {
  /** Undefined where the score is refused, which a problem of level `error` says. */
  readonly content: Chunks | undefined;
  readonly problems: readonly PlacedProblem[];
}

/** Instruments that sound otherwise than what is computed here. */
const NOT_PLUCKED = /organ|regal|clavichord/;

const RATE = 44_100;
/** Seconds between two pieces, and before the first sound. */
const PAUSE = 1.5;
const LEAD = 0.2;
/** So loud that a full chord on two stops does not clip. */
const LOUDNESS = 0.5;

export function exportWav(score: Score, options: ExportOptions): WavExport {
  const { heard, problems } = soundingOf(score, options);
  if (heard === undefined) return { content: undefined, problems };
  const losses = new Losses();
  const instrument = instrumentName(score.environment);
  if (NOT_PLUCKED.test(instrument)) losses.add('export-plucked', { instrument }, NOWHERE);
  const content = { chunks: wavFile(allStrokes(score, heard)) };
  return { content, problems: [...problems, ...losses.problems()] };
}

/** Every string that is plucked, piece after piece. */
function allStrokes({ environment }: Score, { pieces, tuning }: Heard): readonly Stroke[] {
  let start = LEAD;
  return pieces.flatMap((piece) => {
    const begun = start;
    start += new Seconds(piece.tempi).at(piece.duration) + PAUSE;
    return pluckedOnce(strokesOf(environment, piece, tuning)).map(
      ({ frequency, at, until }): Stroke => ({ frequency, at: begun + at, until: begun + until }),
    );
  });
}

// ─── bytes ───────────────────────────────────────────────────────────────────────────────────────────────────────

const BYTES = 2;

function wavFile(strokes: readonly Stroke[]): Iterable<Uint8Array> {
  const samples = Math.ceil(lengthOf(strokes) * RATE);
  return {
    *[Symbol.iterator]() {
      yield header(samples * BYTES);
      let bytes = new Uint8Array();
      for (const block of mixed(strokes, RATE, LOUDNESS)) {
        if (bytes.length !== block.length * BYTES) bytes = new Uint8Array(block.length * BYTES);
        yield pcm(block, bytes);
      }
    },
  };
}

/** The chunks `RIFF`, `fmt ` and `data`, all numbers little-endian. @param size of the data in bytes */
function header(size: number): Uint8Array {
  const bytes = new Uint8Array(44);
  const view = new DataView(bytes.buffer);
  const word = (at: number, text: string): void => bytes.set(new TextEncoder().encode(text), at);
  word(0, 'RIFF');
  view.setUint32(4, 36 + size, true);
  word(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, RATE, true);
  view.setUint32(28, RATE * BYTES, true);
  view.setUint16(32, BYTES, true);
  view.setUint16(34, 8 * BYTES, true);
  word(36, 'data');
  view.setUint32(40, size, true);
  return bytes;
}

const LOUDEST = 32767;

function pcm(block: Float32Array, bytes: Uint8Array): Uint8Array {
  const view = new DataView(bytes.buffer);
  for (let n = 0; n < block.length; n++) {
    const value = Math.max(-1, Math.min(1, block[n] as number));
    view.setInt16(BYTES * n, Math.round(value * LOUDEST), true);
  }
  return bytes;
}
