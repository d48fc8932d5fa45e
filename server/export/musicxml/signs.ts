/** Signs as MusicXML draws them: its own element where it has one, else the glyph by its name in SMuFL. */
import type { Shape } from '../../../grammar/vocabulary/shapes';
import type { AppliedMark } from '../../score/score';
import { placementOf, shapeOf } from '../marks';
import { type XmlElement, xml } from '../xml';

export interface Sign {
  /** The group of `notations` in which its elements stand; undefined: directly. */
  readonly home: 'ornaments' | 'articulations' | undefined;
  readonly elements: readonly XmlElement[];
}

/** Elements that stand elsewhere than among the ornaments. */
const HOMES: Readonly<Record<string, Sign['home']>> = {
  arpeggiate: undefined,
  staccato: 'articulations',
  staccatissimo: 'articulations',
  spiccato: 'articulations',
};

/** Turns drawn after their note have elements of their own. */
const DELAYED: Readonly<Record<string, string>> = { turn: 'delayed-turn', 'inverted-turn': 'delayed-inverted-turn' };

/** The sign of a mark; one that no table and no catalogue knows keeps its name. */
export function signOf(mark: AppliedMark, voice: number): Sign {
  const shape = shapeOf(mark);
  const element = shape?.musicxml ?? 'other-ornament';
  return {
    home: Object.hasOwn(HOMES, element) ? HOMES[element] : 'ornaments',
    elements: (MAKERS[element] ?? plain)(mark, shape, voice),
  };
}

type Maker = (mark: AppliedMark, shape: Shape | undefined, voice: number) => readonly XmlElement[];

const plain: Maker = (mark, shape) => {
  const name = shape?.musicxml ?? '';
  const delayed = mark.form.parameters.includes('after') ? DELAYED[name] : undefined;
  return [xml(delayed ?? name, { placement: placementOf(mark), ...shape?.musicxmlAttributes })];
};

const MAKERS: Readonly<Record<string, Maker>> = {
  'other-ornament': (mark, shape) => [
    xml('other-ornament', { placement: placementOf(mark), smufl: shape?.glyph ?? shape?.nearest }, mark.form.name),
  ],
  'wavy-line': (mark) =>
    ['start', 'stop'].map((type) => xml('wavy-line', { type, number: 1, placement: placementOf(mark) })),
  arpeggiate: (mark, shape, voice) => [
    xml('arpeggiate', { number: arpeggioNumber(mark, voice), ...shape?.musicxmlAttributes }),
  ],
};

/** Chords of several voices that one sign spreads share a number; those spread by themselves have one each. */
const arpeggioNumber = (mark: AppliedMark, voice: number): number => (mark.form.linked ? 1 : 2 + (voice % 15));

/** Whether MusicXML writes the sign at every note of a chord. */
export const coversChord = (mark: AppliedMark): boolean => shapeOf(mark)?.musicxml === 'arpeggiate';
