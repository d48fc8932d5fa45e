/** The language server: requests in, features asked, answers out. Where it runs is the platform's matter. */
import {
  type CancellationToken,
  CodeLensRefreshRequest,
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  type InitializeParams,
  type InitializeResult,
  ResponseError,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Turns } from '../document/turns';
import { type CannotDraw, cannotDraw, type Engraver } from '../engraving/engraver';
import {
  type ClientOptions,
  READ,
  READING,
  type ReadingParams,
  type ReadParams,
  type ReadResult,
  SCORES,
  type ScoresResult,
} from '../features/protocol';
import { unlessCancelled } from './cancelling';
import { type Diagnostics, PulledDiagnostics, PushedDiagnostics } from './diagnostics';
import { type Current, Documents } from './documents';
import { asFolder, type Disk, Files } from './files';
import { moved } from './mark';
import { registerOwnRequests } from './ownRequests';
import { type Answer, featureCapabilities, registerFeatures } from './requests';
import { Scores } from './scores';
import { SettingsOfFiles } from './settings';
import { registerTuningRequests } from './tuningRequests';
import type { Later } from './waiting';
import { FindingsWhenPlayed } from './whenPlayed';

/** What the platform gives. */
export interface Platform {
  readonly turns: Turns;
  readonly later: Later;
  readonly disk: Disk;
  /**
   * Loads what draws, once it is wanted.
   * @param folder the address where it lies, for a platform that does not know
   */
  loadEngraver(folder: string | undefined): Promise<Engraver | CannotDraw>;
}

/** Answers a connection until it ends. */
export function startServer(connection: Connection, platform: Platform): void {
  connection.onInitialize((params) => new Session(connection, platform, params).result());
}

/** Lets the client say what has become of scores that are not open. */
const WATCHED = { watchers: [{ globPattern: '**/*.bent' }] };

/** One client from its first word on. */
class Session {
  private readonly settings: SettingsOfFiles;
  private readonly files: Files;
  private readonly documents: Documents;
  private readonly whenPlayed: FindingsWhenPlayed;
  private readonly diagnostics: Diagnostics;
  private readonly client: ClientOptions;
  private engraver: Promise<Engraver | CannotDraw> | undefined;

  constructor(
    private readonly connection: Connection,
    { turns, later, disk, loadEngraver }: Platform,
    private readonly params: InitializeParams,
  ) {
    this.client = (params.initializationOptions ?? {}) as ClientOptions;
    this.settings = new SettingsOfFiles(connection, () => params.capabilities.workspace?.configuration === true);
    this.files = new Files(
      disk,
      () => this.documents.folders,
      (uri) => this.fetch(uri),
    );
    this.files.folders = (params.workspaceFolders ?? []).map(({ uri }) => asFolder(uri));
    this.documents = new Documents(
      this.files,
      turns,
      (uri) => this.settings.of(uri),
      (uri, because) => {
        this.diagnostics.changed(uri, because);
        this.whenPlayed.changed(uri);
      },
    );
    this.whenPlayed = new FindingsWhenPlayed(this.documents, turns, later, (uri) => this.diagnostics.more(uri));
    const { helpAddress } = this.client;
    if (this.pulls) {
      const pulled = new PulledDiagnostics(this.documents, this.whenPlayed, helpAddress, () =>
        this.refreshDiagnostics(),
      );
      connection.languages.diagnostics.on(({ textDocument, previousResultId }, token) =>
        unlessCancelled(pulled.report(textDocument.uri, previousResultId), token),
      );
      this.diagnostics = pulled;
    } else
      this.diagnostics = new PushedDiagnostics(connection, this.documents, this.whenPlayed, turns, later, helpAddress);
    this.listen();
    const answer: Answer = (fallback, feature, wants) => this.answer(fallback, feature, wants);
    const engraver = (): Promise<Engraver | CannotDraw> => {
      this.engraver ??= loadEngraver(this.client.engraving);
      const loading = this.engraver;
      // What could not be loaded once may be there the next time.
      const forget = (): void => {
        if (this.engraver === loading) this.engraver = undefined;
      };
      loading.then((drawer) => cannotDraw(drawer) && forget(), forget);
      return loading;
    };
    const { otherTablesCommand } = this.client;
    registerFeatures(connection, {
      documents: this.documents,
      files: this.files,
      scores: new Scores(() => this.addresses(), this.files, this.documents),
      answer,
      engraver,
      otherTablesCommand,
      takesVersions: params.capabilities.workspace?.workspaceEdit?.documentChanges === true,
    });
    registerOwnRequests(connection, answer, engraver);
    registerTuningRequests(connection, answer, this.documents);
  }

  result(): InitializeResult {
    return {
      serverInfo: { name: 'bentside' },
      capabilities: {
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
        ...(this.pulls
          ? { diagnosticProvider: { identifier: 'bentside', interFileDependencies: true, workspaceDiagnostics: false } }
          : {}),
        ...featureCapabilities,
      },
    };
  }

  /** The client asks for findings. */
  private get pulls(): boolean {
    return this.params.capabilities.textDocument?.diagnostic !== undefined;
  }

  private refreshDiagnostics(): void {
    if (this.params.capabilities.workspace?.diagnostics?.refreshSupport) {
      void this.connection.languages.diagnostics.refresh();
    }
  }

  /** What stands in the text without being of it depends on settings and on the reading, too. */
  private refreshShown(): void {
    const { inlayHint, codeLens } = this.params.capabilities.workspace ?? {};
    if (inlayHint?.refreshSupport) void this.connection.languages.inlayHint.refresh();
    if (codeLens?.refreshSupport) void this.connection.sendRequest(CodeLensRefreshRequest.type);
  }

  private listen(): void {
    const { connection, documents } = this;
    const texts = new TextDocuments(TextDocument);
    texts.onDidChangeContent(({ document }) => documents.update(document.uri, document.getText(), document.version));
    texts.onDidClose(({ document }) => {
      documents.close(document.uri);
      this.settings.forget(document.uri);
      this.diagnostics.closed(document.uri);
      this.whenPlayed.closed(document.uri);
    });
    texts.listen(connection);
    connection.onNotification(READING, ({ textDocument, reading }: ReadingParams) => {
      documents.read(textDocument.uri, reading);
      this.refreshShown();
    });
    connection.onInitialized(() => void this.subscribe());
    connection.onDidChangeConfiguration(() => {
      this.settings.forgetAll();
      documents.refreshAll();
      this.refreshShown();
    });
    connection.onDidChangeWatchedFiles(({ changes }) => {
      for (const { uri } of changes) {
        this.files.forget(uri);
        documents.changedOutside(uri);
      }
    });
  }

  private async subscribe(): Promise<void> {
    const { connection } = this;
    const { workspace } = this.params.capabilities;
    if (workspace?.didChangeConfiguration?.dynamicRegistration) {
      await connection.client.register(DidChangeConfigurationNotification.type, { section: 'bentside' });
    }
    if (workspace?.didChangeWatchedFiles?.dynamicRegistration) {
      await connection.client.register(DidChangeWatchedFilesNotification.type, WATCHED);
    }
    if (workspace?.workspaceFolders) {
      connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
        const gone = new Set(removed.map(({ uri }) => asFolder(uri)));
        const left = this.files.folders.filter((folder) => !gone.has(folder));
        this.files.folders = [...left, ...added.map(({ uri }) => asFolder(uri))];
        this.documents.refreshAll();
      });
    }
  }

  /** Asks the client for a file; whoever includes it is read again when it comes. */
  private async fetch(uri: string): Promise<void> {
    if (this.client.canRead !== true) return;
    const text = await this.connection.sendRequest<ReadResult>(READ, { uri } satisfies ReadParams).catch(() => null);
    if (text === null) return;
    this.files.tell(uri, text);
    this.documents.changedOutside(uri);
  }

  /** Of all scores in the folders; undefined where the client cannot tell. */
  private async addresses(): Promise<ScoresResult | undefined> {
    if (this.client.canRead !== true) return undefined;
    return this.connection.sendRequest<ScoresResult>(SCORES).catch(() => undefined);
  }

  /**
   * Answers a request about a file with what a feature says of it as it now stands; with the fallback if the file is not
   * open or the feature fails, for one that fails must not take the server with it.
   * @param wants `findings` if the feature asks for them: they are made in turns before
   */
  private answer<Params extends { readonly textDocument: { readonly uri: string } }, Result>(
    fallback: Result,
    feature: (current: Current, params: Params) => Result | Promise<Result>,
    wants: 'text' | 'findings' = 'text',
  ) {
    const { documents } = this;
    return async (params: Params, token: CancellationToken): Promise<Result | ResponseError<void>> => {
      const { uri } = params.textDocument;
      const work = async (): Promise<Result> => {
        const current = await (wants === 'findings' ? documents.proofed(uri) : documents.current(uri));
        if (current === undefined || token.isCancellationRequested) return fallback;
        return moved(await feature(current, moved(params, -current.before)), current.before);
      };
      try {
        return await unlessCancelled(work(), token);
      } catch (error) {
        if (error instanceof ResponseError) return error;
        this.connection.console.error(`${uri}: ${error instanceof Error ? (error.stack ?? error.message) : error}`);
        return fallback;
      }
    };
  }
}
