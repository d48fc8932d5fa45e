/** A text that was cut into blocks before is cut anew only where it differs, and says the same. */
import { describe, expect, it } from 'vitest';
import { finished } from '../../grammar/finished';
import { noCache, parseFile, parsing } from '../../grammar/parse';

const SCORE = [
  'bentside 1',
  'title "Air"',
  '',
  'system upper G2 meter C',
  '  dessus | 1 c5 |',
  '// a remark between two systems',
  'page "2r"',
  'section B',
  'system',
  '  dessus | 1 d5 |',
  '',
  'system',
  '  dessus | 1 e5 |',
  '',
].join('\n');

/** The tree of a text made out of that of another must be the tree of the text by itself. */
function expectRecut(from: string, to: string): void {
  expect(finished(parsing(to, noCache, parseFile(from)))).toEqual(parseFile(to));
}

describe('blocks cut anew', () => {
  it('are those of the whole text, wherever something is put in, taken away or put in its place', () => {
    for (const put of ['', 'x', '\n', '\r', '\nsystem\n', '\npage "3r"\n', '  ']) {
      for (let at = 0; at <= SCORE.length; at++) {
        for (const taken of [0, 2]) expectRecut(SCORE, SCORE.slice(0, at) + put + SCORE.slice(at + taken));
      }
    }
  });

  it('are right where systems change places, stand twice or are all gone', () => {
    const [head = '', ...systems] = SCORE.split(/^(?=system)/m);
    const [one = '', two = '', three = ''] = systems;
    for (const order of [[two, one, three], [one, one, two, three], [three], [], [one, two]]) {
      expectRecut(SCORE, head + order.join(''));
      expectRecut(head + order.join(''), SCORE);
      expectRecut(SCORE, order.join(''));
    }
  });

  it('keep the blocks that neither change nor move', () => {
    const before = parseFile(SCORE);
    const after = finished(parsing(SCORE.replace('d5', 'e5'), noCache, before));
    expect(after.blocks.map((block, index) => block === before.blocks[index])).toEqual([
      true,
      true,
      false,
      false,
      true,
    ]);
  });
});
