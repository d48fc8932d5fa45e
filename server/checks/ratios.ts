/** Ratios of unequal notes beyond what is recorded anywhere. */
import { keeping } from '../../grammar/keeping';
import { firstOf } from '../../grammar/statements/read';
import { tellingItems } from '../../grammar/telling';
import type { BlockContents, LaneTree, Span, StatementTree } from '../../grammar/tree';
import { RATIOS } from '../practice/practice';
import type { PlacedProblem } from '../score/score';
import { check, problemAt } from './check';

interface Ratio extends Span {
  readonly long: number;
  readonly short: number;
}

const isRecorded = ({ long, short }: Ratio): boolean => long >= RATIOS.least * short && long <= RATIOS.most * short;

/** The ratio of a practice, wherever a statement states it. */
function ratiosIn({ statement }: StatementTree): Ratio[] {
  const stated = statement.keyword === 'practice' ? [statement.args] : [];
  const clauses = statement.clauses.filter(({ name }) => name === 'practice').map(({ args }) => args);
  return [...stated, ...clauses].flatMap((args) => {
    const ratio = firstOf(args, 'ratio');
    return ratio === undefined ? [] : [{ long: ratio.n, short: ratio.d, pos: ratio.pos, len: ratio.len }];
  });
}

/** The ratio of each mark of inequality. */
function ratiosInLane(lane: LaneTree): Ratio[] {
  const found: Ratio[] = [];
  for (const item of tellingItems(lane)) {
    if (item.kind !== 'span' || item.head.word !== 'inegal' || item.head.ratio === undefined) continue;
    found.push({ ...item.head.ratio, pos: item.pos, len: item.head.text.length });
  }
  return found;
}

interface PlacedRatio extends Ratio {
  readonly lane?: number;
  readonly statement?: number;
}

const unrecordedIn = keeping(({ statements, lanes }: BlockContents): readonly PlacedRatio[] => {
  const found: PlacedRatio[] = [];
  for (const [statement, { tree }] of statements.entries()) {
    for (const ratio of ratiosIn(tree)) if (!isRecorded(ratio)) found.push({ ...ratio, statement });
  }
  for (const [lane, { tree }] of lanes.entries()) {
    for (const ratio of ratiosInLane(tree)) if (!isRecorded(ratio)) found.push({ ...ratio, lane });
  }
  return found;
});

export const ratiosRecorded = check('ratios-recorded', ['tree'], ({ tree }) => {
  const problems: PlacedProblem[] = [];
  for (const [block, { contents }] of tree.blocks.entries()) {
    for (const { long, short, ...at } of unrecordedIn(contents))
      problems.push(problemAt('inegal-ratio', { ...at, block }, { ratio: `${long}:${short}` }));
  }
  return problems;
});
