/** `bentside proof`: what is to be found fault with. */
import type { Finding, Level } from '../../grammar/findings/finding';
import { type Proof, proofOf } from '../document/decided';
import { atLeast, LEVELS } from '../document/levels';
import { sarifLog } from '../document/sarif';
import { howMany } from '../score/amounts';
import { projectOf } from '../workspace/project';
import { type CliHost, COULD_NOT, type Command, FAULTY, SOUND } from './command';
import { type Input, inputOptions, inputsOf, isUnread, type Unread } from './inputs';
import { decisionLine, findingLine, shown, tally } from './print';

/** What was found in one file, with what was decided in it if that is asked for, or why it could not be looked at. */
type Proofed = ({ readonly file: string } & Proof) | Unread;

export const proof: Command = {
  options: {
    json: { says: 'a line of JSON for each file instead of text' },
    sarif: { not: ['json'], says: 'one SARIF 2.1.0 log instead of text' },
    level: { value: 'LEVEL', among: LEVELS, says: 'show findings of this level and graver ones only' },
    decisions: {
      says: 'list also what each reading decides at its signs, and what its practices of rhythm leave to taste',
    },
    'no-counsel': { says: 'judge the text only, not the music: no voice leading, no accidentals that may be missing' },
    ...inputOptions,
  },
  async run(host, given) {
    if (given.flags.has('json') && given.flags.has('sarif')) {
      host.say('Take --json or --sarif, not both.\n');
      return COULD_NOT;
    }
    const least = LEVELS.find((level) => level === given.values.get('level')) ?? 'hint';
    const proofed: Proofed[] = [];
    const form = formOf(given.flags);
    const counsel = !given.flags.has('no-counsel');
    const decisions = given.flags.has('decisions');
    for (const input of await inputsOf(host, given)) {
      const one = isUnread(input) ? input : proofOne(host, input, { counsel, decisions });
      proofed.push(one);
      if ('failure' in one) host.say(`${shown(one.file)}: ${one.failure}\n`);
      host.out(form.each(only(one, least)));
    }
    host.out(form.whole(proofed.map((one) => only(one, least))));
    host.say(form.summary(proofed));
    return exitCode(proofed);
  },
};

interface Wished {
  readonly counsel: boolean;
  readonly decisions: boolean;
}

function proofOne(host: CliHost, { file, text }: Input, { counsel, decisions }: Wished): Proofed {
  const { analysis } = projectOf(host.includes(file), file, text, { counsel });
  return { file, ...proofOf(analysis, decisions) };
}

const only = (one: Proofed, least: Level): Proofed =>
  'failure' in one ? one : { ...one, findings: one.findings.filter(({ level }) => atLeast(level, least)) };

function exitCode(proofed: readonly Proofed[]): number {
  if (proofed.some((one) => 'failure' in one)) return COULD_NOT;
  return findingsOf(proofed).some(({ level }) => level === 'error') ? FAULTY : SOUND;
}

const findingsOf = (proofed: readonly Proofed[]): readonly Finding[] =>
  proofed.flatMap((one) => ('failure' in one ? [] : one.findings));

/** How findings are printed: file by file, or all at the end. */
interface Form {
  each(one: Proofed): string;
  whole(all: readonly Proofed[]): string;
  summary(all: readonly Proofed[]): string;
}

const none = (): string => '';

const lines: Form = {
  each: (one) =>
    'failure' in one
      ? ''
      : [...one.findings.map(findingLine), ...(one.decisions ?? []).map(decisionLine(one.file))].join(''),
  whole: none,
  summary: (all) => {
    const read = all.filter((one) => !('failure' in one));
    return read.length === 0 ? '' : `${howMany(read.length, 'file', 'files')}: ${tally(findingsOf(all))}\n`;
  },
};

const json: Form = { each: (one) => `${JSON.stringify(proofJson(one))}\n`, whole: none, summary: none };

const sarif: Form = {
  each: none,
  whole: (all) => `${JSON.stringify(sarifLog(all), undefined, 2)}\n`,
  summary: none,
};

const formOf = (flags: ReadonlySet<string>): Form => (flags.has('sarif') ? sarif : flags.has('json') ? json : lines);

/** Findings as data; lines and columns from 1, columns and offsets in UTF-16 units. */
const proofJson = (one: Proofed): object =>
  'failure' in one
    ? { schema: 'bentside.proof/1', file: one.file, failure: one.failure, findings: [] }
    : { schema: 'bentside.proof/1', ...one };
