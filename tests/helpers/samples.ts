/** The samples with what they include, as the command line opens them. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { nodeHost } from '../../server/cli/host';
import type { Analysis } from '../../server/document/analysis';
import { type Project, projectOf } from '../../server/workspace/project';

const FOLDER = join(import.meta.dirname, '../../samples');

export const sampleNames = readdirSync(FOLDER).filter((name) => name.endsWith('.bent'));

export const sampleText = (name: string): string => readFileSync(join(FOLDER, name), 'utf8');

export const samplePath = (name: string): string => join(FOLDER, name);

/** A sample, or another text in its place. */
export function sampleProject(name: string, text = sampleText(name)): Project {
  const file = samplePath(name);
  return projectOf(nodeHost().includes(file), file, text);
}

export const sampleAnalysis = (name: string): Analysis => sampleProject(name).analysis;
