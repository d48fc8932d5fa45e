/** The extension on a computer: the language server is a process of Node. */
import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { start } from './extension';

export const activate = (context: ExtensionContext): Promise<void> =>
  start(context, {
    runsPrograms: true,
    makeClient: (id, name, options) => {
      const server = { module: context.asAbsolutePath('dist/server.js'), transport: TransportKind.ipc };
      return { client: new LanguageClient(id, name, { run: server, debug: server }, options) };
    },
  });
