/** The bar under the pointer as a picture that can stand in a hover. */
import type { Engraver } from '../engraving/engraver';
import { cropped } from '../pages/crop';
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

/** The picture in its size. */
function sized(svg: string): string {
  const { markup, width, height } = cropped(svg);
  return markup.replace(/^<svg /, `<svg width="${width / UNITS}" height="${height / UNITS}" `);
}

/** Without Node's buffers, for web workers have none. */
const base64 = (text: string): string =>
  btoa(Array.from(new TextEncoder().encode(text), (byte) => String.fromCharCode(byte)).join(''));
