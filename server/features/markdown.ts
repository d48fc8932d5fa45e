/**
 * What a file says, put into Markdown as it stands: an editor would fetch the pictures of a hover, also for a file that
 * nobody trusts.
 */

const PUNCTUATION = /[!-/:-@[-`{-~]/g;

/** Text that is no Markdown, on one line. Any ASCII punctuation may be escaped (CommonMark 0.31, section 2.4). */
export const literally = (text: string): string => text.replace(/\s+/g, ' ').replace(PUNCTUATION, String.raw`\$&`);

/** Text as it is typed, on one line, between more backticks than it has in a row (CommonMark 0.31, section 6.1). */
export function asTyped(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  const runs = (line.match(/`+/g) ?? []).map((run) => run.length);
  const fence = '`'.repeat(Math.max(0, ...runs) + 1);
  return runs.length === 0 ? `${fence}${line}${fence}` : `${fence} ${line} ${fence}`;
}

/** A template of Markdown: what is put into it is text. */
export const markdown = (parts: TemplateStringsArray, ...texts: readonly (string | number)[]): string =>
  parts.map((part, index) => `${part}${index < texts.length ? literally(`${texts[index]}`) : ''}`).join('');
