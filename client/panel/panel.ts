/** The score panel beside the text: the leaf at hand, engraved, with jumps both ways. */
import {
  Disposable,
  l10n,
  type Position,
  type TextDocument,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { SignsShown } from '../../server/features/protocol';
import { Delayed } from '../delayed';
import { moveInto } from '../frame/frame';
import { ShownScore } from '../frame/shownScore';
import { isOurs, named, openDocument, plain, scoreAtHand, scoreEditor } from '../language';
import type { Readings } from '../readings';
import type { Server } from '../server';
import { panelHtml } from './html';
import { InText } from './inText';
import type { Clefs, FromPage, PanelState, ToPage } from './messages';

const TYPE = 'bentside.score';
/** Milliseconds after the last change before the leaf is drawn again. */
const QUIET = 60;
/** One key goes round the forms in which signs are shown. */
const NEXT_FORM: Readonly<Record<SignsShown, SignsShown>> = { sign: 'above', above: 'full', full: 'sign' };

export class ScorePanel implements Disposable {
  private readonly parts: Disposable;
  private readonly drawing = new Delayed(QUIET, () => void this.draw());
  private readonly following = new Delayed(QUIET, () => void this.markCaret(true));
  private panel: WebviewPanel | undefined;
  private readonly score = new ShownScore();
  private readonly text: InText;
  private page = 0;
  private clefs: Clefs = 'source';
  private ornaments: SignsShown = 'sign';
  /** The reading that stands beneath. */
  private beneath: string | undefined;
  /** Address of the picture that the page has. */
  private image: string | undefined;
  /** Where the caret was last seen. */
  private caret: Position | undefined;
  /** The leaf of the caret is wanted, and its note in view. */
  private turnsToCaret = false;
  /** What is to sound as soon as the page is there. */
  private sounding: 'note' | 'bar' | undefined;
  /** It is to play as soon as the page is there. */
  private plays = false;
  /** What the page knows of readings and tunings, as one text. */
  private offers = '';
  /** It stays with its score whatever text is in front. */
  private isLocked = false;

  constructor(
    private readonly server: Server,
    private readonly readings: Readings,
    private readonly extension: Uri,
  ) {
    this.text = new InText(server, readings, this.score);
    this.parts = Disposable.from(
      this.drawing,
      this.following,
      server.onDidStart(() => this.drawing.ask()),
      readings.onDidChange(() => this.drawing.ask()),
      workspace.onDidChangeTextDocument(({ document }) => {
        if (document === this.score.document) this.drawing.ask();
      }),
      workspace.onDidCloseTextDocument((document) => this.closed(document)),
      window.onDidChangeActiveTextEditor(() => this.turnToActive()),
      window.onDidChangeTextEditorSelection(({ textEditor, kind }) => {
        // What the editor itself restores is no move of the user's.
        if (textEditor.document === this.score.document && kind !== undefined) this.following.ask();
      }),
      window.registerWebviewPanelSerializer(TYPE, {
        deserializeWebviewPanel: (panel, state: PanelState | undefined) => this.restore(panel, state),
      }),
    );
  }

  /** Shows the score in front. */
  async show(): Promise<void> {
    const document = scoreEditor()?.document ?? this.score.document ?? (await scoreAtHand());
    if (document === undefined) return;
    if (this.panel === undefined) {
      const place = { viewColumn: ViewColumn.Beside, preserveFocus: true };
      this.adopt(window.createWebviewPanel(TYPE, l10n.t('Score'), place, {}));
    } else this.panel.reveal(undefined, true);
    this.take(document);
  }

  toggleLock(): void {
    this.isLocked = !this.isLocked;
    this.nameTab();
    // The page keeps it for the time after a reload.
    this.drawing.ask();
    if (!this.isLocked) this.turnToActive();
  }

  /** Sounds the note or bar at the caret of the score in front, or else of the panel's. It is the page that sounds. */
  async sound(what: 'note' | 'bar'): Promise<void> {
    if (this.panel?.visible !== true) {
      this.sounding = what;
      await this.show();
      return;
    }
    const editor = scoreEditor() ?? this.score.editor;
    if (editor === undefined) return;
    const { document, selection } = editor;
    const reading = this.readings.of(document);
    const params = { textDocument: named(document), position: plain(selection.active), reading, what };
    const notes = await this.server.ask('bentside/sounding', params);
    if (notes !== undefined) this.post({ kind: 'sound', notes });
  }

  /** Plays from the marked note on, or stops. It is the page that plays. */
  async togglePlaying(): Promise<void> {
    if (this.panel?.visible !== true) {
      this.plays = true;
      await this.show();
    } else this.post({ kind: 'togglePlaying' });
  }

  private async play({ number, wish }: Extract<FromPage, { kind: 'play' }>): Promise<void> {
    const document = await this.score.opened();
    if (document === undefined) return;
    const playing = await this.server.ask('bentside/playing', { textDocument: named(document), ...wish });
    this.post({ kind: 'playing', number, playing: playing ?? null });
  }

  // ─── the panel and its score ───────────────────────────────────────────────────────────────────────────────────

  private adopt(panel: WebviewPanel): void {
    this.panel = panel;
    moveInto<FromPage>(panel, this.extension, {
      html: panelHtml,
      heard: (message) => this.answer(message),
      closed: () => {
        this.panel = undefined;
        this.score.document = undefined;
        this.isLocked = false;
      },
    });
  }

  /** After the window was loaded again. */
  private async restore(panel: WebviewPanel, state: PanelState | undefined): Promise<void> {
    this.page = state?.page ?? 0;
    this.clefs = state?.clefs ?? 'source';
    this.ornaments = state?.ornaments ?? 'sign';
    this.beneath = state?.beneath ?? undefined;
    this.isLocked = state?.isLocked === true;
    const document = state && (await openDocument(state.uri));
    this.adopt(panel);
    if (document !== undefined) {
      this.score.document = document;
      this.nameTab();
    }
  }

  private take(document: TextDocument): void {
    if (this.score.document !== document) {
      this.page = 0;
      this.beneath = undefined;
    }
    this.turnsToCaret = true;
    this.score.document = document;
    this.nameTab();
    this.drawing.ask();
  }

  private turnToActive(): void {
    const document = scoreEditor()?.document;
    if (this.panel === undefined || this.isLocked || document === undefined || document === this.score.document) return;
    this.take(document);
  }

  /** The panel goes back to whatever score is in front. */
  private closed(document: TextDocument): void {
    if (document !== this.score.document) return;
    this.isLocked = false;
    this.turnToActive();
  }

  private nameTab(): void {
    if (this.panel === undefined || this.score.document === undefined) return;
    const { name } = this.score;
    this.panel.title = this.isLocked ? l10n.t('{0} (kept)', name) : name;
  }

  // ─── drawing ───────────────────────────────────────────────────────────────────────────────────────────────────

  private async draw(): Promise<void> {
    const document = await this.score.opened();
    const { page, clefs, ornaments, beneath } = this;
    if (this.panel === undefined || document === undefined || !isOurs(document)) return;
    const { version } = document;
    const reading = this.readings.of(document);
    const drawn = await this.server.ask('bentside/page', {
      textDocument: named(document),
      reading,
      clefs,
      ornaments,
      page,
      ...(beneath === undefined ? {} : { beneath }),
    });
    // Something newer is on its way.
    if (document !== this.score.document || document.version !== version || drawn === undefined) return;
    if (drawn === null) this.post({ kind: 'failure', says: l10n.t('There is no music to be drawn yet.') });
    else if ('failure' in drawn) this.post({ kind: 'failure', says: drawn.failure });
    else {
      this.page = drawn.page;
      const { isLocked } = this;
      const uri = document.uri.toString();
      const state = { uri, page: drawn.page, clefs, ornaments, beneath: beneath ?? null, isLocked };
      this.post({ kind: 'page', shown: { ...drawn, reading, state } });
      await this.sendImage(document, drawn.facsimile?.image);
      await this.markCaret(false);
      await this.sendOffers(document);
      if (this.plays) this.post({ kind: 'togglePlaying' });
      this.plays = false;
    }
  }

  /** Sends what the score can be read as and tuned in, if it is other than the page knows. */
  private async sendOffers(document: TextDocument): Promise<void> {
    const textDocument = named(document);
    const [readings, tunings] = await Promise.all([
      this.readings.offers(document),
      this.server.ask('bentside/tunings', { textDocument }),
    ]);
    const offers = { reading: this.readings.of(document), readings, tunings: tunings ?? [] };
    const text = JSON.stringify(offers);
    if (document !== this.score.document || text === this.offers) return;
    this.offers = text;
    this.post({ kind: 'offers', ...offers });
  }

  /** Sends the picture of the leaf, if it is another than the page has. */
  private async sendImage(document: TextDocument, image: string | undefined): Promise<void> {
    const address = image === undefined ? undefined : Uri.joinPath(document.uri, '..', image);
    if (address?.toString() === this.image) return;
    this.image = address?.toString();
    const isDrawing = address?.path.toLowerCase().endsWith('.svg') === true;
    this.post({ kind: 'image', bytes: address && (await bytesOf(address)), isDrawing });
  }

  /**
   * Marks the note at the caret. Where the caret has moved, its leaf is turned to and the note brought into view, unless the
   * user has forbidden it; whoever has turned to another leaf stays there.
   */
  private async markCaret(hasMoved: boolean): Promise<void> {
    const editor = this.score.editor;
    if (this.panel === undefined || editor === undefined) return;
    const { document, selection } = editor;
    const isNew = hasMoved && this.caret?.isEqual(selection.active) !== true;
    this.caret = selection.active;
    const note = await this.text.noteAt(document, selection.active);
    if (isNew) this.turnsToCaret = follows(document);
    if (note !== undefined && note.page !== this.page && this.turnsToCaret) {
      this.page = note.page;
      this.drawing.ask();
      return;
    }
    const system = note?.page === this.page ? note.system : null;
    const { id = null, says = '', bar = '' } = note ?? {};
    this.post({ kind: 'mark', id, says, bar, system, follows: this.turnsToCaret });
    this.turnsToCaret = false;
  }

  private post(message: ToPage): void {
    void this.panel?.webview.postMessage(message);
  }

  // ─── what the page says ────────────────────────────────────────────────────────────────────────────────────────

  private async answer(message: FromPage): Promise<void> {
    switch (message.kind) {
      case 'ready':
        this.image = undefined;
        this.offers = '';
        this.drawing.ask();
        if (this.sounding !== undefined) await this.sound(this.sounding);
        this.sounding = undefined;
        break;
      case 'page':
        this.turnTo(message.page);
        break;
      case 'clefs':
        this.clefs = this.clefs === 'source' ? 'modern' : 'source';
        this.drawing.ask();
        break;
      case 'ornaments':
        this.ornaments = NEXT_FORM[this.ornaments];
        this.drawing.ask();
        break;
      case 'reading':
        if (this.score.document !== undefined) await this.readings.choose(this.score.document);
        break;
      case 'note':
        await this.text.goTo(message.id, this.beneath);
        break;
      case 'loop':
        await this.loop(message);
        break;
      case 'region':
        await this.text.writeRegion(message);
        break;
      case 'beneath':
        this.beneath = message.reading ?? undefined;
        this.drawing.ask();
        break;
      case 'read':
        if (this.score.document !== undefined) await this.readings.choose(this.score.document, message.reading);
        break;
      case 'sound':
        await this.sound(message.what);
        break;
      case 'weight':
        await this.text.writeWeight(message);
        break;
      case 'play':
        await this.play(message);
        break;
      case 'turn':
        if (this.score.document !== undefined && follows(this.score.document)) this.turnTo(message.page);
    }
  }

  private turnTo(page: number): void {
    this.page = Math.max(0, page);
    this.drawing.ask();
  }

  /** Tells the page in which bars these notes are. */
  private async loop(message: Extract<FromPage, { kind: 'loop' }>): Promise<void> {
    const bars = await this.text.barsOf(message, this.beneath);
    if (bars !== undefined) this.post({ kind: 'loop', ...bars });
  }

  dispose(): void {
    this.panel?.dispose();
    this.parts.dispose();
  }
}

/** The panel may turn its leaves by itself. */
const follows = (document: TextDocument): boolean =>
  workspace.getConfiguration('bentside', document).get('panel.follow') !== 'never';

async function bytesOf(address: Uri): Promise<Uint8Array | undefined> {
  try {
    return await workspace.fs.readFile(address);
  } catch {
    // A picture that is not there is told of by the findings.
    return undefined;
  }
}
