/** What the readings of a version decide at their signs, and what they could not play of signs and practices. Made when asked for, not at each edit. */
import { catalogue } from '../../grammar/findings/catalogue';
import type { Finding } from '../../grammar/findings/finding';
import { rhythmFindings } from '../../grammar/findings/rhythm';
import { signFindings } from '../../grammar/findings/signs';
import { finished } from '../../grammar/finished';
import type { FileTree } from '../../grammar/tree';
import { heard } from '../practice/alter';
import type { Practice } from '../practice/practice';
import { practicesOfReading, readingsOrSources, tableOfReading } from '../readings/choices';
import { performing, performingBoth } from '../readings/perform';
import type { Environment } from '../score/environment';
import { around } from '../score/excerpt';
import type { PlacedProblem, Score } from '../score/score';
import { type Decision, decisionsOf, type PlayedSign, playedSigns } from '../signs/decisions';
import { type PlayedTable, tableInForce } from '../signs/rows';
import { findingOfScore } from './absolute';
import type { Analysis } from './analysis';
import { eachOnce, inReadings } from './inReadings';

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

/** Things made of versions, each as long as its version stands. */
class OfVersions<Made> {
  private readonly kept = new WeakMap<FileTree, { readonly environment: Environment; readonly made: Made }>();

  of({ tree, environment }: Analysis): Made | undefined {
    const known = this.kept.get(tree);
    // What a file includes may be another while the file is the same.
    return known?.environment === environment ? known.made : undefined;
  }

  keep({ tree, environment }: Analysis, made: Made): Made {
    this.kept.set(tree, { environment, made });
    return made;
  }
}

const decided = new OfVersions<Decided>();
const whenPlayed = new OfVersions<readonly Finding[]>();

/** Looks at each reading that the file declares, or, where it declares none, at each source. */
export const decidedIn = (analysis: Analysis): Decided =>
  decided.of(analysis) ?? decided.keep(analysis, decide(analysis));

/** It is found where a sign is played. */
export const isOfSign = ({ code }: Pick<Finding, 'code'>): boolean => Object.hasOwn(signFindings, code);

/** Of practices what is no matter of taste: where they do nothing, and where they meet one another or even notes. */
const isOfPractice = ({ code }: Pick<Finding, 'code'>): boolean =>
  Object.hasOwn(rhythmFindings, code) && catalogue[code].level !== 'hint';

/** What is told unasked of readings that are played. */
const isTold = (problem: Pick<Finding, 'code'>): boolean => isOfSign(problem) || isOfPractice(problem);

/**
 * What is found at the signs of the readings that play them by a table, and of practices of rhythm. Where no reading has
 * either nothing is played.
 */
export const foundWhenPlayed = (analysis: Analysis): readonly Finding[] => finished(findingWhenPlayed(analysis));

/** The same if it has been made. */
export function knownWhenPlayed(analysis: Analysis): readonly Finding[] | undefined {
  const all = decided.of(analysis)?.findings;
  return whenPlayed.of(analysis) ?? (all && whenPlayed.keep(analysis, all.filter(isTold)));
}

/** The same a piece of work at a time. */
export function* findingWhenPlayed(analysis: Analysis): Generator<undefined, readonly Finding[]> {
  const known = knownWhenPlayed(analysis);
  if (known !== undefined) return known;
  const met: Met[] = [];
  for (const { score, table } of readingsPlayed(analysis)) {
    yield;
    const practices = practicesIn(score);
    if (table === undefined && practices.length === 0) continue;
    const { problems } = yield* performing(score, { undecided: false });
    met.push({ score, practices, problems: problems.filter(({ problem }) => isTold(problem)) });
  }
  return whenPlayed.keep(analysis, yield* makingFindings(met));
}

export interface Proof {
  /** By place in the text. */
  readonly findings: readonly Finding[];
  /** What each reading decides at its signs, where that was asked for. */
  readonly decisions?: readonly Decision[];
}

/** All that is found in a version, in what its readings play too. Asked for decisions it tells also what practices leave to taste. */
export function proofOf(analysis: Analysis, isAskedForDecisions: boolean): Proof {
  if (!isAskedForDecisions) return { findings: analysis.findings(foundWhenPlayed(analysis)) };
  const { findings, decisions } = decidedIn(analysis);
  return { findings: analysis.findings(findings), decisions };
}

function decide(analysis: Analysis): Decided {
  const decisions: Decision[] = [];
  const all: SignsOfReading[] = [];
  const met: Met[] = [];
  for (const { score, table } of readingsPlayed(analysis)) {
    const { plain, played } = finished(performingBoth(score));
    if (table !== undefined) {
      const signs = playedSigns(plain, played, table);
      all.push({ score, table: table.name, signs });
      for (const decision of decisionsOf(played, signs)) decisions.push(decision);
    }
    met.push({ score, practices: practicesIn(score), problems: played.problems });
  }
  return { decisions, findings: finished(makingFindings(met)), signs: all };
}

/**
 * The signs in the system of a block, as `decidedIn` has them; there may be others besides. The rest of the file is not played.
 * A reading with practices of rhythm is played in full, for these may hold on from anywhere.
 */
export function signsAround(analysis: Analysis, block: number): readonly SignsOfReading[] {
  const known = decided.of(analysis);
  if (known !== undefined) return known.signs;
  return [...readingsPlayed(analysis)].flatMap(({ score: whole, table }) => {
    if (table === undefined) return [];
    const isInTime = practicesIn(whole).length === 0;
    const score = isInTime ? around(whole, block) : whole;
    const { plain, played } = finished(performingBoth(score, { undecided: false }));
    const signs = playedSigns(plain, played, table, block);
    return [{ score, table: table.name, signs }];
  });
}

/** The readings that are looked at, each with the table by which its signs are played, if it has one. */
function* readingsPlayed({
  environment,
  score: scoreOf,
}: Analysis): Generator<{ readonly score: Score; readonly table: PlayedTable | undefined }> {
  for (const reading of readingsOrSources(environment)) {
    const score = scoreOf(reading);
    const table = tableInForce(tableOfReading(environment, reading) ?? '', environment);
    if (score !== undefined) yield { score, table };
  }
}

const practicesIn = ({ environment, choice }: Score): readonly Practice[] =>
  practicesOfReading(environment, choice.name);

/** What was met where a reading was played. */
interface Met {
  readonly score: Score;
  readonly practices: readonly Practice[];
  readonly problems: readonly PlacedProblem[];
}

/** Each once, with the readings in which it was met, by place. */
function* makingFindings(met: readonly Met[]): Generator<undefined, Finding[]> {
  const found: { readonly finding: Finding; readonly readings: Set<string> }[] = [];
  for (const { score, problems } of met) {
    for (const problem of problems) {
      yield;
      if (problem.problem.code === 'practice-idle' && !isIdle(problem, met)) continue;
      found.push({ finding: findingOfScore(score, problem), readings: new Set([score.choice.name]) });
    }
  }
  return eachOnce(found)
    .map(({ finding, readings }) => inReadings(finding, [...readings]))
    .sort(byPlace);
}

/** A practice that holds for several readings is idle where it does nothing in any of them. */
function isIdle(idle: PlacedProblem, met: readonly Met[]): boolean {
  const isThis = ({ block, statement, problem }: PlacedProblem): boolean =>
    problem.code === 'practice-idle' && areAt(idle, { block, statement, pos: problem.pos });
  return met.every(
    ({ practices, problems }) => problems.some(isThis) || !heard(practices).some(({ source }) => areAt(idle, source)),
  );
}

const areAt = (
  { block, statement, problem }: PlacedProblem,
  at: { readonly block: number; readonly statement?: number | undefined; readonly pos: number },
): boolean => block === at.block && statement === at.statement && problem.pos === at.pos;

const byPlace = (a: Finding, b: Finding): number => a.range.start.offset - b.range.start.offset;
