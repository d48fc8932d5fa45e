/** Title, sources and the list of parts. */
import { clefsText } from '../../../grammar/vocabulary/clefs';
import type { Environment } from '../../score/environment';
import type { Score } from '../../score/score';
import { changesOf } from '../../score/walk';
import type { Measure } from '../measures';
import type { ClefChoice } from '../staves';
import { leaf, type XmlElement, xml } from '../xml';

/**
 * Everything before the parts, in the order of the group `score-header`.
 *
 * @param forms what is said of each part, where there are several
 */
export function headerElements(
  score: Score,
  measures: readonly Measure[],
  clefs: ClefChoice,
  forms: readonly string[] = [],
): readonly XmlElement[] {
  const { title } = score.environment;
  const movement = movementTitle(measures);
  return [
    ...(title === undefined ? [] : [xml('work', {}, [leaf('work-title', title)])]),
    ...(movement === undefined ? [] : [leaf('movement-title', movement)]),
    identification(score, measures, clefs),
    xml('part-list', {}, partNames(score.environment, forms).map(partElement)),
  ];
}

/** The name by which the list of parts and a part know each other. */
export const partId = (index: number): string => `P${index + 1}`;

const partElement = (name: string, index: number): XmlElement =>
  xml('score-part', { id: partId(index) }, [leaf('part-name', name)]);

function partNames(environment: Environment, forms: readonly string[]): readonly string[] {
  const name = partName(environment);
  return forms.length === 0 ? [name] : forms.map((form) => `${name}, ${form}`);
}

/** The name of the piece, where the export holds one alone. */
function movementTitle(measures: readonly Measure[]): string | undefined {
  const names = new Set(measures.map(({ piece }) => piece.name));
  const [name] = names;
  return names.size === 1 && name !== '' ? name : undefined;
}

function identification({ environment, choice }: Score, measures: readonly Measure[], clefs: ClefChoice): XmlElement {
  const sources = environment.sources.flatMap(({ name, description, hands }) => [
    `${name}: ${description}`,
    ...hands.map((hand) => `${name}.${hand.layer}: ${hand.description}`),
  ]);
  return xml('identification', {}, [
    ...[...environment.editors].map(([signs, { name }]) =>
      xml('creator', { type: 'editor' }, name === '' ? signs : `${signs}: ${name}`),
    ),
    xml('encoding', {}, [
      leaf('software', 'Bentside'),
      supports({ element: 'accidental' }),
      supports({ element: 'beam' }),
      supports({ element: 'print', attribute: 'new-page', value: 'yes' }),
      supports({ element: 'print', attribute: 'new-system', value: 'yes' }),
    ]),
    sources.length === 0 ? undefined : leaf('source', sources.join('; ')),
    xml('miscellaneous', {}, [
      field('reading', choice.name),
      field('accidental-practice', choice.accidentals),
      clefs === 'source' ? undefined : field('clefs-of-the-source', sourceClefs(environment, measures)),
      environment.pitch === undefined ? undefined : field('pitch-a4', `${environment.pitch} Hz`),
    ]),
  ]);
}

/**
 * What an incipit would show beside modern clefs: the clefs with which each stave begins. A second clef in the music
 * itself would mislead the programs that know no editorial levels.
 */
function sourceClefs({ staves }: Environment, measures: readonly Measure[]): string {
  const changes = [...new Set(measures.map(({ piece }) => piece))].flatMap((piece) => [...changesOf(piece)]);
  return staves
    .flatMap(({ name }, stave) => {
      const first = changes.find(({ change }) => change.stave === stave && (change.clefs ?? []).length > 0);
      return first === undefined ? [] : [`${name} ${clefsText(first.change.clefs ?? [])}`];
    })
    .join(', ');
}

const supports = (what: {
  readonly element: string;
  readonly attribute?: string;
  readonly value?: string;
}): XmlElement => xml('supports', { type: 'yes', ...what });

const field = (name: string, text: string): XmlElement => xml('miscellaneous-field', { name }, text);

/** The instrument declared first, else the class that all music of the notation is for. */
function partName({ statements }: Environment): string {
  const declared = statements.find(({ statement }) => statement.keyword === 'instrument')?.statement.args[0];
  return declared !== undefined && 'text' in declared ? declared.text : 'keyboard';
}
