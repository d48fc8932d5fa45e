/** The instrument that a file declares: its keys, what each sounds, its manuals and stops. */
import { spellingOf } from '../../grammar/lanes/forms';
import { allOf, clauseOf, clausesOf, firstOf } from '../../grammar/statements/read';
import type { Row, Spelling, Statement } from '../../grammar/tree';
import { type InstrumentEntry, instrumentTypes } from '../../grammar/vocabulary/instruments';
import { midiOfTyped } from '../../grammar/vocabulary/pitches';
import type { Environment } from '../score/environment';
import { type Half, LOWEST_LIES, LOWEST_OF, SHORT_UP_TO, shortKeys } from './shortOctave';

/** A key as it lies under the hand. Pitches are MIDI keys (c4 is 60). */
export interface Key {
  /** The place on the keyboard: of a short octave the key of e lies at 40 and sounds c2. */
  readonly lies: number;
  readonly sounds: number;
  /** Of a divided key. */
  readonly half?: Half;
}

export interface Manual {
  readonly name: string;
  /** Lengths of its stops in feet; a stop of 8 sounds as written, one of 4 an octave higher. */
  readonly stops: readonly number[];
}

export interface Instrument {
  /** From the lowest note up. */
  readonly keys: readonly Key[];
  /** The lowest and the highest note that sounds. */
  readonly low: number;
  readonly high: number;
  readonly shortOctave: string | undefined;
  readonly manuals: readonly Manual[];
}

const statementOf = ({ statements }: Environment): Statement | undefined =>
  statements.find(({ statement, declared }) => statement.keyword === 'instrument' && declared.file === undefined)
    ?.statement;

/** Whether the file says that it is for an instrument, whatever it says of that. */
export const namesInstrument = (environment: Environment): boolean => statementOf(environment) !== undefined;

/** What the file calls its instrument; "" where it names none. */
export const instrumentName = (environment: Environment): string =>
  firstOf(statementOf(environment)?.args ?? [], 'name')?.text ?? '';

/** The manuals that the file declares. */
export const manualsOf = (environment: Environment): readonly Manual[] =>
  (statementOf(environment)?.rows ?? []).filter(({ kind }) => kind === 'manual').flatMap(manualOf);

const manualOf = (row: Row): Manual[] => {
  const name = firstOf(row.args, 'name')?.text;
  const stops = allOf(clauseOf(row, 'stops')?.args ?? [], 'number').map(({ value }) => value);
  return name === undefined ? [] : [{ name, stops: stops.length === 0 ? [8] : stops }];
};

/** What is stated of keys, by the file or by the type after which its instrument is called. */
interface Stated {
  readonly low: number;
  readonly high: number;
  readonly shortOctave: string | undefined;
  /** Of a broken octave the half of its sharps that has the note of the short octave. */
  readonly broken: Half | undefined;
  readonly lacks: readonly number[];
}

/** The type of a name. */
export const instrumentType = (name: string): InstrumentEntry | undefined =>
  instrumentTypes.find((one) => one.name === name);

/** The file's instrument; undefined where neither it nor its type has a compass: then every key is there. */
export function instrumentOf(environment: Environment): Instrument | undefined {
  const statement = statementOf(environment);
  if (statement === undefined) return undefined;
  const stated = statedIn(environment, statement);
  if (stated === undefined) return undefined;
  const keys = keysOf(stated);
  const { shortOctave, high } = stated;
  return { keys, low: keys[0]?.sounds ?? 0, high, shortOctave, manuals: manualsOf(environment) };
}

function statedIn({ compass }: Environment, statement: Statement): Stated | undefined {
  const type = instrumentType(firstOf(statement.args, 'name')?.text ?? '');
  const own = compass ?? (type && typesCompass(type));
  if (own === undefined) return undefined;
  const clause = clauseOf(statement, 'short-octave');
  const [word, broken, half] = allOf(clause?.args ?? [], 'word').map(({ text }) => text);
  const ofType = compass === undefined ? type : undefined;
  const lacking = allOf(clauseOf(statement, 'lacks')?.args ?? [], 'pitch').map(({ spelling }) => midiOfTyped(spelling));
  return {
    ...own,
    shortOctave: word ?? ofType?.shortOctave,
    broken: broken === undefined ? undefined : half === 'back' ? 'back' : 'front',
    lacks: [...(ofType?.lacks ?? []).map(typed), ...lacking],
  };
}

const typed = (text: string): number => midiOfTyped(spellingOf(text) as Spelling);

function typesCompass({ compass }: InstrumentEntry): { readonly low: number; readonly high: number } {
  const [low = '', high = ''] = compass.split('-');
  return { low: typed(low), high: typed(high) };
}

// ─── keys ────────────────────────────────────────────────────────────────────────────────────────────────────────

const own = (midi: number): Key => ({ lies: midi, sounds: midi });

const from = (low: number, high: number): Key[] =>
  Array.from({ length: Math.max(0, high - low + 1) }, (_, i) => own(low + i));

const keysOf = (stated: Stated): readonly Key[] =>
  laidOut(stated).filter(({ sounds }) => !stated.lacks.includes(sounds));

/** All keys of the compass, with those of a short octave in their places. */
function laidOut({ low, high, shortOctave, broken }: Stated): readonly Key[] {
  const lowest = shortOctave === undefined ? undefined : LOWEST_OF[shortOctave];
  if (lowest === undefined) return from(low, high);
  // The compass may name the lowest key or what it sounds; another is no short octave of this kind.
  const isKey = low % 12 === (lowest + LOWEST_LIES) % 12;
  const sounding = isKey ? low - LOWEST_LIES : low;
  if (sounding % 12 !== lowest) return from(low, high);
  const short = shortKeys(broken).map(({ lies, sounds, half }) => ({
    lies: sounding + lies,
    sounds: sounding + sounds,
    ...(half === undefined ? {} : { half }),
  }));
  return [...short, ...from(sounding + SHORT_UP_TO, high)].sort((a, b) => a.sounds - b.sounds);
}

/** The key that gives a note; undefined if none does. Of an instrument without a compass every note has its own. */
export const keyFor = (instrument: Instrument | undefined, midi: number): Key | undefined =>
  instrument === undefined ? own(midi) : instrument.keys.find(({ sounds }) => sounds === midi);

/** Octaves by which a note without a key would have to move to have one: the fewest, and towards the middle; 0 if none helps. */
export function octavesAway(instrument: Instrument, midi: number): number {
  const [near, far] = midi < (instrument.low + instrument.high) / 2 ? [1, -1] : [-1, 1];
  const ways = [near, far, 2 * near, 2 * far];
  return ways.find((octaves) => keyFor(instrument, midi + 12 * octaves) !== undefined) ?? 0;
}

/** The two notes of each divided key, in every octave: `d#/eb`. */
export const dividedKeys = (environment: Environment): readonly (readonly [Spelling, Spelling])[] => {
  const statement = statementOf(environment);
  const clauses = statement === undefined ? [] : clausesOf(statement, 'split');
  return clauses.flatMap(({ args }) =>
    allOf(args, 'pair').map((pair): readonly [Spelling, Spelling] => [pair.first, pair.second]),
  );
};
