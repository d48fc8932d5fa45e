/** The language server as a web worker. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { noDisk } from './session/files';
import { startServer } from './session/server';

/** The worker itself; the project's types know no browser. */
declare const self: ConstructorParameters<typeof BrowserMessageReader>[0];

const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self));
startServer(connection, {
  turns: { now: () => performance.now(), pause: () => new Promise((resolve) => void setTimeout(resolve, 0)) },
  later: (milliseconds, work) => {
    const timer = setTimeout(work, milliseconds);
    return () => clearTimeout(timer);
  },
  disk: noDisk,
});
connection.listen();
