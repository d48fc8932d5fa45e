/** Clefs announced at the end of a system (common practice: the warning clef is the one with which the next begins). */
import { describe, expect, it } from 'vitest';
import { codes, findingOf, mended, passage } from '../helpers/music';

const systems = (end: string, head: string, between = ''): ReturnType<typeof passage> =>
  passage(
    `system upper C1 lower F4 meter C\n dessus | 1 c5 |\n basse | 1 c3 ${end} |\n${between}system ${head}\n dessus | 1 c5 |||\n basse | 1 c4 |||\n`,
  );

describe('a clef at the head of a system', () => {
  it('may change what was in force', () => {
    expect(codes(systems('', 'lower C3'))).not.toContain('clef-change-at-head');
  });
  it('agrees with the one announced at the end of the system before', () => {
    expect(codes(systems('(now C3)', 'lower C3'))).not.toContain('clef-change-at-head');
    expect(codes(systems('(now C3)', ''))).not.toContain('clef-change-at-head');
  });
  it('is counsel where another was announced, with the announced one as a fix', () => {
    const contrary = systems('(now C3)', 'lower C4');
    const { level, message, related } = findingOf(contrary, 'clef-change-at-head');
    expect(level).toBe('hint');
    expect(message).toBe('Stave lower begins this system with C4, but the end of the system before announces C3.');
    expect(related.map((one) => one.message)).toEqual(['C3 is announced here']);
    expect(mended(contrary, 'clef-change-at-head')).toContain('system lower C3');
  });
  it('of another stave has nothing to do with it', () => {
    expect(codes(systems('(now C3)', 'upper G2'))).not.toContain('clef-change-at-head');
  });
  it('may follow a change within the last bar', () => {
    const within = passage(
      'system upper C1 lower F4 meter C\n basse | 2 c3 (now C3) c4 |\nsystem lower F4\n basse | 1 c3 |||\n',
    );
    expect(codes(within)).not.toContain('clef-change-at-head');
  });
  it('of another piece is a beginning', () => {
    expect(codes(systems('(now C3)', 'upper C1 lower F4', 'piece "Courante"\n'))).not.toContain('clef-change-at-head');
  });
});
