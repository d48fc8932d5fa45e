/** Value and octave stick: what a change takes away from them the events that relied on it must type themselves. */
import type { EventItem, Item, LaneTree, OptionsItem, SpanItem, ValueItem } from '../../../grammar/tree';
import type { TextChange } from '../../document/edits';
import type { VoiceEvent } from '../../score/score';
import type { Project } from '../../workspace/project';
import { eventHere, systemOf } from '../events';
import { type Here, stretchOf } from '../nodes';
import { put } from './refactoring';

/** Types the octave of the notes that rely on the one in force at a place, unless this octave holds there anyway. */
export function octaveAfter(project: Project, here: Here, pos: number, holds?: number): TextChange[] {
  return relying(here, new OctaveInForce(pos)).flatMap((item) => {
    const octave = eventAt(project, here, item)?.members[0]?.octave;
    const [member] = item.members;
    if (member === undefined || octave === undefined || octave === holds) return [];
    const { text, doubtful } = member.spelling;
    return [put(stretchOf(here, item).start + text.length - (doubtful ? 1 : 0), `${octave}`)];
  });
}

/** Types the value of the events that rely on the one in force at a place. */
export function valueAfter(project: Project, here: Here, pos: number): TextChange[] {
  // In free music what has no value is an open head, after options as before them.
  const holds = systemOf(project, here.blockIndex)?.system.score.kind === 'free' ? '1' : undefined;
  return relying(here, new ValueInForce(pos)).flatMap((item) => {
    const value = eventAt(project, here, item)?.value?.text;
    return value === undefined || value === holds ? [] : [put(stretchOf(here, item).start, `${value} `)];
  });
}

const eventAt = (project: Project, here: Here, { pos }: EventItem): VoiceEvent | undefined =>
  eventHere(project, { ...here, pos })?.event;

function relying({ holder }: Here, inForce: InForce): readonly EventItem[] {
  if (holder.kind === 'lane') inForce.lane(holder.placed.tree, holder.placed.witness !== undefined);
  return inForce.relying;
}

/** Goes through a lane as the score does, and gathers the events that rely on what is in force at a place. */
abstract class InForce {
  readonly relying: EventItem[] = [];
  protected isInForce = false;
  private hasBegun = false;

  /** @param from the place: what is typed before it is passed over */
  constructor(private readonly from: number) {}

  lane({ segments }: LaneTree, isWitness: boolean): void {
    for (const { items } of segments) {
      this.items(items);
      // In a bar that a witness leaves empty the main text holds, and what follows is typed anew.
      if (isWitness && items.length === 0) this.isInForce = false;
    }
  }

  protected abstract value(item: ValueItem): void;
  protected abstract event(item: EventItem): void;
  /** A span begins. */
  protected abstract enter(item: SpanItem): void;

  private items(items: readonly Item[]): void {
    for (const item of items) {
      this.begin(item.pos);
      if (item.kind === 'value') this.value(item);
      else if (item.kind === 'event') this.event(item);
      else if (item.kind === 'span') this.span(item);
      else if (item.kind === 'options') this.options(item);
    }
  }

  private begin(pos: number): void {
    if (this.hasBegun || pos < this.from) return;
    this.hasBegun = true;
    this.isInForce = true;
  }

  /** After small notes all is as it was before them. */
  private span(item: SpanItem): void {
    const before = this.isInForce;
    this.enter(item);
    this.items(item.items);
    if (item.head.word === 'small') this.leave(item.pos + item.len, before);
  }

  /** Each option begins with what held before them all; after them everything is typed anew. */
  private options({ options }: OptionsItem): void {
    const before = this.isInForce;
    for (const { items, pos, len } of options) {
      this.items(items);
      this.leave(pos + len, before);
    }
    this.isInForce = false;
  }

  /** What was typed within holds no longer, the place included if it lies there. */
  private leave(end: number, before: boolean): void {
    if (end >= this.from) this.hasBegun = true;
    this.isInForce = before;
  }
}

class OctaveInForce extends InForce {
  protected value(): void {}

  protected event(item: EventItem): void {
    const [first] = item.members;
    if (first === undefined) return;
    if (this.isInForce && first.spelling.octave === undefined) this.relying.push(item);
    this.isInForce = false;
  }

  protected enter(): void {}
}

const FILLERS: ReadonlySet<EventItem['what']> = new Set(['barRest', 'barGap']);

class ValueInForce extends InForce {
  /** A doubtful value holds for the next event alone. */
  private isTyped = false;

  protected value({ form }: ValueItem): void {
    this.isTyped = true;
    if (!form.doubtful) this.isInForce = false;
  }

  protected event(item: EventItem): void {
    if (FILLERS.has(item.what)) return;
    if (this.isInForce && !this.isTyped) {
      this.relying.push(item);
      this.isInForce = false;
    }
    this.isTyped = false;
  }

  /** Tuplets and small notes type theirs. */
  protected enter({ head }: SpanItem): void {
    if (head.word === undefined || head.word === 'small') this.isInForce = false;
  }
}
