/** One lane as a choice has it: whose options are taken, what is limited to others taken away, bar by bar. */
import type {
  Barline,
  ChangeItem,
  EventItem,
  Item,
  LostItem,
  OptionsItem,
  PlacedLane,
  Readings,
  SpanItem,
  Suffix,
  TieForm,
  ValueItem,
} from '../../../grammar/tree';
import { type Choice, chooseOption, holdsIn } from '../../score/choice';
import { heldSuffixes } from '../../score/lane/suffixes';
import { HINTS } from '../hints';
import { drop, endOfBarline, type LaneChange, put } from './stretches';

/** What is met when a bar is read as the choice has it. */
export type Step =
  | { readonly kind: 'value'; readonly item: ValueItem }
  /** `untied`: a lone `=` whose tie does not hold, which is typed as notes. */
  | { readonly kind: 'event'; readonly item: EventItem; readonly untied: boolean }
  | { readonly kind: 'lost'; readonly item: LostItem }
  /** A span in which the value is typed anew: small notes, after which all is as before, and tuplets. */
  | { readonly kind: 'enter' | 'leave'; readonly item: SpanItem }
  /** `stave`: where the lane stands before it, as typed. */
  | { readonly kind: 'change'; readonly item: ChangeItem; readonly stave: number }
  /** Something is omitted here, that is, before this place. */
  | { readonly kind: 'omit'; readonly item: OptionsItem };

export interface TakenBar {
  /** Index of its lane in the block. */
  readonly lane: number;
  /** Its stretch of the lane's text, up to the end of the last that stands in it. */
  readonly from: number;
  to: number;
  readonly steps: Step[];
  /** What makes of the stretch what the choice has. */
  readonly changes: LaneChange[];
  /** The barline that ends it, where one is typed in what is taken. */
  closing: Barline | undefined;
  /** The barline at its end is one that is omitted. */
  closingOmitted: boolean;
  /** Nothing at all is typed in it. */
  isEmpty: boolean;
  /** Something of it depends on the choice, so that its figures and syllables may be others than those typed. */
  isChosen: boolean;
  /** Spans that are open where it begins, each as it is typed with its brace. */
  readonly within: readonly string[];
}

/** How much of a sign's end names readings. */
const limitLength = ({ not, names }: Readings): number => (not ? ':!' : ':').length + names.join(',').length;

const endOf = ({ pos, len }: { readonly pos: number; readonly len: number }): number => pos + len;

/** Takes limits that hold away, and what is limited to others with all that belongs to it. */
export function resolvedSuffixes(suffixes: readonly Suffix[], choice: Choice): LaneChange[] {
  const held = new Set(heldSuffixes(suffixes, choice));
  return suffixes.flatMap((suffix) => {
    if (!held.has(suffix)) return [drop(suffix.pos, endOf(suffix))];
    const readings = suffix.kind === 'mark' ? suffix.form.readings : undefined;
    return readings === undefined ? [] : [drop(endOf(suffix) - limitLength(readings), endOf(suffix))];
  });
}

class Resolver {
  readonly bars: TakenBar[] = [];
  private bar: TakenBar;
  private readonly spans: string[] = [];
  private stave: number;

  constructor(
    private readonly placed: PlacedLane,
    private readonly lane: number,
    private readonly home: number,
    private readonly choice: Choice,
  ) {
    this.stave = home;
    this.bar = this.newBar(placed.tree.segments[0]?.pos ?? 0);
  }

  read(): readonly TakenBar[] {
    for (const { items, bar } of this.placed.tree.segments) {
      this.items(items);
      if (bar !== undefined) this.close(bar);
    }
    // As in the score: what follows the last barline is a bar only if something stands in it.
    if (!this.bar.isEmpty) this.bars.push(this.bar);
    return this.bars;
  }

  private newBar(from: number): TakenBar {
    const within = [...this.spans];
    return {
      ...{ lane: this.lane, from, to: from, steps: [], changes: [], within },
      ...{ closing: undefined, closingOmitted: false, isEmpty: true, isChosen: false },
    };
  }

  private close(bar: Barline): void {
    this.bar.closing = bar;
    this.end(endOfBarline(bar));
  }

  private end(next: number): void {
    this.bars.push(this.bar);
    this.bar = this.newBar(next);
  }

  /** What stands up to here belongs to the bar. */
  private reach(to: number): void {
    this.bar.to = Math.max(this.bar.to, to);
  }

  private change(...changes: readonly LaneChange[]): void {
    this.bar.changes.push(...changes);
  }

  private items(items: readonly Item[]): void {
    for (const item of items) {
      this.bar.isEmpty = false;
      this.item(item);
      if (item.kind !== 'barline') this.reach(endOf(item));
    }
  }

  private item(item: Item): void {
    switch (item.kind) {
      case 'value':
        this.bar.steps.push({ kind: 'value', item });
        break;
      case 'lost':
        this.bar.steps.push({ kind: 'lost', item });
        break;
      case 'event':
        this.event(item);
        break;
      case 'span':
        this.span(item);
        break;
      case 'options':
        this.options(item);
        break;
      case 'change':
        this.bar.steps.push({ kind: 'change', item, stave: this.stave });
        this.move(item);
        break;
      case 'barline':
        this.close(item);
        break;
    }
  }

  private event(item: EventItem): void {
    const { tie } = item;
    const untied = item.what === 'repeat' && tie !== undefined && !holdsIn(tie.readings, this.choice);
    if (untied) this.bar.isChosen = true;
    this.bar.steps.push({ kind: 'event', item, untied });
    if (!untied) this.tie(tie, item.pos);
    this.change(...resolvedSuffixes(item.suffixes, this.choice));
    for (const member of item.members) {
      this.tie(member.tie, member.pos + member.spelling.text.length);
      this.change(...resolvedSuffixes(member.suffixes, this.choice));
    }
  }

  private tie(tie: TieForm | undefined, pos: number): void {
    if (tie?.readings === undefined) return;
    const end = pos + tie.text.length;
    this.change(drop(holdsIn(tie.readings, this.choice) ? end - limitLength(tie.readings) : pos, end));
  }

  private move({ change }: ChangeItem): void {
    if (change.word === 'home') this.stave = this.home;
    else if (change.word === 'up') this.stave--;
    else if (change.word === 'down') this.stave++;
  }

  private span(item: SpanItem): void {
    const { head, items, suffixes } = item;
    const [first] = items;
    const headEnd = item.pos + head.text.length;
    const isHint = head.word !== undefined && HINTS.has(head.word);
    const isGone = isHint && !holdsIn(head.readings, this.choice);
    const limit = isHint && head.readings !== undefined ? limitLength(head.readings) : 0;
    if (isGone) this.change(drop(item.pos, first?.pos ?? endOf(item)));
    else if (limit > 0) this.change(drop(headEnd - limit, headEnd));
    const isTyping = head.word === undefined || head.word === 'small';
    if (isTyping) this.bar.steps.push({ kind: 'enter', item });
    if (!isGone) this.spans.push(head.text.slice(0, head.text.length - limit));
    this.items(items);
    if (!isGone) this.spans.pop();
    if (isTyping) this.bar.steps.push({ kind: 'leave', item });
    const last = items.at(-1);
    if (!isGone) this.change(...resolvedSuffixes(suffixes, this.choice));
    else if (last !== undefined) this.change(drop(endOf(last), endOf(item)));
  }

  private options(item: OptionsItem): void {
    const option = item.options[chooseOption(this.choice, item.place?.text, item.options)];
    this.bar.isChosen = true;
    if (option === undefined) return;
    const [first, last] = [option.items[0], option.items.at(-1)];
    if (option.omit || first === undefined || last === undefined) {
      this.omit(item);
      return;
    }
    const { stave } = this;
    this.change(drop(item.pos, first.pos));
    this.reach(first.pos);
    const said = saidOfPlace(item, this.placed.tree.text);
    const before = this.bars.length;
    this.items(option.items);
    this.bar.isChosen = true;
    for (const bar of this.bars.slice(before)) bar.isChosen = true;
    this.sayAt(lastBearer(option.items), said, before);
    this.change(drop(endOf(last), endOf(item)));
    this.stave = stave;
  }

  /** What was said of the place is said of the last that its option has. */
  private sayAt(bearer: Item | undefined, said: string, from: number): void {
    if (bearer === undefined || said === '') return;
    const at = endOf(bearer);
    const bar = this.bars.slice(from).find(({ to }) => at <= to) ?? this.bar;
    bar.changes.push(put(at, said));
  }

  /** The barlines that the others have here are omitted, too. */
  private omit(item: OptionsItem): void {
    const other = item.options.find((one) => !one.omit);
    const barlines = other === undefined ? [] : barlinesIn(other.items);
    const { stave } = this;
    for (const _ of barlines) {
      this.bar.steps.push({ kind: 'omit', item });
      this.bar.closingOmitted = true;
      this.reach(item.pos);
      this.end(item.pos);
      this.bar.isChosen = true;
    }
    // Nothing of the others stands after their last barline.
    const isAfterAll = barlines.length > 0 && other?.items.at(-1)?.kind === 'barline';
    this.bar.isEmpty = isAfterAll;
    if (!isAfterAll) this.bar.steps.push({ kind: 'omit', item });
    this.change(drop(item.pos, endOf(item)));
    this.stave = stave;
  }
}

/** What is said of a place in a lane's text, as typed: its reasons, and the marks and annotations glued to its end. */
export const saidOfPlace = ({ reasons, suffixes }: OptionsItem, text: string): string =>
  [...reasons, ...suffixes].map((one) => text.slice(one.pos, endOf(one))).join('');

/** The last event or span of an option, which can be annotated. */
function lastBearer(items: readonly Item[]): Item | undefined {
  return items.findLast(({ kind }) => kind === 'event' || kind === 'span');
}

/** Barlines in items, of options those of the first that has something. */
function barlinesIn(items: readonly Item[]): Barline[] {
  return items.flatMap((item): Barline[] => {
    if (item.kind === 'barline') return [item];
    if (item.kind === 'span') return barlinesIn(item.items);
    if (item.kind !== 'options') return [];
    return barlinesIn(item.options.find((one) => !one.omit)?.items ?? []);
  });
}

/** @param home the stave of the lane's voice */
export const resolvedLane = (placed: PlacedLane, lane: number, home: number, choice: Choice): readonly TakenBar[] =>
  new Resolver(placed, lane, home, choice).read();
