/** `bentside align`: scores laid out so that what sounds together stands together. */
import { howMany } from '../score/amounts';
import { aligned } from '../workspace/aligned';
import { type CliHost, COULD_NOT, type Command, FAULTY, SOUND } from './command';
import { type Input, inputOptions, inputsOf, isUnread } from './inputs';
import { findingLine, shown } from './print';

type Outcome = 'unchanged' | 'aligned' | 'refused';

export const align: Command = {
  options: { dry: { says: 'write nothing, name the files that would change' }, ...inputOptions },
  async run(host, given) {
    const dry = given.flags.has('dry');
    const inputs = await inputsOf(host, given);
    const outcomes = inputs.map((input): Outcome => {
      if (!isUnread(input)) return alignOne(host, input, dry);
      host.say(`${shown(input.file)}: ${input.failure}\n`);
      return 'refused';
    });
    const changed = outcomes.filter((outcome) => outcome === 'aligned').length;
    host.say(`${howMany(changed, 'file', 'files')} of ${inputs.length} ${dry ? 'would change' : 'changed'}\n`);
    if (inputs.every(isUnread)) return COULD_NOT;
    return outcomes.includes('refused') || (dry && changed > 0) ? FAULTY : SOUND;
  },
};

function alignOne(host: CliHost, input: Input, dry: boolean): Outcome {
  const { text, findings } = aligned(input.file, input.text);
  host.say(findings.map(findingLine).join(''));
  const changed = text !== input.text;
  if (input.standard) {
    if (!dry) host.out(text);
  } else if (changed && dry) {
    host.out(`${shown(input.file)}\n`);
  } else if (changed) {
    const trouble = host.write(input.file, text);
    host.say(`${shown(input.file)}: ${trouble?.failure ?? 'aligned'}\n`);
    if (trouble !== undefined) return 'refused';
  }
  return findings.length > 0 ? 'refused' : changed ? 'aligned' : 'unchanged';
}
