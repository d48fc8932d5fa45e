/** A passage made options of two sources, so that what the second has can be typed. */
import { CodeActionKind } from 'vscode-languageserver-types';
import type { Item } from '../../../grammar/tree';
import { stretchOf } from '../nodes';
import { type Asked, type Offer, put } from './refactoring';
import { octaveAfter, valueAfter } from './sticking';

export const twoWitnesses: Offer = (asked) => {
  const { project, here, start, end } = asked;
  const [first, second] = project.environment.sources;
  const items = start === end ? undefined : selected(asked);
  const [from, to] = [items?.[0], items?.at(-1)];
  if (first === undefined || second === undefined || from === undefined || to === undefined) return undefined;
  const passage = { start: stretchOf(here, from).start, end: stretchOf(here, to).end };
  const { text: whole } = project.tree;
  // What is selected beyond it, such as a barline, could not be in options.
  if (`${whole.slice(start, passage.start)}${whole.slice(passage.end, end)}`.trim() !== '') return undefined;
  const text = whole.slice(passage.start, passage.end);
  const after = to.pos + to.len;
  return {
    title: `Make options of ${first.name} and ${second.name}`,
    kind: CodeActionKind.RefactorRewrite,
    changes: [
      put(passage.start, `<${first.name}: `),
      put(passage.end, ` ; ${second.name}: ${text}>`),
      ...valueAfter(project, here, after),
      ...octaveAfter(project, here, after),
    ],
  };
};

/** The signs selected, as long as they are whole and stand side by side in one bar or bracket. */
function selected({ here, start, end }: Asked): readonly Item[] | undefined {
  if (here.holder.kind !== 'lane') return undefined;
  const { segments } = here.holder.placed.tree;
  for (const items of segments.flatMap((bar) => listsIn(bar.items))) {
    const inside = items.filter((item) => {
      const stretch = stretchOf(here, item);
      return stretch.start < end && stretch.end > start;
    });
    const isWhole = inside.every((item) => isWithin(stretchOf(here, item), start, end));
    if (inside.length > 0 && isWhole) return withValue(items, inside);
  }
  return undefined;
}

const isWithin = (stretch: { start: number; end: number }, start: number, end: number): boolean =>
  stretch.start >= start && stretch.end <= end;

/** The value before the first event belongs to it. */
function withValue(items: readonly Item[], inside: readonly Item[]): readonly Item[] {
  const [first] = inside;
  const before = first === undefined ? undefined : items[items.indexOf(first) - 1];
  return before?.kind === 'value' && first?.kind === 'event' ? [before, ...inside] : inside;
}

/** The items of a bar and of everything in brackets within it, outer lists first. */
function listsIn(items: readonly Item[]): (readonly Item[])[] {
  const inner = items.flatMap((item): (readonly Item[])[] => {
    if (item.kind === 'span') return listsIn(item.items);
    return item.kind === 'options' ? item.options.flatMap((option) => listsIn(option.items)) : [];
  });
  return [items, ...inner];
}
