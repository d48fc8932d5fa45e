/** What the page of the score panel asks of the text, and does in it. */
import { type Position, type TextDocument, TextEditorRevealType, window } from 'vscode';
import type { NotePlace, Requests } from '../../server/features/protocol';
import { applyEdits, rangeOf } from '../edits';
import type { ShownScore } from '../frame/shownScore';
import { named, plain } from '../language';
import type { Readings } from '../readings';
import type { Server } from '../server';
import type { FromPage } from './messages';

/** What the server would change in the text, if anything. */
type Written = Requests['bentside/region' | 'bentside/weight']['result'] | undefined;
type Message<Kind extends FromPage['kind']> = Extract<FromPage, { kind: Kind }>;

export class InText {
  constructor(
    private readonly server: Server,
    private readonly readings: Readings,
    private readonly score: ShownScore,
  ) {}

  /** The note at a place of the text. */
  async noteAt(document: TextDocument, position: Position): Promise<NotePlace | undefined> {
    const params = { textDocument: named(document), position: plain(position), reading: this.readings.of(document) };
    return (await this.server.ask('bentside/note', params)) ?? undefined;
  }

  /** Where the note of a picture stands in the text. @param beneath the reading that stands beneath */
  private placeOf(
    document: TextDocument,
    id: string,
    beneath: string | undefined,
  ): Promise<Requests['bentside/place']['result'] | undefined> {
    const reading = this.readings.of(document);
    const params = { textDocument: named(document), id, reading, ...(beneath === undefined ? {} : { beneath }) };
    return this.server.ask('bentside/place', params);
  }

  /** Puts the caret on the note of a picture. */
  async goTo(id: string, beneath: string | undefined): Promise<void> {
    const document = await this.score.opened();
    const place = document && (await this.placeOf(document, id, beneath));
    if (!place) return;
    const range = rangeOf(place);
    const shown = this.score.editor;
    const editor = await window.showTextDocument(document, {
      ...(shown?.viewColumn === undefined ? {} : { viewColumn: shown.viewColumn }),
      preserveFocus: true,
      selection: range,
    });
    editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
  }

  /** The bars in which two notes of a picture are, by their numbers. */
  async barsOf(
    { from, to }: Message<'loop'>,
    beneath: string | undefined,
  ): Promise<{ readonly from: string; readonly to: string } | undefined> {
    const document = await this.score.opened();
    if (document === undefined) return undefined;
    const barOf = async (id: string): Promise<string | undefined> => {
      const place = await this.placeOf(document, id, beneath);
      return place ? (await this.noteAt(document, rangeOf(place).start))?.bar : undefined;
    };
    const [first, last] = await Promise.all([barOf(from), barOf(to)]);
    return first === undefined || last === undefined ? undefined : { from: first, to: last };
  }

  /** Writes where a system lies on the picture. */
  writeRegion({ page, system, region }: Message<'region'>): Promise<void> {
    return this.write((document, reading) =>
      this.server.askOf(document, 'bentside/region', { reading, page, system, region }),
    );
  }

  /** Writes how much a note weighs. */
  writeWeight({ id, weight }: Message<'weight'>): Promise<void> {
    return this.write((document, reading) => this.server.askOf(document, 'bentside/weight', { id, reading, weight }));
  }

  private async write(ask: (document: TextDocument, reading: string) => Promise<Written>): Promise<void> {
    const document = await this.score.opened();
    const edit = document && (await ask(document, this.readings.of(document)));
    if (document !== undefined && edit) await applyEdits(document, [edit]);
  }
}
