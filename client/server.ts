/** The language server as the client has it: started, asked, and started again when it fails. */
import {
  type Disposable,
  EventEmitter,
  type LogOutputChannel,
  l10n,
  type TextDocument,
  Uri,
  window,
  workspace,
} from 'vscode';
import {
  type BaseLanguageClient,
  CloseAction,
  type CloseHandlerResult,
  ErrorAction,
  type LanguageClientOptions,
  State,
} from 'vscode-languageclient';
import {
  type ClientOptions,
  type FileRequests,
  READ,
  READING,
  type ReadingParams,
  type ReadParams,
  type ReadResult,
  type Requests,
  SCORES,
  type ScoresResult,
} from '../server/features/protocol';
import { Heartbeat } from './heartbeat';
import { helpAddress } from './helpAddress';
import { LANGUAGE, named } from './language';

/** What speaks to the server. */
export interface Line {
  readonly client: BaseLanguageClient;
  /** Ends the connection to a server that has died; absent where the client sees for itself that it has. */
  readonly cut?: () => void;
}

export type MakeClient = (id: string, name: string, options: LanguageClientOptions) => Line;

/** So often the server is started again by itself … */
const MOST_RESTARTS = 3;
/** … in so many milliseconds. After that the user decides. */
const RESTARTS_WITHIN = 180_000;

/** So often a text may change while something of it is asked for. */
const MOST_TRIES = 5;

const OTHER_TABLES = 'bentside.otherTables';

export class Server implements Disposable {
  readonly log: LogOutputChannel;
  private readonly client: BaseLanguageClient;
  private readonly started = new EventEmitter<void>();
  /** The server answers, for the first time or again. */
  readonly onDidStart = this.started.event;
  private readonly cut: (() => void) | undefined;
  private readonly heartbeat: Heartbeat | undefined;
  private ends: number[] = [];
  private hasTold = false;
  private exports = 0;

  /** @param extension where the extension lies */
  constructor(make: MakeClient, extension: Uri) {
    this.log = window.createOutputChannel('Bentside', { log: true });
    const engraving = Uri.joinPath(extension, 'dist', 'engraving').toString(true);
    const options: ClientOptions = {
      helpAddress: helpAddress('{code}'),
      canRead: true,
      engraving,
      otherTablesCommand: OTHER_TABLES,
    };
    const { client, cut } = make('bentside', 'Bentside', {
      documentSelector: [{ language: LANGUAGE }],
      initializationOptions: options,
      // Its own hovers may run this command, and no other text may.
      markdown: { isTrusted: { enabledCommands: [OTHER_TABLES] } },
      outputChannel: this.log,
      errorHandler: {
        error: () => ({ action: ErrorAction.Continue, handled: true }),
        closed: () => this.closed(),
      },
    });
    this.client = client;
    this.cut = cut;
    if (cut !== undefined) {
      this.heartbeat = new Heartbeat(
        () => client.sendRequest('bentside/alive', {}),
        () => this.exports > 0,
        () => {
          this.log.error('the language server has not answered for some time');
          cut();
        },
      );
    }
    this.client.onDidChangeState(({ newState }) => this.changed(newState));
    this.client.onRequest(READ, ({ uri }: ReadParams) => readFile(uri));
    this.client.onRequest(SCORES, async (): Promise<ScoresResult> => {
      const found = await workspace.findFiles('**/*.bent');
      return found.map((uri) => this.client.code2ProtocolConverter.asUri(uri));
    });
  }

  private changed(state: State): void {
    if (state === State.Starting) this.heartbeat?.begin();
    else if (state === State.Running) this.heartbeat?.answered();
    else this.heartbeat?.end();
    if (state === State.Running) this.started.fire();
  }

  /** Starts it; where it cannot be started the user is told, and the rest of the editor goes on. */
  async start(): Promise<void> {
    try {
      await this.client.start();
    } catch (error) {
      this.log.error(String(error));
      this.tell();
    }
  }

  async restart(): Promise<void> {
    this.ends = [];
    this.hasTold = false;
    // One that no longer answers cannot be asked to stop.
    if (this.client.state === State.Running) await this.client.stop().catch(() => this.cut?.());
    await this.start();
  }

  /** What the server answers; undefined where there is none, or it fails. */
  async ask<Name extends keyof Requests>(
    name: Name,
    params: Requests[Name]['params'],
  ): Promise<Requests[Name]['result'] | undefined> {
    if (this.client.state !== State.Running) return undefined;
    const isExport = name === 'bentside/export';
    if (isExport) this.exports++;
    try {
      return await this.client.sendRequest(name, params);
    } catch (error) {
      this.log.warn(`${name}: ${error}`);
      return undefined;
    } finally {
      if (isExport) this.exports--;
    }
  }

  /**
   * The same where the answer's places count in a document's text: asked again if that has changed meanwhile.
   * @returns undefined, too, if it changes again and again
   */
  async askOf<Name extends keyof FileRequests>(
    document: TextDocument,
    name: Name,
    params: Omit<FileRequests[Name]['params'], 'textDocument'>,
  ): Promise<FileRequests[Name]['result'] | undefined> {
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const { version } = document;
      const asked = { ...params, textDocument: named(document) } as FileRequests[Name]['params'];
      const answer = await this.ask<keyof Requests>(name, asked);
      if (document.version === version) return answer as FileRequests[Name]['result'] | undefined;
    }
    return undefined;
  }

  /** Tells the server in which reading a score is seen; one that starts is told anew. */
  tellReading(document: TextDocument, reading: string): void {
    if (this.client.state !== State.Running) return;
    const params: ReadingParams = { textDocument: named(document), reading };
    this.client.sendNotification(READING, params).catch((error) => this.log.warn(`${READING}: ${error}`));
  }

  private closed(): CloseHandlerResult {
    const now = Date.now();
    this.ends = [...this.ends.filter((end) => now - end < RESTARTS_WITHIN), now];
    if (this.ends.length <= MOST_RESTARTS) return { action: CloseAction.Restart, handled: true };
    this.tell();
    return { action: CloseAction.DoNotRestart, handled: true };
  }

  /** Once, until the user starts it again. */
  private async tell(): Promise<void> {
    if (this.hasTold) return;
    this.hasTold = true;
    const [restart, log] = [l10n.t('Restart'), l10n.t('Show log')];
    const says = l10n.t('The language server of Bentside has stopped. Colours and snippets go on without it.');
    const answer = await window.showWarningMessage(says, restart, log);
    if (answer === restart) await this.restart();
    if (answer === log) this.log.show();
  }

  dispose(): void {
    this.heartbeat?.end();
    this.started.dispose();
    void this.client.dispose();
    this.log.dispose();
  }
}

/** A file that the server cannot reach itself. */
async function readFile(uri: string): Promise<ReadResult> {
  try {
    // The byte order mark is kept for whoever looks at the encoding.
    return new TextDecoder('utf-8', { ignoreBOM: true }).decode(await workspace.fs.readFile(Uri.parse(uri)));
  } catch {
    return null;
  }
}
