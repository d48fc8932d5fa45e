/** The heads of spans and options at their places: what in one cannot be, and which labels an option has. */
import type { IToken } from 'chevrotain';
import type { FindingCode } from '../findings/catalogue';
import { type Fix, problemOf, type Slots } from '../findings/finding';
import { nameInstead } from '../nearest';
import type { Label, Span, SpanItem, SpanWord } from '../tree';
import { isPossibleProportion, type LabelForm, spanWords } from './forms';
import { source, whole } from './patterns';
import type { ProblemList } from './problems';
import { isKnownSlip } from './slips';

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
    if (proportion === undefined) {
      const name = /^[A-Za-z]*/.exec(typed)?.[0] ?? '';
      const fixes = nameInstead(name, { pos: at.pos + 1, len: name.length }, spanWords.keys());
      report(problems, 'unknown-span', at, { text: typed, known: spanList }, fixes);
    } else if (readings !== undefined) report(problems, 'span-takes-no-readings', at, { text: typed });
    return isPossible && proportion !== undefined;
  }
  const allowed = spanWords.get(word);
  if (readings !== undefined && allowed?.readings !== true)
    report(problems, 'span-takes-no-readings', at, { text: word });
  const numbers = ratio !== undefined ? 'ratio' : proportion !== undefined ? 'proportion' : undefined;
  if (numbers !== undefined && allowed?.[numbers] !== true) report(problems, 'span-takes-no-ratio', at, { text: word });
  return isPossible;
}

const report = (problems: ProblemList, code: FindingCode, at: Span, slots: Slots, fixes?: readonly Fix[]): void =>
  problems.push(problemOf(code, at, slots, fixes));

/** In the time of how many a tuplet stands where only its own number is said (common practice). */
const inTheTimeOf: Readonly<Record<string, number>> = { 3: 2, 5: 4, 6: 4, 7: 4, 9: 8 };

/** The proportion of a tuplet apart from its bracket, or in other signs: `3in2`, `3:2`, `3/2`. */
const numbersApart = /^(\d{1,2})(?:in|:|\/)(\d{1,2}):?$/;
/** `supplied:`, `inegal2:1`. */
const wordApart = /^([a-z]+)(?::|(\d{1,2}:\d{1,2}))?$/;
const ratioOtherwise = /^(\d{1,2})[-/](\d{1,2})$/;
const names = whole(source.names);

/** The head that is meant where a bracket stands without one and this follows. */
function headApart(text: string): string | undefined {
  const [, word = '', ratio] = wordApart.exec(text) ?? [];
  const allowed = spanWords.get(word as SpanWord);
  if (allowed !== undefined) return ratio === undefined ? word : allowed.ratio ? `${word} ${ratio}` : undefined;
  const [, n = text, m = inTheTimeOf[text]] = numbersApart.exec(text) ?? [];
  return m === undefined ? undefined : `${n}in${m}`;
}

/** The head that is meant where one is followed by what should be glued to it: the reading, or the two numbers in other signs. */
function headLonger(head: string, text: string): string | undefined {
  const allowed = spanWords.get(head as SpanWord);
  const [, long, short] = ratioOtherwise.exec(text) ?? [];
  if (allowed?.ratio && short !== undefined) return `${head} ${long}:${short}`;
  // `{supplied C5`, `{supplied cde`: notes with a slip, no names.
  return allowed?.readings && names.test(text) && !isKnownSlip(text) ? `${head}:${text}` : undefined;
}

/** What a bracket of a span and the token after it are together meant for; undefined where nothing is wrong with them, or nobody knows. */
export function headMeant({ image: open }: IToken, next: IToken): string | undefined {
  const meant = open === '{' ? headApart(next.image) : headLonger(open.slice(1), next.image);
  return meant === undefined ? undefined : `{${meant}`;
}
