/**
 * What the core knows of whoever draws: MEI in, pictures out. The engraving library fills it (`library.ts`); a host loads
 * that where WebAssembly is to be had, and callers get a `CannotDraw` where it is not.
 */

/** How pages are made. Lengths are in tenths of a millimetre. */
export interface DrawOptions {
  /** Width of the page; left out: as wide as one long system needs. */
  readonly width?: number;
  /** Height of the page, after which another begins; left out: one page as high as needed. */
  readonly height?: number;
  /** `encoded`: systems and pages as the MEI has them (`sb`, `pb`); `auto`: as they fit; `none`: one long system. */
  readonly breaks: 'encoded' | 'auto' | 'none';
}

/** Why there is no picture, in plain words. */
export interface CannotDraw {
  readonly failure: string;
}

export interface Drawing {
  /** One SVG document a page. */
  readonly pages: readonly string[];
}

/** When something sounds: milliseconds from the beginning at the speed of the MEI. */
export interface SoundingMoment {
  readonly time: number;
  /** In crotchets from the beginning. */
  readonly crotchets: number;
  /** Ids of the notes that begin and end here. */
  readonly begin: readonly string[];
  readonly end: readonly string[];
}

/** The outline of a glyph of the font: units of 250 to a stave space, y up. */
export interface GlyphOutline {
  /** As the `d` of an SVG path. */
  readonly path: string;
  readonly box: { readonly left: number; readonly bottom: number; readonly right: number; readonly top: number };
}

/** MIDI key of a note by its id. */
export interface SoundingNote {
  readonly id: string;
  readonly midi: number;
}

export interface Engraver {
  /** The name and version of the library that draws. */
  readonly library: string;
  /** A glyph of the font; undefined where it has none at this code point. */
  outline(code: number): GlyphOutline | undefined;
  /** Draws an MEI document; ids of the MEI stand in the SVG as `data-id`. Equal MEI and options give equal pictures. */
  draw(mei: string, options: DrawOptions): Drawing | CannotDraw;
  /** What sounds when, as the library understands an MEI document: repeats are not played again. */
  timemap(mei: string): readonly SoundingMoment[] | CannotDraw;
  /** The keys of these notes of the MEI document that was read last. */
  keys(ids: readonly string[]): readonly SoundingNote[];
}

export const cannotDraw = (made: object): made is CannotDraw => 'failure' in made;
