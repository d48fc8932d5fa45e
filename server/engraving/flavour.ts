/** The drawing flavour of an MEI tree: the same music by the means that the engraving library draws. */
import type { XmlElement } from '../export/xml';
import { drawnClefs } from './flavour/clefs';
import { rewritten } from './flavour/element';
import { drawnFree } from './flavour/free';
import { drawnLabels } from './flavour/labels';
import { splitMeasures } from './flavour/split';

/** Each rewrites one element, whose children are rewritten already; undefined leaves it out. From the first to the last. */
const REWRITINGS: readonly ((element: XmlElement) => XmlElement | undefined)[] = [
  drawnClefs,
  drawnLabels,
  drawnFree,
  splitMeasures,
];

export const drawingFlavour = (root: XmlElement): XmlElement =>
  rewritten(root, (element) =>
    REWRITINGS.reduce<XmlElement | undefined>((made, rewriting) => made && rewriting(made), element),
  ) ?? root;
