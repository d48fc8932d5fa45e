/**
 * A text that is edited. Each update makes a new version; what the change does not reach is kept from the one before:
 * blocks and lanes by their text, scores of systems by all that they depend on.
 *
 * There are no marks of what is dirty: each update goes through all systems and asks for each. Where the carry that comes
 * out of a system is again what it was, the systems that follow are found as they are.
 */
import type { Finding } from '../../grammar/findings/finding';
import { finished } from '../../grammar/finished';
import { areSame } from '../../grammar/keeping';
import { parsing } from '../../grammar/parse';
import type { Block, FileTree } from '../../grammar/tree';
import { type Checked, checkFile, LooksAhead } from '../checks';
import { choiceNames, choiceOf } from '../readings/choices';
import { PlaceDecisions } from '../readings/places';
import { buildingScore } from '../score/build';
import type { Choice } from '../score/choice';
import { buildEnvironment, type Environment } from '../score/environment';
import type { Score } from '../score/score';
import type { NamedTree } from './absolute';
import type { Analysis, AnalysisOptions } from './analysis';
import { edited, type TextChange } from './edits';
import { type Counted, Findings, sifted } from './findings';
import type { Generation } from './kept';
import { Systems } from './systems';
import { Trees } from './trees';
import { inTurns, type Turns } from './turns';

/** A whole new text, or changes of the current one; their offsets count in it as it is, and they do not overlap. */
export type Change = string | readonly TextChange[];

/** The language server's token will do. */
export interface CancellationToken {
  readonly isCancellationRequested: boolean;
}

const NONE_PLAYED: readonly Finding[] = [];

/** What is stale may be this share of what is kept. */
const MOST_UNSWEPT = 1 / 16;

export interface UpdateOptions extends AnalysisOptions {
  /** The files that this one includes, directly or not, each after those that it includes itself. */
  readonly included?: readonly NamedTree[];
}

/** What a version needs besides its text; where that depends on what the text includes, it is told the tree. */
export type Given = UpdateOptions | ((tree: FileTree) => UpdateOptions);

const givenTo = (given: Given, tree: FileTree): UpdateOptions => (typeof given === 'function' ? given(tree) : given);

/** An environment with what it was made from, and the choices that it offers. */
interface Declared {
  readonly from: readonly unknown[];
  readonly environment: Environment;
  readonly choices: ReadonlyMap<string, Choice>;
}

/** The scores of a version. */
class Scores {
  readonly byName = new Map<string, Score>();
  /** By what a choice comes to in the whole file. */
  readonly byTaken = new Map<string, Score>();
}

export class Document {
  private readonly generation: Generation = { now: 0 };
  private readonly trees = new Trees();
  private readonly systems = new Systems(this.generation);
  private readonly places = new PlaceDecisions();
  private readonly made = new Findings(this.generation);
  private declared: Declared | undefined;
  private version: Analysis | undefined;
  private updates = 0;
  /** So many things were made since the last sweep. */
  private unswept = 0;
  private lastTree: FileTree | undefined;
  private lastScores: Scores | undefined;

  /** @param file its name, as the host calls it */
  constructor(readonly file: string) {}

  /** The last version that was made to its end; undefined before the first. */
  get current(): Analysis | undefined {
    return this.version;
  }

  /** What the last update, whole or cancelled, had to do anew: lanes and statements read, scores of systems built. */
  get stats(): { readonly lexed: number; readonly built: number } {
    return { lexed: this.trees.lexed, built: this.systems.built };
  }

  /** How much is kept. */
  get sizes(): {
    readonly systems: number;
    readonly trees: number;
    readonly scores: number;
    readonly carries: number;
  } {
    return { ...this.trees.sizes, ...this.systems.sizes(this.trees.systems()) };
  }

  /** Makes the next version, with the scores of all its choices. */
  update(change: Change, given: Given = {}): Analysis {
    return finished(this.updating(change, given));
  }

  /**
   * The same a piece at a time. Whoever leaves off cancels: the current version stays as it is, and what was built until then
   * is there for the next update.
   */
  *updating(change: Change, given: Given = {}): Generator<undefined, Analysis> {
    this.updates++;
    this.trees.lexed = 0;
    this.systems.built = 0;
    const text = typeof change === 'string' ? change : edited(this.version?.tree.text ?? '', change);
    const tree = yield* this.parsing(text);
    const options = givenTo(given, tree);
    const scores = new Scores();
    const declared = this.declaredIn(tree, options.included ?? []);
    for (const choice of declared.choices.values()) yield* this.building(tree, declared, choice, true, scores);
    this.lastScores = scores;
    const before = this.version;
    this.version = this.analysis(tree, declared, scores, options);
    this.sweep(before === undefined ? [tree] : [before.tree, tree]);
    return this.version;
  }

  /**
   * The same with turns for others, at least every ten milliseconds.
   * @returns undefined if it was cancelled, or another update has begun meanwhile
   */
  updateInTurns(
    change: Change,
    turns: Turns,
    token: CancellationToken,
    given: Given = {},
  ): Promise<Analysis | undefined> {
    const work = this.updating(change, given);
    const update = this.updates + 1;
    return inTurns(work, turns, () => token.isCancellationRequested || update !== this.updates);
  }

  /** Ends a generation. To look for what is stale takes as long as to look over the file: not for the sake of a few things. */
  private sweep(versions: readonly FileTree[]): void {
    this.unswept += this.trees.lexed + this.systems.built;
    if (this.unswept > this.trees.size * MOST_UNSWEPT) {
      this.trees.sweep(versions);
      this.systems.sweep(this.trees.systems());
      this.unswept = 0;
    }
    this.generation.now++;
  }

  /** The tree of a text, for those who need no more of it: files that include this one. */
  treeOf(text: string): FileTree {
    const before = this.lastTree;
    const tree = finished(this.parsing(text));
    if (tree !== before) {
      this.trees.sweep(before === undefined ? [tree] : [before, tree]);
      this.generation.now++;
    }
    return tree;
  }

  /** The same text has the same tree until another is read. */
  private *parsing(text: string): Generator<undefined, FileTree> {
    if (this.lastTree?.text === text) return this.lastTree;
    const tree = yield* parsing(text, this.trees, this.lastTree);
    this.lastTree = tree;
    return tree;
  }

  /** A version by itself, from a tree made elsewhere: its scores are built when they are asked for. */
  read(tree: FileTree, options: UpdateOptions = {}): Analysis {
    return this.analysis(tree, this.declaredIn(tree, options.included ?? []), new Scores(), options);
  }

  private declaredIn(tree: FileTree, included: readonly NamedTree[]): Declared {
    const { from, environment, choices } = this.declare(tree, included);
    return { from, environment, choices: this.places.decide(tree, environment, choices) };
  }

  /** The environment stays the same object as long as nothing that could declare has changed or stands elsewhere. */
  private declare(tree: FileTree, included: readonly NamedTree[]): Declared {
    const from: unknown[] = included.flatMap(({ file, tree: other }) => [file, other]);
    for (let index = 0; index < tree.blocks.length; index++) {
      const { kind, contents } = tree.blocks[index] as Block;
      if (kind !== 'system') from.push(index, contents);
    }
    const before = this.declared;
    if (before !== undefined && areSame(before.from, from)) return before;
    const environment = buildEnvironment(this.file, tree, included);
    const choices = new Map<string, Choice>();
    for (const name of choiceNames(environment)) {
      const choice = choiceOf(environment, name);
      if (choice !== undefined) choices.set(name, choice);
    }
    this.declared = { from, environment, choices };
    return this.declared;
  }

  /**
   * Builds the score of a choice, or takes that of another that comes to the same in the whole file.
   * @param loose whether the events of its systems are let go when they have been looked at: see `Systems`
   */
  private *building(
    tree: FileTree,
    { environment }: Declared,
    choice: Choice,
    loose: boolean,
    scores: Scores,
  ): Generator<undefined, Score> {
    const taken = this.systems.taken(tree, choice);
    const same = scores.byTaken.get(taken);
    const task = { file: this.file, tree, environment, choice };
    const score =
      same === undefined
        ? yield* buildingScore(task, this.systems.scores(environment, choice, loose), {
            before: this.lastScores?.byName.get(choice.name),
            onlooker: loose ? new LooksAhead(environment, choice) : undefined,
          })
        : { ...same, choice };
    scores.byTaken.set(taken, score);
    scores.byName.set(choice.name, score);
    return score;
  }

  private analysis(tree: FileTree, declared: Declared, scores: Scores, options: UpdateOptions): Analysis {
    const { environment, choices } = declared;
    const scoreOf = (name: string, loose: boolean): Score | undefined => {
      const choice = choices.get(name);
      if (choice === undefined) return undefined;
      return scores.byName.get(name) ?? finished(this.building(tree, declared, choice, loose, scores));
    };
    const problems = function* (): Generator<Checked> {
      yield { choice: undefined, problems: environment.problems };
      const all = [...choices.keys()].flatMap((name) => scoreOf(name, true) ?? []);
      for (const one of all) yield { choice: one.choice.name, problems: one.problems };
      yield* checkFile({ tree, environment }, all);
    };
    const { file, made } = this;
    let counted: readonly Counted[] | undefined;
    const counting = function* (): Generator<undefined, readonly Counted[]> {
      counted ??= yield* made.making({ file, tree }, problems(), [...choices.keys()]);
      return counted;
    };
    const byPlayed = new WeakMap<readonly Finding[], readonly Finding[]>();
    const findings = (played: readonly Finding[] = NONE_PLAYED): readonly Finding[] => {
      const known = byPlayed.get(played);
      if (known !== undefined) return known;
      const all = sifted(finished(counting()), [...(options.also ?? []), ...played], options);
      byPlayed.set(played, all);
      return all;
    };
    return {
      file,
      tree,
      environment,
      choices: [...choices.keys()],
      score: (name) => scoreOf(name, false),
      *proofing() {
        yield* counting();
        return findings();
      },
      findings,
    };
  }
}
