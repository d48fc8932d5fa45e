/** The files that a command was given. */
import type { CliHost } from './command';
import type { Given, OptionTable } from './options';

export interface Input {
  /** As the user named it; of standard input the name given by `--name`. */
  readonly file: string;
  readonly text: string;
  readonly standard: boolean;
}

/** An input that could not be read, and why. */
export interface Unread {
  readonly file: string;
  readonly failure: string;
}

/** The option that every command with FILES takes. */
export const inputOptions: OptionTable = {
  name: { value: 'NAME', says: 'what to call the score that comes from standard input (-)' },
};

const STANDARD = '-';
/** What a score from standard input is called where no name is given. */
const UNNAMED = 'standard-input.bent';

/** Each file once, in the order in which they were named; a pattern that names no file is an input unread. */
export async function inputsOf(host: CliHost, given: Given): Promise<readonly (Input | Unread)[]> {
  const inputs: (Input | Unread)[] = [];
  const seen = new Set<string>();
  for (const pattern of given.operands) {
    if (pattern === STANDARD) {
      if (seen.has(STANDARD)) continue;
      seen.add(STANDARD);
      inputs.push(named(given.values.get('name') ?? UNNAMED, host.standardInput(), true));
      continue;
    }
    const files = await host.find(pattern);
    if (files.length === 0) inputs.push({ file: pattern, failure: 'no file is called so, or fits the pattern' });
    for (const file of files) {
      if (seen.has(host.absolute(file))) continue;
      seen.add(host.absolute(file));
      inputs.push(named(file, host.read(file), false));
    }
  }
  return inputs;
}

const named = (file: string, reading: ReturnType<CliHost['read']>, standard: boolean): Input | Unread =>
  'failure' in reading ? { file, failure: reading.failure } : { file, text: reading.text, standard };

export const isUnread = (input: Input | Unread): input is Unread => 'failure' in input;
