/**
 * Signs in their places. What stands over or under its note is an element of the library's with the glyph of its shape;
 * what stands before a head is an accidental with that glyph, so that the library finds it room; all else we add.
 */
import { putUnder } from '../../../grammar/lists';
import { type Shape, shapeByName } from '../../../grammar/vocabulary/shapes';
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import { BLANK, codeOfShape, glyphNumber, standsOutside, WIDE_BLANK } from '../font/codepoints';
import { type AddedSign, type AdditionPlace, AFTER_HEADS } from './addition';
import { accidental, idOf, membersOf, referred, rewritten, roomBefore, standsAt, withAttributes } from './element';

/** Places beside a head that we draw ourselves. */
const ADDED: Readonly<Record<Exclude<Shape['place'], 'above' | 'below'>, AdditionPlace>> = {
  before: 'tallBefore',
  after: 'after',
  stem: 'stem',
  between: 'between',
  beside: 'after',
};

/** Upright wavy lines with a hook, by the names of their shapes. */
const HOOKS: Readonly<Record<string, 'foot' | 'head'>> = { wavy_upright_foot: 'foot', wavy_upright_head: 'head' };

/** Values that have no stem. */
const STEMLESS = new Set(['1', 'breve', 'long', 'maxima']);

/** A measure with its signs drawn; those that we draw are put to `added`. */
export function drawnSigns(measure: XmlElement, added: AddedSign[]): XmlElement {
  if (measure.name !== 'measure') return measure;
  const signs = new Signs(measure, added);
  const beside = childrenOf(measure).flatMap((element) => signs.drawn(element));
  return signs.inNotes({ ...measure, content: beside });
}

class Signs {
  /** Elements put into notes, by the id of the note. */
  private readonly into = new Map<string, XmlElement[]>();
  private readonly notes: ReadonlyMap<string, XmlElement>;
  private readonly following: ReadonlyMap<string, string>;

  constructor(
    measure: XmlElement,
    private readonly added: AddedSign[],
  ) {
    this.notes = notesOf(measure);
    this.following = followingOf(measure);
  }

  drawn(element: XmlElement): readonly XmlElement[] {
    if (element.name === 'arpeg') return [this.wavyLine(element)];
    if (element.name !== 'ornam') return [element];
    const shape = shapeByName(`${element.attributes.type ?? ''}`.split(' ')[0] ?? '');
    if (shape === undefined) return [asWord(element)];
    const code = codeOfShape(shape);
    if (code === undefined) return this.addLine(element);
    if (standsOutside(shape) || this.isOverStemless(shape, element)) return [outside(element, shape, code)];
    return shape.place === 'before' && shape.drawnFor === 'note'
      ? this.putBefore(element, code)
      : this.add(element, shape, code);
  }

  inNotes(measure: XmlElement): XmlElement {
    const filled = (element: XmlElement): XmlElement => {
      const more = this.into.get(idOf(element));
      return more === undefined ? element : { ...element, content: [...childrenOf(element), ...more] };
    };
    return rewritten(measure, filled) ?? measure;
  }

  /** The library would draw an arrow for a direction; the source has a hook, or nothing. */
  private wavyLine(element: XmlElement): XmlElement {
    const end = HOOKS[`${element.attributes.type ?? ''}`.split(' ')[0] ?? ''];
    if (end !== undefined) {
      const { id, grey } = addition(element);
      this.added.push({ kind: 'hook', id: `${id}-hook`, at: [id], end, grey });
    }
    return withAttributes(element, { order: undefined });
  }

  private isOverStemless({ place }: Shape, element: XmlElement): boolean {
    const note = this.notes.get(referred(element.attributes.startid));
    return place === 'stem' && STEMLESS.has(`${note?.attributes.dur ?? ''}`);
  }

  private putBefore(element: XmlElement, code: number): readonly XmlElement[] {
    const { 'xml:id': id, startid, enclose, color } = element.attributes;
    this.put(referred(startid), accidental(code, { 'xml:id': id, enclose, color }));
    return [];
  }

  private put(note: string, element: XmlElement): void {
    putUnder(this.into, note, element);
  }

  private add(element: XmlElement, shape: Shape, code: number): readonly XmlElement[] {
    const { place } = shape;
    const isTall = shape.drawnFor === 'chord' && place === 'after';
    const where = isTall ? 'tallAfter' : ADDED[place as keyof typeof ADDED];
    const isWithin = shape.drawnFor === 'chord' && place === 'between';
    this.added.push({ ...addition(element), kind: 'glyph', code, place: isWithin ? 'within' : where });
    if (AFTER_HEADS.has(where)) this.reserveAfter(element);
    return [];
  }

  /** The next note keeps its distance. */
  private reserveAfter({ attributes: { startid, enclose } }: XmlElement): void {
    const next = this.following.get(referred(startid));
    if (next !== undefined) this.put(next, roomBefore(enclose === undefined ? BLANK : WIDE_BLANK));
  }

  private addLine(element: XmlElement): readonly XmlElement[] {
    this.added.push({ ...addition(element), kind: 'line' });
    return [];
  }
}

const addition = (element: XmlElement) => {
  const { enclose, color } = element.attributes;
  return {
    id: idOf(element),
    at: standsAt(element),
    enclosed: enclose !== undefined,
    grey: color !== undefined,
  };
};

function outside({ attributes }: XmlElement, { place }: Shape, code: number): XmlElement {
  const { type: _, label: __, plist: ___, place: where, ...others } = attributes;
  return xml('mordent', {
    ...others,
    place: where ?? (place === 'below' ? 'below' : 'above'),
    'glyph.auth': 'smufl',
    'glyph.num': glyphNumber(code),
  });
}

/** A sign whose shape nobody knows is named in words. */
const asWord = ({ attributes: { 'xml:id': id, startid, place, label } }: XmlElement): XmlElement =>
  xml('dir', { 'xml:id': id, startid, place: place ?? 'above' }, `${label ?? ''}`);

// ─── notes of a measure ──────────────────────────────────────────────────────────────────────────────────────────────

/** Notes and chords by their ids; a note of a chord has the value of its chord. */
function notesOf(measure: XmlElement): ReadonlyMap<string, XmlElement> {
  const notes = new Map<string, XmlElement>();
  const visit = (element: XmlElement, dur: string | number | undefined): void => {
    const own = element.attributes.dur ?? dur;
    if (element.name === 'note' || element.name === 'chord')
      notes.set(idOf(element), withAttributes(element, { dur: own }));
    for (const child of childrenOf(element)) visit(child, element.name === 'chord' ? own : undefined);
  };
  visit(measure, undefined);
  return notes;
}

/** The note that follows each note in its layer; of a chord its first note. */
function followingOf(measure: XmlElement): ReadonlyMap<string, string> {
  const following = new Map<string, string>();
  let before: readonly string[] = [];
  const visit = (element: XmlElement): void => {
    if (element.name === 'layer') before = [];
    if (element.name === 'note' || element.name === 'chord') {
      const ids = membersOf(element).map(idOf);
      for (const id of before) if (ids[0] !== undefined) following.set(id, ids[0]);
      before = [...ids, idOf(element)];
      return;
    }
    for (const child of childrenOf(element)) visit(child);
  };
  visit(measure);
  return following;
}
