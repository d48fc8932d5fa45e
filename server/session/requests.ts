/** Which feature answers which request. */
import type {
  CancellationToken,
  CodeAction,
  CodeActionParams,
  Connection,
  DocumentFormattingParams,
  DocumentRangeFormattingParams,
  FoldingRange,
  FoldingRangeParams,
  ResponseError,
  ServerCapabilities,
  TextEdit,
} from 'vscode-languageserver';
import { CodeActionKind } from 'vscode-languageserver-types';
import { foldingRanges } from '../features/folding';
import { formatting, rangeFormatting } from '../features/formatting';
import { FIX_ALL, fixAll, quickFixes } from '../features/quickFixes';
import type { Current, Documents } from './documents';

/** Makes a handler of a feature: see `Session.answer`. */
export type Answer = <Params extends { readonly textDocument: { readonly uri: string } }, Result>(
  fallback: Result,
  feature: (current: Current, params: Params) => Result | Promise<Result>,
) => (params: Params, token: CancellationToken) => Promise<Result | ResponseError<void>>;

export const featureCapabilities: ServerCapabilities = {
  codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, FIX_ALL] },
  documentFormattingProvider: true,
  documentRangeFormattingProvider: true,
  foldingRangeProvider: true,
};

export function registerFeatures(
  connection: Connection,
  { answer }: { readonly documents: Documents; readonly answer: Answer },
): void {
  connection.onCodeAction(
    answer<CodeActionParams, CodeAction[]>([], ({ project }, { range, context }) => {
      const wished = (kind: string): boolean =>
        context.only === undefined || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
      return [
        ...(wished(CodeActionKind.QuickFix) ? quickFixes(project, range, context.diagnostics) : []),
        ...(context.only !== undefined && wished(FIX_ALL) ? fixAll(project) : []),
      ];
    }),
  );
  connection.onDocumentFormatting(
    answer<DocumentFormattingParams, TextEdit[]>([], ({ project }) => formatting(project)),
  );
  connection.onDocumentRangeFormatting(
    answer<DocumentRangeFormattingParams, TextEdit[]>([], ({ project }, { range }) => rangeFormatting(project, range)),
  );
  connection.onFoldingRanges(
    answer<FoldingRangeParams, FoldingRange[]>([], ({ project }) => foldingRanges(project.tree)),
  );
}
