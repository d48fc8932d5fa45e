/** The help pages of findings, and signs under other tables, as documents that can be opened. */
import { type Disposable, l10n, type Uri, workspace } from 'vscode';
import { codeOfHelp, HELP_SCHEME, type SignPlace, signOfTables } from './helpAddress';
import type { Server } from './server';

export class HelpPages implements Disposable {
  private readonly registration: Disposable;

  constructor(server: Server) {
    this.registration = workspace.registerTextDocumentContentProvider(HELP_SCHEME, {
      provideTextDocumentContent: async ({ path, query }: Uri) => {
        const place = signOfTables(query);
        if (place !== undefined) return tablesPage(server, place);
        const code = codeOfHelp(path);
        const page = await server.ask('bentside/help', { code });
        return page ?? l10n.t('There is no help page for “{0}”, or the language server does not answer.', code);
      },
    });
  }

  dispose(): void {
    this.registration.dispose();
  }
}

async function tablesPage(server: Server, { uri, line, character }: SignPlace): Promise<string> {
  const params = { textDocument: { uri }, position: { line, character } };
  return (await server.ask('bentside/otherTables', params)) ?? l10n.t('No reading of the score plays a sign there.');
}
