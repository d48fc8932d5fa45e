/** The signs of a sheet, each with all its places, and the music around a place. */
import { finished } from '../../../grammar/finished';
import { performingBoth } from '../../readings/perform';
import { barsNamed } from '../../score/barsInWords';
import { around } from '../../score/excerpt';
import type { Bar, Score } from '../../score/score';
import { type PlayedSign, playedSigns } from '../../signs/decisions';
import { keyOf, tableInForce } from '../../signs/rows';
import { type Html, tag, text } from '../html';
import type { PictureWish } from '../svg';
import type { BarsByPiece, SheetText } from './texts';

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
    const { plain, played } = finished(performingBoth(score, { table: table.name }));
    return playedSigns(plain, played, table).map((sign) => {
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
      return [
        `${tag('a', { href: `#${id}` }, text(name))} ${text(`(${barsNamed(here.map(({ bar }) => bar.number))})`)}`,
      ];
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

const typedAs = ({ sign }: SignPlace): string => sign.signs.map(({ name }) => `'${name}`).join('');

/** “bar 5, dessus”. */
export const whereOf = ({ text: { score }, bar, voice }: SignPlace): string =>
  `bar ${bar.number}, ${score.environment.voices[voice]?.name ?? ''}`;

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
