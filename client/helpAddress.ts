/** Addresses of the help pages of findings: documents that the extension makes. */

export const HELP_SCHEME = 'bentside-help';

/** The address of the page of a code. It ends as Markdown does, so that an editor shows it so. */
export const helpAddress = (code: string): string => `${HELP_SCHEME}:/${code}.md`;

/** The code whose page a path is. */
export const codeOfHelp = (path: string): string => path.replace(/^\//, '').replace(/\.md$/, '');

/** A sign of a score by the beginning of its mark. */
export interface SignPlace {
  readonly uri: string;
  readonly line: number;
  readonly character: number;
}

/** The address of the page that shows a sign under every table. */
export const tablesAddress = (place: SignPlace): string =>
  `${HELP_SCHEME}:/other-tables.md?${encodeURIComponent(JSON.stringify(place))}`;

/** The sign whose page an address is; undefined of the page of a finding. */
export const signOfTables = (query: string): SignPlace | undefined => (query === '' ? undefined : JSON.parse(query));
