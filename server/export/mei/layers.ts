/** One voice in one measure: its events in time, within the tuplets, beams and passages around them. */
import { add, compare, gcd, isNegative, isZero, subtract, type Time, ZERO } from '../../../grammar/time';
import type { Environment } from '../../score/environment';
import type { Chunk } from '../chunks';
import type { Ratio } from '../values';
import { type XmlElement, xml } from '../xml';
import type { Between } from './definitions';
import { isState, stateElement } from './editorial';
import { type Enclosure, type Item, type Nested, nested } from './nesting';
import { asDrawn, chunkElements, hiddenTuplet, isColour, timeElements, tupletElement, type Writing } from './notes';
import { placeMark, placeOf } from './places';

export interface LayerParts {
  /** The stave of the layer. */
  readonly home: number;
  readonly chunks: readonly Chunk[];
  /** What stands between the notes, in the order of time. */
  readonly between: readonly Between[];
  /** The beam under which a chunk stands. */
  readonly beams: ReadonlyMap<Chunk, object>;
  readonly duration: Time;
}

/** The content of a layer; `crossing`: beams that begin or end inside a tuplet or passage and stand beside the layer. */
export function layerContent({ home, chunks, between, beams, duration }: LayerParts, writing: Writing): Nested {
  const items: Item[] = [];
  const waiting = [...between];
  let now: Time = ZERO;
  let place: string | undefined;
  const passTo = (moment: Time): void => {
    const missing = subtract(moment, now);
    if (isZero(missing) || isNegative(missing)) return;
    items.push({ elements: timeElements(missing, 'space'), within: [] });
    now = moment;
  };
  const putWaiting = (until: Time): void => {
    for (let one = waiting[0]; one !== undefined && compare(one.offset, until) <= 0; one = waiting[0]) {
      passTo(one.offset);
      items.push({ elements: [one.element], within: [] });
      waiting.shift();
    }
  };
  for (let i = 0; i < chunks.length; ) {
    const [chunk, ...others] = partsOf(chunks, i);
    if (chunk === undefined) break;
    putWaiting(chunk.offset);
    passTo(chunk.offset);
    const here = placeOf(chunk);
    if (here !== place) for (const of of [place, here]) if (of !== undefined) items.push(marked(of));
    place = here;
    items.push(
      runsThrough(chunk)
        ? { elements: [through([chunk, ...others], home, writing)], within: statesOf(chunk, writing.environment) }
        : {
            elements: chunkElements(chunk, home, writing),
            within: enclosuresOf(chunk, beams.get(chunk), writing.environment),
          },
    );
    now = [chunk, ...others].reduce((sum, part) => add(sum, part.duration), chunk.offset);
    i += 1 + others.length;
  }
  if (place !== undefined) items.push(marked(place));
  putWaiting(duration);
  return nested(items, ({ rank }) => rank === RANKS.beam);
}

const marked = (place: string): Item => ({ elements: [placeMark(place)], within: [] });

// ─── through the barline ─────────────────────────────────────────────────────────────────────────────────────────

const runsThrough = ({ event, first, last }: Chunk): boolean =>
  !(first && last) && (event.kind === 'note' || event.kind === 'rest');

/** A chunk with those that follow it of the same event. */
function partsOf(chunks: readonly Chunk[], from: number): readonly Chunk[] {
  const first = chunks[from];
  if (first === undefined || !runsThrough(first)) return chunks.slice(from, from + 1);
  const end = chunks.findIndex((chunk, i) => i > from && (chunk.event !== first.event || chunk.first));
  return chunks.slice(from, end < 0 ? undefined : end);
}

/** The parts of a note that runs through a barline, which fill their measures, beside the one note that the source draws. */
function through(parts: readonly Chunk[], home: number, writing: Writing): XmlElement {
  const [first] = parts;
  const items = parts.map((chunk) => ({
    elements: chunkElements(chunk, home, writing),
    within: proportionsAround(chunk),
  }));
  const duration = parts.reduce((sum, part) => add(sum, part.duration), ZERO);
  const drawn = first?.first === true ? [asDrawn(first, home, writing)] : timeElements(duration, 'space');
  return xml('choice', {}, [xml('reg', {}, nested(items, () => false).elements), xml('orig', {}, drawn)]);
}

// ─── what encloses ───────────────────────────────────────────────────────────────────────────────────────────────

/** From the outermost inwards, where two enclose the same. */
const RANKS = { state: 0, small: 1, tuplet: 2, colour: 3, beam: 4 } as const;

function enclosuresOf(chunk: Chunk, beam: object | undefined, environment: Environment): readonly Enclosure[] {
  const { event, system } = chunk;
  const { small } = event;
  return [
    ...statesOf(chunk, environment),
    ...(small === undefined
      ? []
      : [
          {
            of: small,
            system,
            rank: RANKS.small,
            wrap: (children: readonly XmlElement[]) => xml('graceGrp', { attach: ATTACHED[small.to] }, children),
          },
        ]),
    ...proportionsAround(chunk),
    ...(beam === undefined
      ? []
      : [{ of: beam, system, rank: RANKS.beam, wrap: (children: readonly XmlElement[]) => xml('beam', {}, children) }]),
  ];
}

/** What is unclear, supplied, deleted or added. */
const statesOf = ({ event, system }: Chunk, environment: Environment): readonly Enclosure[] =>
  event.spans
    .filter(({ head }) => isState(head))
    .map((span) => ({
      of: span,
      system,
      rank: RANKS.state,
      wrap: (children) => stateElement(span.head, children, environment),
    }));

/** Tuplets, and proportions of which the source draws no sign. */
const proportionsAround = (chunk: Chunk): readonly Enclosure[] => [
  ...chunk.event.tuplets.map((tuplet) => ({
    of: tuplet,
    system: chunk.system,
    rank: RANKS.tuplet,
    wrap: (children: readonly XmlElement[]) => tupletElement(tuplet, children),
  })),
  ...proportionsOf(chunk).map(({ of, ratio }) => ({
    of,
    system: chunk.system,
    rank: RANKS.colour,
    wrap: (children: readonly XmlElement[]) => hiddenTuplet(ratio, children),
  })),
];

/** MEI 5.1, `graceGrp`: attached to the following event or to the preceding one. */
const ATTACHED = { next: 'post', previous: 'pre' } as const;

interface Proportion {
  readonly of: object;
  readonly ratio: Ratio;
}

/** Proportions of coloration change time as tuplets do; what is left of a note cut at a barline may need one of its own. */
function proportionsOf(chunk: Chunk): readonly Proportion[] {
  const { event, ratio } = chunk;
  if (ratio === undefined || event.small !== undefined) return [];
  const coloured = event.spans.flatMap((span): Proportion[] => {
    const { word, proportion } = span.head;
    if (!isColour(word) || proportion === undefined) return [];
    return [{ of: span, ratio: { actual: proportion.n, normal: proportion.m } }];
  });
  const drawn = event.tuplets.map(({ n, m }): Ratio => ({ actual: n, normal: m }));
  const left = [...drawn, ...coloured.map((one) => one.ratio)].reduce(without, ratio);
  return left.actual === left.normal ? coloured : [...coloured, { of: chunk, ratio: left }];
}

/** What remains of a ratio when another has been taken out. */
function without(ratio: Ratio, other: Ratio): Ratio {
  const actual = ratio.actual * other.normal;
  const normal = ratio.normal * other.actual;
  const common = gcd(actual, normal);
  return { actual: actual / common, normal: normal / common };
}
