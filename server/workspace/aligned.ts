/** A file laid out by the formatter, with its encoding in mind. */
import type { Finding } from '../../grammar/findings/finding';
import { formatFile } from '../../grammar/format';
import { parseFile } from '../../grammar/parse';
import { findingInFile } from '../document/absolute';
import { isUnreadable, markOf, sourceText } from './encoding';

/**
 * The text laid out so that what sounds together stands together; a byte order mark stays. What cannot be laid out, or has
 * unreadable characters that writing it would lose for good, comes back unchanged, with findings that say why.
 */
export function aligned(file: string, raw: string): { readonly text: string; readonly findings: readonly Finding[] } {
  const source = sourceText(raw);
  const { text, problems } = isUnreadable(source.text) ? source : formatFile(source.text);
  const named = { file, tree: parseFile(source.text) };
  return {
    text: markOf(raw) + text,
    findings: problems.map((problem) => findingInFile(named, problem)),
  };
}
