/** Signs of the music font in words and figures as outlines, so that a picture needs no font but those that every reader has. */
import { FONT_NAME } from '../font/glyphs';
import { below, type Splice, type SvgElement } from '../svg';
import { GAP, type Outlines } from './heads';
import { glyphMark } from './marks';

/** How wide figures and brackets are for their size in the fonts of text that are usual. */
const FIGURE_WIDTH = 0.55;
const BRACKET_WIDTH = 0.33;
const EM = 1000;

/** SMuFL's figures and accidentals of figured bass are smaller than the figures of text beside them, and are made as tall. */
const ENLARGED: readonly { readonly from: number; readonly to: number; readonly scale: number }[] = [
  { from: 0xea50, to: 0xea62, scale: 1.6 },
  { from: 0xea63, to: 0xea69, scale: 1.25 },
];
const enlargement = (code: number): number => ENLARGED.find(({ from, to }) => code >= from && code <= to)?.scale ?? 1;

export function musicText(svg: string, elements: readonly SvgElement[], outlines: Outlines): readonly Splice[] {
  return elements.filter(({ name }) => name === 'text').flatMap((text) => inText(svg, text, outlines));
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
    const place = { x, y: Number(text.attributes.y), scale: (size / EM) * enlargement(code) };
    splices.push({ start: text.start, end: text.start, text: glyphMark(outline, place) });
    splices.push({ start: run.start, end: run.end, text: '' });
    x += outline.box.right * place.scale;
    follows = true;
  }
  return follows ? [...splices, ...lineFrom(text, x + GAP)] : splices;
}

/** The line that holds a figure on begins after its sign, of which the library does not know the width. */
function lineFrom(text: SvgElement, x: number): readonly Splice[] {
  const beside = text.parent?.children ?? [];
  const line = beside[beside.indexOf(text) + 1];
  if (line?.name !== 'rect' || Number(line.attributes.x) >= x) return [];
  const { x: from, y, width, height } = line.attributes;
  const left = Math.max(0, Number(from) + Number(width) - x);
  const moved = `<rect x="${Math.round(x)}" y="${y}" height="${height}" width="${Math.round(left)}" />`;
  return [{ start: line.start, end: line.end, text: moved }];
}

const textWidth = (text: string): number =>
  [...text].reduce((width, sign) => width + (/[[\]]/.test(sign) ? BRACKET_WIDTH : FIGURE_WIDTH), 0);
