/**
 * A picture as the engraving library writes it: where its elements stand in the text and on the page, and what is put in or
 * taken out. All coordinates are those of the page's inside, in hundredths of a millimetre; y counts downwards.
 */

export interface SvgElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly SvgElement[];
  readonly parent: SvgElement | undefined;
  /** Offsets of its first sign, of what follows its opening tag, of its closing tag, and of what follows it. */
  readonly start: number;
  readonly inside: number;
  readonly closing: number;
  readonly end: number;
}

type Growing = { -readonly [Key in keyof SvgElement]: Key extends 'children' ? Growing[] : SvgElement[Key] };

const TAG = /<(\/?)([\w:-]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>/g;
const ATTRIBUTE = /([\w:-]+)="([^"]*)"/g;

/** The root of a well-formed document; what the text holds between tags is left where it is. */
export function readSvg(text: string): SvgElement | undefined {
  let root: Growing | undefined;
  let open: Growing | undefined;
  for (const match of text.matchAll(TAG)) {
    const [tag, slash, name = '', attributes = '', empty] = match;
    const end = match.index + tag.length;
    if (slash === '/') {
      if (open === undefined) continue;
      open.closing = match.index;
      open.end = end;
      open = open.parent as Growing | undefined;
      continue;
    }
    const element: Growing = {
      name,
      attributes: Object.fromEntries([...attributes.matchAll(ATTRIBUTE)].map(([, key, value]) => [key, value])),
      children: [],
      parent: open,
      start: match.index,
      inside: end,
      closing: end,
      end,
    };
    open?.children.push(element);
    root ??= element;
    if (empty !== '/') open = element;
  }
  return root;
}

/** An element and all below it, in the order of the text. A generator within another at each level would take longer. */
export function* below(element: SvgElement): Generator<SvgElement> {
  const open = [element];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    yield next;
    for (let i = next.children.length; i > 0; i--) {
      const child = next.children[i - 1];
      if (child !== undefined) open.push(child);
    }
  }
}

export const classOf = ({ attributes }: SvgElement): string => attributes['data-class'] ?? '';

/** The nearest element of a class below another. */
export function find(within: SvgElement, wanted: string): SvgElement | undefined {
  for (const element of below(within)) if (classOf(element) === wanted) return element;
  return undefined;
}

// ─── where it stands ─────────────────────────────────────────────────────────────────────────────────────────────────

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A glyph as it is drawn. */
export interface Glyph extends Point {
  readonly code: number;
  readonly scale: number;
}

const PLACED = /translate\(([-\d.]+), ?([-\d.]+)\) scale\(([-\d.]+)/;

/** The glyphs that an element draws itself, in their order. */
export const glyphsOf = ({ children }: SvgElement): readonly Glyph[] =>
  children.flatMap((child) => glyphOf(child) ?? []);

/** The glyph that a `use` draws; undefined of another element. */
export function glyphOf({ name, attributes }: SvgElement): Glyph | undefined {
  const match = PLACED.exec(attributes.transform ?? '');
  const code = /#([0-9A-F]+)-/.exec(attributes['xlink:href'] ?? '');
  if (name !== 'use' || match === null || code === null) return undefined;
  return {
    code: Number.parseInt(code[1] ?? '', 16),
    x: Number(match[1]),
    y: Number(match[2]),
    scale: Number(match[3]),
  };
}

/** The ends of a straight line that a `path` draws. */
export function lineOf({ name, attributes }: SvgElement): readonly [Point, Point] | undefined {
  const match = /^M([-\d.]+) ([-\d.]+) L([-\d.]+) ([-\d.]+)$/.exec(attributes.d ?? '');
  if (name !== 'path' || match === null) return undefined;
  const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = match.slice(1).map(Number);
  return [
    { x: x1, y: y1 },
    { x: x2, y: y2 },
  ];
}

// ─── changes ─────────────────────────────────────────────────────────────────────────────────────────────────────────

/** What is put in place of a stretch of the text. */
export interface Splice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The text with its changes, which do not overlap; those of one place stay in their order. */
export function spliced(text: string, splices: readonly Splice[]): string {
  let made = '';
  let from = 0;
  for (const { start, end, text: by } of [...splices].sort((a, b) => a.start - b.start)) {
    made += text.slice(from, start) + by;
    from = end;
  }
  return made + text.slice(from);
}
