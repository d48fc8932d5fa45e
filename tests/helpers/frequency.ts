/** Frequencies measured in samples, without knowledge of how a sound was made. */

/**
 * The frequency near a wished one, measured without knowledge of how the sound was made: the phase of the fundamental, seen
 * through a window, is compared at two moments, and what it has turned between them is the frequency (the phase vocoder of
 * Flanagan and Golden, Bell System Technical Journal, 1966).
 */
export function measured(samples: Float32Array, near: number, rate: number, from = 4_000): number {
  const length = Math.round((rate / near) * 24);
  const apart = Math.round((rate / near) * 40);
  const first = phase(samples, from, length, near, rate);
  const second = phase(samples, from + apart, length, near, rate);
  const turned = second - first;
  const wrapped = turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI));
  return near + (wrapped * rate) / (2 * Math.PI * apart);
}

/** Against a turning pointer of that frequency that has turned from the sound's beginning. */
function phase(samples: Float32Array, from: number, length: number, frequency: number, rate: number): number {
  let [re, im] = [0, 0];
  for (let n = 0; n < length; n++) {
    // A Blackman-Harris window keeps the other partials out.
    const x = (2 * Math.PI * n) / length;
    const window = 0.35875 - 0.48829 * Math.cos(x) + 0.14128 * Math.cos(2 * x) - 0.01168 * Math.cos(3 * x);
    const angle = (2 * Math.PI * frequency * (from + n)) / rate;
    re += window * (samples[from + n] ?? 0) * Math.cos(angle);
    im -= window * (samples[from + n] ?? 0) * Math.sin(angle);
  }
  return Math.atan2(im, re);
}
