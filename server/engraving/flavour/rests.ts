/**
 * Rests where notes cross over from another stave, or three voices and more share one: the library does not look at these,
 * and sets rests upon notes and upon one another.
 */
import { grouped } from '../../../grammar/lists';
import { compare, format, subtract } from '../../../grammar/time';
import type { XmlElement } from '../../export/xml';
import { elementsOf, idOf, mapped, withAttributes } from './element';
import { isRest, type Standing, standingIn } from './standing';

/** Heights count in steps of the scale, from that of the lowest octave. */
interface Extent {
  readonly lower: number;
  readonly upper: number;
}

const SCALE = 'cdefgab';

/** So many voices on a stave the library does not keep apart. */
const CROWD = 3;

/** Steps from the middle of a rest to its own ends, and to what stands over or under it. */
const HALF_REST = 2;
const CLEAR = 4;

/** Steps from a head to the end of its stem. */
const STEM = 7;

export function drawnRests(measure: XmlElement): XmlElement {
  if (measure.name !== 'measure' || ![...elementsOf(measure)].some(isRest)) return measure;
  const standing = standingIn(measure);
  const rests = standing.filter(({ element }) => isRest(element));
  const staves = [...new Set(rests.map(({ stave }) => stave))];
  const steps = new Map(staves.flatMap((stave) => stepsOfRests(standing.filter((one) => one.stave === stave))));
  if (steps.size === 0) return measure;
  return mapped(measure, (element) => {
    const step = isRest(element) ? steps.get(idOf(element)) : undefined;
    return step === undefined ? element : withAttributes(element, placeOf(step));
  });
}

// ─── of one stave ────────────────────────────────────────────────────────────────────────────────────────────────────

type PlacedRest = readonly [id: string, step: number];

/** The rests of a stave, each with the step on which it stands clear; none where the library keeps them clear. */
function stepsOfRests(standing: readonly Standing[]): readonly PlacedRest[] {
  const rests = standing.filter(({ element }) => isRest(element));
  const heads = standing.filter(({ element }) => !isRest(element));
  const voices = new Set(standing.map(({ voice }) => voice));
  const isCrowded = voices.size >= CROWD || heads.some(({ hasCrossed }) => hasCrossed);
  if (!isCrowded || heads.length === 0) return [];
  const [restsAt, headsAt] = [new AtMoments(rests), new AtMoments(heads)];
  const nearest = nearestHeads(standing);
  const mean = heads.reduce((sum, { element }) => sum + stepOf(element), 0) / heads.length;
  const placed = new Map<Standing, number>();
  const isOver = (rest: Standing): boolean => headsAt.beside(rest).some((head) => head.voice > rest.voice);
  // What has no head under it gives way downwards, all else upwards: so rests stand in the order of their voices.
  for (const rest of [...rests.filter((one) => !isOver(one)), ...rests.filter(isOver).reverse()]) {
    const here = headsAt.beside(rest);
    const besides = restsAt.beside(rest);
    if (here.length === 0 && besides.length === 1) continue;
    const others = besides.flatMap((one) => placed.get(one) ?? []).map(restAt);
    const own = nearest.get(rest);
    const natural = own === undefined ? mean : stepOf(own.element);
    const isBetween = others.length === 0 && here.some((head) => head.voice < rest.voice);
    const [from, ways] = isOver(rest)
      ? [Math.max(natural, ...others.map(({ upper }) => upper)), isBetween ? EITHER : UP]
      : [Math.min(natural, ...others.map(({ lower }) => lower)), DOWN];
    placed.set(rest, clearStep(onLine(from), ways, [...here.map(extentOf), ...others]));
  }
  return [...placed].map(([{ element }, step]) => [idOf(element), step]);
}

/** Rests or heads of a stave by the moments when they begin. */
class AtMoments {
  private readonly at: ReadonlyMap<string, readonly Standing[]>;

  constructor(private readonly all: readonly Standing[]) {
    this.at = grouped(all, ({ at }) => format(at));
  }

  /** Those that begin with a rest; beside one that fills its measure all stand. */
  beside({ element, at }: Standing): readonly Standing[] {
    return element.name === 'mRest' ? this.all : (this.at.get(format(at)) ?? []);
  }
}

/** For each rest the head of its own voice that is nearest in time, if there is any. */
function nearestHeads(standing: readonly Standing[]): ReadonlyMap<Standing, Standing> {
  const nearest = new Map<Standing, Standing>();
  for (const voice of grouped(standing, (one) => one.voice).values()) {
    let before: Standing | undefined;
    const waiting: Standing[] = [];
    for (const one of voice) {
      if (isRest(one.element)) {
        waiting.push(one);
        if (before !== undefined) nearest.set(one, before);
        continue;
      }
      for (const rest of waiting.splice(0)) if (isNearer(one, before, rest)) nearest.set(rest, one);
      // Of a chord the first.
      if (before === undefined || compare(one.at, before.at) > 0) before = one;
    }
  }
  return nearest;
}

const isNearer = (after: Standing, before: Standing | undefined, { at }: Standing): boolean =>
  before === undefined || compare(subtract(after.at, at), subtract(at, before.at)) < 0;

/** From line to line. */
const [UP, DOWN, EITHER] = [[2], [-2], [2, -2]];

const restAt = (step: number): Extent => ({ lower: step - HALF_REST, upper: step + HALF_REST });

function extentOf({ element, event }: Standing): Extent {
  const step = stepOf(element);
  const stem = event.attributes['stem.dir'];
  return { lower: stem === 'down' ? step - STEM : step, upper: stem === 'up' ? step + STEM : step };
}

const stepOf = ({ attributes: { pname, oct } }: XmlElement): number =>
  Number(oct) * SCALE.length + SCALE.indexOf(`${pname}`);

/** The nearest step in one of the ways that is clear of all that is taken: beyond that there always is one. */
function clearStep(from: number, ways: readonly number[], taken: readonly Extent[]): number {
  const isClear = (step: number): boolean =>
    taken.every(({ lower, upper }) => step >= upper + CLEAR || step <= lower - CLEAR);
  for (let distance = 0; ; distance++)
    for (const way of ways) if (isClear(from + way * distance)) return from + way * distance;
}

/** Every clef has f3, c4 and g4 on lines: so even steps are lines, from which rests hang and on which they sit. */
const onLine = (step: number): number => 2 * Math.floor(step / 2);

/** Under the lowest octave nothing can be placed. */
const placeOf = (step: number) => {
  const at = Math.max(0, step);
  return { ploc: SCALE.charAt(at % SCALE.length), oloc: Math.floor(at / SCALE.length) };
};
