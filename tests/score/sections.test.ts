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
  it('is told where a beat is lost', () => {
    const lost = halves('A A B C');
    expect(errors(lost)).toEqual([]);
    expect(findingOf(lost, 'order-halves').message).toMatch(/at the end of B and bar \w+ at the beginning of C make 7/);
  });
});
