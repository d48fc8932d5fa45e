/** Signs of the music font in words and figures as outlines, so that a picture needs no font but those that every reader has. */
import { FONT_NAME } from '../font/glyphs';
import { below, type Splice, type SvgElement } from '../svg';
import type { Outlines } from './heads';
import { glyphMark } from './marks';

/** How wide figures and brackets are for their size in the fonts of text that are usual. */
const FIGURE_WIDTH = 0.55;
const BRACKET_WIDTH = 0.33;
const EM = 1000;

/** SMuFL's figures are smaller than those of text beside which they stand. */
const isFigure = (code: number): boolean => code >= 0xea50 && code <= 0xea62;
const FIGURE_SCALE = 1.2;

export function musicText(svg: string, root: SvgElement, outlines: Outlines): readonly Splice[] {
  return [...below(root)].filter(({ name }) => name === 'text').flatMap((text) => inText(svg, text, outlines));
}

function inText(svg: string, text: SvgElement, outlines: Outlines): readonly Splice[] {
  const runs = [...below(text)].filter(({ name, children }) => name === 'tspan' && children.length === 0);
  const splices: Splice[] = [];
  let x = Number(text.attributes.x);
  let follows = false;
  for (const run of runs) {
    const content = svg.slice(run.inside, run.closing).trim();
    const size = Number.parseFloat(run.attributes['font-size'] ?? '0');
    const code = content.codePointAt(0) ?? 0;
    const outline = run.attributes['font-family'] === FONT_NAME ? outlines(code) : undefined;
    if (outline === undefined) {
      // What follows a sign keeps its place when the sign is taken out of the text.
      const inside = run.start + '<tspan'.length;
      if (follows) splices.push({ start: inside, end: inside, text: ` x="${Math.round(x)}"` });
      follows = false;
      x += textWidth(content) * size;
      continue;
    }
    const place = { x, y: Number(text.attributes.y), scale: (size / EM) * (isFigure(code) ? FIGURE_SCALE : 1) };
    splices.push({ start: text.start, end: text.start, text: glyphMark(outline, place) });
    splices.push({ start: run.start, end: run.end, text: '' });
    x += outline.box.right * place.scale;
    follows = true;
  }
  return splices;
}

const textWidth = (text: string): number =>
  [...text].reduce((width, sign) => width + (/[[\]]/.test(sign) ? BRACKET_WIDTH : FIGURE_WIDTH), 0);
