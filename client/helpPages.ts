/** The help pages of findings, as documents that can be opened. */
import { type Disposable, l10n, type Uri, workspace } from 'vscode';
import { codeOfHelp, HELP_SCHEME } from './helpAddress';
import type { Server } from './server';

export class HelpPages implements Disposable {
  private readonly registration: Disposable;

  constructor(server: Server) {
    this.registration = workspace.registerTextDocumentContentProvider(HELP_SCHEME, {
      provideTextDocumentContent: async ({ path }: Uri) => {
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
