/** The settings of each file, asked of the client once and kept until it says that they have changed. */
import type { Connection } from 'vscode-languageserver';
import { type Settings, usualSettings } from '../features/protocol';

export class SettingsOfFiles {
  private readonly known = new Map<string, Promise<Settings>>();

  /** @param asks whether the client answers `workspace/configuration`; undefined before it has said so */
  constructor(
    private readonly connection: Connection,
    private readonly asks: () => boolean,
  ) {}

  of(uri: string): Promise<Settings> {
    if (!this.asks()) return Promise.resolve(usualSettings);
    const known = this.known.get(uri) ?? this.ask(uri);
    this.known.set(uri, known);
    return known;
  }

  private async ask(uri: string): Promise<Settings> {
    try {
      const told: unknown = await this.connection.workspace.getConfiguration({ scopeUri: uri, section: 'bentside' });
      return settled(told);
    } catch {
      // A client that cannot say has no wishes.
      return usualSettings;
    }
  }

  forget(uri: string): void {
    this.known.delete(uri);
  }

  forgetAll(): void {
    this.known.clear();
  }
}

/** What was told, completed by what is usual; a value of another kind is passed over. */
export const settled = (told: unknown): Settings => completed(usualSettings, told) as Settings;

function completed(usual: unknown, told: unknown): unknown {
  if (typeof usual !== 'object' || usual === null) return typeof told === typeof usual ? told : usual;
  if (typeof told !== 'object' || told === null) return usual;
  const keys = Object.keys(usual);
  // A table without usual rows takes any.
  if (keys.length === 0) return told;
  const given = told as Readonly<Record<string, unknown>>;
  return Object.fromEntries(Object.entries(usual).map(([key, value]) => [key, completed(value, given[key])]));
}
