/** `bentside report`: the critical report of scores. */
import { outputPath, sharedFolder } from '../export/outputPath';
import { reportMarkdown, reportPage } from '../pages/report';
import { reportOf } from '../readings/report';
import type { Report } from '../readings/report/document';
import { type Project, projectOf } from '../workspace/project';
import { type CliHost, COULD_NOT, type Command, FAULTY, SOUND } from './command';
import { isFaulty } from './faulty';
import { type Input, inputOptions, inputsOf, isUnread } from './inputs';
import { shown } from './print';

const FORMS: Readonly<Record<string, { readonly write: (report: Report) => string; readonly extension: string }>> = {
  md: { write: reportMarkdown, extension: 'md' },
  html: { write: reportPage, extension: 'html' },
};

export const report: Command = {
  options: {
    as: { value: 'FORM', among: Object.keys(FORMS), says: 'md: Markdown; html: a page to print (as a rule: md)' },
    out: { value: 'DIR', says: 'put the reports into this folder' },
    ...inputOptions,
  },
  async run(host, given) {
    const form = FORMS[given.values.get('as') ?? 'md'];
    const inputs = await inputsOf(host, given);
    const folder = given.values.get('out');
    if (form === undefined) return COULD_NOT;
    const written = inputs.map((input) => {
      if (isUnread(input)) {
        host.say(`${shown(input.file)}: ${input.failure}\n`);
        return false;
      }
      const project = projectOf(host.includes(input.file), input.file, input.text, { counsel: false });
      const content = form.write(reportFor(project));
      const isSound = !isFaulty(host, project);
      if (folder === undefined && inputs.length === 1) {
        host.out(content);
        return isSound;
      }
      const target = { extension: form.extension, folder, inputs: inputs.map(({ file }) => file) };
      return writeReport(host, input, content, target) && isSound;
    });
    if (written.every(Boolean)) return SOUND;
    return inputs.every(isUnread) ? COULD_NOT : FAULTY;
  },
};

function reportFor({ analysis }: Project): Report {
  const main = analysis.score('written');
  if (main === undefined) throw new RangeError('every score can be read as written');
  return reportOf(main, (name) => analysis.score(name));
}

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
