/**
 * Measures that the library cannot draw as they are: it begins a system only between two measures, so one that a system of
 * the source cuts becomes two without a barline between them. Music without bars is cut likewise, for one measure as long
 * as the music would never find a place to break.
 */
import { add, compare, subtract, type Time, ZERO } from '../../../grammar/time';
import { timeElements } from '../../export/mei/notes';
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import { durationOf } from './duration';
import { elementsOf, idOf, isEmptyTime, isOfType, isStave, layersOf, referred, withAttributes } from './element';

/** Where a measure is cut: a time from its beginning, and what stands between its parts. */
interface Cut {
  readonly at: Time;
  readonly between: XmlElement | undefined;
}

/** A section's or ending's children, with measures cut where systems begin in them; free music in shorter stretches. */
export const splitMeasures = (element: XmlElement): XmlElement =>
  childrenOf(element).some(({ name }) => name === 'measure')
    ? {
        ...element,
        content: childrenOf(element).flatMap((child) => (child.name === 'measure' ? parts(child) : [child])),
      }
    : element;

/** A system that begins with an ending begins before it: the library takes one that begins in it for its continuation. */
export const breaksBeforeEndings = (element: XmlElement): XmlElement =>
  childrenOf(element).some(({ name }) => name === 'ending')
    ? { ...element, content: childrenOf(element).flatMap(withBreaksBefore) }
    : element;

function withBreaksBefore(element: XmlElement): readonly XmlElement[] {
  if (element.name !== 'ending') return [element];
  const first = childrenOf(element).findIndex(({ name }) => !BREAKS.has(name));
  const children = childrenOf(element);
  return [...children.slice(0, first), { ...element, content: children.slice(first) }];
}

function parts(measure: XmlElement): readonly XmlElement[] {
  const cuts = [...systemCuts(measure), ...(isOfType(measure, 'free') ? freeCuts(measure) : [])].sort((a, b) =>
    compare(a.at, b.at),
  );
  const found: XmlElement[] = [];
  let rest = withoutBreaks(measure);
  let from = ZERO;
  for (const { at, between } of cuts) {
    const halves = cutAt(rest, subtract(at, from), idOf(measure));
    if (halves === undefined) continue;
    found.push(halves[0], ...(between === undefined ? [] : [between]));
    rest = halves[1];
    from = at;
  }
  return [...found, rest];
}

interface Timed {
  readonly child: XmlElement;
  readonly at: Time;
}

/** The children of a layer with the time when each begins. */
export function timed(layer: XmlElement): readonly Timed[] {
  let now = ZERO;
  return childrenOf(layer).map((child) => {
    const at = now;
    now = add(now, durationOf(child));
    return { child, at };
  });
}

// ─── where ───────────────────────────────────────────────────────────────────────────────────────────────────────────

const BREAKS = new Set(['sb', 'pb']);

const systemCuts = (measure: XmlElement): readonly Cut[] =>
  layersOf(measure).flatMap((layer) =>
    timed(layer)
      .filter(({ child }) => BREAKS.has(child.name))
      .map(({ child, at }) => ({ at, between: child })),
  );

/** So many events of free music stand together at least. */
const STRETCH = 10;

/** Free music is cut before a note of the lower stave that follows one of the upper: there a new harmony begins. */
function freeCuts(measure: XmlElement): readonly Cut[] {
  const cuts: Cut[] = [];
  for (const layer of layersOf(measure)) {
    let since = 0;
    let before: string | number | undefined;
    for (const { child, at } of timed(layer)) {
      if (BREAKS.has(child.name)) since = 0;
      if (compare(durationOf(child), ZERO) === 0) continue;
      const stave = child.attributes.staff;
      if (since >= STRETCH && stave !== undefined && stave !== before) {
        cuts.push({ at, between: undefined });
        since = 0;
      }
      before = stave;
      since += 1;
    }
  }
  return cuts;
}

// ─── how ─────────────────────────────────────────────────────────────────────────────────────────────────────────────

const withoutBreaks = (measure: XmlElement): XmlElement => ({
  ...measure,
  content: childrenOf(measure).map((child) =>
    isStave(child)
      ? {
          ...child,
          content: childrenOf(child).map((layer) => ({
            ...layer,
            content: childrenOf(layer).filter(({ name }) => !BREAKS.has(name)),
          })),
        }
      : child,
  ),
});

/**
 * The measure before and after a time; undefined where something sounds on over it.
 * @param bar the id that the measure had before it was cut: what stands on its barline bears it
 */
function cutAt(measure: XmlElement, at: Time, bar: string): readonly [XmlElement, XmlElement] | undefined {
  const staves = childrenOf(measure)
    .filter(isStave)
    .map((stave) => ({ ...stave, content: childrenOf(stave).map((layer) => withTimeCut(layer, at)) }));
  const isCut = staves.flatMap(childrenOf).every((layer) => timed(layer).every((one) => !straddles(one, at)));
  if (!isCut) return undefined;
  const later = new Set([bar]);
  const half = (isLater: boolean): readonly XmlElement[] =>
    staves.map((stave) => ({ ...stave, content: childrenOf(stave).map((layer) => halfLayer(layer, at, isLater)) }));
  const second = half(true);
  for (const stave of second) for (const element of elementsOf(stave)) later.add(idOf(element));
  const beside = childrenOf(measure).filter((element) => !isStave(element));
  const isLater = ({ attributes }: XmlElement): boolean =>
    later.has(referred(attributes.startid ?? `${attributes.plist ?? ''}`.split(' ')[0]));
  return [
    withAttributes(
      { ...measure, content: [...half(false), ...beside.filter((element) => !isLater(element))] },
      { metcon: 'false', right: 'invis' },
    ),
    withAttributes(
      { ...measure, content: [...second, ...beside.filter(isLater)] },
      { 'xml:id': undefined, metcon: 'false', left: undefined },
    ),
  ];
}

const straddles = ({ child, at: from }: Timed, at: Time): boolean =>
  compare(from, at) < 0 && compare(add(from, durationOf(child)), at) > 0;

/** A layer whose empty time ends, and begins again, at a time that lies within it. */
const withTimeCut = (layer: XmlElement, at: Time): XmlElement => ({
  ...layer,
  content: timed(layer).flatMap((one) => {
    if (!isEmptyTime(one.child) || !straddles(one, at)) return [one.child];
    const before = subtract(at, one.at);
    return [before, subtract(durationOf(one.child), before)].flatMap((part) => timeElements(part, 'space'));
  }),
});

function halfLayer(layer: XmlElement, at: Time, isLater: boolean): XmlElement {
  const children = timed(layer)
    .filter(({ child, at: from }) => fills(child) || compare(from, at) >= 0 === isLater)
    // What fills the measure fills both its parts; what is drawn for it is drawn once.
    .map(({ child }) => (fills(child) && isLater ? xml('mSpace') : child));
  return { ...layer, content: children.length === 0 ? [xml('mSpace')] : children };
}

const fills = ({ name }: XmlElement): boolean => name === 'mRest' || name === 'mSpace';
