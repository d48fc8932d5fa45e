/** Upright wavy lines beside room that is kept for a sign after the note before: the library sets them to its left. */
import { BLANK, BLANK_WIDTH } from '../font/codepoints';
import { below, classOf, type Glyph, glyphsOf, readSvg, type Splice, type SvgElement, spliced } from '../svg';
import { accidentalGlyphs, SPACE } from './heads';

/** How a picture uses the glyph of that room. */
const ROOM = `#${BLANK.toString(16).toUpperCase()}-`;

/** The picture with such lines moved into that room, so that the sign has its own to the left of them. */
export function wavesAtChords(svg: string): string {
  const root = svg.includes(ROOM) ? readSvg(svg) : undefined;
  if (root === undefined) return svg;
  const accidentals = accidentalGlyphs(root);
  const waves = [...below(root)].filter((one) => classOf(one) === 'arpeg' && hasRoom(one, accidentals));
  return spliced(
    svg,
    waves.map((wave) => moved(svg, wave, BLANK_WIDTH * SPACE)),
  );
}

/** Directly to its right, as far as it reaches, are blanks alone. */
function hasRoom(wave: SvgElement, accidentals: readonly Glyph[]): boolean {
  // It is drawn as one that lies, turned about its foot.
  const glyphs = glyphsOf(wave);
  const [foot, last] = [glyphs[0], glyphs.at(-1)];
  if (foot === undefined || last === undefined) return false;
  const top = foot.y - (last.x - foot.x) - SPACE;
  const beside = accidentals.filter(
    ({ x, y }) => x >= foot.x && x <= foot.x + SPACE && y >= top - SPACE && y <= foot.y + SPACE,
  );
  return beside.length > 0 && beside.every(({ code }) => code === BLANK);
}

function moved(svg: string, { start, end }: SvgElement, by: number): Splice {
  const text = svg
    .slice(start, end)
    .replace(/((?:rotate\([-\d.]+ |translate\())([-\d.]+)/g, (_, before, x) => `${before}${Number(x) + by}`);
  return { start, end, text };
}
