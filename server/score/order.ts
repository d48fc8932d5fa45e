/** The order in which sections are played, and whether one joins the next. */
import type { Slots } from '../../grammar/findings/finding';
import { keeping } from '../../grammar/keeping';
import { add, compare, equal, type Time } from '../../grammar/time';
import { counted } from './amounts';
import { type Bar, isSpecial, type Section } from './score';

/**
 * Where one section follows another in playing, a short last bar and a short first bar must make one. The nth playing of a
 * section takes its ending n, or the last.
 * @returns the sections and bars that do not, as the words of their finding
 */
export function halvesApart(names: readonly string[], sections: readonly Section[], bars: readonly Bar[]): Slots[] {
  const played = new Map<string, number>();
  const told = new Set<string>();
  const byName = new Map(sections.map((one): [string, Section] => [one.name, one]).reverse());
  const endingsIn = keeping((section: Section) => lastEndings(section, bars));
  return names.flatMap((name, index) => {
    const before = byName.get(name);
    const after = byName.get(names[index + 1] ?? '');
    const time = (played.get(name) ?? 0) + 1;
    played.set(name, time);
    if (before === undefined || after === undefined) return [];
    const last = lastBar(before, bars, endingsIn(before), time);
    const first = bars[after.firstBar];
    const key = `${before.name} ${after.name}`;
    if (last === undefined || first === undefined || told.has(key) || joins(last, first)) return [];
    told.add(key);
    const { have, need } = counted(add(last.duration, first.duration), last.expected as Time);
    return [{ before: before.name, after: after.name, last: last.number, first: first.number, have, need }];
  });
}

/** The bars with which the endings of a section begin that end it. */
function lastEndings({ firstBar, endBar }: Section, bars: readonly Bar[]): readonly Bar[] {
  const all = bars.slice(firstBar, endBar).filter((bar) => bar.ending !== undefined);
  // Endings within the section, with other music after them, do not end it.
  const within = bars.slice(all.at(-1)?.index ?? endBar, endBar - 1).some(({ closing }) => isSpecial(closing));
  return within ? [] : all;
}

/** The bar that ends a section when it is played for the nth time: the last before the ending that comes next. */
const lastBar = ({ endBar }: Section, bars: readonly Bar[], endings: readonly Bar[], time: number): Bar | undefined =>
  bars[(endings[time]?.index ?? endBar) - 1];

const isShort = ({ duration, expected }: Bar): boolean => expected !== undefined && compare(duration, expected) < 0;

function joins(last: Bar, first: Bar): boolean {
  if (last.expected === undefined || last.irregular || first.irregular) return true;
  if (!isShort(last) && !isShort(first)) return true;
  return equal(add(last.duration, first.duration), last.expected);
}
