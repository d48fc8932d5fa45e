/** Signs explained: how the readings play each, by which table and of which year, and what other tables would make of it. */
import type { Recipe } from '../../../grammar/tree';
import { shapeByName } from '../../../grammar/vocabulary/shapes';
import { perform } from '../../readings/perform';
import { around } from '../../score/excerpt';
import type { Bar, Score } from '../../score/score';
import { type PlayedSign, playedSigns } from '../../signs/decisions';
import { recipeInWords } from '../../signs/recipeWords';
import { keyOf, type PlayedRow, tableInForce } from '../../signs/rows';
import { recipeSaid } from '../../signs/said';
import { signTableByName, signTables } from '../../signs/tables';
import { certainties } from '../../signs/tables/table';
import { type Html, tag, text } from '../html';
import type { PictureWish } from '../svg';
import type { Figures } from './figures';
import { type InlinePicture, looksLike } from './inline';
import { inBars } from './reasons';
import { type BarsByPiece, type PlayedAs, type SheetText, Sounding } from './texts';

/** A sign at a note of a reading. */
export interface SignPlace {
  readonly text: SheetText;
  /** Index in the score. */
  readonly piece: number;
  readonly bar: Bar;
  /** Index of the block of its system. */
  readonly block: number;
  /** Index in `Environment.voices`. */
  readonly voice: number;
  readonly sign: PlayedSign;
}

/** A sign of the sheet with all its places, those of one reading after those of another. */
export interface TaughtSign {
  /** Short names of its shapes. */
  readonly shapes: readonly string[];
  /** As it is first typed: `'zz`. */
  readonly typed: string;
  readonly id: string;
  readonly places: readonly [SignPlace, ...SignPlace[]];
}

export class TaughtSigns {
  readonly all: readonly TaughtSign[];

  /** @param bars those that are wanted, by piece */
  constructor(texts: readonly SheetText[], bars: BarsByPiece) {
    const wanted = new Set([...bars].flatMap(([piece, own]) => own.map(({ index }) => `${piece} ${index}`)));
    const found = new Map<string, { readonly typed: string; readonly places: [SignPlace, ...SignPlace[]] }>();
    for (const place of texts.flatMap((one) => this.placesIn(one))) {
      if (!wanted.has(`${place.piece} ${place.bar.index}`)) continue;
      const key = keyOf(shapesOf(place));
      const known = found.get(key);
      if (known === undefined) found.set(key, { typed: typedAs(place), places: [place] });
      else known.places.push(place);
    }
    this.all = [...found.values()].map(({ typed, places }, index) => ({
      shapes: shapesOf(places[0]),
      typed,
      id: `sign-${index + 1}`,
      places,
    }));
  }

  private placesIn(sheetText: SheetText): readonly SignPlace[] {
    const { score } = sheetText;
    const table = tableInForce(sheetText.table ?? '', score.environment);
    if (table === undefined) return [];
    const [written, played] = [perform(score, { ornaments: 'sign' }), perform(score, { table: table.name })];
    return playedSigns(written, played, table).map((sign) => {
      const { system, event, bar } = sign.signs[0].written.placed;
      const piece = score.pieces.findIndex(({ systems }) => systems.includes(system));
      return { text: sheetText, piece, bar, block: system.block, voice: event.voice, sign };
    });
  }

  /** The signs that a reading plays in some bars, each with the way to where it is explained. */
  reasonsIn(of: SheetText, piece: number, bars: readonly Bar[]): readonly Html[] {
    const indices = new Set(bars.map(({ index }) => index));
    const told = this.all.flatMap(({ id, places }) => {
      const here = places.filter((one) => one.text === of && one.piece === piece && indices.has(one.bar.index));
      const [first] = here;
      if (first === undefined) return [];
      const name = first.sign.row?.label ?? `${typedAs(first)} plain`;
      return [`${tag('a', { href: `#${id}` }, text(name))} ${text(`(${inBars(here.map(({ bar }) => bar.number))})`)}`];
    });
    const [table] = new Set(
      this.all
        .flatMap(({ places }) => places)
        .filter((one) => one.text === of)
        .map(({ sign }) => sign.table),
    );
    return told.length === 0 ? [] : [`${tag('b', {}, text(`Signs after ${table}`))}: ${told.join(', ')}`];
  }
}

const shapesOf = ({ sign }: SignPlace): readonly string[] => sign.signs.flatMap(({ shapes }) => shapes);

export const typedAs = ({ sign }: SignPlace): string => sign.signs.map(({ name }) => `'${name}`).join('');

// ─── an explanation ──────────────────────────────────────────────────────────────────────────────────────────────

/** The picture of a bar by one table. */
interface ByTable {
  readonly table: string;
  readonly row: PlayedRow | undefined;
  readonly recipe: Recipe | undefined;
  readonly notes: readonly string[];
  readonly near: Score;
  readonly picture: InlinePicture | undefined;
}

/** A sign at its first place, by the tables of the readings and then by all others that know it. */
export function explained(sign: TaughtSign, figures: Figures, wish: PlayedAs): Html {
  const [place] = sign.places;
  const readings = readingsByTable(sign);
  const [own, others] = [[...readings.keys()], otherTables(sign, place.text.score, readings)];
  const ways = own.map((table) =>
    byTable(sign.places.find((one) => one.sign.table === table) ?? place, table, figures),
  );
  const rivals = others.map((table) => byTable(place, table, figures));
  const where = `bar ${place.bar.number}, ${voiceName(place)}`;
  return tag(
    'section',
    { class: 'sign', 'aria-labelledby': sign.id },
    tag('h3', { id: sign.id }, text(`${sign.typed}, ${where}`)),
    tag('p', {}, text(`Drawn: ${sign.shapes.map(shapeInWords).join('; ')}. ${countOf(sign)}`)),
    ...ways.map((way) => tableFigure(way, place, figures, wish, `${(readings.get(way.table) ?? []).join(', ')}: `)),
    ...otherWays(rivals, ways, place, figures, wish),
  );
}

export const voiceName = ({ text: { score }, voice }: SignPlace): string => score.environment.voices[voice]?.name ?? '';

function shapeInWords(short: string): string {
  const shape = shapeByName(short);
  return shape === undefined ? short : `${shape.description}, ${shape.place} the note`;
}

function countOf({ places: [first, ...others] }: TaughtSign): string {
  const numbers = [first, ...others].filter((one) => one.text === first.text).map(({ bar }) => bar.number);
  return `It stands in ${inBars(numbers)}.`;
}

function readingsByTable({ places }: TaughtSign): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const {
    sign,
    text: { name },
  } of places) {
    const known = found.get(sign.table) ?? [];
    found.set(sign.table, known.includes(name) ? known : [...known, name]);
  }
  return found;
}

/** The tables of the file and those built in that have a row of these shapes, by year. */
function otherTables(
  { shapes }: TaughtSign,
  { environment }: Score,
  own: ReadonlyMap<string, unknown>,
): readonly string[] {
  const names = [...environment.tables.map(({ name }) => name), ...signTables.map(({ table }) => table)];
  const knows = (name: string): boolean => tableInForce(name, environment)?.byShapes.has(keyOf(shapes)) === true;
  return [...new Set(names)].filter((name) => !own.has(name) && knows(name));
}

function byTable(place: SignPlace, name: string, figures: Figures): ByTable {
  const near = nearTo(place);
  const table = tableInForce(name, near.environment);
  const signs =
    table && playedSigns(perform(near, { ornaments: 'sign' }), perform(near, { table: name }), table, place.block);
  const [{ mark }] = place.sign.signs;
  const found = signs?.find(
    ({ signs: [first] }) => first.mark.source.pos === mark.source.pos && first.mark.source.lane === mark.source.lane,
  );
  const row = found?.row;
  return {
    table: name,
    row,
    recipe: row && found && recipeSaid(found.signs, row),
    notes: found?.notes ?? [],
    near,
    picture: figures.draw(near, { ...signWish(place), ornaments: 'above', table: name }),
  };
}

/** The music around a place, as its piece alone. */
export function nearTo({ text: { score }, piece, block }: SignPlace): Score {
  const own = score.pieces[piece];
  return own === undefined ? score : around({ ...score, pieces: [own] }, block);
}

export const signWish = ({ bar: { number }, voice }: SignPlace): PictureWish => ({
  clefs: 'modern',
  leaveGaps: true,
  bars: { from: number, to: number },
  voice,
});

/** Tables that would do the same are told together. */
function otherWays(
  rivals: readonly ByTable[],
  ways: readonly ByTable[],
  place: SignPlace,
  figures: Figures,
  wish: PlayedAs,
): readonly Html[] {
  const groups: ByTable[][] = [];
  for (const rival of rivals) {
    const same = groups.find(([first]) => looksLike(first?.picture, rival.picture));
    if (same === undefined) groups.push([rival]);
    else same.push(rival);
  }
  if (groups.length === 0) return [tag('p', {}, 'No other table has this sign.')];
  return [
    tag('h4', {}, 'By other tables'),
    ...groups.flatMap(([first, ...others]) => {
      if (first === undefined) return [];
      const own = ways.find(({ picture }) => looksLike(picture, first.picture));
      if (own !== undefined)
        return [tag('p', {}, text(`Like ${own.table}: ${[first, ...others].map(titleOf).join('; ')}.`))];
      const also = others.length === 0 ? '' : ` So also ${others.map(titleOf).join('; ')}.`;
      return [tableFigure(first, place, figures, wish, '', also)];
    }),
  ];
}

const titleOf = ({ table }: ByTable): string => signTableByName(table)?.title ?? table;

function tableFigure(
  { table, row, recipe, notes, near, picture }: ByTable,
  place: SignPlace,
  figures: Figures,
  wish: PlayedAs,
  before: string,
  after = '',
): Html {
  if (picture === undefined) return '';
  const builtIn = signTableByName(table);
  const label = `bar ${place.bar.number}, ${voiceName(place)}, by ${table}`;
  const name = row === undefined ? 'no row for it here' : `“${row.label}”`;
  const sure = row?.played === undefined ? '' : `, ${certainties[row.played]}`;
  const how = notes.length === 0 || recipe === undefined ? 'it is played plain here' : recipeInWords(recipe);
  const caption = [
    tag('b', {}, text(`${before}${name}`)),
    text(`, ${builtIn?.title ?? `${table}, a table of the file’s own`}${sure}: ${how}.${after}`),
    row?.citation === undefined ? '' : tag('cite', {}, text(` ${row.citation}.`)),
  ].join('');
  const heard = new Sounding(near, { ...wish, table }, 'played').in(0, [place.bar, place.bar], place.voice);
  return figures.figure(picture, { caption, label }, heard);
}
