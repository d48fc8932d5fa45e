/** The items of the sub-lanes `fig` and `text`. */
import type { IToken } from 'chevrotain';
import { type Fix, problemOf } from '../findings/finding';
import { unquoted } from '../quoted';
import type { AccidentalSign, Figure, FiguresItem, Item, Junk, Span, SyllableItem } from '../tree';
import type { ProblemList } from './problems';
import { type Mending, mendingAt } from './slips';
import { Quoted, spanOf } from './tokens';

/** The largest figure of a thorough bass: prints of 1600 count intervals through more than two octaves (from memory). */
const LARGEST = 18;
/** Digits that are no figure together; each of them is one. */
const runTogether = /(?<!\d)[1-9]{2,4}(?!\d)/g;

const figurePattern = /^(\[)?(##|#|bb|b|n)?(\d{1,2})?(##|#|bb|b|n)?(\+)?(\])?$/;

function figureOf(text: string): Figure | undefined {
  const [, open, before, number, after, stroke, close] = figurePattern.exec(text) ?? [];
  const accidental = before ?? after;
  if (Number(number) > LARGEST) return undefined;
  if (number === undefined && accidental === undefined) return undefined;
  if (before !== undefined && after !== undefined) return undefined;
  if ((open === undefined) !== (close === undefined)) return undefined;
  return {
    ...(number === undefined ? {} : { number: Number(number) }),
    ...(accidental === undefined ? {} : { accidental: accidental as AccidentalSign }),
    ...(before === undefined || number === undefined ? {} : { accidentalFirst: true }),
    stroked: stroke !== undefined,
    editors: open !== undefined,
  };
}

/** Figures one after another, each a stack; undefined if one of them is none. */
function columnsOf(text: string): Figure[][] | undefined {
  const columns = text.split(',').map((column) => column.split('/').map(figureOf));
  return columns.every((column) => column.every((figure) => figure !== undefined))
    ? (columns as Figure[][])
    : undefined;
}

function figures(token: IToken, problems: ProblemList): Item {
  const at = spanOf(token);
  const item = (what: FiguresItem['what'], columns: Figure[][]): FiguresItem => ({
    kind: 'figures',
    ...at,
    what,
    columns,
  });
  if (token.image === '_') return item('none', []);
  if (token.image === '=') return item('hold', []);
  const columns = columnsOf(token.image);
  if (columns !== undefined) return item('figures', columns);
  const apart = partings(token.image);
  const code = apart.length === 0 ? 'bad-figure' : 'figures-run-together';
  const ways = apart.length === 0 ? otherWritings(token.image) : apart;
  problems.push(problemOf(code, at, { text: token.image.slice(0, 40) }, ways.map(mendingAt(at))));
  return { kind: 'junk', ...at };
}

/** Brackets around several figures, put around each of them. */
const bracketsApart = (text: string): string =>
  /^\[[^[\]]*[/,][^[\]]*\]$/.test(text) ? text.slice(1, -1).replace(/[^/,]+/g, '[$&]') : text;

/** Figures as they are written elsewhere, and what each way of writing may mean. */
const elsewhere: readonly (readonly [pattern: RegExp, ...meant: readonly string[]])[] = [
  [/[-\u2013]/g, ','],
  [/\\/g, '/'],
  [/(?<=\d)\+(?=\d)/g, '/', '+/'],
  [/(?<=\d)(##|#|bb|b|n)(?=\d)/g, '$1/', '/$1'],
  [/^\+(\d+)$/, '$1+'],
  [/\u266f/g, '#'],
  [/\u266d/g, 'b'],
  [/\u266e/g, 'n'],
];

/** What a text may mean that is no figure, but one as it is written elsewhere. */
function otherWritings(text: string): readonly Mending[] {
  const rewritten = elsewhere.flatMap(([pattern, ...meant]) => meant.map((one) => text.replace(pattern, one)));
  return [...new Set([text, ...rewritten].map(bracketsApart))]
    .filter((one) => columnsOf(one) !== undefined)
    .map((one) => ({ title: `write ${one}`, text: one }));
}

/** What figures that run together may mean: figures above one another or, where nothing says that they are stacked, one after another. */
function partings(text: string): readonly Mending[] {
  const ways = [
    { title: 'stack them', by: '/' },
    { title: 'put them one after another', by: ',' },
  ];
  return ways.flatMap(({ title, by }) => {
    if (by === ',' && text.includes('/')) return [];
    const parted = text.replace(runTogether, (run) => (Number(run) > LARGEST ? [...run].join(by) : run));
    const meant = bracketsApart(parted);
    return parted !== text && columnsOf(meant) !== undefined ? [{ title, text: meant }] : [];
  });
}

/** A hyphen that stands by itself: no syllable. */
const loneHyphen = /^[-\u2010-\u2014]+$/;

/** @param before the item before it, to which a hyphen belongs */
function syllable(token: IToken, before: Item | undefined, problems: ProblemList): SyllableItem | Junk {
  const at = spanOf(token);
  if (loneHyphen.test(token.image)) {
    problems.push(problemOf('hyphen-apart', at, { text: token.image }, hyphenFixes(at, before)));
    return { kind: 'junk', ...at };
  }
  const quoted = token.tokenType === Quoted;
  if (!quoted && (token.image === '_' || token.image === '=')) {
    return { kind: 'syllable', ...at, what: token.image === '_' ? 'none' : 'hold', text: '', goesOn: false };
  }
  const whole = quoted ? unquoted(token.image) : token.image;
  const goesOn = !quoted && whole.endsWith('-');
  return { kind: 'syllable', ...at, what: 'syllable', text: goesOn ? whole.slice(0, -1) : whole, goesOn };
}

/** Glues a hyphen to the syllable before it. */
function hyphenFixes({ pos, len }: Span, before: Item | undefined): readonly Fix[] {
  // A quoted text is one syllable whatever it holds: a hyphen after it would not part a word.
  if (before?.kind !== 'syllable' || before.what !== 'syllable' || before.text.length !== before.len) return [];
  const end = before.pos + before.len;
  return [{ title: 'glue it to its syllable', edits: [{ pos: end, len: pos + len - end, text: '-' }] }];
}

/**
 * The item that a token of a `fig` or `text` lane stands for.
 * @param before the item before it in its bar
 */
export function subItem(kind: 'fig' | 'text', token: IToken, before: Item | undefined, problems: ProblemList): Item {
  return kind === 'text' ? syllable(token, before, problems) : figures(token, problems);
}
