/** A passage made options of two sources, so that what the second has can be typed. */
import { CodeActionKind } from 'vscode-languageserver-types';
import type { Item } from '../../../grammar/tree';
import { stretchOf } from '../nodes';
import { leavesMusic } from './music';
import { type Asked, type Offer, put } from './refactoring';
import { octaveAfter, valueAfter } from './sticking';

export const twoWitnesses: Offer = (asked) => {
  const { project, here } = asked;
  const [first, second] = project.environment.sources;
  const items = asked.start === asked.end ? undefined : selected(asked);
  const [from, to] = [items?.[0], items?.at(-1)];
  if (first === undefined || second === undefined || from === undefined || to === undefined) return undefined;
  const passage = { start: stretchOf(here, from).start, end: stretchOf(here, to).end };
  const text = project.tree.text.slice(passage.start, passage.end);
  const after = to.pos + to.len;
  const changes = [
    put(passage.start, `<${first.name}: `),
    put(passage.end, ` ; ${second.name}: ${text}>`),
    ...valueAfter(project, here, after),
    ...octaveAfter(project, here, after),
  ];
  // What follows may rely on the passage in more ways than can be typed after it: on its stave, its clef, its beam.
  if (!leavesMusic(project, here.blockIndex, changes)) return undefined;
  return {
    title: `Make options of ${first.name} and ${second.name}`,
    kind: CodeActionKind.RefactorRewrite,
    changes,
  };
};

/** The signs selected, as long as they are whole and stand side by side in one bar or bracket of what all sources share. */
function selected(asked: Asked): readonly Item[] | undefined {
  const { here, start, end } = asked;
  if (here.holder.kind !== 'lane') return undefined;
  const { tree, witness } = here.holder.placed;
  if (tree.kind !== 'lane' || witness !== undefined) return undefined;
  const { segments } = tree;
  for (const items of segments.flatMap((bar) => listsIn(bar.items))) {
    const inside = items.filter((item) => {
      const stretch = stretchOf(here, item);
      return stretch.start < end && stretch.end > start;
    });
    const isWhole = inside.every((item) => isWithin(stretchOf(here, item), start, end));
    if (!inside.some(({ kind }) => kind === 'event' || kind === 'span') || !isWhole) continue;
    return isAll(asked, inside) ? withValues(items, inside) : undefined;
  }
  return undefined;
}

/** Whether nothing else is selected, such as a barline, which could not be in options. */
function isAll({ project, here, start, end }: Asked, items: readonly Item[]): boolean {
  const stretches = items.map((item) => stretchOf(here, item));
  const { text } = project.tree;
  const before = text.slice(start, Math.max(start, stretches[0]?.start ?? start));
  const after = text.slice(stretches.at(-1)?.end, end);
  return before.trim() === '' && after.trim() === '';
}

const isWithin = (stretch: { start: number; end: number }, start: number, end: number): boolean =>
  stretch.start >= start && stretch.end <= end;

/** The value before the first event belongs to it, one after the last event does not. */
function withValues(items: readonly Item[], inside: readonly Item[]): readonly Item[] {
  const [first] = inside;
  const before = first === undefined ? undefined : items[items.indexOf(first) - 1];
  const last = inside.findLastIndex(({ kind }) => kind !== 'value');
  const own = inside.slice(0, last + 1);
  return before?.kind === 'value' && first?.kind === 'event' ? [before, ...own] : own;
}

/** The items of a bar and of the spans in it, outer lists first; what stands in options is one source's already. */
function listsIn(items: readonly Item[]): (readonly Item[])[] {
  return [items, ...items.flatMap((item) => (item.kind === 'span' ? listsIn(item.items) : []))];
}
