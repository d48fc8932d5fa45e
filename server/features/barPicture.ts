/** The bar under the pointer as a picture that can stand in a hover. */
import { engrave } from '../engraving/engrave';
import { cannotDraw, type DrawOptions, type Engraver } from '../engraving/engraver';
import { meiTree } from '../export/mei';
import { excerpt } from '../score/excerpt';
import type { ScoreSystem } from '../score/score';
import type { EventHere } from './events';

/** One long system. */
const DRAWN: DrawOptions = { breaks: 'none' };

/** Of the engraver's units for a sign of the screen. */
const UNITS = 2;

/** Longer addresses are not shown by every editor. */
const LONGEST = 60_000;

/** The bar as Markdown with the picture in its address; undefined where it cannot be drawn or would be too long. */
export function barPicture({ score, piece, bar }: EventHere, engraver: Engraver): string | undefined {
  const bars = { from: bar.number, to: bar.number };
  const touches = ({ firstBar, score: { bars: own } }: ScoreSystem): boolean =>
    firstBar <= bar.index && bar.index < firstBar + own.length;
  const { root } = meiTree(excerpt(score, piece, touches), { clefs: 'source', leaveGaps: true, bars });
  if (root === undefined) return undefined;
  const drawing = engrave(engraver, root, DRAWN);
  const [svg] = cannotDraw(drawing) ? [] : drawing.pages;
  const address = svg === undefined ? undefined : `data:image/svg+xml;base64,${base64(onGround(svg))}`;
  return address === undefined || address.length > LONGEST ? undefined : `![Bar ${bar.number}](${address})`;
}

/** The picture in its size, on an opaque ground: ink is black, whatever the colours of the editor. */
function onGround(svg: string): string {
  const [, width = '0', height = '0'] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  const size = `width="${Number(width) / UNITS}" height="${Number(height) / UNITS}"`;
  return svg
    .slice(svg.indexOf('<svg'))
    .replace(/>\n\s*</g, '><')
    .replace(/^<svg ([^>]*)>/, `<svg ${size} $1><rect width="100%" height="100%" fill="#fff"/>`);
}

/** Without Node's buffers, for web workers have none. */
const base64 = (text: string): string =>
  btoa(Array.from(new TextEncoder().encode(text), (byte) => String.fromCharCode(byte)).join(''));
