/** Addresses of the help pages of findings: documents that the extension makes. */

export const HELP_SCHEME = 'bentside-help';

/** The address of the page of a code. It ends as Markdown does, so that an editor shows it so. */
export const helpAddress = (code: string): string => `${HELP_SCHEME}:/${code}.md`;

/** The code whose page a path is. */
export const codeOfHelp = (path: string): string => path.replace(/^\//, '').replace(/\.md$/, '');
