/** What is said of one sign at once is what the whole file has of it. */
import { describe, expect, it } from 'vitest';
import { type SignHere, signsNear, signsOf } from '../../server/features/openSigns/openSigns';
import { signAt } from '../../server/features/signHover';
import { sampleNames, sampleProject } from '../helpers/samples';

const said = ({ start, end, typed, address, ways }: SignHere): unknown => ({
  start,
  end,
  typed,
  address,
  ways: ways.map(({ readings, table, row, notes, settled }) => ({ readings, table, row: row?.label, notes, settled })),
});

describe('a sign, of which only the systems around were played', () => {
  it.each(sampleNames)('of %s is the same as when all of it was', (name) => {
    const project = sampleProject(name);
    const systems = project.tree.blocks.flatMap(({ kind }, block) => (kind === 'system' ? [block] : []));
    const near = systems.flatMap((block) => signsNear(project, block).map(said));
    // Asked last: a version of which all is known is not played again.
    const whole = signsOf(project).map(said);
    for (const sign of whole) expect(near).toContainEqual(sign);
    for (const { start } of signsOf(project)) expect(said(signAt(project, start) as SignHere)).toBeOneOf(whole);
  });
});
