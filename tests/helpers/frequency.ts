/** Frequencies measured in samples by a Fourier transform, without knowledge of how a sound was made. */
import FFT from 'fft.js';

/** Samples that are looked at: a second and a half. */
const LENGTH = 2 ** 16;
/** The spectrum is drawn finer by silence after them. */
const SIZE = 4 * LENGTH;
const transform = new FFT(SIZE);

/** A semitone to either side is looked at. */
const AROUND = 2 ** (1 / 12);

/**
 * The frequency in hertz of the strongest partial within a semitone of one that is expected.
 *
 * Around its peak the logarithm of the spectrum is very nearly a parabola, whose vertex lies between the lines of the transform.
 * @param from the first sample that is looked at
 */
export function measured(samples: Float32Array, near: number, rate: number, from = 4_000): number {
  const levels = levelsOf(samples.subarray(from, from + LENGTH));
  const [first, last] = [near / AROUND, near * AROUND].map((hertz) => Math.round((hertz * SIZE) / rate)) as [
    number,
    number,
  ];
  let peak = first;
  for (let line = first; line <= last; line++) if (level(levels, line) > level(levels, peak)) peak = line;
  const [before, at, after] = [level(levels, peak - 1), level(levels, peak), level(levels, peak + 1)];
  const beside = (before - after) / (2 * (before - 2 * at + after));
  return ((peak + beside) * rate) / SIZE;
}

const level = (levels: Float64Array, line: number): number => levels[line] ?? Number.NEGATIVE_INFINITY;

/** Of each line of the transform, the logarithm of its power. */
function levelsOf(samples: Float32Array): Float64Array {
  const input = new Array<number>(SIZE).fill(0);
  for (let n = 0; n < samples.length; n++) input[n] = (samples[n] as number) * blackmanHarris(n / samples.length);
  const spectrum: number[] = transform.createComplexArray();
  transform.realTransform(spectrum, input);
  return Float64Array.from({ length: SIZE / 2 }, (_, line) =>
    Math.log((spectrum[2 * line] ?? 0) ** 2 + (spectrum[2 * line + 1] ?? 0) ** 2),
  );
}

/** A window that keeps the other partials out. */
function blackmanHarris(part: number): number {
  const x = 2 * Math.PI * part;
  return 0.35875 - 0.48829 * Math.cos(x) + 0.14128 * Math.cos(2 * x) - 0.01168 * Math.cos(3 * x);
}
