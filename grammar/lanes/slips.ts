/**
 * Slips of the hand: text that no token took, and what was probably meant.
 *
 * Data over branching: each row is a shape that a slip has and the finding, with its fix, that answers it.
 */
import type { FindingCode } from '../findings/catalogue';
import { type Fix, type Problem, problemOf, type Slots, type TextEdit } from '../findings/finding';
import type { Span } from '../tree';
import { type Around, dotApart, dotted, hyphenApart, markApart, octaveByStrokes, withValueBefore } from './around';
import { isMarkName } from './forms';
import { noteElsewhere, noteNamesElsewhere } from './noteNames';
import { source } from './patterns';

/** The mended text and what mending does. */
export interface Mending {
  readonly title: string;
  readonly text: string;
  /** What the text takes the place of, where that is not the slip and no more. */
  readonly at?: Span;
  /** What changes besides. */
  readonly more?: readonly TextEdit[];
}

interface Slip {
  readonly pattern: Pick<RegExp, 'test'>;
  readonly code: FindingCode;
  readonly slots?: Slots;
  /** None where nobody can tell what is meant; several where only who typed it knows which. */
  readonly mend?: (text: string, around: Around) => readonly Mending[];
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

/** `r8`, `r4.`. */
const restThenValue = /^(r)((?:16|32|64|128|[1248])\.{0,9})$/;

/** The value before its event, in the place of one that stands there, or as that of the next. */
function eitherWay(text: string, pattern: RegExp, around: Around): readonly Mending[] {
  const [own, next] = [text.replace(pattern, '$2 $1'), text.replace(pattern, '$1 $2')];
  return [{ title: `write ${own}`, text: own, at: withValueBefore(around) }, ...written(next)];
}

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

/** The forms of a mark in their order; undefined if that is theirs already, or one stands twice. */
function formsInOrder(text: string): string | undefined {
  const forms = { doubt: '', linked: '', parameters: '', readings: '' };
  const head = new RegExp(`^${source.markHead}`).exec(text)?.[0] ?? '';
  for (const form of text.slice(head.length).match(/\?|\+|\([^)]*\)|:[^?+(]*/g) ?? []) {
    const which = whichForm[form.charAt(0)] ?? 'readings';
    if (forms[which] !== '') return undefined;
    forms[which] = form;
  }
  const mended = [head, ...Object.values(forms)].join('');
  return mended === text ? undefined : mended;
}

const whichForm: Readonly<Record<string, 'doubt' | 'linked' | 'parameters'>> = {
  '?': 'doubt',
  '+': 'linked',
  '(': 'parameters',
};
const markUnordered = new RegExp(`^${source.markUnordered}$`);

/** An event with the dots that its value should have. */
const dotsBehind = new RegExp(`^(${source.spelling}|[r_=])(\\.{1,4})((?:${suffix}){0,6})$`);
/** `c4.`: the 4 may be the octave, and the dot that of the value in force. */
const dotsBehindOctave = /^([a-g](?:##|#|bb|b|n)?[124])(\.{1,4})$/;

const note = `[a-g](?:${source.accidental})?\\d?`;
const chordOtherwise = new RegExp(`^${note}(?:[/+]${note}){1,9}$`);
const tieOtherwise = new RegExp(`^(${note})[~_]$`);
const tiesRunTogether = new RegExp(`^(?:${note}=){1,12}${note}$`);

/** `c5tr`, as the note and what its sign would be. */
const signBehind = new RegExp(`^([a-g](?:${source.accidental})?\\d=?)([a-z_]+)$`);
const withoutApostrophe: Slip = {
  pattern: { test: (text) => isMarkName(signBehind.exec(text)?.[2] ?? '') },
  code: 'typed-otherwise',
  mend: (text) => written(text.replace(signBehind, "$1'$2")),
};

/** A word that can only be a mark's: shorter ones may be anything. */
const isLongMarkName = (text: string): boolean => text.length > 2 && isMarkName(text);

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
  { pattern: /^\.$/, code: 'lone-dot', mend: (_, around) => dotApart(around) },
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
    mend: (text, around) => {
      const [, event = '', dots = ''] = dotsBehindOctave.exec(text) ?? [];
      return [...eitherWay(text, noteThenValue, around), ...(dots === '' ? [] : dotted(event, dots, around))];
    },
  },
  { pattern: restThenValue, code: 'note-and-value', mend: (text, around) => eitherWay(text, restThenValue, around) },
  {
    pattern: dotsBehind,
    code: 'dot-after-note',
    mend: (text, around) => {
      const [, event = '', dots = '', suffixes = ''] = dotsBehind.exec(text) ?? [];
      return dotted(`${event}${suffixes}`, dots, around);
    },
  },
  { pattern: chordOtherwise, code: 'typed-otherwise', mend: (text) => written(text.replace(/[/+]/g, '-')) },
  { pattern: tieOtherwise, code: 'typed-otherwise', mend: (text) => written(text.replace(tieOtherwise, '$1=')) },
  { pattern: /^R$/, code: 'typed-otherwise', mend: () => written('r') },
  withoutApostrophe,
  { pattern: /^-$/, code: 'member-apart', mend: (_, around) => hyphenApart(around) },
  { pattern: { test: isLongMarkName }, code: 'mark-apart', mend: markApart },
  { pattern: tiesRunTogether, code: 'notes-run-together', mend: (text) => spaced(text.replaceAll('=', '= ')) },
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
  {
    pattern: { test: (text) => markUnordered.test(text) && formsInOrder(text) !== undefined },
    code: 'note-order',
    mend: (text) => written(formsInOrder(text) ?? text),
  },
  { pattern: /^'{2,5}$/, code: 'bad-mark', mend: octaveByStrokes },
  { pattern: /^'/, code: 'bad-mark' },
];

/** Puts what may be meant in the place of what is typed. */
export const mendingAt =
  (slip: Span) =>
  ({ title, text, at: { pos, len } = slip, more = [] }: Mending): Fix => ({
    title,
    edits: [{ pos, len, text }, ...more],
  });

/** How the sentence names what may be meant. */
function namedIn(ways: readonly Mending[]): string {
  const texts = ways.map(({ text }) => text.trim());
  // A dot of a value must not look like the sentence's own.
  return texts.length > 1 ? texts.map((text) => `“${text}”`).join(' or ') : texts.join('');
}

/** Whether a text that is no sign of a lane is one of the slips that are known. */
export const isKnownSlip = (text: string): boolean => slips.some(({ pattern }) => pattern.test(text));

/** What to say of a text that is no sign of a lane. */
export function slipProblem(text: string, around: Around): Problem {
  const slip = slips.find((row) => row.pattern.test(text));
  const ways = slip?.mend?.(text, around) ?? [];
  const meant = ways.length === 0 ? (slip?.meant?.(text) ?? '') : namedIn(ways);
  const shown = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  const at = around.slip;
  const slots = { text: shown, meant, ...slip?.slots };
  return problemOf(slip?.code ?? 'not-understood', at, slots, ways.map(mendingAt(at)));
}
