/**
 * Two bars of three, or one of six, that go as three of two: accents one, three, five of six (facts of hemiola and courante,
 * from memory). No note moves by it; beats are counted otherwise, and other practices go by them.
 */
import { add, compare, equal, multiply, type Time, time } from '../../grammar/time';
import type { Bar, Meter, Piece } from '../score/score';
import type { Grid } from './grid';
import { isNote, isStruck, type Line, type Stroke } from './lines';
import type { Practice } from './practice';
import type { Ruling } from './ruling';

export interface Hemiola {
  readonly from: Bar;
  readonly to: Bar;
  readonly onset: Time;
  readonly end: Time;
  readonly practice: Practice | undefined;
}

/** Where the practice acts and the source shows it: by three equal notes of two, or by blackened notes, in any voice of it. */
export function hemiolasIn({ bars }: Piece, lines: readonly Line[], ruling: Ruling): readonly Hemiola[] {
  const found: Hemiola[] = [];
  for (const [index, from] of bars.entries()) {
    const to = lastOf(from, bars[index + 1]);
    if (to === undefined || compare(from.onset, found.at(-1)?.end ?? from.onset) < 0) continue;
    const unit = time(1, from.meter?.beatValue ?? 1);
    const showing = lines.flatMap((line) => {
      const stroke = line.beginningAt(from.onset);
      const acting = stroke && ruling.at('hemiola', stroke);
      return acting !== undefined && shows(line, from.onset, unit) ? [acting] : [];
    });
    const [acting] = showing;
    if (acting === undefined) continue;
    found.push({ from, to, onset: from.onset, end: add(to.onset, to.duration), practice: acting.practice });
  }
  return found;
}

/** The bar with which six units end, if this and perhaps the next are whole bars of that many. */
function lastOf(bar: Bar, next: Bar | undefined): Bar | undefined {
  if (!isWhole(bar)) return undefined;
  if (bar.meter?.beats === 6) return bar;
  return bar.meter?.beats === 3 && next !== undefined && isWhole(next) && isAlike(bar.meter, next.meter)
    ? next
    : undefined;
}

const isWhole = ({ duration, expected, broken }: Bar): boolean =>
  !broken && expected !== undefined && equal(duration, expected);
const isAlike = (a: Meter, b: Meter | undefined): boolean => a.beats === b?.beats && a.beatValue === b.beatValue;

function shows(line: Line, from: Time, unit: Time): boolean {
  const end = add(from, multiply(unit, time(6)));
  const strokes = line.beginningIn(from, end);
  if (strokes.length > 0 && strokes.every(isBlack)) return true;
  const struck = strokes.filter(isNew).map(({ onset }) => onset);
  return (
    struck.length === 3 &&
    [0, 2, 4].every((units, i) => {
      const onset = struck[i];
      return onset !== undefined && equal(onset, add(from, multiply(unit, time(units))));
    })
  );
}

const isBlack = ({ placed }: Stroke): boolean => placed.event.spans.some(({ head }) => head.word === 'black');

/** Struck or silent: a note that is tied on is not new. */
const isNew = (stroke: Stroke): boolean => !isNote(stroke) || isStruck(stroke);

/** The grids of a piece, in which a hemiola is one stretch of three beats of two, over the barline too. */
export function inHemiolas(grids: readonly Grid[], hemiolas: readonly Hemiola[]): readonly Grid[] {
  const begun = new Map(hemiolas.map((hemiola) => [hemiola.from, hemiola]));
  const joined = new Set(hemiolas.flatMap(({ from, to }) => (to === from ? [] : [to])));
  return grids
    .filter(({ bar }) => !joined.has(bar))
    .map((grid) => {
      const hemiola = begun.get(grid.bar);
      return hemiola === undefined ? grid : inTwos(grid, hemiola);
    });
}

function inTwos(grid: Grid, { end }: Hemiola): Grid {
  const { meter } = grid;
  const beat = time(2, meter.beatValue);
  return { ...grid, end, meter: { ...meter, beats: 3, beatValue: meter.beatValue / 2 }, beat, division: beat };
}
