/** `bentside demo`: a sample score proofed and exported, so that a newcomer sees what comes of it. */
import { foundWhenPlayed } from '../document/decided';
import { formats } from '../export/formats';
import { projectOf } from '../workspace/project';
import { COULD_NOT, type Command, FAULTY, SOUND } from './command';
import { Batch } from './export';
import { findingLine, tally } from './print';

/** The sample that shows most, if it is there. */
const SHOWPIECE = '/overture.bent';

export const demo: Command = {
  options: {},
  run(host) {
    const samples = host.samples();
    const file = samples.find((sample) => sample.endsWith(SHOWPIECE)) ?? samples[0];
    const reading = file === undefined ? { failure: 'no sample score is installed' } : host.read(file);
    const [format] = formats;
    if (file === undefined || format === undefined || 'failure' in reading) {
      host.say(`${file ?? 'bentside demo'}: ${'failure' in reading ? reading.failure : 'no format'}\n`);
      return COULD_NOT;
    }
    const { analysis } = projectOf(host.includes(file), file, reading.text);
    const findings = analysis.findings(foundWhenPlayed(analysis));
    host.out(`The score: ${file}\n`);
    host.out(`Title: ${analysis.environment.title ?? 'none'}\n`);
    host.out(`It can be read as: ${analysis.choices.join(', ')}\n`);
    host.out(`Proofed: ${tally(findings)}\n${findings.map(findingLine).join('')}`);
    host.out(`Exported as ${format.title}, as written; any program that opens MusicXML can show and play it:\n`);
    const wish = { format, reading: undefined, options: { clefs: 'source', leaveGaps: false } } as const;
    const input = { file, text: reading.text, standard: false };
    return new Batch(host, wish, 'out', [input]).export(input, false) ? SOUND : FAULTY;
  },
};
