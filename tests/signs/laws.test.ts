/**
 * Laws of all sign tables, each row and each of its other readings on every value from breve to semiquaver, slow and quick,
 * alone and among other voices, in tuplets, beside small notes, exact and in print: time is conserved in every voice, what is
 * played lies inside the note, the written note is there, no step is an augmented second, no stroke is quicker than a hand,
 * and in print every length can be written.
 */
import { describe, expect, it } from 'vitest';
import { add, compare, equal, format, type Time, toNumber, ZERO } from '../../grammar/time';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { shapeByName } from '../../grammar/vocabulary/shapes';
import type { Performance, PerformedEvent } from '../../server/score/performance';
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

/** Steps from the note to those before and after it, as the row's conditions ask. */
function around({ when = [] }: SignRow): readonly [number, number] {
  const before = when.includes('falling') || when.includes('slurred from above') ? 1 : -1;
  const third = when.some((condition) => condition.endsWith('third')) ? 2 : 1;
  return [before, when.includes('before higher') || when.includes('before rising third') ? third : -third];
}

const LETTERS = 'cdefgab';

/** A note so many steps away, as the signature has it. */
function stepsFrom(main: string, steps: number): string {
  const [letter = 'c', octave = 5] = [main.charAt(0), Number(main.slice(-1))];
  const degree = octave * 7 + LETTERS.indexOf(letter) + steps;
  return `${LETTERS.charAt(degree % 7)}${Math.floor(degree / 7)}`;
}

/** Where a row is played: alone, among other voices, in a tuplet, beside small notes, in print. */
interface Setting {
  readonly name: string;
  readonly form: 'play' | 'print';
  readonly values: readonly string[];
  /** The sign's note of a value with what stands around it, and how many events come before it. */
  readonly around: (note: string, value: string, before: string, after: string) => readonly [typed: string, at: number];
  /** Other voices to the same rhythm: on the keys that the sign needs, and below. */
  readonly others: readonly ((value: string, above: string) => string)[];
}

const plainly: Setting['around'] = (note, value, before, after) => [`4 ${before} ${value} ${note} 4 ${after}`, 1];
const inThree: Setting['around'] = (note, value, before, after) => [
  `4 ${before} {3in2 ${value} ${note} ${after} ${before}} 4 ${after}`,
  1,
];
const besideSmall: Setting['around'] = (note, value, before, after) => [
  `4 ${before} {small 8 ${after}} ${value} ${note} {small 16 ${before} ${after}} 4 ${after}`,
  2,
];
const SIMPLE = VALUES.filter((value) => !value.endsWith('.'));
const alone: Setting = { name: 'alone', form: 'play', values: VALUES, around: plainly, others: [] };
const SETTINGS: readonly Setting[] = [
  alone,
  { ...alone, name: 'in print', form: 'print' },
  {
    ...alone,
    name: 'over a second voice on the key above',
    others: [(value, above) => `4 ${above} ${value} ${above} 4 ${above}`],
  },
  {
    ...alone,
    name: 'over two voices, one on its own key',
    others: [(value) => `4 g4 ${value} d5 4 g4`, (value) => `4 g3 ${value} a3 4 g3`],
  },
  { ...alone, name: 'in three to the time of two', values: SIMPLE, around: inThree },
  { ...alone, name: 'in three to the time of two, in print', values: SIMPLE, around: inThree, form: 'print' },
  { ...alone, name: 'beside small notes', around: besideSmall },
  { ...alone, name: 'beside small notes, in print', around: besideSmall, form: 'print' },
];

/** One note that bears a sign, with what stands around it. */
interface Sounded {
  /** What was typed, for the reader of a failure. */
  readonly typed: string;
  /** All of its voice, from the note before to the note after. */
  readonly all: readonly PerformedEvent[];
  readonly own: readonly PerformedEvent[];
}

interface Played {
  readonly sounded: readonly Sounded[];
  readonly performance: Performance;
  readonly voices: number;
}

/** A row's sign on notes of all values, each between two crotchets. */
function playedIn(
  setting: Setting,
  { table, row, rival }: Case,
  tempo: string,
  { key, main }: (typeof PITCHES)[number],
): Played {
  const [before, after] = around(row).map((steps) => stepsFrom(main, steps));
  const said = rival === undefined ? `(${row.names[0]})` : `(${row.names[0]} ${rival})`;
  const sign = row.shapes.map((shape, index) => `'${shape}${index === 0 ? said : ''}`).join('');
  const [open, close] = row.when?.includes('slurred from above') === true ? ["'u", "'."] : ['', ''];
  const above = stepsFrom(main, 1);
  const chord = isChord(row) ? `-${stepsFrom(main, 2)}` : '';
  const groups = setting.values.map((value) =>
    setting.around(`${main}${chord}${sign}${close}`, value, `${before}${open}`, `${after}`),
  );
  const lanes = [
    groups.map(([typed]) => typed).join(' '),
    ...setting.others.map((other) => setting.values.map((value) => other(value, above)).join(' ')),
  ];
  const performance = performed({ lanes, table, tempo, key, meter: '', form: setting.form });
  const events = eventsOfVoice(performance);
  const length = (typed: string): number => (typed.match(/[a-g][#bn]*\d/g) ?? []).length - (chord === '' ? 0 : 1);
  let first = 0;
  const sounded = groups.map(([typed, at]) => {
    const [from, to] = [first, first + length(typed)];
    first = to;
    const index = ({ from: [{ placed }] }: PerformedEvent): number => placed.index;
    const all = events.filter((event) => index(event) >= from && index(event) < to);
    return { typed: `${typed} at ${tempo}`, all, own: all.filter((event) => index(event) === from + at) };
  });
  return { sounded, performance, voices: lanes.length };
}

const end = ({ onset, duration }: PerformedEvent): Time => add(onset, duration);

/** Neighbouring degrees three semitones apart. */
function augmented(events: readonly PerformedEvent[]): string[] {
  const pitches = events.flatMap(({ pitch }) => pitch ?? []);
  return pitches.slice(1).flatMap((pitch, index) => {
    const before = pitches[index];
    if (before === undefined || Math.abs(degreeOf(pitch) - degreeOf(before)) !== 1) return [];
    return Math.abs(pitch.midi - before.midi) > 2 ? [`${pitchText(before)} ${pitchText(pitch)}`] : [];
  });
}

/** Signatures and tempi for a setting: all of them for a sign alone. */
function eachOf(setting: Setting, one: Case): Played[] {
  const pitches = setting === alone ? PITCHES : PITCHES.slice(0, 1);
  return TEMPI.flatMap((tempo) => pitches.map((pitch) => playedIn(setting, one, tempo, pitch)));
}

/** Where the written note begins and ends. */
function spanOf(own: readonly PerformedEvent[]): readonly [Time, Time] {
  const written = own[0]?.from[0].placed;
  const onset = written?.onset ?? ZERO;
  return [onset, add(onset, written?.event.duration ?? ZERO)];
}

const title = ({ table, row, rival }: Case): string =>
  `${table}: ${row.label}${rival === undefined ? '' : `, ${rival}`}`;

/** Seconds of a note, the tempo of each case being that of its text. */
const secondsOf = ({ duration }: PerformedEvent, tempo: string): number => {
  const [value = 4, perMinute = 60] = tempo.split(' at ').map(Number);
  return (toNumber(duration) * value * 60) / perMinute;
};

/** Where the voices have neither note nor silence, or two at once. */
const lost = ({ performance, voices }: Played): string[] =>
  Array.from({ length: voices }, (_, voice) => eventsOfVoice(performance, voice)).flatMap((events) =>
    gaps(events, ZERO, performance.pieces[0]?.piece.duration ?? ZERO),
  );

/** Strokes of signs that no hand plays. */
const tooQuick = ({ typed, own }: Sounded): string[] => {
  const tempo = typed.replace(/.* (\d+ at \d+)$/, '$1');
  return own
    .filter(({ pitch, realised }) => pitch !== undefined && realised !== undefined && realised.sign !== 'small')
    .filter(({ duration, from }) => own.length > 1 && !equal(duration, from[0].placed.event.duration))
    .filter((note) => secondsOf(note, tempo) < 0.06 - 1e-9)
    .map((note) => `${typed}: ${secondsOf(note, tempo)}`);
};

/** Lengths that cannot be written: no multiple of a 128th, or of a 256th beside small notes, or of two thirds of one in a tuplet. */
const unwritten = ({ typed, own }: Sounded): string[] =>
  own.flatMap(({ duration }) =>
    (typed.includes('{small') ? 768 : 384) % Number(duration.d) === 0 ? [] : [`${typed}: ${format(duration)}`],
  );

describe.each(cases.filter(({ row }) => !isChord(row)).map((one) => [title(one), one] as const))('%s', (_, one) => {
  const { start, unresolved } = recipeOf(one.recipe).recipe;

  it.each(SETTINGS.map((setting) => [setting.name, setting] as const))(
    '%s: conserves time, inside its note, with the written note in it',
    (_name, setting) => {
      for (const played of eachOf(setting, one)) {
        expect([played.sounded[0]?.typed, lost(played)]).toEqual([played.sounded[0]?.typed, []]);
        for (const sounded of played.sounded) {
          const { typed, own } = sounded;
          const [from, to] = spanOf(own);
          const first = own[0];
          // A first note that sounds already is not struck again, so that the sign may begin later.
          const order = compare(first?.onset ?? ZERO, from);
          expect([typed, start === 'before beat' || order >= 0]).toEqual([typed, true]);
          expect([typed, own.filter((event) => compare(end(event), to) > 0)]).toEqual([typed, []]);
          expect([typed, own.some(({ pitch }) => pitch?.midi === first?.from[0].member?.midi)]).toEqual([typed, true]);
          if (setting.form === 'print') expect(unwritten(sounded)).toEqual([]);
          else expect(tooQuick(sounded)).toEqual([]);
        }
      }
    },
  );

  it('has no augmented second in one sign', () => {
    for (const { sounded } of eachOf(alone, one))
      for (const { typed, own } of sounded) expect([typed, augmented(own)]).toEqual([typed, []]);
  });

  it('is played by its table on a slow breve, unless the table cannot say how', () => {
    const { sounded } = playedIn(alone, one, '4 at 40', PITCHES[0] as (typeof PITCHES)[number]);
    const byTable = sounded[0]?.own.some(({ realised }) => realised?.table === one.table) ?? false;
    expect(byTable).toBe(unresolved === undefined);
  });
});

describe.each(cases.filter(({ row }) => isChord(row)).map((one) => [title(one), one] as const))('%s', (_, one) => {
  it.each(SETTINGS.filter(({ around: how }) => how === plainly).map((setting) => [setting.name, setting] as const))(
    '%s: strikes every note of the chord inside its value and holds it, and strikes nothing beyond',
    (_name, setting) => {
      for (const { sounded } of eachOf({ ...setting, others: [] }, one)) {
        for (const { typed, own } of sounded) {
          const [from, to] = spanOf(own);
          const outside = own.filter((event) => compare(event.onset, from) < 0 || compare(end(event), to) > 0);
          expect([typed, outside]).toEqual([typed, []]);
          for (const member of own[0]?.from[0].placed.event.members ?? []) {
            const struck = own.filter(({ pitch }) => pitch?.midi === member.midi);
            expect(struck.map((note) => format(end(note)))).toEqual([format(to)]);
          }
        }
      }
    },
  );
});

describe('time', () => {
  it('is taken from the note before where the row says before the beat, and from no other', () => {
    const early = cases.find(({ recipe }) => recipe.startsWith('before beat, -1, 0 -1'));
    const made = early && playedIn(alone, early, '4 at 60', { key: 'none', main: 'd5' }).sounded[0];
    const [before, small] = made?.all ?? [];
    expect(before && small && format(add(before.duration, small.duration))).toBe('1/4');
  });
});
