/** Where tuplets begin and end, and how a value in them is altered. */
import { putUnder } from '../../../grammar/lists';
import { multiply, time } from '../../../grammar/time';
import type { Tuplet } from '../../score/score';
import type { Chunk } from '../chunks';
import { type NoteValue, noteValue } from '../values';
import { leaf, type XmlElement, xml } from '../xml';

export type TupletEnds = ReadonlyMap<Chunk, readonly XmlElement[]>;

/** The beginnings and ends of one voice's tuplets. Gaps and small notes bear none. */
export function tupletsOf(chunks: readonly Chunk[]): TupletEnds {
  const ends = new Map<Chunk, XmlElement[]>();
  const bearing = chunks.filter(
    ({ event }) => event.small === undefined && (event.kind === 'note' || event.kind === 'rest'),
  );
  const push = (chunk: Chunk, element: XmlElement): void => {
    putUnder(ends, chunk, element);
  };
  for (const [i, chunk] of bearing.entries()) {
    const before = bearing[i - 1];
    const after = bearing[i + 1];
    const { tuplets } = chunk.event;
    for (const [level, tuplet] of tuplets.entries()) {
      if (!isWithin(before, chunk, level, tuplet)) push(chunk, tupletStart(tuplet, level + 1));
    }
    for (const [level, tuplet] of [...tuplets.entries()].reverse()) {
      if (!isWithin(after, chunk, level, tuplet)) push(chunk, xml('tuplet', { type: 'stop', number: level + 1 }));
    }
  }
  return ends;
}

const isWithin = (other: Chunk | undefined, chunk: Chunk, level: number, tuplet: Tuplet): boolean =>
  other !== undefined && other.system === chunk.system && other.event.tuplets[level] === tuplet;

function tupletStart(tuplet: Tuplet, number: number): XmlElement {
  const look = tuplet.drawn ? { 'show-number': 'actual' } : { bracket: 'no', 'show-number': 'none' };
  return xml('tuplet', { type: 'start', number, ...look }, [
    xml('tuplet-actual', {}, portion(tuplet.n, plainValue(tuplet))),
    xml('tuplet-normal', {}, portion(tuplet.m, plainValue(tuplet))),
  ]);
}

const portion = (number: number, value: NoteValue | undefined): readonly XmlElement[] => [
  leaf('tuplet-number', number),
  ...(value === undefined ? [] : [leaf('tuplet-type', value.type)]),
  ...(value === undefined ? [] : Array.from({ length: value.dots }, () => xml('tuplet-dot'))),
];

/** The unit of a tuplet as a drawn value, plain or dotted. */
function plainValue(tuplet: Tuplet): NoteValue | undefined {
  return noteValue(tuplet.unit, 0) ?? noteValue(multiply(tuplet.unit, time(2, 3)), 1);
}

/** The `time-modification` of a note or rest; undefined where its value is what it says. */
export function timeModification(chunk: Chunk): XmlElement | undefined {
  const { ratio, event } = chunk;
  if (ratio === undefined) return undefined;
  const { tuplets } = event;
  const n = tuplets.reduce((product, tuplet) => product * tuplet.n, 1);
  const m = tuplets.reduce((product, tuplet) => product * tuplet.m, 1);
  const named = n * ratio.normal === m * ratio.actual;
  return xml('time-modification', {}, [
    leaf('actual-notes', named ? n : ratio.actual),
    leaf('normal-notes', named ? m : ratio.normal),
    ...normalType(chunk, named),
  ]);
}

/** The unit of the tuplet, where it is not the note's own value. */
function normalType(chunk: Chunk, named: boolean): readonly XmlElement[] {
  const [tuplet, ...others] = chunk.event.tuplets;
  const unit = !named || tuplet === undefined || others.length > 0 ? undefined : plainValue(tuplet);
  if (unit === undefined || (unit.type === chunk.value?.type && unit.dots === 0)) return [];
  return [leaf('normal-type', unit.type), ...Array.from({ length: unit.dots }, () => xml('normal-dot'))];
}
