/** What the score panel and its page say to one another. */
import type {
  BeginOfPlaying,
  ChoiceOffer,
  EngravedPage,
  Playing,
  PluckedNote,
  SignsShown,
  TuningOffer,
} from '../../server/features/protocol';

export type Clefs = 'source' | 'modern';

/** What the page keeps for the time when it is hidden or the window is loaded again. */
export interface PanelState {
  /** Address of the score. */
  readonly uri: string;
  readonly page: number;
  readonly clefs: Clefs;
  readonly ornaments: SignsShown;
  /** The reading that stands beneath; null where one alone is shown. */
  readonly beneath: string | null;
  /** The panel stays with its score whatever text is in front. */
  readonly isLocked: boolean;
}

/** A leaf with what is said above it. */
export interface ShownPage extends EngravedPage {
  readonly state: PanelState;
  readonly reading: string;
}

export type ToPage =
  | { readonly kind: 'page'; readonly shown: ShownPage }
  /** There is no picture, and why. */
  | { readonly kind: 'failure'; readonly says: string }
  /** The note at the caret in words, and the index of its system; null where there is none. */
  | {
      readonly kind: 'mark';
      readonly id: string | null;
      readonly says: string;
      readonly bar: string;
      readonly system: number | null;
      readonly follows: boolean;
    }
  /** Bars to be played round and round. */
  | { readonly kind: 'loop'; readonly from: string; readonly to: string }
  /** The picture of the leaf; undefined where there is none, or it cannot be read. */
  | { readonly kind: 'image'; readonly bytes: Uint8Array | undefined; readonly isDrawing: boolean }
  | { readonly kind: 'sound'; readonly notes: readonly PluckedNote[] }
  /** What the score can be read as and tuned in. */
  | {
      readonly kind: 'offers';
      readonly reading: string;
      readonly readings: readonly ChoiceOffer[];
      readonly tunings: readonly TuningOffer[];
    }
  /** What was asked for by this number; null where there is nothing to play. */
  | { readonly kind: 'playing'; readonly number: number; readonly playing: Playing | null }
  /** Play from the marked note on, or stop, as by the button. */
  | { readonly kind: 'togglePlaying' };

/** What is to be played. */
export interface PlayWish {
  readonly reading: string;
  /** As after `tuning`; null: as the reading says. */
  readonly tuning: string | null;
  readonly pace: number;
  readonly begin: BeginOfPlaying;
}

export type FromPage =
  | { readonly kind: 'ready' }
  | { readonly kind: 'page'; readonly page: number }
  | { readonly kind: 'clefs' }
  | { readonly kind: 'ornaments' }
  | { readonly kind: 'reading' }
  /** This one is to stand beneath; null: none. */
  | { readonly kind: 'beneath'; readonly reading: string | null }
  /** This reading is to be shown. */
  | { readonly kind: 'read'; readonly reading: string }
  /** A note was chosen by its picture. */
  | { readonly kind: 'note'; readonly id: string }
  /** The bars from this note to that one are to be played round and round. */
  | { readonly kind: 'loop'; readonly from: string; readonly to: string }
  /** Where a system of a leaf lies on its picture: left, top, width, height. */
  | { readonly kind: 'region'; readonly page: number; readonly system: number; readonly region: readonly number[] }
  | { readonly kind: 'sound'; readonly what: 'note' | 'bar' }
  /** A note of music without measure is to last so many times as long. */
  | { readonly kind: 'weight'; readonly id: string; readonly weight: number }
  | { readonly kind: 'play'; readonly number: number; readonly wish: PlayWish }
  /** What is played has come to another leaf. */
  | { readonly kind: 'turn'; readonly page: number };
