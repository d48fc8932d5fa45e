/** Pairs with the dot after the second note: the first is as short as what follows other dots (Quantz 1752, V.23, from memory). */
import { add, compare, divide, equal, multiply, subtract, time } from '../../grammar/time';
import { type Grid, isGroup } from './grid';
import { isStruck, type Line, type Stroke } from './lines';
import type { Together } from './stretch';
import { movedTogether } from './together';
import type { View } from './view';

export const snaps = (view: View): Together[] =>
  view.grids.flatMap((grid) => view.lines.flatMap((line) => snapsIn(view, grid, line)));

function snapsIn(view: View, grid: Grid, line: Line): Together[] {
  const found: Together[] = [];
  for (const short of line.beginningIn(grid.bar.onset, grid.end)) {
    const long = line.after(short);
    if (long !== undefined && isPair(short, long, grid)) found.push(snapped(view, line, short, long));
  }
  return found;
}

function snapped(view: View, line: Line, short: Stroke, long: Stroke): Together {
  const acting = view.ruling.at('snap', short);
  if (acting === undefined) return [];
  const half = divide(subtract(short.end, short.onset), time(2));
  const move = {
    from: short.onset,
    written: short.end,
    performed: add(short.onset, half),
    to: long.end,
    pressed: false,
  };
  return movedTogether(view, 'snap', move, [{ line, acting, stroke: short }]);
}

/** One part to three, the three drawn with a dot, on the grid. */
function isPair(short: Stroke, long: Stroke, grid: Grid): boolean {
  if (long.placed.event.value?.dots !== 1 || !isStruck(short) || !isStruck(long)) return false;
  const length = subtract(short.end, short.onset);
  const three = multiply(length, time(3));
  if (compare(long.onset, short.end) !== 0 || !equal(subtract(long.end, long.onset), three)) return false;
  return isGroup(grid, short.onset, multiply(length, time(4)));
}
