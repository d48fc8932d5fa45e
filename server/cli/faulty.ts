/** Scores that are put to use though they have errors: whoever reads what comes of it is told. */
import { howMany } from '../score/amounts';
import type { Project } from '../workspace/project';
import type { CliHost } from './command';
import { shown } from './print';

/** Says so of a score that has errors. */
export function isFaulty(host: CliHost, { file, analysis }: Project): boolean {
  const count = analysis.findings().filter(({ level }) => level === 'error').length;
  if (count === 0) return false;
  const errors = howMany(count, 'error', 'errors');
  host.say(`${shown(file)}: it has ${errors}, so something may be wrong or missing here; bentside proof tells more\n`);
  return true;
}
