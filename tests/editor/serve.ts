/** Serves a web build of the editor, extensions and one folder of files to a browser on this machine. */
import { createReadStream } from 'node:fs';
import { mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { workbenchPage } from './page';

const MEDIA: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.cjs': 'text/javascript',
  '.mjs': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
};

export interface Serving {
  /** The workbench. */
  readonly address: string;
  close(): Promise<void>;
}

/** What an editor is opened on. */
export interface Hosting {
  readonly folder: string;
  readonly settings: Readonly<Record<string, unknown>>;
}

export interface Served extends Hosting {
  /** The folder of the editor's web build. */
  readonly editor: string;
  readonly extensions: readonly string[];
}

type Answer = (code: number, body?: string | Uint8Array, type?: string) => void;

/** What the workbench asks of the files of the folder. */
const fileWork: Readonly<Record<string, (file: string, request: IncomingMessage, answer: Answer) => Promise<void>>> = {
  stat: async (file, _, answer) => {
    const found = await stat(file);
    const { ctimeMs: ctime, mtimeMs: mtime, size } = found;
    answer(200, JSON.stringify({ type: found.isDirectory() ? 2 : 1, ctime, mtime, size }), MEDIA['.json']);
  },
  list: async (file, _, answer) => {
    const entries = await readdir(file, { withFileTypes: true });
    answer(200, JSON.stringify(entries.map((one) => [one.name, one.isDirectory() ? 2 : 1])), MEDIA['.json']);
  },
  read: async (file, _, answer) => answer(200, await readFile(file)),
  make: async (file, _, answer) => {
    await mkdir(file, { recursive: true });
    answer(200);
  },
  delete: async (file, _, answer) => {
    await rm(file, { recursive: true });
    answer(200);
  },
  write: async (file, request, answer) => {
    const parts: Buffer[] = [];
    for await (const part of request) parts.push(part as Buffer);
    await writeFile(file, Buffer.concat(parts));
    answer(200);
  },
};

export async function serve({ editor, extensions, folder, settings }: Served): Promise<Serving> {
  const roots = new Map([
    ['/editor/', editor],
    ...extensions.map((path, index): [string, string] => [`/extension/${index}/`, path]),
  ]);

  async function respond(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const { pathname, searchParams } = new URL(request.url ?? '/', 'http://served');
    const path = decodeURIComponent(pathname);
    const answer: Answer = (code, body = '', type = 'application/octet-stream') => {
      response.writeHead(code, { 'Content-Type': type });
      response.end(body);
    };
    // Frames of the workbench have origins of their own.
    response.setHeader('Access-Control-Allow-Origin', '*');
    response.setHeader('Access-Control-Allow-Methods', '*');
    response.setHeader('Access-Control-Allow-Headers', '*');
    response.setHeader('Cross-Origin-Resource-Policy', 'cross-origin');
    if (request.method === 'OPTIONS') return answer(204);
    if (path === '/') {
      const page = workbenchPage(request.headers.host ?? '', extensions.length, settings);
      return answer(200, page, 'text/html');
    }
    if (path.startsWith('/files')) {
      const work = fileWork[searchParams.get('does') ?? ''];
      return work?.(join(folder, normalize(`/${path.slice('/files'.length)}`)), request, answer) ?? answer(400);
    }
    const [prefix = '', root] = [...roots].find(([one]) => path.startsWith(one)) ?? [];
    if (root === undefined) return answer(404);
    const file = join(root, normalize(`/${path.slice(prefix.length)}`));
    const { size } = await stat(file);
    const type = MEDIA[extname(file)] ?? 'application/octet-stream';
    response.writeHead(200, { 'Content-Type': type, 'Content-Length': size });
    createReadStream(file).pipe(response);
  }

  const server = createServer((request, response) => {
    respond(request, response).catch((error: NodeJS.ErrnoException) => {
      if (!response.headersSent) response.writeHead(error.code === 'ENOENT' ? 404 : 500);
      response.end();
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    // The frames of views are served below a name of their own, so the page cannot stand at “localhost” itself.
    address: `http://code.localhost:${(server.address() as AddressInfo).port}/`,
    close: () => {
      server.closeAllConnections();
      return new Promise((resolve) => server.close(() => resolve()));
    },
  };
}
