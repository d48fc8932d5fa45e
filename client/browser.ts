/** The extension in a browser: the language server is a web worker. */
import { type ExtensionContext, Uri } from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser';
import { start } from './extension';

type Port = ConstructorParameters<typeof BrowserMessageReader>[0] & { terminate(): void };

/** Of the browser; the project's types know none. */
declare const Worker: new (address: string) => Port;

/** What a worker says. */
class WorkerReader extends BrowserMessageReader {
  constructor(private readonly worker: Port) {
    super(worker);
  }

  /** A worker does not tell that it has died: somebody else must. */
  end(): void {
    this.worker.terminate();
    this.fireClose();
  }
}

export const activate = (context: ExtensionContext): Promise<void> =>
  start(context, {
    runsPrograms: false,
    makeClient: (id, name, options) => {
      const address = Uri.joinPath(context.extensionUri, 'dist', 'server.web.js').toString(true);
      let reader: WorkerReader | undefined;
      // A worker for each start, so that a server that has ended can be started again.
      const connect = async () => {
        const worker = new Worker(address);
        reader = new WorkerReader(worker);
        return { reader, writer: new BrowserMessageWriter(worker) };
      };
      return { client: new LanguageClient(id, name, connect, options), cut: () => reader?.end() };
    },
  });
