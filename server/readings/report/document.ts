/** A report as data, before it becomes a page. */

export interface Report {
  readonly title: string;
  readonly file: string;
  /** Those without anything to say are left out. */
  readonly sections: readonly ReportSection[];
}

export interface ReportSection {
  readonly heading: string;
  /** Paragraphs. */
  readonly said: readonly string[];
  readonly tables: readonly ReportTable[];
}

export interface ReportTable {
  readonly caption: string;
  readonly head: readonly string[];
  /** The first cell names its row. */
  readonly rows: readonly (readonly string[])[];
}

/** A table, or none where it would be empty. */
export const tableOf = (
  caption: string,
  head: readonly string[],
  rows: readonly (readonly string[])[],
): readonly ReportTable[] => (rows.length === 0 ? [] : [{ caption, head, rows }]);
