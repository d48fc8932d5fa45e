/** What the readings of a version decide at their signs, and what they could not play of signs and practices. Made when asked for, not at each edit. */
import type { Finding } from '../../grammar/findings/finding';
import type { FileTree } from '../../grammar/tree';
import { tableOfReading } from '../readings/choices';
import { perform } from '../readings/perform';
import type { Environment } from '../score/environment';
import type { Score } from '../score/score';
import { type Decision, decisionsOf, type PlayedSign, playedSigns } from '../signs/decisions';
import { tableInForce } from '../signs/rows';
import { findingOfScore } from './absolute';
import type { Analysis } from './analysis';

export interface Decided {
  /** By reading, then by place. */
  readonly decisions: readonly Decision[];
  /** Each once, with the readings in which it arises. */
  readonly findings: readonly Finding[];
  /** Every sign that a reading plays by its table, those settled and those played plain too. */
  readonly signs: readonly SignsOfReading[];
}

/** The signs of one reading. */
export interface SignsOfReading {
  readonly score: Score;
  /** The table by which the reading has its signs played. */
  readonly table: string;
  readonly signs: readonly PlayedSign[];
}

/** What was decided in a version, as long as it stands. */
const kept = new WeakMap<FileTree, { readonly environment: Environment; readonly decided: Decided }>();

/** Looks at each reading that the file declares, or, where it declares none, at each source. */
export function decidedIn(analysis: Analysis): Decided {
  const { tree, environment } = analysis;
  const known = kept.get(tree);
  // What a file includes may be another while the file is the same.
  if (known?.environment === environment) return known.decided;
  const decided = decide(analysis);
  kept.set(tree, { environment, decided });
  return decided;
}

function decide({ choices, environment, score: scoreOf }: Analysis): Decided {
  const declared = environment.readings.map(({ name }) => name);
  const played = declared.length > 0 ? declared : choices.filter((name) => name !== 'written');
  const decisions: Decision[] = [];
  const all: SignsOfReading[] = [];
  const found = new Map<string, { readonly finding: Finding; readonly readings: string[] }>();
  for (const reading of played) {
    const score = scoreOf(reading);
    if (score === undefined) continue;
    const performance = perform(score);
    const table = tableInForce(tableOfReading(environment, reading) ?? '', environment);
    if (table !== undefined) {
      const signs = playedSigns(perform(score, { ornaments: 'sign' }), performance, table);
      all.push({ score, table: table.name, signs });
      decisions.push(...decisionsOf(performance, signs));
    }
    for (const problem of performance.problems) {
      const finding = findingOfScore(score, problem);
      const key = `${finding.code} ${finding.range.start.offset} ${finding.message}`;
      const known = found.get(key) ?? { finding, readings: [] };
      known.readings.push(reading);
      found.set(key, known);
    }
  }
  return { decisions, findings: [...found.values()].map(ofReadings).sort(byPlace), signs: all };
}

const ofReadings = ({
  finding,
  readings,
}: {
  readonly finding: Finding;
  readonly readings: readonly string[];
}): Finding => ({
  ...finding,
  message: `In ${readings.join(', ')}: ${finding.message}`,
  readings,
});

const byPlace = (a: Finding, b: Finding): number => a.range.start.offset - b.range.start.offset;
