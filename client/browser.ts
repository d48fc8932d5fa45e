/** The extension in a browser: the language server is a web worker. */
import { type ExtensionContext, Uri } from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser';
import { start } from './extension';

type Port = ConstructorParameters<typeof BrowserMessageReader>[0];

/** Of the browser; the project's types know none. */
declare const Worker: new (address: string) => Port;

export const activate = (context: ExtensionContext): Promise<void> =>
  start(context, {
    runsPrograms: false,
    makeClient: (id, name, options) => {
      const address = Uri.joinPath(context.extensionUri, 'dist', 'server.web.js').toString(true);
      // A worker for each start, so that a server that has ended can be started again.
      const connect = async () => {
        const worker = new Worker(address);
        return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
      };
      return new LanguageClient(id, name, connect, options);
    },
  });
