/** Barlines, repeats and endings at both sides of each measure. */
import { putUnder } from '../../../grammar/lists';
import { format, subtract, type Time } from '../../../grammar/time';
import type { Environment } from '../../score/environment';
import { type DrawnBarline, isSpecial, type Source } from '../../score/score';
import { type Losses, whereBar } from '../losses';
import type { Measure } from '../measures';
import { leaf, type XmlElement, xml } from '../xml';
import { editorialElements, footnoteOf } from './editorial';
import { fermataElement } from './notations';
import { playedOrder } from './order';
import { BARLINES } from './tables';

export interface Barlines {
  readonly left: XmlElement | undefined;
  readonly right: XmlElement | undefined;
}

/** One side of a measure before it is written. */
interface Side {
  style: string | undefined;
  editors: boolean;
  footnote: string | undefined;
  /** What stands on the barline, in the order that the type `barline` wants. */
  marks: readonly XmlElement[];
  repeat: 'backward' | 'forward' | undefined;
  /** How often a strain is played that ends here, where it is not twice. */
  times: number | undefined;
  ending: { readonly number: number; readonly type: 'start' | 'stop' | 'discontinue' } | undefined;
}

const plain = (): Side => ({
  style: undefined,
  editors: false,
  footnote: undefined,
  marks: [],
  repeat: undefined,
  times: undefined,
  ending: undefined,
});

/** The barlines of all measures, in their order. */
export function barlinesOf(
  measures: readonly Measure[],
  environment: Environment,
  losses: Losses,
): readonly Barlines[] {
  const lefts = measures.map(plain);
  const rights = measures.map(plain);
  const orders = new Map([...new Set(measures.map(({ piece }) => piece))].map((piece) => [piece, playedOrder(piece)]));
  for (const [i, measure] of measures.entries()) {
    draw(measure, measures[i + 1], rights[i], lefts[i + 1], losses);
    drawMarks(measure.bar.closing, measure, rights[i], environment, losses);
    drawMarks(measure.bar.opening, measure, lefts[i], environment, losses);
    drawOpening(measure, measures[i - 1], lefts[i], rights[i - 1]);
    const right = rights[i];
    if (right !== undefined) right.times = orders.get(measure.piece)?.times.get(measure.bar.index);
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
  const endsPiece = measure.bar.index === measure.piece.bars.length - 1;
  right.style = closing === undefined ? 'none' : look?.right;
  right.editors = closing?.editors ?? false;
  if (look?.backward === true) right.repeat = 'backward';
  if (look?.forward === true) {
    if (next !== undefined && nextLeft !== undefined && next.piece === measure.piece) begin(nextLeft, right.editors);
    else if (endsPiece) losses.add('musicxml-repeat-open', {}, whereBar(measure.system, measure.bar));
  }
  if (endsPiece && next !== undefined && !isSpecial(closing)) right.style = 'light-heavy';
}

/** A segno or fermatas on a barline; `fin` is a direction, and a curve is drawn to the nearest note. */
function drawMarks(
  drawn: DrawnBarline | undefined,
  measure: Measure,
  side: Side | undefined,
  environment: Environment,
  losses: Losses,
): void {
  if (side === undefined || drawn === undefined) return;
  const named = (name: string) => drawn.marks.filter(({ form }) => form.name === name);
  const annotations = [...drawn.annotations, ...drawn.marks.flatMap((mark) => mark.annotations)];
  const where = (source: Source) => ({ source, system: measure.system, bar: measure.bar });
  side.footnote = footnoteOf(annotations, environment);
  side.marks = [
    ...named('renvoi')
      .slice(0, 1)
      .map(() => xml('segno')),
    ...named('fermata').slice(0, 2).map(fermataElement),
  ];
  for (const { source } of annotations) losses.add('musicxml-annotation', { voice: 'the barlines' }, where(source));
  for (const { form, source } of drawn.marks) {
    if (!ON_BARLINES.has(form.name)) losses.add('musicxml-mark-barline', { mark: form.text }, where(source));
  }
}

/** Marks on a barline that the export writes, as they are or at the nearest note. */
const ON_BARLINES: ReadonlySet<string> = new Set(['renvoi', 'fermata', 'fin', 'u', 'line', '.']);

function begin(left: Side, editors: boolean): void {
  left.style = BARLINES['||:'].left;
  left.repeat = 'forward';
  left.editors ||= editors;
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
  const look = BARLINES[opening.shape];
  left.editors ||= opening.editors;
  if (look.forward) begin(left, opening.editors);
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
    const closed = isSpecial(measure.bar.closing);
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
    if (bars[i]?.ending !== undefined || isSpecial(before?.closing)) return undefined;
    if (sections.some((section) => section.firstBar === i)) return undefined;
    if (before?.ending !== undefined) return before.ending;
  }
  return undefined;
}

function barline(location: 'left' | 'right', side: Side | undefined): XmlElement | undefined {
  if (side === undefined) return undefined;
  const { style, editors, footnote, marks, repeat, times, ending } = side;
  const content = [
    ...editorialElements({ footnote, level: editors ? "editor's" : undefined, bracket: editors }),
    ...marks,
    ending === undefined ? undefined : xml('ending', { number: ending.number, type: ending.type }),
    repeat === undefined
      ? undefined
      : xml('repeat', { direction: repeat, times: repeat === 'backward' ? times : undefined }),
  ].filter((element) => element !== undefined);
  if (style === undefined && content.length === 0) return undefined;
  return xml('barline', { location }, [style === undefined ? undefined : leaf('bar-style', style), ...content]);
}

// ─── within a measure ────────────────────────────────────────────────────────────────────────────────────────────

export interface PlacedBarline {
  /** From the start of the measure. */
  readonly offset: Time;
  readonly element: XmlElement;
}

/**
 * Barlines that only some voices draw. A barline of MusicXML crosses all staves, so a plain one is drawn short and each
 * says whose it is.
 */
export function innerBarlines({ bar }: Measure, environment: Environment): readonly PlacedBarline[] {
  const moments = new Map<string, (typeof bar.inner)[number][]>();
  for (const one of bar.inner) {
    putUnder(moments, format(one.onset), one);
  }
  return [...moments.values()].flatMap((drawn) => {
    const [first] = drawn;
    if (first === undefined) return [];
    const special = drawn.find(isSpecial)?.shape;
    const style = (special === undefined ? undefined : BARLINES[special].right) ?? 'short';
    const names = drawn.map(({ voice }) => environment.voices[voice]?.name ?? '').join(', ');
    const footnote = xml('footnote', {}, `drawn in ${names} only`);
    const element = xml('barline', { location: 'middle' }, [leaf('bar-style', style), footnote]);
    return [{ offset: subtract(first.onset, bar.onset), element }];
  });
}
