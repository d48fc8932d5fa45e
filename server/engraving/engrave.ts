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
  const drawn = engraver.draw(printXml(root).text, wideEnough(root, options));
  if (cannotDraw(drawn)) return drawn;
  const outlines = (code: number) => engraver.outline(code);
  const titleOf = (page: number): string => (drawn.pages.length > 1 ? `${title}, page ${page}` : title);
  return { pages: drawn.pages.map((page, i) => withAdditions(wavesAtChords(page), titleOf(i + 1), added, outlines)) };
}

/** The pages wide enough for what cannot be broken, and higher in proportion. */
function wideEnough(root: XmlElement, options: DrawOptions): DrawOptions {
  const { width, height, breaks } = options;
  if (width === undefined || breaks === 'none') return options;
  const share = Math.max(1, widthFor(root, breaks) / width);
  const higher = height === undefined ? {} : { height: Math.round(height * share) };
  return { ...options, width: Math.round(width * share), ...higher };
}
