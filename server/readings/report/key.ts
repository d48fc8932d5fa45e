/** The key to what a report prints: of all abbreviations and marks those alone that occur in it. */
import { shapeByName } from '../../../grammar/vocabulary/shapes';
import { valueName } from '../../score/amounts';
import type { Difference } from '../compare/differences';
import { VALUES } from '../compare/inTrade';
import type { ReportSection } from './document';

/** A symbol as it is printed. */
export interface PrintedSymbol {
  /** As `symbolInTrade` gives it. */
  readonly symbol: string;
  /** What stands at it, as typed: `='zz`. */
  readonly marks: string;
}

/** What is printed of the sides of differences. */
export const symbolsOf = (differences: readonly Difference[]): readonly PrintedSymbol[] =>
  differences.flatMap(({ sides }) =>
    sides.flatMap(({ symbols }) =>
      symbols.map(({ inTrade, marks }) => ({ symbol: inTrade.slice(0, inTrade.length - marks.length).trim(), marks })),
    ),
  );

/** What is printed in the tables of a section that have a column of symbols. */
export const symbolsIn = ({ tables }: ReportSection): readonly PrintedSymbol[] =>
  tables.flatMap(({ head, rows }) => {
    const [symbol, sign] = [head.indexOf('symbol'), head.findIndex((column) => SIGN_COLUMNS.includes(column))];
    return rows.map((row) => ({ symbol: (row[symbol] ?? '').replace(/^from /, ''), marks: row[sign] ?? '' }));
  });

const SIGN_COLUMNS = ['sign', 'what is doubtful'];

/** Sentences that explain symbols. */
export function keyTo(printed: readonly PrintedSymbol[]): readonly string[] {
  const symbols = printed.map(({ symbol }) => symbol);
  const marks = printed.map((one) => one.marks);
  const values = VALUES.filter(({ short }) => symbols.some((symbol) => valueIn(symbol) === short));
  const ratios = [...new Set(symbols.flatMap((symbol) => symbol.match(/\d+:\d+/g) ?? []))];
  const drawn = symbols.filter((symbol) => /[a-gA-G][♯♭𝄪𝄫]?[′͵]*(?:–|$| natural)/u.test(symbol));
  return [
    listed('Values', [
      ...values.filter(isShort).map(({ length, short }) => `${short} ${valueName(length)}`),
      ...(symbols.some((symbol) => /^(?:small )?[a-z]+\./.test(symbol)) ? ['a full stop after a value is a dot'] : []),
      ...ratios.map((ratio) => `${ratio} a tuplet, ${ratio.replace(':', ' in the time of ')}`),
    ]),
    drawn.length === 0 ? '' : PITCHES,
    drawn.some((symbol) => symbol.includes('–')) ? CHORDS : '',
    listed('Signs and other marks stand as they are typed', [
      ...MARKS.filter(({ pattern }) => marks.some((mark) => pattern.test(mark))).map(({ says }) => says),
      ...shapesIn(marks),
    ]),
  ].filter((sentence) => sentence !== '');
}

/** Whether it is not its name already. */
const isShort = ({ length, short }: (typeof VALUES)[number]): boolean => short !== valueName(length);

const PITCHES = 'Pitches are given after Helmholtz (c′ is middle C), with accidentals as they are drawn.';
const CHORDS = 'The notes of a chord stand from the lowest up, joined by dashes.';

const listed = (head: string, all: readonly string[]): string =>
  all.length === 0 ? '' : `${head}: ${all.join('; ')}.`;

const valueIn = (symbol: string): string => /^(?:small )?([a-z0-9]+)/.exec(symbol)?.[1] ?? '';

const MARKS: readonly { readonly pattern: RegExp; readonly says: string }[] = [
  { pattern: /^=|[^']=/, says: '= tied to what follows' },
  { pattern: /'u/, says: "'u a curve begins" },
  { pattern: /'line/, says: "'line a line begins" },
  { pattern: /'\./, says: "'. a curve or line ends" },
  { pattern: /'\[/, says: '[ ] the editor’s' },
  { pattern: /\?/, says: '? doubtful' },
  { pattern: /'[1-5]/, says: "'1 to '5 fingers" },
  { pattern: /'\[?(?:#|b|n)/, says: "'# 'b 'n an accidental above or below" },
  { pattern: /'w\d/, says: "'w2 the editor’s weight of a note without measure" },
  { pattern: /“/, says: '“ ” words of the source' },
];

/** What each shape of a sign looks like. */
function shapesIn(marks: readonly string[]): readonly string[] {
  const names = marks
    .flatMap((mark) => [...mark.matchAll(/'\[?([a-z+]+)/g)])
    .flatMap(([, name = '']) => name.split('+'));
  return [...new Set(names)].flatMap((name) => {
    const shape = shapeByName(name);
    return shape === undefined ? [] : [`'${name} ${shape.description}`];
  });
}
