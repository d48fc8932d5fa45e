/** Pages for a browser and for paper: one file each, which fetches nothing. */

/** Markup; plain text becomes it by `text`. */
export type Html = string;

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

export const text = (plain: string | number): Html => `${plain}`.replace(/[&<>"]/g, (sign) => ESCAPES[sign] ?? sign);

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** An attribute whose value is undefined is left out. */
export function tag(name: string, attributes: Attributes, ...content: readonly Html[]): Html {
  const list = Object.entries(attributes).flatMap(([key, value]) =>
    value === undefined ? [] : [` ${key}="${text(value)}"`],
  );
  return `<${name}${list.join('')}>${content.join('')}</${name}>`;
}

export interface TableColumn<Row> {
  readonly head: string;
  /** Numbers stand flush right. */
  readonly numeric?: boolean;
  readonly cell: (row: Row, index: number) => string;
}

/** A table with a caption; the first column heads its rows. */
export function table<Row>(caption: string, columns: readonly TableColumn<Row>[], rows: readonly Row[]): Html {
  const classOf = ({ numeric }: TableColumn<Row>): string | undefined => (numeric ? 'number' : undefined);
  const heads = columns.map((column) => tag('th', { scope: 'col', class: classOf(column) }, text(column.head)));
  const body = rows.map((row, index) => {
    const cells = columns.map((column, i) => {
      const content = text(column.cell(row, index));
      return i === 0 ? tag('th', { scope: 'row' }, content) : tag('td', { class: classOf(column) }, content);
    });
    return tag('tr', {}, ...cells);
  });
  return tag(
    'table',
    {},
    tag('caption', {}, text(caption)),
    tag('thead', {}, tag('tr', {}, ...heads)),
    tag('tbody', {}, ...body),
  );
}

/** The one script of a page. */
export interface PageScript {
  readonly script: string;
  /** Its SHA-256 in base 64. */
  readonly digest: string;
}

/** A whole page in British English, made for A4. */
export const page = (title: string, style: string, ...body: readonly Html[]): string =>
  scriptedPage(title, style, undefined, ...body);

/** The same with a script. */
export const scriptedPage = (
  title: string,
  style: string,
  scripted: PageScript | undefined,
  ...body: readonly Html[]
): string =>
  [
    '<!doctype html>',
    '<html lang="en-GB">',
    `<head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${policy(scripted)}"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${text(title)}</title>`,
    `<style>${PAPER}${style}</style></head>`,
    `<body>${tag('main', {}, ...body)}${scripted === undefined ? '' : `<script>${scripted.script}</script>`}</body>`,
    '</html>',
    '',
  ].join('\n');

/** Nothing is fetched, and no script runs but the page's own (W3C, Content Security Policy Level 3). */
const policy = (scripted: PageScript | undefined): string =>
  [
    "default-src 'none'",
    "style-src 'unsafe-inline'",
    ...(scripted === undefined ? [] : [`script-src 'sha256-${scripted.digest}'`]),
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');

/** Black on white, in a serif that every computer has. */
const PAPER = `
@page { size: A4; margin: 14mm 16mm; }
body { margin: 0 auto; max-width: 178mm; padding: 8mm; background: #fff; color: #111; font: 10.5pt/1.4 Georgia, "DejaVu Serif", serif; }
h1 { font-size: 19pt; line-height: 1.15; margin: 0 0 1mm; font-weight: normal; }
h2 { font-size: 13pt; margin: 6mm 0 2mm; font-weight: normal; border-bottom: 0.3mm solid #111; break-after: avoid; }
p { margin: 0 0 2mm; }
table { border-collapse: collapse; break-inside: avoid; font-variant-numeric: tabular-nums; }
caption { text-align: left; font-style: italic; padding-bottom: 1mm; }
th, td { padding: 0.4mm 1.8mm; text-align: left; font-weight: normal; vertical-align: baseline; }
thead th { border-bottom: 0.2mm solid #111; font-style: italic; }
.number { text-align: right; }
@media print { body { padding: 0; max-width: none; font-size: 9.5pt; } }
`;
