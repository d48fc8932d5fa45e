/** Options that neither the main text nor any reading, source or hand would ever take. */
import { keeping } from '../../grammar/keeping';
import { tellingItems } from '../../grammar/telling';
import type { BlockContents, Item, LaneTree, Option, OptionsItem, Span } from '../../grammar/tree';
import { choiceNames, choiceOf } from '../readings/choices';
import { type Choice, chooseOption, labelText } from '../score/choice';
import type { Environment } from '../score/environment';
import type { PlacedProblem } from '../score/score';
import { check, problemAt } from './check';

/** All choices of a file, places that are decided together left apart: what is not reached so is not reached at all. */
const choicesIn = keeping((environment: Environment): readonly Choice[] =>
  choiceNames(environment).flatMap((name) => choiceOf(environment, name) ?? []),
);

interface Unreached extends Span {
  readonly lane: number;
  readonly label: string;
}

export const optionsUnreached = check('options-unreached', ['tree', 'environment'], ({ tree, environment }) => {
  const choices = choicesIn(environment);
  const problems: PlacedProblem[] = [];
  for (const [block, { contents }] of tree.blocks.entries()) {
    for (const { label, ...at } of unreachedIn(contents, choices))
      problems.push(problemAt('option-unreached', { ...at, block }, { label }));
  }
  return problems;
});

/** Kept by block as long as the choices are the same. */
const kept = new WeakMap<
  BlockContents,
  { readonly choices: readonly Choice[]; readonly found: readonly Unreached[] }
>();

function unreachedIn(contents: BlockContents, choices: readonly Choice[]): readonly Unreached[] {
  const known = kept.get(contents);
  if (known?.choices === choices) return known.found;
  const found: Unreached[] = [];
  for (const [lane, { tree }] of contents.lanes.entries()) {
    for (const { pos, len, labels } of unreachedInLane(tree, choices))
      found.push({ pos, len, lane, label: labels.map(labelText).join(',') });
  }
  kept.set(contents, { choices, found });
  return found;
}

function unreachedInLane(lane: LaneTree, choices: readonly Choice[]): readonly Option[] {
  const found: Option[] = [];
  if (!tellingItems(lane).some(isOptions)) return found;
  for (const { items } of lane.segments) findUnreached(items, choices, found);
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
    if (!taken.includes(index)) {
      // Of an option without a label another finding speaks.
      if (option.labels.length > 0) found.push(option);
    } else if (option.items.some(mayHoldOptions)) {
      const own = choices.filter((_, at) => taken[at] === index);
      findUnreached(option.items, own, found);
    }
  }
}

const isOptions = ({ kind }: Item): boolean => kind === 'options';
const mayHoldOptions = ({ kind }: Item): boolean => kind === 'span' || kind === 'options';
