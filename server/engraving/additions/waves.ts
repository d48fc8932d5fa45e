/** Upright wavy lines beside room that is kept for a sign after the note before: the library sets them to its left. */
import { BLANKS } from '../font/codepoints';
import { below, classOf, type Glyph, glyphsOf, readSvg, type Splice, type SvgElement, spliced } from '../svg';
import { accidentalGlyphs, SPACE } from './heads';

/** How a picture uses the glyphs of that room. */
const ROOMS = [...BLANKS.keys()].map((code) => `#${code.toString(16).toUpperCase()}-`);

/** The picture with such lines moved into that room, so that the sign has its own to the left of them. */
export function wavesAtChords(svg: string): string {
  const root = ROOMS.some((room) => svg.includes(room)) ? readSvg(svg) : undefined;
  if (root === undefined) return svg;
  const accidentals = accidentalGlyphs(root);
  const waves = [...below(root)].filter((one) => classOf(one) === 'arpeg');
  const rooms = new Map<string | undefined, number>();
  for (const wave of waves) {
    const room = roomBeside(wave, accidentals);
    if (room > 0) rooms.set(wave.attributes['data-id'], room);
  }
  // Brackets around a line bear its id too, and go with it.
  const splices = waves.flatMap((wave) => moved(svg, wave, rooms.get(wave.attributes['data-id'])));
  return spliced(svg, splices);
}

/** How wide the room is directly to its right, as far as it reaches, up to the first accidental there; 0 where none is. */
function roomBeside(wave: SvgElement, accidentals: readonly Glyph[]): number {
  // It is drawn as one that lies, turned about its foot.
  const glyphs = glyphsOf(wave);
  const [foot, last] = [glyphs[0], glyphs.at(-1)];
  if (foot === undefined || last === undefined) return 0;
  const top = foot.y - (last.x - foot.x) - SPACE;
  const beside = accidentals.filter(({ x, y }) => x >= foot.x && y >= top - SPACE && y <= foot.y + SPACE);
  const room = beside.find(({ code, x }) => BLANKS.has(code) && x <= foot.x + SPACE);
  if (room === undefined) return 0;
  const end = room.x + (BLANKS.get(room.code) ?? 0) * SPACE;
  const drawn = beside.filter(({ code }) => !BLANKS.has(code)).map(({ x }) => x);
  return Math.min(end, ...drawn) - room.x;
}

function moved(svg: string, { start, end }: SvgElement, by = 0): readonly Splice[] {
  if (by === 0) return [];
  const text = svg
    .slice(start, end)
    .replace(/(rotate\([-\d.]+ |translate\(|<rect x=")([-\d.]+)/g, (_, before, x) => `${before}${Number(x) + by}`);
  return [{ start, end, text }];
}
