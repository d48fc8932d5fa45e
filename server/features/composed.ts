/** Changes that are made one after another, told as changes of the text that was there first. */
import type { TextChange } from '../document/edits';

/** A stretch of the first text that is still there, or what was put in. */
type Piece = { readonly from: number; readonly to: number } | { readonly put: string };

const lengthOf = (piece: Piece): number => ('put' in piece ? piece.put.length : piece.to - piece.from);

const part = (piece: Piece, start: number, end: number): Piece =>
  'put' in piece ? { put: piece.put.slice(start, end) } : { from: piece.from + start, to: piece.from + end };

export class Composed {
  private pieces: readonly Piece[];

  constructor(private readonly first: string) {
    this.pieces = [{ from: 0, to: first.length }];
  }

  /** The text as it now stands. */
  get text(): string {
    return this.pieces.map((piece) => ('put' in piece ? piece.put : this.first.slice(piece.from, piece.to))).join('');
  }

  /** @param changes of the text as it now stands; they do not overlap */
  make(changes: readonly TextChange[]): void {
    for (const change of [...changes].sort((a, b) => b.offset - a.offset || b.length - a.length)) this.makeOne(change);
  }

  private makeOne({ offset, length, text }: TextChange): void {
    this.pieces = [
      ...this.between(0, offset),
      { put: text },
      ...this.between(offset + length, Number.POSITIVE_INFINITY),
    ];
  }

  private between(start: number, end: number): Piece[] {
    const found: Piece[] = [];
    let at = 0;
    for (const piece of this.pieces) {
      const length = lengthOf(piece);
      const [from, to] = [Math.max(start - at, 0), Math.min(end - at, length)];
      if (from < to) found.push(part(piece, from, to));
      at += length;
    }
    return found;
  }

  /** All that was changed, as changes of the first text. */
  get changes(): TextChange[] {
    const changes: TextChange[] = [];
    let [done, put] = [0, ''];
    for (const piece of [...this.pieces, { from: this.first.length, to: this.first.length }]) {
      if ('put' in piece) {
        put += piece.put;
        continue;
      }
      if (put !== '' || piece.from > done) changes.push({ offset: done, length: piece.from - done, text: put });
      [done, put] = [piece.to, ''];
    }
    return changes;
  }
}
