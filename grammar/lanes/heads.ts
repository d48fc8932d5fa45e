/** The heads of spans and options at their places: what in one cannot be, and which labels an option has. */
import type { FindingCode } from '../findings/catalogue';
import { problemOf, type Slots } from '../findings/finding';
import type { Label, Span, SpanItem } from '../tree';
import { isPossibleProportion, type LabelForm, spanWords } from './forms';
import type { ProblemList } from './problems';

const spanList = [...spanWords.keys()].join(', ');

/** The labels of an option's head at their places. */
export function labelsAt(forms: readonly LabelForm[], start: number): readonly Label[] {
  const labels: Label[] = [];
  for (const { at, len, name, layer, doubtful } of forms) {
    const pos = start + at;
    labels.push(layer === undefined ? { pos, len, name, doubtful } : { pos, len, name, doubtful, layer });
  }
  return labels.slice();
}

/**
 * Reports what the head of a span cannot be or cannot take.
 * @returns whether it is known what time the span takes
 */
export function checkSpanHead(head: SpanItem['head'], at: Span, problems: ProblemList): boolean {
  const { word, proportion, ratio, readings } = head;
  const typed = head.text.slice(1);
  const isPossible = proportion === undefined || isPossibleProportion(proportion);
  if (!isPossible) report(problems, 'impossible-proportion', at, { text: typed });
  if (word === undefined) {
    if (proportion === undefined) report(problems, 'unknown-span', at, { text: typed, known: spanList });
    else if (readings !== undefined) report(problems, 'span-takes-no-readings', at, { text: typed });
    return isPossible && proportion !== undefined;
  }
  const allowed = spanWords.get(word);
  if (readings !== undefined && allowed?.readings !== true)
    report(problems, 'span-takes-no-readings', at, { text: word });
  const numbers = ratio !== undefined ? 'ratio' : proportion !== undefined ? 'proportion' : undefined;
  if (numbers !== undefined && allowed?.[numbers] !== true) report(problems, 'span-takes-no-ratio', at, { text: word });
  return isPossible;
}

const report = (problems: ProblemList, code: FindingCode, at: Span, slots: Slots): void =>
  problems.push(problemOf(code, at, slots));
