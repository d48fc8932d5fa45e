/**
 * A plucked string, computed: a burst of noise in a delay line that is fed back through a gentle low pass.
 *
 * After Karplus and Strong, "Digital Synthesis of Plucked-String and Drum Timbres", Computer Music Journal 7/2, 1983. The
 * length of a string is no whole number of samples: the rest is an all-pass filter whose delay is exact at the pitch itself
 * (Jaffe and Smith, "Extensions of the Karplus-Strong Plucked-String Algorithm", in the same issue).
 */

export interface Pluck {
  /** Hertz. */
  readonly frequency: number;
  readonly seconds: number;
  /** Samples a second. */
  readonly rate: number;
  /** Seconds in which the sound falls by sixty decibels; as a rule four. */
  readonly decay?: number;
  /** Seconds in which the string is damped at the end; as a rule a thirtieth. */
  readonly damping?: number;
}

/** How many samples a note has. */
export const samplesOf = ({ seconds, rate }: Pick<Pluck, 'seconds' | 'rate'>): number =>
  Math.max(1, Math.round(seconds * rate));

/** The low pass that averages two samples delays by half a sample, whatever the frequency. */
const LOW_PASS_DELAY = 0.5;
/** The all-pass filter is stable and smooth for delays between these. */
const LEAST_DELAY = 0.1;
/** Seconds in which the sound falls by sixty decibels. */
const DECAY = 4;
/** The loudest sample: loud enough beside speech, and chords do not clip. */
const LEVEL = 0.2;
/** Seconds in which the string is damped at the end. */
const DAMPING = 0.03;

/**
 * The samples of one plucked note, between −1 and 1. Equal notes are equal to the sample.
 * @param samples where they are written, if not to a new place: as many as `samplesOf` says
 */
export function pluck(
  { frequency, seconds, rate, decay = DECAY, damping = DAMPING }: Pluck,
  samples: Float32Array = new Float32Array(samplesOf({ seconds, rate })),
): Float32Array {
  const period = rate / frequency;
  const whole = Math.floor(period - LOW_PASS_DELAY - LEAST_DELAY);
  const allPass = allPassFor(period - LOW_PASS_DELAY - whole, (2 * Math.PI * frequency) / rate);
  const loss = 10 ** (-3 / (frequency * decay));
  const line = burst(whole);
  let [before, allPassIn, allPassOut] = [0, 0, 0];
  for (let n = 0; n < samples.length; n++) {
    const at = n % whole;
    const out = line[at] ?? 0;
    samples[n] = out;
    const averaged = (loss * (out + before)) / 2;
    before = out;
    // y[n] = c·x[n] + x[n−1] − c·y[n−1]
    allPassOut = allPass * averaged + allPassIn - allPass * allPassOut;
    allPassIn = averaged;
    line[at] = allPassOut;
  }
  return shaped(samples, Math.round(damping * rate));
}

/** The coefficient of a first-order all-pass filter that delays by so many samples at an angular frequency. */
const allPassFor = (delay: number, omega: number): number =>
  Math.sin(((1 - delay) * omega) / 2) / Math.sin(((1 + delay) * omega) / 2);

/** Noise that is the same each time, softened as by a quill that is not too hard, without a constant part. */
function burst(length: number): Float64Array {
  const line = new Float64Array(length);
  let state = 1;
  let soft = 0;
  for (let i = 0; i < length; i++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    soft = (soft + (state / 2 ** 31 - 1)) / 2;
    line[i] = soft;
  }
  const mean = line.reduce((sum, value) => sum + value, 0) / length;
  return line.map((value) => value - mean);
}

/** At the usual level, and damped at the end so that it does not click. */
function shaped(samples: Float32Array, damped: number): Float32Array {
  let loudest = 0;
  for (const value of samples) loudest = Math.max(loudest, Math.abs(value));
  const level = LEVEL / (loudest || 1);
  const end = samples.length;
  const tail = Math.min(end, damped);
  for (let n = 0; n < end; n++) samples[n] = (samples[n] as number) * level * Math.min(1, (end - n) / tail);
  return samples;
}
