/** Ratios of unequal notes beyond what is recorded anywhere. */
import { keeping } from '../../grammar/keeping';
import { firstOf } from '../../grammar/statements/read';
import { tellingItems } from '../../grammar/telling';
import type { BlockContents, Span, StatementTree } from '../../grammar/tree';
import { RATIOS } from '../practice/practice';
import { check, problemAt } from './check';

interface Ratio extends Span {
  readonly long: number;
  readonly short: number;
}

const isRecorded = ({ long, short }: Ratio): boolean => long >= RATIOS.least * short && long <= RATIOS.most * short;

/** The ratio of a practice, wherever it is stated. */
const ratiosIn = keeping(({ statement }: StatementTree): readonly Ratio[] => {
  const stated = statement.keyword === 'practice' ? [statement.args] : [];
  const clauses = statement.clauses.filter(({ name }) => name === 'practice').map(({ args }) => args);
  return [...stated, ...clauses].flatMap((args) => {
    const ratio = firstOf(args, 'ratio');
    return ratio === undefined ? [] : [{ long: ratio.n, short: ratio.d, pos: ratio.pos, len: ratio.len }];
  });
});

interface LaneRatio extends Ratio {
  readonly lane: number;
}

const ratiosInLanes = keeping(({ lanes }: BlockContents): readonly LaneRatio[] =>
  lanes.flatMap(({ tree }, lane) =>
    tellingItems(tree).flatMap((item) => {
      if (item.kind !== 'span' || item.head.word !== 'inegal' || item.head.ratio === undefined) return [];
      return [{ ...item.head.ratio, lane, pos: item.pos, len: item.head.text.length }];
    }),
  ),
);

export const ratiosRecorded = check('ratios-recorded', ['tree'], ({ tree }) =>
  tree.blocks.flatMap(({ contents, statements }, block) => [
    ...statements.flatMap((placed, statement) =>
      ratiosIn(placed.tree)
        .filter((ratio) => !isRecorded(ratio))
        .map((ratio) => problemAt('inegal-ratio', { ...ratio, block, statement }, slotsOf(ratio))),
    ),
    ...ratiosInLanes(contents)
      .filter((ratio) => !isRecorded(ratio))
      .map((ratio) => problemAt('inegal-ratio', { ...ratio, block }, slotsOf(ratio))),
  ]),
);

const slotsOf = ({ long, short }: Ratio): { readonly ratio: string } => ({ ratio: `${long}:${short}` });
