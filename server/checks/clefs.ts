/** Clefs at the head of a system that gainsay what the end of the system before announced. */
import { clausesOf, firstOf } from '../../grammar/statements/read';
import { equal } from '../../grammar/time';
import type { Clef, FileTree, Span } from '../../grammar/tree';
import { clefText } from '../../grammar/vocabulary/clefs';
import type { PlacedProblem, ScoreSystem, StateChange } from '../score/score';
import { check, problemAt } from './check';

const drawn = (clefs: readonly Clef[]): string => clefs.map(clefText).join('+');

/** A clef as the head of a system states it. */
interface HeadClef extends Span {
  readonly stave: string;
  readonly text: string;
}

const headClefs = (tree: FileTree, system: ScoreSystem): HeadClef[] => {
  const head = tree.blocks[system.block]?.statements[0]?.tree.statement;
  return clausesOf(head ?? { clauses: [] }, 'clef').flatMap(({ args }): HeadClef[] => {
    const [stave, clef] = [firstOf(args, 'name'), firstOf(args, 'clef')];
    if (stave === undefined || clef === undefined) return [];
    return [{ stave: stave.text, text: drawn(clef.clefs), pos: clef.pos, len: clef.len }];
  });
};

/** Clefs that a lane draws at the very end of a system. */
const announced = ({ score }: ScoreSystem): StateChange[] =>
  score.changes.filter(
    (change) => change.clefs !== undefined && change.source !== undefined && equal(change.onset, score.duration),
  );

export const clefsAtHeads = check(
  'clef-change-at-head',
  ['tree', 'environment', 'score'],
  ({ tree, environment, score }) =>
    score.pieces.flatMap(({ systems }) =>
      systems.flatMap((system, index): PlacedProblem[] => {
        const before = systems[index - 1];
        if (before === undefined) return [];
        const heads = headClefs(tree, system);
        return announced(before).flatMap((change): PlacedProblem[] => {
          const stave = environment.staves[change.stave ?? -1]?.name;
          const text = drawn(change.clefs ?? []);
          const head = heads.find((one) => one.stave === stave);
          if (head === undefined || head.text === text || change.source === undefined) return [];
          const spot = { pos: head.pos, len: head.len, block: system.block, statement: 0 };
          const slots = { stave: head.stave, head: head.text, announced: text };
          const fix = { title: `write ${text}`, edits: [{ pos: head.pos, len: head.len, text }] };
          const source = { ...change.source, block: before.block };
          const related = [{ message: `${text} is announced here`, source }];
          return [{ ...problemAt('clef-change-at-head', spot, slots, [fix]), related }];
        });
      }),
    ),
);
