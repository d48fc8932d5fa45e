/** Curves from note to note are slurs of the library; those of which one end is not shown, and straight lines, we add. */
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import type { AddedSign } from './addition';
import { elementsOf, idOf, isOfType, referred } from './element';

/** Notes by the order of the text: a curve on a barline is drawn to the nearest. */
export class Notes {
  private readonly ends = new Map<string, { readonly first: string; readonly last: string }>();
  private readonly known = new Set<string>();

  constructor(root: XmlElement) {
    for (const measure of elementsOf(root)) if (measure.name === 'measure') this.add(measure);
  }

  /** The note meant by a reference to a note, or to a bar on whose barline a curve begins or ends. */
  meant(reference: string | number | undefined, side: 'first' | 'last'): string | undefined {
    if (reference === undefined) return undefined;
    const id = referred(reference);
    return this.known.has(id) ? id : this.ends.get(id)?.[side];
  }

  private add(measure: XmlElement): void {
    const notes = [...elementsOf(measure)].filter(({ name }) => name === 'note' || name === 'chord').map(idOf);
    for (const id of notes) this.known.add(id);
    const [first, last] = [notes[0], notes.at(-1)];
    if (first !== undefined && last !== undefined) this.ends.set(idOf(measure), { first, last });
  }
}

/** The curves and lines of a measure. */
export function drawnCurves(measure: XmlElement, notes: Notes, added: AddedSign[]): XmlElement {
  if (measure.name !== 'measure') return measure;
  const isFree = isOfType(measure, 'free');
  return {
    ...measure,
    content: childrenOf(measure).flatMap((element) => {
      if (!isDrawnHere(element)) return [element];
      // A curve on a barline goes from the last note before it, and to that note as well.
      const from = notes.meant(element.attributes.startid, 'last');
      const to = notes.meant(element.attributes.endid, 'last');
      if (element.name === 'line') return addLine(element, [from, to], added);
      if (from !== undefined && to !== undefined && from !== to) {
        return isFree ? addCurve(element, [from, to], added) : [slur(element, from, to)];
      }
      return addOpen(element, from, to, added);
    }),
  };
}

/** Ties are the library's, but for those that lead in from, or on to, music that is not drawn. */
const isDrawnHere = ({ name, attributes }: XmlElement): boolean =>
  name === 'curve' ||
  name === 'line' ||
  (name === 'tie' && (attributes.startid === undefined || attributes.endid === undefined));

const slur = ({ attributes }: XmlElement, from: string, to: string): XmlElement => {
  const { 'xml:id': id, curvedir, lform, color } = attributes;
  return xml('slur', { 'xml:id': id, startid: `#${from}`, endid: `#${to}`, curvedir, lform, color });
};

function addLine(
  element: XmlElement,
  ends: readonly (string | undefined)[],
  added: AddedSign[],
): readonly XmlElement[] {
  const at = ends.filter((id) => id !== undefined);
  const { form, color } = element.attributes;
  added.push({ kind: 'line', id: idOf(element), at, dashed: form !== undefined, grey: color !== undefined });
  return [];
}

function addCurve(element: XmlElement, at: readonly string[], added: AddedSign[]): readonly XmlElement[] {
  const { lform, color } = element.attributes;
  added.push({ kind: 'curve', id: idOf(element), at, dashed: lform !== undefined, grey: color !== undefined });
  return [];
}

function addOpen(
  element: XmlElement,
  from: string | undefined,
  to: string | undefined,
  added: AddedSign[],
): readonly XmlElement[] {
  const note = from ?? to;
  if (note === undefined) return [];
  const side = from === undefined || isOfType(element, 'start-not-shown') ? 'left' : 'right';
  const { lform, color } = element.attributes;
  added.push({
    kind: 'openCurve',
    id: idOf(element),
    at: [note],
    side,
    dashed: lform !== undefined,
    grey: color !== undefined,
  });
  return [];
}
