/** Barlines as typed, and two that are one. */
import type { IToken } from 'chevrotain';
import type { Problem } from '../findings/finding';
import { replacing } from '../findings/fixes';
import type { Barline, BarlineShape, Span } from '../tree';
import { source, whole } from './patterns';

/** Takes what is wrong. */
interface Problems {
  push(problem: Problem): void;
}

const EDITORS = '[]';
const known = whole(source.barline);

/** What is probably meant by a run that is no barline: dots before it end a repeat, dots after it begin one. */
function meantBy(run: string): BarlineShape {
  if (run.startsWith(':')) return run.endsWith(':') ? ':||:' : ':||';
  return run.endsWith(':') ? '||:' : '|';
}

/** A barline as it is typed; a run that is none is told and taken for the one that is probably meant. */
export function drawnBarline(
  at: Span,
  run: string,
  problems: Problems,
): { readonly shape: BarlineShape; readonly editors: boolean } {
  const editors = run.endsWith(EDITORS);
  const drawn = editors ? run.slice(0, -EDITORS.length) : run;
  if (known.test(drawn)) return { shape: drawn as BarlineShape, editors };
  const shape = meantBy(drawn);
  const text = editors ? `${shape}${EDITORS}` : shape;
  const fix = replacing(at, text, shape === '|' ? 'write a single barline' : undefined);
  problems.push({ code: 'bad-barline', ...at, slots: { text: drawn.slice(0, 20) }, fixes: [fix] });
  return { shape, editors };
}

/** The barline that a token is. */
export function barlineOf(token: IToken, problems: Problems): Barline {
  const at = { pos: token.startOffset, len: token.image.length };
  const { shape, editors } = drawnBarline(at, token.image, problems);
  return { kind: 'barline', ...at, shape, editors, suffixes: [] };
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

/** The barline that ends a line and those that begin the next lines, as one: the special one of them. */
export function joinedBarline(first: Barline, further: readonly Barline[], problems: Problems): Barline {
  let { shape } = first;
  for (const below of further) {
    const above = { ...first, shape };
    if (!agree(above, below)) problems.push(barlineJoint(above, below));
    if (shape === '|') shape = below.shape;
  }
  const all = [first, ...further];
  return {
    ...first,
    shape,
    editors: all.some(({ editors }) => editors),
    suffixes: all.flatMap(({ suffixes }) => suffixes),
    again: further.flatMap(({ pos, len, again = [] }) => [{ pos, len }, ...again]),
  };
}
