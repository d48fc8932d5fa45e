/** Draws an MEI tree. */
import { printXml, type XmlElement } from '../export/xml';
import { withAdditions } from './additions/page';
import { wavesAtChords } from './additions/waves';
import { type CannotDraw, cannotDraw, type Drawing, type DrawOptions, type Engraver } from './engraver';
import { drawingFlavour } from './flavour';
import { widthFor } from './width';

/** @param title what the pictures are of, for those who cannot see them */
export function engrave(
  engraver: Engraver,
  mei: XmlElement,
  title: string,
  options: DrawOptions,
): Drawing | CannotDraw {
  const { root, added } = drawingFlavour(mei);
  const isWide = options.breaks === 'encoded' && options.width !== undefined;
  const width = isWide ? Math.max(options.width, widthFor(root)) : options.width;
  const drawn = engraver.draw(printXml(root).text, width === undefined ? options : { ...options, width });
  if (cannotDraw(drawn)) return drawn;
  const outlines = (code: number) => engraver.outline(code);
  const titleOf = (page: number): string => (drawn.pages.length > 1 ? `${title}, page ${page}` : title);
  return { pages: drawn.pages.map((page, i) => withAdditions(wavesAtChords(page), titleOf(i + 1), added, outlines)) };
}
