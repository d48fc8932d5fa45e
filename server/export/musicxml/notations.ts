/** The `notations` of a note or rest: ties, slurs, tuplets, and the marks that stand at it. */
import { putUnder } from '../../../grammar/lists';
import type { Environment } from '../../score/environment';
import type { AppliedMark } from '../../score/score';
import { placementOf } from '../marks';
import { leaf, type XmlElement, xml } from '../xml';
import { type Editorial, editorialElements, ofMark } from './editorial';
import { signOf } from './signs';
import { ACCIDENTALS } from './tables';

/** A child of `notations` and the group in which MusicXML keeps it. */
export interface Notation {
  readonly home: 'ornaments' | 'technical' | 'articulations' | undefined;
  readonly elements: readonly XmlElement[];
  readonly editorial: Editorial;
}

const NONE: Editorial = { footnote: undefined, level: undefined, bracket: false };

/** A notation that stands outside the groups. */
export const plainNotation = (element: XmlElement): Notation => ({
  home: undefined,
  elements: [element],
  editorial: NONE,
});

type Made = Pick<Notation, 'home' | 'elements'>;
type Maker = (mark: AppliedMark, voice: number) => readonly Made[];

export const fermataElement = (mark: AppliedMark): XmlElement =>
  xml('fermata', { type: placementOf(mark) === 'below' ? 'inverted' : 'upright' });

const fermata: Maker = (mark) => [{ home: undefined, elements: [fermataElement(mark)] }];

const articulation =
  (name: string): Maker =>
  (mark) => [{ home: 'articulations', elements: [xml(name, { placement: placementOf(mark) })] }];

/** Marks other than signs that are notations; `renvoi` and `fin` are directions, `through` is in the value. */
const OTHERS: Readonly<Record<string, Maker>> = {
  fermata,
  dot: articulation('staccato'),
  stroke: articulation('staccatissimo'),
};

const finger: Maker = (mark) => [
  {
    home: 'technical',
    elements: (mark.form.fingers ?? []).map((number, i) =>
      xml('fingering', { substitution: i > 0 ? 'yes' : undefined, placement: placementOf(mark) }, number),
    ),
  },
];

/** Accidentals above or below a note or sign. */
const accidentalMarks = (marks: readonly AppliedMark[]): readonly XmlElement[] =>
  marks.flatMap((mark) => {
    const { accidental, editors } = mark.form;
    if (accidental === undefined) return [];
    const attributes = { bracket: editors ? 'yes' : undefined, placement: placementOf(mark) ?? 'above' };
    return [xml('accidental-mark', attributes, ACCIDENTALS[accidental])];
  });

const accidental: Maker = (mark) => [{ home: undefined, elements: accidentalMarks([mark]) }];

/** The accidentals of an ornament follow it in its group; those of another sign stand beside it. */
const sign: Maker = (mark, voice) => {
  const { home, elements } = signOf(mark, voice);
  const marks = accidentalMarks(mark.accidentals);
  if (home === 'ornaments') return [{ home, elements: [...elements, ...marks] }];
  return [
    { home, elements },
    { home: undefined, elements: marks },
  ];
};

const MAKERS: Readonly<Partial<Record<AppliedMark['form']['type'], Maker>>> = {
  sign,
  finger,
  accidental,
  other: (mark, voice) => OTHERS[mark.form.name]?.(mark, voice) ?? [],
};

/** The notations of a mark; none where it is something else. `voice` is the voice's index, for arpeggios that cross. */
export const notationsOf = (mark: AppliedMark, voice: number, environment: Environment): readonly Notation[] =>
  (MAKERS[mark.form.type]?.(mark, voice) ?? [])
    .filter(({ elements }) => elements.length > 0)
    .map((made) => ({ ...made, editorial: ofMark(mark, environment) }));

/** Groups stand in this order within `notations`; what has none comes first. */
const HOMES = ['ornaments', 'technical', 'articulations'] as const;

/**
 * One `notations` for what the source draws plainly, then one for each editorial level or footnote, as the standard
 * means it: "multiple notations are allowed in order to represent multiple editorial levels" (MusicXML 4.0, `note`).
 */
export function notationsElements(notations: readonly Notation[]): readonly XmlElement[] {
  const levels = new Map<string, Notation[]>([['', []]]);
  for (const notation of notations) {
    const key = isPlain(notation.editorial) ? '' : JSON.stringify(notation.editorial);
    putUnder(levels, key, notation);
  }
  return [...levels.values()].filter((group) => group.length > 0).map(notationsElement);
}

const isPlain = ({ footnote, level }: Editorial): boolean => footnote === undefined && level === undefined;

function notationsElement(group: readonly Notation[]): XmlElement {
  const loose = group.filter(({ home }) => home === undefined).flatMap(({ elements }) => elements);
  const homes = HOMES.map((home) => ({
    home,
    elements: group.filter((notation) => notation.home === home).flatMap(({ elements }) => elements),
  }));
  return xml('notations', {}, [
    ...editorialElements(group[0]?.editorial ?? NONE),
    ...loose,
    ...homes.filter(({ elements }) => elements.length > 0).map(({ home, elements }) => xml(home, {}, elements)),
  ]);
}

/** An accidental of the editor's beside one that the source draws. */
export const editorsAccidental = (sign: keyof typeof ACCIDENTALS): Notation =>
  plainNotation(xml('accidental-mark', { bracket: 'yes', placement: 'above' }, ACCIDENTALS[sign]));

/** The `accidental` of a note: only what is drawn. */
export function accidentalElement(spelling: {
  readonly accidental?: keyof typeof ACCIDENTALS;
  readonly editors?: keyof typeof ACCIDENTALS;
  readonly cautionary?: keyof typeof ACCIDENTALS;
}): XmlElement | undefined {
  const { accidental: drawn, cautionary, editors } = spelling;
  if (drawn !== undefined) return leaf('accidental', ACCIDENTALS[drawn]);
  if (cautionary !== undefined) {
    return xml('accidental', { cautionary: 'yes', parentheses: 'yes' }, ACCIDENTALS[cautionary]);
  }
  if (editors !== undefined) return xml('accidental', { editorial: 'yes', bracket: 'yes' }, ACCIDENTALS[editors]);
  return undefined;
}
