/** The items of the sub-lanes `fig` and `text`. */
import type { IToken } from 'chevrotain';
import { unquoted } from '../quoted';
import type { AccidentalSign, Figure, FiguresItem, Item, SyllableItem } from '../tree';
import type { ProblemList } from './problems';
import { Quoted } from './tokens';

const figurePattern = /^(\[)?(##|#|bb|b|n)?(\d{1,2})?(##|#|bb|b|n)?(\+)?(\])?$/;

function figureOf(text: string): Figure | undefined {
  const [, open, before, number, after, stroke, close] = figurePattern.exec(text) ?? [];
  const accidental = before ?? after;
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

function figures(token: IToken, problems: ProblemList): Item {
  const at = { pos: token.startOffset, len: token.image.length };
  const item = (what: FiguresItem['what'], columns: Figure[][]): FiguresItem => ({
    kind: 'figures',
    ...at,
    what,
    columns,
  });
  if (token.image === '_') return item('none', []);
  if (token.image === '=') return item('hold', []);
  const columns = token.image.split(',').map((column) => column.split('/').map(figureOf));
  if (columns.every((column) => column.every((figure) => figure !== undefined))) {
    return item('figures', columns as Figure[][]);
  }
  problems.push({ code: 'bad-figure', ...at, slots: { text: token.image.slice(0, 40) } });
  return { kind: 'junk', ...at };
}

function syllable(token: IToken): SyllableItem {
  const at = { pos: token.startOffset, len: token.image.length };
  const quoted = token.tokenType === Quoted;
  if (!quoted && (token.image === '_' || token.image === '=')) {
    return { kind: 'syllable', ...at, what: token.image === '_' ? 'none' : 'hold', text: '', goesOn: false };
  }
  const whole = quoted ? unquoted(token.image) : token.image;
  const goesOn = !quoted && whole.endsWith('-');
  return { kind: 'syllable', ...at, what: 'syllable', text: goesOn ? whole.slice(0, -1) : whole, goesOn };
}

/** The item that a token of a `fig` or `text` lane stands for. */
export function subItem(kind: 'fig' | 'text', token: IToken, problems: ProblemList): Item {
  if (kind === 'text') return syllable(token);
  return figures(token, problems);
}
