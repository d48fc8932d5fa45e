/**
 * What the client and the server say to one another beyond the protocol. Types alone: the client shares no other part of the
 * server.
 */
import type { Position, Range, TextDocumentIdentifier, TextEdit } from 'vscode-languageserver-types';
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Level } from '../../grammar/findings/finding';
import type { ExportOptions } from '../export/formats';
import type { TuningSheet } from '../tuning/sheet';

/** What the client says of itself when it starts the server (`initializationOptions`). */
export interface ClientOptions {
  /** An address that opens the help page of a finding; `{code}` stands for its code. */
  readonly helpAddress?: string;
  /**
   * The client answers `bentside/read`, so that files can be included that the server itself cannot reach, and
   * `bentside/scores`, so that names are found in scores that are not open.
   */
  readonly canRead?: boolean;
  /** The client's command that shows a sign under other tables; it is given the address of the file, line and character. */
  readonly otherTablesCommand?: string;
  /** The address of the folder that holds the engraver, for a server that does not know where it stands. */
  readonly engraving?: string;
}

/** The settings under `bentside`, of each file by itself. */
export interface Settings {
  /** Whether the music itself is judged: voice leading, accidentals that may be missing. */
  readonly counsel: boolean;
  /** Levels other than the catalogue's, by code; `ignore` hides a finding. */
  readonly levels: Readonly<Partial<Record<FindingCode, Level | 'ignore'>>>;
  readonly hover: { readonly picture: boolean };
  readonly inlayHints: {
    readonly barNumbers: boolean;
    /** Sounding accidentals that are not written. */
    readonly accidentals: boolean;
    /** The octave after a leap that no digit shows. */
    readonly leaps: boolean;
  };
  readonly codeLens: boolean;
}

/** What holds where the client says nothing. */
export const usualSettings: Settings = {
  counsel: true,
  levels: {},
  hover: { picture: true },
  inlayHints: { barNumbers: false, accidentals: false, leaps: false },
  codeLens: true,
};

// ─── server to client ────────────────────────────────────────────────────────────────────────────────────────────

/** `bentside/read`: the text of a file by its address; null if there is none. */
export const READ = 'bentside/read';
export interface ReadParams {
  readonly uri: string;
}
export type ReadResult = string | null;

/** `bentside/scores`, without parameters: the addresses of all scores in the folders, open or not. */
export const SCORES = 'bentside/scores';
export type ScoresResult = readonly string[];

// ─── client to server ────────────────────────────────────────────────────────────────────────────────────────────

interface FileParams {
  readonly textDocument: TextDocumentIdentifier;
}

/** `bentside/reading`, a notification: the reading in which the user sees a file from now on. */
export const READING = 'bentside/reading';
export interface ReadingParams extends FileParams {
  readonly reading: string;
}

interface PlaceParams extends FileParams {
  readonly position: Position;
}

/** What a score can be read as. */
export interface ChoiceOffer {
  readonly name: string;
  readonly kind: 'written' | 'reading' | 'source';
  /** As the file describes it; empty where it does not. */
  readonly description: string;
}

/** A place, and the reading that is shown. */
interface ReadingPlaceParams extends PlaceParams {
  readonly reading: string;
}

/** A sign was typed just before the position. */
export type TypedParams = ReadingPlaceParams;
export type TypedResult = {
  readonly kind: 'barline' | 'custos' | 'apostrophe';
  readonly edits: readonly TextEdit[];
} | null;

export interface ExportParams extends FileParams {
  /** As after `--as`. */
  readonly format: string;
  /** One, or `all`. */
  readonly reading: string;
  readonly leaveGaps: boolean;
  /** How it is written, where that is not as a rule. */
  readonly form?: ExportForm;
}

/** As after the options of these names of `bentside export`. */
export type ExportForm = Partial<Pick<ExportOptions, 'clefs' | 'ornaments' | 'rhythm'>>;

/** A file to be written, at an address beside the score's. */
export interface ExportedFile {
  readonly uri: string;
  /** Bytes go as base64. */
  readonly content: { readonly text: string } | { readonly base64: string };
}

export interface ExportResult {
  readonly files: readonly ExportedFile[];
  /** Errors because of which nothing, or a reading less, was made. */
  readonly refusals: readonly string[];
  /** What the format cannot say. */
  readonly losses: readonly string[];
}

/** Where a text is to be put in, as a snippet. */
export interface SnippetOffer {
  /** Perhaps on a line after the last. */
  readonly position: Position;
  readonly snippet: string;
}

/** Signs as they stand, with what they mean above the stave, or written out. */
export type SignsShown = 'sign' | 'above' | 'full';

interface PageParams extends FileParams {
  readonly reading: string;
  readonly clefs: 'source' | 'modern';
  readonly ornaments: SignsShown;
  /** Index of the leaf; one beyond the last is taken for the last. */
  readonly page: number;
  /** Another reading, to stand beneath. */
  readonly beneath?: string;
}

/** A leaf of the source, engraved. */
export interface EngravedPage {
  /** Of all leaves. */
  readonly labels: readonly string[];
  /** Index of this one. */
  readonly page: number;
  /** SVG documents, one under the other; what stands in the text bears its id of MEI as `data-id`. */
  readonly pictures: readonly string[];
  /** What each system holds, in words. */
  readonly summary: readonly string[];
  /** There is a table by which signs could be shown otherwise than they stand. */
  readonly hasTable: boolean;
  readonly facsimile?: Facsimile;
  /** Of its music without measure. */
  readonly weights: readonly ShownWeight[];
  /** Of two readings: what they have otherwise on this leaf. */
  readonly differences?: readonly ShownDifference[];
}

/** A note of music without measure. */
export interface ShownWeight {
  /** Of its picture. */
  readonly id: string;
  /** By how much longer it lasts than a note of which nothing is said. */
  readonly weight: number;
}

/** A place where two readings differ. */
export interface ShownDifference {
  /** In words: the bar, the voice, and what each of them has. */
  readonly says: string;
  /** Of the pictures of the notes that differ, in both. */
  readonly ids: readonly string[];
}

/** The picture of a leaf. */
export interface Facsimile {
  /** As the text names it, from the score's folder. */
  readonly image: string;
  /** Where each system lies on it: left, top, width, height; null where the text does not say. */
  readonly regions: readonly (readonly number[] | null)[];
}

interface RegionParams extends Omit<PageParams, 'clefs' | 'ornaments' | 'beneath'> {
  /** Index of the system on its leaf. */
  readonly system: number;
  readonly region: readonly number[];
}

/** A note by the id of its picture. */
export interface NotePlace {
  readonly id: string;
  /** Index of its leaf. */
  readonly page: number;
  /** Index of its system on that leaf. */
  readonly system: number;
  /** As the trade counts its bar: `8a`. */
  readonly bar: string;
  /** In words: what sounds, what is written, where it stands. */
  readonly says: string;
}

interface NoteParams extends FileParams {
  readonly id: string;
  readonly reading: string;
  /** The reading of ids that stand in the lower of two parts. */
  readonly beneath?: string;
}

/** How a piece is to be played. */
interface PlayingParams extends FileParams {
  readonly reading: string;
  /** What would stand after `tuning`; null: as the reading says. */
  readonly tuning: string | null;
  /** By how much it is quicker than the tempi stated; signs are played anew in the time that they then have. */
  readonly pace: number;
  readonly begin: BeginOfPlaying;
}

/** A note, the top of a leaf by its index, or a piece by its index: as it was played before. */
export type BeginOfPlaying = { readonly id: string } | { readonly page: number } | { readonly piece: number };

/** A piece as it is played, its repeats played out. All times are seconds from its beginning. */
export interface Playing {
  /** Index of the piece. */
  readonly piece: number;
  /** By their index in notes. */
  readonly voices: readonly string[];
  /** By the moment at which their keys go down. */
  readonly notes: readonly PlayedNote[];
  /** One after another as they are played: a bar that is repeated stands here twice. */
  readonly bars: readonly PlayedBar[];
  /** Where it was to begin. */
  readonly start: WrittenPlace;
  /** From the left. */
  readonly keys: readonly KeyOfStrip[];
  /** The name of the temperament, and the frequency of a4 in hertz. */
  readonly tuning: string;
  readonly pitch: number;
  /** What nobody has stated: a tempo, a pitch, a temperament; empty where all is. */
  readonly assumed: string;
  /** Some of it has no measure: its time is one possibility among many. */
  readonly isFree: boolean;
}

/** Where something is written, whatever the reading and its tempo. */
export interface WrittenPlace {
  /** Index of the bar in its piece. */
  readonly bar: number;
  /** Semibreves from the beginning of that bar. */
  readonly onset: number;
}

/** A key that goes down and comes up. */
export interface PlayedNote {
  readonly at: number;
  readonly until: number;
  /** Hertz, of each stop. */
  readonly frequencies: readonly number[];
  /** Index of its voice. */
  readonly voice: number;
  /** Of the pictures of what is written for it: tied notes are several. */
  readonly ids: readonly string[];
  /** Index in the bars as they are played. */
  readonly bar: number;
  /** Of what is written for it: semibreves from the beginning of that bar. */
  readonly onset: number;
  /** Index in the keys; null where the instrument has none for it. */
  readonly key: number | null;
  readonly limb: Limb;
}

export type Limb = 'left' | 'right' | 'feet';

export interface PlayedBar {
  /** In its piece. */
  readonly index: number;
  /** As the trade counts: `8a`. */
  readonly number: string;
  readonly at: number;
  readonly until: number;
  /** Index of the leaf on which it begins. */
  readonly page: number;
}

/** A key of the keyboard, or half a divided one. */
export interface KeyOfStrip {
  /** Where it lies: as the key of this MIDI number does. */
  readonly lies: number;
  /** What that key would sound were the octave whole: `e2`. */
  readonly place: string;
  /** What it sounds, as typed: `c2`. */
  readonly sounds: string;
  readonly half?: 'front' | 'back';
}

/** A temperament that can be chosen. */
export interface TuningOffer {
  /** As after `tuning`. */
  readonly words: string;
  /** Author and year, or that it is the file's own. */
  readonly title: string;
}

interface WeightParams extends FileParams {
  readonly id: string;
  readonly reading: string;
  readonly weight: number;
}

interface SoundingParams extends ReadingPlaceParams {
  readonly what: 'note' | 'bar';
}

export interface PluckedNote {
  /** Seconds from the beginning: when its key goes down, and comes up. */
  readonly at: number;
  readonly until: number;
  /** Hertz. */
  readonly frequency: number;
}

/** What can be said of a sign: that it is played as it stands, or otherwise. */
export interface OpenSignOffer {
  /** `accept`: as it is played now; `choice`: otherwise; `mend`: a change that needs no reason. */
  readonly kind: 'accept' | 'choice' | 'mend';
  /** Tells it from the other offers of its sign. */
  readonly id: string;
  readonly title: string;
  /** How the sign is then played, in words; empty where the title says it. */
  readonly detail: string;
  /** A reason that the editor may put better; empty where none is needed. */
  readonly reason: string;
}

/** A sign of which the editor has not said how it is played, or of which there is something to tell. */
export interface OpenSignItem {
  readonly range: Range;
  readonly bar: string;
  readonly voice: string;
  /** Of the note that bears it. */
  readonly address: string;
  /** Its name in the text: `'zz`. */
  readonly typed: string;
  /** What is made of it, in words; one line for readings that agree. */
  readonly ways: readonly string[];
  /** What could not be played, or had to be guessed. */
  readonly findings: readonly string[];
  /** It can be accepted as it is played. */
  readonly isOpen: boolean;
}

interface SettleParams extends PlaceParams {
  /** Of the offer that is taken. */
  readonly id: string;
  readonly reason: string;
}

/** A tuning that can be asked for. */
export type TuningChoice =
  /** As a reading of the file has it. */
  | { readonly kind: 'reading'; readonly reading: string }
  /** What is typed after `tuning`. */
  | { readonly kind: 'words'; readonly words: string }
  /** As a reading of another open score has it, at that score’s pitch. */
  | { readonly kind: 'score'; readonly uri: string; readonly reading: string };

export interface TuningParams extends FileParams {
  /** The reading that is shown, for which the tuning would be written down. */
  readonly reading: string;
  readonly wanted: TuningChoice;
  /** Hertz of a4, where it is another than that of the choice. */
  readonly pitch?: number;
  /** What the instrument has now; absent where it is laid from the fork on. */
  readonly before?: TuningChoice;
}

export interface ShownTuning {
  readonly sheet: TuningSheet;
  /** As it is typed after `tuning`. */
  readonly words: string;
  /** The strings as an SVG element, with all steps or those that set what moves. */
  readonly drawing: string;
  /** What the file does not state. */
  readonly assumed: readonly ('temperament' | 'pitch')[];
  /** Statements that the file would have; none where it has them. */
  readonly writes: readonly string[];
  /** Why the file cannot say it; "" where nothing hinders. */
  readonly obstacle: string;
}

export interface TuningAnswer {
  /** What each reading of the file has. */
  readonly readings: readonly { readonly reading: string; readonly title: string }[];
  readonly offers: readonly TuningOffer[];
  /** Pitches that players know, in hertz of a4. */
  readonly standards: readonly { readonly hertz: number; readonly title: string }[];
  /** Hertz of a4. */
  readonly pitch: number;
  readonly shown?: ShownTuning;
  /** Why nothing is shown. */
  readonly failure?: string;
}

/** Requests about an open file. */
export interface FileRequests {
  /** What the file can be read as, `written` first. */
  'bentside/choices': { params: FileParams; result: readonly ChoiceOffer[] };
  /** How full the bar at a place is: "bar 12: 5 of 8 quavers". */
  'bentside/bar': { params: ReadingPlaceParams; result: string | null };
  /** What a sign that was just typed brings with it. */
  'bentside/typed': { params: TypedParams; result: TypedResult };
  /** The system after the one at a place, with all its lanes. */
  'bentside/nextSystem': { params: PlaceParams; result: SnippetOffer | null };
  /** A leaf engraved, or why it cannot be drawn here; null if there is no music yet. */
  'bentside/page': { params: PageParams; result: EngravedPage | { readonly failure: string } | null };
  /** The note at a place. */
  'bentside/note': { params: ReadingPlaceParams; result: NotePlace | null };
  /** Where the text says a note. */
  'bentside/place': { params: NoteParams; result: Range | null };
  /** What writes a system's place on the picture of its leaf into the text. */
  'bentside/region': { params: RegionParams; result: TextEdit | null };
  /** What writes an editor's weight into the text. */
  'bentside/weight': { params: WeightParams; result: TextEdit | null };
  /** What sounds at a place. */
  'bentside/sounding': { params: SoundingParams; result: readonly PluckedNote[] };
  /** A piece as it is played; null if there is no music yet. */
  'bentside/playing': { params: PlayingParams; result: Playing | null };
  /** The temperaments in which it can be played, the file's own first. */
  'bentside/tunings': { params: FileParams; result: readonly TuningOffer[] };
  /** The decisions list: signs of which the editor has not said how they are played, by place. */
  'bentside/openSigns': { params: FileParams; result: readonly OpenSignItem[] };
  /** What can be said of the sign at a place. */
  'bentside/signOffers': { params: PlaceParams; result: readonly OpenSignOffer[] };
  /** What writes into the text how the sign at a place is played; null if there is no such offer any more. */
  'bentside/settle': { params: SettleParams; result: readonly TextEdit[] | null };
  /** The sign at a place under every table that knows it, Markdown with pictures; null where none is played. */
  'bentside/otherTables': { params: PlaceParams; result: string | null };
  /** A tuning for the score, how it is laid, and what else can be chosen. */
  'bentside/tuning': { params: TuningParams; result: TuningAnswer | null };
  /** What writes a tuning into the text; null where the file cannot say it. */
  'bentside/writeTuning': { params: TuningParams; result: readonly TextEdit[] | null };
  /** The contents and places of the files of an export. */
  'bentside/export': { params: ExportParams; result: ExportResult | null };
}

/** Requests that no file is needed for. */
export interface PlainRequests {
  /** Whether the server is there. */
  'bentside/alive': { params: Record<string, never>; result: true };
  /** The help page of a finding, Markdown; null if there is no such code. */
  'bentside/help': { params: { readonly code: string }; result: string | null };
  /** The formats of an export. */
  'bentside/formats': {
    params: Record<string, never>;
    result: readonly { readonly name: string; readonly title: string }[];
  };
}

export type Requests = FileRequests & PlainRequests;
