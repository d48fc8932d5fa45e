/**
 * Slips of the hand: text that no token took, and what was probably meant.
 *
 * Data over branching: each row is a shape that a slip has and the finding, with its fix, that answers it.
 */
import type { IToken } from 'chevrotain';
import type { FindingCode } from '../findings/catalogue';
import { type Fix, type Problem, problemOf, type Slots } from '../findings/finding';
import type { Segment, Span } from '../tree';
import { noteElsewhere, noteNamesElsewhere } from './noteNames';
import { source } from './patterns';
import { gluing } from './problems';
import { endOf, Value } from './tokens';

/** The mended text and what mending does. */
export interface Mending {
  readonly title: string;
  readonly text: string;
}

interface Slip {
  readonly pattern: Pick<RegExp, 'test'>;
  readonly code: FindingCode;
  readonly slots?: Slots;
  /** None where nobody can tell what is meant; several where only who typed it knows which. */
  readonly mend?: (text: string) => readonly Mending[];
  /** What is probably meant, where mending does not say it. */
  readonly meant?: (text: string) => string;
}

const spaced = (text: string): readonly Mending[] => [{ title: 'put white space between', text }];

/** What a pattern matches, wherever in the text it does, changed. */
const changed = (text: string, pattern: RegExp, change: (found: string) => string): string =>
  text.replace(new RegExp(pattern, 'gu'), change);

const written = (...texts: readonly string[]): readonly Mending[] =>
  texts.map((text) => ({ title: `write ${text}`, text }));

/** Signs that word processors, telephones and other keys give for the apostrophe. */
const apostrophes = /[’‘´`′]/;

/** `á` is the apostrophe and the letter a of a dead-key keyboard; a cedilla or an acute on c as well. */
const deadKeys = /[áéíóúýćńśźĺŕçÁÉÍÓÚ]/;
const undead = (letter: string): string => `'${letter.normalize('NFD').charAt(0)}`;

/** A note or a value whose 2 was struck without the shift of a French keyboard. */
const unshifted = /^(?:[a-g](?:##|#|bb|b|n)?)?é\.{0,9}$/;
/** A dead key and a vowel that begins no sign's name. */
const isNoSign = /é(?!\w)/;

/** Signs that look like a barline, to the one that is typed. */
const typedBarlines = { '¦': '|', '｜': '|', '│': '|', ǀ: '|', '∣': '|', '‖': '||' };

/** Accidentals as they are drawn, to those that are typed. */
const typedAccidentals = { '♯': '#', '♭': 'b', '♮': 'n', '𝄪': '##', '𝄫': 'bb' };

/** Signs as they are drawn, mended to those that are typed. */
function drawnSigns(code: FindingCode, typed: Readonly<Record<string, string>>): Slip {
  const pattern = new RegExp(`[${Object.keys(typed).join('')}]`, 'u');
  return { pattern, code, mend: (text) => written(changed(text, pattern, (drawn) => typed[drawn] ?? drawn)) };
}

/** `e16`, `f#8.`: the value may be the note's own or that of the next. */
const noteThenValue = /^([a-g](?:##|#|bb|b|n)?)((?:16|32|64|128)\.{0,9}|[1248]\.{1,9})$/;

/** `face` as `f a c e`, keeping accidentals and octaves with their letters. */
const apart = (text: string): string => (text.match(/[a-gr][#n]*\d?/g) ?? [text]).join(' ');

const suffix = `(?:${source.mark}|${source.annotation})`;
/** A note whose parts stand in another order, or what follows a note and should not come last. */
const outOfOrder = new RegExp(
  `^(?:[a-g](?:${source.accidental})?(?:${source.drawn}|\\d|\\?|${source.tie}|${suffix}){2,6}|${suffix}{1,6}${source.tie}${suffix}{0,6})$`,
);
const partPattern = new RegExp(`(${source.drawn})|(\\d)|(${source.tie})|(\\?)|(${suffix})`, 'gy');
const whichPart = ['drawn', 'octave', 'tie', 'doubt', 'suffix'] as const;

/** Letter, accidental, bracketed accidental, octave, `?`, `=`, then marks and annotations; undefined if one stands twice. */
function inOrder(text: string): string | undefined {
  const head = new RegExp(`^(?:[a-g](?:${source.accidental})?)?`).exec(text)?.[0] ?? '';
  const parts = { drawn: '', octave: '', doubt: '', tie: '', suffix: '' };
  for (const match of text.slice(head.length).matchAll(partPattern)) {
    const which = whichPart[match.slice(1).findIndex((part) => part !== undefined)] ?? 'suffix';
    if (which !== 'suffix' && parts[which] !== '') return undefined;
    parts[which] += match[0];
  }
  const { drawn, octave, doubt, tie, suffix: suffixes } = parts;
  const mended = `${head}${drawn}${octave}${doubt}${tie}${suffixes}`;
  return mended === text ? undefined : mended;
}

const slips: readonly Slip[] = [
  {
    pattern: apostrophes,
    code: 'typographic-apostrophe',
    mend: (text) => [{ title: "write '", text: changed(text, apostrophes, () => "'") }],
  },
  drawnSigns('barline-as-drawn', typedBarlines),
  {
    pattern: unshifted,
    code: 'unshifted-digit',
    // After a note `'e` may be a sign of the file's own table.
    mend: (text) => (text.startsWith('é') ? written(text.replace('é', '2')) : []),
    meant: (text) => text.replace('é', '2'),
  },
  {
    pattern: deadKeys,
    code: 'dead-key',
    mend: (text) => (isNoSign.test(text) ? [] : written(changed(text, deadKeys, undead))),
    meant: (text) => changed(text, deadKeys, undead),
  },
  drawnSigns('accidental-as-drawn', typedAccidentals),
  // Its fix needs to know what stands before it.
  { pattern: /^\.$/, code: 'lone-dot' },
  { pattern: /^\($/, code: 'unclosed-bracket', slots: { bracket: '(', closing: ')' } },
  { pattern: /^\)$/, code: 'stray-bracket', slots: { bracket: ')' } },
  {
    pattern: /^[a-g]\d(?:##|#|bb|b|n|\[(?:##|#|bb|b|n)\]|\((?:##|#|bb|b|n)\)?)/,
    code: 'accidental-after-octave',
    mend: (text) => {
      const match = /^([a-g])(\d)(##|#|bb|b|n|\[(?:##|#|bb|b|n)\]|\((?:##|#|bb|b|n)\))(.*)$/.exec(text);
      return match === null ? [] : written(`${match[1]}${match[3]}${match[2]}${match[4]}`);
    },
  },
  {
    pattern: new RegExp(`^(?:Mx|L|B|\\d+\\.*)(?:${source.spelling}|r|_+)`),
    code: 'value-glued',
    mend: (text) => spaced(text.replace(/^(Mx|L|B|\d+\.*)/, '$1 ')),
  },
  {
    pattern: new RegExp(`^${source.spelling}/\\d+`),
    code: 'note-and-value',
    mend: (text) => {
      const match = /^([^/]*)\/(\d+\.*)(.*)$/.exec(text);
      return match === null ? [] : spaced(`${match[2]} ${match[1]}${match[3]}`);
    },
  },
  {
    // No octave has two digits or a dot.
    pattern: noteThenValue,
    code: 'note-and-value',
    mend: (text) => written(text.replace(noteThenValue, '$2 $1'), text.replace(noteThenValue, '$1 $2')),
  },
  {
    pattern: /^[&,]+(?:[a-gr_=\d].*)?$/,
    code: 'beam-glued',
    mend: (text) => spaced(text.replace(/^([&,])(.*)$/, ' $1 $2')),
  },
  {
    pattern: noteNamesElsewhere,
    code: 'note-named-elsewhere',
    mend: (text) => {
      const { meant, isSure } = noteElsewhere(text);
      return isSure ? written(meant) : [];
    },
    meant: (text) => noteElsewhere(text).meant,
  },
  {
    pattern: /^(?:[a-g](?:##|#|n)?\d?|r){2,12}$/,
    code: 'notes-run-together',
    mend: (text) => spaced(apart(text)),
  },
  {
    pattern: { test: (text) => outOfOrder.test(text) && inOrder(text) !== undefined },
    code: 'note-order',
    mend: (text) => {
      const mended = inOrder(text);
      return mended === undefined ? [] : written(mended);
    },
  },
  {
    pattern: /^[A-G](?:##|#|bb|b|n)?\d?$/,
    code: 'capital-note',
    mend: (text) => written(text.toLowerCase()),
  },
  { pattern: /^[A-Za-z]\w*\??(?:,[A-Za-z]\w*\??)*:$/, code: 'label-alone' },
  { pattern: /^'/, code: 'bad-mark' },
];

/** Puts what may be meant in the place of what is typed. */
export const mendingAt =
  ({ pos, len }: Span) =>
  ({ title, text }: Mending): Fix => ({ title, edits: [{ pos, len, text }] });

/** How the sentence names what may be meant. */
function namedIn(ways: readonly Mending[]): string {
  const texts = ways.map(({ text }) => text.trim());
  // A dot of a value must not look like the sentence's own.
  return texts.length > 1 ? texts.map((text) => `“${text}”`).join(' or ') : texts.join('');
}

/** What to say of a text that is no sign of a lane. */
export function slipProblem(text: string, pos: number): Problem {
  const slip = slips.find((row) => row.pattern.test(text));
  const ways = slip?.mend?.(text) ?? [];
  const meant = ways.length === 0 ? (slip?.meant?.(text) ?? '') : namedIn(ways);
  const shown = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  const at = { pos, len: text.length };
  const slots = { text: shown, meant, ...slip?.slots };
  return problemOf(slip?.code ?? 'not-understood', at, slots, ways.map(mendingAt(at)));
}

/**
 * A dot apart from its value is joined to it; one after a barline belongs to the note before.
 * @param before the token before it
 * @param barBefore the bar before its own
 */
export function dotFixes(dot: IToken, before: IToken, barBefore: Segment | undefined): readonly Fix[] {
  if (before.tokenType === Value) return [gluing(endOf(before), dot.startOffset)];
  const [note, value] = [barBefore?.items.at(-1), barBefore?.items.at(-2)];
  if (note?.kind !== 'event' || note.what !== 'note' || value?.kind !== 'value') return [];
  const edits = [
    { pos: value.pos + value.len, len: 0, text: '.' },
    { pos: note.pos + note.len, len: 0, text: "'through(dot)" },
    { pos: dot.startOffset, len: 1, text: '' },
  ];
  return [{ title: 'let the note before run through the barline', edits }];
}
