/** The critical report as a page to print, and as Markdown. */
import type { Report, ReportTable } from '../readings/report/document';
import { type Html, page, table, tag, text } from './html';

/** One file that fetches nothing. */
export function reportPage({ title, file, sections }: Report): string {
  return page(
    `Critical report: ${title}`,
    STYLE,
    tag('h1', {}, text(title)),
    tag('p', { class: 'under' }, text(`Critical report, computed from ${file}`)),
    tag(
      'nav',
      { 'aria-label': 'Sections' },
      ...sections.map(({ heading }, index) => tag('a', { href: `#${idOf(index)}` }, text(heading))),
    ),
    ...sections.map(({ heading, said, tables }, index) =>
      tag(
        'section',
        { 'aria-labelledby': idOf(index) },
        tag('h2', { id: idOf(index) }, text(heading)),
        ...said.map((one) => tag('p', {}, text(one))),
        ...tables.map(reportTable),
      ),
    ),
  );
}

const idOf = (index: number): string => `section-${index + 1}`;

/** A table of the report. */
export const reportTable = ({ caption, head, rows }: ReportTable): Html =>
  table(
    caption,
    head.map((column, index) => ({ head: column, cell: (row: readonly string[]) => row[index] ?? '' })),
    rows,
  );

/** Long tables go on overleaf, with their head; a row stays whole. */
const STYLE = `
.under { font-size: 12pt; margin-bottom: 4mm; }
nav { display: flex; flex-wrap: wrap; gap: 1mm 5mm; margin-bottom: 4mm; }
nav a { color: #111; }
table { width: 100%; break-inside: auto; margin: 3mm 0 5mm; }
caption { break-after: avoid; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { vertical-align: top; overflow-wrap: break-word; }
tbody th { white-space: nowrap; }
tbody tr { border-bottom: 0.1mm solid #999; }
@media print { nav { display: none; } }
`;

/** The same in Markdown. */
export function reportMarkdown({ title, file, sections }: Report): string {
  const parts = sections.flatMap(({ heading, said, tables }) => [
    `## ${heading}`,
    ...said.map(inMarkdown),
    ...tables.flatMap(({ caption, head, rows }) => [
      `**${inMarkdown(caption)}**`,
      [head, head.map(() => '---'), ...rows.map((row) => row.map(inMarkdown))]
        .map((row) => `| ${row.join(' | ')} |`)
        .join('\n'),
    ]),
  ]);
  return `${[`# ${inMarkdown(title)}`, `Critical report, computed from ${inMarkdown(file)}`, ...parts].join('\n\n')}\n`;
}

/** Nothing in a text of the score is to be taken for Markdown. */
const inMarkdown = (plain: string): string =>
  plain.replace(/[\\`*_<>|[\]#]/g, (sign) => `\\${sign}`).replace(/\s+/g, ' ');
