/** Sources and readings of one file beside one another. */
import type { Environment } from '../score/environment';
import type { Piece, Score } from '../score/score';
import { lineage, practicesOfReading, statedTempo, tableOfReading } from './choices';
import { type Agreement, agreementsIn, allDifferencesOf, type Difference, type Side } from './compare/differences';
import { comparedText } from './compare/symbols';
import { choiceInWords } from './inWords';

/** What a text chooses besides its notes. */
export interface Chosen {
  readonly name: string;
  readonly description: string;
  readonly takes: readonly string[];
  /** The sign table; "" where signs are not played. */
  readonly signs: string;
  readonly practices: readonly string[];
  readonly accidentals: string;
  /** As stated for this reading; "" where that of the file holds. */
  readonly tempo: string;
  /** By piece, "" where it is as drawn. */
  readonly orders: readonly string[];
  /** All but the description, and the tuning, in the words of the trade: “dots stretched as by a second dot, the dot held”. */
  readonly inWords: readonly string[];
}

export interface Comparison {
  readonly schema: 'bentside.comparison/1';
  readonly file: string;
  readonly texts: readonly Chosen[];
  readonly differences: readonly ComparedPlace[];
  readonly agreements: readonly Agreement[];
}

/** A difference as data. */
export type ComparedPlace = Omit<Difference, 'sides'> & { readonly sides: readonly Omit<Side, 'symbols'>[] };

/** What scores of one file have otherwise, bar by bar, and who agrees with whom. */
export function compareScores(scores: readonly Score[]): Comparison {
  const differences = allDifferencesOf(scores.map((score) => ({ name: score.choice.name, text: comparedText(score) })));
  return {
    schema: 'bentside.comparison/1',
    file: scores[0]?.file ?? '',
    texts: scores.map(chosenBy),
    differences: differences.map(placeOf),
    agreements: agreementsIn(differences),
  };
}

const placeOf = ({ sides, ...difference }: Difference): ComparedPlace => ({
  ...difference,
  sides: sides.map(({ names, doubtful, text, inWords, place }) => ({ names, doubtful, text, inWords, place })),
});

/** What a score's reading chooses. */
export function chosenBy({ choice, environment, pieces }: Score): Chosen {
  const { name, accidentals } = choice;
  const tempo = statedTempo(environment, name);
  const orders = pieces.map(({ order }) => (order ?? []).join(' '));
  return {
    name,
    description: descriptionOf(environment, name),
    takes: choice.labels.filter((label) => label !== name),
    signs: tableOfReading(environment, name) ?? '',
    practices: practicesOfReading(environment, name).map(({ text }) => text),
    accidentals,
    tempo: tempo === undefined ? '' : `${tempo.value.text} at ${tempo.perMinute}`,
    orders,
    inWords: [
      ...choiceInWords(environment, choice),
      ...orders.flatMap((order, piece) => orderInWords(order, pieces, piece)),
    ],
  };
}

/** Of several pieces with the name of its own. */
function orderInWords(order: string, pieces: readonly Piece[], piece: number): readonly string[] {
  if (order === '') return [];
  return [`order ${order}${pieces.length > 1 ? ` in “${pieces[piece]?.name}”` : ''}`];
}

const descriptionOf = (environment: Environment, name: string): string =>
  lineage(environment, name)[0]?.description ??
  environment.sources.find((source) => source.name === name)?.description ??
  '';
