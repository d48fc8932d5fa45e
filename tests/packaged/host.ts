/** An editor whose extensions run in Node, with the extension's own file installed. */
import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { QUIET } from '../editor/page';
import type { Hosting, Serving } from '../editor/serve';
import { installedEditor } from './install';

const EXTENSION = join(import.meta.dirname, '../../out/bentside.vsix');

/** Nothing is asked, and nobody called. */
const OPTIONS = [
  ...['--auth', 'none', '--disable-telemetry', '--disable-update-check'],
  ...['--disable-workspace-trust', '--disable-getting-started-override'],
];

/** Milliseconds within which it must answer. */
const LONGEST_START = 30_000;

export async function hostInNode({ folder, settings }: Hosting): Promise<Serving> {
  const entry = installedEditor();
  // A home of its own: what the user of this machine has installed and set is left alone.
  const home = mkdtempSync(join(tmpdir(), 'bentside-packaged-'));
  const env = { ...process.env, HOME: home, XDG_CONFIG_HOME: join(home, 'config'), XDG_DATA_HOME: join(home, 'share') };
  const places = ['--user-data-dir', join(home, 'data'), '--extensions-dir', join(home, 'extensions')];
  mkdirSync(join(home, 'data/User'), { recursive: true });
  writeFileSync(join(home, 'data/User/settings.json'), JSON.stringify({ ...QUIET, ...settings }));
  execFileSync(process.execPath, [entry, ...places, '--install-extension', EXTENSION], { env, stdio: 'pipe' });

  const port = await freePort();
  const log = join(home, 'server.log');
  const output = openSync(log, 'w');
  const words = [entry, ...places, ...OPTIONS, '--bind-addr', `127.0.0.1:${port}`];
  const server = spawn(process.execPath, words, { env, stdio: ['ignore', output, output] });
  const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()));
  const close = async () => {
    server.kill();
    await ended;
    rmSync(home, { recursive: true, force: true });
  };
  if (!(await answers(`http://127.0.0.1:${port}/healthz`))) {
    const said = readFileSync(log, 'utf8');
    await close();
    throw new Error(`the editor does not start: ${said}`);
  }
  return { address: `http://localhost:${port}/?folder=${folder}`, close };
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}

async function answers(address: string): Promise<boolean> {
  const until = Date.now() + LONGEST_START;
  while (Date.now() < until) {
    const isUp = await fetch(address).then(
      ({ ok }) => ok,
      () => false,
    );
    if (isUp) return true;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return false;
}
