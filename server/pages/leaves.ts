/** Pictures of several pieces, of which the engraver begins each on a page of its own, as the leaves of the source have them. */
import { elementsOf } from '../engraving/flavour/element';
import type { XmlElement } from '../export/xml';

/** Begins a picture: its size, and what else its root says. */
const ROOT = /<svg viewBox="0 0 ([\d.]+) ([\d.]+)"([^>]*)>/;

/** Pictures one beneath another, in one; undefined if there are none. */
export function beneathEachOther(pictures: readonly string[]): string | undefined {
  const [first] = pictures;
  if (first === undefined || pictures.length === 1) return first;
  let [across, down] = [0, 0];
  const placed = pictures.map((picture) => {
    const { width, height, inside } = partsOf(picture);
    const y = down;
    across = Math.max(across, width);
    down += height;
    return `<svg y="${y}" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" overflow="visible">${inside}`;
  });
  const { before, more } = partsOf(first);
  return `${before}<svg viewBox="0 0 ${across} ${down}"${more}>\n${placed.join('\n')}\n</svg>\n`;
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
  const [tag = '', width, height, more = ''] = ROOT.exec(picture) ?? [];
  const [before = '', inside = ''] = tag === '' ? [] : cutAt(picture, tag);
  return { before, width: Number(width ?? 0), height: Number(height ?? 0), more, inside };
}

function cutAt(text: string, part: string): readonly [string, string] {
  const start = text.indexOf(part);
  return [text.slice(0, start), text.slice(start + part.length)];
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
