/** The plucked string: in tune, gentle, and the same each time. */
import { describe, expect, it } from 'vitest';
import { pluck } from '../../server/sound/pluck';
import { measured } from '../helpers/frequency';

const RATE = 48_000;

/** The frequency of a MIDI key in equal temperament. */
const equalTemperament = (key: number, pitchOfA: number): number => pitchOfA * 2 ** ((key - 69) / 12);

const cents = (a: number, b: number): number => 1200 * Math.log2(a / b);

describe('a plucked string', () => {
  // From GG of a French harpsichord to f3, at the low French pitch, the usual low pitch of today, and the modern one.
  for (const pitchOfA of [392, 415, 440]) {
    it(`is in tune within a twentieth of a cent at a4 = ${pitchOfA}`, () => {
      for (const key of [31, 40, 45, 52, 57, 60, 64, 69, 72, 76, 81, 86, 89]) {
        const wished = equalTemperament(key, pitchOfA);
        const found = measured(pluck({ frequency: wished, seconds: 2.5, rate: RATE }), wished, RATE);
        expect(Math.abs(cents(found, wished)), `key ${key}`).toBeLessThan(0.05);
      }
    });
  }

  it('is measured by something that notices a tenth of a cent', () => {
    const wished = equalTemperament(60, 415);
    const sharp = pluck({ frequency: wished * 2 ** (0.1 / 1200), seconds: 2.5, rate: RATE });
    expect(Math.abs(cents(measured(sharp, wished, RATE), wished))).toBeGreaterThan(0.05);
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
