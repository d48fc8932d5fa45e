/** The drawing flavour of an MEI tree: the same music by the means that the engraving library draws. */
import { childrenOf, type XmlElement } from '../export/xml';
import type { AddedSign } from './flavour/addition';
import { drawnBeside, drawnByMoment } from './flavour/beside';
import { clefsOfAllVoices, drawnClefs } from './flavour/clefs';
import { drawnCurves, Notes } from './flavour/curves';
import { drawnColour, drawnEnclosed, drawnStates, drawnWithin } from './flavour/editorial';
import { rewritten } from './flavour/element';
import { drawnFigures } from './flavour/figures';
import { drawnFree } from './flavour/free';
import { drawnKeys } from './flavour/keys';
import { drawnLabels } from './flavour/labels';
import { drawnLacunae } from './flavour/lacunae';
import { Moments } from './flavour/moments';
import { withOssias, withoutOssias } from './flavour/ossias';
import { drawnPieceNames } from './flavour/pieces';
import { drawnRests } from './flavour/rests';
import { drawnSides } from './flavour/sides';
import { drawnSigns } from './flavour/signs';
import { drawnSmallNotes } from './flavour/smallNotes';
import { breaksBeforeEndings, splitMeasures } from './flavour/split';
import { Words } from './flavour/words';

export interface DrawingFlavour {
  readonly root: XmlElement;
  /** What is to be put into the pictures of the library. */
  readonly added: readonly AddedSign[];
}

export function drawingFlavour(whole: XmlElement): DrawingFlavour {
  const root = withoutHead(whole);
  const added: AddedSign[] = [];
  const notes = new Notes(root);
  const words = new Words();
  /** Each rewrites one element, whose children are rewritten already; undefined leaves it out. From the first to the last. */
  const rewritings: readonly ((element: XmlElement) => XmlElement | undefined)[] = [
    drawnFigures,
    (element) => words.drawn(element),
    (element) => drawnStates(element, added),
    (element) => drawnWithin(element, added),
    drawnBeside,
    drawnColour,
    drawnClefs,
    clefsOfAllVoices,
    drawnLabels,
    drawnFree,
    drawnLacunae,
    drawnRests,
    drawnSides,
    (element) => drawnSigns(element, added),
    (element) => drawnCurves(element, notes, added),
    withoutOssias,
    splitMeasures,
    drawnKeys,
    breaksBeforeEndings,
    drawnPieceNames,
  ];
  const drawn = rewritten(root, (element) =>
    rewritings.reduce<XmlElement | undefined>((made, rewriting) => made && rewriting(made), element),
  );
  return { root: finished(drawn ?? root), added };
}

/** When all measures are cut, for a moment counts from the beginning of its measure; all brackets known, and signs at notes. */
function finished(root: XmlElement): XmlElement {
  const moments = new Moments(root);
  const finish = (element: XmlElement): XmlElement =>
    withOssias(drawnByMoment(drawnSmallNotes(drawnEnclosed(element)), moments));
  return rewritten(root, finish) ?? root;
}

/** What is told of the document is not drawn; its incipits would be taken for music. */
const withoutHead = (root: XmlElement): XmlElement => ({
  ...root,
  content: childrenOf(root).filter(({ name }) => name !== 'meiHead'),
});
