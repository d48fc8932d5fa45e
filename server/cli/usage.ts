/** What is printed to somebody who asks how. */
import type { Entry } from './command';
import type { OptionTable } from './options';

export function usage(commands: readonly Entry[]): string {
  const width = Math.max(...commands.map((command) => heading(command).length));
  const lines = commands.map((command) => `  ${heading(command).padEnd(width)}   ${command.summary}`);
  return [
    'bentside: a plain-text notation for early keyboard music.',
    '',
    ...lines,
    '',
    'FILES are paths or patterns such as suites/*.bent; - is standard input.',
    'bentside COMMAND --help tells the options of a command, bentside --version the version.',
    '',
    'Ends with 0 if all is sound, 1 if a score has errors or was not written, 2 if the command could not be done.',
    '',
  ].join('\n');
}

const heading = ({ name, operands }: Entry): string => `bentside ${name} ${operands}`.trimEnd();

export function usageOf(entry: Entry, table: OptionTable): string {
  const options = optionLines(table);
  return [heading(entry), '', entry.summary, ...(options.length === 0 ? [] : ['', ...options]), ''].join('\n');
}

/** What stands before what an option does; one that is longer has a line of its own. */
const WIDEST = 48;

function optionLines(table: OptionTable): string[] {
  const rows = Object.entries(table).map(
    ([name, { value, among, says }]) =>
      [`--${name}${value === undefined ? '' : ` ${among?.join('|') ?? value}`}`, says] as const,
  );
  const width = Math.max(0, ...rows.map(([left]) => left.length).filter((length) => length <= WIDEST));
  return rows.map(([left, says]) => {
    const before = left.length > WIDEST ? `${left}\n  ${''.padEnd(width)}` : left.padEnd(width);
    return `  ${before}   ${says}`;
  });
}
