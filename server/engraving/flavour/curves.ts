/** Curves from note to note are slurs of the library; those of which one end is not shown, and straight lines, we add. */
import { addressOfId } from '../../export/mei/ids';
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import type { AddedSign } from './addition';
import { elementsOf, idOf, isOfType, referred } from './element';
import { withoutOssias } from './ossias';

/** Where notes stand, and which is the last of each voice before a barline. */
export class Notes {
  private readonly staves = new Map<string, string | number>();
  /** By the measure, and by the measure and a lane. */
  private readonly last = new Map<string, string>();

  constructor(root: XmlElement) {
    for (const measure of elementsOf(root)) if (measure.name === 'measure') this.add(measure);
  }

  /** The note meant by a reference to a note, or to a bar: of that the last note, in the lane of the curve if it has any. */
  meant(reference: string | number | undefined, curve: string): string | undefined {
    if (reference === undefined) return undefined;
    const id = referred(reference);
    return this.staves.has(id) ? id : (this.last.get(placeIn(id, laneOf(curve))) ?? this.last.get(id));
  }

  staveOf(note: string): string | number | undefined {
    return this.staves.get(note);
  }

  private add(measure: XmlElement): void {
    for (const staff of childrenOf(withoutOssias(measure)).filter(({ name }) => name === 'staff')) {
      for (const element of elementsOf(staff)) {
        if (element.name !== 'note' && element.name !== 'chord') continue;
        const id = idOf(element);
        this.staves.set(id, element.attributes.staff ?? staff.attributes.n ?? 1);
        this.last.set(idOf(measure), id);
        this.last.set(placeIn(idOf(measure), laneOf(id)), id);
      }
    }
  }
}

const laneOf = (id: string): string => addressOfId(id)?.lane ?? '';
const placeIn = (measure: string, lane: string): string => `${measure} ${lane}`;

/** The curves and lines of a measure. */
export function drawnCurves(measure: XmlElement, notes: Notes, added: AddedSign[]): XmlElement {
  if (measure.name !== 'measure') return measure;
  const isFree = isOfType(measure, 'free');
  return {
    ...measure,
    content: childrenOf(measure).flatMap((element) => {
      if (!isDrawnHere(element)) return [element];
      const from = notes.meant(element.attributes.startid, idOf(element));
      // A curve that ends on a barline goes to the last note before it.
      const to = notes.meant(element.attributes.endid, idOf(element));
      if (element.name === 'line') return addLine(element, [from, to], added);
      if (from === undefined || to === undefined || from === to) return addOpen(element, from, to, added);
      if (isFree) return addCurve(element, [from, to], added);
      const isFromBarline = referred(element.attributes.startid) !== from;
      return [slur(element, to, isFromBarline ? notes.staveOf(to) : undefined)];
    }),
  };
}

/** Ties are the library's, but for those that lead in from, or on to, music that is not drawn. */
const isDrawnHere = ({ name, attributes }: XmlElement): boolean =>
  name === 'curve' ||
  name === 'line' ||
  (name === 'tie' && (attributes.startid === undefined || attributes.endid === undefined));

/** @param staff of one from a barline: it refers to a bar, from which its moment is made, and says of which stave that is */
const slur = ({ attributes }: XmlElement, to: string, staff?: string | number): XmlElement => {
  const { 'xml:id': id, startid, curvedir, lform, color } = attributes;
  return xml('slur', { 'xml:id': id, startid, endid: `#${to}`, curvedir, lform, color, staff });
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
