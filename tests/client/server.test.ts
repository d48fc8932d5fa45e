/** A language server that dies is started again, and the user is told once when that does not help. */

import { beforeEach, expect, it, vi } from 'vitest';
import type { Uri } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { Server } from '../../client/server';
import { window } from '../helpers/vscode';

// The protocol's own package asks for a real editor.
vi.mock('vscode-languageclient', () => ({
  CloseAction: { DoNotRestart: 1, Restart: 2 },
  ErrorAction: { Continue: 1, Shutdown: 2 },
  State: { Stopped: 1, Running: 2 },
}));

const [DO_NOT_RESTART, RESTART] = [1, 2];

/** A server whose end can be reported, and how often it was started. */
function dying() {
  let options: LanguageClientOptions | undefined;
  const start = vi.fn(async () => undefined);
  const client = {
    start,
    state: 1,
    onRequest: () => undefined,
    onDidChangeState: () => undefined,
    dispose: async () => undefined,
  };
  const server = new Server(
    (_id, _name, given) => {
      options = given;
      return client as unknown as BaseLanguageClient;
    },
    'file:///extension' as unknown as Uri,
  );
  const end = async (): Promise<number | undefined> => (await options?.errorHandler?.closed())?.action;
  return { server, start, end };
}

beforeEach(() => {
  vi.useFakeTimers();
  window.showWarningMessage.mockClear();
});

it('is started again by itself three times, and then the user is told, once', async () => {
  const { end } = dying();
  expect([await end(), await end(), await end()]).toEqual([RESTART, RESTART, RESTART]);
  expect(window.showWarningMessage).not.toHaveBeenCalled();
  expect([await end(), await end()]).toEqual([DO_NOT_RESTART, DO_NOT_RESTART]);
  expect(window.showWarningMessage).toHaveBeenCalledTimes(1);
  expect(window.showWarningMessage.mock.calls[0]).toEqual([expect.stringContaining('Colours'), 'Restart', 'Show log']);
});

it('may die once in a while for ever', async () => {
  const { end } = dying();
  for (let day = 0; day < 10; day++) {
    expect(await end()).toBe(RESTART);
    vi.advanceTimersByTime(200_000);
  }
});

it('is started again when the user wishes it, and the user is told anew', async () => {
  const { server, start, end } = dying();
  window.showWarningMessage.mockResolvedValueOnce('Restart');
  for (let times = 0; times < 4; times++) await end();
  await vi.waitFor(() => expect(start).toHaveBeenCalledTimes(1));
  for (let times = 0; times < 4; times++) await end();
  expect(window.showWarningMessage).toHaveBeenCalledTimes(2);
  server.dispose();
});

it('answers nothing while it does not run', async () => {
  const { server } = dying();
  expect(await server.ask('bentside/formats', {})).toBeUndefined();
});
