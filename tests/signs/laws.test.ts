/**
 * Laws of all sign tables, each row and each of its other readings on every value from breve to semiquaver, slow and quick:
 * time is conserved, what is played lies inside the note, the written note is there, no step is an augmented second.
 */
import { describe, expect, it } from 'vitest';
import { add, compare, format, type Time, ZERO } from '../../grammar/time';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { shapeByName } from '../../grammar/vocabulary/shapes';
import type { PerformedEvent } from '../../server/score/performance';
import { degreeOf } from '../../server/signs/degrees';
import { recipeOf } from '../../server/signs/recipes';
import { signTables } from '../../server/signs/tables';
import type { SignRow } from '../../server/signs/tables/table';
import { eventsOfVoice, gaps, performed } from '../helpers/realised';

const VALUES = ['B', '1', '2.', '2', '4.', '4', '8.', '8', '16'];
const TEMPI = ['4 at 40', '2 at 96'];
/** Signatures and main notes: plain, beside a leading note, among flats, among sharps. */
const PITCHES = [
  { key: 'none', main: 'd5' },
  { key: 'bb', main: 'c#5' },
  { key: 'bb eb ab', main: 'bn4' },
  { key: 'f# c#', main: 'a#4' },
];

interface Case {
  readonly table: string;
  readonly row: SignRow;
  /** The other reading chosen, if any. */
  readonly rival: string | undefined;
  readonly recipe: string;
}

const cases: readonly Case[] = signTables.flatMap(({ table, rows }) =>
  rows.flatMap((row) => [
    { table, row, rival: undefined, recipe: row.recipe },
    ...(row.rivals ?? []).map(({ name, recipe }) => ({ table, row, rival: name, recipe })),
  ]),
);

const isChord = ({ shapes }: SignRow): boolean => shapes.some((shape) => shapeByName(shape)?.drawnFor === 'chord');

/** The notes before and after, as the row's conditions ask. */
function around({ when = [] }: SignRow): readonly [string, string] {
  const before = when.includes('falling') || when.includes('slurred from above') ? 'above' : 'below';
  return [before, when.includes('before higher') ? 'above' : 'below'];
}

const LETTERS = 'cdefgab';

/** A neighbour on the stave, as the signature has it. */
function neighbour(main: string, where: string): string {
  const [letter = 'c', octave = 5] = [main.charAt(0), Number(main.slice(-1))];
  const degree = octave * 7 + LETTERS.indexOf(letter) + (where === 'above' ? 1 : -1);
  return `${LETTERS.charAt(degree % 7)}${Math.floor(degree / 7)}`;
}

/** One note that bears a sign, with what stands around it. */
interface Sounded {
  /** What was typed, for the reader of a failure. */
  readonly typed: string;
  /** The note before, the note with its sign, the note after. */
  readonly all: readonly PerformedEvent[];
  readonly own: readonly PerformedEvent[];
}

/** A row's sign on notes of all values, each between two crotchets. */
function sounded({ table, row, rival }: Case, tempo: string, { key, main }: (typeof PITCHES)[number]): Sounded[] {
  const [before, after] = around(row).map((where) => neighbour(main, where));
  const said = rival === undefined ? `(${row.names[0]})` : `(${row.names[0]} ${rival})`;
  const sign = row.shapes.map((shape, index) => `'${shape}${index === 0 ? said : ''}`).join('');
  const [open, close] = row.when?.includes('slurred from above') === true ? ["'u", "'."] : ['', ''];
  const chord = isChord(row) ? `-${neighbour(neighbour(main, 'above'), 'above')}` : '';
  const typed = VALUES.map((value) => `4 ${before}${open} ${value} ${main}${chord}${sign}${close} 4 ${after}`);
  const events = eventsOfVoice(performed({ lanes: [typed.join(' ')], table, tempo, key, meter: '' }));
  const at = (index: number): PerformedEvent[] => events.filter(({ from }) => from[0].placed.index === index);
  return typed.map((one, index) => {
    const [first, own, last] = [at(3 * index), at(3 * index + 1), at(3 * index + 2)];
    return { typed: `${one} at ${tempo}`, all: [...first, ...own, ...last], own };
  });
}

const end = ({ onset, duration }: PerformedEvent): Time => add(onset, duration);
const sum = (events: readonly PerformedEvent[]): Time => events.reduce((total, one) => add(total, one.duration), ZERO);

/** Neighbouring degrees three semitones apart. */
function augmented(events: readonly PerformedEvent[]): string[] {
  const pitches = events.flatMap(({ pitch }) => pitch ?? []);
  return pitches.slice(1).flatMap((pitch, index) => {
    const before = pitches[index];
    if (before === undefined || Math.abs(degreeOf(pitch) - degreeOf(before)) !== 1) return [];
    return Math.abs(pitch.midi - before.midi) > 2 ? [`${pitchText(before)} ${pitchText(pitch)}`] : [];
  });
}

const eachOf = (one: Case): Sounded[] =>
  TEMPI.flatMap((tempo) => PITCHES.flatMap((pitch) => sounded(one, tempo, pitch)));

/** Where the written note begins and ends. */
function spanOf(own: readonly PerformedEvent[]): readonly [Time, Time] {
  const written = own[0]?.from[0].placed;
  const onset = written?.onset ?? ZERO;
  return [onset, add(onset, written?.event.duration ?? ZERO)];
}

const title = ({ table, row, rival }: Case): string =>
  `${table}: ${row.label}${rival === undefined ? '' : `, ${rival}`}`;

describe.each(cases.filter(({ row }) => !isChord(row)).map((one) => [title(one), one] as const))('%s', (_, one) => {
  const { start, unresolved } = recipeOf(one.recipe).recipe;

  it('conserves time, inside its note, with the written note in it and no augmented second', () => {
    for (const { typed, all, own } of eachOf(one)) {
      const [from, to] = spanOf(own);
      const [first, last] = [own[0], own.at(-1)];
      expect([typed, gaps(all, all[0]?.onset ?? ZERO, sum(all))]).toEqual([typed, []]);
      expect([typed, last && format(end(last))]).toEqual([typed, format(to)]);
      // A first note that sounds already is not struck again, so that the sign may begin later.
      const order = compare(first?.onset ?? ZERO, from);
      expect([typed, start === 'before beat' ? order <= 0 : order >= 0]).toEqual([typed, true]);
      expect(own.some(({ pitch }) => pitch?.midi === first?.from[0].member?.midi)).toBe(true);
      expect([typed, augmented(own)]).toEqual([typed, []]);
    }
  });

  it('is played by its table on a slow breve, unless the table cannot say how', () => {
    const [slow] = sounded(one, '4 at 40', PITCHES[0] as (typeof PITCHES)[number]);
    const byTable = slow?.own.some(({ realised }) => realised?.table === one.table) ?? false;
    expect(byTable).toBe(unresolved === undefined);
  });
});

describe.each(cases.filter(({ row }) => isChord(row)).map((one) => [title(one), one] as const))('%s', (_, one) => {
  it('strikes every note of the chord inside its value and holds it, and strikes nothing beyond', () => {
    for (const { typed, own } of eachOf(one)) {
      const [from, to] = spanOf(own);
      const outside = own.filter((event) => compare(event.onset, from) < 0 || compare(end(event), to) > 0);
      expect([typed, outside]).toEqual([typed, []]);
      for (const member of own[0]?.from[0].placed.event.members ?? []) {
        const struck = own.filter(({ pitch }) => pitch?.midi === member.midi);
        expect(struck.map((note) => format(end(note)))).toEqual([format(to)]);
      }
    }
  });
});

describe('time', () => {
  it('is taken from the note before where the row says before the beat, and from no other', () => {
    const early = cases.find(({ recipe }) => recipe.startsWith('before beat, -1, 0 -1'));
    const [made] = early === undefined ? [] : sounded(early, '4 at 60', { key: 'none', main: 'd5' });
    const [before, small] = made?.all ?? [];
    expect(before && small && format(add(before.duration, small.duration))).toBe('1/4');
  });
});
