/** Columns of text: how wide a text is, and fields laid under one another. */

const nothing = /^[\p{M}\p{Cf}]$/u;
/** Letters that take two columns in an editor's font of even width. */
const wide =
  /^[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1f64f}\u{1f900}-\u{1f9ff}\u{20000}-\u{3fffd}]$/u;

/** Columns that a text takes. */
export function widthOf(text: string): number {
  // Most signs are plain, so that there is nothing to look up.
  if (/^[ -~]*$/.test(text)) return text.length;
  let width = 0;
  for (const letter of text) width += nothing.test(letter) ? 0 : wide.test(letter) ? 2 : 1;
  return width;
}

/**
 * Most spaces put in one place. A column further off helps no reader, and a single line of enormous width must not make
 * every other line as wide.
 */
const MOST_SPACES = 400;

export const spaces = (count: number): string => ' '.repeat(Math.min(Math.max(count, 0), MOST_SPACES));

export const padded = (text: string, width: number): string => text + spaces(width - widthOf(text));

/** The greatest of any number of widths. */
export const widest = (texts: readonly string[]): number =>
  texts.reduce((most, text) => Math.max(most, widthOf(text)), 0);

/** A piece of a line that has its column; empty where the line has nothing there. */
export interface Field {
  readonly text: string;
  /** Least number of spaces before it. */
  readonly gap: number;
}

export const noField: Field = { text: '', gap: 0 };

/** The lines with each column of their fields under one another. */
export function inColumns(lines: readonly (readonly Field[])[]): string[] {
  const rows = lines.map(() => '');
  const count = lines.reduce((most, fields) => Math.max(most, fields.length), 0);
  for (let column = 0; column < count; column++) {
    const fields = lines.map((line) => line[column] ?? noField);
    const used = fields.some(({ text }) => text !== '');
    if (!used) continue;
    const gap = fields.reduce((most, field) => Math.max(most, field.gap), 0);
    const start = column === 0 ? 0 : widest(rows) + gap;
    fields.forEach(({ text }, row) => {
      if (text !== '') rows[row] = padded(rows[row] ?? '', start) + text;
    });
  }
  return rows;
}
