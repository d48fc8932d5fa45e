/** Why a reading plays as it does: in all, and in the bars of a line. */
import { heard } from '../../practice/alter';
import { practiceInWords, practiceNames } from '../../practice/inWords';
import type { Assimilate, How, PracticeWord } from '../../practice/practice';
import { practicesOfReading, statedTempo } from '../../readings/choices';
import { chosenBy } from '../../readings/compare';
import { type Difference, differencesOf, type Side } from '../../readings/compare/differences';
import { comparedText } from '../../readings/compare/symbols';
import { perform } from '../../readings/perform';
import { reasonsOf, sideText, sourcesAlone } from '../../readings/report/entries';
import { type PrintedSymbol, symbolsOf } from '../../readings/report/key';
import { placeName } from '../../readings/report/places';
import { barsNamed } from '../../score/barsInWords';
import { tempoInWords } from '../../score/clock';
import { declaredNames } from '../../score/environment';
import type { Performance } from '../../score/performance';
import type { Bar, Score } from '../../score/score';
import { signTableByName } from '../../signs/tables';
import { type Html, tag, text } from '../html';
import type { TaughtSigns } from './taught';
import type { SheetText } from './texts';

/** What is said of: a practice, or one of its forms where they are opposites. */
type Form =
  | Exclude<PracticeWord, 'assimilate' | 'inegal'>
  | 'inegal long-short'
  | 'inegal short-long'
  | `assimilate ${Assimilate['to']}`;

/** What a practice does, where its name does not say it. */
const SAYS: Readonly<Partial<Record<Form, string>>> = {
  overdot: 'dots are held longer than they are written, and what follows comes later and quicker',
  'inegal long-short': 'pairs of notes written alike are played long and short, while the beat stays even',
  'inegal short-long': 'pairs of notes written alike are played short and long, while the beat stays even',
  snap: 'where the dot is on the second note of a pair, the first is made shorter',
  upbeats: 'quick notes after a dot or a rest come at the end of their time, as fast as they can',
  hemiola: 'two bars of three are played as three of two where the source shows it',
};

const INEQUAL = 'mechanical instruments with pinned barrels play 3:2, 2:1 and 3:1';

/** Who speaks for it, or against. */
const CITED: Readonly<Record<Form, string>> = {
  overdot:
    'Quantz 1752, XVII.vii.58, confirmed by a text: in cut time quavers after dotted crotchets are very short and sharp; that this was a general style is disputed (Neumann 1977)',
  'inegal long-short': INEQUAL,
  'inegal short-long': '',
  'assimilate triplet': 'common practice of dotted figures; Quantz 1752, V.22, is against it (from memory)',
  'assimilate duple': '',
  'assimilate literal': 'Türk 1789, I.64, seems to take exact division as the norm',
  snap: 'Quantz 1752, V.23, from memory',
  upbeats: 'Quantz 1752, XVII.vii.58, confirmed by a text, of three or more demisemiquavers in slow pieces',
  hemiola: 'from memory',
  literal: '',
};

/** Which values are unequal where the meter says it. */
const BY_METER = 'Hotteterre 1719, chapter XI, known from a summary, says which values under which sign';

function formOf(how: How): Form {
  if (how.word === 'assimilate') return `assimilate ${how.to}`;
  if (how.word === 'inegal') return how.longFirst ? 'inegal long-short' : 'inegal short-long';
  return how.word;
}

const citedFor = (how: How): string => {
  const byMeter = how.word === 'inegal' && how.value === undefined ? BY_METER : '';
  return [byMeter, CITED[formOf(how)]].filter((said) => said !== '').join('; ');
};

// ─── in all ──────────────────────────────────────────────────────────────────────────────────────────────────────

/** What a reading chooses besides its tuning, with its grounds. */
export function groundsOf({ score, table }: SheetText): readonly Html[] {
  const { environment, choice } = score;
  const chosen = chosenBy(score);
  const practices = heard(practicesOfReading(environment, choice.name));
  const tempo = statedTempo(environment, choice.name);
  const rhythm = practices.map((practice, index) => {
    // Each witness is called once.
    const cited = citedFor(practice.how);
    const isFirst = practices.findIndex((one) => citedFor(one.how) === cited) === index;
    return ground(`Rhythm, ${practiceInWords(practice)}`, SAYS[formOf(practice.how)] ?? '', isFirst ? cited : '');
  });
  return [
    ...chosen.takes.map((name) => taken(score, name)),
    signsGround(table),
    ...rhythm,
    ...(practices.length === 0 ? [ground('Rhythm', 'as it is written')] : []),
    ...(tempo === undefined ? [] : [ground('Tempo', tempoInWords(tempo))]),
    ...chosen.orders.filter((order) => order !== '').map((order) => ground('Order', order)),
  ];
}

const ground = (what: string, says: string, cited = ''): Html =>
  [
    tag('b', {}, text(what)),
    text(says === '' ? '' : `: ${says}`),
    cited === '' ? '' : tag('cite', {}, text(` (${cited})`)),
  ].join('');

/** What is taken where the editor mends a slip. */
const MENDED: Readonly<Record<string, string>> = {
  sic: 'evident slips as the sources have them',
  corr: 'evident slips as the editor mends them',
};

/** A source, a hand in one, a reading on which this one is built, or one side of what the editor mends. */
function taken({ environment }: Score, name: string): Html {
  const built = environment.readings.find((reading) => reading.name === name);
  if (built !== undefined) return ground(`Built on ${name}`, built.description);
  const source = environment.sources.find((one) => name === one.name || name.startsWith(`${one.name}.`));
  const hand = source?.hands.find(({ layer }) => name === `${source.name}.${layer}`);
  return ground(`Takes ${name}`, (hand ?? source)?.description ?? MENDED[name] ?? '');
}

const signsGround = (table: string | undefined): Html =>
  table === undefined
    ? ground('Signs', 'no table is stated, they are played plain')
    : ground(`Signs after ${table}`, signTableByName(table)?.title ?? 'a table of the file’s own');

// ─── on a line ───────────────────────────────────────────────────────────────────────────────────────────────────

/** What moved a reading in each bar. */
export interface Reasons {
  in(piece: number, bars: readonly Bar[]): readonly Html[];
  /** What they print of the sources' symbols, for a key. */
  symbolsIn(piece: number, bars: readonly Bar[]): readonly PrintedSymbol[];
}

/** @param main the text by which symbols are counted */
export function reasonsFor(sheetText: SheetText, main: Score, sources: readonly Score[], signs: TaughtSigns): Reasons {
  const { score } = sheetText;
  const texts = new Map([main, ...sources, score].map((one) => [one.choice.name, one]));
  const differences = differencesOf([...texts].map(([name, one]) => ({ name, text: comparedText(one) }))).filter(
    (one) => one.kind !== 'time' && differsBesides(main.choice.name, score.choice.name, one),
  );
  const altered = alteredIn(perform(score, { ornaments: 'sign' }));
  const differencesIn = (piece: number, bars: readonly Bar[]): readonly Difference[] => {
    const name = score.pieces[piece]?.name ?? '';
    const numbers = new Set(bars.map(({ number }) => number));
    return differences.filter((one) => one.piece === name && numbers.has(one.bar));
  };
  return {
    in: (piece, bars) => [
      ...differencesIn(piece, bars).map((one) => variantReason(score, one)),
      ...practiceReasons(altered.get(piece), bars),
      ...signs.reasonsIn(sheetText, piece, bars),
    ],
    symbolsIn: (piece, bars) => symbolsOf(differencesIn(piece, bars)),
  };
}

/** Whether there is a difference of the reading and the sources, the main text apart if that is not the reading. */
const differsBesides = (main: string, reading: string, { sides }: Difference): boolean =>
  main === reading || sides.filter(({ names }) => names.some((name) => name !== main)).length > 1;

/** Whose text a reading takes at a place, and whose it leaves. */
function variantReason(score: Score, difference: Difference): Html {
  const { name } = score.choice;
  const { witnesses, layers } = declaredNames(score.environment);
  const sigla = ({ names }: Side): string =>
    sourcesAlone(names)
      .filter((one) => one !== name && (witnesses.includes(one) || layers.includes(one)))
      .join(', ');
  const own = difference.sides.find(({ names }) => names.includes(name));
  const others = difference.sides.filter((side) => side !== own && sigla(side) !== '');
  const withWhom = own === undefined || sigla(own) === '' ? '' : `, as ${sigla(own)}`;
  const verb = (side: Side): string => (sigla(side).includes(',') ? 'have' : 'has');
  const against = others.map((side) => `; ${sigla(side)} ${verb(side)} ${sideText(side)}`).join('');
  const where = placeName('', difference.bar, difference.voice, difference.symbol);
  const reasons = reasonsOf(score, difference);
  return [
    tag('b', {}, text(`Bar ${where}:`)),
    text(` ${sideText(own)}${withWhom}${against}.`),
    reasons.length === 0 ? '' : text(` ${reasons.join('. ')}.`),
  ].join('');
}

/** By piece and then by the words of practices: the bars in which they move notes. */
type AlteredBars = ReadonlyMap<number, ReadonlyMap<string, ReadonlySet<number>>>;

function alteredIn({ pieces }: Performance): AlteredBars {
  return new Map(
    pieces.map(({ events }, piece) => {
      const bars = new Map<string, Set<number>>();
      for (const { altered, from } of events) {
        for (const word of altered?.by ?? []) {
          const known = bars.get(word) ?? new Set();
          bars.set(word, known.add(from[0].placed.bar.index));
        }
      }
      return [piece, bars];
    }),
  );
}

function practiceReasons(altered: ReadonlyMap<string, ReadonlySet<number>> | undefined, bars: readonly Bar[]): Html[] {
  return Object.entries(practiceNames).flatMap(([word, name]) => {
    const moved = altered?.get(word);
    const numbers = bars.filter(({ index }) => moved?.has(index)).map(({ number }) => number);
    return numbers.length === 0 ? [] : [ground(`Rhythm, ${name}`, barsNamed(numbers))];
  });
}
