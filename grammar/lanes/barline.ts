/** Barlines as typed, and two that are one. */
import type { IToken } from 'chevrotain';
import type { Problem } from '../findings/finding';
import type { Barline, BarlineShape, Suffix } from '../tree';
import { source, whole } from './patterns';

/** Takes what is wrong. */
interface Problems {
  push(problem: Problem): void;
}

const EDITORS = '[]';
const drawnBarline = whole(source.barline);

/** The barline that a token is; a run that is none is reported and taken for a single one. */
export function barlineOf(token: IToken, problems: Problems): Barline {
  const at = { pos: token.startOffset, len: token.image.length };
  const editors = token.image.endsWith(EDITORS);
  const drawn = editors ? token.image.slice(0, -EDITORS.length) : token.image;
  const isKnown = drawnBarline.test(drawn);
  if (!isKnown) {
    problems.push({
      code: 'bad-barline',
      ...at,
      slots: { text: drawn.slice(0, 20) },
      fixes: [{ title: 'write a single barline', edits: [{ ...at, text: '|' }] }],
    });
  }
  return { kind: 'barline', ...at, shape: isKnown ? (drawn as BarlineShape) : '|', editors, suffixes: [] };
}

/** Says that the barlines of two lines cannot both be meant. */
export const barlineJoint = (above: Barline, below: Barline): Problem => ({
  code: 'barline-joint',
  pos: below.pos,
  len: below.len,
  slots: { above: above.shape, below: below.shape },
});

export const agree = (above: Barline, below: Barline): boolean =>
  above.shape === '|' || below.shape === '|' || above.shape === below.shape;

/** The barline that ends a line and the one that begins the next, as one: the special one of the two. */
export function joinedBarline(above: Barline, below: Barline, problems: Problems): Barline {
  if (!agree(above, below)) problems.push(barlineJoint(above, below));
  const suffixes: readonly Suffix[] = [...above.suffixes, ...below.suffixes];
  return {
    ...above,
    shape: above.shape === '|' ? below.shape : above.shape,
    editors: above.editors || below.editors,
    suffixes,
    again: { pos: below.pos, len: below.len },
  };
}
