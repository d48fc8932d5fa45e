/** Slips that only one can mend who sees what stands around them. */
import { EOF, type IToken } from 'chevrotain';
import type { TextEdit } from '../findings/finding';
import type { Segment, Span } from '../tree';
import type { Mending } from './slips';
import { BadBar, Bar, endOf, Gap, JunkToken, Member, Note, Repeat, Rest, roleOf, Value } from './tokens';

/** What stands around a slip. */
export interface Around {
  readonly slip: Span;
  /** The token so many before it; that of the end of the bar where there is none. */
  readonly before: (count: number) => IToken;
  readonly next: IToken;
  /** The next token, or the first after the barline where that ends the bar; that of the end where the lane ends. */
  readonly goingOn: () => IToken;
  readonly barBefore: Segment | undefined;
}

/** Nobody looks further back for the value in force. */
const FARTHEST = 64;

/** Events that last as long as the value in force says. */
const lasting = new Set([Note, Rest, Gap, Repeat]);
const barEnds = new Set([Bar, BadBar, EOF]);

const isAttached = (token: IToken): boolean => roleOf(token) === 'attached';
const upTo = (pos: number, { slip }: Around): Span => ({ pos, len: slip.pos + slip.len - pos });

/** The slip with a value that stands directly before it. */
export function withValueBefore(around: Around): Span {
  const last = around.before(1);
  return last.tokenType === Value ? upTo(last.startOffset, around) : around.slip;
}

/** The value in force; undefined where brackets or the beginning of the bar hide it. */
function valueBefore({ before }: Around): IToken | undefined {
  for (let count = 1; count <= FARTHEST; count++) {
    const token = before(count);
    if (token.tokenType === Value) return token;
    if (token.tokenType === EOF || (roleOf(token) !== undefined && !isAttached(token))) return undefined;
  }
  return undefined;
}

/** What goes on with a value has it typed; undefined where nobody can tell whether it does. */
function keeping(value: string, { goingOn }: Around): readonly TextEdit[] | undefined {
  const next = goingOn();
  if (next.tokenType === Value || next.tokenType === EOF) return [];
  const isEvent = lasting.has(next.tokenType) || (next.tokenType === JunkToken && /^[a-gr_=]/.test(next.image));
  return isEvent ? [{ pos: next.startOffset, len: 0, text: `${value} ` }] : undefined;
}

/** Dots that stand after an event instead of its value: the value in force is dotted, and holds without them afterwards. */
export function dotted(event: string, dots: string, around: Around): readonly Mending[] {
  const value = valueBefore(around);
  if (value === undefined) return [];
  if (value.image.endsWith(dots)) return [{ title: `write ${event}`, text: event }];
  if (!/^\w+$/.test(value.image)) return [];
  const text = `${value.image}${dots} ${event}`;
  const at = withValueBefore(around);
  const more = keeping(value.image, around);
  return more === undefined ? [] : [{ title: `write ${text}`, text, at, more }];
}

/** A dot apart from its value is joined to it; one after a barline belongs to the note before. */
export function dotApart(around: Around): readonly Mending[] {
  const last = around.before(1);
  if (last.tokenType === Value)
    return [{ title: 'take the white space away', text: '.', at: upTo(endOf(last), around) }];
  const [note, value] = [around.barBefore?.items.at(-1), around.barBefore?.items.at(-2)];
  if (note?.kind !== 'event' || note.what !== 'note' || value?.kind !== 'value' || value.form.doubtful) return [];
  const kept = keeping(value.form.text, around);
  if (kept === undefined) return [];
  const more = [
    { pos: value.pos + value.len, len: 0, text: '.' },
    { pos: note.pos + note.len, len: 0, text: "'through(dot)" },
    ...kept,
  ];
  return [{ title: 'let the note before run through the barline', text: '', more }];
}

/** A hyphen that stands apart from the notes that it joins. */
export function hyphenApart({ before, next }: Around): readonly Mending[] {
  const last = before(1);
  const isAfterNote = last.tokenType === Note || last.tokenType === Member || isAttached(last);
  if (!isAfterNote || next.tokenType !== Note) return [];
  const end = endOf(last);
  return [{ title: 'take the white space away', text: '-', at: { pos: end, len: next.startOffset - end } }];
}

/** A mark that stands apart from its event, without its apostrophe. */
export function markApart(name: string, around: Around): readonly Mending[] {
  const last = around.before(1);
  if (!lasting.has(last.tokenType) && last.tokenType !== Member && !isAttached(last)) return [];
  const text = `'${name}`;
  return [{ title: `glue ${text} to its note`, text, at: upTo(endOf(last), around) }];
}

/** Octaves counted by strokes, of which one is that of middle C (Helmholtz). */
export function octaveByStrokes(strokes: string, around: Around): readonly Mending[] {
  const note = around.before(1);
  if (note.tokenType !== Note || endOf(note) !== around.slip.pos || !/^[a-g](?:##|#|bb|b|n)?$/.test(note.image))
    return [];
  const text = `${note.image}${strokes.length + 3}`;
  return [{ title: `write ${text}`, text, at: upTo(note.startOffset, around) }];
}

/** How much is lost: the rest of the bar where nothing follows in it, else perhaps as much as the value in force. */
export function lostAmount(around: Around): readonly Mending[] {
  if (around.next.image === 'bar') {
    const at = { ...around.slip, len: endOf(around.next) - around.slip.pos };
    return [{ title: 'write lost ?', text: 'lost ?', at }];
  }
  const amount = barEnds.has(around.next.tokenType) ? '?' : valueBefore(around)?.image;
  return amount === undefined ? [] : [{ title: `write lost ${amount}`, text: `lost ${amount}` }];
}
