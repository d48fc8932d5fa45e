/** What holds of every tuning: twelve fifths are seven octaves less a Pythagorean comma, and there and back is nothing. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { temperamentNames } from '../../grammar/vocabulary/temperaments';
import { FIFTH, FOURTH, MAJOR_THIRD } from '../../server/tuning/beats';
import { layBearings, retunings } from '../../server/tuning/laying';
import { size, sumOf } from '../../server/tuning/tempering';
import { everyInterval, type Tuning } from '../../server/tuning/tuning';
import { tunedTo } from '../helpers/tuned';

const EB_TO_GSHARP = ['eb-bb', 'bb-f', 'f-c', 'c-g', 'g-d', 'd-a', 'a-e', 'e-b', 'b-f#', 'f#-c#', 'c#-g#'];
const WOLVES = ['g#-eb', 'c#-ab', 'd#-bb', 'f#-db'];

const comma = fc.constantFrom('sc', 'pc');
const row = fc
  .tuple(fc.constantFrom('+', '-'), fc.integer({ min: 1, max: 3 }), fc.integer({ min: 3, max: 24 }), comma)
  .map(([sign, n, d, of]) => `${sign}${n}/${d} ${of}`);

const house = fc
  .tuple(fc.uniqueArray(fc.constantFrom(...EB_TO_GSHARP)), fc.array(row, { minLength: 11, maxLength: 11 }))
  .map(
    ([fifths, rows]) =>
      `temperament house\n${fifths.map((fifth, i) => `  ${fifth} ${rows[i]}\n`).join('')}  g#-eb rest\n`,
  );

const meantone = fc
  .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 3, max: 30 }), comma, fc.constantFrom(...WOLVES))
  .map(([n, d, of, wolf]) => tunedTo(`meantone ${n}/${d} ${of} wolf ${wolf}`));

const tuning = fc.oneof(
  fc.constantFrom(...temperamentNames).map((name) => tunedTo(name)),
  meantone,
  house.map((rows) => tunedTo('house', 415, rows)),
);

describe('every tuning', () => {
  it('has twelve fifths that lack one Pythagorean comma together', () => {
    fc.assert(
      fc.property(tuning, ({ temperament }) => {
        const { sc, pc, cents } = sumOf(temperament.fifths);
        expect([sc, pc, cents]).toEqual([{ n: 0, d: 1 }, { n: -1, d: 1 }, 0]);
        expect(size(sumOf(temperament.fifths))).toBeCloseTo(-1200 * Math.log2(531441 / 524288), 9);
      }),
      { numRuns: 300 },
    );
  });
  it('has major thirds that come to as many dieses as there are circles of three: twelve make four octaves', () => {
    fc.assert(
      fc.property(tuning, (one) => {
        const total = everyInterval(one, MAJOR_THIRD, 60).reduce((sum, { width }) => sum + width, 0);
        // Three pure thirds lack the diesis 128/125 to an octave.
        expect(total).toBeCloseTo(4 * 1200 * Math.log2(128 / 125), 6);
      }),
      { numRuns: 100 },
    );
  });
  it('is nothing but itself when it is retuned there and back', () => {
    fc.assert(
      fc.property(tuning, tuning, (one, other) => {
        const there = new Map(retunings(one, other).map(({ to, cents }) => [(to * 7 + 1200) % 12, cents]));
        const back = new Map(retunings(other, one).map(({ to, cents }) => [(to * 7 + 1200) % 12, cents]));
        expect([...back.keys()].sort()).toEqual([...there.keys()].sort());
        for (const [key, cents] of there) expect(cents + (back.get(key) ?? Number.NaN)).toBeCloseTo(0, 9);
        expect(retunings(one, one)).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });
  it('is laid by ear note after note, each from one that is laid already', () => {
    fc.assert(
      fc.property(tuning, (one) => {
        const laid = new Set<string>();
        const name = ({ letter, alteration }: { letter: string; alteration: number }) => `${letter}${alteration}`;
        for (const { tunes, low, high } of layBearings(one)) {
          if (tunes === undefined) expect([low, high].every((pitch) => laid.has(name(pitch)))).toBe(true);
          else if (laid.size > 0) expect([low, high].filter((pitch) => laid.has(name(pitch)))).toHaveLength(1);
          laid.add(name(low));
          laid.add(name(high));
        }
        expect(laid.size).toBe(12);
      }),
      { numRuns: 100 },
    );
  });
  it('beats the same by the fifth as by the fourth that completes the octave, each heard at its partial', () => {
    fc.assert(
      fc.property(tuning, (one: Tuning) => {
        const fifths = everyInterval(one, FIFTH, 48);
        const fourths = everyInterval(one, FOURTH, 60);
        // The fourth from the upper note of a fifth to the octave of its lower one.
        for (const fifth of fifths) {
          const fourth = fourths.find(
            ({ low, high }) =>
              low.letter === fifth.high.letter &&
              high.letter === fifth.low.letter &&
              low.alteration === fifth.high.alteration,
          );
          if (fourth !== undefined) expect(fourth.width).toBeCloseTo(-fifth.width, 6);
        }
      }),
      { numRuns: 100 },
    );
  });
});
