/** Rests beside notes that cross over from another stave: the library does not look at these, and sets rests upon them. */
import { add, compare, type Time } from '../../../grammar/time';
import { childrenOf, type XmlElement } from '../../export/xml';
import { durationOf } from './duration';
import { elementsOf, idOf, mapped, withAttributes } from './element';
import { withoutOssias } from './ossias';
import { timed } from './split';

/** A child of a layer, which may be a chord, a beam or a tuplet. */
interface Stretch {
  readonly element: XmlElement;
  readonly stave: string;
  readonly from: Time;
  readonly to: Time;
}

interface NoteHead {
  readonly stave: string;
  readonly hasCrossed: boolean;
  /** In steps of the scale, from that of the lowest octave. */
  readonly step: number;
}

const SCALE = 'cdefgab';

/** Steps between two heads that leave room for a rest. */
const ROOM = 7;

/** Steps from the lowest head down to a rest under it. */
const UNDER = 4;

export function drawnRests(measure: XmlElement): XmlElement {
  if (measure.name !== 'measure') return measure;
  const stretches = stretchesOf(measure);
  if (!stretches.some((one) => headsIn(one).some(({ hasCrossed }) => hasCrossed))) return measure;
  const steps = new Map(stretches.flatMap((one) => stepsOfRests(one, stretches)));
  return mapped(measure, (element) => {
    const step = steps.get(idOf(element));
    return step === undefined || element.name !== 'rest' ? element : withAttributes(element, placeOf(step));
  });
}

const stretchesOf = (measure: XmlElement): readonly Stretch[] =>
  childrenOf(withoutOssias(measure))
    .filter(({ name }) => name === 'staff')
    .flatMap((staff) =>
      childrenOf(staff).flatMap((layer) =>
        timed(layer).map(({ child, at }) => ({
          element: child,
          stave: `${staff.attributes.n}`,
          from: at,
          to: add(at, durationOf(child)),
        })),
      ),
    );

function headsIn({ element, stave }: Stretch): readonly NoteHead[] {
  const around = element.attributes.staff;
  return [...elementsOf(element)]
    .filter(({ name }) => name === 'note')
    .map(({ attributes: { pname, oct, staff } }) => ({
      stave: `${staff ?? around ?? stave}`,
      hasCrossed: `${staff ?? around ?? stave}` !== stave,
      step: Number(oct) * SCALE.length + SCALE.indexOf(`${pname}`),
    }));
}

/** The rests of a stretch by their ids, each with the step on which it stands clear; none where no note has crossed over. */
function stepsOfRests(stretch: Stretch, all: readonly Stretch[]): readonly (readonly [id: string, step: number])[] {
  const rests = [...elementsOf(stretch.element)].filter(({ name }) => name === 'rest');
  if (rests.length === 0) return [];
  return rests.flatMap((rest) => {
    const stave = `${rest.attributes.staff ?? stretch.stave}`;
    const beside = all.filter((one) => sound(one, stretch)).flatMap(headsIn);
    const heads = beside.filter((head) => head.stave === stave);
    return heads.some(({ hasCrossed }) => hasCrossed) ? [[idOf(rest), clearOf(heads.map(({ step }) => step))]] : [];
  });
}

/** Whether two stretches sound at one time. */
const sound = (a: Stretch, b: Stretch): boolean => compare(a.from, b.to) < 0 && compare(b.from, a.to) < 0;

/** The middle of the widest gap between heads, or a place well under all of them; in either case a line. */
function clearOf(steps: readonly number[]): number {
  const sorted = [...new Set(steps)].sort((a, b) => a - b);
  const gaps = sorted.slice(1).map((upper, i) => ({ lower: sorted[i] ?? upper, upper }));
  const widths = gaps.map(({ lower, upper }) => upper - lower);
  const widest = gaps[widths.indexOf(Math.max(...widths))];
  const isWide = widest !== undefined && widest.upper - widest.lower >= ROOM;
  return onLine(isWide ? (widest.lower + widest.upper) / 2 : (sorted[0] ?? 0) - UNDER);
}

/** Every clef has f3, c4 and g4 on lines: so even steps are lines, from which rests hang and on which they sit. */
const onLine = (step: number): number => 2 * Math.floor(step / 2);

const placeOf = (step: number) => ({ ploc: SCALE.charAt(step % SCALE.length), oloc: Math.floor(step / SCALE.length) });
