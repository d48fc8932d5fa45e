/** A client that speaks to a language server over a real connection. */
import { type ChildProcess, fork } from 'node:child_process';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import {
  type ClientCapabilities,
  ConfigurationRequest,
  createConnection,
  createProtocolConnection,
  type Diagnostic,
  DidChangeTextDocumentNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  ExitNotification,
  InitializedNotification,
  InitializeRequest,
  IPCMessageReader,
  IPCMessageWriter,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  type Range,
  RegistrationRequest,
  type ServerCapabilities,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import type { Turns } from '../../server/document/turns';
import type { CannotDraw, Engraver } from '../../server/engraving/engraver';
import { type ClientOptions, SCORES } from '../../server/features/protocol';
import { type Disk, noDisk } from '../../server/session/files';
import { type Platform, startServer } from '../../server/session/server';

export const FOLDER = 'file:///music/';

export interface Wishes {
  readonly capabilities?: ClientCapabilities;
  readonly options?: ClientOptions;
  /** What the client answers when it is asked for the settings of a file. */
  readonly settings?: unknown;
  /** Files that are not open, by their name in the folder. */
  readonly files?: Readonly<Record<string, string>>;
  /** Another engraver than the tests have. */
  readonly engraver?: () => Promise<Engraver | CannotDraw>;
  /** Another disk than one with these files. */
  readonly disk?: Disk;
  /** Another way in which the server shares its thread. */
  readonly turns?: Turns;
}

/** A client with the findings that it was sent. */
export class Client {
  /** What it was last sent of each file. */
  readonly shown = new Map<string, readonly Diagnostic[]>();
  capabilities: ServerCapabilities = {};
  settings: unknown;
  private version = 0;

  constructor(
    readonly connection: ProtocolConnection,
    private readonly wishes: Wishes,
    private readonly stop: () => void,
  ) {
    this.settings = wishes.settings;
  }

  async start(): Promise<this> {
    const { connection, wishes } = this;
    connection.onNotification(PublishDiagnosticsNotification.type, ({ uri, diagnostics }) => {
      this.shown.set(uri, diagnostics);
    });
    connection.onRequest(ConfigurationRequest.type, ({ items }) => items.map(() => this.settings ?? null));
    connection.onRequest(RegistrationRequest.type, () => undefined);
    connection.onRequest(SCORES, () => Object.keys(wishes.files ?? {}).map((name) => FOLDER + name));
    connection.listen();
    const { capabilities } = await connection.sendRequest(InitializeRequest.type, {
      processId: null,
      rootUri: null,
      workspaceFolders: [{ uri: FOLDER.slice(0, -1), name: 'music' }],
      capabilities: wishes.capabilities ?? {},
      initializationOptions: wishes.options,
    });
    this.capabilities = capabilities;
    await connection.sendNotification(InitializedNotification.type, {});
    return this;
  }

  async open(name: string, text: string): Promise<string> {
    const uri = FOLDER + name;
    const textDocument = { uri, languageId: 'bentside', version: ++this.version, text };
    await this.connection.sendNotification(DidOpenTextDocumentNotification.type, { textDocument });
    return uri;
  }

  /** Types a text in the place of a range. */
  async type(uri: string, range: Range, text: string): Promise<void> {
    await this.connection.sendNotification(DidChangeTextDocumentNotification.type, {
      textDocument: { uri, version: ++this.version },
      contentChanges: [{ range, text }],
    });
  }

  async close(uri: string): Promise<void> {
    await this.connection.sendNotification(DidCloseTextDocumentNotification.type, { textDocument: { uri } });
  }

  /** The findings of a file as soon as they are as expected. */
  async findings(uri: string, expected: (codes: readonly string[]) => boolean): Promise<readonly string[]> {
    for (const until = Date.now() + PATIENCE; Date.now() < until; ) {
      const codes = (this.shown.get(uri) ?? []).map(({ code }) => `${code}`);
      if (this.shown.has(uri) && expected(codes)) return codes;
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
    throw new Error(`${uri}: ${JSON.stringify(this.shown.get(uri)?.map(({ code }) => code))}`);
  }

  async end(): Promise<void> {
    await this.connection.sendRequest(ShutdownRequest.type);
    await this.connection.sendNotification(ExitNotification.type).catch(() => undefined);
    this.connection.dispose();
    this.stop();
  }
}

/** Milliseconds after which findings will not come, on a machine that is busy with other things, too. */
const PATIENCE = 30_000;

/** Loaded only where something is drawn. */
export const testEngraver = async (): Promise<Engraver> => (await import('../helpers/engraver')).engraver();

const usualTurns: Turns = {
  now: () => performance.now(),
  pause: () => new Promise((resolve) => void setImmediate(resolve)),
};

const platform = ({ files = {}, engraver = testEngraver, turns = usualTurns, disk }: Wishes): Platform => ({
  turns,
  later: (milliseconds, work) => {
    const timer = setTimeout(work, milliseconds);
    return () => clearTimeout(timer);
  },
  disk: disk ?? { ...noDisk, read: (uri) => files[uri.slice(FOLDER.length)] },
  loadEngraver: engraver,
});

/** A client of a server in this process, over streams. */
export function client(wishes: Wishes = {}): Promise<Client> {
  const [up, down] = [new PassThrough(), new PassThrough()];
  const server = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  // The end of a client is not the end of the tests.
  server.onExit(() => undefined);
  startServer(server, platform(wishes));
  server.listen();
  const connection = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  return new Client(connection, wishes, () => undefined).start();
}

/** A client of the bundled server in a process of its own. */
export function processClient(wishes: Wishes = {}): Promise<Client> {
  const server: ChildProcess = fork(join(import.meta.dirname, '../../dist/server.js'), ['--node-ipc'], {
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  const connection = createProtocolConnection(new IPCMessageReader(server), new IPCMessageWriter(server));
  return new Client(connection, wishes, () => server.kill()).start();
}
