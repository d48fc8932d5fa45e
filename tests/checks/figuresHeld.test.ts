/** Figures that hold on (common practice: the line begins at the figures of an earlier note). */
import { describe, expect, it } from 'vitest';
import { findingOf, messages, passage } from '../helpers/music';

const CODE = 'figures-hold-nothing';
const bass = (figures: string, next = '') => {
  const above = `  basse | 2 c3 d |\n    fig | ${figures} |\n`;
  return passage(
    `system upper C1 lower F4 meter C\n${above}${next === '' ? '' : `system\n  basse | 1 e3 |\n    fig | ${next} |\n`}`,
  );
};

describe('figures that hold on', () => {
  it('where none are before are told at their note', () => {
    for (const figures of ['= 6', '_ =', '= =']) {
      const finding = findingOf(bass(figures), CODE);
      expect(finding.message).toBe('basse: “=” beneath this note says that figures hold on, but none stand before it.');
      expect(finding.level).toBe('warning');
    }
    expect(messages(bass('_ _', '='), CODE)).toHaveLength(1);
  });

  it('from a note before, over a note without any, or from the system above are let be', () => {
    for (const found of [bass('6 ='), bass('_ _'), bass('6 _', '='), bass('6 =', '=')]) {
      expect(messages(found, CODE)).toEqual([]);
    }
  });
});
