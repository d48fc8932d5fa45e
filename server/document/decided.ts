/** What the readings of a version decide at their signs, and what they could not play. Made when asked for, not at each edit. */
import type { Finding } from '../../grammar/findings/finding';
import { tableOfReading } from '../readings/choices';
import { perform } from '../readings/perform';
import { type Decision, decisionsOf } from '../signs/decisions';
import { tableInForce } from '../signs/rows';
import { findingOfScore } from './absolute';
import type { Analysis } from './analysis';

export interface Decided {
  /** By reading, then by place. */
  readonly decisions: readonly Decision[];
  /** Each once, with the readings in which it arises. */
  readonly findings: readonly Finding[];
}

/** Looks at each reading that the file declares, or, where it declares none, at each source. */
export function decidedIn({ choices, environment, score: scoreOf }: Analysis): Decided {
  const declared = environment.readings.map(({ name }) => name);
  const played = declared.length > 0 ? declared : choices.filter((name) => name !== 'written');
  const decisions: Decision[] = [];
  const found = new Map<string, { readonly finding: Finding; readonly readings: string[] }>();
  for (const reading of played) {
    const table = tableInForce(tableOfReading(environment, reading) ?? '', environment);
    const score = table && scoreOf(reading);
    if (table === undefined || score === undefined) continue;
    const performance = perform(score);
    decisions.push(...decisionsOf(performance, table));
    for (const problem of performance.problems) {
      const finding = findingOfScore(score, problem);
      const key = `${finding.code} ${finding.range.start.offset} ${finding.message}`;
      const known = found.get(key) ?? { finding, readings: [] };
      known.readings.push(reading);
      found.set(key, known);
    }
  }
  return { decisions, findings: [...found.values()].map(ofReadings).sort(byPlace) };
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
