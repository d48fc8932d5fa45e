/** The score that a panel shows, in view or not, while its text is closed and opened again. */
import { type TextDocument, type TextEditor, window } from 'vscode';
import { fileName, openDocument } from '../language';

export class ShownScore {
  document: TextDocument | undefined;

  /** As it is open; one whose text was closed is opened again, since nobody answers for a closed one. */
  async opened(): Promise<TextDocument | undefined> {
    const { document } = this;
    if (document?.isClosed !== true) return document;
    const again = document.isUntitled ? undefined : await openDocument(document.uri.toString());
    if (this.document === document) this.document = again;
    return again;
  }

  /** The editor in which it is in view. */
  get editor(): TextEditor | undefined {
    const { document } = this;
    return document && window.visibleTextEditors.find((editor) => editor.document === document);
  }

  get name(): string {
    return this.document === undefined ? '' : fileName(this.document.uri);
  }
}
