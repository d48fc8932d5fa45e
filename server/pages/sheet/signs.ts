/** Signs explained: how the readings play each, by which table and of which year, and what other tables would make of it. */
import { finished } from '../../../grammar/finished';
import type { Recipe } from '../../../grammar/tree';
import { shapeByName, shapeInWords } from '../../../grammar/vocabulary/shapes';
import { performingBoth } from '../../readings/perform';
import { barsOfPieces } from '../../score/barsInWords';
import type { Score } from '../../score/score';
import { contextWords } from '../../signs/contexts';
import { playedSigns } from '../../signs/decisions';
import { recipeInWords } from '../../signs/recipeWords';
import { keyOf, type PlayedRow, tableInForce } from '../../signs/rows';
import { recipeSaid } from '../../signs/said';
import { signTableByName, signTables } from '../../signs/tables';
import { certainties, citedBeside } from '../../signs/tables/table';
import { type Html, tag, text } from '../html';
import type { Figures } from './figures';
import { type InlinePicture, looksLike } from './inline';
import { nearTo, type SignPlace, signWish, type TaughtSign, whereOf } from './taught';
import { type PlayedAs, Sounding } from './texts';
import { capital } from './words';

/** What one table makes of a sign at its place. */
interface ByTable {
  readonly table: string;
  /** Undefined where the table says nothing of it there. */
  readonly row: PlayedRow | undefined;
  readonly recipe: Recipe | undefined;
  readonly notes: readonly string[];
  readonly place: SignPlace;
  /** The music around it. */
  readonly near: Score;
  readonly picture: InlinePicture;
}

/** Readings that play a sign by one row, and the first place where they do. */
interface ByRow {
  readonly place: SignPlace;
  readonly readings: readonly string[];
}

/** A sign by each row of the readings' tables that plays it, and then, at its first place, by all other tables that know it. */
export class SignExplained {
  private readonly place: SignPlace;

  constructor(
    private readonly sign: TaughtSign,
    private readonly figures: Figures,
    private readonly wish: PlayedAs,
  ) {
    this.place = sign.places[0];
  }

  section(): Html {
    const { id, typed, shapes } = this.sign;
    const own = this.byRows();
    const tables = [...new Set(own.map(({ place }) => place.sign.table))];
    const ways = own.flatMap(({ place, readings }) =>
      this.byTable(place.sign.table, place).map((way) => ({
        ...way,
        who: `${readings.join(', ')}${this.elsewhere(place)}: `,
      })),
    );
    const rivals = this.otherTables(tables).flatMap((table) => this.byTable(table, this.place));
    return tag(
      'section',
      { class: 'sign', 'aria-labelledby': id },
      tag('h3', { id }, text(`${typed}, ${whereOf(this.place)}`)),
      tag('p', {}, text(`Drawn: ${shapes.map(drawnAs).join('; ')}. ${this.count()}`)),
      ...ways.map((way) => this.figure(way, way.who)),
      ...this.others(rivals, ways),
    );
  }

  private count(): string {
    const { text: own } = this.place;
    const places = this.sign.places.filter((one) => one.text === own);
    const bars = places.map(({ piece, bar }) => ({ piece: own.score.pieces[piece]?.name ?? '', number: bar.number }));
    return `It stands in ${barsOfPieces(bars)}.`;
  }

  private byRows(): readonly ByRow[] {
    const found = new Map<string, ByRow & { readonly readings: string[] }>();
    for (const place of this.sign.places) {
      const { table, row } = place.sign;
      const key = [table, row?.label, ...(row?.when ?? [])].join('\n');
      const known = found.get(key) ?? { place, readings: [] };
      found.set(key, known);
      if (!known.readings.includes(place.text.name)) known.readings.push(place.text.name);
    }
    return [...found.values()];
  }

  /** Where that is, if it is not the first place of the sign. */
  private elsewhere(place: SignPlace): string {
    const isFirst = place.piece === this.place.piece && whereOf(place) === whereOf(this.place);
    return isFirst ? '' : `, ${whereOf(place)}`;
  }

  /** The tables of the file and those built in that have a row of these shapes, by year. */
  private otherTables(own: readonly string[]): readonly string[] {
    const { environment } = this.place.text.score;
    const names = [...environment.tables.map(({ name }) => name), ...signTables.map(({ table }) => table)];
    const shapes = keyOf(this.sign.shapes);
    return [...new Set(names)].filter(
      (name) => !own.includes(name) && tableInForce(name, environment)?.byShapes.has(shapes) === true,
    );
  }

  /** None where it cannot be drawn. */
  private byTable(name: string, place: SignPlace): readonly ByTable[] {
    const near = nearTo(place);
    const table = tableInForce(name, near.environment);
    const picture = this.figures.draw(near, { ...signWish(place), ornaments: 'above', table: name });
    if (table === undefined || picture === undefined) return [];
    const { plain, played } = finished(performingBoth(near, { table: name }));
    const { lane, pos } = place.sign.signs[0].mark.source;
    const found = playedSigns(plain, played, table, place.block).find(
      ({ signs: [{ mark }] }) => mark.source.lane === lane && mark.source.pos === pos,
    );
    const recipe = found?.row && recipeSaid(found.signs, found.row);
    return [{ table: name, row: found?.row, recipe, notes: found?.notes ?? [], place, near, picture }];
  }

  /** Tables that would do the same are told together. */
  private others(rivals: readonly ByTable[], ways: readonly ByTable[]): readonly Html[] {
    const groups: [ByTable, ...ByTable[]][] = [];
    for (const rival of rivals) {
      const same = groups.find(([first]) => looksLike(first.picture, rival.picture));
      if (same === undefined) groups.push([rival]);
      else same.push(rival);
    }
    if (groups.length === 0) return [tag('p', {}, 'No other table has this sign.')];
    return [
      tag('h4', {}, 'By other tables'),
      ...groups.map((group) => {
        const [first, ...others] = group;
        const own = ways.find(({ picture }) => looksLike(picture, first.picture));
        if (own !== undefined) return tag('p', {}, text(`Like ${own.table}: ${titles(group)}.`));
        return this.figure(first, '', others.length === 0 ? '' : ` So also ${titles(others)}.`);
      }),
    ];
  }

  private figure(way: ByTable, before: string, after = ''): Html {
    const { table, row, place, near, picture } = way;
    const caption = [
      tag('b', {}, text(`${before}${row === undefined ? 'no row for it here' : `“${row.label}”${conditionsOf(row)}`}`)),
      text(`, ${rowTitle(way)}. ${capital(played(way))}.${after}`),
      row?.citation === undefined ? '' : tag('cite', {}, text(` ${citedBeside(row.played, row.citation)}.`)),
    ].join('');
    const heard = new Sounding(near, { ...this.wish, table }, 'played').in(0, [place.bar, place.bar], place.voice);
    return this.figures.figure(picture, { caption, label: `${whereOf(place)}, by ${table}` }, heard);
  }
}

/** “, after a lower note”: where a row fits that does not fit everywhere. */
const conditionsOf = ({ when }: PlayedRow): string => when.map((one) => `, ${contextWords[one] ?? one}`).join('');

const drawnAs = (short: string): string => {
  const shape = shapeByName(short);
  return shape === undefined ? short : shapeInWords(shape);
};

const titles = (all: readonly ByTable[]): string => all.map(({ table }) => titleOf(table)).join('; ');

const titleOf = (table: string): string => signTableByName(table)?.title ?? `${table}, a table of the file’s own`;

/** Where the row stands, which a table may have taken over from another, and how sure it is. */
function rowTitle({ table, row }: ByTable): string {
  const title = titleOf(row?.table ?? table);
  const takenOver = row === undefined || row.table === table ? '' : ` (taken over by ${table})`;
  return `${title}${takenOver}${row?.played === undefined ? '' : `, ${certainties[row.played]}`}`;
}

const played = ({ notes, recipe }: ByTable): string =>
  notes.length === 0 || recipe === undefined ? 'it is played plain here' : recipeInWords(recipe);
