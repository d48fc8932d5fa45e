/** Signs of the music font in words and figures as outlines, so that a picture needs no font but those that every reader has. */
import { FONT_NAME } from '../font/glyphs';
import { below, type Splice, type SvgElement } from '../svg';
import type { Outlines } from './heads';
import { glyphMark } from './marks';

/** Figures are half as wide as they are high in the fonts of text that are usual. */
const FIGURE_WIDTH = 0.55;
const EM = 1000;

export function musicText(svg: string, root: SvgElement, outlines: Outlines): readonly Splice[] {
  return [...below(root)].filter(({ name }) => name === 'text').flatMap((text) => inText(svg, text, outlines));
}

function inText(svg: string, text: SvgElement, outlines: Outlines): readonly Splice[] {
  const runs = [...below(text)].filter(({ name, children }) => name === 'tspan' && children.length === 0);
  const splices: Splice[] = [];
  let x = Number(text.attributes.x);
  for (const run of runs) {
    const content = svg.slice(run.inside, run.closing).trim();
    const size = Number.parseFloat(run.attributes['font-size'] ?? '0');
    const outline = run.attributes['font-family'] === FONT_NAME ? outlines(content.codePointAt(0) ?? 0) : undefined;
    if (outline === undefined) {
      x += content.length * size * FIGURE_WIDTH;
      continue;
    }
    const place = { x, y: Number(text.attributes.y), scale: size / EM };
    splices.push({ start: text.start, end: text.start, text: glyphMark(outline, place) });
    splices.push({ start: run.start, end: run.end, text: '' });
    x += outline.box.right * place.scale;
  }
  return splices;
}
