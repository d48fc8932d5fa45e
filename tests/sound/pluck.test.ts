/** The plucked string: in tune, gentle, and the same each time. */
import { describe, expect, it } from 'vitest';
import { equalTemperament, pluck } from '../../server/sound/pluck';

const RATE = 48_000;

/**
 * The frequency near a wished one, measured without knowledge of how the sound was made: the phase of the fundamental, seen
 * through a window, is compared at two moments, and what it has turned between them is the frequency (the phase vocoder of
 * Flanagan and Golden, Bell System Technical Journal, 1966).
 */
function measured(samples: Float32Array, near: number): number {
  const length = Math.round((RATE / near) * 24);
  const apart = Math.round((RATE / near) * 40);
  const first = phase(samples, 4_000, length, near);
  const second = phase(samples, 4_000 + apart, length, near);
  const turned = second - first;
  const wrapped = turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI));
  return near + (wrapped * RATE) / (2 * Math.PI * apart);
}

/** Against a turning pointer of that frequency that has turned from the sound's beginning. */
function phase(samples: Float32Array, from: number, length: number, frequency: number): number {
  let [re, im] = [0, 0];
  for (let n = 0; n < length; n++) {
    // A Blackman-Harris window keeps the other partials out.
    const x = (2 * Math.PI * n) / length;
    const window = 0.35875 - 0.48829 * Math.cos(x) + 0.14128 * Math.cos(2 * x) - 0.01168 * Math.cos(3 * x);
    const angle = (2 * Math.PI * frequency * (from + n)) / RATE;
    re += window * (samples[from + n] ?? 0) * Math.cos(angle);
    im -= window * (samples[from + n] ?? 0) * Math.sin(angle);
  }
  return Math.atan2(im, re);
}

const cents = (a: number, b: number): number => 1200 * Math.log2(a / b);

describe('a plucked string', () => {
  // From GG of a French harpsichord to f3, at the low French pitch, the usual low pitch of today, and the modern one.
  for (const pitchOfA of [392, 415, 440]) {
    it(`is in tune within a twentieth of a cent at a4 = ${pitchOfA}`, () => {
      for (const key of [31, 40, 45, 52, 57, 60, 64, 69, 72, 76, 81, 86, 89]) {
        const wished = equalTemperament(key, pitchOfA);
        const found = measured(pluck({ frequency: wished, seconds: 2.5, rate: RATE }), wished);
        expect(Math.abs(cents(found, wished)), `key ${key}`).toBeLessThan(0.05);
      }
    });
  }

  it('is measured by something that notices a tenth of a cent', () => {
    const wished = equalTemperament(60, 415);
    const sharp = pluck({ frequency: wished * 2 ** (0.1 / 1200), seconds: 2.5, rate: RATE });
    expect(Math.abs(cents(measured(sharp, wished), wished))).toBeGreaterThan(0.05);
  });

  it('is gentle: never louder than a fifth of what can be, and dying away', () => {
    const samples = pluck({ frequency: 220, seconds: 3, rate: RATE });
    const loudest = (from: number, to: number): number =>
      samples.slice(from, to).reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    expect(loudest(0, samples.length)).toBeLessThanOrEqual(0.2001);
    expect(loudest(2 * RATE, 2.5 * RATE)).toBeLessThan(loudest(0, RATE / 2) / 4);
    expect(Math.abs(samples.at(-1) ?? 1)).toBeLessThan(0.001);
  });

  it('is the same to the sample each time', () => {
    const once = pluck({ frequency: 311, seconds: 0.5, rate: RATE });
    expect(pluck({ frequency: 311, seconds: 0.5, rate: RATE })).toEqual(once);
  });
});
