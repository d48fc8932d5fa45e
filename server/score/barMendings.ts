/** What would mend a bar whose time is not right. */
import type { Fix } from '../../grammar/findings/finding';
import { add, divide, equal, multiply, subtract, type Time, time, ZERO } from '../../grammar/time';
import type { VoiceBars } from './bars';
import type { LaneEvent } from './event';
import type { RawBar } from './rawBars';
import type { BarMending } from './score';
import { valueBehind } from './valueBehind';

/**
 * What may be meant by a bar: a dot on its last note, or a digit behind a note that is no octave but a value.
 * @param total its time, with what lies in the system before
 * @param wanted the time that it should have
 * @param after the voice's bars after it
 */
export const mendingsOf = (bar: RawBar, total: Time, wanted: Time, after: VoiceBars['bars']): readonly BarMending[] => [
  ...dotMending(bar, total, after),
  ...valueMendings(bar, total).filter((mending) => equal(mending.time, wanted)),
];

// ─── a dot on the last note ──────────────────────────────────────────────────────────────────────────────────────

/** None where a dot would spoil other things. */
function dotMending(bar: RawBar, total: Time, after: VoiceBars['bars']): readonly BarMending[] {
  const last = bar.events.at(-1);
  const value = last?.value;
  if (last === undefined || value?.duration === undefined || value.proportion !== undefined) return [];
  if (last.tuplets.length > 0 || last.small !== undefined || last.spans.length > 0) return [];
  // Rival options take the same time; a lacuna has a value of its own.
  if (last.chosen.length > 0 || last.kind === 'lost') return [];
  const dotted = value.text.replace(/\??$/, '.$&');
  const typed = last.typed ?? { pos: last.source.pos, len: 0 };
  // A doubtful value does not stick, so nothing after it relied on it.
  const kept = value.doubtful ? [] : keepingValue(value.text, last.source.lane, after);
  if (kept === undefined) return [];
  const edits = [{ pos: typed.pos, len: typed.len, text: last.typed === undefined ? `${dotted} ` : dotted }, ...kept];
  return [
    {
      time: add(total, divide(value.base, time(1 << (value.dots + 1)))),
      hint: '; a dot on the last note would fill it',
      fix: { title: `write ${dotted} before the last note`, edits },
    },
  ];
}

/** What follows and had a value without typing it has it typed; undefined where that cannot be told. */
function keepingValue(text: string, lane: number, after: VoiceBars['bars']): Fix['edits'] | undefined {
  for (const entry of after) {
    // Rival options may have relied on the value, and so may what was not understood or stands in another lane.
    if (entry.lane !== lane || entry.bar.broken || entry.bar.omissions.length > 0) return undefined;
    for (const event of entry.bar.events) {
      if (event.chosen.length > 0) return undefined;
      // Small notes type their own values, which end with them; fillers and lacunae have none that sticks.
      if (event.small !== undefined || event.kind === 'lost' || event.typed?.form.doubtful === true) continue;
      if (event.typed !== undefined || event.tuplets.some(({ drawn }) => drawn)) return [];
      if (!event.fills) return [{ pos: event.source.pos, len: 0, text: `${text} ` }];
    }
  }
  return [];
}

// ─── a value behind its note ─────────────────────────────────────────────────────────────────────────────────────

/** Octaves that are values, too; that of 8 has no keys and is told by itself. */
const VALUES: ReadonlySet<number | undefined> = new Set([1, 2, 4]);

/** Events that take the value in force, so many and so long. */
interface Relying {
  readonly count: number;
  readonly time: Time;
}

const NOBODY: Relying = { count: 0, time: ZERO };

/** `2 c5 d4 e`: with each digit that may be a value read as that of its own note, or of the next. */
function valueMendings({ events }: RawBar, total: Time): readonly BarMending[] {
  const found: BarMending[] = [];
  let after = NOBODY;
  const firstNote = events.findIndex(({ kind }) => kind === 'note');
  for (let index = events.length - 1; index > firstNote; index--) {
    const event = events[index] as LaneEvent;
    if (event.small !== undefined || event.kind === 'lost') continue;
    const isPlain = event.tuplets.length === 0 && event.spans.length === 0 && event.chosen.length === 0;
    if (isPlain) found.push(...asValue(event, after, total));
    // Tuplets type values of their own, after options all is typed again, and spans may change time.
    after = !isPlain || event.typed !== undefined ? NOBODY : withOne(after, event.duration);
  }
  return found.reverse();
}

const withOne = (relying: Relying, duration: Time): Relying => ({
  count: relying.count + 1,
  time: add(relying.time, duration),
});

function asValue(event: LaneEvent, after: Relying, total: Time): readonly BarMending[] {
  const [member, ...more] = event.members;
  const octave = member?.spelling.octave;
  if (member === undefined || octave === undefined || more.length > 0 || !VALUES.has(octave)) return [];
  const { text } = member.spelling;
  const { pos, len } = event.source;
  const { own, next } = valueBehind(member.spelling, octave, pos, event.typed);
  const timeOf = (relying: Relying): Time =>
    add(subtract(total, relying.time), multiply(time(1, octave), time(relying.count)));
  const hint = `; the ${octave} of ${text} may be a value`;
  const isBare = len === text.length && text.endsWith(`${octave}`) && after.count > 0;
  return [
    ...(isBare ? [{ time: timeOf(after), hint, fix: next }] : []),
    { time: timeOf(withOne(after, event.duration)), hint, fix: own },
  ];
}
