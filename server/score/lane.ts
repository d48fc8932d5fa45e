/**
 * One lane read with the typing state: values, octaves, staves and options made plain, bar by bar.
 *
 * What it makes counts from the beginning of its own bar; other lanes, pitch and time in the system come later.
 */
import type { Fix } from '../../grammar/findings/finding';
import { replacing } from '../../grammar/findings/fixes';
import { valueFormOf } from '../../grammar/lanes/forms';
import { andOne } from '../../grammar/lists';
import { firstOf } from '../../grammar/statements/read';
import { add, divide, isZero, multiply, SEMIBREVE, subtract, type Time, time, ZERO } from '../../grammar/time';
import type {
  Barline,
  ChangeItem,
  EventItem,
  Item,
  LostItem,
  Option,
  OptionsItem,
  Span,
  SpanItem,
  ValueForm,
  ValueItem,
} from '../../grammar/tree';
import { isBinary } from './amounts';
import { chooseOption, holdsIn, labelText } from './choice';
import {
  type Around,
  type Extras,
  HOLDS,
  inside,
  LaneEvent,
  type LaneNote,
  noAnnotations,
  noExtras,
  noMarks,
  noNotes,
  nothingAround,
  OptionNumbering,
} from './event';
import { LaneBars } from './lane/laneBars';
import { NoteReader } from './lane/notes';
import { compareOptions, doubtfulAmong, omit } from './lane/options';
import { scaleOf, tupletSlots } from './lane/proportions';
import { SuffixReader } from './lane/suffixes';
import type { LaneTask } from './lane/task';
import { timesOf } from './lane/times';
import type { ReadLane } from './rawBars';
import type { AppliedMark, AppliedSpan, ChosenOption, DrawnBarline, EventKind, Source, Tuplet, Words } from './score';

const halfOpen = valueFormOf('1');

/** Most barlines are like it. */
const plainBarline: DrawnBarline = { shape: '|', editors: false, marks: noMarks, annotations: noAnnotations };

const isThrough = (marks: readonly AppliedMark[]): boolean => {
  for (const { form } of marks) if (form.name === 'through') return true;
  return false;
};

const anyThrough = (notes: readonly LaneNote[]): boolean => {
  for (const { marks } of notes) if (isThrough(marks)) return true;
  return false;
};

const valueAway = (value: Span): Fix => replacing(value, '', 'take the value away');

class LaneReader {
  private readonly bars: LaneBars;
  private readonly suffixes: SuffixReader;
  private readonly notes: NoteReader;
  // Typing state; octaves are kept by the reader of notes.
  private value: ValueForm | undefined;
  private stave: number;
  private stems: 'up' | 'down' | undefined;
  // What the next event takes with it.
  private typed: ValueItem | undefined;
  private words: Words[] = [];
  private beam: 'join' | 'part' | undefined;
  // For counsel and findings.
  private valueTypedInBar: string | undefined;
  private valueMissed = false;
  private smallGroups = 0;
  private first = true;

  /** Of events that have nothing rare but perhaps stems. */
  private extras = noExtras;

  constructor(private readonly task: LaneTask) {
    this.bars = new LaneBars(task);
    this.suffixes = new SuffixReader(task, this.bars);
    this.notes = new NoteReader(task, this.bars, this.suffixes, () => this.typed);
    this.stave = task.stave;
    this.setStems(task.stems);
    if (task.kind === 'free') this.value = halfOpen;
  }

  private setStems(stems: 'up' | 'down' | undefined): void {
    this.stems = stems;
    if (this.extras.stems !== stems) this.extras = stems === undefined ? noExtras : { ...noExtras, stems };
  }

  read(): ReadLane {
    for (const segment of this.task.lane.tree.segments) {
      this.bars.current.at = { pos: segment.pos, len: Math.max(segment.len, 1) };
      this.bars.junk = segment.broken;
      if (segment.broken) this.bars.current.broken = true;
      const wasEmpty = segment.items.length === 0;
      this.items(segment.items, nothingAround);
      if (segment.broken) this.bars.current.broken = true;
      if (segment.bar !== undefined) {
        if (wasEmpty) this.emptyBar(segment.bar);
        this.close(segment.bar);
      }
    }
    // What follows the last barline is a bar of its own only if something stands in it.
    if (!this.bars.current.empty) this.endBar(undefined);
    this.leftOver();
    return { bars: this.bars.ended, opening: this.opening() };
  }

  private opening(): DrawnBarline | undefined {
    const { open, tree } = this.task.lane;
    const { again, suffixes } = tree.opening;
    const { marks, annotations } = this.suffixes.applied(
      again === undefined ? suffixes : [...suffixes, ...again.suffixes],
    );
    const shape = open.shape === '|' ? (again?.shape ?? '|') : open.shape;
    const editors = open.editors || again?.editors === true;
    const bare = shape === '|' && !editors && marks.length === 0 && annotations.length === 0;
    return bare ? undefined : { shape, editors, marks, annotations };
  }

  // ─── bars ────────────────────────────────────────────────────────────────────────────────────────────────────────

  private emptyBar(bar: Barline): void {
    if (this.task.witness) {
      this.value = this.task.kind === 'free' ? halfOpen : undefined;
      this.notes.octave = undefined;
      return;
    }
    const insert = (text: string): Fix => replacing({ pos: bar.pos, len: 0 }, `${text} `, `write ${text}`);
    this.bars.current.blank = { at: bar, fixes: [insert('rbar'), insert('__')] };
  }

  private close(bar: Barline): void {
    const { shape, editors, suffixes } = bar;
    if (shape === '|' && !editors && suffixes.length === 0) this.endBar(plainBarline);
    else this.endBar({ shape, editors, ...this.suffixes.applied(suffixes) });
  }

  private endBar(closing: DrawnBarline | undefined): void {
    this.bars.end(closing);
    this.valueTypedInBar = undefined;
  }

  private leftOver(): void {
    const end = this.task.lane.tree.segments.at(-1);
    // Without a barline the lane may be in the making, and its last value waits for a note.
    if (this.typed !== undefined && end?.bar !== undefined) {
      // Without its value a bar in which nothing else stands would be empty.
      const fixes = this.bars.ended.at(-1)?.events.length === 0 ? [] : [valueAway(this.typed)];
      this.tellUnused(this.typed, end, this.bars.ended.length - 1, fixes);
    }
    const last = this.bars.lastEvent;
    if (this.words.length > 0 && last !== undefined) last.take({ words: [...last.words, ...this.words] });
  }

  // ─── items ───────────────────────────────────────────────────────────────────────────────────────────────────────

  private items(items: readonly Item[], around: Around): void {
    let firstOfGroup = around !== nothingAround;
    for (const item of items) {
      this.bars.current.empty = false;
      this.item(item, around, firstOfGroup);
      if (item.kind !== 'words' && item.kind !== 'change') firstOfGroup = false;
    }
  }

  private item(item: Item, around: Around, firstOfGroup: boolean): void {
    switch (item.kind) {
      case 'event':
        this.event(item, around);
        break;
      case 'value':
        this.takeValue(item, around, firstOfGroup);
        break;
      case 'lost':
        this.lost(item, around);
        break;
      case 'span':
        this.span(item, around);
        break;
      case 'options':
        this.options(item, around);
        break;
      case 'change':
        this.change(item);
        break;
      case 'words':
        this.words.push({ text: item.text, place: item.place, source: this.bars.source(item) });
        break;
      case 'beam':
        this.beam = item.join ? 'join' : 'part';
        break;
      case 'barline':
        // A barline inside options.
        this.close(item);
        this.bars.current.at = { pos: item.pos + item.len, len: 1 };
        break;
    }
  }

  private takeValue(item: ValueItem, around: Around, firstOfGroup: boolean): void {
    // What stands before options holds for those that type no value.
    if (this.typed !== undefined && !firstOfGroup) this.tellUnused(this.typed, this.bars.current.at);
    const inTuplet = around.tuplets.length > 0;
    if (inTuplet && item.form.proportion !== undefined)
      this.bars.report('proportion-in-tuplet', item, { text: item.form.text });
    if (!firstOfGroup && item.form.text === this.valueTypedInBar && this.bars.count > 0 && this.task.kind !== 'free') {
      this.bars.report('restated-value', item, { text: item.form.text }, [valueAway(item)]);
    }
    // A doubtful value does not stick: it holds for one event.
    this.valueTypedInBar = item.form.doubtful ? undefined : item.form.text;
    this.typed = item;
    if (!item.form.doubtful) this.value = item.form;
  }

  /** Of a value that no event of its bar has taken. What was not understood there may have been meant to. */
  private tellUnused(typed: ValueItem, { pos }: Span, bar = this.bars.ended.length, fixes = [valueAway(typed)]): void {
    if (typed.pos < pos || this.bars.junk) return;
    this.bars.report('value-unused', typed, { text: typed.form.text }, fixes, bar);
  }

  private valueInForce(at: Span, around: Around): ValueForm | undefined {
    if (this.typed !== undefined) return this.typed.form;
    if (this.value === undefined) {
      this.bars.current.broken = true;
      // In a bar with junk the value may stand in what was not understood.
      if (!this.valueMissed && !this.bars.junk) this.tellNoValue(at, around);
      this.valueMissed = true;
    }
    return this.value;
  }

  /** Where options have ended the value before them is probably meant; in tuplets and small notes nobody knows. */
  private tellNoValue(at: Span, { tuplets, small }: Around): void {
    const last = this.bars.lastEvent;
    const isKnown = tuplets.length === 0 && small === undefined && last?.kind !== 'lost' && !last?.value?.doubtful;
    const before = isKnown ? last?.value?.text : undefined;
    const fixes =
      before === undefined ? [] : [replacing({ pos: at.pos, len: 0 }, `${before} `, `put ${before} before it`)];
    this.bars.report('value-missing', at, {}, fixes);
  }

  private event(item: EventItem, around: Around): void {
    const { what, members, suffixes, tie } = item.written;
    if (what === 'barRest' || what === 'barGap') {
      this.filler(item, around);
      return;
    }
    const value = this.valueInForce(item, around);
    const written = value?.duration ?? ZERO;
    const duration =
      around.small !== undefined ? ZERO : around.scale === SEMIBREVE ? written : multiply(written, around.scale);
    if (what === 'note') {
      const notes = this.notes.read(members, item.pos, this.stave);
      if (around.small !== undefined) this.smallTies(notes);
      const holds = anyThrough(notes) ? HOLDS.through : 0;
      this.push('note', notes[0]?.stave ?? this.stave, duration, value, notes, item, around, holds, this.extras);
    } else {
      if (what === 'repeat' && this.first) this.bars.report('repeat-first', item);
      const { marks, annotations } = this.suffixes.applied(suffixes, item.pos);
      const repeats =
        what !== 'repeat' ? undefined : tie !== undefined && holdsIn(tie.readings, this.task.choice) ? tie : true;
      const extras = this.with(marks, annotations, repeats);
      const kind: EventKind = what === 'repeat' ? 'note' : what;
      const holds = isThrough(marks) ? HOLDS.through : 0;
      this.push(kind, this.stave, duration, value, noNotes, item, around, holds, extras);
    }
    this.bars.offset = add(this.bars.offset, duration);
    if (value?.doubtful === true) this.typed = undefined;
  }

  private smallTies(notes: readonly LaneNote[]): void {
    for (const { tie, spelling, octave, source } of notes) {
      if (tie !== undefined) this.bars.report('small-tie', source, { note: `${spelling.letter}${octave}` });
    }
  }

  private with(marks: Extras['marks'], annotations: Extras['annotations'], repeats: Extras['repeats']): Extras {
    if (marks.length === 0 && annotations.length === 0 && repeats === undefined) return this.extras;
    return { ...this.extras, marks, annotations, repeats };
  }

  private filler(item: EventItem, around: Around): void {
    const { marks, annotations } = this.suffixes.applied(item.written.suffixes, item.pos);
    const kind = item.what === 'barRest' ? 'rest' : 'gap';
    const extras = this.with(marks, annotations, undefined);
    const holds = HOLDS.wholeBar | HOLDS.fills;
    this.push(kind, this.stave, ZERO, undefined, noNotes, item, around, holds, extras);
    this.bars.current.fills = true;
  }

  private lost(item: LostItem, around: Around): void {
    const small = around.small !== undefined;
    const own = item.form === undefined ? undefined : multiply(item.form.duration ?? ZERO, around.scale);
    const duration = small ? ZERO : own;
    const holds = duration === undefined ? HOLDS.fills : 0;
    this.push('lost', this.stave, duration ?? ZERO, item.form, noNotes, item, around, holds, this.extras);
    if (duration === undefined) this.bars.current.fills = true;
    else this.bars.offset = add(this.bars.offset, duration);
  }

  private push(
    kind: EventKind,
    stave: number,
    duration: Time,
    value: ValueForm | undefined,
    notes: LaneNote[],
    item: Span,
    around: Around,
    holds: number,
    extras: Extras,
  ): void {
    const { events } = this.bars.current;
    if (events.length > 0 && events[events.length - 1]?.fills === true) this.bars.report('after-filler', item);
    if ((holds & HOLDS.through) !== 0) this.bars.current.through = true;
    const sign = this.beam === undefined ? 0 : HOLDS[this.beam];
    const event = new LaneEvent(
      this.bars.lane,
      kind,
      stave,
      this.bars.offset,
      duration,
      value,
      notes,
      around,
      this.bars.nextNumber(around),
      item.pos,
      item.len,
      holds | sign,
      extras,
      this.typed,
    );
    if (this.words.length > 0) {
      event.take({ words: this.words });
      this.words = [];
    }
    events.push(event);
    this.typed = undefined;
    this.beam = undefined;
    this.first = false;
  }

  // ─── spans and options ───────────────────────────────────────────────────────────────────────────────────────────

  private span(item: SpanItem, around: Around): void {
    const { head } = item;
    const scale = scaleOf(head.proportion);
    const applied = this.suffixes.applied(item.suffixes);
    // A proportion that cannot be is told by the parser; nobody knows what time its notes take.
    if (scale === undefined) this.bars.current.broken = true;
    else if (head.word === undefined && head.proportion !== undefined) {
      this.tuplet(item, head.proportion, applied, around, scale);
      return;
    }
    const { marks, annotations } = applied;
    const span: AppliedSpan = { head, marks, annotations, source: this.bars.source(item) };
    const within = inside(around, {
      scale: multiply(around.scale, scale ?? SEMIBREVE),
      spans: andOne(around.spans, span),
    });
    if (head.word === 'small') this.smallNotes(item, within);
    else this.items(item.items, within);
  }

  private smallNotes(item: SpanItem, around: Around): void {
    const { value, stems, typed, valueTypedInBar } = this;
    const { octave } = this.notes;
    this.value = undefined;
    this.typed = undefined;
    this.valueTypedInBar = undefined;
    this.items(item.items, inside(around, { small: { to: 'next', group: ++this.smallGroups } }));
    this.value = value;
    this.notes.octave = octave;
    this.setStems(stems);
    this.typed = typed;
    this.valueTypedInBar = valueTypedInBar;
  }

  private tuplet(
    item: SpanItem,
    { n, m }: { n: number; m: number },
    applied: Pick<Tuplet, 'marks' | 'annotations'>,
    around: Around,
    scale: Time,
  ): void {
    const { marks, annotations } = applied;
    const tuplet = { n, m, drawn: true, unit: ZERO, complete: true, marks, annotations };
    const from = this.bars.offset;
    const bar = this.bars.current;
    const omitted = bar.omissions.length;
    this.value = undefined;
    this.typed = undefined;
    const whole = multiply(around.scale, scale);
    this.items(item.items, inside(around, { tuplets: andOne(around.tuplets, tuplet), scale: whole }));
    // What it fills, in written values; a tuplet over a barline is not summed.
    if (bar !== this.bars.current || isZero(whole)) return;
    // Small notes take no time: theirs is what is written.
    const written =
      around.small === undefined ? divide(subtract(this.bars.offset, from), whole) : timesOf(item.items)[0];
    const filled = written ?? ZERO;
    tuplet.unit = divide(filled, time(n));
    tuplet.complete = isBinary(tuplet.unit) || bar.omissions.length > omitted;
    if (!tuplet.complete && !bar.broken && !bar.fills) {
      this.bars.report('tuplet-incomplete', item, tupletSlots({ n, m }));
    }
  }

  private options(item: OptionsItem, around: Around): void {
    const index = chooseOption(this.task.choice, item.place?.text, item.options);
    const number = this.bars.nextNumber(around);
    compareOptions(item.options, this.value, this.bars, this.task.kind !== 'free');
    const option = item.options[index];
    if (option === undefined) return;
    const { stave, stems } = this;
    const label = option.labels[0];
    const name = label === undefined ? `${index + 1}` : labelText(label);
    const numbering = new OptionNumbering(around.numbering, number, name);
    const source = this.bars.source(item);
    if (option.omit)
      omit(item, this.value, this.bars, { stave, address: numbering.prefix, source, scale: around.scale });
    else {
      const chosen = andOne(around.chosen, this.chosen(item, option, source));
      this.items(option.items, inside(around, { chosen, numbering }));
    }
    // After options value and octave are typed again; stave and stems are as before them.
    this.value = this.task.kind === 'free' ? halfOpen : undefined;
    this.notes.octave = undefined;
    this.typed = undefined;
    this.valueTypedInBar = undefined;
    this.stave = stave;
    this.setStems(stems);
  }

  private chosen(item: OptionsItem, { labels }: Option, source: Source): ChosenOption {
    const { marks, annotations } = this.suffixes.applied(
      item.reasons.length === 0 ? item.suffixes : [...item.reasons, ...item.suffixes],
    );
    return {
      place: item.place?.text,
      labels: labels.map(labelText),
      doubtful: doubtfulAmong(labels),
      marks,
      annotations,
      source,
    };
  }

  // ─── changes ─────────────────────────────────────────────────────────────────────────────────────────────────────

  private change(item: ChangeItem): void {
    const { change } = item;
    const source = this.bars.source(item);
    switch (change.word) {
      case 'up':
      case 'down':
      case 'home':
        this.stave = this.notes.staveTowards(change.word, this.stave, item) ?? this.stave;
        return;
      case 'stems': {
        const way = firstOf(change.args, 'word')?.text;
        this.setStems(way === 'up' || way === 'down' ? way : this.task.stems);
        return;
      }
      case 'custos': {
        const pitch = firstOf(change.args, 'pitch')?.spelling;
        const last = this.bars.lastEvent;
        if (last !== undefined) last.take({ custos: pitch });
        else this.bars.report('custos-first', item, { note: pitch?.text ?? '' });
        return;
      }
      default:
        this.bars.current.changes = andOne(this.bars.current.changes, {
          change: item,
          offset: this.bars.offset,
          stave: this.stave,
          source,
          first: this.bars.current.events.length === 0,
        });
        if (change.word === 'ending' && this.bars.current.events.length > 0) this.bars.report('ending-not-first', item);
    }
  }
}

/** Reads a lane by itself. */
export const readLane = (task: LaneTask): ReadLane => new LaneReader(task).read();
