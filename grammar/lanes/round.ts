/** Round brackets after white space: a change of state, or words above or below. */
import type { IToken } from 'chevrotain';
import { problemOf } from '../findings/finding';
import { gluing } from '../findings/fixes';
import { unquoted } from '../quoted';
import { parseChange } from '../statements/parser';
import type { Item, Junk } from '../tree';
import { movedProblem, type ProblemList } from './problems';
import { endOf, MarkToken, spanOf } from './tokens';

const wordsInRound = /^\(\s*(above|below)\s+("(?:[^"]|"")*")\s*\)$/;
const placeInRound = /^\(\s*(?:above|below|after|before)\s*\)$/;

/** `(above)`: it says where a sign is drawn, and belongs to one. */
export const isPlaceOfSign = ({ image }: IToken): boolean => placeInRound.test(image);

/** @param before the token before it */
export function roundItem(token: IToken, before: IToken, problems: ProblemList): Item {
  const at = spanOf(token);
  const words = wordsInRound.exec(token.image);
  if (words?.[2] !== undefined) {
    return { kind: 'words', ...at, text: unquoted(words[2]), place: words[1] as 'above' | 'below' };
  }
  if (isPlaceOfSign(token)) return placeApart(token, before, problems);
  const { change, problems: inChange } = parseChange(token.image);
  for (const problem of inChange) problems.push(movedProblem(problem, at.pos));
  if (change !== undefined) return { kind: 'change', ...at, change };
  if (inChange.length === 0) problems.push(problemOf('not-understood', at, { text: token.image, meant: '' }));
  return { kind: 'junk', ...at };
}

/** `(above)` after white space: only a sign before it can be meant. */
function placeApart(token: IToken, before: IToken, problems: ProblemList): Junk {
  const at = spanOf(token);
  const fixes = before.tokenType === MarkToken ? [gluing(endOf(before), at.pos)] : [];
  problems.push(problemOf('place-apart', at, { text: token.image }, fixes));
  return { kind: 'junk', ...at };
}
