/** Marks of notes and rests: signs by their shape, fingers, fermatas, dots, words that stand as marks. */
import type { Shape } from '../../../grammar/vocabulary/shapes';
import type { Environment } from '../../score/environment';
import type { AppliedMark } from '../../score/score';
import { placementOf, shapeOf } from '../marks';
import { leaf, type XmlAttributes, type XmlElement, xml } from '../xml';
import { limits, responsible, withDoubt, words } from './editorial';
import { ACCIDENTALS } from './tables';

/** A mark where it stands. */
export interface PlacedMark {
  readonly mark: AppliedMark;
  /** Its own id. */
  readonly id: string;
  /** Ids of the notes, chords or rests that it stands at: several where one sign is drawn across lanes. */
  readonly at: readonly string[];
}

type Maker = (placed: PlacedMark, attributes: XmlAttributes) => readonly XmlElement[];

/** The elements of a mark beside the staves; none of curves and of what the note itself says. */
export function markElements(placed: PlacedMark, environment: Environment): readonly XmlElement[] {
  const { mark, id, at } = placed;
  const { attributes: names, except } = limits(mark.form.readings, environment);
  const attributes: XmlAttributes = {
    'xml:id': id,
    startid: at[0] === undefined ? undefined : `#${at[0]}`,
    plist: at.length > 1 ? at.map((one) => `#${one}`).join(' ') : undefined,
    place: placementOf(mark),
    ...names,
    type: except,
  };
  const made = MAKERS[mark.form.type]?.(placed, attributes) ?? [];
  return made.map((element) => withDoubt(element, mark.form, environment));
}

/** What no attribute says of how a sign is meant keeps the text as typed. */
const SAID = new Set(['above', 'below', 'after']);

const sign: Maker = ({ mark }, attributes) => {
  const shape = shapeOf(mark);
  const { name, parameters, editors } = mark.form;
  const unsaid = parameters.filter((parameter) => !SAID.has(parameter));
  const shared = {
    ...attributes,
    type: words(shape?.name, parameters.includes('after') && 'after', attributes.type as string | undefined),
    label: `${[name, ...mark.accidentals.map(({ form }) => form.text)].join('')}${unsaid.length === 0 ? '' : `(${unsaid.join(' ')})`}`,
    enclose: editors ? 'brack' : undefined,
  };
  if (shape?.musicxml === 'arpeggiate')
    return [xml('arpeg', { ...spread(shared), order: orderOf(shape), ...glyphOf(shape) })];
  return [xml('ornam', { ...shared, ...accidentalsOf(mark) }, [shape && symbolElement(shape)])];
};

/** An arpeggio names all the chords that it spreads. */
const spread = ({ startid, plist, place: _, ...others }: XmlAttributes): XmlAttributes => ({
  ...others,
  plist: plist ?? startid,
});

const orderOf = ({ musicxmlAttributes }: Shape): string | undefined => musicxmlAttributes?.direction;

const codepointText = (codepoint: number): string => `U+${codepoint.toString(16).toUpperCase()}`;

function glyphOf({ glyph, codepoint }: Shape): XmlAttributes {
  if (glyph === undefined || codepoint === undefined) return {};
  return { 'glyph.auth': 'smufl', 'glyph.name': glyph, 'glyph.num': codepointText(codepoint) };
}

/** The shape by its glyph in SMuFL; where the standard has none of this outline, by the one that can stand in. */
function symbolElement(shape: Shape): XmlElement | undefined {
  if (shape.glyph !== undefined) return xml('symbol', glyphOf(shape));
  return shape.nearest === undefined
    ? undefined
    : xml('symbol', { type: 'nearest', 'glyph.auth': 'smufl', 'glyph.name': shape.nearest });
}

function accidentalsOf({ accidentals }: AppliedMark): XmlAttributes {
  const at = (below: boolean): string | undefined => {
    const found = accidentals.find((mark) => (placementOf(mark) === 'below') === below)?.form.accidental;
    return found && ACCIDENTALS[found];
  };
  return { accidupper: at(false), accidlower: at(true) };
}

const finger: Maker = ({ mark }, attributes) => {
  const [first, ...others] = mark.form.fingers ?? [];
  if (first === undefined) return [];
  if (others.length === 0) return [xml('fing', attributes, first)];
  return [
    xml(
      'fingGrp',
      { ...attributes, form: 'subst' },
      [first, ...others].map((number) => leaf('fing', number)),
    ),
  ];
};

const OTHERS: Readonly<Record<string, Maker>> = {
  fermata: ({ mark: { form } }, attributes) => [
    xml('fermata', {
      ...attributes,
      form: attributes.place === 'below' ? 'inv' : undefined,
      enclose: form.editors ? 'brack' : undefined,
    }),
  ],
  renvoi: (_, attributes) => [xml('repeatMark', { ...attributes, func: 'segno' })],
  fin: (_, attributes) => [xml('repeatMark', { ...attributes, func: 'fine' }, 'Fin')],
};

/** What MEI has no place for where it stands is an annotation with the mark as typed. */
const asTyped: Maker = ({ mark, at }, { 'xml:id': id }) => [
  xml('annot', { 'xml:id': id, type: 'mark', plist: at.map((one) => `#${one}`).join(' ') }, mark.form.text),
];

const MAKERS: Readonly<Partial<Record<AppliedMark['form']['type'], Maker>>> = {
  sign,
  finger,
  weight: ({ mark, at }, { 'xml:id': id }) => [
    xml('annot', { 'xml:id': id, type: 'weight', plist: at.map((one) => `#${one}`).join(' ') }, mark.form.weight ?? 1),
  ],
  accidental: asTyped,
  other: (placed, attributes) =>
    placed.mark.form.name === 'through' ? [] : (OTHERS[placed.mark.form.name] ?? asTyped)(placed, attributes),
};

// ─── in the note ─────────────────────────────────────────────────────────────────────────────────────────────────

/** Marks that are articulations of a note (MEI 5.1, `data.ARTICULATION`). */
const ARTICULATIONS: Readonly<Record<string, string>> = { dot: 'stacc', stroke: 'stroke' };

/** The articulations and the accidentals above a note, in it. */
export const marksInNote = (marks: readonly AppliedMark[], environment: Environment): readonly XmlElement[] =>
  marks.flatMap((mark) => {
    const element = accidental(mark, environment) ?? articulation(mark, environment);
    return element === undefined ? [] : [withDoubt(element, { doubtful: mark.form.doubtful }, environment)];
  });

function accidental(mark: AppliedMark, environment: Environment): XmlElement | undefined {
  const { form } = mark;
  if (form.type !== 'accidental' || form.accidental === undefined) return undefined;
  const { attributes: names, except } = limits(form.readings, environment);
  return xml('accid', {
    accid: ACCIDENTALS[form.accidental],
    place: placementOf(mark) ?? 'above',
    func: form.editors ? 'edit' : undefined,
    resp: form.editors ? responsible(environment) : undefined,
    enclose: form.editors ? 'brack' : undefined,
    ...names,
    type: except,
  });
}

function articulation(mark: AppliedMark, environment: Environment): XmlElement | undefined {
  const { form } = mark;
  const word = form.type === 'other' ? ARTICULATIONS[form.name] : undefined;
  if (word === undefined) return undefined;
  const { attributes: names, except } = limits(form.readings, environment);
  const element = xml('artic', { artic: word, place: placementOf(mark), ...names, type: except });
  return withDoubt(element, { editors: form.editors }, environment);
}

/** Whether a mark finds its place in the note, if the event has one. */
export const standsInNote = ({ form }: AppliedMark): boolean =>
  form.type === 'accidental' || (form.type === 'other' && ARTICULATIONS[form.name] !== undefined);
