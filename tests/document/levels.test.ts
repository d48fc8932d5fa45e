import { describe, expect, it } from 'vitest';
import type { Finding, Level } from '../../grammar/findings/finding';
import { capped, levelled, MOST } from '../../server/document/levels';

const at = (offset: number, level: Level = 'warning'): Finding => {
  const position = { offset, line: 1, column: offset + 1 };
  const range = { start: position, end: position };
  return { code: 'include-missing', level, message: '', file: 'a.bent', range, related: [], fixes: [] };
};

const many = (count: number, level?: Level, from = 0): Finding[] =>
  Array.from({ length: count }, (_, i) => at(from + i, level));

describe('findings', () => {
  it('stand in the order of the text, at one place the gravest first', () => {
    const shown = capped([[at(5), at(2, 'hint')], [at(2, 'error')]], [at(3)]);
    expect(shown.map(({ range, level }) => [range.start.offset, level])).toEqual([
      [2, 'error'],
      [2, 'hint'],
      [3, 'warning'],
      [5, 'warning'],
    ]);
  });

  it('of one lane are not more than 200, with one that counts the rest where the rest begins', () => {
    const shown = capped([many(MOST.lane + 7), many(3, 'info', 900)], []);
    expect(shown).toHaveLength(MOST.lane + 1 + 3);
    expect(shown[MOST.lane]).toMatchObject({
      code: 'and-more',
      message: 'Further findings in this lane that are not shown: 7.',
      range: { start: { offset: MOST.lane } },
    });
  });

  it('that are grave are not crowded out by hints, and what is hidden keeps its weight', () => {
    const shown = capped([[...many(MOST.lane, 'hint'), at(5000, 'error')]], []);
    expect(shown.filter(({ level }) => level === 'error').map(({ code }) => code)).toEqual(['include-missing']);
    const errors = capped([many(MOST.lane + 1, 'error')], []);
    expect(errors.find(({ code }) => code === 'and-more')?.level).toBe('error');
  });

  it('of one file are not more than 2,000, all others counted once', () => {
    const lanes = Array.from({ length: 20 }, (_, i) => many(MOST.lane + 1, 'warning', i * 1000));
    const shown = capped(lanes, []);
    expect(shown).toHaveLength(MOST.file + 1);
    const message = `Further findings in this file that are not shown: ${20 * (MOST.lane + 1) - MOST.file}.`;
    expect(shown.filter(({ code }) => code === 'and-more').map((one) => one.message)).toEqual([message]);
  });

  it('take the level wished for, or none', () => {
    expect(levelled(at(0, 'warning'), {})?.level).toBe('error');
    expect(levelled(at(0), { 'include-missing': 'hint' })?.level).toBe('hint');
    expect(levelled(at(0), { 'include-missing': 'ignore' })).toBeUndefined();
  });
});
