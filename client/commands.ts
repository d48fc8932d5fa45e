/** The commands by their names in package.json. */
import { commands, l10n, languages, SnippetString, type TextDocument, Uri, window, workspace } from 'vscode';
import type { OpenSignItem, TuningChoice } from '../server/features/protocol';
import { beginSource } from './beginSource';
import type { ExportForms } from './exportForm';
import { exportScore } from './exporting';
import { helpAddress, tablesAddress } from './helpAddress';
import { plain, scoreAtHand, scoreEditor } from './language';
import type { OpenSigns } from './openSigns';
import type { ScorePanel } from './panel/panel';
import type { Readings } from './readings';
import type { Server } from './server';
import type { TuningPanel } from './tuning/panel';

interface Parts {
  readonly server: Server;
  readonly readings: Readings;
  readonly panel: ScorePanel;
  readonly openSigns: OpenSigns;
  readonly forms: ExportForms;
  readonly tuning: TuningPanel;
}

type Run = (...args: readonly unknown[]) => unknown;

export const commandTable = ({
  server,
  readings,
  panel,
  openSigns,
  tuning,
  forms,
}: Parts): Readonly<Record<string, Run>> => ({
  'bentside.beginSource': () => beginSource(),
  'bentside.newSystem': () => newSystem(server),
  'bentside.chooseReading': (name, score) => chooseReading(readings, name, score),
  'bentside.export': () => exportScore(server, readings, forms),
  'bentside.showPanel': () => panel.show(),
  'bentside.lockPanel': () => panel.toggleLock(),
  'bentside.soundNote': () => panel.sound('note'),
  'bentside.soundBar': () => panel.sound('bar'),
  'bentside.play': () => panel.togglePlaying(),
  'bentside.decideSign': (sign) => openSigns.decide(sign as OpenSignItem | undefined),
  'bentside.acceptSign': (sign) => openSigns.accept(sign as OpenSignItem | undefined),
  'bentside.openTuning': (wanted, score) => tuning.show(wanted as TuningChoice | undefined, openScore(score)),
  'bentside.otherTables': (...place) => openTables(place),
  'bentside.openHelp': (code) => openHelp(typeof code === 'string' ? code : undefined),
  'bentside.restartServer': () => server.restart(),
  'bentside.showLog': () => server.log.show(),
});

/** A code lens names a reading and its score; whoever is not told picks both. */
async function chooseReading(readings: Readings, name: unknown, score: unknown): Promise<void> {
  const document = openScore(score) ?? (await scoreAtHand());
  if (document !== undefined) await readings.choose(document, typeof name === 'string' ? name : undefined);
}

/** The score at an address, as a link in a text names it; undefined if none is named, or it is not open. */
const openScore = (address: unknown): TextDocument | undefined =>
  workspace.textDocuments.find(({ uri }) => uri.toString() === Uri.parse(String(address)).toString());

async function newSystem(server: Server): Promise<void> {
  const score = await scoreAtHand();
  if (score === undefined) return;
  const editor = scoreEditor() ?? (await window.showTextDocument(score));
  const { document, selection } = editor;
  const offer = await server.askOf(document, 'bentside/nextSystem', { position: plain(selection.active) });
  if (!offer) return;
  const { line, character } = offer.position;
  if (line >= document.lineCount) {
    const end = document.lineAt(document.lineCount - 1).range.end;
    await editor.edit((edit) => edit.insert(end, '\n'));
  }
  await editor.insertSnippet(new SnippetString(offer.snippet), selection.active.with(line, character));
}

/** Opens a sign under other tables: of the place given (address, line, character), or at the caret. */
async function openTables([uri, line, character]: readonly unknown[]): Promise<void> {
  const editor = scoreEditor();
  const caret = editor && { uri: editor.document.uri.toString(), ...plain(editor.selection.active) };
  const isGiven = typeof uri === 'string' && typeof line === 'number' && typeof character === 'number';
  const place = isGiven ? { uri, line, character } : caret;
  if (place !== undefined) await commands.executeCommand('vscode.open', Uri.parse(tablesAddress(place)));
}

/** Opens the help page of a finding: of the one at the caret, or one that the user picks among those of the file. */
async function openHelp(wished: string | undefined): Promise<void> {
  const code = wished ?? (await findingAtCaret());
  if (code !== undefined) await commands.executeCommand('vscode.open', Uri.parse(helpAddress(code)));
}

async function findingAtCaret(): Promise<string | undefined> {
  const editor = scoreEditor();
  if (editor === undefined) return undefined;
  const all = languages.getDiagnostics(editor.document.uri).filter(({ source }) => source === 'bentside');
  const here = all.filter(({ range }) => range.contains(editor.selection.active));
  const codes = [...new Set((here.length > 0 ? here : all).map(codeOf))].filter((code) => code !== '');
  if (codes.length === 0) {
    void window.showInformationMessage(l10n.t('There are no findings in this file.'));
    return undefined;
  }
  return codes.length === 1 ? codes[0] : window.showQuickPick(codes, { title: l10n.t('Open the help page') });
}

const codeOf = ({ code }: { readonly code?: unknown }): string =>
  typeof code === 'string' ? code : ((code as { readonly value?: string } | undefined)?.value ?? '');
