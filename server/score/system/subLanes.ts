/** Figures and syllables: counted against the lane above as its first options have it, attached to what the choice has. */
import type { Fix } from '../../../grammar/findings/finding';
import { firstOf } from '../../../grammar/statements/read';
import { add, equal, type Time } from '../../../grammar/time';
import type { Item, PlacedLane, SyllableItem } from '../../../grammar/tree';
import { howMany } from '../amounts';
import type { VoiceBars } from '../bars';
import { type Sung, silentVoice } from '../carry';
import type { LaneEvent, LaneNote } from '../event';
import type { RawBar, RawChange } from '../rawBars';
import type { VoiceEvent } from '../score';
import type { LanesOfSystem, SubLane, VoiceLanes } from './lanes';
import type { SystemProblems } from './problems';
import type { SystemTask } from './task';

/** A bar that has more or fewer items than its lane has events for them. */
interface Miscount {
  readonly code: 'sub-lane-items' | 'sub-lane-fewer';
  /** The first that is too much, or the last that there is. */
  readonly item: Item;
  readonly bar: number;
  readonly have: number;
  readonly need: number;
  readonly fixes: readonly Fix[];
}

/**
 * Attaches the figures and syllables of all lanes.
 * @param chosen the voices' bars as typed that the choice takes
 * @returns by voice the ties that its first options carry out
 */
export function attachSubLanes(
  { block, carry, environment }: SystemTask,
  lanes: LanesOfSystem,
  voices: readonly VoiceLanes[],
  chosen: readonly VoiceBars[],
  problems: SystemProblems,
): ReadonlyMap<number, Sung> {
  const sungOn = new Map<number, Sung>();
  for (const [v, one] of voices.entries()) {
    const carried = (carry.voices[one.voice] ?? silentVoice).sung;
    const placed = block.lanes[one.lane];
    const untied = placed === undefined || isUntied(placed, carried);
    sungOn.set(one.voice, untied ? carried : sung(lanes.countedAgainst(one, one.voice), carried).carryOut);
    for (const sub of one.subs) {
      // Sub-lanes of a witness lane belong to it alone and are read where it is chosen.
      const owner = sub.witness === undefined ? one : one.witnesses.find((w) => w.name === sub.witness);
      if (owner === undefined) continue;
      checkBars(sub, owner.bars.length, problems);
      const counted = lanes.countedAgainst(owner, one.voice);
      const bearing = sub.kind === 'fig' ? figured(counted) : sung(counted, carried).bearing;
      const miscounts = attach(sub, owner.lane, { bearing, counted }, chosen[v]?.bars ?? []);
      for (const { code, item, bar, have, need, fixes } of miscounts) {
        const slots = {
          voice: environment.voices[one.voice]?.name ?? '',
          name: sub.kind,
          have: howMany(have, 'item', 'items'),
          need: howMany(need, 'note', 'notes'),
        };
        problems.add({ lane: sub.lane }, code, item, slots, { bar, fixes });
      }
    }
  }
  return sungOn;
}

function checkBars({ placed, lane, kind }: SubLane, need: number, problems: SystemProblems): void {
  const have = placed.tree.segments.filter((one) => one.items.length > 0 || one.bar !== undefined).length;
  if (have <= need) return;
  const at = { pos: 0, len: Math.max(placed.tree.text.length, 1) };
  problems.add({ lane }, 'sub-lane-bars', at, { name: kind, have: howMany(have, 'bar', 'bars'), need });
}

/**
 * Attaches the items of a sub-lane.
 * @param owner index of the lane that it belongs to
 * @param bearing events of that lane as its first options have it, by bar
 * @param counted the bars in which those stand
 * @param chosen the bars as typed that the choice takes
 */
function attach(
  sub: SubLane,
  owner: number,
  { bearing, counted }: { readonly bearing: readonly LaneEvent[][]; readonly counted: readonly RawBar[] },
  chosen: VoiceBars['bars'],
): readonly Miscount[] {
  return sub.placed.tree.segments.flatMap((segment, bar): Miscount[] => {
    const items = segment.items.filter(isSubItem);
    const events = bearing[bar] ?? [];
    const first = counted[bar];
    const entry = chosen[bar];
    if (first !== undefined && entry !== undefined && entry.lane === owner) {
      // Where no options are taken otherwise both have the very same events.
      const isSame = first.events === entry.bar.events;
      items.forEach((item, index) => {
        const event = events[index];
        const target = event === undefined || isSame ? event : sameMoment(entry.bar, placeIn(first, event));
        if (item.kind === 'figures') target?.take({ figures: item });
        else if (item.kind === 'syllable' && target?.kind === 'note')
          target.take({ syllables: withStanza(target.syllables, sub.stanza, item) });
      });
    }
    // What was not understood, here or in the lane, may have been one of those that are counted.
    return segment.broken || first?.broken ? [] : miscount(items, bar, events.length);
  });
}

/** A bar of a sub-lane that is left empty has nothing drawn in it: that is no slip. */
function miscount(items: readonly Item[], bar: number, need: number): Miscount[] {
  const have = items.length;
  const last = items.at(-1);
  if (last === undefined || have === need) return [];
  const extra = items[need];
  const fixes = need === 1 ? withinOneNote(items) : [];
  return [{ code: extra ? 'sub-lane-items' : 'sub-lane-fewer', item: extra ?? last, bar, have, need, fixes }];
}

/** Figures parted by white space that all belong to the bar's only note: they follow one another within it. */
function withinOneNote(items: readonly Item[]): readonly Fix[] {
  if (!items.every((item) => item.kind === 'figures' && item.what === 'figures')) return [];
  const edits = items.slice(1).map(({ pos }, index) => {
    const before = items[index];
    const end = before === undefined ? pos : before.pos + before.len;
    return { pos: end, len: pos - end, text: ',' };
  });
  return [{ title: 'put them one after another', edits }];
}

const withStanza = (above: VoiceEvent['syllables'], stanza: number, item: SyllableItem): VoiceEvent['syllables'] =>
  Array.from({ length: stanza + 1 }, (_, n) => (n === stanza ? item : above[n]));

const isSubItem = (item: Item): boolean => item.kind === 'figures' || item.kind === 'syllable' || item.kind === 'junk';

/** What is omitted takes its time in the others, so that moments can be compared. */
const placeIn = ({ omissions, events }: RawBar, event: LaneEvent): Time => {
  if (omissions.length === 0) return event.onset;
  const index = events.indexOf(event);
  return omissions.reduce(
    (offset, one) => (one.event <= index && one.time !== undefined ? add(offset, one.time) : offset),
    event.onset,
  );
};

const sameMoment = (bar: RawBar, moment: Time): LaneEvent | undefined =>
  bar.events.find((event) => bearsFigures(event) && equal(placeIn(bar, event), moment));

/** One item for each note, chord, rest or lone `=`; none for gaps and small notes. */
const bearsFigures = (event: LaneEvent): boolean =>
  event.small === undefined && (event.kind === 'note' || event.kind === 'rest');

const figured = (bars: readonly RawBar[]): LaneEvent[][] => bars.map(({ events }) => events.filter(bearsFigures));

/** Whether no tie leads into a lane and none out of it, however its options are taken. */
const isUntied = ({ tree }: PlacedLane, { ties, atEnding }: Sung): boolean =>
  ties.length === 0 && atEnding.length === 0 && !tree.text.includes('=');

/** One syllable for each note not tied to the one before, which may stand in an earlier bar or system or before the first ending. */
function sung(bars: readonly RawBar[], carried: Sung): { readonly bearing: LaneEvent[][]; readonly carryOut: Sung } {
  let { ties, atEnding } = carried;
  const bearing = bars.map(({ events, changes }) => {
    const ending = endingOf(changes);
    if (ending === 1) atEnding = ties;
    else if (ending !== undefined) ties = atEnding;
    return events.filter((event) => {
      if (event.small !== undefined) return false;
      const held = event.repeats !== undefined || isHeld(event, ties);
      ties = tiesOf(event);
      return event.kind === 'note' && !held;
    });
  });
  return { bearing, carryOut: { ties, atEnding } };
}

const none: readonly string[] = [];

const isHeld = ({ members }: LaneEvent, ties: readonly string[]): boolean =>
  ties.length > 0 && members.length > 0 && members.every((member) => ties.includes(pitchText(member)));

const tiesOf = ({ members }: LaneEvent): readonly string[] =>
  members.some(({ tie }) => tie !== undefined)
    ? members.flatMap((member) => (member.tie === undefined ? [] : [pitchText(member)]))
    : none;

const pitchText = ({ spelling, octave }: LaneNote): string => `${spelling.letter}${octave}`;

function endingOf(changes: readonly RawChange[]): number | undefined {
  const change = changes.find((one) => one.change.change.word === 'ending')?.change.change;
  return change === undefined ? undefined : firstOf(change.args, 'number')?.value;
}
