/** What an export tells of a score: bars in their order, each with its piece, and only those that are exported. */
import { describe, expect, it } from 'vitest';
import { withOrnaments } from '../../server/export/ornaments';
import { sampleProject } from '../helpers/samples';

const house = sampleProject('lamento.bent').analysis.score('house');
const told = (options: Parameters<typeof withOrnaments>[1]): string[] => {
  if (house === undefined) throw new Error('the lamento has no reading house');
  const { problems } = withOrnaments(house, { ornaments: 'full', ...options });
  return problems.map(
    ({ problem }) => `${problem.code} ${problem.slots.what ?? problem.slots.sign}, ${problem.slots.bars}`,
  );
};

describe('what is told of a file of two pieces', () => {
  it('names bars in their order, not voice by voice, with their piece', () => {
    expect(told({})).toContain(
      'ornament-printed the sign zz (tremblement, thornmere), bars 4, 8, 20, 24, 30, 34 of “Lamento”, bars 7, 9 of “Ritornello”',
    );
  });
  it('says nothing of bars that are not exported', () => {
    const all = told({ bars: { from: '9', to: '12' } });
    expect(all).toContain('ornament-printed the sign zz (tremblement, thornmere), bar 9 of “Ritornello”');
    // The unresolved sign 'x stands in bar 33.
    expect(told({}).some((one) => one.startsWith('sign-unresolved'))).toBe(true);
    expect(all.some((one) => one.startsWith('sign-unresolved'))).toBe(false);
  });
});
