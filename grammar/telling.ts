/** What in a lane tells more than notes, rests and values. */
import { keeping } from './keeping';
import type { Barline, ChangeItem, EventItem, Item, LaneTree, OptionsItem, SpanItem } from './tree';

/** It may cite a name, part readings or move to another stave. */
export type TellingItem = EventItem | SpanItem | OptionsItem | ChangeItem | Barline;

function isTelling(item: Item): item is TellingItem {
  switch (item.kind) {
    case 'event':
      return item.written.mayCite;
    case 'span':
    case 'options':
    case 'change':
    case 'barline':
      return true;
    default:
      return false;
  }
}

/** Such items of a lane in the order in which they begin, those inside others too; most events are not among them. */
export const tellingItems = keeping(({ segments }: LaneTree): readonly TellingItem[] => {
  const found: TellingItem[] = [];
  for (const { items } of segments) findTelling(items, found);
  return found;
});

function findTelling(items: readonly Item[], found: TellingItem[]): void {
  for (const item of items) {
    if (!isTelling(item)) continue;
    found.push(item);
    if (item.kind === 'span') findTelling(item.items, found);
    else if (item.kind === 'options') for (const option of item.options) findTelling(option.items, found);
  }
}
