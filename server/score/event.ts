/**
 * Events, notes and marks as the reader of a lane makes them: filled in step by step, in the end the score's own.
 *
 * A score has very many of them. So each is one object from first to last; what follows from something else is told when it
 * is asked for; what few events have lies apart; and what events have in common they share.
 */
import { add, SEMIBREVE, type Time } from '../../grammar/time';
import type { FiguresItem, MarkForm, Spelling, TieForm, ValueForm, ValueItem } from '../../grammar/tree';
import type {
  AppliedAnnotation,
  AppliedMark,
  AppliedSpan,
  ChosenOption,
  EventKind,
  NoteMember,
  Source,
  Tuplet,
  VoiceEvent,
  Words,
} from './score';

/** What all events of a lane have in common. */
export interface EventLane {
  /** Index in `Environment.voices`. */
  readonly voice: number;
  /** Index in the block's lanes. */
  readonly index: number;
  /** Names the lane in addresses. */
  readonly name: string;
}

/** What is around an item: spans, tuplets, options. Events of one group share one object. */
export interface Around {
  readonly spans: readonly AppliedSpan[];
  readonly tuplets: readonly Tuplet[];
  readonly scale: Time;
  readonly chosen: readonly ChosenOption[];
  readonly small: VoiceEvent['small'];
  readonly numbering: Numbering | undefined;
}

/** Counts the events inside an option. */
export interface Numbering {
  /** The address before an event's own number. */
  readonly prefix: string;
  count: number;
}

export const nothingAround: Around = {
  spans: [],
  tuplets: [],
  scale: SEMIBREVE,
  chosen: [],
  small: undefined,
  numbering: undefined,
};

/** The same inside something more. */
export const inside = ({ spans, tuplets, scale, chosen, small, numbering }: Around, more: Partial<Around>): Around => ({
  spans: more.spans ?? spans,
  tuplets: more.tuplets ?? tuplets,
  scale: more.scale ?? scale,
  chosen: more.chosen ?? chosen,
  small: more.small ?? small,
  numbering: more.numbering ?? numbering,
});

/** Puts something more around events; those that shared what is around them share it still. */
export function surround(events: readonly LaneEvent[], more: (around: Around) => Partial<Around>): void {
  const known = new Map<Around, Around>();
  for (const event of events) {
    const { around } = event;
    const own = known.get(around) ?? inside(around, more(around));
    known.set(around, own);
    event.around = own;
  }
}

/** What few events have. */
export interface Extras {
  readonly stems: VoiceEvent['stems'];
  readonly marks: readonly AppliedMark[];
  readonly annotations: readonly AppliedAnnotation[];
  readonly words: readonly Words[];
  readonly custos: Spelling | undefined;
  readonly figures: FiguresItem | undefined;
  readonly syllables: VoiceEvent['syllables'];
  /** A lone `=`: its members are those of the event before it. */
  readonly repeats: TieForm | true | undefined;
}

export const noMarks: readonly AppliedMark[] = [];
export const noAnnotations: readonly AppliedAnnotation[] = [];
export const noNotes: LaneNote[] = [];

export const noExtras: Extras = {
  stems: undefined,
  marks: noMarks,
  annotations: noAnnotations,
  words: [],
  custos: undefined,
  figures: undefined,
  syllables: [],
  repeats: undefined,
};

/** Whether something holds of an event. */
export const HOLDS = {
  wholeBar: 1,
  /** It fills the bar: its duration is known when the lanes are laid beside one another. */
  fills: 2,
  /** Runs through the barline. */
  through: 4,
  /** A sign stands before it that joins it to the beam of the event before, or parts it from that. */
  join: 8,
  part: 16,
} as const;

/** Bars count in addresses by so many events. */
const BAR = 1 << 16;

/** The number of an event in its lane that is not inside an option; both count from 1. */
export const numberOf = (bar: number, event: number): number => bar * BAR + event;

const addressOf = (numbering: Numbering | undefined, number: number): string =>
  numbering === undefined ? `${Math.floor(number / BAR)}.${number % BAR}` : `${numbering.prefix}.${number}`;

/** That of an option which is taken; few ask for addresses, so its own is put together when it is asked for. */
export class OptionNumbering implements Numbering {
  count = 0;

  constructor(
    private readonly around: Numbering | undefined,
    /** Of the place among the events around it. */
    private readonly number: number,
    private readonly option: string,
  ) {}

  get prefix(): string {
    return `${addressOf(this.around, this.number)}.${this.option}`;
  }
}

export class LaneEvent implements VoiceEvent {
  readonly lane: EventLane;
  kind: EventKind;
  stave: number;
  bar: number;
  /** While its lane is read: from the beginning of the lane's bar, a note running on from the bar before left out. */
  onset: Time;
  duration: Time;
  readonly value: ValueForm | undefined;
  /** Their pitches come later. */
  members: LaneNote[];
  beam: number | undefined;
  around: Around;
  /** In its lane or option; 0 of a gap where a witness omits something. */
  private readonly number: number;
  private readonly pos: number;
  private readonly len: number;
  private readonly holds: number;
  extras: Extras;
  /** The value typed right before it, if any. */
  readonly typed: ValueItem | undefined;

  constructor(
    lane: EventLane,
    kind: EventKind,
    stave: number,
    onset: Time,
    duration: Time,
    value: ValueForm | undefined,
    members: LaneNote[],
    around: Around,
    number: number,
    pos: number,
    len: number,
    holds: number,
    extras: Extras,
    typed: ValueItem | undefined,
  ) {
    this.lane = lane;
    this.kind = kind;
    this.stave = stave;
    this.bar = 0;
    this.onset = onset;
    this.duration = duration;
    this.value = value;
    this.members = members;
    this.beam = undefined;
    this.around = around;
    this.number = number;
    this.pos = pos;
    this.len = len;
    this.holds = holds;
    this.extras = extras;
    this.typed = typed;
  }

  get voice(): number {
    return this.lane.voice;
  }

  get laneName(): string {
    return this.lane.name;
  }

  get wholeBar(): boolean {
    return (this.holds & HOLDS.wholeBar) !== 0;
  }

  get fills(): boolean {
    return (this.holds & HOLDS.fills) !== 0;
  }

  get through(): boolean {
    return (this.holds & HOLDS.through) !== 0;
  }

  /** A sign of the beam stands between it and the event before. */
  get beamSign(): 'join' | 'part' | undefined {
    return (this.holds & HOLDS.join) !== 0 ? 'join' : (this.holds & HOLDS.part) !== 0 ? 'part' : undefined;
  }

  get small(): VoiceEvent['small'] {
    return this.around.small;
  }

  get tuplets(): readonly Tuplet[] {
    return this.around.tuplets;
  }

  get spans(): readonly AppliedSpan[] {
    return this.around.spans;
  }

  get chosen(): readonly ChosenOption[] {
    return this.around.chosen;
  }

  get address(): string {
    const { numbering } = this.around;
    return this.number === 0 ? (numbering?.prefix ?? '') : addressOf(numbering, this.number);
  }

  get source(): Source {
    return { lane: this.lane.index, pos: this.pos, len: this.len };
  }

  get stems(): VoiceEvent['stems'] {
    return this.extras.stems;
  }

  get marks(): readonly AppliedMark[] {
    return this.extras.marks;
  }

  get annotations(): readonly AppliedAnnotation[] {
    return this.extras.annotations;
  }

  get words(): readonly Words[] {
    return this.extras.words;
  }

  get custos(): Spelling | undefined {
    return this.extras.custos;
  }

  get figures(): FiguresItem | undefined {
    return this.extras.figures;
  }

  get syllables(): VoiceEvent['syllables'] {
    return this.extras.syllables;
  }

  get repeats(): Extras['repeats'] {
    return this.extras.repeats;
  }

  /** Moves it within its bar while its lane is read. */
  movedBy(time: Time): this {
    this.onset = add(this.onset, time);
    return this;
  }

  /** Gives it something that few events have. */
  take(extras: Partial<Extras>): void {
    this.extras = { ...this.extras, ...extras };
  }
}

export class LaneNote implements NoteMember {
  readonly spelling: Spelling;
  readonly octave: number;
  alteration: number;
  midi: number;
  readonly stave: number;
  tiedFrom: boolean;
  tie: TieForm | undefined;
  readonly marks: readonly AppliedMark[];
  readonly annotations: readonly AppliedAnnotation[];
  private readonly lane: EventLane;
  private readonly pos: number;
  private readonly len: number;

  constructor(
    lane: EventLane,
    pos: number,
    len: number,
    spelling: Spelling,
    octave: number,
    stave: number,
    tie: TieForm | undefined,
    marks: readonly AppliedMark[],
    annotations: readonly AppliedAnnotation[],
  ) {
    this.spelling = spelling;
    this.octave = octave;
    this.alteration = 0;
    this.midi = 0;
    this.stave = stave;
    this.tiedFrom = false;
    this.tie = tie;
    this.marks = marks;
    this.annotations = annotations;
    this.lane = lane;
    this.pos = pos;
    this.len = len;
  }

  get source(): Source {
    return { lane: this.lane.index, pos: this.pos, len: this.len };
  }

  /** The same note as a lone `=` at a place repeats it: the signs of the first are not drawn again. */
  repeated(
    spelling: Spelling,
    at: Source,
    marks: readonly AppliedMark[],
    annotations: readonly AppliedAnnotation[],
  ): LaneNote {
    const { lane, octave, stave } = this;
    const note = new LaneNote(lane, at.pos, at.len, spelling, octave, stave, undefined, marks, annotations);
    note.alteration = this.alteration;
    note.midi = this.midi;
    return note;
  }
}

export class LaneMark implements AppliedMark {
  readonly form: MarkForm;
  readonly shapes: readonly string[];
  accidentals: readonly AppliedMark[];
  annotations: readonly AppliedAnnotation[];
  private readonly lane: EventLane;
  private readonly pos: number;
  private readonly len: number;

  constructor(lane: EventLane, pos: number, len: number, form: MarkForm, shapes: readonly string[]) {
    this.form = form;
    this.shapes = shapes;
    this.accidentals = noMarks;
    this.annotations = noAnnotations;
    this.lane = lane;
    this.pos = pos;
    this.len = len;
  }

  get source(): Source {
    return { lane: this.lane.index, pos: this.pos, len: this.len };
  }
}
