/**
 * The score: what one choice among the options says, in exact written time and sounding pitch.
 *
 * A `SystemScore` is built from one system's lanes, the declarations a system can see, and the carry from the system
 * before; everything in it counts from the system's own start, so that it can be kept as long as those are the same.
 * A `Score` strings the systems together: bar numbers, onsets, pages and addresses are computed there, never stored below.
 */
import type { Fix, Problem } from '../../grammar/findings/finding';
import type { Time } from '../../grammar/time';
import type {
  AccidentalSign,
  Annotation,
  BarlineShape,
  Clef,
  FiguresItem,
  FileTree,
  MarkForm,
  SpanHead,
  Spelling,
  SyllableItem,
  TieForm,
  ValueForm,
} from '../../grammar/tree';
import type { Carry } from './carry';
import type { Choice } from './choice';
import type { Environment } from './environment';
import type { Realised } from './performance';

export interface Score {
  /** Name of the file, as the host calls it. */
  readonly file: string;
  readonly tree: FileTree;
  readonly environment: Environment;
  readonly choice: Choice;
  readonly pieces: readonly Piece[];
  /** Problems met while building, each with the block and lane or statement whose text its place counts in. */
  readonly problems: readonly PlacedProblem[];
}

export interface Piece {
  /** From the `piece` statement; "" for music before the first one. */
  readonly name: string;
  readonly systems: readonly ScoreSystem[];
  readonly bars: readonly Bar[];
  readonly sections: readonly Section[];
  /** Section names in playing order, where `order` says so. */
  readonly order: readonly string[] | undefined;
  readonly duration: Time;
}

/** A system in its piece. */
export interface ScoreSystem {
  readonly score: SystemScore;
  /** Index of its block in the tree. */
  readonly block: number;
  readonly page: string;
  /** From 1 on its page; a page that is taken up again counts on. */
  readonly ordinal: number;
  /** Index in `Piece.bars` of its first bar; the bar is shared with the system before where that one ended inside a bar. */
  readonly firstBar: number;
  /** Time from the piece's start. */
  readonly onset: Time;
}

/** A bar of the piece, after bars broken by a system end are joined. */
export interface Bar {
  readonly index: number;
  /** The trade's number: an upbeat is "0", a pair around a repeat and first and second endings share one ("8a", "8b"). */
  readonly number: string;
  /** Index in `Piece.systems` of the system where it begins. */
  readonly system: number;
  readonly onset: Time;
  readonly duration: Time;
  /** The meter's length; undefined in free music or without a meter. */
  readonly expected: Time | undefined;
  readonly meter: Meter | undefined;
  /** The barline at its start where a system or lane opens with a special one, or with something glued to it. */
  readonly opening: DrawnBarline | undefined;
  /** The barline at its end; undefined where the source draws none. */
  readonly closing: DrawnBarline | undefined;
  /** Number of the ending that begins here. */
  readonly ending: number | undefined;
  readonly irregular: boolean;
  /** Its time is wrong or unknown: a problem says why. Exporters refuse it or leave a gap. */
  readonly broken: boolean;
  /** Barlines that stand inside the bar in some lanes only (loose systems). */
  readonly inner: readonly InnerBarline[];
}

/** A barline as drawn, with what stands on it. */
export interface DrawnBarline {
  readonly shape: BarlineShape;
  readonly editors: boolean;
  readonly marks: readonly AppliedMark[];
  readonly annotations: readonly AppliedAnnotation[];
}

/** A barline that one lane draws for itself. */
export interface InnerBarline extends DrawnBarline {
  readonly voice: number;
  readonly onset: Time;
}

/** A double bar or a repeat sign, that is, any but a plain barline. */
export const isSpecial = (barline: Pick<DrawnBarline, 'shape'> | undefined): boolean =>
  barline !== undefined && barline.shape !== '|';

export interface Section {
  readonly name: string;
  /** `(section petite in B)`: the section of which it is a part. */
  readonly within: string | undefined;
  readonly firstBar: number;
  /** Index after the last bar. */
  readonly endBar: number;
  readonly onset: Time;
  readonly end: Time;
}

// ─── one system ──────────────────────────────────────────────────────────────────────────────────────────────────

export interface SystemScore {
  readonly kind: 'measured' | 'loose' | 'free';
  readonly bars: readonly SystemBar[];
  readonly duration: Time;
  /** Events of each voice in the order of the source, voices in the order of their lanes. */
  readonly voices: readonly SystemVoice[];
  /** Curves and lines whose ends stand in this system or that lead through it. */
  readonly curves: readonly Curve[];
  /** Clefs, signatures, meters, tempi and manuals that take effect in this system, by onset. */
  readonly changes: readonly StateChange[];
  readonly sections: readonly {
    readonly name: string;
    readonly within: string | undefined;
    readonly onset: Time;
    readonly bar: number;
  }[];
  readonly carryOut: Carry;
  readonly problems: readonly PlacedProblem[];
}

/** A bar within its system; the first may go on from the system before, the last go on in the next. */
export interface SystemBar {
  readonly onset: Time;
  readonly duration: Time;
  /** Begins inside a bar that the system before left open. */
  readonly continues: boolean;
  /** Ends with a barline in the source. */
  readonly closing: DrawnBarline | undefined;
  readonly opening: DrawnBarline | undefined;
  readonly meter: Meter | undefined;
  readonly ending: number | undefined;
  readonly irregular: boolean;
  readonly inner: Bar['inner'];
  /** Something in it was not understood or its lanes disagree. Whether its length can stand is known in its piece. */
  readonly broken: boolean;
  /** Lanes whose time is not the meter's, counted from the bar's beginning, also where that lies in the system before. */
  readonly sums: readonly LaneSum[];
}

/** The time of one lane in a bar, and what would mend it. */
export interface LaneSum {
  readonly voice: number;
  readonly time: Time;
  /** What to mark: the bar's last event. */
  readonly source: Source;
  readonly mendings: readonly BarMending[];
}

/** A change of text that gives a bar another time. */
export interface BarMending {
  /** What the bar lasts then. */
  readonly time: Time;
  /** How the finding's sentence goes on. */
  readonly hint: string;
  readonly fix: Fix;
}

export interface SystemVoice {
  /** Index in `Environment.voices`. */
  readonly voice: number;
  /** Index in the block's lanes; with a witness lane in force, events say their own. */
  readonly lane: number;
  readonly events: readonly VoiceEvent[];
}

/**
 * Where something stands in the block of its system: a lane (or a statement), and a stretch of its joined text. The block
 * itself is the system's, so that a system's score stays as it is wherever the system stands.
 */
export interface Source {
  /** Index in the block's lanes; -1 where `statement` says which statement. */
  readonly lane: number;
  /** Index in the block's statements. */
  readonly statement?: number;
  readonly pos: number;
  readonly len: number;
}

/** A source with its block, for what is said from elsewhere in the file. */
export interface FileSource extends Source {
  /** Index in the tree's blocks. */
  readonly block: number;
}

export interface PlacedProblem {
  readonly problem: Problem;
  /** Index in the tree's blocks; in a `SystemScore` always 0, set when systems are strung together. */
  readonly block: number;
  /** Index in the block's lanes; undefined: the problem counts from the block's start, or in `statement`. */
  readonly lane: number | undefined;
  /** Index in the block's statements. */
  readonly statement?: number;
  /** Index in `SystemScore.bars` of the bar that the sentence names as {bar}. */
  readonly bar?: number;
  /** Places that explain the problem. */
  readonly related?: readonly { readonly message: string; readonly source: FileSource }[];
}

export type EventKind = 'note' | 'rest' | 'gap' | 'lost';

/** A note or chord, a rest, a gap (time with nothing drawn) or a lacuna. */
export interface VoiceEvent {
  readonly kind: EventKind;
  readonly voice: number;
  /** Index in `Environment.staves` of the stave where it stands (a chord's first member). */
  readonly stave: number;
  /** Index in `SystemScore.bars`. */
  readonly bar: number;
  /** Time from the system's start. */
  readonly onset: Time;
  /** Zero of a small note. */
  readonly duration: Time;
  /** As written; undefined for `rbar`, `__`, `lost ?` and notes of free systems typed without a value. */
  readonly value: ValueForm | undefined;
  /** `rbar` and `__`. */
  readonly wholeBar: boolean;
  /** Of a small note: whether it belongs to the next event or, at the end of a bar, to the one before; `group` numbers small-note groups in the system. */
  readonly small: { readonly to: 'next' | 'previous'; readonly group: number } | undefined;
  /** Members of a note or chord as typed; empty otherwise. */
  readonly members: readonly NoteMember[];
  /** Marks of a rest, gap or lacuna, and marks of a lone `=`; those of notes stand at the members. */
  readonly marks: readonly AppliedMark[];
  readonly annotations: readonly AppliedAnnotation[];
  readonly words: readonly Words[];
  /** Tuplets around it, the outermost first; members of one tuplet share one object. */
  readonly tuplets: readonly Tuplet[];
  /** Events of one number are under one beam; undefined: none. */
  readonly beam: number | undefined;
  readonly stems: 'up' | 'down' | undefined;
  /** Spans around it other than tuplets, the outermost first; events of one span share one object. */
  readonly spans: readonly AppliedSpan[];
  /** Options around it that were chosen, the outermost first; events of one option share one object. */
  readonly chosen: readonly ChosenOption[];
  readonly custos: Spelling | undefined;
  readonly figures: FiguresItem | undefined;
  /** What is sung, a place for each stanza; empty where nothing is. */
  readonly syllables: readonly (SyllableItem | undefined)[];
  /** Bar and event counted from 1 within its lane in its system: "4.3", "4.3.L.2" inside an option. */
  readonly address: string;
  /** Names the lane in addresses: the voice, or `voice.witness`. */
  readonly laneName: string;
  readonly source: Source;
}

export interface NoteMember {
  readonly spelling: Spelling;
  /** The octave in force. */
  readonly octave: number;
  /** Semitones by which the sounding note differs from the natural: −2 to 2. */
  readonly alteration: number;
  /** MIDI key of the sounding note at a4 = key 69 (c4 = 60). */
  readonly midi: number;
  readonly stave: number;
  /** Tied to the same pitch before it. */
  readonly tiedFrom: boolean;
  /** The tie that leads on from it. A note running through the barline has none. */
  readonly tie: TieForm | undefined;
  /** Of a note that stands for a sign, in a score that has its signs as notes. */
  readonly realised?: Realised;
  readonly marks: readonly AppliedMark[];
  readonly annotations: readonly AppliedAnnotation[];
  readonly source: Source;
}

export interface AppliedMark {
  readonly form: MarkForm;
  /** Short names of the shapes that the mark draws (one, or none where the name is unknown or undecided). */
  readonly shapes: readonly string[];
  /** Accidental marks written directly after a sign belong to it. */
  readonly accidentals: readonly AppliedMark[];
  readonly annotations: readonly AppliedAnnotation[];
  readonly source: Source;
}

export interface AppliedAnnotation {
  readonly annotation: Annotation;
  readonly source: Source;
}

/** A span that is no tuplet, with what is said of it: `{unclear 4 c5 d}*n7`. */
export interface AppliedSpan {
  readonly head: SpanHead;
  readonly marks: readonly AppliedMark[];
  readonly annotations: readonly AppliedAnnotation[];
  readonly source: Source;
}

/** The option taken at a place. */
export interface ChosenOption {
  /** The place's name, if it has one. */
  readonly place: string | undefined;
  readonly labels: readonly string[];
  /** Of the labels those that are typed as doubtful. */
  readonly doubtful: readonly string[];
  /** Of the place: its reasons and what is glued after `>`. */
  readonly annotations: readonly AppliedAnnotation[];
  readonly marks: readonly AppliedMark[];
  /** The place from `<` to `>`. */
  readonly source: Source;
}

export interface Words {
  readonly text: string;
  readonly place: 'above' | 'below' | undefined;
  readonly source: Source;
}

export interface Tuplet {
  readonly n: number;
  readonly m: number;
  /** The source draws its figure (a `{3in2 …}` span); values with `x` have none. */
  readonly drawn: boolean;
  /** The value counted by n and m. */
  readonly unit: Time;
  readonly complete: boolean;
  /** Glued after its `}`. */
  readonly marks: readonly AppliedMark[];
  readonly annotations: readonly AppliedAnnotation[];
}

/** A curve or line; an end in another system is found over the carry. */
export interface Curve {
  /** Index in `Environment.voices` of the voice where it begins. */
  readonly voice: number;
  readonly kind: 'u' | 'line';
  readonly form: MarkForm;
  /** Where it begins: undefined if its beginning is not shown or lies in an earlier system. */
  readonly start: CurveEnd | undefined;
  /** Where it ends: undefined if its end is not shown or lies in a later system. */
  readonly end: CurveEnd | undefined;
  /** It comes from the system before: its place among the open curves of this voice in the incoming carry. */
  readonly incoming: number | undefined;
  /** It goes on in the next system: its place among the open curves of this voice in the outgoing carry. */
  readonly outgoing: number | undefined;
  /** It was open when a first ending began and waits in case there is a further one, which it enters alike. */
  readonly waits: boolean;
}

export interface CurveEnd {
  /** Index in `Environment.voices`; a named curve may end in another voice than it began in. */
  readonly voice: number;
  /** Index in the voice's events; the event after a barline for a curve that stands on the barline. */
  readonly event: number;
  /** Index in the event's members; undefined: the event as a whole. */
  readonly member: number | undefined;
  readonly onBarline: boolean;
  readonly form: MarkForm;
  readonly source: Source;
}

/** What takes effect at a moment; stave undefined: all staves. */
export interface StateChange {
  readonly onset: Time;
  readonly bar: number;
  readonly stave: number | undefined;
  /** Clefs from the lowest; two where the stave bears two at once. */
  readonly clefs?: readonly Clef[];
  readonly key?: readonly KeySign[];
  readonly meter?: Meter;
  readonly tempo?: Tempo;
  readonly manual?: { readonly voice: number; readonly name: string };
  /** Restates at the system's head what was in force already. */
  readonly restated: boolean;
  readonly source: Source | undefined;
}

export interface KeySign {
  readonly letter: Spelling['letter'];
  readonly accidental: AccidentalSign;
  readonly octave: number | undefined;
}

export interface Meter {
  /** As the source draws it: `cut-C`, `3`, `6/4`. */
  readonly sign: string;
  /** Length of a bar. */
  readonly length: Time;
  /** Beats and beat value of that length as a modern fraction, e.g. 2/2. */
  readonly beats: number;
  readonly beatValue: number;
}

export interface Tempo {
  readonly value: ValueForm;
  readonly perMinute: number;
}
