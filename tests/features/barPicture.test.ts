/** The picture of the bar under the pointer, drawn by the engraving library. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { beforeAll, describe, expect, it } from 'vitest';
import { cannotDraw, type Engraver } from '../../server/engraving/engraver';
import { loadEngraver } from '../../server/engraving/library';
import { barPicture } from '../../server/features/barPicture';
import { hover } from '../../server/features/hover';
import { offsetOfPosition } from '../../server/features/place';
import { underTables } from '../../server/features/signHover';
import { type AtCaret, atCaret, FILE, inLane, projectNamed } from '../helpers/editor';
import { sampleNames, sampleText } from '../helpers/samples';

let engraver: Engraver;

beforeAll(async () => {
  const loaded = await loadEngraver(readFileSync(join(import.meta.dirname, '../../dist/engraving/font.zip')));
  if (cannotDraw(loaded)) throw new Error(loaded.failure);
  engraver = loaded;
});

const told = ({ project, position }: AtCaret): string => {
  const contents = hover(project, position, (at, ofSign) => barPicture(at, engraver, { ofSign }))?.contents;
  return contents !== undefined && typeof contents === 'object' && 'value' in contents ? contents.value : '';
};

/** The first picture in a text. */
function svgIn(markdown: string): string {
  const [, address = ''] = /!\[[^\]]*\]\(data:image\/svg\+xml;base64,([^)]*)\)/.exec(markdown) ?? [];
  return Buffer.from(address, 'base64').toString('utf8');
}

/** The picture in a hover. */
const picture = (place: AtCaret): string => svgIn(told(place));

/** Something is cut off, or nearly so. */
function hasInkAtEdge(svg: string): boolean {
  const { pixels, width, height } = new Resvg(svg).render();
  const isInk = (x: number, y: number): boolean => (pixels[4 * (y * width + x)] ?? 255) < 128;
  const across = Array.from({ length: width }, (_, x) => isInk(x, 1) || isInk(x, height - 2));
  const down = Array.from({ length: height }, (_, y) => isInk(1, y) || isInk(width - 2, y));
  return [...across, ...down].includes(true);
}

const count = (svg: string, kind: string): number => svg.split(`data-class="${kind}"`).length - 1;

describe('the picture', () => {
  it('shows the bar and no other', () => {
    const svg = picture(inLane('4 c5 d e f | 2 c5 ‸d | 1 e'));
    expect(count(svg, 'note')).toBe(2);
    expect(count(svg, 'measure')).toBe(1);
  });

  it('has the clef and signature that are in force there', () => {
    const svg = picture(inLane('1 c5 | (now F4) 1 c5 | 1 ‸e4'));
    expect(count(svg, 'clef')).toBeGreaterThan(0);
    expect(count(svg, 'keyAccid')).toBeGreaterThan(0);
  });

  it('stands on an opaque ground, under the ink', () => {
    const svg = picture(inLane('1 ‸c5'));
    expect(svg).toMatch(/^<svg width="[\d.]+" height="[\d.]+" /);
    expect(svg.indexOf('fill="white"')).toBeGreaterThan(0);
    expect(svg.indexOf('fill="white"')).toBeLessThan(svg.indexOf('data-class="note"'));
  });

  it('of the reading that has the note', () => {
    expect(count(picture(inLane('<K: 1 c5 ; L: 4 d5 e f ‸g>')), 'note')).toBe(4);
  });

  it('of a bar whose time is wrong is drawn without its notes, and the words are there', () => {
    expect(told(inLane('4 c5 ‸d | 1 e'))).toContain('**d′′ (D5)**');
  });

  const french = 'reading french\n  signs rameau-1724\ntempo 4 at 60\n';

  it('over a sign shows what is written, and above it what is played: five notes of a pincé', () => {
    const svg = picture(inLane("1 g4 | 4 c5'c‸a 2. d5 | 1 e5", french));
    expect(svg.split('data-class="staff"').length - 1 + count(svg, 'oStaff')).toBe(2);
    expect(count(svg, 'note')).toBeGreaterThanOrEqual(2 + 5);
  });

  it('of a sign under other tables stands beside what each of them says, the reading’s own first', () => {
    const { project, position } = inLane("1 g4 | 4 c5 2. d5't‸urn | 1 e5", french);
    const offset = offsetOfPosition(project.tree, position);
    const page = underTables(project, offset, (at, table) => barPicture(at, engraver, { ofSign: true, table })) ?? '';
    const tables = page.match(/^## .*/gm) ?? [];
    expect(tables[0]).toBe('## rameau-1724');
    expect(tables).toEqual(expect.arrayContaining(['## anglebert-1689', '## couperin-1713']));
    expect(page).toContain(
      '**Doublé** (confirmed by a text): on the beat: the note above, the note, the note below, and the note again.',
    );
    expect(page.match(/!\[Bar 2\]/g)).toHaveLength(tables.length);
  });

  it.each(sampleNames)('%s: its bars fit into a hover', (name) => {
    const project = projectNamed(FILE, sampleText(name));
    const notes = [...project.tree.text.matchAll(/\| (?:\d+\.* )?[a-g]\d/g)].slice(0, 4);
    for (const { index } of notes) {
      const { text } = project.tree;
      const words = told(atCaret(`${text.slice(0, index + 5)}‸${text.slice(index + 5)}`));
      expect(words).toContain('data:image/svg+xml;base64,');
      expect(hasInkAtEdge(svgIn(words)), `${name}: ${text.slice(index, index + 20)}`).toBe(false);
      expect(words.length).toBeLessThan(62_000);
    }
  });
});

it('where nothing can be drawn the words stand alone', () => {
  const failing: Engraver = {
    library: 'none',
    draw: () => ({ failure: 'no picture today' }),
    outline: () => undefined,
    timemap: () => [],
    keys: () => [],
  };
  const { project, position } = inLane('1 ‸c5');
  const contents = hover(project, position, (at) => barPicture(at, failing))?.contents;
  expect(JSON.stringify(contents)).not.toContain('data:image');
});
