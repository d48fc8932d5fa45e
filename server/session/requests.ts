/** Which feature answers which request. */
import {
  type CancellationToken,
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type CompletionParams,
  CompletionTriggerKind,
  type Connection,
  type InlayHintParams,
  LSPErrorCodes,
  type Position,
  type ReferenceParams,
  type RenameParams,
  ResponseError,
  type SemanticTokens,
  type SemanticTokensDelta,
  type SemanticTokensDeltaParams,
  type ServerCapabilities,
  type TextDocumentPositionParams,
} from 'vscode-languageserver';
import { type CannotDraw, cannotDraw, type Engraver } from '../engraving/engraver';
import { barPicture } from '../features/barPicture';
import { codeLenses } from '../features/codeLens';
import { completion, resolved, TRIGGERS } from '../features/completion';
import { readAs } from '../features/events';
import { foldingRanges } from '../features/folding';
import { formatting, rangeFormatting } from '../features/formatting';
import { hover, type Picture } from '../features/hover';
import { inlayHints } from '../features/inlayHints';
import { documentLinks } from '../features/links';
import { definition, highlights, references } from '../features/navigation';
import { signActions } from '../features/openSigns/actions';
import { FIX_ALL, fixAll, quickFixes } from '../features/quickFixes';
import { refactorings } from '../features/refactorings';
import { CannotRename, mayBeUsedElsewhere, prepareRename, rename } from '../features/rename';
import { selectionRanges } from '../features/selection';
import { legend, semanticTokens } from '../features/semanticTokens';
import { SIGNATURE_RETRIGGERS, SIGNATURE_TRIGGERS, signatureHelp } from '../features/signatureHelp';
import { documentSymbols, workspaceSymbols } from '../features/symbols';
import type { Project } from '../workspace/project';
import { unlessCancelled } from './cancelling';
import { analysisOptions, type Current, type Documents } from './documents';
import type { Files } from './files';
import type { Scores } from './scores';
import { TokensOfFiles } from './tokens';
import { forVersions } from './workspaceEdits';

interface OfFile {
  readonly textDocument: { readonly uri: string };
}

/** Makes a handler of a feature: see `Session.answer`. */
export type Answer = <Params extends OfFile, Result>(
  fallback: Result,
  feature: (current: Current, params: Params) => Result | Promise<Result>,
  wants?: 'text' | 'findings',
) => (params: Params, token: CancellationToken) => Promise<Result | ResponseError<void>>;

export interface Served {
  readonly documents: Documents;
  readonly files: Files;
  readonly scores: Scores;
  readonly answer: Answer;
  /** Loaded when somebody first asks. */
  readonly engraver: () => Promise<Engraver | CannotDraw>;
  readonly otherTablesCommand: string | undefined;
  /** The client takes edits of a version, and refuses them where the text has changed. */
  readonly takesVersions: boolean;
}

export const featureCapabilities: ServerCapabilities = {
  codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.Refactor, FIX_ALL] },
  codeLensProvider: {},
  completionProvider: { triggerCharacters: TRIGGERS, resolveProvider: true },
  definitionProvider: true,
  documentFormattingProvider: true,
  documentHighlightProvider: true,
  documentLinkProvider: {},
  documentRangeFormattingProvider: true,
  documentSymbolProvider: true,
  foldingRangeProvider: true,
  hoverProvider: true,
  inlayHintProvider: true,
  referencesProvider: true,
  renameProvider: { prepareProvider: true },
  selectionRangeProvider: true,
  semanticTokensProvider: { legend, full: { delta: true }, range: true },
  signatureHelpProvider: { triggerCharacters: SIGNATURE_TRIGGERS, retriggerCharacters: SIGNATURE_RETRIGGERS },
  workspaceSymbolProvider: true,
};

export function registerFeatures(connection: Connection, served: Served): void {
  edits(connection, served);
  names(connection, served);
  words(connection, served);
  shape(connection, served);
}

/** What changes the text. */
function edits(connection: Connection, { answer, takesVersions }: Served): void {
  const versioned = (action: CodeAction, { version }: Current): CodeAction =>
    action.edit === undefined || !takesVersions ? action : { ...action, edit: forVersions(action.edit, () => version) };
  connection.onCodeAction(
    answer(
      [],
      (current, params: CodeActionParams) => codeActions(current, params).map((action) => versioned(action, current)),
      'findings',
    ),
  );
  connection.onDocumentFormatting(answer([], ({ project }) => formatting(project)));
  connection.onDocumentRangeFormatting(answer([], ({ project }, { range }) => rangeFormatting(project, range)));
}

function codeActions({ project, settings }: Current, { range, context }: CodeActionParams): CodeAction[] {
  const wished = (kind: string): boolean =>
    context.only === undefined || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
  return [
    ...(wished(CodeActionKind.QuickFix) ? quickFixes(project, range, context.diagnostics) : []),
    ...[...signActions(project, range, context.diagnostics), ...refactorings(project, range)].filter(({ kind = '' }) =>
      wished(kind),
    ),
    // Asked for by name alone: when a file is saved, or from the menu of the source.
    ...(context.only !== undefined && wished(FIX_ALL) ? fixAll(project, analysisOptions(settings)) : []),
  ];
}

/** Names and where they lead. */
function names(connection: Connection, { answer, documents, files, scores, takesVersions }: Served): void {
  /** Whoever may share the name at a place, and whether that is all. */
  const sharing = async (project: Project, position: Position): Promise<Sharing> => {
    const open = await documents.all();
    if (!mayBeUsedElsewhere(project, position)) return { projects: open, isAll: true };
    const closed = await scores.projects();
    return { projects: [...open, ...(closed ?? [])], isAll: closed !== undefined };
  };
  const at =
    <Result>(feature: (current: Current, position: Position) => Result) =>
    (current: Current, { position }: TextDocumentPositionParams): Result =>
      feature(current, position);
  connection.onDefinition(
    answer(
      [],
      at(({ project }, position) => definition(project, position)),
    ),
  );
  connection.onDocumentHighlight(
    answer(
      [],
      at(({ project }, position) => highlights(project, position)),
    ),
  );
  connection.onReferences(
    answer([], async ({ project }, { position, context }: ReferenceParams) =>
      references(project, position, (await sharing(project, position)).projects, context.includeDeclaration),
    ),
  );
  connection.onPrepareRename(
    answer(
      null,
      at(({ project }, position) => told(() => prepareRename(project, position))),
    ),
  );
  connection.onRenameRequest(
    answer(null, async ({ project, version }, { position, newName }: RenameParams) => {
      const { projects, isAll } = await sharing(project, position);
      const edit = told(() => rename(project, position, newName, projects));
      if (!isAll) void connection.window.showInformationMessage(ONLY_OPEN);
      const versionOf = (uri: string) => (uri === project.file ? version : documents.version(uri));
      return takesVersions ? forVersions(edit, versionOf) : edit;
    }),
  );
  connection.onWorkspaceSymbol(async ({ query }, token) => {
    const all = Promise.all([documents.all(), scores.named()]);
    const [open, closed] = await unlessCancelled(all, token);
    return workspaceSymbols(open, closed, query);
  });
  connection.onDocumentLinks(
    answer([], ({ project }) => documentLinks(project, (path) => files.resolve(project.file, path))),
  );
}

interface Sharing {
  readonly projects: readonly Project[];
  readonly isAll: boolean;
}

const ONLY_OPEN =
  'The name was written anew in all scores that are open. Scores that share it and are not open still have the old one.';

/** Why a name cannot be written anew is for the user to read. */
function told<Result>(make: () => Result): Result {
  try {
    return make();
  } catch (error) {
    if (error instanceof CannotRename) throw new ResponseError(LSPErrorCodes.RequestFailed, error.message);
    throw error;
  }
}

/** What is told of a place. */
function words(connection: Connection, { answer, documents, engraver, otherTablesCommand }: Served): void {
  connection.onCompletion(
    answer(null, ({ project }, { position, context }: CompletionParams) =>
      completion(project, position, context?.triggerKind === CompletionTriggerKind.TriggerCharacter),
    ),
  );
  connection.onCompletionResolve(async (item, token) => {
    const asked = item.data === undefined ? undefined : documents.current(item.data.file);
    const current = asked && (await unlessCancelled(asked, token));
    return current === undefined ? item : resolved(item, current.project);
  });
  connection.onSignatureHelp(answer(null, ({ project }, { position }) => signatureHelp(project, position)));
  connection.onCodeLens(answer([], ({ project, settings }) => (settings.codeLens ? codeLenses(project) : [])));
  connection.languages.inlayHint.on(
    answer([], ({ project, settings, reading }, { range }: InlayHintParams) =>
      inlayHints(project, range, settings.inlayHints, reading),
    ),
  );
  connection.onHover(
    answer(null, async ({ project, settings, reading }, { position }) => {
      const picture = settings.hover.picture ? await pictures(connection, engraver) : undefined;
      return hover(readAs(project, reading), position, picture, otherTablesCommand);
    }),
  );
}

/** Draws bars for hovers; undefined, or no picture, where something fails: there are words all the same. */
async function pictures(connection: Connection, engraver: Served['engraver']): Promise<Picture | undefined> {
  const failed = (error: unknown): undefined => {
    connection.console.error(`the bar of a hover is not drawn: ${error}`);
  };
  const drawer = await engraver().catch(failed);
  if (drawer === undefined || cannotDraw(drawer)) return undefined;
  return (at, ofSign) => {
    try {
      return barPicture(at, drawer, { ofSign });
    } catch (error) {
      return failed(error);
    }
  };
}

/** What the text is made of. */
function shape(connection: Connection, { answer, documents }: Served): void {
  const { semanticTokens: tokens } = connection.languages;
  const known = new TokensOfFiles(documents);
  tokens.on(answer({ data: [] }, ({ project }) => known.full(project)));
  tokens.onDelta(
    answer({ data: [] } as SemanticTokens | SemanticTokensDelta, ({ project }, params: SemanticTokensDeltaParams) =>
      known.delta(project, params.previousResultId),
    ),
  );
  tokens.onRange(answer({ data: [] }, ({ project }, { range }) => ({ data: semanticTokens(project.tree, range) })));
  connection.onDocumentSymbol(answer([], ({ project }) => documentSymbols(project)));
  connection.onFoldingRanges(answer([], ({ project }) => foldingRanges(project.tree)));
  connection.onSelectionRanges(answer([], ({ project }, { positions }) => selectionRanges(project.tree, positions)));
}
