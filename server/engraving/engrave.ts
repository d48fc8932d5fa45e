/** Draws an MEI tree. */
import { printXml, type XmlElement } from '../export/xml';
import type { CannotDraw, Drawing, DrawOptions, Engraver } from './engraver';
import { drawingFlavour } from './flavour';

export const engrave = (engraver: Engraver, root: XmlElement, options: DrawOptions): Drawing | CannotDraw =>
  engraver.draw(printXml(drawingFlavour(root)).text, options);
