/** Exports: one picker over all formats and readings, files beside the score, and a word about where they went. */
import {
  commands,
  FileSystemError,
  FileType,
  l10n,
  languages,
  ProgressLocation,
  type QuickPickItem,
  QuickPickItemKind,
  type TextDocument,
  Uri,
  window,
  workspace,
} from 'vscode';
import type { ExportedFile, ExportForm, ExportResult } from '../server/features/protocol';
import type { ExportForms, FormItem } from './exportForm';
import { fileName, isOurs, LANGUAGE, named, scoreAtHand } from './language';
import type { Readings } from './readings';
import type { Server } from './server';

interface Wish {
  readonly format: string;
  readonly reading: string;
  readonly leaveGaps: boolean;
  readonly form: ExportForm;
}

type WishItem = QuickPickItem & { readonly wish: Omit<Wish, 'form'> };
type Item = QuickPickItem | WishItem | FormItem;

export async function exportScore(server: Server, readings: Readings, forms: ExportForms): Promise<void> {
  const document = await scoreAtHand();
  const score = document && (await onDisk(document));
  if (score === undefined) return;
  const items = await wishItems(server, readings, score);
  if (items.length === 0) {
    void window.showErrorMessage(notAnswering());
    return;
  }
  const wish = await wished(items, forms);
  if (wish !== undefined) await carryOut(server, score, wish);
}

/** Asks until a format is picked, for other picks change how it is written; undefined if the user gives up. */
async function wished(items: readonly Item[], forms: ExportForms): Promise<Wish | undefined> {
  const picked = await window.showQuickPick([...items, ...forms.items()], {
    title: l10n.t('Export'),
    placeHolder: l10n.t('A format and a reading'),
    matchOnDescription: true,
  });
  if (picked === undefined) return undefined;
  if ('wish' in picked) return { ...picked.wish, form: forms.form() };
  if ('turns' in picked) forms.turn(picked);
  return wished(items, forms);
}

/** Exports go beside the score, so it must stand somewhere; undefined if the user does not say where. */
async function onDisk(document: TextDocument): Promise<TextDocument | undefined> {
  if (!document.isUntitled) return document;
  const saved = await workspace.save(document.uri);
  if (saved === undefined) return undefined;
  const { document: score } = await window.showTextDocument(await workspace.openTextDocument(saved));
  // Whatever ending the user has given it.
  return isOurs(score) ? score : languages.setTextDocumentLanguage(score, LANGUAGE);
}

/** All formats, and in each the reading that is shown, the others, and all at once. */
async function wishItems(server: Server, readings: Readings, document: TextDocument): Promise<Item[]> {
  const [formats, offers] = await Promise.all([server.ask('bentside/formats', {}), readings.offers(document)]);
  const shown = readings.of(document);
  const names = offers.map(({ name }) => name).sort((a, b) => Number(b === shown) - Number(a === shown));
  return (formats ?? []).flatMap(({ name: format, title }) => [
    { label: title, kind: QuickPickItemKind.Separator },
    ...[...names, ...(names.length > 1 ? ['all'] : [])].map((reading) => ({
      label: `${format} · ${reading === 'all' ? l10n.t('all readings') : reading}`,
      description: title,
      wish: { format, reading, leaveGaps: false },
    })),
  ]);
}

const notAnswering = (): string => l10n.t('The language server does not answer; nothing was exported.');

async function carryOut(server: Server, document: TextDocument, wish: Wish): Promise<void> {
  const progress = { location: ProgressLocation.Window, title: l10n.t('Exporting …') };
  const result = await window.withProgress(progress, () =>
    server.ask('bentside/export', { textDocument: named(document), ...wish }),
  );
  if (!result) {
    void window.showErrorMessage(notAnswering());
    return;
  }
  for (const line of [...result.refusals, ...result.losses]) server.log.info(line);
  const written = (await mayReplace(result.files)) ? await writeAll(server, result.files) : undefined;
  if (result.refusals.length > 0) await refused(server, document, wish, result, written ?? []);
  else if (written !== undefined) await told(server, written, result);
}

/** What has the address of a file already; undefined where nothing has. */
async function standingAt(target: Uri): Promise<FileType | undefined> {
  try {
    return (await workspace.fs.stat(target)).type;
  } catch {
    return undefined;
  }
}

/** Files of the same names may have been worked on since they were written: whether they may be replaced is asked. */
async function mayReplace(files: readonly ExportedFile[]): Promise<boolean> {
  const targets = files.map(({ uri }) => Uri.parse(uri));
  const kinds = await Promise.all(targets.map(standingAt));
  const there = targets.filter((_, index) => kinds[index] === FileType.File);
  if (there.length === 0) return true;
  const replace = l10n.t('Replace');
  const says = l10n.t('There is already: {0}', there.map(fileName).join(', '));
  return (await window.showWarningMessage(says, { modal: true }, replace)) === replace;
}

/** Writes the files; undefined if one could not be, of which the user is told. */
async function writeAll(server: Server, files: readonly ExportedFile[]): Promise<readonly Uri[] | undefined> {
  const written: Uri[] = [];
  for (const { uri, content } of files) {
    const target = Uri.parse(uri);
    try {
      await workspace.fs.writeFile(target, bytesOf(content));
      written.push(target);
    } catch (error) {
      server.log.error(`${target}: ${error}`);
      const why = await reasonFor(target, error);
      void window.showErrorMessage(l10n.t('{0} could not be written: {1}', fileName(target), why));
      return undefined;
    }
  }
  return written;
}

/** Why a file could not be written; what the system says of it goes to the log. */
async function reasonFor(target: Uri, error: unknown): Promise<string> {
  if ((await standingAt(target)) === FileType.Directory) return l10n.t('a folder has that name.');
  if (error instanceof FileSystemError && error.code === 'NoPermissions')
    return l10n.t('writing there is not allowed.');
  return l10n.t('the log has what the system says.');
}

const bytesOf = (content: ExportedFile['content']): Uint8Array =>
  'text' in content
    ? new TextEncoder().encode(content.text)
    : Uint8Array.from(atob(content.base64), (sign) => sign.charCodeAt(0));

async function refused(
  server: Server,
  document: TextDocument,
  wish: Wish,
  { refusals }: ExportResult,
  written: readonly Uri[],
): Promise<void> {
  const [gaps, problems] = [l10n.t('Leave gaps'), l10n.t('Show problems')];
  const [first = ''] = refusals;
  const says =
    written.length === 0
      ? l10n.t('Not exported, because of errors ({0}). The first: {1}', refusals.length, first)
      : l10n.t(
          'Written: {0}. Other readings have errors ({1}). The first: {2}',
          written.map(fileName).join(', '),
          refusals.length,
          first,
        );
  const answer = await window.showErrorMessage(says, ...(wish.leaveGaps ? [] : [gaps]), problems);
  if (answer === gaps) await carryOut(server, document, { ...wish, leaveGaps: true });
  if (answer === problems) await commands.executeCommand('workbench.actions.view.problems');
}

async function told(server: Server, written: readonly Uri[], { losses }: ExportResult): Promise<void> {
  const [open, log] = [l10n.t('Open'), l10n.t('Show what is lost')];
  const names = written.map(fileName).join(', ');
  const says =
    losses.length === 0
      ? l10n.t('Written: {0}', names)
      : l10n.t('Written: {0}. Things that the format cannot say: {1}.', names, losses.length);
  const answer = await window.showInformationMessage(says, open, ...(losses.length === 0 ? [] : [log]));
  if (answer === open && written[0] !== undefined) await commands.executeCommand('vscode.open', written[0]);
  if (answer === log) server.log.show();
}
