/** The samples with what they include, as the command line opens them. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { nodeHost } from '../../server/cli/host';
import type { Analysis } from '../../server/document/analysis';
import { projectOf } from '../../server/workspace/project';

const FOLDER = join(import.meta.dirname, '../../samples');

export const sampleNames = readdirSync(FOLDER).filter((name) => name.endsWith('.bent'));

export const sampleText = (name: string): string => readFileSync(join(FOLDER, name), 'utf8');

export function sampleAnalysis(name: string): Analysis {
  const file = join(FOLDER, name);
  return projectOf(nodeHost().includes(file), file, sampleText(name)).analysis;
}
