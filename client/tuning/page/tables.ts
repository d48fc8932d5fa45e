/** Tables of numbers on the page. */
import type { ShownTable } from '../messages';

/** Puts tables in the place of those that are there; the first column heads the rows. */
export function fillTables(place: Element, tables: readonly ShownTable[]): void {
  place.replaceChildren(...tables.map(tableOf));
}

function tableOf({ caption, columns, rows }: ShownTable): Element {
  const table = document.createElement('table');
  table.createCaption().textContent = caption;
  const heads = columns.map(({ head }) => cell('th', head, { scope: 'col' }));
  table
    .createTHead()
    .insertRow()
    .append(...heads);
  const body = table.createTBody();
  for (const row of rows) {
    body
      .insertRow()
      .append(
        ...row.map((text, index) =>
          index === 0
            ? cell('th', text, { scope: 'row' })
            : cell('td', text, columns[index]?.isNumber ? { class: 'number' } : {}),
        ),
      );
  }
  return table;
}

function cell(name: 'th' | 'td', text: string, attributes: Readonly<Record<string, string>>): Element {
  const made = document.createElement(name);
  made.textContent = text;
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
}
