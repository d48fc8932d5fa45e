/** What the score panel and its page say to one another. */
import type { EngravedPage, PluckedNote, SignsShown } from '../../server/features/protocol';

export type Clefs = 'source' | 'modern';

/** What the page keeps for the time when it is hidden or the window is loaded again. */
export interface PanelState {
  /** Address of the score. */
  readonly uri: string;
  readonly page: number;
  readonly clefs: Clefs;
  readonly ornaments: SignsShown;
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
      readonly system: number | null;
      readonly follows: boolean;
    }
  /** The picture of the leaf; undefined where there is none, or it cannot be read. */
  | { readonly kind: 'image'; readonly bytes: Uint8Array | undefined; readonly isDrawing: boolean }
  | { readonly kind: 'sound'; readonly notes: readonly PluckedNote[] };

export type FromPage =
  | { readonly kind: 'ready' }
  | { readonly kind: 'page'; readonly page: number }
  | { readonly kind: 'clefs' }
  | { readonly kind: 'ornaments' }
  | { readonly kind: 'reading' }
  /** A note was chosen by its picture. */
  | { readonly kind: 'note'; readonly id: string }
  /** Where a system of a leaf lies on its picture: left, top, width, height. */
  | { readonly kind: 'region'; readonly page: number; readonly system: number; readonly region: readonly number[] }
  | { readonly kind: 'sound'; readonly what: 'note' | 'bar' };
