/**
 * Readers of single signs: a value, a written note, a mark, a tie, a span's head. Equal texts give one shared object.
 */
import { divide, multiply, subtract, type Time, time } from '../time';
import type {
  AccidentalSign,
  MarkForm,
  MarkType,
  Readings,
  SpanHead,
  SpanWord,
  Spelling,
  TieForm,
  ValueForm,
} from '../tree';
import { source, whole } from './patterns';

/** Texts kept at most; beyond, sharing starts afresh so that hostile input cannot fill the memory. */
const KEPT = 20_000;

/** Signs longer than this are not kept. */
const LONGEST = 200;

/** The same text by itself: a piece cut from a file would keep the whole file in memory. */
const detached = (text: string): string => text.split('').join('');

/** A reader that gives equal texts the same object. */
function interned<Form>(read: (text: string) => Form | undefined): (text: string) => Form | undefined {
  const kept = new Map<string, Form>();
  return (text) => {
    const known = kept.get(text);
    if (known !== undefined) return known;
    if (text.length > LONGEST) return read(text);
    const own = detached(text);
    const form = read(own);
    if (form === undefined) return undefined;
    if (kept.size >= KEPT) kept.clear();
    kept.set(own, form);
    return form;
  };
}

/** Breve, longa and maxima have letters; the rest are named by their fraction of a semibreve. */
const bases = new Map<string, Time>([
  ['Mx', time(8)],
  ['L', time(4)],
  ['B', time(2)],
  ...[1, 2, 4, 8, 16, 32, 64, 128].map((d): [string, Time] => [`${d}`, time(1, d)]),
]);

/** Most dots that a written value bears. */
const MOST_DOTS = 4;
/** Largest number in a proportion. */
export const MOST_IN_RATIO = 99;

const valuePattern = /^(Mx|L|B|\d+)(\.*)(?:(x)(?:(\d+)in(\d+))?)?(\?)?$/;

const possible = (n: number): boolean => n >= 1 && n <= MOST_IN_RATIO;

function durationOf(base: Time | undefined, dots: number, n: number, m: number): Time | undefined {
  if (base === undefined || dots > MOST_DOTS || !possible(n) || !possible(m)) return undefined;
  const dotted = subtract(multiply(base, time(2)), divide(base, time(2 ** dots)));
  return multiply(dotted, time(m, n));
}

/** The value written as `text` (`8.`, `16x`, `B`); its duration is undefined where there is no such value. */
export const valueFormOf = interned<ValueForm>((text) => {
  const match = valuePattern.exec(text);
  if (match === null) return undefined;
  const [, baseText = '', dotText = '', x, nText, mText, doubt] = match;
  const base = bases.get(baseText);
  const proportion = x === undefined ? undefined : { n: Number(nText ?? 3), m: Number(mText ?? 2), drawn: false };
  return {
    text,
    base: base ?? time(1),
    dots: dotText.length,
    ...(proportion === undefined ? {} : { proportion }),
    doubtful: doubt !== undefined,
    duration: durationOf(base, dotText.length, proportion?.n ?? 1, proportion?.m ?? 1),
  };
});

const spellingPattern = new RegExp(
  `^([a-g])(${source.accidental})?(?:\\[(${source.accidental})\\]|\\((${source.accidental})\\))?(\\d)?(\\?)?$`,
);

/** The note written as `text` (`f#`, `bb4`, `f[#]5`, `f(#)`); undefined if the text is none. */
export const spellingOf = interned<Spelling>((text) => {
  const match = spellingPattern.exec(text);
  if (match === null) return undefined;
  const [, letter, accidental, editors, cautionary, octave, doubt] = match;
  return {
    text,
    letter: letter as Spelling['letter'],
    ...(accidental === undefined ? {} : { accidental: accidental as AccidentalSign }),
    ...(editors === undefined ? {} : { editors: editors as AccidentalSign }),
    ...(cautionary === undefined ? {} : { cautionary: cautionary as AccidentalSign }),
    ...(octave === undefined ? {} : { octave: Number(octave) }),
    doubtful: doubt !== undefined,
  };
});

/** `:french,K`, `:!plain`. */
function readingsOf(text: string | undefined): Readings | undefined {
  if (text === undefined) return undefined;
  const not = text.startsWith(':!');
  return { not, names: text.slice(not ? 2 : 1).split(',') };
}

const tiePattern = new RegExp(`^(\\[=\\]|=)(\\?)?(${source.readings})?$`);

/** The tie written as `text` (`=`, `[=]`, `=?`, `=:L`); undefined if the text is none. */
export const tieOf = interned<TieForm>((text) => {
  const match = tiePattern.exec(text);
  if (match === null) return undefined;
  const readings = readingsOf(match[3]);
  return {
    text,
    editors: match[1] === '[=]',
    doubtful: match[2] !== undefined,
    ...(readings === undefined ? {} : { readings }),
  };
});

const otherMarks = new Set(['through', 'fermata', 'dot', 'stroke', 'renvoi', 'fin']);
const curves = new Set(['u', 'line']);
const accidentals = new Set(['#', '##', 'b', 'bb', 'n']);

const markPattern = new RegExp(
  `^'(?:\\[([^\\]]*)\\]|([^?+(:]*))(\\?)?(\\+)?(?:\\(([^()"\\n]*)\\))?(${source.readings})?$`,
);

function markType(core: string): MarkType {
  if (/^[1-5]/.test(core)) return 'finger';
  if (accidentals.has(core)) return 'accidental';
  if (core.startsWith('.')) return 'curveEnd';
  const word = core.endsWith('~') ? core.slice(0, -1) : core;
  if (curves.has(word)) return 'curveStart';
  if (/^w\d+$/.test(word)) return 'weight';
  return otherMarks.has(word) ? 'other' : 'sign';
}

/** What each type of mark says beyond its name. */
function markDetails(type: MarkType, core: string): Partial<MarkForm> {
  if (type === 'finger') return { fingers: core.split('-').map(Number) };
  if (type === 'accidental') return { accidental: core as AccidentalSign };
  if (type === 'weight') return { weight: Number(core.slice(1)) };
  const begunOn = type === 'curveEnd' ? spellingOf(core.slice(1)) : undefined;
  return begunOn === undefined ? {} : { begunOn };
}

/** The mark written as `text`, from its apostrophe to its last form; undefined if the text is none. */
export const markOf = interned<MarkForm>((text) => {
  const match = markPattern.exec(text);
  if (match === null) return undefined;
  const [, inBrackets, plain, doubt, linked, parameters, onlyIn] = match;
  const core = inBrackets ?? plain ?? '';
  const type = markType(core);
  const readings = readingsOf(onlyIn);
  return {
    text,
    type,
    name: type === 'curveEnd' ? '.' : core.replace(/~$/, ''),
    ...markDetails(type, core),
    openEnded: core.endsWith('~'),
    editors: inBrackets !== undefined,
    doubtful: doubt !== undefined,
    linked: linked !== undefined,
    parameters: parameters?.split(/[\s,]+/).filter((word) => word !== '') ?? [],
    ...(readings === undefined ? {} : { readings }),
  };
});

/** Words that begin a span, and whether readings may limit it. */
export const spanWords: ReadonlyMap<
  SpanWord,
  { readonly readings: boolean; readonly proportion: boolean; readonly ratio: boolean }
> = new Map<SpanWord, { readings: boolean; proportion: boolean; ratio: boolean }>([
  ['overdot', { readings: true, proportion: false, ratio: false }],
  ['inegal', { readings: true, proportion: false, ratio: true }],
  ['assimilate', { readings: true, proportion: false, ratio: false }],
  ['snap', { readings: true, proportion: false, ratio: false }],
  ['literal', { readings: true, proportion: false, ratio: false }],
  ['small', { readings: false, proportion: false, ratio: false }],
  ['black', { readings: false, proportion: true, ratio: false }],
  ['void', { readings: false, proportion: true, ratio: false }],
  ['lig', { readings: false, proportion: false, ratio: false }],
  ['unclear', { readings: true, proportion: false, ratio: false }],
  ['supplied', { readings: true, proportion: false, ratio: false }],
  ['deleted', { readings: true, proportion: false, ratio: false }],
  ['added', { readings: true, proportion: false, ratio: false }],
]);

const spanPattern = new RegExp(
  `^\\{(?:(\\d+)in(\\d+)|([A-Za-z]+)(?:[ \\t]+(?:(\\d+):(\\d+)|(\\d+)in(\\d+)))?)(${source.readings})?$`,
);

/** The head of a span, from its bracket (`{3in2`, `{inegal 2:1:french`); undefined if the text is none. */
export const spanHeadOf = interned<SpanHead>((text) => {
  const match = spanPattern.exec(text);
  if (match === null) return undefined;
  const [, n, m, word, long, short, wordN, wordM, onlyIn] = match;
  const readings = readingsOf(onlyIn);
  const proportion = n ?? wordN;
  return {
    text,
    ...(spanWords.has(word as SpanWord) ? { word: word as SpanWord } : {}),
    ...(proportion === undefined ? {} : { proportion: { n: Number(proportion), m: Number(m ?? wordM) } }),
    ...(long === undefined ? {} : { ratio: { long: Number(long), short: Number(short) } }),
    ...(readings === undefined ? {} : { readings }),
  };
});

/** Whether a proportion can stand: both numbers from 1 to 99. */
export const isPossibleProportion = (p: { readonly n: number; readonly m: number }): boolean =>
  possible(p.n) && possible(p.m);

/** Whether the text is a name that lanes can cite. */
export const isName = (text: string): boolean => whole(source.name).test(text);
