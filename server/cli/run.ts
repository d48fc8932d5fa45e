/** The command line as a function: words in, exit code out. */
import { version } from '../../package.json';
import { align } from './align';
import { type CliHost, COULD_NOT, type Command, SOUND } from './command';
import { compare } from './compare';
import { demo } from './demo';
import { exportCommand } from './export';
import { help } from './help';
import { didYouMean, readOptions } from './options';
import { shown } from './print';
import { proof } from './proof';
import { report } from './report';
import { signs } from './signs';
import { tune } from './tune';
import { usage, usageOf } from './usage';

export const commands: readonly Command[] = [proof, exportCommand, align, compare, report, signs, tune, help, demo];

/** Runs what was typed after `bentside` and gives the exit code. */
export async function run(host: CliHost, argv: readonly string[]): Promise<number> {
  const [word, ...rest] = argv;
  if (word === undefined) return refuse(host, usage(commands));
  if (word === '--help' || word === '-h') return tell(host, usage(commands));
  if (word === '--version') return tell(host, `${version}\n`);
  const command = commands.find(({ name }) => name === word);
  if (command === undefined) {
    const names = commands.map(({ name }) => name);
    return refuse(host, `There is no command “${shown(word)}”, but ${names.join(', ')}.${didYouMean(word, names)}\n`);
  }
  return runCommand(host, command, rest);
}

function runCommand(host: CliHost, command: Command, argv: readonly string[]): number | Promise<number> {
  if (argv.includes('--help') || argv.includes('-h')) return tell(host, usageOf(command));
  const given = readOptions(command.options, argv);
  if ('slip' in given) return refuse(host, `${shown(given.slip)}\n`);
  if (given.operands.length < command.fewest) return refuse(host, usageOf(command));
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
