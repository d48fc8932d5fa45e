/**
 * Pictures as parts of a page: their glyphs stand in it once, and of what the library writes around its elements only that
 * remains which can be seen.
 */
import { below, classOf, readSvg, type Splice, spliced } from '../../engraving/svg';
import { cropped } from '../crop';
import { type Html, tag } from '../html';

/** Millimetres of the page for a unit of the drawing: a stave of five lines is six millimetres high. */
export const MM_PER_UNIT = 0.085;

export interface InlinePicture {
  readonly markup: Html;
  /** In millimetres. */
  readonly width: number;
}

/** Whether two pictures show the same, whatever is said of their notes. */
export const looksLike = (one: InlinePicture | undefined, other: InlinePicture | undefined): boolean =>
  one !== undefined && other !== undefined && unsaid(one) === unsaid(other);

const unsaid = ({ markup }: InlinePicture): string => markup.replace(/<title>.*?<\/title>/gs, '');

/** Classes whose words are set otherwise than the rest; see `MUSIC_STYLE`. */
const KEPT = new Set(['ending', 'reh', 'tempo', 'dir', 'dynam', 'mNum', 'label', 'definition-scale']);

/** Attributes of a picture that nobody asks for in a page. */
const DROPPED = new Set(['id', 'version', 'xmlns', 'xmlns:xlink', 'xml:space']);
const ATTRIBUTE = / ([\w:-]+)="([^"]*)"/g;

export class Glyphs {
  private readonly outlines = new Map<string, string>();

  /** Equal music gives equal markup. */
  inline(svg: string, scale: number): InlinePicture {
    const { markup, width, height } = cropped(svg);
    for (const [, code = '', outline = ''] of markup.matchAll(/<g id="([0-9A-F]+)-[^"]*">(.*?)<\/g>/gs))
      this.outlines.set(code, outline);
    const size = `width:${(width * scale).toFixed(1)}mm;aspect-ratio:${Math.round(width)}/${Math.round(height)}`;
    const plain = markup
      .replace(/<defs>.*?<\/defs>|<style[^>]*>.*?<\/style>/gs, '')
      // Of the picture; those of its notes stay, for whoever points at them.
      .replace(/<title>.*?<\/title>/s, '')
      .replace(/<[^>]+>/g, plainTag)
      .replace(/<g(?: class="[^"]*")? ?\/>/g, '')
      .replace('<svg ', `<svg style="${size}" `);
    return { markup: plain, width: width * scale };
  }

  /** What the pictures share, to stand before them. */
  definitions(): Html {
    const glyphs = [...this.outlines].map(([code, outline]) => `<g id="glyph-${code}">${outline}</g>`);
    return tag(
      'svg',
      { class: 'music', 'aria-hidden': 'true', width: 0, height: 0, style: 'position:absolute' },
      tag('defs', {}, ...glyphs),
    );
  }
}

const plainTag = (written: string): string =>
  written.replace(ATTRIBUTE, (whole, name: string, value: string) => {
    if (name === 'xlink:href') return ` href="#glyph-${value.slice(1, value.indexOf('-'))}"`;
    if (name === 'class') return value.split(' ').some((one) => KEPT.has(one)) ? whole : '';
    return DROPPED.has(name) || name.startsWith('data-') ? '' : whole;
  });

/** What a stave has before anybody writes on it. */
const OF_STAVE = new Set(['clef', 'keySig', 'meterSig', 'mensur']);
const OF_MEASURE = new Set(['staff', 'barLine', 'mNum']);

/** A picture of bars in which nothing is written yet. */
export function withoutNotes(svg: string): string {
  const root = readSvg(svg);
  if (root === undefined) return svg;
  const removed: Splice[] = [];
  for (const element of below(root)) {
    const kept = KEPT_IN[classOf(element)];
    if (kept === undefined) continue;
    for (const child of element.children)
      if (child.name === 'g' && !kept.has(classOf(child)))
        removed.push({ start: child.start, end: child.end, text: '' });
  }
  return spliced(svg, outermost(removed));
}

const KEPT_IN: Readonly<Record<string, ReadonlySet<string>>> = {
  measure: OF_MEASURE,
  staff: new Set([...OF_STAVE, 'layer']),
  layer: OF_STAVE,
};

/** What lies within another stretch that is taken away goes with it. */
const outermost = (splices: readonly Splice[]): readonly Splice[] =>
  splices.filter((one) => !splices.some((other) => other !== one && other.start <= one.start && one.end <= other.end));

/** What the library states of each picture by its id. */
export const MUSIC_STYLE = `
.music path, .music ellipse, .music polygon, .music polyline, .music rect { stroke: currentColor; }
.music svg { max-width: 100%; height: auto; display: block; color: #000; }
.music .tempo, .music .ending, .music .reh { font-weight: bold; }
.music .dir, .music .dynam, .music .mNum { font-style: italic; }
`;
