/**
 * Slips of the hand: text that no token took, and what was probably meant.
 *
 * Data over branching: each row is a shape that a slip has and the finding, with its fix, that answers it.
 */
import type { IToken } from 'chevrotain';
import type { FindingCode } from '../findings/catalogue';
import type { Fix, Problem, Slots } from '../findings/finding';
import type { Segment } from '../tree';
import { noteElsewhere, noteNamesElsewhere } from './noteNames';
import { source } from './patterns';
import { endOf, Value } from './tokens';

/** The mended text and what mending does. */
interface Mending {
  readonly title: string;
  readonly text: string;
}

interface Slip {
  readonly pattern: Pick<RegExp, 'test'>;
  readonly code: FindingCode;
  readonly slots?: Slots;
  /** Undefined where nobody can tell. */
  readonly mend?: (text: string) => Mending | undefined;
  /** Where several may be meant, and only who typed it knows which. */
  readonly ways?: (text: string) => readonly Mending[];
  /** What is probably meant, where mending does not say it. */
  readonly meant?: (text: string) => string;
}

const spaced = (text: string): Mending => ({ title: 'put white space between', text });

/** What a pattern matches, wherever in the text it does, changed. */
const changed = (text: string, pattern: RegExp, change: (found: string) => string): string =>
  text.replace(new RegExp(pattern, 'gu'), change);

const written = (text: string): Mending => ({ title: `write ${text}`, text });

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
    mend: (text) => ({ title: "write '", text: changed(text, apostrophes, () => "'") }),
  },
  drawnSigns('barline-as-drawn', typedBarlines),
  {
    pattern: unshifted,
    code: 'unshifted-digit',
    // After a note `'e` may be a sign of the file's own table.
    mend: (text) => (text.startsWith('é') ? written(text.replace('é', '2')) : undefined),
    meant: (text) => text.replace('é', '2'),
  },
  {
    pattern: deadKeys,
    code: 'dead-key',
    mend: (text) => (isNoSign.test(text) ? undefined : written(changed(text, deadKeys, undead))),
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
      const mended = match === null ? undefined : `${match[1]}${match[3]}${match[2]}${match[4]}`;
      return mended === undefined ? undefined : written(mended);
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
      return match === null ? undefined : spaced(`${match[2]} ${match[1]}${match[3]}`);
    },
  },
  {
    // No octave has two digits or a dot.
    pattern: noteThenValue,
    code: 'note-and-value',
    ways: (text) => [written(text.replace(noteThenValue, '$2 $1')), written(text.replace(noteThenValue, '$1 $2'))],
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
      return isSure ? written(meant) : undefined;
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
      return mended === undefined ? undefined : written(mended);
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

const fixAt = ({ title, text }: Mending, pos: number, len: number): Fix => ({
  title,
  edits: [{ pos, len, text }],
});

/** What to say of a text that is no sign of a lane. */
export function slipProblem(text: string, pos: number): Problem {
  const slip = slips.find((row) => row.pattern.test(text));
  const mended = slip?.mend?.(text);
  const several = slip?.ways?.(text) ?? [];
  const ways = mended === undefined ? several : [mended];
  // A dot of a value must not look like the sentence's own.
  const either = several.map((way) => `“${way.text}”`).join(' or ');
  const meant = mended?.text.trim() ?? (either || (slip?.meant?.(text) ?? ''));
  const shown = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  return {
    code: slip?.code ?? 'not-understood',
    pos,
    len: text.length,
    slots: { text: shown, meant, ...slip?.slots },
    ...(ways.length === 0 ? {} : { fixes: ways.map((way) => fixAt(way, pos, text.length)) }),
  };
}

/**
 * A dot apart from its value is joined to it; one after a barline belongs to the note before.
 * @param before the token before it
 * @param barBefore the bar before its own
 */
export function dotFixes(dot: IToken, before: IToken, barBefore: Segment | undefined): readonly Fix[] {
  if (before.tokenType === Value) {
    const pos = endOf(before);
    return [{ title: 'take the white space away', edits: [{ pos, len: dot.startOffset - pos, text: '' }] }];
  }
  const [note, value] = [barBefore?.items.at(-1), barBefore?.items.at(-2)];
  if (note?.kind !== 'event' || note.what !== 'note' || value?.kind !== 'value') return [];
  const edits = [
    { pos: value.pos + value.len, len: 0, text: '.' },
    { pos: note.pos + note.len, len: 0, text: "'through(dot)" },
    { pos: dot.startOffset, len: 1, text: '' },
  ];
  return [{ title: 'let the note before run through the barline', edits }];
}
