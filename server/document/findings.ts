/** All findings of a version: made absolute, each once, at the levels wished for, and not too many. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Finding, Problem } from '../../grammar/findings/finding';
import { areSame, keeping } from '../../grammar/keeping';
import type { Block, BlockContents } from '../../grammar/tree';
import type { Checked } from '../checks';
import type { PlacedProblem } from '../score/score';
import { findingOfScore, type NamedTree } from './absolute';
import type { AnalysisOptions } from './analysis';
import { arises, eachOnce, inSome, type Met } from './inReadings';
import { type Generation, isStale } from './kept';
import { aboveAll, capped, levelled } from './levels';

/** A finding and the lane whose count it swells; undefined for those of statements and of the file. */
export interface Counted {
  readonly lane: string | undefined;
  readonly finding: Finding;
}

interface LaneFinding extends Counted, Met {}

/** A problem in contents, wherever those stand. */
type Unplaced = Omit<PlacedProblem, 'block'>;

/** What the parser met: in the cut of a block, in its statements, in its lanes. */
const problemsOf = keeping(({ problems, statements, lanes }: BlockContents): readonly Unplaced[] => {
  const all: Unplaced[] = [];
  for (const problem of problems) all.push({ problem, lane: undefined });
  for (const [statement, { tree }] of statements.entries()) {
    for (const problem of tree.problems) all.push({ problem, lane: undefined, statement });
  }
  for (const [lane, { tree }] of lanes.entries()) for (const problem of tree.problems) all.push({ problem, lane });
  return all;
});

/** Findings of contents at one place: by lane or statement, then by problem. */
interface MadeHere {
  readonly offset: number;
  readonly line: number;
  readonly byHolder: Map<number, WeakMap<Problem, Made>>;
  used: number;
}

interface Made {
  readonly finding: Finding;
  /** The blocks in which other places explain it, with their offsets: those may move while its own block stays. */
  readonly elsewhere: readonly (BlockContents | number | undefined)[];
}

const nowhere: Made['elsewhere'] = [];

function elsewhereOf({ tree }: NamedTree, { related = [] }: PlacedProblem): Made['elsewhere'] {
  if (related.length === 0) return nowhere;
  const places: (BlockContents | number | undefined)[] = [];
  for (const { source } of related) {
    const block = tree.blocks[source.block];
    places.push(block?.contents, block?.offset);
  }
  return places;
}

/** Where equal contents stand: in a file of copies at very many places. */
interface Places {
  readonly byOffset: Map<number, MadeHere>;
  /** Beyond these it is worth looking for what is unused. */
  most: number;
}

const FEW = 16;

/** Between two blocks in so many others may have their turn. */
const BLOCKS_IN_STEP = 500;

const NO_HOLDER = -1;
const holderOf = ({ lane, statement }: Unplaced): number =>
  statement === undefined ? (lane ?? NO_HOLDER) : NO_HOLDER - 1 - statement;

/** Makes findings of problems; those of a block that neither changed nor moved are kept. */
export class Findings {
  private readonly made = new WeakMap<BlockContents, Places>();

  constructor(private readonly generation: Generation) {}

  /**
   * Makes them a piece at a time, to be `sifted`.
   * @param problems met beyond the parser's, in any order and any number of times
   * @param choices all that the file offers
   */
  *making(
    named: NamedTree,
    problems: Iterable<Checked>,
    choices: readonly string[],
  ): Generator<undefined, readonly Counted[]> {
    const found = new Map<Finding, LaneFinding>();
    /** Choices that agree in a system have the very same problems there. */
    const byProblem = new Map<PlacedProblem, LaneFinding>();
    /** By block. */
    const places: (MadeHere | undefined)[] = [];
    const take = (placed: PlacedProblem, choice: string | undefined): void => {
      const met = byProblem.get(placed);
      if (met !== undefined) {
        arises(met, choice);
        return;
      }
      const finding = this.finding(named, placed, places);
      const lane = placed.lane === undefined ? undefined : `${placed.block} ${placed.lane}`;
      const known = found.get(finding);
      const one = known ?? { lane, finding, readings: choice === undefined ? undefined : new Set([choice]) };
      if (known === undefined) found.set(finding, one);
      else arises(known, choice);
      byProblem.set(placed, one);
    };
    const { blocks } = named.tree;
    for (let block = 0; block < blocks.length; block++) {
      if (block % BLOCKS_IN_STEP === 0) yield;
      for (const unplaced of problemsOf((blocks[block] as Block).contents)) take({ ...unplaced, block }, undefined);
    }
    for (const { choice, problems: all } of problems) {
      yield;
      for (const placed of all) take(placed, choice);
    }
    yield;
    const counted: Counted[] = [];
    for (const one of eachOnce(found.values())) counted.push({ lane: one.lane, finding: inSome(one, choices) });
    return counted;
  }

  private madeAt({ contents, offset, line }: Block): MadeHere {
    const places = this.made.get(contents) ?? { byOffset: new Map<number, MadeHere>(), most: FEW };
    this.made.set(contents, places);
    let here = places.byOffset.get(offset);
    if (here === undefined || here.line !== line) {
      here = { offset, line, byHolder: new Map(), used: 0 };
      places.byOffset.set(offset, here);
    }
    here.used = this.generation.now;
    if (places.byOffset.size > places.most) this.forget(places);
    return here;
  }

  /** Drops what has long been unused, when there is so much that it pays to look. */
  private forget(places: Places): void {
    for (const [offset, { used }] of places.byOffset) {
      if (isStale(used, this.generation)) places.byOffset.delete(offset);
    }
    places.most = Math.max(FEW, 2 * places.byOffset.size);
  }

  private finding(named: NamedTree, placed: PlacedProblem, places: (MadeHere | undefined)[]): Finding {
    const block = named.tree.blocks[placed.block];
    if (block === undefined) return findingOfScore(named, placed);
    const here = places[placed.block] ?? this.madeAt(block);
    places[placed.block] = here;
    const holder = holderOf(placed);
    const made = here.byHolder.get(holder) ?? new WeakMap<Problem, Made>();
    here.byHolder.set(holder, made);
    const elsewhere = elsewhereOf(named, placed);
    const known = made.get(placed.problem);
    if (known !== undefined && areSame(known.elsewhere, elsewhere)) return known.finding;
    const finding = findingOfScore(named, placed);
    made.set(placed.problem, { finding, elsewhere });
    return finding;
  }
}

/** An include that brings nothing. */
const MISSES: ReadonlySet<FindingCode> = new Set(['include-missing', 'include-refused', 'include-too-many']);

/** Nobody gives a name that a missing include may bring. */
const MAY_BE_BROUGHT: ReadonlySet<FindingCode> = new Set([
  'unknown-editor',
  'unknown-label',
  'unknown-sign',
  'unknown-source',
  'unknown-table',
  'unknown-temperament',
  'unknown-witness',
]);

/** Findings that were made, with others of the file, at the levels wished for, and not too many. */
export function sifted(
  made: readonly Counted[],
  also: readonly Finding[],
  { levels = {}, counsel }: AnalysisOptions,
): readonly Finding[] {
  const lanes = new Map<string, Finding[]>();
  const others: Finding[] = [];
  const misses = also.some((finding) => MISSES.has(finding.code) && levelled(finding, levels) !== undefined);
  for (const { lane, finding: found } of [...made, ...also.map((finding) => ({ lane: undefined, finding }))]) {
    // The include that is missing is told; which of the names it does not bring are slips is known when it is there.
    if (misses && MAY_BE_BROUGHT.has(found.code)) continue;
    const finding = levelled(found, levels, counsel);
    if (finding === undefined) continue;
    const same = lane === undefined ? others : lanes.get(lane);
    if (same !== undefined) same.push(finding);
    else if (lane !== undefined) lanes.set(lane, [finding]);
  }
  // Most of what is found in a text that was not read comes of that.
  const unread = others.find(({ code }) => code === 'not-utf8');
  if (unread !== undefined) {
    const all = [...others, ...[...lanes.values()].flat()];
    return aboveAll(
      unread,
      all.filter((finding) => finding !== unread),
    );
  }
  // Findings of no lane: only the file's count bounds them.
  return capped(lanes.values(), others);
}
