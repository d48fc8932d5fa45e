/** The drawing flavour of an MEI tree: the same music by the means that the engraving library draws. */
import type { XmlElement } from '../export/xml';
import type { AddedSign } from './flavour/addition';
import { drawnAtBarline, drawnBeside, drawnFigures } from './flavour/beside';
import { drawnClefs } from './flavour/clefs';
import { drawnCurves, Notes } from './flavour/curves';
import { drawnColour, drawnStates } from './flavour/editorial';
import { rewritten } from './flavour/element';
import { drawnFree } from './flavour/free';
import { drawnLabels } from './flavour/labels';
import { Moments } from './flavour/moments';
import { drawnSigns } from './flavour/signs';
import { breaksBeforeEndings, splitMeasures } from './flavour/split';

export interface DrawingFlavour {
  readonly root: XmlElement;
  /** What is to be put into the pictures of the library. */
  readonly added: readonly AddedSign[];
}

export function drawingFlavour(root: XmlElement): DrawingFlavour {
  const added: AddedSign[] = [];
  const notes = new Notes(root);
  const moments = new Moments(root);
  /** Each rewrites one element, whose children are rewritten already; undefined leaves it out. From the first to the last. */
  const rewritings: readonly ((element: XmlElement) => XmlElement | undefined)[] = [
    (element) => drawnStates(element, added),
    drawnBeside,
    (element) => drawnFigures(element, moments),
    drawnColour,
    drawnClefs,
    drawnLabels,
    drawnFree,
    drawnAtBarline,
    (element) => drawnSigns(element, added),
    (element) => drawnCurves(element, notes, added),
    splitMeasures,
    breaksBeforeEndings,
  ];
  const drawn = rewritten(root, (element) =>
    rewritings.reduce<XmlElement | undefined>((made, rewriting) => made && rewriting(made), element),
  );
  return { root: drawn ?? root, added };
}
