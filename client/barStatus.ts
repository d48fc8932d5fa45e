/** The fill of the bar at the caret, in the status bar: "bar 12: 5 of 8 quavers". */
import { Disposable, l10n, StatusBarAlignment, window, workspace } from 'vscode';
import { Delayed } from './delayed';
import { named, plain, scoreEditor } from './language';
import type { Readings } from './readings';
import type { Server } from './server';

/** Milliseconds after the last move of the caret. */
const QUIET = 60;

export class BarStatus implements Disposable {
  private readonly item = window.createStatusBarItem('bentside.bar', StatusBarAlignment.Left, 9);
  private readonly delayed = new Delayed(QUIET, () => void this.show());
  private readonly parts: Disposable;

  constructor(
    private readonly server: Server,
    private readonly readings: Readings,
  ) {
    this.item.name = l10n.t('Fill of the bar');
    const ask = (): void => this.delayed.ask();
    this.parts = Disposable.from(
      this.item,
      this.delayed,
      window.onDidChangeActiveTextEditor(ask),
      window.onDidChangeTextEditorSelection(ask),
      workspace.onDidChangeTextDocument(ask),
      readings.onDidChange(ask),
      server.onDidStart(ask),
    );
    ask();
  }

  private async show(): Promise<void> {
    const editor = scoreEditor();
    const words = editor === undefined ? null : await this.ask(editor);
    if (scoreEditor() !== editor) return;
    this.item.text = words ?? '';
    if (words) this.item.show();
    else this.item.hide();
  }

  private ask({ document, selection }: NonNullable<ReturnType<typeof scoreEditor>>) {
    const reading = this.readings.of(document);
    const position = plain(selection.active);
    return this.server.ask('bentside/bar', { textDocument: named(document), position, reading });
  }

  dispose(): void {
    this.parts.dispose();
  }
}
