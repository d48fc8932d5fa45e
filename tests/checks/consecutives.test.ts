/**
 * Consecutive fifths and octaves (common practice of counterpoint since the sixteenth century: two voices do not go the same
 * way from one perfect consonance to another of its kind).
 */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/document/analysis';
import { analysed, duet, findingOf, HEAD, messages, passage } from '../helpers/music';

const CODE = 'consecutive-perfects';
const told = (analysis: Analysis): string[] =>
  messages(analysis, CODE).map((message) => message.replace(/Consecutive (.*): copyist’s or yours\?$/, '$1'));

describe('two voices that move together', () => {
  it('are told of octaves, fifths and unisons, with bars and notes', () => {
    expect(told(duet('2 f5 e', '2 f3 e'))).toEqual(['octaves dessus/basse, bar 1 (f5-e5 over f3-e3)']);
    expect(told(duet('2 g4 a', '2 c3 d'))).toEqual(['fifths dessus/basse, bar 1 (g4-a4 over c3-d3)']);
    expect(told(duet('2 c4 d', '2 c4 d'))).toEqual(['unisons dessus/basse, bar 1 (c4-d4 over c4-d4)']);
  });
  it('are told over a barline, with both bars', () => {
    const found = duet('1 f5 | 1 e', '1 f3 | 1 e');
    expect(findingOf(found, CODE).message).toBe(
      'Consecutive octaves dessus/basse, bars 1-2 (f5-e5 over f3-e3): copyist’s or yours?',
    );
    expect(findingOf(found, CODE).level).toBe('hint');
    expect(findingOf(found, CODE).related.map(({ message }) => message)).toEqual(['e3 in basse']);
  });
  it('are told over the end of a system, once', () => {
    const music =
      'system upper C1 lower F4 meter C\n dessus | 1 g5 | f |\n basse | 1 b2 | f3 |\nsystem\n dessus | 1 e5 |||\n basse | 1 e3 |||\n';
    expect(told(passage(music))).toEqual(['octaves dessus/basse, bars 2-3 (f5-e5 over f3-e3)']);
  });
  it('are let be in sixths, by contrary motion, and where one of them stays', () => {
    expect(told(duet('2 a4 b', '2 c3 d'))).toEqual([]);
    expect(told(duet('2 g4 c5', '2 c3 f2'))).toEqual([]);
    expect(told(duet('2 g4 g', '2 c3 c'))).toEqual([]);
    expect(told(duet('2 g4 g', '2 c3 c4'))).toEqual([]);
  });
  it('may go from a perfect to a diminished fifth', () => {
    expect(told(duet('2 g4 f', '2 c3 bn2'))).toEqual([]);
    expect(told(duet('2 f4 g', '2 bn2 c3'))).toEqual([]);
  });
});

describe('fifths and octaves from beat to beat', () => {
  it('are told over a passing note, and over three', () => {
    expect(told(duet('4 g4 f 2 a', '2 c3 d'))).toEqual(['fifths dessus/basse, bar 1 (g4-a4 over c3-d3)']);
    expect(told(duet('16 c5 e d c 16 d f e d 2 c', '4 c3 d 2 c'))).toContain(
      'octaves dessus/basse, bar 1 (c5-d5 over c3-d3)',
    );
  });
  it('are no longer heard over seven notes', () => {
    expect(told(duet('16 c5 d e f e d c b4 2 d5', '2 c3 d'))).toEqual([]);
  });
  it('are let be off the beat and over a rest', () => {
    expect(told(duet('8. c5 16 e 8. d 16 f 2 g', '8. f3 16 c 8. b2 16 d3 2 e'))).toEqual([]);
    expect(told(duet('4 g4 r 2 a', '2 c3 d'))).toEqual([]);
    expect(told(duet('4 g4 _ 2 a', '2 c3 d'))).toEqual([]);
  });
  it('are told of tied notes as of one', () => {
    expect(told(duet('4 g4= g 2 a', '2 c3 d'))).toEqual(['fifths dessus/basse, bar 1 (g4-a4 over c3-d3)']);
  });
});

describe('what is no oversight', () => {
  it('is a passage in octaves', () => {
    expect(told(duet('4 c5 d e f', '4 c3 d e f'))).toEqual([]);
    expect(told(duet('4 c5 d e c', '4 c3 d e f'))).toHaveLength(2);
  });
  it('is what stands on either side of a double bar', () => {
    expect(told(duet('1 f5 || 1 e', '1 f3 || 1 e'))).toEqual([]);
    expect(told(duet('1 f5 :||: 1 e', '1 f3 :||: 1 e'))).toEqual([]);
  });
  it('is a chord in an inner voice, which has no one line', () => {
    const inner = (chords: string): Analysis =>
      passage(`system upper C1 lower F4 meter C\n dessus | 1 c5 |||\n taille | 2 ${chords} |||\n basse | 2 c3 d |||\n`);
    expect(told(inner('g4 a'))).toHaveLength(1);
    expect(told(inner('e4-g4 f-a'))).toEqual([]);
  });
  it('is what the small notes do', () => {
    expect(told(duet('2 e5 {small 8 f} d', '2 f3 b2'))).toEqual([]);
  });
});

describe('fifths that only a witness has', () => {
  it('are told with its name', () => {
    expect(told(duet('<K: 2 g4 f ; L: 2 g4 a>', '2 c3 d'))).toEqual([
      'In L: fifths dessus/basse, bar 1 (g4-a4 over c3-d3)',
    ]);
  });
});

describe('a score whose second system has one voice more', () => {
  it('takes its first notes for a beginning', () => {
    const music = `${HEAD}system upper C1 lower F4 meter C\n dessus | 1 f5 |\nsystem\n dessus | 1 e5 |||\n basse | 1 e3 |||\n`;
    expect(told(analysed(music))).toEqual([]);
  });
});

/** Second time bars take the place of first time bars (common practice). */
describe('a strain with two endings', () => {
  const upper = '1 f5 | (ending 1) b4';
  const lower = '1 f3 | (ending 1) d';
  it('goes on to the second from the bar before the first', () => {
    expect(told(duet(`${upper} :|| (ending 2) e5`, `${lower} :|| (ending 2) e3`))).toEqual([
      'octaves dessus/basse, bars 1-2b (f5-e5 over f3-e3)',
    ]);
  });
  it('does so over the end of a system', () => {
    const systems = (first: string, second: string): Analysis =>
      passage(`system upper C1 lower F4 meter C\n${first}system\n${second}`);
    const ending = ' dessus | (ending 2) 1 e5 |||\n basse | (ending 2) 1 e3 |||\n';
    const found = ['octaves dessus/basse, bars 1-2b (f5-e5 over f3-e3)'];
    expect(told(systems(` dessus | ${upper} :||\n basse | ${lower} :||\n`, ending))).toEqual(found);
    const broken = ' dessus | (ending 1) 1 b4 :|| (ending 2) e5 |||\n basse | (ending 1) 1 d3 :|| (ending 2) e |||\n';
    expect(told(systems(' dessus | 1 f5 |\n basse | 1 f3 |\n', broken))).toEqual(found);
  });
  it('does not go from the first to the second', () => {
    const leap = duet('1 c5 | (ending 1) f :|| (ending 2) e', '1 a2 | (ending 1) f3 :|| (ending 2) e');
    expect(told(leap)).toEqual([]);
  });
  it('ties into the second from the bar before the first, though the first ends on the same note', () => {
    const tied = duet('1 c5= | (ending 1) c :|| (ending 2) 2 c d', '1 f3= | (ending 1) f :|| (ending 2) 2 f g');
    expect(told(tied)).toEqual(['fifths dessus/basse, bars 1-2b (c5-d5 over f3-g3)']);
  });
});

describe('fifths over a system end whose last bar is too long', () => {
  it('point at the note of the system before', () => {
    const over = passage(
      `system upper C1 lower F4 meter C\n dessus | 2 d5 4 c5 b4 |\n basse | 2 b2 f3 4 g3-e3 |\nsystem\n dessus | 1 b4 |||\n basse | 1 r |||\n`,
    );
    const end = over.tree.text.length;
    for (const { related } of over.findings()) {
      for (const { range } of related) expect(range.end.offset).toBeLessThanOrEqual(end);
    }
  });
});
