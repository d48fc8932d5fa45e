/** What the tuning panel and its page say to one another. */
import type { TuningAnswer, TuningChoice } from '../../server/features/protocol';

/** What the page keeps for the time when it is hidden or the window is loaded again. */
export interface TuningState {
  /** Address of the score. */
  readonly uri: string;
  /** Absent: as the reading that is shown has it. */
  readonly wanted?: TuningChoice;
  /** Hertz of a4, where it is another than that of the choice. */
  readonly pitch?: number;
  /** What the instrument has now. */
  readonly before?: TuningChoice;
}

/** Choices under one heading; the value of each is its `TuningChoice` as JSON. */
export interface ChoiceGroup {
  readonly label: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

/** A choice among groups. */
export interface ShownChoice {
  readonly groups: readonly ChoiceGroup[];
  readonly chosen: string;
}

/** A step of the laying, or the proof of one. */
export interface ShownStep {
  /** Names its strings and its rung in the drawing: `f3-c4`. */
  readonly interval: string;
  /** Its place among those that tune; "" of a proof. */
  readonly number: string;
  /** The note that is set; "" of a proof. */
  readonly tunes: string;
  readonly kind: string;
  /** `2.81 wide`. */
  readonly beats: string;
  /** All of it in words. */
  readonly says: string;
  /** Frequencies of the lower and of the upper note. */
  readonly hertz: readonly [number, number];
  /** The partials that meet: of the lower note and of the upper one. */
  readonly partials: readonly [number, number];
}

export interface ShownTable {
  readonly caption: string;
  readonly columns: readonly { readonly head: string; readonly isNumber: boolean }[];
  readonly rows: readonly (readonly string[])[];
}

/** A tuning in the words in which the page shows it. */
export interface PageOfTuning {
  readonly title: string;
  /** Pitch, what is doubtful, what is assumed. */
  readonly under: readonly string[];
  /** As it is typed after `tuning`. */
  readonly words: string;
  /** An SVG element. */
  readonly drawing: string;
  readonly stepsTitle: string;
  readonly steps: readonly ShownStep[];
  readonly tables: readonly ShownTable[];
  /** The one that presses most first. */
  readonly cautions: readonly string[];
  /** What the button would write. */
  readonly writes: string;
  readonly canWrite: boolean;
}

/** What can be chosen, whether or not there is something to show. */
export interface ChoicesOfPage {
  readonly state: TuningState;
  readonly reading: string;
  readonly wanted: ShownChoice;
  readonly before: ShownChoice;
  /** Hertz of a4. */
  readonly pitch: number;
  readonly standards: TuningAnswer['standards'];
}

export type ToPage = {
  readonly choices: ChoicesOfPage;
  /** Or why nothing is shown. */
  readonly shown: PageOfTuning | string;
};

export type FromPage =
  | { readonly kind: 'ready' }
  | { readonly kind: 'reading' }
  /** A choice as JSON. */
  | { readonly kind: 'wanted'; readonly value: string }
  /** "": nothing is known of it. */
  | { readonly kind: 'before'; readonly value: string }
  | { readonly kind: 'words'; readonly words: string }
  /** Hertz. */
  | { readonly kind: 'pitch'; readonly pitch: number }
  | { readonly kind: 'write' };
