/** What is said of places that a choice omits: in its text alone nothing is left to bear it. */
import type { OptionsItem } from '../../../grammar/tree';
import type { PlacedProblem, Score, ScoreSystem } from '../../score/score';
import { Losses } from '../losses';
import { saidOfPlace } from './resolve';
import { standingBars, voicesOf } from './voices';

/** Annotations of omitted places, as they are typed, with their bars. */
export function unsaidPlaces(score: Score): readonly PlacedProblem[] {
  const losses = new Losses(score.pieces);
  for (const { bars, systems } of score.pieces) {
    for (const system of systems) {
      for (const { item, said, lane, bar } of omitted(score, system)) {
        const source = { lane, pos: item.pos, len: item.len };
        const slots = { reading: score.choice.name, said };
        losses.add('alone-place-omitted', slots, { source, system, bar: bars[system.firstBar + bar] });
      }
    }
  }
  return losses.problems();
}

interface Omitted {
  readonly item: OptionsItem;
  /** What is said of it, as typed: never empty. */
  readonly said: string;
  readonly lane: number;
  /** Index in the system. */
  readonly bar: number;
}

function omitted(score: Score, system: ScoreSystem): Omitted[] {
  const block = score.tree.blocks[system.block];
  if (block === undefined) return [];
  return voicesOf(block, score.environment, score.choice).flatMap((voice) =>
    standingBars(voice, score.choice).flatMap(({ taken: { lane, steps } }, bar) =>
      steps.flatMap((step): Omitted[] => {
        if (step.kind !== 'omit') return [];
        const said = saidOfPlace(step.item, block.lanes[lane]?.tree.text ?? '');
        return said === '' ? [] : [{ item: step.item, said, lane, bar }];
      }),
    ),
  );
}
