/**
 * Temperaments that a file defines: rows for single fifths upon another temperament or upon pure fifths.
 *
 * A fifth that is told in beats depends on the frequencies of its notes, so it is solved on the way round the circle from a:
 * upwards to the fifth that closes the circle, and downwards to it.
 */
import { keeping } from '../../grammar/keeping';
import { allOf, clauseOf, firstOf } from '../../grammar/statements/read';
import type { Row, Spelling, Statement } from '../../grammar/tree';
import { KEY_OF_A4, midiOfTyped, semitonesOf } from '../../grammar/vocabulary/pitches';
import type { Environment } from '../score/environment';
import { circlesOf } from '../score/ways';
import { fifthName, keyOf, placeOfSpelling } from './fifths';
import { builtIn } from './schemes';
import { firstAfter, NOTES, placesFrom, restOf, type Temperament, USUAL_FIRST } from './temperament';
import { AS_GOOD_AS_NOTHING, minus, PURE, PURE_FIFTH, partOf, size, type Tempering, tempered } from './tempering';

/** What a row asks of its fifth. */
type Asked =
  | { readonly kind: 'rest' }
  | { readonly kind: 'part'; readonly tempering: Tempering }
  | { readonly kind: 'beats'; readonly beats: number; readonly low: Spelling; readonly high: Spelling };

interface FifthRow {
  readonly row: Row;
  /** The key of the lower note, 0 for c. */
  readonly key: number;
  readonly first: Spelling;
  readonly second: Spelling;
  readonly asked: Asked;
}

/** A temperament of the file, and how its circle closes. */
export interface Defined {
  readonly temperament: Temperament;
  /** Cents by which the fifth that closes the circle is wider than what is said of it; 0 where it was left to take the rest. */
  readonly misses: number;
  /** A row says otherwise than `rest` of the fifth that closes the circle. */
  readonly contradicted: boolean;
  /** Whether some row says `rest`. */
  readonly hasRest: boolean;
  /** Rows whose beats are too many for a fifth: they count as pure. */
  readonly beyond: readonly Row[];
}

// ─── rows ────────────────────────────────────────────────────────────────────────────────────────────────────────

function rowOf(row: Row): FifthRow | undefined {
  const fifth = firstOf(row.args, 'pair');
  const asked = fifth && askedOf(row, fifth.first, fifth.second);
  if (fifth === undefined || asked === undefined) return undefined;
  return { row, key: keyOf(placeOfSpelling(fifth.first)), first: fifth.first, second: fifth.second, asked };
}

function askedOf({ args }: Row, low: Spelling, high: Spelling): Asked | undefined {
  const words = allOf(args, 'word').map(({ text }) => text);
  if (words.includes('rest')) return { kind: 'rest' };
  if (words.includes('pure')) return { kind: 'part', tempering: PURE };
  const part = firstOf(args, 'ratio');
  if (part !== undefined) {
    const comma = words.includes('pc') ? 'pc' : 'sc';
    return { kind: 'part', tempering: partOf(comma, part.sign, part.n, part.d) };
  }
  const rate = firstOf(args, 'number')?.value;
  if (rate === undefined || low.octave === undefined || high.octave === undefined) return undefined;
  return { kind: 'beats', beats: words.includes('wide') ? rate : -rate, low, high };
}

/** The rows of a temperament; of two for one fifth the first counts. */
function rowsOf({ rows }: Statement): ReadonlyMap<number, FifthRow> {
  const found = new Map<number, FifthRow>();
  for (const row of rows.flatMap((one) => rowOf(one) ?? [])) if (!found.has(row.key)) found.set(row.key, row);
  return found;
}

// ─── by name ─────────────────────────────────────────────────────────────────────────────────────────────────────

/** What a file says of temperaments by name, and those that have been solved. */
interface Definitions {
  readonly statements: ReadonlyMap<string, Statement>;
  /** Names from which the way leads back to themselves. */
  readonly circles: ReadonlyMap<string, readonly string[]>;
  /** By pitch and name. */
  readonly known: Map<string, Defined>;
}

const fromOf = (statement: Statement | undefined): string | undefined =>
  statement && firstOf(clauseOf(statement, 'from')?.args ?? [], 'name')?.text;

const definitionsIn = keeping(({ statements: all }: Environment): Definitions => {
  const statements = new Map<string, Statement>();
  for (const { statement } of all) {
    const name = statement.keyword === 'temperament' ? firstOf(statement.args, 'name')?.text : undefined;
    if (name !== undefined && !statements.has(name)) statements.set(name, statement);
  }
  const parents = new Map([...statements].map(([name, statement]) => [name, fromOf(statement)]));
  return { statements, circles: circlesOf(parents), known: new Map() };
});

/**
 * A temperament by its name: the file's own, or one that needs no definition; undefined if there is none.
 * @param pitch frequency of a4 in hertz, on which beats depend
 */
export const temperamentByName = (environment: Environment, name: string, pitch: number): Temperament | undefined =>
  definedTemperament(environment, name, pitch)?.temperament ?? builtIn(name);

/** A temperament that the file defines; what comes from itself is upon pure fifths. */
export function definedTemperament(environment: Environment, name: string, pitch: number): Defined | undefined {
  const { statements, circles, known } = definitionsIn(environment);
  const keyOfName = (of: string): string => `${pitch} ${of}`;
  /** What is still to be solved, each with its statement, before that from which it comes. */
  const line: { readonly name: string; readonly statement: Statement }[] = [];
  let from: string | undefined = name;
  while (from !== undefined && !known.has(keyOfName(from))) {
    const statement = statements.get(from);
    if (statement === undefined) break;
    line.push({ name: from, statement });
    from = circles.has(from) ? undefined : fromOf(statement);
  }
  let parent: Parent =
    (from === undefined ? undefined : (known.get(keyOfName(from)) ?? ofBuiltIn(from))) ?? PURE_FIFTHS;
  for (const one of line.reverse()) {
    const defined = solved(one.name, rowsOf(one.statement), parent, pitch);
    known.set(keyOfName(one.name), defined);
    parent = defined;
  }
  return known.get(keyOfName(name));
}

type Parent = Pick<Defined, 'temperament' | 'hasRest'>;

const PURE_FIFTHS: Parent = {
  temperament: { name: '', title: 'pure fifths', first: USUAL_FIRST, fifths: placesFrom(0).map(() => PURE) },
  hasRest: false,
};

const ofBuiltIn = (name: string): Parent | undefined => {
  const temperament = builtIn(name);
  return temperament && { temperament, hasRest: false };
};

// ─── the circle ──────────────────────────────────────────────────────────────────────────────────────────────────

function solved(name: string, rows: ReadonlyMap<number, FifthRow>, parent: Parent, pitch: number): Defined {
  const own = [...rows.values()].find(({ asked }) => asked.kind === 'rest');
  const { first: parentFirst, fifths: inherited } = parent.temperament;
  const first = own === undefined ? parentFirst : firstAfter(own);
  const parents = new Map(placesFrom(parentFirst).map((place, i) => [keyOf(place), inherited[i] ?? PURE]));
  const way = new Way(rows, parents, pitch);
  const fifths = way.round(first);
  const rest = restOf(fifths);
  const closing = keyOf(first - 1);
  const contradicted = rows.has(closing) && own === undefined;
  const hasRest = own !== undefined || (parent.hasRest && !contradicted);
  const missing = hasRest ? 0 : size(minus(rest, way.last));
  const misses = Math.abs(missing) < AS_GOOD_AS_NOTHING ? 0 : missing;
  const temperament = { name, title: `${name}, as the file defines it`, first, fifths: [...fifths, rest] };
  return {
    temperament:
      misses === 0 ? temperament : { ...temperament, note: closingInWords(temperament, misses, contradicted) },
    misses,
    contradicted,
    hasRest,
    beyond: way.beyond,
  };
}

/** What the fifth that closes the circle takes without having been told to. */
function closingInWords({ first, fifths }: Temperament, misses: number, contradicted: boolean): string {
  const fifth = fifthName(first + NOTES - 1, first);
  if (contradicted)
    return `Its fifths miss the circle by ${Math.abs(misses).toFixed(2)} cents: ${fifth} takes them, whatever its row says.`;
  const width = size(fifths[NOTES - 1] ?? PURE);
  return `No fifth takes the rest: ${fifth} is ${Math.abs(width).toFixed(2)} cents ${width < 0 ? 'narrow' : 'wide'}, so that the circle closes.`;
}

/** The key of a, from which all frequencies are counted. */
const KEY_OF_A = 9;
/** A fifth whose beats would put it farther from pure, in cents, is none. */
const FARTHEST = 60;

/** The way round the circle from a, with the frequencies met on it. */
class Way {
  readonly beyond: Row[] = [];
  /** What is said of the fifth that closes the circle. */
  last: Tempering = PURE;
  /** Cents of each key above a, whole octaves left out, as far as they are known. */
  private readonly cents = new Map<number, number>([[KEY_OF_A, 0]]);

  constructor(
    private readonly rows: ReadonlyMap<number, FifthRow>,
    private readonly parents: ReadonlyMap<number, Tempering>,
    private readonly pitch: number,
  ) {}

  /** The eleven fifths from a note upwards. */
  round(first: number): readonly Tempering[] {
    const keys = placesFrom(first).map(keyOf);
    const a = keys.indexOf(KEY_OF_A);
    const found = new Map<number, Tempering>();
    for (let i = a; i < NOTES - 1; i++) found.set(i, this.upFrom(keys[i] ?? 0, keys[i + 1] ?? 0));
    for (let i = a - 1; i >= 0; i--) found.set(i, this.downTo(keys[i] ?? 0, keys[i + 1] ?? 0));
    this.last = this.tempering(keys[NOTES - 1] ?? 0, keys[NOTES - 1] ?? 0, 'low');
    return Array.from({ length: NOTES - 1 }, (_, i) => found.get(i) ?? PURE);
  }

  private upFrom(low: number, high: number): Tempering {
    const tempering = this.tempering(low, low, 'low');
    this.cents.set(high, (this.cents.get(low) ?? 0) + PURE_FIFTH + size(tempering));
    return tempering;
  }

  private downTo(low: number, high: number): Tempering {
    const tempering = this.tempering(low, high, 'high');
    this.cents.set(low, (this.cents.get(high) ?? 0) - PURE_FIFTH - size(tempering));
    return tempering;
  }

  /** Of the fifth upon a key. @param known the key whose frequency is known, and whether it is the lower or the upper one */
  private tempering(low: number, known: number, side: 'low' | 'high'): Tempering {
    const row = this.rows.get(low);
    if (row?.asked.kind === 'part') return row.asked.tempering;
    if (row?.asked.kind !== 'beats') return this.parents.get(low) ?? PURE;
    const heard = temperingByBeats(row.asked, side, (pitch) => this.frequency(known, pitch));
    if (Math.abs(size(heard)) <= FARTHEST) return heard;
    this.beyond.push(row.row);
    return PURE;
  }

  /** Of a key in the octave of a pitch. */
  private frequency(key: number, pitch: Spelling): number {
    const even = 100 * (midiOfTyped(pitch) - KEY_OF_A4);
    const cents = this.cents.get(key) ?? 0;
    const octaves = Math.round((even - cents) / 1200);
    return this.pitch * 2 ** (cents / 1200 + octaves);
  }
}

/**
 * A fifth may be tuned as a twelfth or, its upper note below the other, as a fourth: so many partials of the one meet so many of
 * the other, and a wide fourth is a narrow fifth.
 */
function temperingByBeats(
  { beats, low, high }: Asked & { readonly kind: 'beats' },
  side: 'low' | 'high',
  frequency: (pitch: Spelling) => number,
): Tempering {
  const octaves = Math.floor((semitonesOf(high) - semitonesOf(low)) / NOTES);
  const ofLow = 3 * 2 ** Math.max(0, octaves - 1);
  const ofHigh = 2 ** Math.max(0, 1 - octaves);
  const wide = octaves < 0 ? -beats : beats;
  const known = frequency(side === 'low' ? low : high);
  const meetingLow = side === 'low' ? ofLow * known : ofHigh * known - wide;
  const meetingHigh = side === 'high' ? ofHigh * known : ofLow * known + wide;
  const possible = meetingLow > 0 && meetingHigh > 0;
  return tempered({ cents: possible ? 1200 * Math.log2(meetingHigh / meetingLow) : Number.POSITIVE_INFINITY });
}
