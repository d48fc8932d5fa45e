/** Notes in the wrong octave, and notes far from their stave (common practice of scribes: a change of clef saves ledger lines). */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/document/analysis';
import { analysed, lane, messages, passage } from '../helpers/music';

const slips = (music: string): string[] => messages(lane(music), 'octave-slip');

describe('a single note an octave from its neighbours', () => {
  it('is told with the note that would lie near', () => {
    expect(slips('4 a4 b c6 b4')).toEqual([
      'dessus, bar 1: c6 leaps a seventh or more and back; c5 would lie within a fourth of both its neighbours.',
    ]);
    expect(slips('4 f5 e f4 e5')).toEqual([
      'dessus, bar 1: f4 leaps a seventh or more and back; f5 would lie within a fourth of both its neighbours.',
    ]);
  });
  it('is told at the end of a system', () => {
    const music = 'system upper C1 lower F4 meter C\n dessus | 2 b4 c6 |\nsystem\n dessus | 1 b4 |||\n';
    expect(messages(passage(music), 'octave-slip')).toHaveLength(1);
  });
  it('is told at the beginning of a second ending, by the bar before the first (common practice)', () => {
    expect(slips('4 g4 a c5 b4 | (ending 1) 1 c5 :|| (ending 2) 4 c6 a4 g f')).toHaveLength(1);
    expect(slips('4 g4 a c5 b4 | (ending 1) 1 c5 :|| (ending 2) 4 c5 a4 g f')).toEqual([]);
  });
  it('is let be where it leaps and stays, or goes on the same way', () => {
    expect(slips('4 a4 b c6 b5')).toEqual([]);
    expect(slips('4 a4 b a5 g6')).toEqual([]);
  });
  it('is let be in broken octaves and where two lines are written as one', () => {
    expect(slips('8 c4 c5 d4 d5 e4 e5 f4 f5')).toEqual([]);
    expect(slips('8 d4 e5 c4 f5 d4 e5 c4 d5')).toEqual([]);
  });
  it('is let be where the line goes to the other hand', () => {
    expect(slips('4 a3 b (down) c5 (home) b3')).toEqual([]);
  });
});

const ledger = (music: string): string[] => messages(lane(music), 'ledger-lines');

describe('a note far from its stave', () => {
  // The soprano clef has d5 on its fifth line: f5, a5, c6 and e6 stand on ledger lines, g6 on the fifth.
  it('is told from the fifth ledger line on', () => {
    expect(ledger('2 e6 f')).toEqual([]);
    expect(ledger('1 g6')).toEqual([
      'Bar 1, dessus: g6 needs 5 ledger lines under C1 on stave upper: another clef or octave?',
    ]);
    expect(ledger('1 a2')).toEqual([]);
    expect(ledger('1 g2')).toHaveLength(1);
  });
  it('is told once for all that follow it there, as where a change of clef was forgotten', () => {
    expect(ledger('4 g6 a g f | 2 g6-b e')).toEqual([
      'Bar 1, dessus: g6 needs 5 ledger lines under C1 on stave upper, and so do 2 notes after it: another clef or octave?',
      'Bar 2, dessus: g6 needs 5 ledger lines under C1 on stave upper, and so does the note after it: another clef or octave?',
    ]);
  });
  it('counts them from the clef in force', () => {
    expect(ledger('2 d5 (now F4) d')).toEqual([
      'Bar 1, dessus: d5 needs 5 ledger lines under F4 on stave upper: another clef or octave?',
    ]);
  });
  it('counts them from the lines that the stave has', () => {
    const six = (lines: number): Analysis =>
      analysed(`bentside 1\nvoice dessus lines ${lines}\nsystem dessus C1 meter C\n dessus | 1 g6 |||\n`);
    expect(messages(six(5), 'ledger-lines')).toHaveLength(1);
    expect(messages(six(6), 'ledger-lines')).toEqual([]);
  });
});
