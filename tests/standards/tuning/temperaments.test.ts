/** Every temperament with a name, and the meantones, against published lists to a thousandth of a cent. */
import { describe, expect, it } from 'vitest';
import { temperamentNames } from '../../../grammar/vocabulary/temperaments';
import { FIFTH, MAJOR_THIRD } from '../../../server/tuning/beats';
import { noteName } from '../../../server/tuning/fifths';
import { PURE_MAJOR_THIRD, size, sumOf } from '../../../server/tuning/tempering';
import { centsFromA, centsFromC, everyInterval, offset } from '../../../server/tuning/tuning';
import { FROM_A, FROM_C, place, tunedTo } from '../../helpers/tuned';
import { publishedTables } from './tables';

const numbers = (row: string): number[] => row.split(' ').map(Number);

/** Half of the last place that is printed. */
const toPlaces = (found: readonly number[], printed: string, places: number): void => {
  const list = numbers(printed);
  expect(found).toHaveLength(list.length);
  for (const [index, number] of list.entries()) {
    expect(Math.abs((found[index] ?? Number.NaN) - number), `${index}`).toBeLessThan(0.5001 * 10 ** -places);
  }
};

describe.each(publishedTables)(
  '$tuning, as in $source',
  ({ tuning: words, fifths, fromC, fromA, offset: offsets, smallest, widest }) => {
    const tuning = tunedTo(words);

    it('has these fifths, which together lack a Pythagorean comma', () => {
      toPlaces(tuning.temperament.fifths.map(size), fifths, 3);
      expect(size(sumOf(tuning.temperament.fifths))).toBeCloseTo(-23.46001, 5);
      toPlaces(
        everyInterval(tuning, FIFTH, 60).map(({ width }) => width),
        fifths,
        3,
      );
    });
    it('has these notes, from c and from a', () => {
      toPlaces(
        FROM_C.map((note) => centsFromC(tuning, place(note))),
        fromC,
        3,
      );
      toPlaces(
        FROM_A.map((note) => centsFromA(tuning, place(note))),
        fromA,
        3,
      );
    });
    it('differs so from equal temperament on the same a', () => {
      // The lists round these from values already rounded to thousandths.
      const found = FROM_C.map((note) => offset(tuning, place(note)));
      for (const [index, number] of numbers(offsets).entries())
        expect(Math.abs((found[index] ?? 0) - number)).toBeLessThan(0.0056);
    });
    it('has these thirds as its smallest and its widest', () => {
      const thirds = everyInterval(tuning, MAJOR_THIRD, 60).map(({ low, high, width }) => ({
        name: `${noteName(place(low.letter) + 7 * low.alteration)}-${noteName(place(high.letter) + 7 * high.alteration)}`,
        size: PURE_MAJOR_THIRD + width,
      }));
      for (const printed of [smallest, widest]) {
        const [cents = '', ...names] = printed.replaceAll(',', '').split(' ');
        const such = thirds.filter(({ size: found }) => Math.abs(found - Number(cents)) < 0.0006);
        expect(such.map(({ name }) => name).sort()).toEqual([...names].sort());
      }
      const sizes = thirds.map(({ size: found }) => found);
      expect(Math.min(...sizes)).toBeCloseTo(Number(smallest.split(' ')[0]), 2);
      expect(Math.max(...sizes)).toBeCloseTo(Number(widest.split(' ')[0]), 2);
    });
  },
);

describe('the temperaments with a name', () => {
  it('are all compared with a list', () => {
    const compared = new Set(publishedTables.map(({ tuning }) => tuning));
    expect(temperamentNames.filter((name) => !compared.has(name))).toEqual([]);
  });
  it.each(temperamentNames)('%s closes its circle exactly, in fractions of commas', (name) => {
    const sum = sumOf(tunedTo(name).temperament.fifths);
    expect([sum.sc, sum.pc, sum.cents]).toEqual([{ n: 0, d: 1 }, { n: -1, d: 1 }, 0]);
  });
});
