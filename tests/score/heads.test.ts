/** What stands at the head of a system or is drawn anew within it (common practice). */
import { describe, expect, it } from 'vitest';
import { codes, durations, errors, messages, passage, scoreOf } from '../helpers/music';

const head = (clauses: string, music = '1 c5'): ReturnType<typeof passage> =>
  passage(`system ${clauses}\n  dessus | ${music} |||\n`);

describe('of two of a kind in one head', () => {
  it('the first clef of a stave counts, and no lanes are said to disagree', () => {
    const twice = head('upper C1 upper G2 lower F4 meter C');
    expect(messages(twice, 'repeated-clause')).toEqual(['`upper` stands twice in one `system`; the first one counts.']);
    expect(errors(twice)).toEqual([]);
    const clefs = scoreOf(twice).pieces[0]?.systems[0]?.score.changes.flatMap((change) => change.clefs ?? []);
    expect(clefs?.map(({ letter, line }) => `${letter}${line}`)).toEqual(['C1', 'F4']);
  });
  it('the first meter counts, and by it the bars are summed', () => {
    const twice = head('upper C1 meter C meter 3/4', '1 c5 | d');
    expect(codes(twice)).toContain('repeated-clause');
    expect(errors(twice)).toEqual([]);
  });
  it('the first signature of a stave counts, beside one for all staves', () => {
    const twice = head('upper C1 key bb key lower bb eb key lower eb key f# meter C');
    expect(messages(twice, 'repeated-clause')).toEqual([
      '`key lower` stands twice in one `system`; the first one counts.',
      '`key` stands twice in one `system`; the first one counts.',
    ]);
    expect(errors(twice)).toEqual([]);
    expect(codes(head('upper C1 key bb key lower bb eb meter C'))).not.toContain('repeated-clause');
  });
  it('the first meter of a change within the line counts', () => {
    const twice = head('upper C1 meter C', '1 c5 | (now meter 3/2 meter C) 1. d | 1. e');
    expect(errors(twice)).toEqual([]);
    expect(durations(twice)).toBe('1 3/2 3/2');
  });
});
