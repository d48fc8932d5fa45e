/** What is meant by words of a statement or change that cannot stand where they do. */
import type { Fix } from '../findings/finding';
import { replacing } from '../findings/fixes';
import { nearest } from '../nearest';
import { clefOf } from '../vocabulary/clefs';
import type { ClauseEntry, Part, Take } from '../vocabulary/parts';
import { changes, lookUp } from '../vocabulary/statements';
import type { Token } from './lexer';
import { hasUsualLength, takes } from './readers';

/** What is taken for nothing else, so that a keyword that is wanting can be told from it. */
const unmistakable: ReadonlySet<Take> = new Set(['compass', 'splitKey', 'region', 'whole', 'keySign', 'barLength']);

/** Whether a token can only be meant for this part. */
function isMeantForNoOther(part: Part, token: Token): boolean {
  if (part.kind === 'either')
    return part.forms.some(([first]) => first !== undefined && isMeantForNoOther(first, token));
  if (token.kind !== 'word') return false;
  if (part.kind === 'words') return Object.hasOwn(part.words, token.text);
  return part.take === 'meter' ? hasUsualLength(token.text) : unmistakable.has(part.take) && takes(part, token);
}

/** The parts with one of which what consists of them can begin. */
const firstOf = (parts: readonly Part[]): readonly Part[] =>
  parts.slice(0, parts.findIndex(({ optional }) => !optional) + 1);

/** The clause that a strange word means: the one that is called nearly so, or the only one that would take it after its keyword. */
export function meantClause(
  word: Token,
  clauses: readonly [string, ClauseEntry][],
  row: string | undefined,
): { readonly name: string; readonly fix: Fix } | undefined {
  if (word.kind !== 'word') return undefined;
  const named = clauses.filter(([, { opens }]) => opens === undefined);
  const [taking, other] = named.filter(([, { parts }]) => firstOf(parts).some((part) => isMeantForNoOther(part, word)));
  if (taking !== undefined && other === undefined) {
    const [name] = taking;
    return { name, fix: replacing({ pos: word.pos, len: 0 }, `${name} `, `put \`${name}\` before it`) };
  }
  const keywords = named.map(([one]) => one);
  const name = nearest(word.text, row === undefined ? keywords : [...keywords, row]);
  return name === undefined ? undefined : { name, fix: replacing(word, name) };
}

/** The words meant by one that begins no change: what `now` brings is often typed without it, `(C3)`, `(key bb)`, `(clef C3)`. */
export function changeMeant(word: string): string | undefined {
  if (word === 'clef') return 'now';
  const isClef = word.split('+').every((part) => clefOf(part) !== undefined);
  const isOfNow = isClef || lookUp(changes.now?.clauses ?? {}, word) !== undefined;
  return isOfNow ? `now ${word}` : nearest(word, [...Object.keys(changes), 'above', 'below']);
}
