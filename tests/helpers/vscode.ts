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
  clear(): void {
    this.listeners.length = 0;
  }
  fire(event: Event): void {
    for (const listener of this.listeners) listener(event);
  }
  dispose = nothing;
}

export class Position {
  constructor(
    readonly line: number,
    readonly character: number,
  ) {}
  translate(lines: number, characters: number): Position {
    return new Position(this.line + lines, this.character + characters);
  }
  isEqual({ line, character }: Position): boolean {
    return line === this.line && character === this.character;
  }
}

export class Range {
  constructor(
    readonly start: Position,
    readonly end: Position,
  ) {}
  get isEmpty(): boolean {
    return this.start.isEqual(this.end);
  }
}

export const window = {
  activeTextEditor: undefined as unknown,
  createOutputChannel: () => ({ error: nothing, warn: nothing, show: vi.fn(), dispose: nothing }),
  showWarningMessage: vi.fn(async (..._words: readonly string[]): Promise<string | undefined> => undefined),
};

/** A text has changed: what the client hears of it. */
export const textChanged = new EventEmitter<unknown>();

export const workspace = {
  fs: { readFile: async (): Promise<Uint8Array> => new Uint8Array() },
  onDidChangeTextDocument: textChanged.event,
  getConfiguration: () => ({ get: <Value>(_name: string, usual: Value): Value => usual }),
};

export const commands = { executeCommand: async (): Promise<void> => undefined };

export const l10n = {
  t: (text: string, ...values: readonly (string | number)[]): string =>
    text.replace(/\{(\d+)\}/g, (whole, index) => `${values[Number(index)] ?? whole}`),
};

export const Uri = {
  parse: (text: string) => text,
  joinPath: (base: string, ...parts: readonly string[]) => [base, ...parts].join('/'),
};
