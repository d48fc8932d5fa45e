/** How long elements of a layer last, in semibreves. */
import { add, divide, multiply, type Time, time, ZERO } from '../../../grammar/time';
import { childrenOf, type XmlElement } from '../../export/xml';

/** Values without a number; all others are parts of a semibreve (MEI 5.1, `data.DURATION.cmn`). */
const LONG: Readonly<Record<string, number>> = { maxima: 8, long: 4, breve: 2 };

/** Elements that take time by themselves. */
const TIMED = new Set(['note', 'chord', 'rest', 'space']);

/** Zero of clefs, small notes and whatever else takes no time. `mRest` and `mSpace` fill their measure, whatever it has. */
export function durationOf(element: XmlElement): Time {
  const { name, attributes } = element;
  if (name === 'graceGrp' || attributes.grace !== undefined) return ZERO;
  if (TIMED.has(name)) return writtenValue(attributes);
  if (name === 'tuplet') {
    const ratio = divide(time(Number(attributes.numbase ?? 1)), time(Number(attributes.num ?? 1)));
    return multiply(durationOfAll(childrenOf(element)), ratio);
  }
  return durationOfAll(childrenOf(element));
}

export const durationOfAll = (elements: readonly XmlElement[]): Time =>
  elements.reduce((sum, element) => add(sum, durationOf(element)), ZERO);

function writtenValue({ dur, dots }: XmlElement['attributes']): Time {
  if (dur === undefined) return ZERO;
  const base = LONG[dur] === undefined ? time(1, Number(dur)) : time(LONG[dur]);
  const halves = 2 ** Number(dots ?? 0);
  return multiply(base, time(2 * halves - 1, halves));
}
