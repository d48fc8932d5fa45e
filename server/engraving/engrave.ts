/** Draws an MEI tree. */
import { printXml, type XmlElement } from '../export/xml';
import { withAdditions } from './additions/page';
import { type CannotDraw, cannotDraw, type Drawing, type DrawOptions, type Engraver } from './engraver';
import { drawingFlavour } from './flavour';

export function engrave(engraver: Engraver, mei: XmlElement, options: DrawOptions): Drawing | CannotDraw {
  const { root, added } = drawingFlavour(mei);
  const drawn = engraver.draw(printXml(root).text, options);
  if (cannotDraw(drawn)) return drawn;
  return { pages: drawn.pages.map((page) => withAdditions(page, added, (code) => engraver.outline(code))) };
}
