/** Value and octave stick: what a change takes away from them the event that follows must type itself. */
import type { EventItem, Item, LaneTree, ValueItem } from '../../../grammar/tree';
import type { TextChange } from '../../document/edits';
import type { VoiceEvent } from '../../score/score';
import type { Project } from '../../workspace/project';
import { systemOf } from '../events';
import { type Here, stretchOf } from '../nodes';
import { put } from './refactoring';

/** The events of the lane at a place, in the order of the text. */
export function eventsOfLane(project: Project, here: Here): VoiceEvent[] {
  const found = systemOf(project, here.blockIndex);
  const all = found?.system.score.voices.flatMap(({ events }) => events) ?? [];
  return all.filter(({ source }) => source.lane === here.holder.index).sort((a, b) => a.source.pos - b.source.pos);
}

/** What holds by itself: everything between barlines and brackets, brackets opened. */
function* flat(items: readonly Item[]): Generator<EventItem | ValueItem | undefined> {
  for (const item of items) {
    if (item.kind === 'value' || item.kind === 'event') yield item;
    else if (item.kind === 'span') yield* flat(item.items);
    // Options and what follows them type both anew.
    else if (item.kind === 'options') yield undefined;
  }
}

const signsOf = (tree: LaneTree): (EventItem | ValueItem | undefined)[] =>
  tree.segments.flatMap(({ items }) => [...flat(items)]);

/** Types the octave of the first note after a place that has none of its own, unless this octave holds there anyway. */
export function octaveAfter(project: Project, here: Here, pos: number, holds?: number): TextChange[] {
  if (here.holder.kind !== 'lane') return [];
  const next = firstAfter(here.holder.placed.tree, pos, (sign) => sign?.kind !== 'event' || sign.what !== 'note');
  const [member] = next?.kind === 'event' ? next.members : [];
  const event = eventsOfLane(project, here).find(({ source }) => source.pos === next?.pos);
  const octave = event?.members[0]?.octave;
  if (member === undefined || octave === undefined || member.spelling.octave !== undefined || octave === holds)
    return [];
  const { start } = stretchOf(here, member);
  const { text, doubtful } = member.spelling;
  return [put(start + text.length - (doubtful ? 1 : 0), `${octave}`)];
}

/** Types the value of the first event after a place that has none of its own. */
export function valueAfter(project: Project, here: Here, pos: number): TextChange[] {
  if (here.holder.kind !== 'lane') return [];
  const next = firstAfter(here.holder.placed.tree, pos, () => false);
  if (next?.kind !== 'event') return [];
  const event = eventsOfLane(project, here).find(({ source }) => source.pos === next.pos);
  return event?.value === undefined ? [] : [put(stretchOf(here, next).start, `${event.value.text} `)];
}

/** The first sign after a place that is not passed over; undefined where options come first. */
function firstAfter(
  tree: LaneTree,
  pos: number,
  isPassed: (sign: EventItem | ValueItem | undefined) => boolean,
): EventItem | ValueItem | undefined {
  const after = signsOf(tree).filter((sign) => sign === undefined || sign.pos >= pos);
  return after.find((sign) => sign === undefined || !isPassed(sign));
}
