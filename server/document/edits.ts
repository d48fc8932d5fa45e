/** Changes of a text that leave the rest of it, comments and layout included, as it is. */
import type { AbsoluteFix } from '../../grammar/findings/finding';

/** What is taken away from `offset` on, and what stands there instead. Offsets count UTF-16 units from 0. */
export type TextChange = AbsoluteFix['edits'][number];

const endOf = ({ offset, length }: TextChange): number => offset + length;

const byPlace = (a: TextChange, b: TextChange): number => a.offset - b.offset || endOf(a) - endOf(b);

/** Two insertions at one place come one after the other; anything else that shares a sign overlaps. */
const overlap = (a: TextChange, b: TextChange): boolean => b.offset < endOf(a);

/**
 * The text after changes, whose offsets all count in it as it is.
 * @throws RangeError if two of them overlap or one leaves the text
 */
export function edited(text: string, changes: readonly TextChange[]): string {
  const ordered = [...changes].sort(byPlace);
  const pieces: string[] = [];
  let done = 0;
  ordered.forEach((change, index) => {
    const before = ordered[index - 1];
    if (before !== undefined && overlap(before, change))
      throw new RangeError(`two changes overlap at ${change.offset}`);
    if (change.offset < 0 || change.length < 0 || endOf(change) > text.length) {
      throw new RangeError(`a change at ${change.offset} leaves the text`);
    }
    pieces.push(text.slice(done, change.offset), change.text);
    done = endOf(change);
  });
  return [...pieces, text.slice(done)].join('');
}

/** Of several fixes those that can be made at once: one that overlaps an earlier one is left for later. */
export function together(fixes: readonly AbsoluteFix[]): readonly AbsoluteFix[] {
  const taken: AbsoluteFix[] = [];
  const changes: TextChange[] = [];
  for (const fix of fixes) {
    if (fix.edits.some((edit) => changes.some((other) => clash(edit, other)))) continue;
    taken.push(fix);
    changes.push(...fix.edits);
  }
  return taken;
}

/** Two insertions at one place would each be meant to stand first. */
const clash = (a: TextChange, b: TextChange): boolean =>
  a.offset === b.offset || (a.offset < b.offset ? overlap(a, b) : overlap(b, a));
