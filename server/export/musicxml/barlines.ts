/** Barlines, repeats and endings at both sides of each measure. */
import type { BarlineShape } from '../../../grammar/tree';
import { type Losses, whereBar } from './losses';
import type { Measure } from './measures';
import { BARLINES } from './tables';
import { leaf, type XmlElement, xml } from './xml';

export interface Barlines {
  readonly left: XmlElement | undefined;
  readonly right: XmlElement | undefined;
}

/** One side of a measure before it is written. */
interface Side {
  style: string | undefined;
  editors: boolean;
  repeat: 'backward' | 'forward' | undefined;
  ending: { readonly number: number; readonly type: 'start' | 'stop' | 'discontinue' } | undefined;
}

const plain = (): Side => ({ style: undefined, editors: false, repeat: undefined, ending: undefined });

/** The barlines of all measures, in their order. */
export function barlinesOf(measures: readonly Measure[], losses: Losses): readonly Barlines[] {
  const lefts = measures.map(plain);
  const rights = measures.map(plain);
  for (const [i, measure] of measures.entries()) {
    draw(measure, measures[i + 1], rights[i], lefts[i + 1], losses);
    drawOpening(measure, measures[i - 1], lefts[i], rights[i - 1]);
  }
  drawEndings(measures, lefts, rights);
  return measures.map((_, i) => ({ left: barline('left', lefts[i]), right: barline('right', rights[i]) }));
}

/** The barline at the end of a measure, which may also begin a repeat of the next. */
function draw(
  measure: Measure,
  next: Measure | undefined,
  right: Side | undefined,
  nextLeft: Side | undefined,
  losses: Losses,
): void {
  if (right === undefined) return;
  const { closing } = measure.bar;
  const look = closing === undefined ? undefined : BARLINES[closing.shape];
  right.style = closing === undefined ? 'none' : look?.right;
  right.editors = closing?.editors ?? false;
  if (look?.backward === true) right.repeat = 'backward';
  if (look?.forward === true) {
    if (next !== undefined && nextLeft !== undefined && next.piece === measure.piece) begin(nextLeft, right.editors);
    else if (measure.bar.index === measure.piece.bars.length - 1) tellForward(measure, losses);
  }
  const endsPiece = measure.bar.index === measure.piece.bars.length - 1;
  if (endsPiece && next !== undefined && !isSpecial(closing?.shape)) right.style = 'light-heavy';
}

const isSpecial = (shape: BarlineShape | undefined): boolean => shape !== undefined && shape !== '|';

function begin(left: Side, editors: boolean): void {
  left.style = BARLINES['||:'].left;
  left.repeat = 'forward';
  left.editors ||= editors;
}

function tellForward(measure: Measure, losses: Losses): void {
  losses.add('musicxml-repeat-open', {}, whereBar(measure.system, measure.bar));
}

/** A special barline at the start of a system or lane; what it says of the bar before goes there. */
function drawOpening(
  measure: Measure,
  before: Measure | undefined,
  left: Side | undefined,
  right: Side | undefined,
): void {
  const { opening } = measure.bar;
  if (opening === undefined || left === undefined) return;
  const look = BARLINES[opening];
  if (look.forward) begin(left, false);
  else if (look.left !== undefined) left.style = look.left;
  if (look.backward && right !== undefined && before?.piece === measure.piece) {
    right.style = look.right;
    right.repeat = 'backward';
  }
}

/** An ending runs to the next ending, section, special barline or the end of the piece. */
function drawEndings(measures: readonly Measure[], lefts: readonly Side[], rights: readonly Side[]): void {
  let number = measures[0] === undefined ? undefined : endingBefore(measures[0]);
  for (const [i, measure] of measures.entries()) {
    const { ending } = measure.bar;
    number = ending ?? number;
    const left = lefts[i];
    const right = rights[i];
    if (number === undefined || left === undefined || right === undefined) continue;
    if (ending !== undefined || i === 0) left.ending = { number, type: 'start' };
    const closed = isSpecial(measure.bar.closing?.shape);
    if (closed || endsWith(measure, measures[i + 1])) {
      right.ending = { number, type: closed ? 'stop' : 'discontinue' };
      number = undefined;
    }
  }
}

/** Whether an ending stops after this measure for want of more. */
function endsWith(measure: Measure, next: Measure | undefined): boolean {
  if (next === undefined || next.piece !== measure.piece || next.bar.ending !== undefined) return true;
  return measure.piece.sections.some((section) => section.firstBar === next.bar.index);
}

/** The ending in which a measure stands that opens the export. */
function endingBefore(measure: Measure): number | undefined {
  const { bars, sections } = measure.piece;
  for (let i = measure.bar.index; i > 0; i--) {
    const before = bars[i - 1];
    if (bars[i]?.ending !== undefined || isSpecial(before?.closing?.shape)) return undefined;
    if (sections.some((section) => section.firstBar === i)) return undefined;
    if (before?.ending !== undefined) return before.ending;
  }
  return undefined;
}

function barline(location: 'left' | 'right', side: Side | undefined): XmlElement | undefined {
  if (side === undefined) return undefined;
  const { style, editors, repeat, ending } = side;
  const bare = style === undefined && repeat === undefined && ending === undefined;
  if (bare && !editors) return undefined;
  return xml('barline', { location }, [
    style === undefined && !(bare && editors) ? undefined : leaf('bar-style', style ?? 'regular'),
    editors ? xml('level', { bracket: 'yes' }, "editor's") : undefined,
    ending === undefined ? undefined : xml('ending', { number: ending.number, type: ending.type }),
    repeat === undefined ? undefined : xml('repeat', { direction: repeat }),
  ]);
}
