/** Sources and readings of one file beside one another. */
import type { Environment } from '../score/environment';
import type { Score } from '../score/score';
import { lineage, practicesOfReading, statedTempo, tableOfReading } from './choices';
import { type Agreement, agreementsIn, type Difference, differencesOf, type Side } from './compare/differences';
import { comparedText } from './compare/symbols';

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
  const differences = differencesOf(scores.map((score) => ({ name: score.choice.name, text: comparedText(score) })));
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
  sides: sides.map(({ names, doubtful, text, place }) => ({ names, doubtful, text, place })),
});

/** What a score's reading chooses. */
export function chosenBy({ choice, environment, pieces }: Score): Chosen {
  const { name, accidentals } = choice;
  const tempo = statedTempo(environment, name);
  return {
    name,
    description: descriptionOf(environment, name),
    takes: choice.labels.filter((label) => label !== name),
    signs: tableOfReading(environment, name) ?? '',
    practices: practicesOfReading(environment, name).map(({ text }) => text),
    accidentals,
    tempo: tempo === undefined ? '' : `${tempo.value.text} at ${tempo.perMinute}`,
    orders: pieces.map(({ order }) => (order ?? []).join(' ')),
  };
}

const descriptionOf = (environment: Environment, name: string): string =>
  lineage(environment, name)[0]?.description ??
  environment.sources.find((source) => source.name === name)?.description ??
  '';
