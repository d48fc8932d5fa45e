/** Findings as lines for people. */
import type { Finding, Level } from '../../grammar/findings/finding';
import { LEVELS } from '../document/levels';
import { howMany } from '../score/amounts';
import type { Decision } from '../signs/decisions';
import { certainties } from '../signs/tables/table';

/** `file:line:column level code: sentence`. */
export const findingLine = (finding: Finding): string => {
  const { line, column } = finding.range.start;
  return `${shown(finding.file)}:${line}:${column} ${finding.level} ${finding.code}: ${shown(finding.message)}\n`;
};

/** `file:line:column decision in READING: 'ca, Pincé of anglebert-1689 (from memory): d5 c5 d5`. */
export const decisionLine =
  (file: string) =>
  ({ line, column, reading, sign, table, row, played, notes, others }: Decision): string => {
    const typed = sign.split('+').map((shape) => `'${shape}`);
    const sure = played === undefined ? '' : ` (${certainties[played]})`;
    const names = others.map(({ name }) => `(${name})`);
    const instead = names.length === 0 ? '' : `; or ${names.join(', ')}`;
    const says = `${typed.join('')}, ${row} of ${table}${sure}: ${notes.join(' ')}${instead}`;
    return `${shown(file)}:${line}:${column} decision in ${reading}: ${shown(says)}\n`;
  };

/**
 * Text from a file as it may go to a terminal: its control characters, which could move the cursor or feign other lines, as
 * their pictures.
 */
export const shown = (text: string): string =>
  text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]/g, (sign) => {
    const code = sign.charCodeAt(0);
    return code < 0x20 ? String.fromCharCode(0x2400 + code) : code === 0x7f ? '\u2421' : '\ufffd';
  });

const PLURALS: Readonly<Record<Level, readonly [string, string]>> = {
  error: ['error', 'errors'],
  warning: ['warning', 'warnings'],
  info: ['remark', 'remarks'],
  hint: ['hint', 'hints'],
};

/** "2 errors, 1 hint", or "no findings". */
export function tally(findings: readonly Finding[]): string {
  const parts = LEVELS.map((level) => {
    const count = findings.filter((finding) => finding.level === level).length;
    return count === 0 ? '' : howMany(count, ...PLURALS[level]);
  });
  return parts.filter((part) => part !== '').join(', ') || 'no findings';
}
