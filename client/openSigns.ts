/** The decisions list: signs of which the editor has not said how they are played, one after another, to be decided. */
import {
  commands,
  Disposable,
  EventEmitter,
  l10n,
  type QuickPickItem,
  type TextDocument,
  type TreeDataProvider,
  TreeItem,
  window,
  workspace,
} from 'vscode';
import type { OpenSignItem, OpenSignOffer } from '../server/features/protocol';
import { Delayed } from './delayed';
import { applyEdits, rangeOf } from './edits';
import { isOurs, scoreEditor } from './language';
import type { Server } from './server';

const VIEW = 'bentside.openSigns';
/** The view is there while a score is open. */
const HAS_SCORE = 'bentside.hasScore';
/** Milliseconds after the last change before the list is asked for again. */
const QUIET = 400;

export class OpenSigns implements TreeDataProvider<OpenSignItem>, Disposable {
  private readonly changed = new EventEmitter<void>();
  readonly onDidChangeTreeData = this.changed.event;
  private readonly asking = new Delayed(QUIET, () => void this.ask());
  private readonly view = window.createTreeView(VIEW, { treeDataProvider: this });
  private readonly parts: Disposable;
  private document: TextDocument | undefined;
  private signs: readonly OpenSignItem[] = [];

  constructor(private readonly server: Server) {
    this.parts = Disposable.from(
      this.view,
      this.changed,
      this.asking,
      server.onDidStart(() => this.asking.ask()),
      this.view.onDidChangeVisibility(() => this.asking.ask()),
      window.onDidChangeActiveTextEditor(() => this.take(scoreEditor()?.document)),
      workspace.onDidOpenTextDocument(() => this.take(scoreEditor()?.document)),
      workspace.onDidChangeTextDocument(({ document }) => {
        if (document === this.document) this.asking.ask();
      }),
      workspace.onDidCloseTextDocument((document) => {
        if (document === this.document) this.document = undefined;
        this.take(scoreEditor()?.document);
      }),
    );
    this.take(scoreEditor()?.document);
  }

  // ─── the list ──────────────────────────────────────────────────────────────────────────────────────────────────

  /** Shows the signs of a score; of none, those of the one shown before. */
  private take(document: TextDocument | undefined): void {
    this.document = document ?? this.document;
    void commands.executeCommand('setContext', HAS_SCORE, workspace.textDocuments.some(isOurs));
    this.asking.ask();
  }

  private async ask(): Promise<void> {
    const { document } = this;
    // To realise a score costs time: it is done for whoever looks.
    if (!this.view.visible) return;
    const signs = document && (await this.server.askOf(document, 'bentside/openSigns', {}));
    if (document !== this.document) return;
    this.signs = signs ?? [];
    this.view.message = this.signs.length > 0 ? '' : l10n.t('How each sign is played has been said.');
    this.changed.fire();
  }

  getChildren(sign?: OpenSignItem): OpenSignItem[] {
    return sign === undefined ? [...this.signs] : [];
  }

  /** The list has no branches; the view wants to be told so before it goes to a row. */
  getParent(): undefined {
    return undefined;
  }

  getTreeItem(sign: OpenSignItem): TreeItem {
    const { bar, voice, typed, ways, findings } = sign;
    const item = new TreeItem(l10n.t('bar {0}  {1}  {2}', bar, typed, voice));
    const [first = ''] = [...ways, ...findings];
    item.id = idOf(sign);
    item.description = first;
    item.tooltip = [...ways, ...findings].join('\n');
    item.accessibilityInformation = { label: [item.label, ...ways, ...findings].join('. ') };
    item.contextValue = sign.isOpen ? 'open' : 'told';
    item.command = { command: 'bentside.decideSign', title: l10n.t('Decide'), arguments: [sign] };
    return item;
  }

  // ─── deciding ──────────────────────────────────────────────────────────────────────────────────────────────────

  /** Shows a sign in the text, and asks how it is played; without one that of the list or the caret. */
  async decide(wished: OpenSignItem | undefined): Promise<void> {
    const sign = await this.asItStands(wished ?? (await this.signMeant()));
    if (sign === undefined || this.document === undefined) return;
    await window.showTextDocument(this.document, { selection: rangeOf(sign.range), preserveFocus: true });
    const offer = await pick(sign, await this.offersOf(sign));
    const reason = offer && (await reasonFor(offer));
    if (offer !== undefined && reason !== undefined) await this.settle(sign, offer.id, reason);
  }

  /** It is played as it is played now. */
  async accept(wished: OpenSignItem | undefined): Promise<void> {
    const sign = await this.asItStands(wished ?? (await this.signMeant()));
    const offer = sign && (await this.offersOf(sign)).find(({ kind }) => kind === 'accept');
    if (sign !== undefined && offer !== undefined) await this.settle(sign, offer.id, offer.reason);
  }

  /** The sign at the caret of the editor in front, or else the one chosen in the list; who has none is told. */
  private async signMeant(): Promise<OpenSignItem | undefined> {
    const editor = scoreEditor();
    if (editor === undefined && this.view.selection[0] !== undefined) return this.view.selection[0];
    this.document = editor?.document ?? this.document;
    const signs = this.document && (await this.server.askOf(this.document, 'bentside/openSigns', {}));
    const sign = editor && signs?.find(({ range }) => rangeOf(range).contains(editor.selection.active));
    if (sign === undefined) void window.showInformationMessage(l10n.t('No sign to decide stands at the caret.'));
    return sign;
  }

  /** A sign where it now is; undefined if it is not there any more. */
  private async asItStands(sign: OpenSignItem | undefined): Promise<OpenSignItem | undefined> {
    const signs = sign && this.document && (await this.server.askOf(this.document, 'bentside/openSigns', {}));
    return sign && signs?.find((one) => idOf(one) === idOf(sign));
  }

  private async offersOf({ range: { start: position } }: OpenSignItem): Promise<readonly OpenSignOffer[]> {
    return (this.document && (await this.server.askOf(this.document, 'bentside/signOffers', { position }))) ?? [];
  }

  private async settle(sign: OpenSignItem, id: string, reason: string): Promise<void> {
    const { document } = this;
    if (document === undefined) return;
    const next = this.signs[this.signs.findIndex((one) => idOf(one) === idOf(sign)) + 1];
    const { version } = document;
    // The text may have changed while the user was choosing.
    const now = await this.asItStands(sign);
    const position = now?.range.start;
    const edits = position && (await this.server.askOf(document, 'bentside/settle', { position, id, reason }));
    if (!edits || document.version !== version) {
      void window.showWarningMessage(l10n.t('The text has changed there meanwhile; nothing was written.'));
      return;
    }
    await applyEdits(document, edits);
    await this.goTo(next);
  }

  /** Goes on to the sign that came next, so that a list can be worked through without a pointer. */
  private async goTo(next: OpenSignItem | undefined): Promise<void> {
    if (!this.view.visible) return;
    await this.ask();
    const now = next && this.signs.find((one) => idOf(one) === idOf(next));
    if (now !== undefined) await this.view.reveal(now, { select: true, focus: true });
  }

  dispose(): void {
    this.parts.dispose();
  }
}

type OfferItem = QuickPickItem & { readonly offer: OpenSignOffer };

/** Undefined if the user leaves it, or there is only something to tell. */
const pick = async (
  { typed, bar }: OpenSignItem,
  offers: readonly OpenSignOffer[],
): Promise<OpenSignOffer | undefined> => {
  if (offers.length === 0) return undefined;
  const items = offers.map((offer): OfferItem => ({ label: offer.title, detail: offer.detail, offer }));
  const title = l10n.t('{0} in bar {1}: how is it played?', typed, bar);
  return (await window.showQuickPick(items, { title }))?.offer;
};

/** What is accepted keeps the reason that the server gives; of what is chosen the editor says why. */
const reasonFor = async ({ kind, reason }: OpenSignOffer): Promise<string | undefined> =>
  kind === 'choice'
    ? window.showInputBox({
        value: reason,
        title: l10n.t('Why?'),
        prompt: l10n.t('The reason stands in the annotation.'),
      })
    : reason;

/** Stays the same while other signs are decided. */
const idOf = ({ address, typed }: OpenSignItem): string => `${address} ${typed}`;
