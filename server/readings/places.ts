/**
 * Places that are decided once: a name that stands at several places, and names that a `link` joins. Where they first stand
 * decides for all; a source that has nothing of its own elsewhere is asked there as anywhere.
 */
import { keeping } from '../../grammar/keeping';
import { allOf } from '../../grammar/statements/read';
import { tellingItems } from '../../grammar/telling';
import type { BlockContents, FileTree, Option } from '../../grammar/tree';
import { bears, type Choice, labelText, matchingOption } from '../score/choice';
import type { Environment } from '../score/environment';

/** A named place of the text. */
interface Place {
  readonly name: string;
  readonly options: readonly Option[];
}

const placesIn = keeping(({ lanes }: BlockContents): readonly Place[] => {
  const found: Place[] = [];
  for (const { tree } of lanes) {
    for (const item of tellingItems(tree)) {
      if (item.kind !== 'options' || item.place === undefined) continue;
      found.push({ name: item.place.text, options: item.options });
    }
  }
  return found;
});

/** Names that a `link` joins, by the one that stands for all that are linked with it. */
export function linkedPlaces(environment: Environment): Map<string, string> {
  const groups = new Map<string, string>();
  /** By the one that stands for them. */
  const members = new Map<string, string[]>();
  for (const { statement } of environment.statements) {
    if (statement.keyword !== 'link') continue;
    const [first, ...others] = allOf(statement.args, 'name').map(({ text }) => text);
    if (first === undefined) continue;
    const group = groups.get(first) ?? first;
    groups.set(first, group);
    const all = members.get(group) ?? [group];
    members.set(group, all);
    for (const other of others) {
      const joined = groups.get(other) ?? other;
      if (joined === group) continue;
      for (const name of members.get(joined) ?? [joined]) {
        groups.set(name, group);
        all.push(name);
      }
      members.delete(joined);
    }
  }
  return groups;
}

/** What stands at one of several places decided together. */
interface Together {
  readonly names: Set<string>;
  readonly first: Place;
  count: number;
}

function together(tree: FileTree, environment: Environment): readonly Together[] {
  const groups = linkedPlaces(environment);
  const found = new Map<string, Together>();
  for (const { contents } of tree.blocks) {
    for (const place of placesIn(contents)) {
      const group = groups.get(place.name) ?? place.name;
      const one = found.get(group) ?? { names: new Set([place.name]), first: place, count: 0 };
      one.names.add(place.name);
      one.count++;
      found.set(group, one);
    }
  }
  return [...found.values()].filter(({ count }) => count > 1);
}

/** Choices with what is decided together; a choice for which nothing changed is the same object as before. */
export class PlaceDecisions {
  private readonly before = new WeakMap<Choice, { readonly text: string; readonly choice: Choice }>();

  decide(tree: FileTree, environment: Environment, choices: ReadonlyMap<string, Choice>): ReadonlyMap<string, Choice> {
    const all = together(tree, environment);
    if (all.length === 0) return choices;
    return new Map([...choices].map(([name, choice]) => [name, this.decided(all, choice)]));
  }

  private decided(all: readonly Together[], choice: Choice): Choice {
    const at = new Map(choice.at);
    const otherwise = new Map(choice.otherwise);
    for (const { names, first } of all) {
      const stated = choice.stated.flatMap(({ place, label }) => (names.has(place) ? [label] : []));
      const asked = { ...choice, at: new Map([[first.name, stated]]) };
      const matching = matchingOption(asked, first.name, first.options);
      const labels = labelsOf(choice, first.options[matching ?? 0]);
      // What nobody wished for at the first place is taken elsewhere only where nothing is wished for either.
      for (const name of names) {
        at.set(name, matching === undefined ? stated : [...stated, ...labels]);
        otherwise.set(name, labels);
      }
    }
    const text = JSON.stringify([[...at], [...otherwise]]);
    const before = this.before.get(choice);
    if (before?.text === text) return before.choice;
    const made = { ...choice, at, otherwise };
    this.before.set(choice, { text, choice: made });
    return made;
  }
}

/**
 * What is taken elsewhere by whoever took this option: first what bears the choice's own name, then what it took the option
 * for, so that `L,M` is M's text for M also where L and M part.
 */
function labelsOf({ name, labels }: Choice, option: Option | undefined): readonly string[] {
  if (option === undefined) return [];
  return [name, ...labels.filter((label) => bears(option, label)), ...option.labels.map(labelText)];
}
