/** Sections and the order in which they are played (common practice). */
import { describe, expect, it } from 'vitest';
import { codes, errors, findingOf, passage, scoreOf } from '../helpers/music';

const SYSTEM = 'system upper C1 lower F4 meter C\n dessus | 1 c5 |||\n';

describe('an order before the first piece', () => {
  it('is the order of that piece', () => {
    const ordered = passage(`order A B A\npiece "Chaconne"\nsection A\n${SYSTEM}section B\n${SYSTEM}`);
    expect(errors(ordered)).toEqual([]);
    expect(scoreOf(ordered).pieces[0]?.order).toEqual(['A', 'B', 'A']);
  });
});

describe('a section', () => {
  it('before the first piece is a section of that piece', () => {
    const early = passage(`section A\npiece "Chaconne"\n${SYSTEM}`);
    expect(scoreOf(early).pieces[0]?.sections.map(({ name }) => name)).toEqual(['A']);
  });
  it('that no system follows in its piece is told', () => {
    const idle = passage(`piece "One"\n${SYSTEM}section B\npiece "Two"\n${SYSTEM}`);
    expect(findingOf(idle, 'section-without-music').message).toBe('No system of this piece follows the section B.');
  });
});

describe('an order of sections', () => {
  const halves = (order: string): ReturnType<typeof passage> =>
    passage(
      `order ${order}\nsection A\nsystem upper C1 lower F4 meter C\n dessus | 4 g4 | 1 c5 | 2. c5 :||\nsection B\nsystem\n dessus | 4 e5 | 1 c5 | 2. g4 :|| (section C) 1 g4 |||\n`,
    );
  it('joins halves to whole bars', () => {
    expect(codes(halves('A A B B A'))).not.toContain('order-halves');
  });
  it('has the nearest section for one that is misspelt', () => {
    const slip = passage(`order grave gravve\nsection grave\n${SYSTEM}`);
    expect(findingOf(slip, 'unknown-section').fixes.map(({ title }) => title)).toEqual(['write grave']);
  });
  it('is told where a beat is lost', () => {
    const lost = halves('A A B C');
    expect(errors(lost)).toEqual([]);
    expect(findingOf(lost, 'order-halves').message).toMatch(/at the end of B and bar \w+ at the beginning of C make 7/);
  });
  it('is stated once for a piece; of two the first counts', () => {
    const twice = passage(
      `order A B\norder B A\n${'section A\n'}${SYSTEM}section B\n${SYSTEM}piece "Gigue"\norder C C\nsection C\n${SYSTEM}`,
    );
    expect(codes(twice).filter((code) => code === 'order-twice')).toHaveLength(1);
    expect(scoreOf(twice).pieces.map(({ order }) => order)).toEqual([
      ['A', 'B'],
      ['C', 'C'],
    ]);
  });
});

describe('an order that a reading states', () => {
  const READINGS = 'reading a "plays all twice"\n  order A A B B\nreading b "as a"\n  from a\n';
  const strains = `order A B\nsection A\n${SYSTEM}section B\n${SYSTEM}`;
  it('holds for readings built on it', () => {
    const ordered = passage(strains, READINGS);
    expect(scoreOf(ordered, 'b').pieces[0]?.order).toEqual(['A', 'A', 'B', 'B']);
    expect(scoreOf(ordered, 'K').pieces[0]?.order).toEqual(['A', 'B']);
  });
  it('leaves pieces alone that have other sections', () => {
    const two = passage(`piece "One"\n${strains}piece "Two"\norder C\nsection C\n${SYSTEM}`, READINGS);
    expect(errors(two)).toEqual([]);
    expect(scoreOf(two, 'a').pieces.map(({ order }) => order?.join(' '))).toEqual(['A A B B', 'C']);
  });
  it('is told where no piece has its sections', () => {
    expect(new Set(errors(passage(SYSTEM, READINGS)))).toEqual(new Set(['unknown-section']));
  });
});

describe('numbers of bars after endings', () => {
  const numbers = (music: string): string =>
    scoreOf(passage(`system upper C1 lower F4 meter C\n dessus | ${music} |||\n`))
      .pieces.flatMap(({ bars }) => bars.map(({ number }) => number))
      .join(' ');
  it('go on plainly where a section begins', () => {
    expect(numbers('1 c5 | (ending 1) d :|| (ending 2) e | (section B) f | g')).toBe('1 2a 2b 3 4');
  });
  it('go on with letters where an upbeat makes the last ending whole', () => {
    expect(numbers('4 g5 | 1 c5 | (ending 1) 2. d :|| (ending 2) 2. d || 4 e | 1 f | 2. g')).toBe('0 1 2a 2b 2c 3 4');
  });
});

describe('lanes that disagree', () => {
  it('about an ending or a section are told', () => {
    const both = (a: string, b: string): string[] =>
      errors(
        passage(`system upper C1 lower F4 meter C\n dessus | 1 c5 | ${a} 1 d5 |||\n basse | 1 c3 | ${b} 1 d3 |||\n`),
      );
    expect(both('(ending 1)', '(ending 2)')).toEqual(['changes-disagree']);
    expect(both('(section B)', '(section C)')).toEqual(['changes-disagree']);
    expect(both('(section B)', '(section B)')).toEqual([]);
  });
});

describe('halves where the endings lie inside a section', () => {
  it('are those of its last bar', () => {
    const within = passage(
      `order A B\nsection A\nsystem upper C1 lower F4 meter C\n dessus | 4 g5 | 1 c5 | (ending 1) 2. d :|| (ending 2) 1 d || 1 e ||\nsection B\nsystem\n dessus | 1 e5 | 1 f |||\n`,
    );
    expect(codes(within)).not.toContain('order-halves');
  });
});

describe('a section before a system', () => {
  it('cannot begin inside a bar', () => {
    expect(
      errors(passage('system upper C1 lower F4 meter C\n dessus | 2 c5\nsection B\nsystem\n dessus | 2 d5 |||\n')),
    ).toEqual(['section-not-at-barline']);
  });
});

describe('lost ?', () => {
  it('suspends the sum of its lane in a loose system', () => {
    const lost = passage(
      'system loose upper C1 lower F4 meter C\n dessus | 1 c5 lost ? | 1 d5 |||\n basse | 1 c3 2 d | 1 d3 |||\n',
    );
    expect(errors(lost)).toEqual([]);
  });
});

describe('a bar of a loose lane', () => {
  it('is named by the bar that all lanes share', () => {
    const loose = passage(
      'system loose upper C1 lower F4 meter C\n dessus | 1 c5 d |||\n basse | 1 c3 | 2 e3 2 f3 |||\n',
    );
    expect(findingOf(loose, 'restated-value').message).toBe('Bar 1, basse: the value 2 holds already.');
  });
});

describe('totals of a loose system', () => {
  it('are told in semibreves', () => {
    const loose = passage('system loose upper C1 lower F4 meter C\n dessus | 1 c5 d |||\n basse | 1 c3 |||\n');
    expect(findingOf(loose, 'loose-totals').message).toMatch(/\b1 .*\b2\b/);
    expect(findingOf(loose, 'loose-totals').message).not.toMatch(/\//);
  });
});
