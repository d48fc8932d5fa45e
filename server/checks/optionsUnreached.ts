/** Options that neither the main text nor any reading, source or hand would ever take. */
import { keeping } from '../../grammar/keeping';
import { tellingItems } from '../../grammar/telling';
import type { BlockContents, Item, LaneTree, Option, OptionsItem } from '../../grammar/tree';
import { choiceNames, choiceOf } from '../readings/choices';
import { type Choice, chooseOption, labelText } from '../score/choice';
import type { Environment } from '../score/environment';
import { check, problemAt } from './check';

/** All choices of a file, places that are decided together left apart: what is not reached so is not reached at all. */
const choicesIn = keeping((environment: Environment): readonly Choice[] =>
  choiceNames(environment).flatMap((name) => choiceOf(environment, name) ?? []),
);

/** The lanes of a block that have options, by their places in it. */
const lanesWithOptions = keeping(({ lanes }: BlockContents): readonly (readonly [number, LaneTree])[] =>
  lanes.flatMap(({ tree }, lane): (readonly [number, LaneTree])[] =>
    tellingItems(tree).some(({ kind }) => kind === 'options') ? [[lane, tree]] : [],
  ),
);

export const optionsUnreached = check('options-unreached', ['tree', 'environment'], ({ tree, environment }) => {
  const choices = choicesIn(environment);
  return tree.blocks.flatMap(({ contents }, block) =>
    lanesWithOptions(contents).flatMap(([lane, laneTree]) =>
      unreachedIn(laneTree, choices).map(({ pos, len, labels }) =>
        problemAt('option-unreached', { pos, len, block, lane }, { label: labels.map(labelText).join(',') }),
      ),
    ),
  );
});

/** Kept by lane as long as the choices are the same. */
const kept = new WeakMap<LaneTree, { readonly choices: readonly Choice[]; readonly found: readonly Option[] }>();

function unreachedIn(lane: LaneTree, choices: readonly Choice[]): readonly Option[] {
  const known = kept.get(lane);
  if (known?.choices === choices) return known.found;
  const found: Option[] = [];
  for (const { items } of lane.segments) findUnreached(items, choices, found);
  kept.set(lane, { choices, found });
  return found;
}

/** @param choices those that come so far: within an option those that take it */
function findUnreached(items: readonly Item[], choices: readonly Choice[], found: Option[]): void {
  for (const item of items) {
    if (item.kind === 'span') findUnreached(item.items, choices, found);
    else if (item.kind === 'options') findUnreachedAt(item, choices, found);
  }
}

function findUnreachedAt({ place, options }: OptionsItem, choices: readonly Choice[], found: Option[]): void {
  const taken = choices.map((choice) => chooseOption(choice, place?.text, options));
  for (let index = 0; index < options.length; index++) {
    const option = options[index] as Option;
    if (!taken.includes(index)) found.push(option);
    else if (option.items.some(mayHoldOptions)) {
      const own = choices.filter((_, at) => taken[at] === index);
      findUnreached(option.items, own, found);
    }
  }
}

const mayHoldOptions = ({ kind }: Item): boolean => kind === 'span' || kind === 'options';
