/**
 * What scripts hand to the library: TypeScript proves that it fits, JavaScript does not. Whatever does not fit is one error that
 * names the function and the argument.
 */
import { LEVELS } from './document/levels';
import { midiTunings } from './export/midi/keys';
import { ornamentForms } from './export/ornaments';
import type { Host } from './workspace/host';

/** What an argument must be, in words, and whether a value is so. */
interface Kind {
  readonly what: string;
  readonly fits: (value: unknown) => boolean;
}

type Fields = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Fields => typeof value === 'object' && value !== null;
const has = (...names: readonly string[]) => ({
  fits: (value: unknown) => isObject(value) && names.every((name) => value[name] !== undefined),
});
const isOneOf = (...words: readonly string[]): Kind => ({
  what: words.map((word) => `“${word}”`).join(' or '),
  fits: (value) => words.some((word) => word === value),
});

const text: Kind = { what: 'a text', fits: (value) => typeof value === 'string' };
const truth: Kind = { what: 'true or false', fits: (value) => typeof value === 'boolean' };
const object: Kind = { what: 'an object', fits: isObject };
const action: Kind = { what: 'a function', fits: (value) => typeof value === 'function' };
const score: Kind = { what: 'a score, as score() gives it', ...has('pieces', 'environment', 'tree') };

const tuning: Kind = { what: 'a tuning', ...has('temperament', 'pitch') };

const isPitch = (value: unknown): boolean =>
  isObject(value) && isLetter(value.letter) && Number.isInteger(value.alteration) && Number.isInteger(value.octave);
const isLetter = (value: unknown): boolean => typeof value === 'string' && /^[a-g]$/.test(value);

const isChange = (value: unknown): boolean =>
  isObject(value) && Number.isInteger(value.offset) && Number.isInteger(value.length) && text.fits(value.text);

const isProofed = (value: unknown): boolean =>
  isObject(value) && text.fits(value.file) && (Array.isArray(value.findings) || text.fits(value.failure));
const uses = has('signs', 'notes');

const listOf = (what: string, fits: (value: unknown) => boolean): Kind => ({
  what,
  fits: (value) => Array.isArray(value) && value.every(fits),
});

const kinds = {
  text,
  of: score,
  names: listOf('a list of texts', text.fits),
  options: object,
  change: action,
  problem: { what: 'a problem of a score or an export', ...has('problem') },
  piece: { what: 'a piece of a score', ...has('systems', 'bars') },
  system: { what: 'a system of a piece', ...has('block', 'page', 'ordinal') },
  event: { what: 'an event of a score', ...has('laneName', 'address') },
  tree: { what: 'the tree of a score', ...has('blocks', 'text') },
  source: { what: 'a source, as events have it', ...has('pos', 'len') },
  changes: listOf('a list of changes', isChange),
  proofed: listOf('a list of files, { file, findings }', isProofed),
  uses: listOf('a list of what signUse gives', uses.fits),
  sheet: { what: 'a tuner’s sheet, as sheetOf() gives it', ...has('steps', 'notes', 'fifths', 'keys') },
  environment: { what: 'the environment of a score', ...has('voices', 'staves') },
  tuning,
  before: { what: 'a tuning, if anything', fits: (value) => value === undefined || tuning.fits(value) },
  pitch: { what: 'a pitch, { letter, alteration, octave }', fits: isPitch },
  hertz: { what: 'a number of hertz', fits: (value) => Number.isFinite(value) },
  reading: text,
  words: text,
  font: { what: 'bytes', fits: (value) => value instanceof Uint8Array },
} satisfies Readonly<Record<string, Kind>>;

const LEVELS_WISHED: readonly unknown[] = [...LEVELS, 'ignore', undefined];

const isAbove0 = (value: unknown): boolean =>
  (typeof value === 'bigint' || Number.isInteger(value)) && Number(value) > 0;

/** Fields of `options`, each of which may be left out. */
const optionKinds: Readonly<Record<string, Kind>> = {
  as: text,
  file: text,
  reading: text,
  table: text,
  tuning: text,
  page: text,
  host: {
    what: 'a host, with its functions read and resolve',
    fits: (value) => isObject(value) && action.fits(value.read) && action.fits(value.resolve),
  },
  levels: {
    what: 'levels by code, each of them error, warning, info, hint or ignore',
    fits: (value) => isObject(value) && Object.values(value).every((level) => LEVELS_WISHED.includes(level)),
  },
  engraver: object,
  counsel: truth,
  decisions: truth,
  leaveGaps: truth,
  keepSigns: truth,
  only: action,
  clefs: isOneOf('source', 'modern'),
  repeats: isOneOf('written', 'played'),
  rhythm: isOneOf('written', 'played'),
  ornaments: isOneOf(...ornamentForms),
  layout: isOneOf('source', 'flow', 'line'),
  show: isOneOf('both'),
  tracks: isOneOf('voice', 'manual'),
  midiTuning: isOneOf(...midiTunings),
  pace: {
    what: 'a time above 0, { n, d }',
    fits: (value) => isObject(value) && isAbove0(value.n) && isAbove0(value.d),
  },
  bars: {
    what: 'a range, { from, to } in texts',
    fits: (value) => isObject(value) && text.fits(value.from) && text.fits(value.to),
  },
};

function check(name: string, argument: string, { what, fits }: Kind, value: unknown): void {
  if (!fits(value)) throw new TypeError(`${name}: the argument “${argument}” must be ${what}, not ${inWords(value)}`);
}

function inWords(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  return value instanceof Promise ? 'a promise' : typeof value;
}

/**
 * A host of which nothing but texts is taken.
 * @throws TypeError, once it is asked, where it gives something else, such as the promise of a text
 */
export function givingTexts(host: Host): Host {
  const sure = (given: string | undefined, by: string): string | undefined => {
    if (given === undefined || text.fits(given)) return given;
    throw new TypeError(`options.host.${by} must give a text or undefined, not ${inWords(given)}`);
  };
  return {
    read: (file) => sure(host.read(file), 'read'),
    resolve: (from, path) => sure(host.resolve(from, path), 'resolve'),
  };
}

/**
 * Looks at what a function of the library was given, by the names of its arguments.
 * @throws TypeError for the first argument, or field of `options`, that does not fit
 */
export function checkArguments(name: string, given: Partial<Record<keyof typeof kinds, unknown>>): void {
  for (const [argument, value] of Object.entries(given))
    check(name, argument, kinds[argument as keyof typeof kinds], value);
  const { options } = given;
  if (!isObject(options)) return;
  for (const [field, value] of Object.entries(options)) {
    const kind = Object.hasOwn(optionKinds, field) ? optionKinds[field] : undefined;
    if (kind !== undefined && value !== undefined) check(name, `options.${field}`, kind, value);
  }
}

/**
 * A function of the library that looks first at what it is given.
 * @param names of its arguments, in their order
 */
export const asking =
  <Given extends readonly unknown[], Made>(
    name: string,
    names: readonly (keyof typeof kinds)[],
    made: (...given: Given) => Made,
  ) =>
  (...given: Given): Made => {
    checkArguments(name, Object.fromEntries(names.map((argument, index) => [argument, given[index]])));
    return made(...given);
  };
