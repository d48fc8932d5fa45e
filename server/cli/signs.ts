/** `bentside signs`: what treatises say of signs, and where signs stand in scores. */
import { signUseIn } from '../document/signUse';
import { howMany } from '../score/amounts';
import { contextWords } from '../signs/contexts';
import { builtInTables, signTableByName, signTables } from '../signs/tables';
import { certainties, citedBeside, rulesOf, type SignRow, type SignTable } from '../signs/tables/table';
import { type SignUse, together, type Use, type Uses } from '../signs/use';
import { projectOf } from '../workspace/project';
import { type CliHost, COULD_NOT, type Command, FAULTY, SOUND } from './command';
import { isFaulty } from './faulty';
import { inputOptions, inputsOf, isUnread } from './inputs';
import type { Given } from './options';
import { shown } from './print';

export const signs: Command = {
  options: {
    table: { value: 'TABLE', among: builtInTables, says: 'the rows of this table' },
    use: { not: ['table'], says: 'count the signs of the files, and in which contexts they stand, beside all notes' },
    json: { says: 'JSON instead of text' },
    ...inputOptions,
  },
  run(host, given) {
    const { flags, values, operands } = given;
    if (flags.has('use')) return tellUse(host, given);
    if (operands.length > 0) {
      host.say('Files are looked at with --use: bentside signs --use FILES…\n');
      return COULD_NOT;
    }
    const table = signTableByName(values.get('table') ?? '');
    if (flags.has('json'))
      host.out(`${JSON.stringify(tableJson(table === undefined ? signTables : [table]), undefined, 2)}\n`);
    else host.out(table === undefined ? tableList() : tableText(table));
    return SOUND;
  },
};

// ─── tables ──────────────────────────────────────────────────────────────────────────────────────────────────────

function tableList(): string {
  const width = Math.max(...builtInTables.map((name) => name.length));
  const rows = signTables.map(
    ({ table, title, rows: own, from }) =>
      `${table.padEnd(width)}  ${title}: ${howMany(own.length, 'row', 'rows')}${from === undefined ? '' : `, and those of ${from}`}\n`,
  );
  return `${rows.join('')}\nbentside signs --table TABLE shows the rows of one.\n`;
}

function tableText(whole: SignTable): string {
  const { table, title, from, rows, missing } = whole;
  const rules = rulesOf(whole).map(({ says, citation }) => `${says}  (${citation})`);
  const width = Math.max(0, ...rows.map((row) => marks(row).length));
  return [
    `${table}: ${title}`,
    ...(from === undefined ? [] : [`Takes over the rows of ${from}.`]),
    '',
    ...rows.flatMap((row, index) => rowLines(row, index + 1, width)),
    ...(rules.length === 0 ? [] : ['', ...rules]),
    ...(missing === undefined ? [] : ['', missing]),
    '',
  ].join('\n');
}

const marks = ({ shapes }: SignRow): string => shapes.map((shape) => `'${shape}`).join('');

/** One line a row; other readings and notes stand further in, beneath it. */
function rowLines(row: SignRow, number: number, width: number): string[] {
  const { label, when = [], recipe, played, citation, note, rivals = [] } = row;
  const where = when.length === 0 ? '' : `, when ${when.join(' and ')}`;
  const indent = ' '.repeat(width + 6);
  return [
    `${`${number}`.padStart(3)}  ${marks(row).padEnd(width)} ${label}${where} : ${recipe}  (${certainties[played]}; ${citedBeside(played, citation)})`,
    ...(note === undefined ? [] : [`${indent}${note}`]),
    ...rivals.map(({ name, recipe: other, advocates }) => `${indent}or (${name}) : ${other}  (${advocates})`),
  ];
}

const tableJson = (tables: readonly SignTable[]): object => ({ schema: 'bentside.signs/1', tables });

// ─── scores ──────────────────────────────────────────────────────────────────────────────────────────────────────

async function tellUse(host: CliHost, given: Given): Promise<number> {
  const inputs = await inputsOf(host, given);
  let isSound = true;
  const counts = inputs.flatMap((input) => {
    if (isUnread(input)) {
      host.say(`${shown(input.file)}: ${input.failure}\n`);
      return [];
    }
    const project = projectOf(host.includes(input.file), input.file, input.text, { counsel: false });
    if (isFaulty(host, project)) isSound = false;
    return [{ file: input.file, ...signUseIn(project.analysis) }];
  });
  if (inputs.length === 0) host.say('Say in which files: bentside signs --use FILES…\n');
  const whole = { schema: 'bentside.sign-use/1', files: counts, together: together(counts) };
  if (given.flags.has('json')) host.out(`${JSON.stringify(whole, undefined, 2)}\n`);
  else if (counts.length > 0) host.out(useText(whole.together));
  if (counts.length < inputs.length || inputs.length === 0) return COULD_NOT;
  return isSound ? SOUND : FAULTY;
}

const useText = ({ signs: uses, notes }: Uses): string =>
  uses.length === 0 ? 'No sign stands there.\n' : uses.map((use) => useLines(use, notes)).join('\n');

/** "'zz: 214 times, 190 on dotted notes", then every context, the most telling first, and the voices. */
function useLines({ sign, times, where, voices }: SignUse, notes: Use): string {
  const rows = Object.entries(where)
    .map(([context, count]) => ({
      words: contextWords[context] ?? context,
      count,
      share: share(count, times),
      usual: share(notes.where[context] ?? 0, notes.times),
    }))
    .sort((a, b) => b.share - b.usual - (a.share - a.usual) || b.count - a.count);
  const name = sign
    .split('+')
    .map((shape) => `'${shape}`)
    .join('');
  const [most] = rows;
  const telling = most === undefined || most.share <= most.usual ? '' : `, ${most.count} ${most.words}`;
  const digits = `${times}`.length;
  const lines = rows.map(
    ({ words, count, share: part, usual }) =>
      `  ${`${count}`.padStart(digits)} ${words.padEnd(WIDTH)} ${percent(part)}, of all notes ${percent(usual)}`,
  );
  const sung = Object.entries(voices)
    .sort(([, a], [, b]) => b - a)
    .map(([voice, count]) => `${shown(voice)} ${count}`);
  return [`${name}: ${howMany(times, 'time', 'times')}${telling}`, ...lines, `  by voice: ${sung.join(', ')}`, ''].join(
    '\n',
  );
}

const share = (part: number, whole: number): number => (whole === 0 ? 0 : part / whole);

const percent = (part: number): string => `${`${Math.round(part * 100)}`.padStart(3)} %`;

/** The longest of the contexts in words. */
const WIDTH = Math.max(...Object.values(contextWords).map((words) => words.length));
