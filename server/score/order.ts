/** The order in which sections are played, and whether one joins the next. */
import { add, compare, equal, type Time } from '../../grammar/time';
import type { BarlineShape } from '../../grammar/tree';
import { counted } from './amounts';
import type { Bar, PlacedProblem, Section } from './score';

type Place = Pick<PlacedProblem, 'block' | 'lane' | 'statement'>;

/**
 * Where one section follows another in playing, a short last bar and a short first bar must make one. The nth playing of a
 * section takes its ending n, or the last.
 * @param at where the order is stated
 */
export function checkJoins(
  names: readonly string[],
  sections: readonly Section[],
  bars: readonly Bar[],
  at: Place,
): PlacedProblem[] {
  const played = new Map<string, number>();
  const told = new Set<string>();
  return names.flatMap((name, index) => {
    const before = sections.find((one) => one.name === name);
    const after = sections.find((one) => one.name === names[index + 1]);
    const time = (played.get(name) ?? 0) + 1;
    played.set(name, time);
    if (before === undefined || after === undefined) return [];
    const last = lastBar(before, bars, time);
    const first = bars[after.firstBar];
    const key = `${before.name} ${after.name}`;
    if (last === undefined || first === undefined || told.has(key) || joins(last, first)) return [];
    told.add(key);
    const { have, need } = counted(add(last.duration, first.duration), last.expected as Time);
    const slots = { before: before.name, after: after.name, last: last.number, first: first.number, have, need };
    return [{ problem: { code: 'order-halves' as const, pos: 0, len: 'order'.length, slots }, ...at }];
  });
}

/** The bar that ends a section when it is played for the nth time. */
function lastBar({ firstBar, endBar }: Section, bars: readonly Bar[], time: number): Bar | undefined {
  const all = bars.slice(firstBar, endBar).filter((bar) => bar.ending !== undefined);
  // Endings within the section, with other music after them, do not end it.
  const within = bars.slice(all.at(-1)?.index ?? endBar, endBar - 1).some(({ closing }) => isSpecial(closing?.shape));
  const endings = within ? [] : all;
  const taken = endings[Math.min(time, endings.length) - 1];
  const next = taken === undefined ? undefined : endings[endings.indexOf(taken) + 1];
  return bars[(next?.index ?? endBar) - 1];
}

const isSpecial = (shape: BarlineShape | undefined): boolean => shape !== undefined && shape !== '|';

const isShort = ({ duration, expected }: Bar): boolean => expected !== undefined && compare(duration, expected) < 0;

function joins(last: Bar, first: Bar): boolean {
  if (last.expected === undefined || last.irregular || first.irregular) return true;
  if (!isShort(last) && !isShort(first)) return true;
  return equal(add(last.duration, first.duration), last.expected);
}
