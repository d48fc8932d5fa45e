/**
 * Value, octave, stave and stems stick. Bars that are put together from several lanes, and what stood after options, may rely
 * on what no longer stands before them: there it is typed again.
 */
import type { ChangeItem, EventItem, Member, SpanItem, ValueItem } from '../../../grammar/tree';
import type { NoteMember, VoiceEvent } from '../../score/score';
import type { Step, TakenBar } from './resolve';
import { drop, type LaneChange, put } from './stretches';

type Stems = 'up' | 'down' | undefined;

/** What is in force where something is typed. */
interface State {
  readonly value: string | undefined;
  readonly octave: number | undefined;
  readonly stems: Stems;
}

export interface TypingTask {
  readonly home: number;
  readonly stems: Stems;
  /** In free music a note without a value is an open head. */
  readonly isFree: boolean;
  /** The event of the choice's score that is typed at a place of a lane. */
  eventAt(lane: number, pos: number): VoiceEvent | undefined;
  /** What is typed where something is omitted while the other lanes go on: empty time. */
  gapsAt(step: Step): readonly string[];
}

const letterAndOctave = ({ spelling, octave }: NoteMember): string => `${spelling.letter}${octave}`;

const FILLERS: ReadonlySet<EventItem['what']> = new Set(['barRest', 'barGap']);

/** Reads the bars of a voice as they will stand, one after another. */
export class Typing {
  private value: string | undefined;
  private octave: number | undefined;
  private stave: number;
  private stems: Stems;
  /** A value typed for the next event. */
  private typed: ValueItem | undefined;
  private readonly before: State[] = [];

  constructor(private readonly task: TypingTask) {
    this.value = task.isFree ? '1' : undefined;
    this.stave = task.home;
    this.stems = task.stems;
  }

  /** What must be typed in a bar besides what is. */
  bar(bar: TakenBar): LaneChange[] {
    return bar.steps.flatMap((step) => this.step(step, bar.lane));
  }

  private step(step: Step, lane: number): LaneChange[] {
    switch (step.kind) {
      case 'value':
        this.typed = step.item;
        if (!step.item.form.doubtful) this.value = step.item.form.text;
        return [];
      case 'event':
        return this.event(step, lane);
      case 'change':
        return this.change(step.item, step.stave);
      case 'enter':
        return this.enter(step.item);
      case 'leave':
        return this.leave(step.item);
      case 'lost':
        this.typed = undefined;
        return [];
      case 'omit':
        return this.gaps(step);
    }
  }

  private gaps(step: Extract<Step, { kind: 'omit' }>): LaneChange[] {
    const values = this.task.gapsAt(step);
    this.value = values.at(-1) ?? this.value;
    this.typed = undefined;
    return values.length === 0 ? [] : [put(step.item.pos, values.map((value) => `${value} _`).join(' '))];
  }

  private event({ item, untied }: { item: EventItem; untied: boolean }, lane: number): LaneChange[] {
    const meant = this.task.eventAt(lane, item.pos);
    if (meant === undefined) return [];
    const before = this.typed?.pos ?? item.pos;
    const changes = [
      ...(item.what === 'repeat' && !untied ? [] : this.toStave(meant.stave, before)),
      ...this.toStems(meant.stems, before),
      ...(FILLERS.has(item.what) ? [] : this.toValue(meant.value?.text, item.pos)),
      ...(untied ? this.asNotes(item, meant) : this.octaves(item.members, meant)),
    ];
    this.typed = undefined;
    return changes;
  }

  private toStave(stave: number, pos: number): LaneChange[] {
    const by = stave - this.stave;
    if (by === 0) return [];
    this.stave = stave;
    const word = by < 0 ? '(up) ' : '(down) ';
    return [put(pos, stave === this.task.home ? '(home) ' : word.repeat(Math.abs(by)))];
  }

  private toStems(stems: Stems, pos: number): LaneChange[] {
    if (stems === this.stems) return [];
    this.stems = stems;
    return [put(pos, stems === this.task.stems ? '(stems home) ' : `(stems ${stems}) `)];
  }

  private toValue(value: string | undefined, pos: number): LaneChange[] {
    if (value === undefined || (this.typed?.form.text ?? this.value) === value) return [];
    if (!value.endsWith('?')) this.value = value;
    return [put(pos, `${value} `)];
  }

  private octaves(members: readonly Member[], meant: VoiceEvent): LaneChange[] {
    const [first] = members;
    const octave = meant.members[0]?.octave;
    const isMissing = first !== undefined && first.spelling.octave === undefined && octave !== this.octave;
    if (isMissing) this.octave = octave;
    for (const { spelling } of members) this.octave = spelling.octave ?? this.octave;
    if (!isMissing || octave === undefined) return [];
    const { text, doubtful } = first.spelling;
    return [put(first.pos + text.length - (doubtful ? 1 : 0), `${octave}`)];
  }

  /** A lone `=` that repeats without a tie: the notes themselves, of which the first bears its marks. */
  private asNotes(item: EventItem, meant: VoiceEvent): LaneChange[] {
    const [first, ...others] = meant.members.map(letterAndOctave);
    if (first === undefined) return [];
    this.octave = meant.members.at(-1)?.octave;
    const end = item.pos + (item.tie?.text.length ?? 1);
    const rest = others.map((note) => `-${note}`).join('');
    return [{ ...drop(item.pos, end), text: first }, ...(rest === '' ? [] : [put(item.pos + item.len, rest)])];
  }

  private change({ change, pos }: ChangeItem, stave: number): LaneChange[] {
    const { word, args } = change;
    const isFromHere = word === 'up' || word === 'down' || word === 'now' || word === 'manual';
    const changes = isFromHere ? this.toStave(stave, pos) : [];
    if (word === 'home') this.stave = this.task.home;
    else if (word === 'up') this.stave--;
    else if (word === 'down') this.stave++;
    else if (word === 'stems') {
      const [way] = args;
      this.stems = way?.kind === 'word' && (way.text === 'up' || way.text === 'down') ? way.text : this.task.stems;
    }
    return changes;
  }

  private enter({ head }: SpanItem): LaneChange[] {
    const { value, octave, stems } = this;
    if (head.word === 'small') this.before.push({ value, octave, stems });
    this.value = undefined;
    this.typed = undefined;
    return [];
  }

  private leave({ head }: SpanItem): LaneChange[] {
    const before = head.word === 'small' ? this.before.pop() : undefined;
    if (before !== undefined) Object.assign(this, before, { typed: undefined });
    return [];
  }
}
