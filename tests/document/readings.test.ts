/** Findings that arise in some readings only. */
import { describe, expect, it } from 'vitest';
import { make } from '../../server/cli/making';
import { formats } from '../../server/export/formats';
import { projectOf } from '../../server/workspace/project';
import { memoryHost } from '../helpers/memoryHost';
import { findingOf, HEAD, passage } from '../helpers/music';

// In L the tie leads to another pitch; all else is well.
const TIE = 'system upper C1 lower F4 meter C\n dessus | 2 c5=:L <K: 2 c5 ; L: 2 d5> |||\n';
const TEXT = `${HEAD}reading plain "as the leaf has it"\n  takes L\n\n${TIE}`;

describe('a finding that arises in some readings only', () => {
  it('says in which', () => {
    const finding = findingOf(passage(TIE, 'reading plain "as the leaf has it"\n  takes L\n'), 'tie-other-pitch');
    expect(finding.readings).toEqual(['plain', 'L']);
    expect(finding.message).toBe('In plain, L: The tie on c5 finds no c5 in the next event.');
  });
  it('names no reading where it arises in all', () => {
    const finding = findingOf(passage(TIE.replace(':L', '').replace('K: 2 c5', 'K: 2 e5')), 'tie-other-pitch');
    expect(finding.readings).toBeUndefined();
    expect(finding.message).toBe('The tie on c5 finds no c5 in the next event.');
  });
  it('keeps its readings from being exported, and no others', () => {
    const project = projectOf(memoryHost().includes('passage.bent'), 'passage.bent', TEXT);
    const format = formats.find(({ name }) => name === 'json') as (typeof formats)[number];
    const made = (reading: string): number =>
      make(project, { format, reading, options: { clefs: 'source', leaveGaps: false } }).files.length;
    expect(['written', 'K', 'plain', 'L'].map(made)).toEqual([1, 1, 0, 0]);
  });
});
