/** The tokens last sent of each file, so that only what has changed is sent again. */
import type { SemanticTokens, SemanticTokensDelta } from 'vscode-languageserver';
import { semanticTokens, tokenEdits } from '../features/semanticTokens';
import type { Project } from '../workspace/project';
import type { Documents } from './documents';

export class TokensOfFiles {
  private readonly last = new Map<string, { readonly id: string; readonly data: readonly number[] }>();
  private answers = 0;

  constructor(private readonly documents: Documents) {}

  full({ file, tree }: Project): SemanticTokens {
    const data = semanticTokens(tree);
    return { resultId: this.keep(file, data), data };
  }

  /** Whole if the client's last answer is not the one known. */
  delta(project: Project, previous: string): SemanticTokens | SemanticTokensDelta {
    const before = this.last.get(project.file);
    if (before?.id !== previous) return this.full(project);
    const data = semanticTokens(project.tree);
    return { resultId: this.keep(project.file, data), edits: tokenEdits(before.data, data) };
  }

  private keep(file: string, data: readonly number[]): string {
    const open = new Set(this.documents.uris);
    for (const uri of this.last.keys()) if (!open.has(uri)) this.last.delete(uri);
    const id = `${++this.answers}`;
    this.last.set(file, { id, data });
    return id;
  }
}
