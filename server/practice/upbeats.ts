/**
 * Notes that lead from a rest to a beat come at the last moment: their end stays, and they are pressed to it. Half of their
 * time is the editor's default; no source gives a number.
 */
import { divide, subtract, time } from '../../grammar/time';
import { upbeatsIn } from './figures';
import type { Together } from './stretch';
import { movedTogether } from './together';
import type { View } from './view';

export const lateUpbeats = (view: View): Together[] =>
  view.grids.flatMap((grid) =>
    view.lines.flatMap((line) =>
      upbeatsIn(line, grid).map(({ long, onset, end }) => {
        const acting = view.ruling.at('upbeats', long);
        if (acting === undefined) return [];
        const performed = subtract(end, divide(subtract(end, onset), time(2)));
        const move = { from: long.onset, written: onset, performed, to: end, pressed: true };
        return movedTogether(view, 'upbeats', move, [{ line, acting, stroke: long }]);
      }),
    ),
  );
