/** The reading in which each score is shown, chosen by the user and kept with the workspace. */
import {
  Disposable,
  EventEmitter,
  l10n,
  type Memento,
  type QuickPickItem,
  StatusBarAlignment,
  type TextDocument,
  window,
  workspace,
} from 'vscode';
import type { ChoiceOffer } from '../server/features/protocol';
import { Delayed } from './delayed';
import { isOurs, named, scoreEditor } from './language';
import type { Server } from './server';

/** The key under which the workspace keeps them: address to reading. */
const KEPT = 'readings';
const USUAL = 'written';
/** Milliseconds after an edit before it is asked whether the reading is still there. */
const QUIET = 1_000;

export class Readings implements Disposable {
  private readonly changed = new EventEmitter<TextDocument>();
  readonly onDidChange = this.changed.event;
  private readonly item = window.createStatusBarItem('bentside.reading', StatusBarAlignment.Left, 10);
  private readonly checking = new Delayed(QUIET, () => void this.check());
  private readonly parts: Disposable;

  constructor(
    private readonly server: Server,
    private readonly kept: Memento,
  ) {
    this.item.name = l10n.t('Reading of the score');
    this.item.command = 'bentside.chooseReading';
    this.parts = Disposable.from(
      this.item,
      this.changed,
      window.onDidChangeActiveTextEditor(() => {
        this.show();
        this.checking.ask();
      }),
      workspace.onDidCloseTextDocument(() => this.show()),
      workspace.onDidOpenTextDocument((document) => this.tell(document)),
      workspace.onDidChangeTextDocument(() => this.checking.ask()),
      this.checking,
      server.onDidStart(() => this.tellAll()),
    );
    this.show();
  }

  of(document: TextDocument): string {
    return this.all()[document.uri.toString()] ?? USUAL;
  }

  private tellAll(): void {
    for (const document of workspace.textDocuments) this.tell(document);
    this.checking.ask();
  }

  /** A reading that the score no longer declares, since it was renamed say, is no longer shown. */
  private async check(): Promise<void> {
    const document = scoreEditor()?.document;
    if (document === undefined || this.of(document) === USUAL) return;
    const offers = await this.offers(document);
    const isThere = offers.length === 0 || offers.some(({ name }) => name === this.of(document));
    if (!isThere) await this.choose(document, USUAL);
  }

  /** What the server takes for granted it need not be told. */
  private tell(document: TextDocument): void {
    const reading = this.of(document);
    if (isOurs(document) && reading !== USUAL) this.server.tellReading(document, reading);
  }

  /** Takes a reading, or lets the user pick one. */
  async choose(document: TextDocument, wished?: string): Promise<void> {
    const reading = wished ?? (await this.pick(document));
    if (reading === undefined) return;
    await this.kept.update(KEPT, { ...this.all(), [document.uri.toString()]: reading });
    this.show();
    this.server.tellReading(document, reading);
    this.changed.fire(document);
  }

  /** What the score can be read as. */
  async offers(document: TextDocument): Promise<readonly ChoiceOffer[]> {
    return (await this.server.ask('bentside/choices', { textDocument: named(document) })) ?? [];
  }

  private async pick(document: TextDocument): Promise<string | undefined> {
    const current = this.of(document);
    const items = (await this.offers(document)).map((offer): QuickPickItem & { readonly name: string } => ({
      name: offer.name,
      label: `${offer.name === current ? '$(check) ' : ''}${offer.name}`,
      description: kindNames()[offer.kind],
      detail: offer.description,
    }));
    const picked = await window.showQuickPick(items, {
      title: l10n.t('Choose a reading'),
      placeHolder: l10n.t('Which reading or source is to be shown?'),
      matchOnDetail: true,
    });
    return picked?.name;
  }

  private all(): Readonly<Record<string, string>> {
    return this.kept.get(KEPT, {});
  }

  private show(): void {
    const document = window.activeTextEditor?.document;
    if (document === undefined || !isOurs(document)) {
      this.item.hide();
      return;
    }
    const reading = this.of(document);
    this.item.text = `$(book) ${reading}`;
    this.item.tooltip = l10n.t('The reading that is shown: {0}. Choose another.', reading);
    this.item.accessibilityInformation = { label: this.item.tooltip, role: 'button' };
    this.item.show();
  }

  dispose(): void {
    this.parts.dispose();
  }
}

const kindNames = (): Readonly<Record<ChoiceOffer['kind'], string>> => ({
  written: l10n.t('as written, nothing realised'),
  reading: l10n.t('reading'),
  source: l10n.t('source'),
});
