/**
 * What a player's hands do at the keyboard of the computer to write a drawn note head.
 *
 * The rule: counted is what is typed of each lane after its opening barline and the space that follows it, sub-lanes with
 * it, and one key for the end of each lane. Not counted are comments, and what the editor writes by itself or the line above
 * gives when it is gone over: white space beyond one space (alignment), a lane's name, its opening barline with its space. A
 * closing bracket or quotation mark counts, although the editor closes what is opened: the caret stands before it, and
 * whoever does not type it must step over it by another key. Words in quotation marks are no music; how many keys are theirs
 * is told apart. Shift, AltGr and the space after a dead key are counted apart; for signs that follow one another under the
 * same modifier it is pressed once.
 */
import { laneLexer, subLaneLexer } from '../../grammar/lanes/tokens';
import type { FileTree, Item, LaneTree } from '../../grammar/tree';

/** Which characters need what; all others and small letters are keys by themselves, capitals need Shift. */
export interface Layout {
  readonly name: string;
  readonly shift: string;
  readonly altGr: string;
  /** Signs that wait for a further key: the space after them counts as a modifier. */
  readonly dead: string;
}

/** As the systems for personal computers have them (from memory). */
export const layouts: readonly Layout[] = [
  { name: 'US', shift: '~!@#$%^&*()_+{}|:"<>?', altGr: '', dead: '' },
  { name: 'German', shift: '°!"§$%&/()=?`*\'>;:_', altGr: '{[]}\\@€~|µ', dead: '^´`' },
  { name: 'French', shift: '1234567890°+¨£%µ>?./§', altGr: '~#{[|`\\^@]}€', dead: '^¨~`' },
];

type Modifier = 'none' | 'shift' | 'altGr';

function modifierOf(sign: string, { shift, altGr }: Layout): Modifier {
  if (altGr.includes(sign)) return 'altGr';
  return shift.includes(sign) || /\p{Lu}/u.test(sign) ? 'shift' : 'none';
}

/** How often a modifier is pressed to type a text. */
export function modifiersIn(text: string, layout: Layout): number {
  let count = 0;
  let held: Modifier = 'none';
  for (const sign of text) {
    const modifier = modifierOf(sign, layout);
    if (modifier !== 'none' && modifier !== held) count++;
    if (layout.dead.includes(sign)) count++;
    held = modifier;
  }
  return count;
}

/** What is typed of a lane. */
export function typedOf({ kind, text }: LaneTree): string {
  const { tokens } = (kind === 'lane' ? laneLexer : subLaneLexer).tokenize(text);
  let typed = '';
  let end = 0;
  for (const { image, startOffset } of tokens) {
    typed += typed !== '' && startOffset > end ? ` ${image}` : image;
    end = startOffset + image.length;
  }
  return typed;
}

const strings = /"[^"]*"/g;

/** Heads drawn for the items, all options counted; a lone `=` draws again what stands before it. */
function headsIn(items: readonly Item[], before = { count: 1 }): number {
  let heads = 0;
  for (const item of items) {
    if (item.kind === 'span') heads += headsIn(item.items, before);
    else if (item.kind === 'options') for (const option of item.options) heads += headsIn(option.items, before);
    else if (item.kind === 'event' && item.what === 'repeat') heads += before.count;
    else if (item.kind === 'event' && item.what === 'note') {
      before.count = item.members.length;
      heads += before.count;
    }
  }
  return heads;
}

export interface Typed {
  readonly heads: number;
  readonly keys: number;
  /** Of the keys those of words and notes in quotation marks, which are no music. */
  readonly words: number;
  /** By the layout's place in the list. */
  readonly modifiers: readonly number[];
}

/** What the lanes of a file cost. */
export function typedIn({ blocks }: FileTree): Typed {
  const trees = blocks.flatMap(({ lanes }) => lanes.map(({ tree }) => tree));
  const texts = trees.map(typedOf);
  return {
    heads: trees.reduce((sum, { segments }) => sum + headsIn(segments.flatMap(({ items }) => items)), 0),
    keys: texts.reduce((sum, text) => sum + text.length + 1, 0),
    words: texts.reduce((sum, text) => sum + (text.match(strings) ?? []).join('').length, 0),
    modifiers: layouts.map((layout) => texts.reduce((sum, text) => sum + modifiersIn(text, layout), 0)),
  };
}
