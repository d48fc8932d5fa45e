/**
 * What a player's hands do at the keyboard of the computer to write a drawn note head.
 *
 * The rule: counted is each key that is pressed in a lane after its opening barline and the space that follows it, sub-lanes
 * with it, and one key for the end of each lane. Not counted are comments, white space beyond one space, which formatting
 * aligns, and what the editor inserts by itself (see `Writer`): lanes' names and opening barlines, the barline of a full bar,
 * what a voice goes on with in the next system. A word that the list offers is taken by one key as soon as no other begins
 * so. A closing bracket or quotation mark counts, although the editor closes what is opened: the caret stands before it, and
 * whoever does not type it must step over it by another key. Words in quotation marks are no music; how many keys are theirs
 * is told apart. Shift, AltGr and the space after a dead key are counted apart; for signs that follow one another under the
 * same modifier it is pressed once.
 */
import { parseFile } from '../../grammar/parse';
import type { Item } from '../../grammar/tree';
import { Writer } from './writer';

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
export function typedIn(text: string): Typed {
  const writer = new Writer(text);
  const { blocks } = parseFile(text);
  const keys = blocks.flatMap((block) => block.lanes.map((lane) => writer.keysFor(block, lane)));
  const items = blocks.flatMap(({ lanes }) => lanes.flatMap(({ tree }) => tree.segments.flatMap((one) => one.items)));
  return {
    heads: headsIn(items),
    keys: keys.join('').length,
    words: keys.reduce((sum, one) => sum + (one.match(strings) ?? []).join('').length, 0),
    modifiers: layouts.map((layout) => keys.reduce((sum, one) => sum + modifiersIn(one, layout), 0)),
  };
}
