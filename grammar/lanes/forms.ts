/**
 * Readers of single signs: a value, a written note, a mark, a tie, a span's head. Equal texts give one shared object.
 */
import { detached } from '../detached';
import { divide, format, multiply, subtract, type Time, time } from '../time';
import type {
  AccidentalSign,
  MarkForm,
  MarkType,
  Member,
  Readings,
  SpanHead,
  SpanWord,
  Spelling,
  TieForm,
  ValueForm,
} from '../tree';
import { shapeByName } from '../vocabulary/shapes';
import { source, whole } from './patterns';

/** Texts kept at most; beyond, sharing starts afresh so that hostile input cannot fill the memory. */
const KEPT = 20_000;

/** Signs longer than this are not kept. */
export const LONGEST = 200;

/** A reader that gives equal texts the same object. */
function interned<Form extends object | undefined>(read: (text: string) => Form): (text: string) => Form {
  const kept = new Map<string, Form>();
  return (text) => {
    const known = kept.get(text);
    if (known !== undefined) return known;
    if (text.length > LONGEST) return read(text);
    const own = detached(text);
    const form = read(own);
    if (form === undefined) return form;
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

const textOfBase = new Map([...bases].map(([text, length]) => [format(length), text]));

/** A value as it is typed, without its proportion: `Mx`, `4.`. */
export const valueText = ({ base, dots }: Pick<ValueForm, 'base' | 'dots'>): string =>
  `${textOfBase.get(format(base)) ?? format(base)}${'.'.repeat(dots)}`;

/** Most dots that a written value bears. */
const MOST_DOTS = 4;
/** Largest number in a proportion. */
export const MOST_IN_RATIO = 99;

const valuePattern = /^(Mx|L|B|\d+)(\.*)(?:(x)(?:(\d+)in(\d+))?)?(\?)?$/;

const possible = (n: number): boolean => n >= 1 && n <= MOST_IN_RATIO;

function durationOf(base: Time | undefined, dots: number, n: number, m: number): Time | undefined {
  if (base === undefined || dots > MOST_DOTS || !possible(n) || !possible(m)) return undefined;
  const dotted = subtract(multiply(base, time(2)), divide(base, time(1 << dots)));
  return multiply(dotted, time(m, n));
}

/** The value written as `text` (`8.`, `16x`, `B`); its duration is undefined where there is no such value. */
export const valueFormOf = interned<ValueForm | undefined>((text) => {
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
export const spellingOf = interned<Spelling | undefined>((text) => {
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
export const tieOf = interned<TieForm | undefined>((text) => {
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

/** A note as a chord's member: where it moves to, what is written, whether it is tied on. */
export interface MemberForm {
  readonly spelling: Spelling;
  readonly stave: Member['stave'];
  readonly tie: TieForm | undefined;
}

const memberPattern = new RegExp(`^(?:-(?:\\((up|down|home)\\))?)?(${source.spelling})(${source.tie})?$`);

/** The member written as `text`, a note (`c5=`) or a further member (`-(up)f4`), as the lexer cuts it. */
export const memberOf = interned<MemberForm>((text) => {
  const [, stave, noteText = '', tieText] = memberPattern.exec(text) ?? [];
  return {
    spelling: spellingOf(noteText) as Spelling,
    stave: stave as Member['stave'],
    tie: tieText === undefined ? undefined : tieOf(tieText),
  };
});

/** A label of an option; its place counts from the beginning of the head. */
export interface LabelForm {
  readonly at: number;
  readonly len: number;
  readonly name: string;
  readonly layer: number | undefined;
  readonly doubtful: boolean;
}

/** What stands before an option, from its bracket or semicolon to the colon. */
export interface OptionHead {
  readonly place: string | undefined;
  /** Annotations as typed, with their places in the head. */
  readonly reasons: readonly { readonly text: string; readonly at: number }[];
  readonly labels: readonly LabelForm[];
}

const labelPattern = /^([A-Za-z]\w*)(?:\.(\d+))?(\?)?$/;
const headPattern = new RegExp(`^(?:<(?:(${source.name})((?:${source.annotation})*)[ \\t]+)?|;[ \\t]*)`);
const annotationPattern = new RegExp(source.annotation, 'g');

/** The head of an option (`<v3*n7 K,M.2?:`, `; L:`); nothing is in it where it has no labels. */
export const optionHeadOf = interned<OptionHead>((text) => {
  const [before = '', place, reasonText = ''] = headPattern.exec(text) ?? [];
  const reasonsAt = 1 + (place?.length ?? 0);
  const reasons = [...reasonText.matchAll(annotationPattern)].map((match) => ({
    text: match[0],
    at: reasonsAt + match.index,
  }));
  return { place, reasons, labels: text.endsWith(':') ? labelForms(text.slice(before.length, -1), before.length) : [] };
});

function labelForms(text: string, start: number): LabelForm[] {
  let at = start;
  return text.split(',').map((one) => {
    const [, name = one, layer, doubt] = labelPattern.exec(one) ?? [];
    const form = {
      at,
      len: one.length,
      name,
      layer: layer === undefined ? undefined : Number(layer),
      doubtful: doubt !== undefined,
    };
    at += one.length + 1;
    return form;
  });
}

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

/** Whether such a word after an apostrophe is a mark, whatever tables a file has. */
export const isMarkName = (name: string): boolean =>
  otherMarks.has(name) || curves.has(name) || shapeByName(name) !== undefined;

/** What each type of mark says beyond its name. */
function markDetails(type: MarkType, core: string): Partial<MarkForm> {
  if (type === 'finger') return { fingers: core.split('-').map(Number) };
  if (type === 'accidental') return { accidental: core as AccidentalSign };
  if (type === 'weight') return { weight: Number(core.slice(1)) };
  const begunOn = type === 'curveEnd' ? spellingOf(core.slice(1)) : undefined;
  return begunOn === undefined ? {} : { begunOn };
}

/** The mark written as `text`, from its apostrophe to its last form; undefined if the text is none. */
export const markOf = interned<MarkForm | undefined>((text) => {
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
export const spanHeadOf = interned<SpanHead | undefined>((text) => {
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
