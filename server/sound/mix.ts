/** Many plucked strings together, block by block: only strings that still sound are kept. */
import { type Pluck, pluck, samplesOf } from './pluck';

export interface Stroke {
  /** Hertz. */
  readonly frequency: number;
  /** Seconds from the beginning: when the string is plucked, and when its key comes up. */
  readonly at: number;
  readonly until: number;
}

/** Seconds in which a string of 220 hertz falls by sixty decibels; bass strings ring longer, treble strings shorter (common practice). */
const DECAY = 4.5;
const DECAY_AT = 220;
const DECAY_SLOPE = 0.4;
/** Seconds in which a damper stops a string: from the highest to the lowest (common practice). */
const DAMPING = { least: 0.06, most: 0.12 };

const decayOf = (frequency: number): number => DECAY * (DECAY_AT / frequency) ** DECAY_SLOPE;

const dampingOf = (frequency: number): number =>
  Math.min(DAMPING.most, Math.max(DAMPING.least, DAMPING.least * (1760 / frequency) ** 0.25));

/** Seconds from the beginning to the last sound of strokes. */
export const lengthOf = (strokes: readonly Stroke[]): number =>
  strokes.reduce((most, { until, frequency }) => Math.max(most, until + dampingOf(frequency)), 0);

interface Sounding {
  /** The sample at which it begins. */
  readonly start: number;
  readonly samples: Float32Array;
}

/** Places for samples that are used again and again: a piece has thousands of notes, and few at a time. */
class Places {
  private readonly free = new Map<number, Float32Array[]>();

  /** One that holds so many samples, and may have others in it. */
  take(count: number): Float32Array {
    const size = 2 ** Math.ceil(Math.log2(count));
    return (this.free.get(size)?.pop() ?? new Float32Array(size)).subarray(0, count);
  }

  give({ buffer }: Float32Array): void {
    const whole = new Float32Array(buffer);
    const same = this.free.get(whole.length);
    if (same === undefined) this.free.set(whole.length, [whole]);
    else same.push(whole);
  }
}

/** Samples of a block: under a fifth of a second. */
const BLOCK = 8192;

/**
 * All strokes together, in blocks of samples between −1 and 1 as long as nothing clips. The same strokes give the same samples.
 * A block is written over by the next: who keeps it copies it.
 * @param loudness of each string, 1 as it is plucked alone
 */
export function* mixed(strokes: readonly Stroke[], rate: number, loudness: number): Generator<Float32Array> {
  const waiting = [...strokes].sort((a, b) => a.at - b.at || a.frequency - b.frequency);
  const length = Math.ceil(lengthOf(strokes) * rate);
  const places = new Places();
  const whole = new Float32Array(BLOCK);
  let sounding: Sounding[] = [];
  let next = 0;
  for (let from = 0; from < length; from += BLOCK) {
    const to = Math.min(length, from + BLOCK);
    for (; next < waiting.length && Math.round((waiting[next] as Stroke).at * rate) < to; next++)
      sounding.push(plucked(waiting[next] as Stroke, rate, places));
    const block = whole.subarray(0, to - from).fill(0);
    for (const one of sounding) addTo(block, from, one, loudness);
    const isOver = ({ start, samples }: Sounding): boolean => start + samples.length <= to;
    for (const { samples } of sounding.filter(isOver)) places.give(samples);
    sounding = sounding.filter((one) => !isOver(one));
    yield block;
  }
}

function plucked(stroke: Stroke, rate: number, places: Places): Sounding {
  const note = pluckOf(stroke, rate);
  return { start: Math.round(stroke.at * rate), samples: pluck(note, places.take(samplesOf(note))) };
}

/** How a string sounds, from its stroke until it is damped; what has died away before is left out. */
export function pluckOf({ frequency, at, until }: Stroke, rate: number): Pluck {
  const [decay, damping] = [decayOf(frequency), dampingOf(frequency)];
  return { frequency, seconds: Math.min(until - at, decay) + damping, rate, decay, damping };
}

function addTo(block: Float32Array, from: number, { start, samples }: Sounding, loudness: number): void {
  const first = Math.max(0, start - from);
  const last = Math.min(block.length, start + samples.length - from);
  for (let n = first; n < last; n++) block[n] = (block[n] as number) + loudness * (samples[n + from - start] as number);
}
