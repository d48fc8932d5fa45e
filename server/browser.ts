/** The language server as a web worker. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import type { loadEngraver } from './engraving/library';
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
  loadEngraver: async (folder) => {
    if (folder === undefined) return { failure: 'cannot draw here: nobody has said where the engraver lies' };
    try {
      const font = await (await fetch(`${folder}/font.zip`)).arrayBuffer();
      // A worker does not know where its own file lay, so the address is whole.
      const engraver: { loadEngraver: typeof loadEngraver } = await import(`${folder}/engraver.js`);
      return await engraver.loadEngraver(new Uint8Array(font));
    } catch (error) {
      return { failure: `cannot draw here: ${error}` };
    }
  },
});
connection.listen();
