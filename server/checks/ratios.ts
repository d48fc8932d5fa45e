/** Ratios of unequal notes beyond what is recorded anywhere. */
import { keeping } from '../../grammar/keeping';
import { firstOf } from '../../grammar/statements/read';
import { tellingItems } from '../../grammar/telling';
import type { BlockContents, LaneTree, Span, StatementTree } from '../../grammar/tree';
import { RATIOS } from '../practice/practice';
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
const ratiosInLane = (lane: LaneTree): Ratio[] =>
  tellingItems(lane).flatMap((item) => {
    if (item.kind !== 'span' || item.head.word !== 'inegal' || item.head.ratio === undefined) return [];
    return [{ ...item.head.ratio, pos: item.pos, len: item.head.text.length }];
  });

interface PlacedRatio extends Ratio {
  readonly lane?: number;
  readonly statement?: number;
}

const unrecordedIn = keeping(({ statements, lanes }: BlockContents): readonly PlacedRatio[] =>
  [
    ...statements.flatMap(({ tree }, statement) => ratiosIn(tree).map((ratio) => ({ ...ratio, statement }))),
    ...lanes.flatMap(({ tree }, lane) => ratiosInLane(tree).map((ratio) => ({ ...ratio, lane }))),
  ].filter((ratio) => !isRecorded(ratio)),
);

export const ratiosRecorded = check('ratios-recorded', ['tree'], ({ tree }) =>
  tree.blocks.flatMap(({ contents }, block) =>
    unrecordedIn(contents).map(({ long, short, ...at }) =>
      problemAt('inegal-ratio', { ...at, block }, { ratio: `${long}:${short}` }),
    ),
  ),
);
