/** Pictures of several pieces, of which the engraver begins each on a page of its own, as the leaves of the source have them. */
import { elementsOf } from '../engraving/flavour/element';
import type { XmlElement } from '../export/xml';

/** A picture: what stands before its root, its size, what else its root says, and what follows the root's tag. */
const PICTURE = /^(.*?)<svg viewBox="0 0 ([\d.]+) ([\d.]+)"([^>]*)>(.*)$/s;

/** Pictures one beneath another, in one; undefined if there are none. */
export function beneathEachOther(pictures: readonly string[]): string | undefined {
  const parts = pictures.length === 1 ? [] : pictures.map(partsOf);
  const [first] = parts;
  if (first === undefined) return pictures[0];
  const across = Math.max(...parts.map(({ width }) => width));
  let down = 0;
  const placed = parts.map(({ width, height, inside }) => {
    const y = down;
    down += height;
    return `<svg y="${y}" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" overflow="visible">${inside}`;
  });
  return `${first.before}<svg viewBox="0 0 ${across} ${down}"${first.more}>\n${placed.join('\n')}\n</svg>\n`;
}

interface Parts {
  readonly before: string;
  readonly width: number;
  readonly height: number;
  readonly more: string;
  /** What follows the tag of the root, its end among it. */
  readonly inside: string;
}

function partsOf(picture: string): Parts {
  const [, before = '', width, height, more = '', inside = ''] = PICTURE.exec(picture) ?? [];
  return { before, width: Number(width ?? 0), height: Number(height ?? 0), more, inside };
}

/** The pages of the engraver put together to the leaves that the tree names: pieces that share a leaf stand on one. */
export function leavesOf(pages: readonly string[], root: XmlElement): readonly string[] {
  const names = leafOfEachPage(root);
  if (names.length !== pages.length) return pages;
  const leaves: string[][] = [];
  for (const [i, page] of pages.entries()) {
    if (i > 0 && names[i] === names[i - 1]) leaves.at(-1)?.push(page);
    else leaves.push([page]);
  }
  return leaves.flatMap((leaf) => beneathEachOther(leaf) ?? []);
}

/** The engraver begins a page where the tree has one, and at each piece. */
function leafOfEachPage(root: XmlElement): readonly string[] {
  const names: string[] = [];
  let isBegun = true;
  for (const { name, attributes } of elementsOf(root)) {
    if (name === 'mdiv') isBegun = false;
    else if (name === 'pb') {
      names.push(`${attributes.n ?? ''}`);
      isBegun = true;
    } else if (name === 'measure' && !isBegun) {
      names.push('');
      isBegun = true;
    }
  }
  return names;
}
