/** Custodes (common practice: the custos at the end of a line shows the pitch of the note with which the next begins). */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/document/analysis';
import { findingOf, messages, passage } from '../helpers/music';

const CODE = 'custos-mismatch';
const lines = (custos: string, next: string, between = ''): Analysis =>
  passage(
    `system upper C1 lower F4 meter C\n dessus | 2 c5 b4 (custos ${custos}) |\n${between}system upper C1\n ${next} |||\n`,
  );

describe('a custos', () => {
  it('that promises another note than comes is told at that note', () => {
    const found = lines('a4', 'dessus | 1 g4');
    expect(findingOf(found, CODE).message).toBe(
      'dessus: the custos promises a4, but this system begins on g4: text lost, or a wrong clef?',
    );
    expect(findingOf(found, CODE).level).toBe('info');
    expect(findingOf(found, CODE).range.start.line).toBeGreaterThan(
      findingOf(found, CODE).related[0]?.range.start.line ?? 99,
    );
  });
  it('that promises the note an octave off is told', () => {
    expect(messages(lines('g5', 'dessus | 1 g4'), CODE)).toHaveLength(1);
  });
  it('that is kept is let be: on a note, after a rest, on a sharp, on any note of a chord, on a small note', () => {
    for (const next of ['1 a4', '2 r a4', '1 a#4', '1 f4-a4', '{small 8 a4} 1 g4']) {
      expect(messages(lines('a4', `dessus | ${next}`), CODE)).toEqual([]);
    }
  });
  it('says nothing where its voice has no lane in the next system, or another piece begins', () => {
    expect(messages(lines('a4', 'basse | 1 g2'), CODE)).toEqual([]);
    expect(messages(lines('a4', 'dessus | 1 g4', 'piece "Courante"\n'), CODE)).toEqual([]);
  });
});
