/** The bar under the pointer as a picture that can stand in a hover. */
import type { Engraver } from '../engraving/engraver';
import { drawPassage, type PictureWish } from '../pages/svg';
import { around } from '../score/excerpt';
import type { EventHere } from './events';

/** Of the drawing's units for one of the screen: a stave of a hover is as high as three lines of text. */
const UNITS = 2;

/** Longer addresses are not shown by every editor. */
const LONGEST = 60_000;

interface BarWish {
  /** Only the voice is drawn, with what its signs mean above what is written. */
  readonly ofSign?: boolean;
  /** By another table than the reading's. */
  readonly table?: string;
}

/** The bar as Markdown with the picture in its address; undefined where it cannot be drawn. */
export function barPicture(
  { score, piece, system, bar, event }: EventHere,
  engraver: Engraver,
  { ofSign = false, table }: BarWish = {},
): string | undefined {
  const bars = { from: bar.number, to: bar.number };
  const wish: PictureWish = { clefs: 'source', leaveGaps: true, bars };
  const byTable = table === undefined ? {} : { table };
  const above: Partial<PictureWish> = ofSign ? { ornaments: 'above', voice: event.voice, ...byTable } : {};
  const near = around({ ...score, pieces: [piece] }, system.block);
  const { svg } = drawPassage(near, { ...wish, ...above }, engraver);
  if (svg === undefined) return undefined;
  const address = `data:image/svg+xml;base64,${base64(sized(svg))}`;
  if (address.length > LONGEST) return `Bar ${bar.number} is too long to be drawn here; the score panel shows it.`;
  return `![Bar ${bar.number}](${address})`;
}

/** Of the margin that a page has around it, in the drawing's units, what a hover can do without; braces reach into the left one. */
const CUT = { left: 12, top: 38, right: 38, bottom: 38 };

/** The picture in its size, without most of its margin and the spaces between its elements. */
function sized(svg: string): string {
  const [view = '', width = '0', height = '0'] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  const [wide, high] = [Number(width) - CUT.left - CUT.right, Number(height) - CUT.top - CUT.bottom];
  return (
    svg
      .slice(svg.indexOf('<svg'))
      .replace(/>\n\s*</g, '><')
      // What lies within keeps its size and place.
      .replace('<svg class="definition-scale"', `$& width="${width}" height="${height}"`)
      .replace(view, `viewBox="${CUT.left} ${CUT.top} ${wide} ${high}"`)
      .replace(/^<svg /, `<svg width="${wide / UNITS}" height="${high / UNITS}" `)
  );
}

/** Without Node's buffers, for web workers have none. */
const base64 = (text: string): string =>
  btoa(Array.from(new TextEncoder().encode(text), (byte) => String.fromCharCode(byte)).join(''));
