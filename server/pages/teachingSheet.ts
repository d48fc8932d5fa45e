/**
 * The teaching sheet: a score, or some of its bars, to read, hear, write and print. The source's clefs and those of today, what
 * each reading plays and why, its signs with what other tables would do, staves to write on, the tuning, the report's notes.
 */
import { putUnder } from '../../grammar/lists';
import type { Engraver } from '../engraving/engraver';
import type { Edition, Exported, ExportOptions } from '../export/formats';
import { Losses, NOWHERE } from '../export/losses';
import { type Measure, measuresFor } from '../export/measures';
import { unmended } from '../readings/report';
import { keyTo } from '../readings/report/key';
import { notesSection } from '../readings/report/notes';
import { COUNTING } from '../readings/report/rules';
import { barsFromTo } from '../score/barsInWords';
import type { Bar, Score } from '../score/score';
import { type Html, scriptedPage, tag, text } from './html';
import { reportTable } from './report';
import { exercise } from './sheet/exercises';
import { Figures } from './sheet/figures';
import { linesOf } from './sheet/lines';
import { PLAYER, PLAYER_DIGEST } from './sheet/playerScript';
import { groundsOf, type Reasons, reasonsFor } from './sheet/reasons';
import { SignExplained } from './sheet/signs';
import { PACES } from './sheet/sounds';
import { SHEET_STYLE } from './sheet/style';
import { TaughtSigns } from './sheet/taught';
import { type BarsByPiece, type SheetText, sheetText } from './sheet/texts';
import { tuningMargin, tuningSections, tuningsOf } from './sheet/tunings';
import { fileName } from './sheet/words';

/** One file that fetches nothing; empty where the score is refused or cannot be drawn, which a problem says. */
export function exportTeachingSheet(edition: Edition, options: ExportOptions, engraver: Engraver): Exported {
  const losses = new Losses(edition.main.pieces);
  const measures = measuresFor(edition.main, options, losses);
  if (measures?.length === 0) losses.add('export-no-music', {}, NOWHERE);
  if (measures === undefined || measures.length === 0) return { content: '', problems: losses.problems() };
  const figures = new Figures(engraver);
  figures.tell(losses.problems());
  const content = new TeachingSheet(edition, options, measures, figures).page();
  return { content: figures.isDrawn ? content : '', problems: figures.problems };
}

interface SheetSection {
  readonly id: string;
  readonly heading: string;
  readonly content: readonly Html[];
}

class TeachingSheet {
  private readonly main: SheetText;
  private readonly readings: readonly SheetText[];
  private readonly bars: BarsByPiece;
  private readonly signs: TaughtSigns;

  constructor(
    private readonly edition: Edition,
    private readonly options: ExportOptions,
    measures: readonly Measure[],
    private readonly figures: Figures,
  ) {
    const { bars } = options;
    const textOf = (score: Score): SheetText => sheetText(score, options, bars === undefined ? {} : { bars });
    this.main = textOf(edition.main);
    this.readings = edition.readings.map((score) => (score === edition.main ? this.main : textOf(score)));
    for (const { problems } of this.readings) figures.tell(problems);
    this.bars = barsByPiece(edition.main, measures);
    this.signs = new TaughtSigns(this.readings, this.bars);
  }

  page(): string {
    const { environment, file } = this.edition.main;
    const title = environment.title ?? fileName(file);
    const sections = this.sections().filter(({ content }) => content.some((one) => one !== ''));
    return scriptedPage(
      `Teaching sheet: ${title}`,
      SHEET_STYLE,
      { script: PLAYER, digest: PLAYER_DIGEST },
      this.figures.definitions(),
      tag('h1', {}, text(title)),
      tag(
        'p',
        { class: 'under' },
        text(`Teaching sheet from ${fileName(file)}: ${this.readingsInWords()}${this.barsWished()}`),
      ),
      controls(sections),
      ...sections.map(sectionOf),
      tag('script', { type: 'application/json', id: 'sounds' }, inScript(this.figures.sounds)),
    );
  }

  private readingsInWords(): string {
    const names = this.readings.map(({ name }) => name);
    return `${names.length === 1 ? 'reading' : 'readings'} ${names.join(', ')}`;
  }

  private barsWished(): string {
    const { bars } = this.options;
    return bars === undefined ? '' : `, ${barsFromTo(bars.from, bars.to)}`;
  }

  private sections(): readonly SheetSection[] {
    const { main, readings, figures, signs, bars, options } = this;
    const tunings = tuningsOf(readings);
    const sources = this.edition.sources.map(unmended);
    const reasons = new Map(readings.map((one) => [one, reasonsFor(one, main.score, sources, signs)]));
    return [
      {
        id: 'readings',
        heading: 'Readings, and why',
        content: [tuningMargin(tunings), ...readings.map(readingArticle)],
      },
      { id: 'key', heading: 'Key', content: this.key([...reasons.values()]) },
      { id: 'lines', heading: 'Line for line', content: linesOf({ main, readings, reasons, figures }, bars) },
      {
        id: 'signs',
        heading: 'Signs',
        content: signs.all.map((sign) => new SignExplained(sign, figures, options).section()),
      },
      { id: 'exercises', heading: 'Write your own', content: signs.all.map((sign) => exercise(sign, figures)) },
      { id: 'tuning', heading: 'Tuning', content: tuningSections(tunings) },
      { id: 'notes', heading: 'Notes of the critical report', content: this.notes() },
    ];
  }

  /** How places are named and symbols printed, where the sheet does either. */
  private key(reasons: readonly Reasons[]): readonly Html[] {
    const printed = reasons.flatMap((one) => [...this.bars].flatMap(([piece, bars]) => one.symbolsIn(piece, bars)));
    if (printed.length === 0 && this.notes().length === 0) return [];
    return [COUNTING, ...keyTo(printed)].map((sentence) => tag('p', {}, text(sentence)));
  }

  private notes(): readonly Html[] {
    const { main, sources } = this.edition;
    const wanted = new Set(
      [...this.bars].flatMap(([piece, bars]) => bars.map(({ number }) => `${main.pieces[piece]?.name} ${number}`)),
    );
    return notesSection([main, ...sources], (piece, bar) => wanted.has(`${piece} ${bar}`)).tables.map(reportTable);
  }
}

function barsByPiece({ pieces }: Score, measures: readonly Measure[]): BarsByPiece {
  const bars = new Map<number, Bar[]>();
  for (const { piece, bar } of measures) {
    const index = pieces.indexOf(piece);
    putUnder(bars, index, bar);
  }
  return bars;
}

const readingArticle = (reading: SheetText): Html => {
  const { environment, choice } = reading.score;
  const described = environment.readings.find(({ name }) => name === choice.name)?.description ?? '';
  return tag(
    'article',
    { class: 'reading' },
    tag('h3', {}, text(reading.name)),
    described === '' ? '' : tag('p', {}, text(described)),
    tag('ul', {}, ...groundsOf(reading).map((one) => tag('li', {}, one))),
  );
};

const sectionOf = ({ id, heading, content }: SheetSection): Html =>
  tag('section', { 'aria-labelledby': id, class: id }, tag('h2', { id }, text(heading)), ...content);

/** What is for the screen alone: the way to each section, how fast is played, what sounds. */
const controls = (sections: readonly SheetSection[]): Html =>
  tag(
    'div',
    { class: 'controls' },
    tag(
      'nav',
      { 'aria-label': 'Sections' },
      ...sections.map(({ id, heading }) => tag('a', { href: `#${id}` }, text(heading))),
    ),
    tag(
      'p',
      {},
      tag('label', { for: 'pace' }, 'Play '),
      tag('select', { id: 'pace' }, ...PACES.map(({ says }, index) => tag('option', { value: index }, says))),
      ' Escape stops. ',
      tag('span', { id: 'heard', role: 'status' }),
    ),
  );

/** Data within an element cannot end it. */
const inScript = (data: unknown): Html => JSON.stringify(data).replaceAll('<', '\\u003c');
