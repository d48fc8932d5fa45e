/** The options of a command line, read against a table of those that the command knows. */
import { parseArgs } from 'node:util';
import { nearest } from '../../grammar/nearest';

export interface OptionEntry {
  /** The blank in the usage, such as `DIR`; absent of an option that takes no value. */
  readonly value?: string;
  /** The values that may stand there, if not any. */
  readonly among?: readonly string[];
  /** One line, in plain words. */
  readonly says: string;
  /** It says something only where one of these holds. */
  readonly only?: readonly OnlyWith[];
  /** Options in whose place it stands. */
  readonly not?: readonly string[];
}

/** An option that says something only where another has one of these values. */
export interface OnlyWith {
  readonly option: string;
  readonly values: readonly string[];
}

export type OptionTable = Readonly<Record<string, OptionEntry>>;

/** What was typed after the command's name. */
export interface Given {
  readonly operands: readonly string[];
  /** Options with a value, by name. */
  readonly values: ReadonlyMap<string, string>;
  /** Options without a value. */
  readonly flags: ReadonlySet<string>;
}

/** What was typed, or a sentence that says what is wrong with it. */
export function readOptions(table: OptionTable, argv: readonly string[]): Given | { readonly slip: string } {
  const options = Object.fromEntries(
    Object.entries(table).map(([name, entry]) => [
      name,
      { type: entry.value === undefined ? ('boolean' as const) : ('string' as const) },
    ]),
  );
  const { tokens } = parseArgs({ args: [...argv], options, strict: false, allowPositionals: true, tokens: true });
  const operands: string[] = [];
  const values = new Map<string, string>();
  const flags = new Set<string>();
  for (const token of tokens) {
    if (token.kind === 'positional') operands.push(token.value);
    if (token.kind !== 'option') continue;
    const slip = slipIn(table, token) ?? twiceIn(values, token);
    if (slip !== undefined) return { slip };
    if (token.value === undefined) flags.add(token.name);
    else values.set(token.name, token.value);
  }
  const given = { operands, values, flags };
  const idle = idleIn(table, given);
  return idle === undefined ? given : { slip: idle };
}

/** An option that would be passed over in silence. */
function idleIn(table: OptionTable, { values, flags }: Given): string | undefined {
  const isGiven = (name: string): boolean => values.has(name) || flags.has(name);
  for (const [name, { only, not = [] }] of Object.entries(table)) {
    if (!isGiven(name)) continue;
    const other = not.find(isGiven);
    if (other !== undefined) return `--${name} and --${other} do not go together: give one of them.`;
    const holds = ({ option, values: wanted }: OnlyWith): boolean => wanted.includes(values.get(option) ?? '');
    if (only !== undefined && !only.some(holds))
      return `--${name} goes only with ${only.map(inWords).join(', or with ')}.`;
  }
  return undefined;
}

const inWords = ({ option, values }: OnlyWith): string => `--${option} ${values.join('|')}`;

interface OptionToken {
  readonly name: string;
  readonly rawName: string;
  readonly value: string | undefined;
  readonly inlineValue: boolean | undefined;
}

/** Of two values only one could hold, and which was meant nobody knows. */
const twiceIn = (values: ReadonlyMap<string, string>, { name, value }: OptionToken): string | undefined =>
  values.has(name) ? `--${name} stands twice, with “${values.get(name)}” and “${value}”: give it once.` : undefined;

function slipIn(table: OptionTable, { name, rawName, value, inlineValue }: OptionToken): string | undefined {
  const entry = Object.hasOwn(table, name) && rawName.startsWith('--') ? table[name] : undefined;
  if (entry === undefined) return `There is no option ${rawName}.${didYouMean(name, Object.keys(table), '--')}`;
  if (entry.value === undefined) return value === undefined ? undefined : `The option --${name} takes no value.`;
  // A value that looks like an option is one: the value itself was forgotten.
  if (value === undefined || value === '' || (!inlineValue && /^-./.test(value))) {
    return `The option --${name} needs a value: --${name} ${entry.value}.`;
  }
  if (entry.among === undefined || entry.among.includes(value)) return undefined;
  return `--${name} is one of ${entry.among.join(', ')}, not “${value}”.${didYouMean(value, entry.among)}`;
}

/** " Did you mean …?", or nothing where no word is near. */
export function didYouMean(word: string, candidates: readonly string[], before = ''): string {
  const meant = nearest(word, candidates);
  return meant === undefined ? '' : ` Did you mean ${before}${meant}?`;
}
