/** The command line as a function: words in, exit code out. */
import { version } from '../../package.json';
import { type CliHost, COULD_NOT, type Entry, SOUND } from './command';
import { commands } from './commands';
import { didYouMean, readOptions } from './options';
import { shown } from './print';
import { usage, usageOf } from './usage';

/** Runs what was typed after `bentside` and gives the exit code. */
export async function run(host: CliHost, argv: readonly string[]): Promise<number> {
  const [word, ...rest] = argv;
  if (word === undefined) return refuse(host, usage(commands));
  if (word === '--help' || word === '-h') return tell(host, usage(commands));
  if (word === '--version') return tell(host, `${version}\n`);
  const entry = commands.find(({ name }) => name === word);
  if (entry === undefined) {
    const names = commands.map(({ name }) => name);
    return refuse(host, `There is no command “${shown(word)}”, but ${names.join(', ')}.${didYouMean(word, names)}\n`);
  }
  return runCommand(host, entry, rest);
}

async function runCommand(host: CliHost, entry: Entry, argv: readonly string[]): Promise<number> {
  const command = await entry.load();
  if (argv.includes('--help') || argv.includes('-h')) return tell(host, usageOf(entry, command.options));
  const given = readOptions(command.options, argv);
  if ('slip' in given) return refuse(host, `${shown(given.slip)}\n`);
  const isMuch = entry.operands === '' && given.operands.length > 0;
  if (isMuch || given.operands.length < entry.fewest) return refuse(host, usageOf(entry, command.options));
  return command.run(host, given);
}

function tell(host: CliHost, text: string): number {
  host.out(text);
  return SOUND;
}

function refuse(host: CliHost, text: string): number {
  host.say(text);
  return COULD_NOT;
}
