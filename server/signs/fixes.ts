/** What mends a finding of a sign, in the text of its lane. */
import type { Fix } from '../../grammar/findings/finding';
import { replacing } from '../../grammar/findings/fixes';
import { nearest } from '../../grammar/nearest';
import { signOf } from '../../grammar/vocabulary/pitches';
import type { BorneSign } from './bearing';

/** An accidental directly after the sign, for each of these alterations of its auxiliary. */
export function accidentalFixes({ mark }: BorneSign, alterations: readonly number[]): Fix[] {
  const { source } = mark.accidentals.at(-1) ?? mark;
  const pos = source.pos + source.len;
  return alterations.flatMap((alteration) => {
    const sign = signOf(alteration);
    if (sign === undefined) return [];
    return [replacing({ pos, len: 0 }, `'${sign}`, `write '${sign} after the sign`)];
  });
}

/** The nearest known words in the place of words in round brackets that say nothing. */
export function wordFix({ mark }: BorneSign, words: readonly string[], known: readonly string[]): Fix[] {
  const typed = words.join(' ');
  const meant = nearest(typed, known);
  const at = mark.form.text.indexOf(typed, mark.form.text.indexOf('('));
  if (meant === undefined || at < 0) return [];
  const { pos } = mark.source;
  return [replacing({ pos: pos + at, len: typed.length }, meant)];
}
