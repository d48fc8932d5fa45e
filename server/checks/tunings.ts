/** Tunings and temperaments: names that are known, ways that end, fifths named once. */
import { modulo } from '../../grammar/modulo';
import { nameInstead } from '../../grammar/nearest';
import { allOf, clauseOf, clausesOf, firstOf } from '../../grammar/statements/read';
import type { Argument, NamePart, Row, Span, Spelling, Statement } from '../../grammar/tree';
import { semitonesOf } from '../../grammar/vocabulary/pitches';
import { temperamentNames } from '../../grammar/vocabulary/temperaments';
import { pitchOf } from '../readings/tunings';
import type { Declared, Environment } from '../score/environment';
import type { PlacedProblem } from '../score/score';
import { circlesOf, waysRound } from '../score/ways';
import { definedTemperament } from '../tuning/defined';
import { fifthName, keyOf as keyAt } from '../tuning/fifths';
import { NOTES } from '../tuning/temperament';
import { size, type Tempering } from '../tuning/tempering';
import { check, problemAt } from './check';

interface Found {
  readonly statement: Statement;
  readonly declared: Declared;
}

interface Temperament extends Found {
  readonly name: NamePart;
  readonly from: NamePart | undefined;
}

type Report = typeof problemAt;

/** Says something of a statement of the file itself; included files are proofed by themselves. */
const at =
  ({ declared }: Found) =>
  (code: Parameters<Report>[0], { pos, len }: Span, slots: Parameters<Report>[2], fixes?: Parameters<Report>[3]) =>
    declared.file !== undefined
      ? []
      : [problemAt(code, { pos, len, block: declared.block, statement: declared.statement }, slots, fixes)];

const nameIn = (args: readonly Argument[] | undefined): NamePart | undefined => firstOf(args ?? [], 'name');

const temperamentsOf = (founds: readonly Found[]): Temperament[] =>
  founds.flatMap((found) => {
    const name = found.statement.keyword === 'temperament' ? nameIn(found.statement.args) : undefined;
    return name === undefined ? [] : [{ ...found, name, from: nameIn(clauseOf(found.statement, 'from')?.args) }];
  });

// ─── names ───────────────────────────────────────────────────────────────────────────────────────────────────────

/** The temperaments that a statement cites: of the file's `tuning`, of a reading's, and what another comes from. */
function citedIn({ statement }: Found): NamePart[] {
  const { keyword, args } = statement;
  if (keyword === 'tuning') return allOf(args, 'name');
  const clause = { reading: 'tuning', temperament: 'from' }[keyword];
  return clause === undefined ? [] : clausesOf(statement, clause).flatMap((one) => allOf(one.args, 'name'));
}

const unknownIn = (found: Found, known: ReadonlySet<string>): PlacedProblem[] =>
  citedIn(found)
    .filter(({ text }) => !known.has(text))
    .flatMap((name) =>
      at(found)('unknown-temperament', name, { name: name.text }, nameInstead(name.text, name, known)),
    );

function onCircles(all: readonly Temperament[]): PlacedProblem[] {
  const circles = circlesOf(new Map(all.map(({ name, from }) => [name.text, from?.text])));
  const ways = waysRound(
    circles,
    all.map(({ name }) => name.text),
  );
  return all.flatMap((found) => {
    const way = ways.get(found.name.text);
    return way === undefined || found.from === undefined
      ? []
      : at(found)('temperament-circle', found.from, { name: found.name.text, way });
  });
}

function givenTwice(all: readonly Temperament[]): PlacedProblem[] {
  const given = new Set<string>();
  return all.flatMap((found) => {
    const { text } = found.name;
    if (given.has(text)) return at(found)('name-used-twice', found.name, { name: text });
    given.add(text);
    return [];
  });
}

// ─── fifths ──────────────────────────────────────────────────────────────────────────────────────────────────────

const textOf = ({ letter, accidental, octave }: Spelling): string =>
  `${letter}${accidental === undefined || accidental === 'n' ? '' : accidental}${octave ?? ''}`;

/** Each key stands in the circle once: `g#-eb` and `ab-eb` are one fifth, in whatever octave it is tuned. */
const keyOf = (row: Row): number | undefined => {
  const fifth = firstOf(row.args, 'pair');
  return fifth && modulo(semitonesOf(fifth.first), 12);
};

const takesRest = ({ args }: Row): boolean => allOf(args, 'word').some(({ text }) => text === 'rest');

function fifthsOf(found: Temperament): PlacedProblem[] {
  const rows = found.statement.rows.filter(({ kind }) => kind === 'fifth');
  const keys = rows.map(keyOf);
  const [, ...rests] = rows.filter(takesRest);
  return [
    ...rows.flatMap((row, index) => {
      const fifth = firstOf(row.args, 'pair');
      if (fifth === undefined || keys.indexOf(keys[index]) === index) return [];
      return at(found)('fifth-twice', fifth, { fifth: pairText(row) });
    }),
    ...rests.flatMap((row) => at(found)('rest-twice', row, { name: found.name.text })),
  ];
}

// ─── the circle ──────────────────────────────────────────────────────────────────────────────────────────────────────

/** How the circle of a temperament closes. */
function circleOf(found: Temperament, environment: Environment): PlacedProblem[] {
  const name = found.name.text;
  const defined = definedTemperament(environment, name, pitchOf(environment));
  if (defined === undefined) return [];
  const { temperament, misses, contradicted, beyond } = defined;
  const told = beyond.flatMap((row) => at(found)('beats-too-many', row, { fifth: pairText(row) }));
  if (misses === 0) return told;
  const { first, fifths } = temperament;
  const fifth = fifthName(first + NOTES - 1, first);
  const width = size(fifths[NOTES - 1] as Tempering);
  if (!contradicted) {
    const direction = width < 0 ? 'narrow' : 'wide';
    return [...told, ...at(found)('circle-rest-assumed', found.name, { name, fifth, cents: cents(width), direction })];
  }
  const row = found.statement.rows.find((one) => keyOf(one) === keyAt(first + NOTES - 1));
  return [...told, ...at(found)('circle-not-closed', row ?? found.name, { name, fifth, cents: cents(misses) })];
}

const cents = (width: number): string => Math.abs(width).toFixed(2);

const pairText = (row: Row): string => {
  const fifth = firstOf(row.args, 'pair');
  return fifth === undefined ? '' : `${textOf(fifth.first)}-${textOf(fifth.second)}`;
};

export const tunings = check('tunings', ['environment'], ({ environment }: { environment: Environment }) => {
  const all = temperamentsOf(environment.statements);
  const known = new Set([...all.map(({ name }) => name.text), ...temperamentNames]);
  return [
    ...environment.statements.flatMap((found) => unknownIn(found, known)),
    ...onCircles(all),
    ...givenTwice(all),
    ...all.flatMap(fifthsOf),
    ...all.flatMap((found) => circleOf(found, environment)),
  ];
});
