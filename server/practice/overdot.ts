/**
 * Dotted notes are stretched, and what follows is pressed to the end of its time.
 *
 * Quantz 1752, V.20-21 and XVII.vii.58 (from memory the first, confirmed by a text the second): quavers after dotted
 * crotchets in French overtures, entrées, loures are very short; three or more short notes after a dot or rest come at the
 * extreme end of their time. How much is the reading's word: no source gives a number.
 */
import { add, compare, earliest, latest, multiply, subtract, type Time, time } from '../../grammar/time';
import { type Figure, figuresIn, isRun } from './figures';
import type { Overdot } from './practice';
import type { Acting } from './ruling';
import type { Together } from './stretch';
import { movedTogether, type Own } from './together';
import type { View } from './view';

interface Found {
  readonly figure: Figure;
  readonly acting: Acting<Overdot>;
}

export function overdots(view: View): Together[] {
  const all = new Map(view.grids.map((grid) => [grid, view.lines.flatMap((line) => figuresIn(line, grid))]));
  const shortest = shortestIn(view, all.values());
  return view.grids.flatMap((grid) => {
    const found = (all.get(grid) ?? []).flatMap((figure): Found[] => {
      const acting = view.ruling.at('overdot', figure.long);
      return acting === undefined ? [] : [{ figure, acting }];
    });
    return writtenTogether(found).map((group) => stretched(view, group, shortest(grid.bar.index)));
  });
}

/** Figures that begin and end together. */
function writtenTogether(all: readonly Found[]): readonly (readonly [Found, ...Found[]])[] {
  const groups: [Found, ...Found[]][] = [];
  for (const one of all) {
    const { onset, end } = one.figure;
    const group = groups.find(([{ figure }]) => compare(figure.onset, onset) === 0 && compare(figure.end, end) === 0);
    if (group === undefined) groups.push([one]);
    else group.push(one);
  }
  return groups;
}

function stretched(view: View, group: readonly [Found, ...Found[]], shortest: Time | undefined): Together {
  const [{ figure }] = group;
  const length = subtract(figure.end, figure.onset);
  const shortened = group.map((one) => shortenedTo(one, length, shortest)).reduce(latest);
  const owns = group.map(ownOf);
  if (compare(shortened, length) >= 0 && owns.every(({ silentFrom }) => silentFrom === undefined)) return [];
  const from = group.map((one) => one.figure.long.onset).reduce(latest);
  const move = {
    from,
    written: figure.onset,
    performed: subtract(figure.end, shortened),
    to: figure.end,
    pressed: true,
  };
  return movedTogether(view, 'overdot', move, owns);
}

const ownOf = ({ figure: { line, long, undotted }, acting }: Found): Own => ({
  line,
  acting,
  stroke: long,
  from: long.onset,
  ...(undotted === undefined || acting.how.dot === 'held' ? {} : { silentFrom: add(long.onset, undotted) }),
});

const HALF = time(1, 2);

/** How long a figure is played: half as long, as after a double dot, or so that each note is the shortest of the section. */
function shortenedTo({ figure, acting }: Found, length: Time, shortest: Time | undefined): Time {
  if (acting.how.amount === 'double' || shortest === undefined || isRun(figure.notes)) return multiply(length, HALF);
  return earliest(length, multiply(shortest, time(figure.notes.length)));
}

/** By bar: the shortest note of the figures of its section; a run, quick in itself, does not count. */
function shortestIn(view: View, all: Iterable<readonly Figure[]>): (bar: number) => Time | undefined {
  const { sections } = view.piece;
  const sectionOf = (bar: number): number => sections.findLastIndex((one) => one.firstBar <= bar && bar < one.endBar);
  const shortest = new Map<number, Time>();
  for (const figure of [...all].flat()) {
    if (isRun(figure.notes)) continue;
    const section = sectionOf(figure.long.placed.bar.index);
    for (const { onset, end } of figure.notes) {
      const length = subtract(end, onset);
      shortest.set(section, earliest(shortest.get(section) ?? length, length));
    }
  }
  return (bar) => shortest.get(sectionOf(bar));
}
