/** What is done for whoever types: a full bar closes itself on Space, letters of dead keys give their apostrophe back. */
import {
  commands,
  type Disposable,
  Position,
  Range,
  type TextDocument,
  type TextDocumentChangeEvent,
  type TextDocumentContentChangeEvent,
  type TextEditor,
  workspace,
} from 'vscode';
import type { TextEdit } from 'vscode-languageserver-types';
import { isOurs, named, plain, scoreEditor } from './language';
import type { Readings } from './readings';
import type { Server } from './server';

/** What is typed in one edit with what was typed before. */
const together = { undoStopBefore: false, undoStopAfter: false } as const;

/** So often what was typed meanwhile may keep a barline from giving way. */
const MOST_TRIES = 5;

/** A barline that is put in: what is typed there next may be the user's own. */
interface OwnBarline {
  readonly document: TextDocument;
  /** Of the text that has it. */
  readonly version: number;
  /** From before it to after the space that follows it. */
  readonly range: Range;
}

export class TypingAids implements Disposable {
  private readonly listener: Disposable;
  private closed: OwnBarline | undefined;

  constructor(
    private readonly server: Server,
    private readonly readings: Readings,
  ) {
    this.listener = workspace.onDidChangeTextDocument((event) => void this.changed(event));
  }

  private async changed({ document, contentChanges, reason }: TextDocumentChangeEvent): Promise<void> {
    const editor = scoreEditor();
    const [change, ...others] = contentChanges;
    if (!isOurs(document) || editor?.document !== document || reason !== undefined) return;
    if (change === undefined || others.length > 0 || !isTyped(change.text)) return;
    // What is offered for a word goes with the word: Space and Enter are the writer's own.
    if (change.text === ' ' || change.text === '|') void commands.executeCommand('hideSuggestWidget');
    if (this.isOwnBarline(document, change)) await this.giveWay(editor);
    else if (isWorthAsking(document, change.text)) await this.aid(editor, change);
  }

  /** The user types the barline that stands already. */
  private isOwnBarline(document: TextDocument, { text, range }: TextDocumentContentChangeEvent): boolean {
    const { closed } = this;
    if (closed?.document !== document || closed.version + 1 !== document.version) return false;
    return /[|:]/.test(text) && range.start.isEqual(closed.range.end);
  }

  private async giveWay(editor: TextEditor): Promise<void> {
    const range = this.closed?.range;
    this.closed = undefined;
    if (range === undefined) return;
    const put = editor.document.getText(range);
    for (let tries = 0; tries < MOST_TRIES && editor.document.getText(range) === put; tries++) {
      if (await editor.edit((edit) => edit.delete(range), together)) return;
    }
  }

  private async aid(editor: TextEditor, { range, text }: TextDocumentContentChangeEvent): Promise<void> {
    const { document } = editor;
    const { version } = document;
    const position = plain(range.start.translate(0, text.length));
    const reading = this.readings.of(document);
    // The server hears of the change by the same event, perhaps after us.
    await new Promise((resolve) => setTimeout(resolve));
    const result = await this.server.ask('bentside/typed', { textDocument: named(document), position, reading });
    // Whatever was typed meanwhile goes before.
    if (!result || document.version !== version) return;
    const [first] = result.edits;
    const closed = result.kind === 'barline' && first !== undefined ? ownBarline(document, first) : undefined;
    // Known beforehand: the user may type on before it is told that it stands.
    this.closed = closed;
    const isDone = await editor.edit((edit) => {
      for (const { range: where, newText } of result.edits) {
        const place = rangeOf(where);
        if (place.isEmpty) edit.insert(place.start, newText);
        else edit.replace(place, newText);
      }
    }, together);
    if (!isDone && this.closed === closed) this.closed = undefined;
    if (isDone && result.kind === 'apostrophe') await commands.executeCommand('editor.action.triggerSuggest');
  }

  dispose(): void {
    this.listener.dispose();
  }
}

/** One sign, a word taken from the list that brings its space, or the accent of a dead key with a letter that it does not go with. */
const isTyped = (text: string): boolean => text.length === 1 || /^(\w+ |[^\u0000-\u007f]\w)$/.test(text);

function isWorthAsking(document: TextDocument, text: string): boolean {
  // Only a letter beyond ASCII can come of a dead key.
  if (!text.endsWith(' ')) return text > '\u007f';
  return workspace.getConfiguration('bentside', document).get('typing.closeFullBars', true);
}

const positionOf = ({ line, character }: TextEdit['range']['start']): Position => new Position(line, character);
const rangeOf = ({ start, end }: TextEdit['range']): Range => new Range(positionOf(start), positionOf(end));

/** What an edit of the text as it now stands puts in. */
function ownBarline(document: TextDocument, { range, newText }: TextEdit): OwnBarline {
  const start = positionOf(range.start);
  return { document, version: document.version + 1, range: new Range(start, start.translate(0, newText.length)) };
}
