/** What a choice comes to in one system: readings that take the same there share its score. */
import type { BlockContents, LaneTree, OptionsItem, Readings } from '../../grammar/tree';
import { type Choice, chooseOption } from '../score/choice';
import { holdsIn } from '../score/lane';

/** A place in a system where choices part. */
type Point =
  | { readonly kind: 'options'; readonly options: OptionsItem }
  | { readonly kind: 'limit'; readonly readings: Readings }
  | { readonly kind: 'witnesses'; readonly names: readonly string[] };

const isOptions = (node: object): node is OptionsItem => 'kind' in node && node.kind === 'options';
const isLimited = (node: object): node is { readonly readings: Readings } =>
  'readings' in node && node.readings !== undefined;

/** Whatever in a tree bears readings or is options, wherever the grammar lets them stand. */
function collect(node: unknown, found: Point[]): void {
  if (typeof node !== 'object' || node === null) return;
  if (Array.isArray(node)) {
    for (const one of node) collect(one, found);
    return;
  }
  if (isOptions(node)) found.push({ kind: 'options', options: node });
  if (isLimited(node)) found.push({ kind: 'limit', readings: node.readings });
  for (const value of Object.values(node)) collect(value, found);
}

const ofTrees = new WeakMap<LaneTree, readonly Point[]>();

function pointsOfTree(tree: LaneTree): readonly Point[] {
  const known = ofTrees.get(tree);
  if (known !== undefined) return known;
  const found: Point[] = [];
  // Options are opened by an angle, limits by a colon.
  if (/[<:]/.test(tree.text)) collect([tree.opening, tree.segments], found);
  ofTrees.set(tree, found);
  return found;
}

const answer = (point: Point, choice: Choice): string => {
  switch (point.kind) {
    case 'options':
      return `${chooseOption(choice, point.options.place?.text, point.options.options)}`;
    case 'limit':
      return holdsIn(point.readings, choice) ? '+' : '-';
    case 'witnesses':
      return preference(point.names, choice).join(' ');
  }
};

/** Witness lanes in the order in which the choice prefers them; those that it never takes are left out. */
function preference(names: readonly string[], choice: Choice): number[] {
  const order: number[] = [];
  for (;;) {
    const rivals = names.flatMap((name, index) => (order.includes(index) ? [] : [{ name, index }]));
    const labels = rivals.map(({ name }) => ({ labels: [{ name, doubtful: false, pos: 0, len: 0 }] }));
    const taken = chooseOption(choice, undefined, [{ labels: [] }, ...labels]);
    const rival = rivals[taken - 1];
    if (rival === undefined) return order;
    order.push(rival.index);
  }
}

export class LocalChoices {
  private readonly points: readonly Point[];
  private readonly answers = new WeakMap<Choice, string>();

  constructor({ lanes }: BlockContents) {
    const names = lanes.flatMap(({ witness }) => witness?.text ?? []);
    const witnesses: Point[] = names.length === 0 ? [] : [{ kind: 'witnesses', names }];
    this.points = [...witnesses, ...lanes.flatMap(({ tree }) => pointsOfTree(tree))];
  }

  /** Equal texts: the choices take the same in all of the system. */
  textOf(choice: Choice): string {
    if (this.points.length === 0) return '';
    const known = this.answers.get(choice);
    if (known !== undefined) return known;
    const text = this.points.map((point) => answer(point, choice)).join();
    this.answers.set(choice, text);
    return text;
  }
}
