/** Findings of one text that stand in another until its own are made. */
import type { Finding } from '../../grammar/findings/finding';
import { rangeAt } from '../../grammar/place';
import type { FileTree } from '../../grammar/tree';

/**
 * The findings of a text where they stand in the text that has come of it. Those that the change touched, from its first sign
 * to its last, are left out; so are all fixes, which are for the text that they were made for.
 */
export function carried(findings: readonly Finding[], from: string, tree: FileTree): readonly Finding[] {
  const to = tree.text;
  if (from === to || findings.length === 0) return findings;
  const before = sharedStart(from, to);
  const after = sharedEnd(from, to, Math.min(from.length, to.length) - before);
  return findings.flatMap((finding) => {
    const [start, end] = [finding.range.start.offset, finding.range.end.offset];
    const isAfter = start >= from.length - after;
    if (!isAfter && end > before) return [];
    const shift = isAfter ? to.length - from.length : 0;
    return [{ ...finding, range: rangeAt(tree, start + shift, end + shift), fixes: [] }];
  });
}

function sharedStart(a: string, b: string): number {
  let length = 0;
  while (length < a.length && a[length] === b[length]) length++;
  return length;
}

function sharedEnd(a: string, b: string, most: number): number {
  let length = 0;
  while (length < most && a[a.length - 1 - length] === b[b.length - 1 - length]) length++;
  return length;
}
