/** Findings on their way to the client: asked for where it can ask, sent otherwise. */
import type { Connection, Diagnostic, DocumentDiagnosticReport } from 'vscode-languageserver';
import type { Finding } from '../../grammar/findings/finding';
import { areSame } from '../../grammar/keeping';
import type { Turns } from '../document/turns';
import { diagnosticsOf } from '../features/diagnostics';
import type { Because, Current, Documents } from './documents';
import { moved } from './mark';

/** Milliseconds of quiet in a file before its findings are sent. */
const QUIET = 150;

/** Runs work after some time; what it gives calls it off. */
export type Later = (milliseconds: number, work: () => void) => () => void;

export interface Diagnostics {
  /** The findings of a file may be others: it has another text, or what it includes and its settings say something else. */
  changed(uri: string, because: Because): void;
  closed(uri: string): void;
}

const shown = ({ project, before }: Current, helpAddress: string | undefined): Diagnostic[] =>
  moved(diagnosticsOf(project, helpAddress), before);

/** Sends the findings of each file after a pause in it. A result that is no longer true when it is ready is dropped. */
export class PushedDiagnostics implements Diagnostics {
  /** By file what calls off its waiting. */
  private readonly waiting = new Map<string, () => void>();

  constructor(
    private readonly connection: Connection,
    private readonly documents: Documents,
    private readonly turns: Turns,
    private readonly later: Later,
    private readonly helpAddress: string | undefined,
  ) {}

  changed(uri: string): void {
    this.waiting.get(uri)?.();
    this.waiting.set(
      uri,
      this.later(QUIET, () => {
        this.waiting.delete(uri);
        void this.send(uri);
      }),
    );
  }

  closed(uri: string): void {
    this.waiting.get(uri)?.();
    this.waiting.delete(uri);
    void this.connection.sendDiagnostics({ uri, diagnostics: [] });
  }

  /** Only the last text counts: once when its findings are made, and again after whoever waits has had a turn. */
  private async send(uri: string): Promise<void> {
    const revision = this.documents.revision(uri);
    const isStale = (): boolean => revision !== this.documents.revision(uri);
    const current = await this.documents.proofed(uri);
    if (current === undefined || isStale()) return;
    const diagnostics = shown(current, this.helpAddress);
    await this.turns.pause();
    if (isStale()) return;
    await this.connection.sendDiagnostics({ uri, version: current.version, diagnostics });
  }
}

/** Answers the client's questions; where nothing has changed since its last one it is told so. */
export class PulledDiagnostics implements Diagnostics {
  private readonly last = new Map<string, { readonly findings: readonly Finding[]; readonly id: string }>();
  private answers = 0;

  constructor(
    private readonly documents: Documents,
    private readonly helpAddress: string | undefined,
    /** Asks the client to ask again. */
    private readonly refresh: () => void,
  ) {}

  /** After a change that it makes itself the client asks again anyway. */
  changed(_uri: string, because: Because): void {
    if (because === 'elsewhere') this.refresh();
  }

  closed(uri: string): void {
    this.last.delete(uri);
  }

  async report(uri: string, previous: string | undefined): Promise<DocumentDiagnosticReport> {
    const current = await this.documents.proofed(uri);
    if (current === undefined) return { kind: 'full', items: [] };
    const findings = current.project.analysis.findings();
    const last = this.last.get(uri);
    if (last !== undefined && last.id === previous && areSame(last.findings, findings)) {
      return { kind: 'unchanged', resultId: last.id };
    }
    const id = `${++this.answers}`;
    this.last.set(uri, { findings, id });
    return { kind: 'full', resultId: id, items: shown(current, this.helpAddress) };
  }
}
