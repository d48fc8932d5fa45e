/** Findings on their way to the client: asked for where it can ask, sent otherwise. */
import type { Connection, Diagnostic, DocumentDiagnosticReport } from 'vscode-languageserver';
import type { Finding } from '../../grammar/findings/finding';
import { areSame } from '../../grammar/keeping';
import type { Turns } from '../document/turns';
import { diagnosticsOf } from '../features/diagnostics';
import type { Because, Current, Documents } from './documents';
import { moved } from './mark';
import { type Later, Waiting } from './waiting';
import type { FindingsWhenPlayed } from './whenPlayed';

/** Milliseconds of quiet in a file before its findings are sent. */
const QUIET = 150;

export interface Diagnostics {
  /** The findings of a file may be others: it has another text, or what it includes and its settings say something else. */
  changed(uri: string, because: Because): void;
  /** More is known of a file that has not changed. */
  more(uri: string): void;
  closed(uri: string): void;
}

const shown = (findings: readonly Finding[], { before }: Current, helpAddress: string | undefined): Diagnostic[] =>
  moved(diagnosticsOf(findings, helpAddress), before);

const allOf = (current: Current, whenPlayed: FindingsWhenPlayed): readonly Finding[] =>
  current.project.analysis.findings(whenPlayed.of(current));

/** Sends the findings of each file after a pause in it. A result that is no longer true when it is ready is dropped. */
export class PushedDiagnostics implements Diagnostics {
  private readonly waiting: Waiting;

  constructor(
    private readonly connection: Connection,
    private readonly documents: Documents,
    private readonly whenPlayed: FindingsWhenPlayed,
    private readonly turns: Turns,
    later: Later,
    private readonly helpAddress: string | undefined,
  ) {
    this.waiting = new Waiting(later, QUIET);
  }

  changed(uri: string): void {
    this.waiting.start(uri, () => void this.send(uri));
  }

  more(uri: string): void {
    void this.send(uri);
  }

  closed(uri: string): void {
    this.waiting.stop(uri);
    void this.connection.sendDiagnostics({ uri, diagnostics: [] });
  }

  /** Only the last text counts: once when its findings are made, and again after whoever waits has had a turn. */
  private async send(uri: string): Promise<void> {
    const revision = this.documents.revision(uri);
    const isStale = (): boolean => revision !== this.documents.revision(uri);
    const current = await this.documents.proofed(uri);
    if (current === undefined || isStale()) return;
    const diagnostics = shown(allOf(current, this.whenPlayed), current, this.helpAddress);
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
    private readonly whenPlayed: FindingsWhenPlayed,
    private readonly helpAddress: string | undefined,
    /** Asks the client to ask again. */
    private readonly refresh: () => void,
  ) {}

  /** After a change that it makes itself the client asks again anyway. */
  changed(_uri: string, because: Because): void {
    if (because === 'elsewhere') this.refresh();
  }

  more(): void {
    this.refresh();
  }

  closed(uri: string): void {
    this.last.delete(uri);
  }

  async report(uri: string, previous: string | undefined): Promise<DocumentDiagnosticReport> {
    const current = await this.documents.proofed(uri);
    if (current === undefined) return { kind: 'full', items: [] };
    const findings = allOf(current, this.whenPlayed);
    const last = this.last.get(uri);
    if (last !== undefined && last.id === previous && areSame(last.findings, findings)) {
      return { kind: 'unchanged', resultId: last.id };
    }
    const id = `${++this.answers}`;
    this.last.set(uri, { findings, id });
    return { kind: 'full', resultId: id, items: shown(findings, current, this.helpAddress) };
  }
}
