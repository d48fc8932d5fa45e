/** Everything that can be said of one version of a file: its environment, its scores, its findings. */
import type { Finding } from '../../grammar/findings/finding';
import type { FileTree } from '../../grammar/tree';
import { checkFile } from '../checks';
import { choiceNames, choiceOf } from '../readings/choices';
import { buildScore } from '../score/build';
import { buildEnvironment, type Environment } from '../score/environment';
import type { PlacedProblem, Score } from '../score/score';
import { findingInBlock, findingInHolder, findingOfScore, type NamedTree } from './absolute';
import { capped, type Levels, levelled } from './levels';

export interface Analysis {
  readonly file: string;
  readonly tree: FileTree;
  readonly environment: Environment;
  /** `written`, then the readings, witnesses and layers declared. */
  readonly choices: readonly string[];
  /** The score of a choice, built when first asked for; undefined if the file declares no such reading or witness. */
  score(choice: string): Score | undefined;
  /** By place. Made when first asked for. */
  findings(): readonly Finding[];
}

export interface AnalysisOptions {
  /** Levels other than the catalogue's. */
  readonly levels?: Levels;
  /** Whether the music itself is judged: voice leading, accidentals that may be missing. As a rule it is. */
  readonly counsel?: boolean;
  /** Findings made elsewhere, such as those of includes. */
  readonly also?: readonly Finding[];
}

/**
 * Analyses a file.
 * @param file its name, as the host calls it
 * @param included the files it includes, directly or not, each after those that it includes itself
 */
export function analyse(
  file: string,
  tree: FileTree,
  included: readonly NamedTree[] = [],
  options: AnalysisOptions = {},
): Analysis {
  const environment = buildEnvironment(file, tree, [...included]);
  const choices = choiceNames(environment);
  const scores = new Map<string, Score>();
  const score = (name: string): Score | undefined => {
    const choice = choiceOf(environment, name);
    if (choice === undefined) return undefined;
    const built = scores.get(name) ?? buildScore(file, tree, environment, choice);
    scores.set(name, built);
    return built;
  };
  let found: readonly Finding[] | undefined;
  const checked = (): readonly PlacedProblem[] => {
    const built = choices.flatMap((name) => score(name) ?? []);
    return checkFile({ tree, environment }, built);
  };
  const gather = (): readonly Finding[] => {
    const named = { file, tree };
    const all = [
      ...treeFindings(named),
      ...placedFindings(named, environment.problems),
      ...choices.flatMap((name) => placedFindings(named, score(name)?.problems ?? [])),
      ...placedFindings(named, checked()),
    ];
    return sifted([...eachOnce(all), ...(options.also ?? []).map(ofFile)], options);
  };
  return {
    file,
    tree,
    environment,
    choices,
    score,
    findings: () => {
      found ??= gather();
      return found;
    },
  };
}

/** A finding and the lane whose count it swells; "" for those of statements and of the file. */
interface LaneFinding {
  readonly lane: string;
  readonly finding: Finding;
}

const ofFile = (finding: Finding): LaneFinding => ({ lane: '', finding });

/** What the parser met: in the cut of each block, in its statements, in its lanes. */
function treeFindings(named: NamedTree): LaneFinding[] {
  return named.tree.blocks.flatMap((block, index) => [
    ...block.problems.map((problem) => ofFile(findingInBlock(named, block, problem))),
    ...block.statements.flatMap((placed) =>
      placed.tree.problems.map((problem) => ofFile(findingInHolder(named, block, placed, problem))),
    ),
    ...block.lanes.flatMap((placed, lane) =>
      placed.tree.problems.map((problem) => ({
        lane: laneKey(index, lane),
        finding: findingInHolder(named, block, placed, problem),
      })),
    ),
  ]);
}

const laneKey = (block: number, lane: number | undefined): string => (lane === undefined ? '' : `${block} ${lane}`);

const placedFindings = (named: NamedTree, problems: readonly PlacedProblem[]): LaneFinding[] =>
  problems.map((placed) => ({ lane: laneKey(placed.block, placed.lane), finding: findingOfScore(named, placed) }));

/** Each thing found once at its place: readings agree in most bars. */
function eachOnce(all: readonly LaneFinding[]): LaneFinding[] {
  const found = new Map<string, LaneFinding>();
  for (const one of all) {
    const { code, range } = one.finding;
    const key = `${code} ${range.start.offset} ${range.end.offset}`;
    if (!found.has(key)) found.set(key, one);
  }
  return [...found.values()];
}

/** At the levels wished for, and not too many. */
function sifted(all: readonly LaneFinding[], { levels = {}, counsel }: AnalysisOptions): readonly Finding[] {
  const lanes = new Map<string, Finding[]>();
  for (const one of all) {
    const finding = levelled(one.finding, levels, counsel);
    if (finding === undefined) continue;
    const others = lanes.get(one.lane);
    if (others === undefined) lanes.set(one.lane, [finding]);
    else others.push(finding);
  }
  // Findings of no lane: only the file's count bounds them.
  const ofStatements = lanes.get('') ?? [];
  lanes.delete('');
  return capped(lanes.values(), ofStatements);
}
