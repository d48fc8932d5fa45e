/** The language server as a process of Node, spoken to over standard streams or the channel of the process that started it. */
import { readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { decoded, isPlainFile, realPath } from './disk';
import { startServer } from './session/server';

/** The path of a `file:` address; undefined of any other. */
function pathOf(uri: string): string | undefined {
  try {
    return uri.startsWith('file:') ? fileURLToPath(uri) : undefined;
  } catch {
    return undefined;
  }
}

const connection = createConnection(ProposedFeatures.all);
startServer(connection, {
  turns: { now: () => performance.now(), pause: () => new Promise((resolve) => void setImmediate(resolve)) },
  later: (milliseconds, work) => {
    const timer = setTimeout(work, milliseconds);
    return () => clearTimeout(timer);
  },
  disk: {
    read: (uri) => {
      const path = pathOf(uri);
      if (path === undefined) return undefined;
      try {
        return isPlainFile(path) ? decoded(readFileSync(path)) : null;
      } catch {
        return null;
      }
    },
    real: (uri) => {
      const path = pathOf(uri);
      return path === undefined ? uri : pathToFileURL(realPath(path)).href;
    },
  },
  loadEngraver: async () => {
    const font = new URL('engraving/font.zip', import.meta.url);
    try {
      const { loadEngraver } = await import('./engraving/library');
      return await loadEngraver(readFileSync(font));
    } catch {
      return { failure: `cannot draw here: the font or what draws is missing beside ${font.href}` };
    }
  },
});
connection.listen();
