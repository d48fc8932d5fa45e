/** What a choice comes to in one system: readings that take the same there share its score. */
import { type TellingItem, tellingItems } from '../../grammar/telling';
import type { Barline, BlockContents, EventItem, LaneTree, OptionsItem, Readings, Suffix } from '../../grammar/tree';
import { type Choice, chooseOption, holdsIn, preferredWitness } from '../score/choice';

/** A place in a system where choices part. */
type Point =
  | { readonly kind: 'options'; readonly options: OptionsItem }
  | { readonly kind: 'limit'; readonly readings: Readings }
  | { readonly kind: 'witnesses'; readonly names: readonly string[] };

/** Finds what bears readings or is options in a lane. */
class Points {
  readonly found: Point[] = [];

  private limit({ readings }: { readonly readings?: Readings | undefined } = {}): void {
    if (readings !== undefined) this.found.push({ kind: 'limit', readings });
  }

  witnesses(lanes: BlockContents['lanes']): void {
    const names: string[] = [];
    for (const { witness } of lanes) if (witness !== undefined) names.push(witness.text);
    if (names.length > 0) this.found.push({ kind: 'witnesses', names });
  }

  lane(tree: LaneTree): void {
    this.suffixes(tree.opening.suffixes);
    this.barline(tree.opening.again);
    for (const item of tellingItems(tree)) this.item(item);
    for (const { bar } of tree.segments) this.barline(bar);
  }

  private suffixes(list: readonly Suffix[]): void {
    for (const suffix of list) if (suffix.kind === 'mark') this.limit(suffix.form);
  }

  private item(item: TellingItem): void {
    switch (item.kind) {
      case 'event':
        this.event(item);
        break;
      case 'span':
        this.limit(item.head);
        this.suffixes(item.suffixes);
        break;
      case 'options':
        this.found.push({ kind: 'options', options: item });
        this.suffixes(item.suffixes);
        break;
      case 'barline':
        this.barline(item);
        break;
    }
  }

  private event({ written: { tie, suffixes, members } }: EventItem): void {
    this.limit(tie);
    this.suffixes(suffixes);
    for (const member of members) {
      this.limit(member.tie);
      this.suffixes(member.suffixes);
    }
  }

  private barline(bar: Barline | undefined): void {
    if (bar !== undefined) this.suffixes(bar.suffixes);
  }
}

const answerAt = (point: Point, choice: Choice): string => {
  switch (point.kind) {
    case 'options':
      return `${chooseOption(choice, point.options.place?.text, point.options.options)}`;
    case 'limit':
      return holdsIn(point.readings, choice) ? '+' : '-';
    case 'witnesses':
      return preference(point.names, choice).join(' ');
  }
};

/**
 * Witnesses in the order in which the choice prefers their lanes; those that it never takes are left out. Which lanes have
 * something to say differs from bar to bar: of any of them the choice takes the first in this order.
 */
function preference(names: readonly string[], choice: Choice): string[] {
  const order: string[] = [];
  let rivals = names.map((name) => ({ name }));
  for (;;) {
    const taken = preferredWitness(choice, rivals);
    if (taken === undefined) return order;
    order.push(taken.name);
    rivals = rivals.filter(({ name }) => name !== taken.name);
  }
}

/** What a choice comes to in a system. */
export interface Answer {
  /** What is taken at each point. */
  readonly text: string;
  /** Tells it from the others of the system. */
  readonly number: number;
}

/** Where nothing is to be chosen. */
const ALWAYS: Answer = { text: '', number: 0 };

export class LocalChoices {
  private readonly points: readonly Point[];
  private readonly answers = new WeakMap<Choice, Answer>();
  private known: readonly Answer[] = [];

  constructor({ lanes }: BlockContents) {
    const points = new Points();
    points.witnesses(lanes);
    for (const { tree } of lanes) points.lane(tree);
    this.points = points.found;
  }

  /** The same answer: the choices take the same in all of the system. */
  of(choice: Choice): Answer {
    if (this.points.length === 0) return ALWAYS;
    const before = this.answers.get(choice);
    if (before !== undefined) return before;
    const answer = this.sharedBy(this.points.map((point) => answerAt(point, choice)).join());
    this.answers.set(choice, answer);
    return answer;
  }

  private sharedBy(text: string): Answer {
    const known = this.known.find((one) => one.text === text);
    if (known !== undefined) return known;
    const answer = { text, number: this.known.length };
    this.known = [...this.known, answer];
    return answer;
  }
}
