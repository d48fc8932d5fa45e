/** The tuning panel: how the score at hand is tuned by ear, from the fork or after another piece. */
import {
  Disposable,
  l10n,
  type TextDocument,
  type Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { TuningAnswer, TuningChoice, TuningParams } from '../../server/features/protocol';
import { Delayed } from '../delayed';
import { applyEdits } from '../edits';
import { moveInto } from '../frame/frame';
import { ShownScore } from '../frame/shownScore';
import { fileName, isOurs, openDocument, scoreAtHand, scoreEditor } from '../language';
import type { Readings } from '../readings';
import type { Server } from '../server';
import { beforeChoice, choiceOf, FROM_THE_FORK, type OpenScore, wantedChoice } from './choices';
import { tuningHtml } from './html';
import type { FromPage, ToPage, TuningState } from './messages';
import { pageOf } from './words';

const TYPE = 'bentside.tuning';
/** Milliseconds after the last change before the tuning is asked for again. */
const QUIET = 200;

type Wish = Omit<TuningState, 'uri'>;

export class TuningPanel implements Disposable {
  private readonly parts: Disposable;
  private readonly showing = new Delayed(QUIET, () => void this.refresh());
  private panel: WebviewPanel | undefined;
  /** It stays with this score: whoever walks through the steps looks at other texts, too. */
  private readonly score = new ShownScore();
  private wish: Wish = {};

  constructor(
    private readonly server: Server,
    private readonly readings: Readings,
    private readonly extension: Uri,
  ) {
    this.parts = Disposable.from(
      this.showing,
      server.onDidStart(() => this.showing.ask()),
      readings.onDidChange(() => this.showing.ask()),
      workspace.onDidChangeTextDocument(({ document }) => this.touched(document)),
      workspace.onDidOpenTextDocument((document) => this.touched(document)),
      workspace.onDidCloseTextDocument((document) => this.touched(document)),
      window.registerWebviewPanelSerializer(TYPE, {
        deserializeWebviewPanel: (panel, state: TuningState | undefined) => this.restore(panel, state),
      }),
    );
  }

  /** Shows a score, as a rule the one in front. @param wanted another tuning than that of the reading shown */
  async show(wanted?: TuningChoice, score?: TextDocument): Promise<void> {
    const document = score ?? scoreEditor()?.document ?? this.score.document ?? (await scoreAtHand());
    if (document === undefined) return;
    if (document !== this.score.document || wanted !== undefined) this.wish = wanted === undefined ? {} : { wanted };
    this.score.document = document;
    if (this.panel === undefined) this.adopt(window.createWebviewPanel(TYPE, l10n.t('Tuning'), ViewColumn.Beside, {}));
    else this.panel.reveal();
    this.nameTab();
    this.showing.ask();
  }

  /** Other scores can be chosen, and what is included is seen here, too. */
  private touched(document: TextDocument): void {
    if (isOurs(document)) this.showing.ask();
  }

  // ─── the panel and its score ───────────────────────────────────────────────────────────────────────────────────

  private adopt(panel: WebviewPanel): void {
    this.panel = panel;
    moveInto<FromPage>(panel, this.extension, {
      html: tuningHtml,
      heard: (message) => this.answer(message),
      closed: () => {
        this.panel = undefined;
        this.score.document = undefined;
      },
    });
  }

  /** After the window was loaded again; without its score it has nothing to show. */
  private async restore(panel: WebviewPanel, state: TuningState | undefined): Promise<void> {
    const document = state && (await openDocument(state.uri));
    if (state === undefined || document === undefined) {
      panel.dispose();
      return;
    }
    this.score.document = document;
    this.wish = wishOf(state);
    this.adopt(panel);
    this.nameTab();
  }

  private nameTab(): void {
    if (this.panel !== undefined && this.score.document !== undefined)
      this.panel.title = l10n.t('Tuning: {0}', this.score.name);
  }

  // ─── what is shown ─────────────────────────────────────────────────────────────────────────────────────────────

  private paramsFor(document: TextDocument): Omit<TuningParams, 'textDocument'> {
    const reading = this.readings.of(document);
    return { reading, wanted: { kind: 'reading', reading }, ...this.wish };
  }

  private async refresh(): Promise<void> {
    // One that is hidden asks when it is shown again.
    if (this.panel?.visible !== true) return;
    const document = await this.score.opened();
    if (document === undefined) return;
    const params = this.paramsFor(document);
    const answer = await this.server.askOf(document, 'bentside/tuning', params);
    if (!answer || document !== this.score.document) return;
    void this.panel?.webview.postMessage(this.messageOf(document, params, answer));
  }

  private messageOf(
    document: TextDocument,
    { reading, wanted, before }: Omit<TuningParams, 'textDocument'>,
    answer: TuningAnswer,
  ): ToPage {
    const others = this.otherScores(document);
    const choices = {
      state: { uri: document.uri.toString(), ...this.wish },
      reading,
      wanted: wantedChoice(answer, others, wanted),
      before: beforeChoice(answer, others, before),
      pitch: answer.pitch,
      standards: answer.standards,
    };
    return { choices, shown: answer.shown === undefined ? (answer.failure ?? '') : pageOf(answer.shown) };
  }

  private otherScores(document: TextDocument): OpenScore[] {
    return workspace.textDocuments
      .filter((other) => isOurs(other) && other !== document)
      .map((other) => ({ uri: other.uri.toString(), name: fileName(other.uri), reading: this.readings.of(other) }));
  }

  // ─── what the page says ────────────────────────────────────────────────────────────────────────────────────────

  private async answer(message: FromPage): Promise<void> {
    switch (message.kind) {
      case 'ready':
        break;
      case 'reading':
        await this.chooseReading();
        break;
      case 'wanted':
        // Another tuning has its own pitch.
        this.wish = { ...without(this.wish, 'pitch'), wanted: choiceOf(message.value) };
        break;
      case 'words':
        this.wish = { ...this.wish, wanted: { kind: 'words', words: message.words } };
        break;
      case 'before':
        this.wish =
          message.value === FROM_THE_FORK
            ? without(this.wish, 'before')
            : { ...this.wish, before: choiceOf(message.value) };
        break;
      case 'pitch':
        this.wish = { ...this.wish, pitch: message.pitch };
        break;
      case 'write':
        await this.write();
    }
    this.showing.ask();
  }

  /** Another reading has its own tuning, unless one of no reading is shown. */
  private async chooseReading(): Promise<void> {
    const { document } = this.score;
    if (document === undefined) return;
    const shown = this.readings.of(document);
    await this.readings.choose(document);
    const isOther = this.readings.of(document) !== shown;
    if (isOther && this.wish.wanted?.kind === 'reading') this.wish = without(this.wish, 'wanted');
  }

  /** Writes what is shown into the text, in one step that can be undone. */
  private async write(): Promise<void> {
    const document = await this.score.opened();
    const edits = document && (await this.server.askOf(document, 'bentside/writeTuning', this.paramsFor(document)));
    if (document !== undefined && edits) await applyEdits(document, edits);
  }

  dispose(): void {
    this.panel?.dispose();
    this.parts.dispose();
  }
}

const wishOf = ({ uri: _, ...wish }: TuningState): Wish => wish;

function without(wish: Wish, part: keyof Wish): Wish {
  const { [part]: _, ...rest } = wish;
  return rest;
}
