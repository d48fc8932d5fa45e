/** Line for line: the source's clefs, modern clefs, and what each reading plays, with its reasons. */
import { barsFromTo } from '../../score/barsInWords';
import type { Bar } from '../../score/score';
import { type Html, tag, text } from '../html';
import type { Figures, Heard } from './figures';
import { type InlinePicture, looksLike } from './inline';
import type { Reasons } from './reasons';
import type { BarsByPiece, SheetText } from './texts';
import { capital } from './words';

/** A line of the sheet is no wider than the paper, in millimetres. */
const WIDEST = 178;

/** What stands on every line. */
export interface Lined {
  readonly main: SheetText;
  readonly readings: readonly SheetText[];
  readonly reasons: ReadonlyMap<SheetText, Reasons>;
  readonly figures: Figures;
}

/** Some bars of a piece. */
interface Stretch {
  /** Index in the score. */
  readonly piece: number;
  /** Of its lines. */
  readonly heading: 'h3' | 'h4';
  readonly bars: Bars;
}

type Bars = readonly [Bar, ...Bar[]];

export const linesOf = (lined: Lined, bars: BarsByPiece): readonly Html[] =>
  [...bars].flatMap(([piece, wanted]) => {
    const name = lined.main.score.pieces[piece]?.name ?? '';
    const heading = name === '' ? 'h3' : 'h4';
    const lines = systemsIn(wanted).flatMap((system) => fitting(lined, { piece, heading, bars: system }));
    return [...(name === '' ? [] : [tag('h3', {}, text(name))]), ...lines];
  });

/** Bars that begin in one system of the source. */
function systemsIn(bars: readonly Bar[]): readonly Bars[] {
  const systems: [Bar, ...Bar[]][] = [];
  for (const bar of bars) {
    const last = systems.at(-1);
    if (last !== undefined && last[0].system === bar.system) last.push(bar);
    else systems.push([bar]);
  }
  return systems;
}

/** A system of the source as one line, or as two or more where it is too wide; one long bar, as of free music, is broken. */
function fitting(lined: Lined, stretch: Stretch): readonly Html[] {
  const line = new Line(lined, stretch);
  if (line.widest <= WIDEST) return [line.section()];
  const halves = halved(stretch.bars);
  if (halves === undefined) return [new Line(lined, stretch, WIDEST).section()];
  return halves.flatMap((bars) => fitting(lined, { ...stretch, bars }));
}

function halved(bars: Bars): readonly Bars[] | undefined {
  const middle = Math.ceil(bars.length / 2);
  const [first, ...before] = bars.slice(0, middle);
  const [next, ...after] = bars.slice(middle);
  return first === undefined || next === undefined
    ? undefined
    : [
        [first, ...before],
        [next, ...after],
      ];
}

type Form = 'in the source’s clefs' | 'as written, in modern clefs' | 'as played';

/** One picture, and how it sounds. */
interface Drawn {
  readonly form: Form;
  readonly picture: InlinePicture;
  readonly heard: Heard | undefined;
}

/** Readings that do the same on a line; what they have written or played otherwise than it stands before. */
interface ReadingsOnLine {
  readonly readings: readonly [SheetText, ...SheetText[]];
  readonly forms: readonly Drawn[];
}

class Line {
  private readonly source: readonly Drawn[];
  private readonly readings: readonly ReadingsOnLine[];

  /** @param width in millimetres, if it is to be broken there */
  constructor(
    private readonly lined: Lined,
    private readonly stretch: Stretch,
    private readonly width?: number,
  ) {
    const { main } = lined;
    const modern = this.draw(main, 'as written, in modern clefs');
    this.source = [this.draw(main, 'in the source’s clefs'), modern].filter(isThere);
    const all = lined.readings.map((reading): ReadingsOnLine => {
      const literal = this.draw(reading, 'as written, in modern clefs');
      const played = this.draw(reading, 'as played');
      const isMain = looksLike(literal?.picture, modern?.picture);
      const isLiteral = looksLike(played?.picture, literal?.picture);
      return {
        readings: [reading],
        forms: [isMain ? undefined : literal, isLiteral ? undefined : played].filter(isThere),
      };
    });
    this.readings = joined(all);
  }

  /** In millimetres. */
  get widest(): number {
    const all = [...this.source, ...this.readings.flatMap(({ forms }) => forms)];
    return Math.max(0, ...all.map(({ picture }) => picture.width));
  }

  private draw(sheetText: SheetText, form: Form): Drawn | undefined {
    const { piece, bars } = this.stretch;
    const score = form === 'as played' ? sheetText.performed : sheetText.score;
    const own = score.pieces[piece];
    const [first, last] = [own?.bars[bars[0].index], own?.bars[this.last.index]];
    if (own === undefined || first === undefined || last === undefined) return undefined;
    const picture = this.lined.figures.draw(
      { ...score, pieces: [own] },
      {
        clefs: form === 'in the source’s clefs' ? 'source' : 'modern',
        leaveGaps: true,
        bars: { from: first.number, to: last.number },
      },
      this.width,
    );
    if (picture === undefined) return undefined;
    // The source's own clefs sound no otherwise than those of today.
    const sounding = form === 'as played' ? sheetText.asPlayed : sheetText.literally;
    return { form, picture, heard: form === 'in the source’s clefs' ? undefined : sounding.in(piece, [first, last]) };
  }

  private get last(): Bar {
    return this.stretch.bars.at(-1) ?? this.stretch.bars[0];
  }

  // ─── as a part of the page ───────────────────────────────────────────────────────────────────────────────────────

  section(): Html {
    const { piece, heading, bars } = this.stretch;
    const id = `line-${piece + 1}-${bars[0].index + 1}`;
    return tag(
      'section',
      { class: 'line', 'aria-labelledby': id },
      tag(heading, { id }, text(capital(this.where))),
      tag('div', { class: 'together' }, ...this.source.map((drawn) => this.figure(drawn, ''))),
      ...this.readings.map((one) => this.readingsTogether(one)),
    );
  }

  private get where(): string {
    return barsFromTo(this.stretch.bars[0].number, this.last.number);
  }

  private figure({ form, picture, heard }: Drawn, who: string): Html {
    const caption = who === '' ? text(capital(form)) : `${tag('b', {}, text(who))}, ${text(form)}`;
    const label = [this.where, who, form].filter((part) => part !== '').join(', ');
    return this.lined.figures.figure(picture, { caption, label }, heard);
  }

  private readingsTogether({ readings, forms }: ReadingsOnLine): Html {
    const who = readings.map(({ name }) => name).join(', ');
    const figures = forms.map((drawn) => this.figure(drawn, who));
    const isPlayed = forms.some(({ form }) => form === 'as played');
    const plain = isPlayed ? [] : [tag('p', {}, tag('b', {}, text(who)), ': played as written.')];
    return [
      ...figures.slice(0, -1),
      tag('div', { class: 'together' }, ...figures.slice(-1), ...plain, this.why(readings)),
    ].join('');
  }

  private why(readings: readonly SheetText[]): Html {
    const { piece, bars } = this.stretch;
    const reasons = new Set(readings.flatMap((one) => this.lined.reasons.get(one)?.in(piece, bars) ?? []));
    return reasons.size === 0 ? '' : tag('ul', { class: 'reasons' }, ...[...reasons].map((one) => tag('li', {}, one)));
  }
}

const isThere = <One>(one: One | undefined): one is One => one !== undefined;

/** Readings that look and sound alike are drawn once. */
function joined(all: readonly ReadingsOnLine[]): readonly ReadingsOnLine[] {
  const found = new Map<string, ReadingsOnLine>();
  for (const one of all) {
    const key = JSON.stringify(one.forms.map(({ picture, heard }) => [picture.markup, heard]));
    const known = found.get(key);
    found.set(key, known === undefined ? one : { ...known, readings: [...known.readings, ...one.readings] });
  }
  return [...found.values()];
}
