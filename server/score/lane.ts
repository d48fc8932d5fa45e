/**
 * One lane read with the typing state: values, octaves, staves and options made plain, bar by bar.
 *
 * What it makes counts from the beginning of its own bar; other lanes, pitch and time in the system come later.
 */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Fix, Slots } from '../../grammar/findings/finding';
import { isPossibleProportion, valueFormOf } from '../../grammar/lanes/forms';
import { afterWord, firstOf } from '../../grammar/statements/read';
import {
  add,
  compare,
  divide,
  equal,
  isZero,
  latest,
  multiply,
  SEMIBREVE,
  subtract,
  type Time,
  time,
  ZERO,
} from '../../grammar/time';
import type {
  Annotation,
  Barline,
  ChangeItem,
  EventItem,
  Item,
  Label,
  LostItem,
  Mark,
  MarkForm,
  Member,
  Option,
  OptionsItem,
  PlacedLane,
  Readings,
  Span,
  SpanItem,
  Suffix,
  ValueForm,
  ValueItem,
} from '../../grammar/tree';
import { intervalOf, isBinary } from './amounts';
import { type Choice, chooseOption, labelText } from './choice';
import type { SystemEnvironment } from './environment';
import {
  type Around,
  type EventLane,
  type Extras,
  HOLDS,
  inside,
  LaneEvent,
  LaneMark,
  LaneNote,
  noAnnotations,
  noExtras,
  noMarks,
  noNotes,
  nothingAround,
  numberOf,
  OptionNumbering,
} from './event';
import { stepOf } from './heights';
import type {
  AppliedAnnotation,
  AppliedMark,
  AppliedSpan,
  ChosenOption,
  DrawnBarline,
  EventKind,
  Source,
  Tuplet,
  Words,
} from './score';
import { shapesOfSign } from './signs';

/** A problem of a lane: its place counts in the lane's joined text. */
export type Report = (
  code: FindingCode,
  at: Span,
  slots?: Slots,
  more?: { readonly fixes?: readonly Fix[]; readonly bar?: number },
) => void;

export interface RawChange {
  readonly change: ChangeItem;
  readonly offset: Time;
  readonly stave: number;
  readonly source: Source;
  /** No event of its bar stands before it. */
  readonly first: boolean;
}

/** What a witness leaves out here (`omit`), which takes time in the others. */
export interface Omission {
  /** From the beginning of the lane's bar. */
  readonly offset: Time;
  /** Index of the event before which it stands. */
  readonly event: number;
  /** What the first option that has something takes; undefined where that is not known. */
  readonly time: Time | undefined;
  readonly stave: number;
  readonly address: string;
  readonly source: Source;
}

export interface RawBar {
  readonly events: LaneEvent[];
  /** Whose its events are. */
  readonly lane: EventLane;
  changes: readonly RawChange[];
  omissions: readonly Omission[];
  /** Sum of what has a duration of its own, omissions left out. */
  time: Time;
  /** Its last event fills the bar, or the rest of it is lost. */
  fills: boolean;
  /** An event of it runs through the barline, or is meant to. */
  through: boolean;
  broken: boolean;
  closing: DrawnBarline | undefined;
  /** The barline at its end is one that the witness omits. */
  closingOmitted: boolean;
  /** Nothing at all is typed in it. */
  empty: boolean;
  /** Nothing stands where something should, unless a note still sounds from the bar before; and what would mend it. */
  blank: { readonly at: Span; readonly fixes: readonly Fix[] } | undefined;
  /** Place in the lane's text. */
  at: Span;
}

/** A lane read through. */
export interface ReadLane {
  readonly bars: readonly RawBar[];
  /** The barline before the first bar, where it is a special one or bears something. */
  readonly opening: DrawnBarline | undefined;
}

export interface LaneTask {
  readonly lane: PlacedLane;
  /** Index in the block's lanes. */
  readonly index: number;
  /** Index in the environment's voices. */
  readonly voice: number;
  readonly name: string;
  readonly stave: number;
  readonly stems: 'up' | 'down' | undefined;
  readonly kind: 'measured' | 'loose' | 'free';
  /** In a witness lane an empty bar is as in the lane above. */
  readonly witness: boolean;
  /** Its first bar goes on from the system before. */
  readonly continues: boolean;
  readonly environment: SystemEnvironment;
  readonly choice: Choice;
  readonly report: Report;
}

/** Whether a mark or tie that is limited to readings or witnesses holds in a choice. */
export const holdsIn = (readings: Readings | undefined, choice: Choice): boolean =>
  readings === undefined ||
  readings.names.some((name) => name === choice.name || choice.labels.includes(name)) !== readings.not;

/** Of what is glued to something that which a choice has: with a mark that does not hold goes what speaks of the mark. */
export function heldSuffixes(suffixes: readonly Suffix[], choice: Choice): readonly Suffix[] {
  let gone: MarkForm['type'] | undefined;
  return suffixes.filter((suffix) => {
    if (suffix.kind === 'annotation') return gone === undefined;
    const { type, readings } = suffix.form;
    // An accidental speaks of the sign before it.
    if (gone === 'sign' && type === 'accidental') return false;
    gone = holdsIn(readings, choice) ? undefined : type;
    return gone === undefined;
  });
}

const SEVENTH = 6;
const halfOpen = valueFormOf('1');

/** A part of an event where it stands in the lane. */
const moved = <Part extends Span>(part: Part, by: number): Part => ({ ...part, pos: part.pos + by });

/** Marks and annotations that something bears. */
interface Applied {
  readonly marks: readonly AppliedMark[];
  readonly annotations: readonly AppliedAnnotation[];
}

const nothingApplied: Applied = { marks: noMarks, annotations: noAnnotations };
const none: readonly never[] = [];
const noShapes: readonly string[] = [];
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

const noLabels: readonly string[] = [];
const isDoubtful = ({ doubtful }: Label): boolean => doubtful;
const doubtfulAmong = (labels: readonly Label[]): readonly string[] =>
  labels.some(isDoubtful) ? labels.filter(isDoubtful).map(labelText) : noLabels;

/** A list with one more at its end, and no room for others. */
const andOne = <T>(list: readonly T[], one: T): readonly T[] => (list.length === 0 ? [one] : list.concat([one]));

class LaneReader {
  private readonly bars: RawBar[] = [];
  private bar: RawBar;
  private offset = ZERO;
  // Typing state.
  private value: ValueForm | undefined;
  private octave: number | undefined;
  private stave: number;
  private stems: 'up' | 'down' | undefined;
  // What the next event takes with it.
  private typed: ValueItem | undefined;
  private words: Words[] = [];
  private beam: 'join' | 'part' | undefined;
  // For counsel and findings.
  private lastStep: number | undefined;
  private valueTypedInBar: string | undefined;
  private missing = { value: false, octave: false };
  /** The segment that is being read holds something that was not understood. */
  private junk = false;
  private eventsInBar = 0;
  private groups = 0;
  private first = true;

  /** Of events that have nothing rare but perhaps stems. */
  private extras = noExtras;
  private readonly lane: EventLane;

  constructor(private readonly task: LaneTask) {
    this.lane = { voice: task.voice, index: task.index, name: task.name };
    this.stave = task.stave;
    this.setStems(task.stems);
    if (task.kind === 'free') this.value = halfOpen;
    this.bar = this.newBar(0);
  }

  private setStems(stems: 'up' | 'down' | undefined): void {
    this.stems = stems;
    if (this.extras.stems !== stems) this.extras = stems === undefined ? noExtras : { ...noExtras, stems };
  }

  read(): ReadLane {
    for (const segment of this.task.lane.tree.segments) {
      this.bar.at = { pos: segment.pos, len: Math.max(segment.len, 1) };
      this.junk = segment.broken;
      if (segment.broken) this.bar.broken = true;
      const wasEmpty = segment.items.length === 0;
      this.items(segment.items, nothingAround);
      if (segment.broken) this.bar.broken = true;
      if (segment.bar !== undefined) {
        if (wasEmpty) this.emptyBar(segment.bar);
        this.close(segment.bar);
      }
    }
    // What follows the last barline is a bar of its own only if something stands in it.
    if (!this.bar.empty) this.endBar(undefined);
    this.leftOver();
    return { bars: this.bars, opening: this.opening() };
  }

  private opening(): DrawnBarline | undefined {
    const { open, tree } = this.task.lane;
    const { again, suffixes } = tree.opening;
    const { marks, annotations } = this.applied(again === undefined ? suffixes : [...suffixes, ...again.suffixes]);
    const shape = open.shape === '|' ? (again?.shape ?? '|') : open.shape;
    const editors = open.editors || again?.editors === true;
    const bare = shape === '|' && !editors && marks.length === 0 && annotations.length === 0;
    return bare ? undefined : { shape, editors, marks, annotations };
  }

  private newBar(pos: number): RawBar {
    return {
      events: [],
      lane: this.lane,
      changes: none,
      omissions: none,
      time: ZERO,
      fills: false,
      through: false,
      broken: false,
      closing: undefined,
      closingOmitted: false,
      empty: true,
      blank: undefined,
      at: { pos, len: 1 },
    };
  }

  private report(code: FindingCode, at: Span, slots: Slots = {}, fixes?: readonly Fix[]): void {
    this.task.report(
      code,
      at,
      { voice: this.task.name, ...slots },
      {
        bar: this.bars.length,
        ...(fixes === undefined ? {} : { fixes }),
      },
    );
  }

  private source(at: Span): Source {
    return { lane: this.task.index, pos: at.pos, len: at.len };
  }

  // ─── bars ────────────────────────────────────────────────────────────────────────────────────────────────────────

  private emptyBar(bar: Barline): void {
    if (this.task.witness) {
      this.value = this.task.kind === 'free' ? halfOpen : undefined;
      this.octave = undefined;
      return;
    }
    const insert = (text: string): Fix => ({
      title: `write ${text}`,
      edits: [{ pos: bar.pos, len: 0, text: `${text} ` }],
    });
    this.bar.blank = { at: bar, fixes: [insert('rbar'), insert('__')] };
  }

  private close(bar: Barline): void {
    const { shape, editors, suffixes } = bar;
    if (shape === '|' && !editors && suffixes.length === 0) this.endBar(plainBarline);
    else this.endBar({ shape, editors, ...this.applied(suffixes) });
  }

  private endBar(closing: DrawnBarline | undefined): void {
    this.bar.closing = closing;
    this.bar.time = this.offset;
    this.settleSmallNotes();
    this.groupProportions(closing);
    this.bars.push(this.bar);
    this.bar = this.newBar(this.bar.at.pos + this.bar.at.len);
    this.offset = ZERO;
    this.eventsInBar = 0;
    this.valueTypedInBar = undefined;
  }

  /** A group that the system end parts, or of which something is omitted, cannot be judged here. */
  private groupProportions(closing: DrawnBarline | undefined): void {
    const { events, omissions, closingOmitted } = this.bar;
    const parted = closing === undefined && !closingOmitted;
    const continues = this.task.continues && this.bars.length === 0;
    groupProportions(events, (group, slots) => {
      const atEnd = parted && group.at(-1) === events.findLast(({ small }) => small === undefined);
      const atStart = continues && group[0] === events.find(({ small }) => small === undefined);
      const first = group[0];
      if (atEnd || atStart || omissions.length > 0 || first === undefined) return;
      this.report('tuplet-incomplete', first.source, slots);
    });
  }

  /** Small notes at the end of a bar belong to the event before them. */
  private settleSmallNotes(): void {
    const { events } = this.bar;
    if (events.at(-1)?.small === undefined || events.every(({ small }) => small !== undefined)) return;
    const settled = new Map<Around, Around>();
    for (let i = events.length - 1; i >= 0; i--) {
      const event = events[i];
      if (event?.small === undefined) break;
      const { around } = event;
      const own = settled.get(around) ?? inside(around, { small: { to: 'previous', group: event.small.group } });
      settled.set(around, own);
      event.around = own;
    }
  }

  private leftOver(): void {
    const last = this.bars.at(-1)?.events.at(-1);
    if (this.words.length > 0 && last !== undefined) last.take({ words: [...last.words, ...this.words] });
  }

  // ─── items ───────────────────────────────────────────────────────────────────────────────────────────────────────

  private items(items: readonly Item[], around: Around): void {
    let firstOfGroup = around !== nothingAround;
    for (const item of items) {
      this.bar.empty = false;
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
        this.words.push({ text: item.text, place: item.place, source: this.source(item) });
        break;
      case 'beam':
        this.beam = item.join ? 'join' : 'part';
        break;
      case 'barline':
        // A barline inside options.
        this.close(item);
        this.bar.at = { pos: item.pos + item.len, len: 1 };
        break;
    }
  }

  private takeValue(item: ValueItem, around: Around, firstOfGroup: boolean): void {
    const inTuplet = around.tuplets.length > 0;
    if (inTuplet && item.form.proportion !== undefined)
      this.report('proportion-in-tuplet', item, { text: item.form.text });
    if (!firstOfGroup && item.form.text === this.valueTypedInBar && this.eventsInBar > 0 && this.task.kind !== 'free') {
      this.report('restated-value', item, { text: item.form.text }, [
        { title: 'take the value away', edits: [{ pos: item.pos, len: item.len, text: '' }] },
      ]);
    }
    // A doubtful value does not stick: it holds for one event.
    this.valueTypedInBar = item.form.doubtful ? undefined : item.form.text;
    this.typed = item;
    if (!item.form.doubtful) this.value = item.form;
  }

  private valueInForce(at: Span): ValueForm | undefined {
    if (this.typed !== undefined) return this.typed.form;
    if (this.value === undefined) {
      this.bar.broken = true;
      // In a bar with junk the value may stand in what was not understood.
      if (!this.missing.value && !this.junk) this.report('value-missing', at);
      this.missing.value = true;
    }
    return this.value;
  }

  private event(item: EventItem, around: Around): void {
    const { what, members, suffixes, tie } = item.written;
    if (what === 'barRest' || what === 'barGap') {
      this.filler(item, around);
      return;
    }
    const value = this.valueInForce(item);
    const written = value?.duration ?? ZERO;
    const duration =
      around.small !== undefined ? ZERO : around.scale === SEMIBREVE ? written : multiply(written, around.scale);
    if (what === 'note') {
      const notes = this.notes(members, item.pos);
      if (around.small !== undefined) this.smallTies(notes);
      const holds = anyThrough(notes) ? HOLDS.through : 0;
      this.push('note', notes[0]?.stave ?? this.stave, duration, value, notes, item, around, holds, this.extras);
    } else {
      if (what === 'repeat' && this.first) this.report('repeat-first', item);
      const { marks, annotations } = this.applied(suffixes, item.pos);
      const repeats =
        what !== 'repeat' ? undefined : tie !== undefined && holdsIn(tie.readings, this.task.choice) ? tie : true;
      const extras = this.with(marks, annotations, repeats);
      const kind: EventKind = what === 'repeat' ? 'note' : what;
      const holds = isThrough(marks) ? HOLDS.through : 0;
      this.push(kind, this.stave, duration, value, noNotes, item, around, holds, extras);
    }
    this.offset = add(this.offset, duration);
    if (value?.doubtful === true) this.typed = undefined;
  }

  private smallTies(notes: readonly LaneNote[]): void {
    for (const { tie, spelling, octave, source } of notes) {
      if (tie !== undefined) this.report('small-tie', source, { note: `${spelling.letter}${octave}` });
    }
  }

  private with(marks: Extras['marks'], annotations: Extras['annotations'], repeats: Extras['repeats']): Extras {
    if (marks.length === 0 && annotations.length === 0 && repeats === undefined) return this.extras;
    return { ...this.extras, marks, annotations, repeats };
  }

  private nextNumber({ numbering }: Around): number {
    return numbering === undefined ? numberOf(this.bars.length + 1, ++this.eventsInBar) : ++numbering.count;
  }

  private filler(item: EventItem, around: Around): void {
    const { marks, annotations } = this.applied(item.written.suffixes, item.pos);
    const kind = item.what === 'barRest' ? 'rest' : 'gap';
    const extras = this.with(marks, annotations, undefined);
    const holds = HOLDS.wholeBar | HOLDS.fills;
    this.push(kind, this.stave, ZERO, undefined, noNotes, item, around, holds, extras);
    this.bar.fills = true;
  }

  private lost(item: LostItem, around: Around): void {
    const small = around.small !== undefined;
    const own = item.form === undefined ? undefined : multiply(item.form.duration ?? ZERO, around.scale);
    const duration = small ? ZERO : own;
    const holds = duration === undefined ? HOLDS.fills : 0;
    this.push('lost', this.stave, duration ?? ZERO, item.form, noNotes, item, around, holds, this.extras);
    if (duration === undefined) this.bar.fills = true;
    else this.offset = add(this.offset, duration);
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
    const { events } = this.bar;
    if (events.length > 0 && events[events.length - 1]?.fills === true) this.report('after-filler', item);
    if ((holds & HOLDS.through) !== 0) this.bar.through = true;
    const sign = this.beam === undefined ? 0 : HOLDS[this.beam];
    const event = new LaneEvent(
      this.lane,
      kind,
      stave,
      this.offset,
      duration,
      value,
      notes,
      around,
      this.nextNumber(around),
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

  // ─── notes ───────────────────────────────────────────────────────────────────────────────────────────────────────

  /** @param at where their event stands */
  private notes(members: readonly Member[], at: number): LaneNote[] {
    const first = members[0];
    if (first !== undefined && members.length === 1 && first.stave === undefined) {
      return [this.note(first, at, this.stave, true)];
    }
    const notes: LaneNote[] = [];
    let stave = this.stave;
    for (const member of members) {
      if (member.stave !== undefined) stave = this.moved(member.stave, moved(member, at)) ?? stave;
      notes.push(this.note(member, at, stave, member === first));
    }
    return notes.slice();
  }

  private note(member: Member, at: number, stave: number, isFirst: boolean): LaneNote {
    const { spelling, len, suffixes, tie } = member;
    const octave = this.octaveOf(member, at);
    const step = stepOf(spelling.letter, octave);
    if (isFirst) this.counselLeap(member, at, step);
    this.lastStep = step;
    const { marks, annotations } = this.applied(suffixes, at);
    const held = tie !== undefined && holdsIn(tie.readings, this.task.choice) ? tie : undefined;
    return new LaneNote(this.lane, at + member.pos, len, spelling, octave, stave, held, marks, annotations);
  }

  private octaveOf(member: Member, at: number): number {
    if (member.spelling.octave !== undefined) this.octave = member.spelling.octave;
    if (this.octave === undefined) {
      this.bar.broken = true;
      if (!this.missing.octave && !this.junk)
        this.report('octave-missing', moved(member, at), { note: member.spelling.text });
      this.missing.octave = true;
    }
    return this.octave ?? 4;
  }

  /** A seventh or more with no digit typed is often a forgotten octave. */
  private counselLeap(member: Member, at: number, step: number): void {
    if (member.spelling.octave !== undefined || this.lastStep === undefined) return;
    if (Math.abs(step - this.lastStep) < SEVENTH) return;
    this.report('leap', moved(member, at), {
      note: member.spelling.text,
      interval: intervalOf(step - this.lastStep),
    });
  }

  /** @param at where places of the suffixes count from */
  private applied(suffixes: readonly Suffix[], at = 0): Applied {
    // Most things bear nothing, and share that.
    if (suffixes.length === 0) return nothingApplied;
    const only = suffixes[0];
    if (suffixes.length === 1 && only?.kind === 'mark' && only.form.readings === undefined) {
      return { marks: [this.mark(only, at)], annotations: noAnnotations };
    }
    const marks: LaneMark[] = [];
    const annotations: AppliedAnnotation[] = [];
    for (const suffix of heldSuffixes(suffixes, this.task.choice)) {
      if (suffix.kind === 'annotation') this.annotate(moved(suffix, at), marks, annotations);
      else this.takeMark(this.mark(suffix, at), marks);
    }
    return {
      marks: marks.length === 0 ? noMarks : marks.slice(),
      annotations: annotations.length === 0 ? noAnnotations : annotations.slice(),
    };
  }

  private annotate(annotation: Annotation, marks: readonly LaneMark[], annotations: AppliedAnnotation[]): void {
    const applied = { annotation, source: this.source(annotation) };
    // Glued after a mark it speaks of that mark, after the note of the note.
    const last = marks.at(-1);
    if (last === undefined) annotations.push(applied);
    else last.annotations = [...last.annotations, applied];
  }

  private takeMark(mark: LaneMark, marks: LaneMark[]): void {
    const last = marks.at(-1);
    // An accidental directly after a sign belongs to the sign.
    if (mark.form.type === 'accidental' && last?.form.type === 'sign') last.accidentals = [...last.accidentals, mark];
    else marks.push(mark);
  }

  private mark({ form, pos, len }: Mark, at: number): LaneMark {
    const shapes = form.type === 'sign' ? this.shapesOf(form, at + pos, len) : noShapes;
    return new LaneMark(this.lane, at + pos, len, form, shapes);
  }

  private shapesOf(form: MarkForm, at: number, length: number): readonly string[] {
    const { shapes, problem } = shapesOfSign(form.name, this.task.environment);
    if (problem !== undefined) {
      const pos = at + form.text.indexOf(form.name);
      const len = form.name.length;
      this.report(
        problem.code,
        { pos: at, len: length },
        {
          name: form.name,
          nearest: problem.meant.length === 0 ? '' : `; nearest: ${problem.meant.join(' or ')}`,
          tables: problem.tables,
          unsaid: problem.unsaid,
        },
        problem.meant.map((text) => ({ title: `write ${text}`, edits: [{ pos, len, text }] })),
      );
    }
    return shapes;
  }

  // ─── spans and options ───────────────────────────────────────────────────────────────────────────────────────────

  private span(item: SpanItem, around: Around): void {
    const { head } = item;
    const scale = scaleOf(head.proportion);
    const applied = this.applied(item.suffixes);
    // A proportion that cannot be is told by the parser; nobody knows what time its notes take.
    if (scale === undefined) this.bar.broken = true;
    else if (head.word === undefined && head.proportion !== undefined) {
      this.tuplet(item, head.proportion, applied, around, scale);
      return;
    }
    const { marks, annotations } = applied;
    const span: AppliedSpan = { head, marks, annotations, source: this.source(item) };
    const within = inside(around, {
      scale: multiply(around.scale, scale ?? SEMIBREVE),
      spans: andOne(around.spans, span),
    });
    if (head.word === 'small') this.smallNotes(item, within);
    else this.items(item.items, within);
  }

  private smallNotes(item: SpanItem, around: Around): void {
    const { value, octave, stems, typed, valueTypedInBar } = this;
    this.value = undefined;
    this.typed = undefined;
    this.valueTypedInBar = undefined;
    this.items(item.items, inside(around, { small: { to: 'next', group: ++this.groups } }));
    this.value = value;
    this.octave = octave;
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
    const from = this.offset;
    const { bar } = this;
    const omitted = bar.omissions.length;
    this.value = undefined;
    this.typed = undefined;
    const whole = multiply(around.scale, scale);
    this.items(item.items, inside(around, { tuplets: andOne(around.tuplets, tuplet), scale: whole }));
    // What it fills, in written values; a tuplet over a barline is not summed.
    if (bar !== this.bar || isZero(whole)) return;
    // Small notes take no time: theirs is what is written.
    const written = around.small === undefined ? divide(subtract(this.offset, from), whole) : timesOf(item.items)[0];
    const filled = written ?? ZERO;
    tuplet.unit = divide(filled, time(n));
    tuplet.complete = isBinary(tuplet.unit) || bar.omissions.length > omitted;
    if (!tuplet.complete && !this.bar.broken && !this.bar.fills) {
      this.report('tuplet-incomplete', item, { head: `${n} in ${m}`, n });
    }
  }

  private options(item: OptionsItem, around: Around): void {
    const index = chooseOption(this.task.choice, item.place?.text, item.options);
    const number = this.nextNumber(around);
    this.compareOptions(item);
    const option = item.options[index];
    if (option === undefined) return;
    const { stave, stems } = this;
    const label = option.labels[0];
    const name = label === undefined ? `${index + 1}` : labelText(label);
    const numbering = new OptionNumbering(around.numbering, number, name);
    const source = this.source(item);
    if (option.omit) this.omit(item, numbering.prefix, source, around.scale);
    else {
      const { marks, annotations } = this.applied(
        item.reasons.length === 0 ? item.suffixes : [...item.reasons, ...item.suffixes],
      );
      const chosen: ChosenOption = {
        place: item.place?.text,
        labels: option.labels.map(labelText),
        doubtful: doubtfulAmong(option.labels),
        marks,
        annotations,
        source,
      };
      this.items(option.items, inside(around, { chosen: andOne(around.chosen, chosen), numbering }));
    }
    // After options value and octave are typed again; stave and stems are as before them.
    this.value = this.task.kind === 'free' ? halfOpen : undefined;
    this.octave = undefined;
    this.typed = undefined;
    this.valueTypedInBar = undefined;
    this.stave = stave;
    this.setStems(stems);
  }

  /** The time and barlines that the others have here are kept in mind: whether they count is known beside the other lanes. */
  private omit(item: OptionsItem, address: string, source: Source, scale: Time): void {
    const other = item.options.find((one) => !one.omit);
    const times = other === undefined ? [ZERO] : timesOf(other.items, this.value);
    times.forEach((one, index) => {
      if (index > 0) this.omitBarline(item);
      // Nothing of the others stands after their last barline.
      if (index > 0 && one !== undefined && isZero(one)) {
        this.bar.empty = true;
        return;
      }
      this.bar.omissions = andOne(this.bar.omissions, {
        offset: this.offset,
        event: this.bar.events.length,
        time: one === undefined ? undefined : multiply(one, scale),
        stave: this.stave,
        address,
        source,
      });
    });
  }

  private omitBarline(at: Span): void {
    this.bar.closingOmitted = true;
    this.endBar(undefined);
    this.bar.at = { pos: at.pos, len: at.len };
    this.bar.empty = false;
  }

  /** Options take equal time and have equal barlines, `omit` apart. */
  private compareOptions({ options }: OptionsItem): void {
    this.findLabelsTwice(options);
    let first: BarTimes | undefined;
    for (const option of options) {
      if (option.omit) continue;
      const times = timesOf(option.items, this.value);
      if (first === undefined) first = times;
      else this.compareTimes(option, times, first);
    }
  }

  private compareTimes(option: Option, times: BarTimes, first: BarTimes): void {
    const isOther = (time: Time | undefined, index: number): boolean => {
      const wanted = first[index];
      return time !== undefined && wanted !== undefined && !equal(time, wanted);
    };
    const unequal = times.length === first.length && times.some(isOther);
    if (unequal) this.bar.broken = true;
    else if (times.length === first.length) return;
    const label = option.labels.map(labelText).join(',');
    this.report(unequal ? 'options-unequal' : 'options-barlines', option, { label });
  }

  private findLabelsTwice(options: readonly Option[]): void {
    const seen = new Set<string>();
    for (const { labels } of options) {
      for (const label of labels) {
        const text = labelText(label);
        if (seen.has(text)) this.report('label-twice', label, { label: text });
        else seen.add(text);
      }
    }
  }

  // ─── changes ─────────────────────────────────────────────────────────────────────────────────────────────────────

  private change(item: ChangeItem): void {
    const { change } = item;
    const source = this.source(item);
    switch (change.word) {
      case 'up':
      case 'down':
      case 'home':
        this.stave = this.moved(change.word, item) ?? this.stave;
        return;
      case 'stems': {
        const way = firstOf(change.args, 'word')?.text;
        this.setStems(way === 'up' || way === 'down' ? way : this.task.stems);
        return;
      }
      case 'custos': {
        const pitch = firstOf(change.args, 'pitch')?.spelling;
        const last = this.bar.events.at(-1) ?? this.bars.at(-1)?.events.at(-1);
        if (last !== undefined) last.take({ custos: pitch });
        else this.report('custos-first', item, { note: pitch?.text ?? '' });
        return;
      }
      default:
        this.bar.changes = andOne(this.bar.changes, {
          change: item,
          offset: this.offset,
          stave: this.stave,
          source,
          first: this.bar.events.length === 0,
        });
        if (change.word === 'ending' && this.bar.events.length > 0) this.report('ending-not-first', item);
    }
  }

  private moved(to: 'up' | 'down' | 'home', at: Span): number | undefined {
    if (to === 'home') return this.task.stave;
    const stave = this.stave + (to === 'up' ? -1 : 1);
    if (this.task.environment.staves[stave] !== undefined) return stave;
    this.report('no-stave-there', at, { way: to === 'up' ? 'above' : 'below' });
    return undefined;
  }
}

/** The time of each bar; undefined where it cannot be known. */
type BarTimes = readonly (Time | undefined)[];

const noTimes: BarTimes = [];

/** Sums up the time that items take, bar by bar. */
class TimesOfItems {
  private bars = noTimes;
  private current: Time | undefined = ZERO;
  /** A doubtful value does not stick: it holds for one event. */
  private once: ValueForm | undefined;

  constructor(private value: ValueForm | undefined) {}

  items(items: readonly Item[], scale: Time): void {
    for (const item of items) this.item(item, scale);
  }

  private item(item: Item, scale: Time): void {
    switch (item.kind) {
      case 'value':
        this.once = item.form;
        if (!item.form.doubtful) this.value = item.form;
        break;
      case 'barline':
        this.endBar();
        break;
      case 'event': {
        const { what } = item.written;
        this.pass(what === 'barRest' || what === 'barGap' ? undefined : (this.once ?? this.value)?.duration, scale);
        break;
      }
      case 'lost':
        this.pass(item.form?.duration, scale);
        break;
      case 'span': {
        const { word, proportion } = item.head;
        if (word === 'small') break;
        this.items(item.items, multiply(scale, scaleOf(proportion) ?? SEMIBREVE));
        break;
      }
      case 'options': {
        const inner = item.options.find((option) => !option.omit);
        if (inner !== undefined) this.items(inner.items, scale);
        this.value = undefined;
        this.once = undefined;
        break;
      }
      case 'junk':
        this.current = undefined;
        break;
    }
  }

  private endBar(): void {
    this.bars = this.result();
    this.current = ZERO;
  }

  result(): BarTimes {
    return andOne(this.bars, this.current);
  }

  private pass(own: Time | undefined, scale: Time): void {
    this.once = undefined;
    if (this.current === undefined || own === undefined) this.current = undefined;
    else this.current = add(this.current, scale === SEMIBREVE ? own : multiply(own, scale));
  }
}

function timesOf(items: readonly Item[], before?: ValueForm): BarTimes {
  const times = new TimesOfItems(before);
  times.items(items, SEMIBREVE);
  return times.result();
}

/** By how much a proportion changes time; undefined if it cannot be. */
const scaleOf = (proportion: SpanItem['head']['proportion']): Time | undefined => {
  if (proportion === undefined) return SEMIBREVE;
  return isPossibleProportion(proportion) ? divide(time(proportion.m), time(proportion.n)) : undefined;
};

/**
 * Values with `x` gathered into tuplets: a group is complete when its written values fill N units of a binary value that
 * is no smaller than its largest, or when it fills a crotchet or more (a crotchet and a quaver under one three).
 */
function groupProportions(
  events: readonly LaneEvent[],
  incomplete: (group: readonly LaneEvent[], slots: Slots) => void,
): void {
  let group: LaneEvent[] = [];
  const finish = (): void => {
    const first = group[0];
    const proportion = first?.value?.proportion;
    if (first === undefined || proportion === undefined) return;
    const { n, m } = proportion;
    const unit = unitOf(group, n);
    const complete = isBinary(unit);
    const tuplet: Tuplet = { n, m, drawn: false, unit, complete, marks: [], annotations: [] };
    const within = new Map<Around, Around>();
    for (const event of group) {
      const { around } = event;
      const own = within.get(around) ?? inside(around, { tuplets: andOne(around.tuplets, tuplet) });
      within.set(around, own);
      event.around = own;
    }
    if (!complete) incomplete(group, { head: `${n} in ${m}`, n });
    group = [];
  };
  for (const event of events) {
    if (event.small !== undefined) continue;
    const proportion = event.value?.proportion;
    const open = group[0]?.value?.proportion;
    if (open !== undefined && (proportion?.n !== open.n || proportion.m !== open.m)) finish();
    if (proportion === undefined || event.value?.duration === undefined) continue;
    group.push(event);
    if (isWhole(group, proportion)) finish();
  }
  finish();
}

const CROTCHET = time(1, 4);

/** The value of which a group fills n. */
const unitOf = (group: readonly LaneEvent[], n: number): Time =>
  divide(
    group.reduce((total, event) => add(total, writtenTime(event)), ZERO),
    time(n),
  );

function isWhole(group: readonly LaneEvent[], { n, m }: { n: number; m: number }): boolean {
  const unit = unitOf(group, n);
  if (!isBinary(unit)) return false;
  const largest = group.reduce((most, { value }) => latest(most, value?.base ?? ZERO), ZERO);
  return compare(unit, largest) >= 0 || compare(multiply(unit, time(m)), CROTCHET) >= 0;
}

/** The written value without its proportion. */
function writtenTime(event: LaneEvent): Time {
  const { value } = event;
  if (value?.duration === undefined) return ZERO;
  const { proportion } = value;
  return proportion === undefined
    ? value.duration
    : multiply(value.duration, divide(time(proportion.n), time(proportion.m)));
}

/** Reads a lane by itself. */
export const readLane = (task: LaneTask): ReadLane => new LaneReader(task).read();

/** `section petite in B`: its name and the section of which it is a part. */
export function sectionOf(
  args: ChangeItem['change']['args'],
): { name: string; within: string | undefined } | undefined {
  const name = firstOf(args, 'name')?.text;
  const within = afterWord(args, 'in');
  return name === undefined ? undefined : { name, within: within?.kind === 'name' ? within.text : undefined };
}
