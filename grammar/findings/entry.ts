import type { Level } from './finding';

/** A row of the catalogue. */
export interface CatalogueEntry {
  readonly level: Level;
  /** One plain sentence in the trade's words; `{name}` is a blank filled from the finding's slots. */
  readonly sentence: string;
  /** It judges the music rather than the text; all such findings can be left out together. */
  readonly counsel?: true;
  /**
   * It is about the typing alone, and so is its one fix: white space, quotes, the order of a note's parts. No note, value or
   * sign becomes another, so that the fix may be made unseen, when a file is saved.
   */
  readonly ofTyping?: true;
  /** Help page in Markdown: what is meant, why it matters, how to mend it, with an example. */
  readonly help: string;
}

/** Keeps the codes of a table as literal types and its rows checked. */
export const entries = <Code extends string>(table: Record<Code, CatalogueEntry>): Record<Code, CatalogueEntry> =>
  table;
