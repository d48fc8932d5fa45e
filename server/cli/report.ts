/** `bentside report`: the critical report of scores. */
import { outputPath, sharedFolder } from '../export/outputPath';
import { type ReportForm, reportIn } from '../pages/files';
import { projectOf } from '../workspace/project';
import { type CliHost, COULD_NOT, type Command, FAULTY, SOUND } from './command';
import { isFaulty } from './faulty';
import { type Input, inputOptions, inputsOf, isUnread } from './inputs';
import { shown } from './print';

/** Each is the ending of its file, too. */
const FORMS: readonly ReportForm[] = ['md', 'html'];

export const report: Command = {
  options: {
    as: { value: 'FORM', among: FORMS, says: 'md: Markdown; html: a page to print (as a rule: md)' },
    out: { value: 'DIR', says: 'put the reports into this folder' },
    ...inputOptions,
  },
  async run(host, given) {
    const form = (given.values.get('as') ?? 'md') as ReportForm;
    const inputs = await inputsOf(host, given);
    const folder = given.values.get('out');
    const written = inputs.map((input) => {
      if (isUnread(input)) {
        host.say(`${shown(input.file)}: ${input.failure}\n`);
        return false;
      }
      const project = projectOf(host.includes(input.file), input.file, input.text, { counsel: false });
      const content = reportIn(project, form);
      const isSound = !isFaulty(host, project);
      if (folder === undefined && inputs.length === 1) {
        host.out(content);
        return isSound;
      }
      const target = { extension: form, folder, inputs: inputs.map(({ file }) => file) };
      return writeReport(host, input, content, target) && isSound;
    });
    if (written.every(Boolean)) return SOUND;
    return inputs.every(isUnread) ? COULD_NOT : FAULTY;
  },
};

interface Target {
  readonly extension: string;
  readonly folder: string | undefined;
  readonly inputs: readonly string[];
}

function writeReport(host: CliHost, { file }: Input, content: string, { extension, folder, inputs }: Target): boolean {
  const named = { reading: 'report', extension };
  const into =
    folder === undefined ? {} : { into: { folder, shared: sharedFolder(inputs.map((one) => host.absolute(one))) } };
  const path = outputPath({ input: folder === undefined ? file : host.absolute(file), ...named, ...into });
  const trouble = host.write(path, content);
  host.say(`${shown(path)}: ${trouble === undefined ? 'written' : trouble.failure}\n`);
  return trouble === undefined;
}
