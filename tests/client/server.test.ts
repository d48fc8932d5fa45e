/** A language server that dies is started again, and the user is told once when that does not help. */

import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Uri } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { Server } from '../../client/server';
import { window } from '../helpers/vscode';

// The protocol's own package asks for a real editor.
vi.mock('vscode-languageclient', () => ({
  CloseAction: { DoNotRestart: 1, Restart: 2 },
  ErrorAction: { Continue: 1, Shutdown: 2 },
  State: { Stopped: 1, Running: 2, Starting: 3 },
}));

const [DO_NOT_RESTART, RESTART] = [1, 2];
const [STOPPED, RUNNING, STARTING] = [1, 2, 3];

/** A server whose end can be reported, and how often it was started. */
function dying() {
  let options: LanguageClientOptions | undefined;
  let changed: (change: { newState: number }) => void = () => undefined;
  const start = vi.fn(async () => undefined);
  const sendRequest = vi.fn(async (): Promise<unknown> => true);
  const client = {
    start,
    sendRequest,
    state: STOPPED,
    onRequest: () => undefined,
    onDidChangeState: (listener: typeof changed) => {
      changed = listener;
    },
    dispose: async () => undefined,
  };
  const cut = vi.fn();
  const server = new Server(
    (_id, _name, given) => {
      options = given;
      return { client: client as unknown as BaseLanguageClient, cut };
    },
    'file:///extension' as unknown as Uri,
  );
  const end = async (): Promise<number | undefined> => (await options?.errorHandler?.closed())?.action;
  const becomes = (state: number): void => {
    client.state = state;
    changed({ newState: state });
  };
  return { server, start, end, cut, sendRequest, becomes };
}

const never = (): Promise<unknown> => new Promise(() => undefined);

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

describe('a worker, which does not tell of its end', () => {
  const HALF_A_MINUTE = 40_000;

  it('is left alone as long as it answers', async () => {
    const { cut, becomes, sendRequest } = dying();
    becomes(STARTING);
    becomes(RUNNING);
    await vi.advanceTimersByTimeAsync(10 * HALF_A_MINUTE);
    expect(sendRequest).toHaveBeenCalledWith('bentside/alive', {});
    expect(cut).not.toHaveBeenCalled();
  });

  it('is taken for dead when it has not answered for half a minute, and that is told once', async () => {
    const { cut, end, becomes, sendRequest } = dying();
    for (let times = 0; times < 4; times++) {
      becomes(STARTING);
      becomes(RUNNING);
      sendRequest.mockImplementation(never);
      await vi.advanceTimersByTimeAsync(HALF_A_MINUTE);
      expect(cut).toHaveBeenCalledTimes(times + 1);
      await end();
    }
    becomes(STOPPED);
    await vi.advanceTimersByTimeAsync(10 * HALF_A_MINUTE);
    expect(cut).toHaveBeenCalledTimes(4);
    expect(window.showWarningMessage).toHaveBeenCalledTimes(1);
  });

  it('is taken for dead when it never starts', async () => {
    const { cut, becomes } = dying();
    becomes(STARTING);
    await vi.advanceTimersByTimeAsync(HALF_A_MINUTE);
    expect(cut).toHaveBeenCalledTimes(1);
  });

  it('may take minutes for an export', async () => {
    const { server, cut, becomes, sendRequest } = dying();
    becomes(STARTING);
    becomes(RUNNING);
    sendRequest.mockImplementation(never);
    const wish = { textDocument: { uri: 'a.bent' }, format: 'svg', reading: 'all', leaveGaps: false };
    void server.ask('bentside/export', wish);
    await vi.advanceTimersByTimeAsync(5 * HALF_A_MINUTE);
    expect(cut).not.toHaveBeenCalled();
  });
});
