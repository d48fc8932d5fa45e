/** Puts what the library cannot draw into its pictures: signs beside heads and on stems, straight lines, open curves. */
import type { GlyphOutline } from '../engraver';
import { type AddedBrackets, type AddedGlyph, type AddedHook, type AddedSign, AFTER_HEADS } from '../flavour/addition';
import { GREY } from '../flavour/editorial';
import { BRACKET_LEFT, BRACKET_RIGHT } from '../font/codepoints';
import { below, classOf, glyphsOf, readSvg, type Splice, type SvgElement, spliced } from '../svg';
import { freeCurve } from './freeCurve';
import {
  above,
  accidentalsIn,
  flagsOf,
  GAP,
  type Head,
  headsOf,
  isSomethingBetween,
  leftOf,
  leftOfWave,
  type Outlines,
  rightOf,
  SCALE,
  SPACE,
} from './heads';
import { bracketMarks, clearOf, glyphMark, hookMark, lineMark, openCurveMark } from './marks';
import { mended } from './mended';
import { musicText } from './musicText';
import { PLACES, type Place } from './places';

/** The picture with the signs of which a note stands on it, and with a title of its own for those who cannot see it. */
export function withAdditions(svg: string, title: string, added: readonly AddedSign[], outlines: Outlines): string {
  const root = readSvg(svg);
  if (root === undefined) return svg;
  const elements = [...below(root)];
  const page = new Page(elements, outlines);
  const { margin } = page;
  const text = added.map((sign) => page.draw(sign)).join('');
  return spliced(svg, [
    ...titled(root, title),
    ...musicText(svg, elements, outlines),
    ...mended(svg, elements, outlines),
    ...(margin === undefined ? [] : [{ start: margin.closing, end: margin.closing, text }]),
  ]);
}

/** In place of the library's description of itself. */
const titled = (root: SvgElement, title: string): readonly Splice[] =>
  root.children
    .filter(({ name }) => name === 'desc')
    .map(({ start, end }) => ({ start, end, text: `<title>${escaped(title)}</title>` }));

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;' };
const escaped = (text: string): string => text.replace(/[&<>]/g, (sign) => ESCAPES[sign] ?? sign);

class Page {
  /** The group in which all coordinates count alike. */
  readonly margin: SvgElement | undefined;
  private readonly byId = new Map<string, SvgElement>();

  constructor(
    elements: readonly SvgElement[],
    private readonly outlines: Outlines,
  ) {
    for (const element of elements) {
      const id = element.attributes['data-id'];
      // Brackets around a sign bear its id too.
      if (id !== undefined && !this.byId.has(id)) this.byId.set(id, element);
      if (element.attributes.class === 'page-margin') this.margin ??= element;
    }
  }

  draw(sign: AddedSign): string {
    const bearers = sign.at.flatMap((id) => this.byId.get(id) ?? []);
    const marks = bearers.length === 0 ? '' : this.marks(sign, bearers);
    if (marks === '') return '';
    const colour = sign.grey === true ? ` color="${GREY}" fill="${GREY}"` : '';
    return `<g data-id="${sign.id}" data-class="sign" class="sign"${colour}>${marks}</g>\n`;
  }

  private marks(sign: AddedSign, bearers: readonly SvgElement[]): string {
    const heads = bearers.flatMap((bearer) => headsOf(bearer, this.outlines));
    const [head] = heads;
    switch (sign.kind) {
      case 'line':
        return lineMark(heads, sign.dashed === true, isSomethingBetween);
      case 'openCurve':
        return head === undefined ? '' : openCurveMark(head, sign.side, sign.dashed === true);
      case 'curve':
        return freeCurve(this.headAt(sign.at[0]), this.headAt(sign.at[1]), sign.dashed === true);
      case 'brackets':
        return this.bracketsAround(sign, bearers);
      case 'hook':
        return this.hookAt(bearers[0], sign.end);
      case 'glyph':
        return this.signMark(sign, bearers);
    }
  }

  // ─── signs ───────────────────────────────────────────────────────────────────────────────────────────────────────

  private signMark(sign: AddedGlyph, [bearer]: readonly SvgElement[]): string {
    const outline = this.outlines(sign.code);
    const [head, ...others] = bearer === undefined ? [] : headsOf(bearer, this.outlines);
    if (outline === undefined || bearer === undefined || head === undefined) return '';
    const place = PLACES[sign.place]({
      bearer,
      heads: [head, ...others],
      outline,
      next: () => this.nextHead(bearer),
      flags: () => flagsOf(bearer, this.outlines),
    });
    if (place === undefined) return '';
    if (sign.enclosed !== true) return glyphMark(outline, place);
    const within = AFTER_HEADS.has(sign.place) ? { ...place, x: place.x + this.widthOfBracket() } : place;
    return glyphMark(outline, within) + this.bracketsAt(outline, within);
  }

  private widthOfBracket(): number {
    return (this.outlines(BRACKET_LEFT)?.box.right ?? 0) * SCALE + GAP;
  }

  /** The library draws an upright wavy line as one that lies, turned about its foot. */
  private hookAt(wavyLine: SvgElement | undefined, end: AddedHook['end']): string {
    if (wavyLine === undefined) return '';
    const waves = glyphsOf(wavyLine);
    const [foot, second] = waves;
    if (foot === undefined) return '';
    const wave = second === undefined ? SPACE : second.x - foot.x;
    const from = { x: foot.x, y: end === 'foot' ? foot.y : foot.y - wave * waves.length };
    const accidentals = accidentalsIn(above(wavyLine, 'measure') ?? wavyLine, this.outlines);
    return hookMark(from, end, clearOf(accidentals, from, end));
  }

  private bracketsAt({ box }: GlyphOutline, { x, y, scale }: Place): string {
    const [left, right] = [this.outlines(BRACKET_LEFT), this.outlines(BRACKET_RIGHT)];
    if (left === undefined || right === undefined) return '';
    return (
      glyphMark(left, { x: x + box.left * scale - GAP - left.box.right * SCALE, y, scale: SCALE }) +
      glyphMark(right, { x: x + box.right * scale + GAP, y, scale: SCALE })
    );
  }

  private bracketsAround({ at }: AddedBrackets, bearers: readonly SvgElement[]): string {
    const headed = bearers.map((bearer) => ({ bearer, heads: headsOf(bearer, this.outlines) }));
    // Rests and wavy lines have no heads.
    const last = headed.findLast(({ heads }) => heads.length > 0);
    const all = headed.flatMap(({ heads }) => heads);
    const isHere = at.length === bearers.length;
    if (last === undefined || !isHere) return '';
    const lefts = headed.map(({ bearer, heads }) => Math.min(leftOf(bearer, heads), leftOfWave(bearer, this.outlines)));
    return bracketMarks(all, Math.min(...lefts), rightOf(last.bearer, last.heads));
  }

  /** The nearest head of the note that follows in the layer. */
  private nextHead(bearer: SvgElement): Head | undefined {
    const layer = above(bearer, 'layer');
    const notes = layer === undefined ? [] : [...below(layer)].filter((element) => classOf(element) === 'note');
    const own = new Set(below(bearer));
    const next = notes[notes.findLastIndex((note) => own.has(note)) + 1];
    return next && headsOf(next, this.outlines)[0];
  }

  private headAt(id: string | undefined): Head | undefined {
    const bearer = id === undefined ? undefined : this.byId.get(id);
    return bearer && headsOf(bearer, this.outlines)[0];
  }
}
