/** A file with all that it includes. */
import type { Finding } from '../../grammar/findings/finding';
import type { FileTree } from '../../grammar/tree';
import { lookUp, statements } from '../../grammar/vocabulary/statements';
import type { NamedTree } from '../document/absolute';
import type { Analysis, AnalysisOptions } from '../document/analysis';
import type { Environment } from '../score/environment';
import type { Host } from './host';
import { Workspace } from './workspace';

export interface Project {
  readonly file: string;
  readonly tree: FileTree;
  /** Each once, after the files that it includes itself. */
  readonly included: readonly NamedTree[];
  readonly environment: Environment;
  readonly analysis: Analysis;
}

/** Opens a file of the host with its includes; undefined if the host has no such file. */
export function openProject(host: Host, file: string, options: AnalysisOptions = {}): Project | undefined {
  const raw = host.read(file);
  return raw === undefined ? undefined : projectOf(host, file, raw, options);
}

/** The same of a text that is no file of the host, or newer than it. Scores are built when they are asked for. */
export const projectOf = (host: Host, file: string, raw: string, options: AnalysisOptions = {}): Project =>
  new Workspace(host).read(file, raw, options);

/** That a file is no text that can be read: it declares nothing then, whatever it seems to. A few bad bytes leave it a text. */
export function unreadIn({ analysis, environment }: Project): Finding | undefined {
  const isRead = environment.statements.some(({ statement }) => lookUp(statements, statement.keyword) !== undefined);
  return isRead ? undefined : analysis.findings().find(({ code }) => code === 'not-utf8');
}
