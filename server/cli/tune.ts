/** `bentside tune`: how to tune for a score, or by a temperament, from the fork on. */
import { temperaments } from '../../grammar/vocabulary/temperaments';
import { tunersSheet } from '../pages/tunersSheet';
import { isUnknownTuning, pitchOf, statedTuningOf, tuningByWords, tuningOf } from '../readings/tunings';
import type { Environment } from '../score/environment';
import { sheetOf } from '../tuning/sheet';
import { exactPitch, pitchStandards, USUAL_PITCH } from '../tuning/standards';
import type { Tuning } from '../tuning/tuning';
import { noFiles } from '../workspace/host';
import { projectOf, unreadIn } from '../workspace/project';
import { type CliHost, COULD_NOT, type Command, SOUND } from './command';
import { type Input, inputOptions, inputsOf, isUnread } from './inputs';
import type { Given } from './options';
import { findingLine, shown } from './print';
import { noTemperament } from './temperaments';
import { sheetText } from './tuneText';

export const tune: Command = {
  options: {
    temperament: { value: 'TUNING', says: 'what stands after tuning: vallotti, or "meantone 1/4 wolf g#-eb"' },
    from: { value: 'TUNING', says: 'what the instrument has now: only what moves is told besides' },
    pitch: {
      value: 'HZ',
      says: `the a above middle C in hertz, or ${pitchStandards.map(({ name }) => name).join(', ')} (as a rule: that of the score, or 415)`,
    },
    reading: { value: 'NAME', says: 'a reading of the score (as a rule: the tuning of the file)' },
    json: { says: 'JSON instead of text' },
    html: { not: ['json'], says: 'a sheet to print (HTML) instead of text' },
    ...inputOptions,
  },
  async run(host, given) {
    const { operands, values } = given;
    if (operands.length === 0 && !values.has('temperament')) return listTemperaments(host);
    const wanted = await wantedTunings(host, given);
    if (typeof wanted === 'string') {
      host.say(`${wanted}\n`);
      return COULD_NOT;
    }
    const sheet = sheetOf(wanted.tuning, wanted.before);
    if (given.flags.has('json')) host.out(`${JSON.stringify(sheet, undefined, 2)}\n`);
    else host.out(given.flags.has('html') ? tunersSheet(sheet) : sheetText(sheet));
    return SOUND;
  },
};

function listTemperaments(host: CliHost): number {
  const width = Math.max(...temperaments.map(({ name }) => name.length));
  for (const { name, title } of temperaments) host.out(`${name.padEnd(width)}  ${title}\n`);
  host.out(
    `${'meantone 1/4'.padEnd(width)}  any part of a comma, its wolf where it is put: meantone 1/6 pc wolf c#-ab\n\n` +
      'bentside tune --temperament NAME shows how to lay one; bentside tune FILE that of a score.\n',
  );
  return SOUND;
}

interface Wanted {
  readonly tuning: Tuning;
  readonly before: Tuning | undefined;
}

/** What is to be tuned, and from what; or a sentence that says why not. */
async function wantedTunings(host: CliHost, given: Given): Promise<Wanted | string> {
  const { values } = given;
  const pitch = pitchWanted(values.get('pitch'));
  if (typeof pitch === 'string') return pitch;
  const inputs = await inputsOf(host, given);
  const unread = inputs.find(isUnread);
  if (unread !== undefined) return `${shown(unread.file)}: ${unread.failure}`;
  if (inputs.length > 2) return 'One score, or two: from the first to the second.';
  const scores = (inputs as readonly Input[]).map((input) => tuned(host, input, values.get('reading'), pitch));
  const slip = scores.find((one) => typeof one === 'string');
  if (slip !== undefined) return slip;
  const [first, second] = scores as readonly Tuned[];
  const environment = (second ?? first)?.environment ?? nothingDeclared();
  const own = second?.tuning ?? first?.tuning;
  const tuning = byWords(environment, values.get('temperament'), pitch ?? own?.pitch ?? pitchOf(environment)) ?? own;
  if (typeof tuning === 'string' || tuning === undefined) return tuning ?? '';
  const before = byWords(environment, values.get('from'), tuning.pitch) ?? (second && first?.tuning);
  return typeof before === 'string' ? before : { tuning, before };
}

const nothingDeclared = (): Environment => projectOf(noFiles, 'none.bent', 'bentside 1\n').environment;

interface Tuned {
  readonly environment: Environment;
  readonly tuning: Tuning;
}

function tuned(host: CliHost, { file, text }: Input, reading = 'written', pitch: number | undefined): Tuned | string {
  const project = projectOf(host.includes(file), file, text);
  const unread = unreadIn(project);
  if (unread !== undefined) return findingLine(unread).trimEnd();
  const { environment, analysis } = project;
  if (!analysis.choices.includes(reading))
    return `${shown(file)}: there is no reading “${shown(reading)}”, but ${analysis.choices.join(', ')}.`;
  if (isUnknownTuning(environment, reading))
    return `${shown(file)}: its tuning is none that is known; bentside proof tells more.`;
  const assumed = [
    ...(statedTuningOf(environment, reading) === undefined ? ['equal temperament'] : []),
    ...((pitch ?? environment.pitch) === undefined ? [`a4 = ${USUAL_PITCH}`] : []),
  ];
  if (assumed.length > 0) host.say(`${shown(file)}: not stated, and so assumed: ${assumed.join(', ')}\n`);
  return { environment, tuning: tuningOf(environment, reading, pitch ?? pitchOf(environment)) };
}

/** Of what was typed, or a sentence that says what is wrong with it. */
function byWords(environment: Environment, words: string | undefined, pitch: number): Tuning | string | undefined {
  if (words === undefined) return undefined;
  return tuningByWords(environment, words, pitch) ?? noTemperament(words, environment);
}

const LOWEST = 300;
const HIGHEST = 600;

function pitchWanted(typed: string | undefined): number | string | undefined {
  if (typed === undefined) return undefined;
  const standard = pitchStandards.find(({ name }) => name === typed.toLowerCase());
  if (standard !== undefined) return exactPitch(standard);
  const hertz = /^\d+(\.\d+)?$/.test(typed) ? Number(typed) : Number.NaN;
  if (hertz >= LOWEST && hertz <= HIGHEST) return hertz;
  const names = pitchStandards.map(({ name }) => name).join(', ');
  return `--pitch is the a above middle C in hertz, ${LOWEST} to ${HIGHEST}, or one of ${names}, not “${shown(typed)}”.`;
}
