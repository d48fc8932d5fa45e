/** Names that lanes and statements cite, each with its place. */
import { afterWord, allOf, clausesOf, firstOf } from '../../grammar/statements/read';
import type { Argument, Clause, FileTree, Item, Readings, Span, Suffix } from '../../grammar/tree';
import type { Environment } from '../score/environment';

/** `label`: a witness, layer or reading; the others as they are called. */
export type UseKind = 'label' | 'note' | 'manual' | 'place' | 'editor' | 'section' | 'voice' | 'stave';

export interface Use {
  readonly kind: UseKind;
  readonly name: string;
  readonly at: Span;
  readonly block: number;
  readonly lane: number | undefined;
  readonly statement?: number;
}

export interface Uses {
  readonly all: readonly Use[];
  /** Names that options bear. */
  readonly places: ReadonlySet<string>;
}

class Collector {
  readonly all: Use[] = [];
  readonly places = new Set<string>();
  private place: Pick<Use, 'block' | 'lane' | 'statement'> = { block: 0, lane: undefined };

  lane(items: readonly Item[], place: Pick<Use, 'block' | 'lane'>): void {
    this.place = place;
    this.items(items);
  }

  use(kind: UseKind, name: string, at: Span): void {
    this.all.push({ kind, name, at: { pos: at.pos, len: at.len }, ...this.place });
  }

  suffixes(list: readonly Suffix[]): void {
    for (const suffix of list) {
      if (suffix.kind === 'mark') this.readings(suffix.form.readings, suffix);
      else if (suffix.ref !== undefined) this.use('note', suffix.ref, suffix);
    }
  }

  private readings(readings: Readings | undefined, at: Span): void {
    for (const name of readings?.names ?? []) this.use('label', name, at);
  }

  private items(items: readonly Item[]): void {
    for (const item of items) this.item(item);
  }

  private item(item: Item): void {
    if (item.kind === 'event') {
      this.suffixes(item.suffixes);
      this.readings(item.tie?.readings, item);
      for (const member of item.members) {
        this.suffixes(member.suffixes);
        this.readings(member.tie?.readings, member);
      }
    } else if (item.kind === 'span') {
      this.readings(item.head.readings, { pos: item.pos, len: item.head.text.length });
      this.suffixes(item.suffixes);
      this.items(item.items);
    } else if (item.kind === 'options') {
      if (item.place !== undefined) this.places.add(item.place.text);
      this.suffixes(item.reasons);
      this.suffixes(item.suffixes);
      for (const option of item.options) {
        for (const label of option.labels) {
          const name = label.layer === undefined ? label.name : `${label.name}.${label.layer}`;
          this.use('label', name, label);
        }
        this.items(option.items);
      }
    } else if (item.kind === 'barline') this.suffixes(item.suffixes);
    else if (item.kind === 'change' && item.change.word === 'manual') {
      const name = firstOf(item.change.args, 'name');
      if (name !== undefined) this.use('manual', name.text, { pos: item.pos + name.pos, len: name.len });
    }
  }

  statement(
    args: readonly Argument[],
    clauses: readonly Clause[],
    keyword: string,
    place: Pick<Use, 'block' | 'lane' | 'statement'>,
  ): void {
    this.place = place;
    if (keyword === 'link') for (const name of allOf(args, 'name')) this.use('place', name.text, name);
    if (keyword === 'practice') this.practice(args);
    for (const clause of clauses) {
      if (clause.name === 'practice') this.practice(clause.args);
      if (clause.name === 'by') for (const name of allOf(clause.args, 'name')) this.use('editor', name.text, name);
      if (clause.name === 'takes')
        for (const names of allOf(clause.args, 'names'))
          for (const one of names.names) this.use('label', one.text, one);
    }
    if (keyword === 'reading') {
      for (const at of clausesOf({ clauses }, 'at')) {
        const [place_, label] = allOf(at.args, 'name');
        if (place_ !== undefined) this.use('place', place_.text, place_);
        if (label !== undefined) this.use('label', label.text, label);
      }
      for (const order of clausesOf({ clauses }, 'order')) {
        for (const name of allOf(order.args, 'name')) this.use('section', name.text, name);
      }
    }
  }

  /** `… in SECTION`, `… voice V`. */
  private practice(args: readonly Argument[]): void {
    const section = afterWord(args, 'in');
    const voice = afterWord(args, 'voice');
    if (section?.kind === 'name') this.use('section', section.text, section);
    if (voice?.kind === 'name') this.use('voice', voice.text, voice);
  }
}

const kept = new WeakMap<FileTree, Uses>();

/** All names that a file cites. */
export function usesIn(tree: FileTree, environment: Environment): Uses {
  const known = kept.get(tree);
  if (known !== undefined) return known;
  const collector = new Collector();
  tree.blocks.forEach((block, index) => {
    block.statements.forEach(({ tree: { statement } }, at) => {
      collector.statement(statement.args, statement.clauses, statement.keyword, {
        block: index,
        lane: undefined,
        statement: at,
      });
    });
    block.lanes.forEach((placed, lane) => {
      for (const segment of placed.tree.segments) {
        collector.lane(segment.items, { block: index, lane });
        if (segment.bar !== undefined) collector.suffixes(segment.bar.suffixes);
      }
      if (placed.witness !== undefined) {
        const { text, pos } = placed.witness;
        collector.all.push({ kind: 'label', name: text, at: { pos, len: text.length }, block: index, lane: undefined });
      }
      const voice = environment.voices.find((one) => one.name === placed.name.text);
      if (voice !== undefined) {
        const at = { pos: placed.name.pos, len: placed.name.text.length };
        collector.all.push({ kind: 'voice', name: voice.name, at, block: index, lane: undefined });
      }
    });
  });
  const uses = { all: collector.all, places: collector.places };
  kept.set(tree, uses);
  return uses;
}
