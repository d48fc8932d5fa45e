/** As much of the editor's interface as tests of the client need that run without an editor. */
import { vi } from 'vitest';

const nothing = (): void => undefined;
const disposable = { dispose: nothing };

export class EventEmitter<Event> {
  private readonly listeners: ((event: Event) => void)[] = [];
  readonly event = (listener: (event: Event) => void): typeof disposable => {
    this.listeners.push(listener);
    return disposable;
  };
  fire(event: Event): void {
    for (const listener of this.listeners) listener(event);
  }
  dispose = nothing;
}

export const window = {
  createOutputChannel: () => ({ error: nothing, warn: nothing, show: vi.fn(), dispose: nothing }),
  showWarningMessage: vi.fn(async (..._words: readonly string[]): Promise<string | undefined> => undefined),
};

export const workspace = { fs: { readFile: async (): Promise<Uint8Array> => new Uint8Array() } };

export const l10n = { t: (text: string): string => text };

export const Uri = {
  parse: (text: string) => text,
  joinPath: (base: string, ...parts: readonly string[]) => [base, ...parts].join('/'),
};
