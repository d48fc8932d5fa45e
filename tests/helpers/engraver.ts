/** The engraver with its font, as a host loads it. */
import { cannotDraw, type Engraver } from '../../server/engraving/engraver';
// @ts-expect-error a script of the build, without types
import { buildFont, fontMetadata } from '../../server/engraving/font/build.mjs';
import { loadEngraver } from '../../server/engraving/library';

export const fontZip = (): Promise<Uint8Array> => buildFont();

/** What the makers of the font that the outlines come from publish of its glyphs, by SMuFL's names. */
export const publishedBoxes = (): Readonly<
  Record<string, { readonly bBoxNE: readonly [number, number]; readonly bBoxSW: readonly [number, number] }>
> => fontMetadata().glyphBBoxes;

/** The name of the font that the outlines come from, which its licence reserves. */
export const reservedName = (): string => fontMetadata().fontName;

let loaded: Promise<Engraver> | undefined;

/** One engraver for all tests of a file: it takes half a second to start. */
export function engraver(): Promise<Engraver> {
  loaded ??= fontZip().then(async (font) => {
    const made = await loadEngraver(font);
    if (cannotDraw(made)) throw new Error(made.failure);
    return made;
  });
  return loaded;
}
