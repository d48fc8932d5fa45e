/** The help pages of findings, and signs under other tables, as documents that can be opened. */
import { type Disposable, EventEmitter, l10n, type Uri, workspace } from 'vscode';
import { codeOfHelp, HELP_SCHEME, type SignPlace, signOfTables } from './helpAddress';
import type { Server } from './server';

export class HelpPages implements Disposable {
  private readonly registration: Disposable;
  private readonly restarts: Disposable;
  private readonly changed = new EventEmitter<Uri>();

  constructor(server: Server) {
    this.restarts = server.onDidStart(() => this.renew());
    this.registration = workspace.registerTextDocumentContentProvider(HELP_SCHEME, {
      onDidChange: this.changed.event,
      provideTextDocumentContent: async ({ path, query }: Uri) => {
        const place = signOfTables(query);
        if (place !== undefined) return tablesPage(server, place);
        const code = codeOfHelp(path);
        const page = await server.ask('bentside/help', { code });
        return page ?? l10n.t('There is no help page for “{0}”, or the language server does not answer.', code);
      },
    });
  }

  /** A page that was opened before the server had started is asked for again. */
  private renew(): void {
    for (const { uri } of workspace.textDocuments) if (uri.scheme === HELP_SCHEME) this.changed.fire(uri);
  }

  dispose(): void {
    this.registration.dispose();
    this.restarts.dispose();
    this.changed.dispose();
  }
}

async function tablesPage(server: Server, { uri, line, character }: SignPlace): Promise<string> {
  const params = { textDocument: { uri }, position: { line, character } };
  return (await server.ask('bentside/otherTables', params)) ?? l10n.t('No reading of the score plays a sign there.');
}
