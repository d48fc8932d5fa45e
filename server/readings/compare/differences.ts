/** Texts of one file beside one another, bar by bar and voice by voice: where they differ, and who agrees with whom. */
import { grouped } from '../../../grammar/lists';
import { format, subtract, type Time, ZERO } from '../../../grammar/time';
import type { ComparedBar, ComparedText, DrawnSymbol, TimeInBar } from './symbols';

/** What differs: `reading` where pitch and rhythm do; `sounding` where a practice of accidentals does; `time` what is played. */
export type DifferenceKind = 'pitch' | 'rhythm' | 'reading' | 'sign' | 'sounding' | 'time' | 'omission' | 'frame';

/** What differs, as reports and comparisons that are read say it. */
export const kindInWords: Readonly<Record<DifferenceKind, string>> = {
  pitch: 'pitch',
  rhythm: 'rhythm',
  reading: 'pitch and rhythm',
  sign: 'signs and other marks',
  sounding: 'what sounds',
  time: 'when it is played',
  omission: 'omission',
  frame: 'clefs, signatures, barlines',
};

export interface Difference {
  readonly kind: DifferenceKind;
  /** "" of the only piece. */
  readonly piece: string;
  /** The trade's number of the bar. */
  readonly bar: string;
  /** "" where the bar as a whole is meant. */
  readonly voice: string;
  /** The first symbol that differs, from 1, rests counted; 0 where the bar is meant. */
  readonly symbol: number;
  /** What the texts have, those that agree together, in the order in which they were named. */
  readonly sides: readonly Side[];
}

export interface Side {
  readonly names: readonly string[];
  /** Those of which it is doubtful that they have it. */
  readonly doubtful: readonly string[];
  /** As typed, values and octaves in full; "" where there is nothing. */
  readonly text: string;
  /** What is to be read: the same, but what sounds and when it is played in words; “nothing”. */
  readonly inWords: string;
  readonly symbols: readonly DrawnSymbol[];
  /** Where it stands; undefined where there is nothing. */
  readonly place: { readonly address: string; readonly line: number; readonly column: number } | undefined;
}

export interface NamedText {
  readonly name: string;
  readonly text: ComparedText;
}

/** All differences, in the order of the source: of each place the first of what is drawn, what sounds, when it is played. */
export const differencesOf = (texts: readonly NamedText[]): Difference[] => differencesBy(texts, inSegments);

/** With those that sides which have the same there still have among themselves: its sides are then these alone. */
export const allDifferencesOf = (texts: readonly NamedText[]): Difference[] => differencesBy(texts, inSidesToo);

type Finding = (lines: readonly NamedLine[], segments: readonly Segment[]) => Found[];

const differencesBy = (texts: readonly NamedText[], find: Finding): Difference[] =>
  barsOfAll(texts).flatMap((key) =>
    inBar(
      texts.map(({ name, text }) => ({ name, bar: text.get(key) })),
      find,
    ),
  );

/** The bars that any text has, in order: those that only some have stand where these have them. */
function barsOfAll(texts: readonly NamedText[]): string[] {
  const ordered: string[] = [];
  for (const { text } of texts) {
    let after = -1;
    for (const key of text.keys()) {
      const known = ordered[after + 1] === key ? after + 1 : ordered.indexOf(key);
      if (known >= 0) after = known;
      else ordered.splice(++after, 0, key);
    }
  }
  return ordered;
}

interface NamedBar {
  readonly name: string;
  readonly bar: ComparedBar | undefined;
}

function inBar(bars: readonly NamedBar[], find: Finding): Difference[] {
  const some = bars.find(({ bar }) => bar !== undefined)?.bar;
  if (some === undefined) return [];
  const at = { piece: some.piece, bar: some.number };
  if (bars.some(({ bar }) => bar === undefined)) {
    const sides = sidesOf(
      bars,
      ({ bar }) => (bar === undefined ? '' : 'the bar'),
      () => [],
    );
    return [{ ...at, kind: 'omission', voice: '', symbol: 0, sides }];
  }
  const frames = sidesOf(
    bars,
    ({ bar }) => bar?.frame ?? '',
    () => [],
  );
  const frame: Difference[] = frames.length > 1 ? [{ ...at, kind: 'frame', voice: '', symbol: 0, sides: frames }] : [];
  const voices = new Set(bars.flatMap(({ bar }) => [...(bar?.voices.keys() ?? [])]));
  return [
    ...frame,
    ...[...voices].flatMap((voice) => {
      const lines = bars.map(({ name, bar }) => ({ name, symbols: bar?.voices.get(voice) ?? [] }));
      return find(lines, segmentsOf(lines)).map(({ difference }) => ({ ...at, voice, ...difference }));
    }),
  ];
}

interface NamedLine {
  readonly name: string;
  readonly symbols: readonly DrawnSymbol[];
}

type InVoice = Omit<Difference, 'piece' | 'bar' | 'voice'>;

const textOf = ({ value, notes, marks }: DrawnSymbol): string => `${value} ${notes}${marks}`.trim();

interface Aspect {
  readonly of: (symbol: DrawnSymbol) => string;
  readonly shown: (symbol: DrawnSymbol) => string;
  /** Where what is shown is no words. */
  readonly inWords?: (symbols: readonly DrawnSymbol[]) => string;
  readonly kind: (sides: readonly (readonly DrawnSymbol[])[]) => DifferenceKind;
}

const DRAWN: Aspect = { of: textOf, shown: textOf, kind: (sides) => kindOf(sides) };

const timeText = ({ at, lasts }: TimeInBar): string => `${at}+${lasts}`;

/** What is compared, one after another: what is drawn, what sounds, when it is played. */
const ASPECTS: readonly Aspect[] = [
  DRAWN,
  {
    of: ({ sounding }) => sounding,
    shown: ({ notes, sounding }) => `${notes} (${sounding})`,
    inWords: (symbols) => symbols.map(({ notes, pitches }) => `${notes} sounds ${pitches}`).join(', '),
    kind: () => 'sounding',
  },
  {
    of: ({ played }) => (played === undefined ? '' : timeText(played)),
    shown: ({ notes, played, written }) => `${notes} ${timeText(played ?? written)}`,
    inWords: timesInWords,
    kind: () => 'time',
  },
];

/** “a4 at 0 for 7/16, b4 at 7/16 for 1/16 of a semibreve”. Small notes have no time of their own: alone they but begin. */
function timesInWords(symbols: readonly DrawnSymbol[]): string {
  const timed = symbols.filter(({ written }) => written.lasts !== '0');
  const times = (timed.length > 0 ? timed : symbols).map(({ notes, played, written }) => {
    const { at, lasts } = played ?? written;
    return `${notes} at ${at}${lasts === '0' ? '' : ` for ${lasts}`}`;
  });
  return `${times.join(', ')} of a semibreve`;
}

/** The same stretch of time in all lines: it begins where all have a symbol. */
interface Segment {
  /** How many symbols are drawn before it in the first line. */
  readonly before: number;
  readonly lines: readonly NamedLine[];
}

/** A difference, and the time in which it lies. */
interface Found {
  readonly difference: InVoice;
  readonly segments: readonly Segment[];
}

/** Segments that differ in one aspect and follow one another are one difference. */
function inSegments(lines: readonly NamedLine[], all: readonly Segment[]): Found[] {
  const found: { readonly aspect: number; readonly segments: Segment[] }[] = [];
  let before = -1;
  for (const segment of all) {
    const aspect = ASPECTS.findIndex(
      ({ of }) => !areAlike(segment.lines.map((line) => line.symbols.map(of).join('\n'))),
    );
    if (aspect >= 0 && aspect === before) found.at(-1)?.segments.push(segment);
    else if (aspect >= 0) found.push({ aspect, segments: [segment] });
    before = aspect;
  }
  return found.map(({ aspect, segments }) => ({ difference: differenceOf(lines, aspect, segments), segments }));
}

/** What is drawn alike may sound otherwise, or at another time. */
function inSidesToo(lines: readonly NamedLine[], all: readonly Segment[]): Found[] {
  return inSegments(lines, all).flatMap((found) => {
    const groups = found.difference.sides.filter(({ names }) => names.length > 1 && names.length < lines.length);
    const within = groups.flatMap(({ names }) => {
      const own = (line: NamedLine): boolean => names.includes(line.name);
      const segments = found.segments.map((segment) => ({ ...segment, lines: segment.lines.filter(own) }));
      return inSidesToo(lines.filter(own), segments);
    });
    return [found, ...within];
  });
}

function differenceOf(lines: readonly NamedLine[], aspect: number, segments: readonly Segment[]): InVoice {
  const all = lines.map(({ name }, line) => ({
    name,
    symbols: segments.flatMap((segment) => segment.lines[line]?.symbols ?? []),
  }));
  const { shown, inWords, kind } = ASPECTS[aspect] ?? DRAWN;
  const sides = sidesOf(
    all,
    ({ symbols }) => symbols.map(shown).join(' '),
    ({ symbols }) => symbols,
  );
  return {
    kind: kind(all.map(({ symbols }) => symbols)),
    symbol: (segments[0]?.before ?? 0) + 1,
    sides: inWords === undefined ? sides : sides.map((side) => ({ ...side, inWords: inWords(side.symbols) })),
  };
}

/**
 * Parts of a bar that are set beside one another. Lines that are read in one lane have its events in common, places with
 * options and all, wherever in time an omission puts them; others have their time in common.
 */
function segmentsOf(lines: readonly NamedLine[]): Segment[] {
  const lanes = new Set(lines.flatMap(({ symbols }) => symbols.map(({ address }) => laneOf(address))));
  const parts = lanes.size > 1 ? partedByTime(lines, () => ZERO) : partedByEvent(lines);
  let before = 0;
  return parts.filter(holdsAnything).map((part) => {
    const segment = { before, lines: part };
    before += (part[0]?.symbols ?? []).filter(({ drawn }) => drawn).length;
    return segment;
  });
}

const holdsAnything = (part: readonly NamedLine[]): boolean => part.some(({ symbols }) => symbols.length > 0);

const laneOf = (address: string): string => address.slice(0, address.lastIndexOf('/'));

/** Bar and event in the lane: of what stands in options those of their place. */
const eventOf = ({ address }: DrawnSymbol): string =>
  address
    .slice(address.lastIndexOf('/') + 1)
    .split('.', 2)
    .join('.');

/** Each event by itself, in the order of the lane; one that a line has not is empty there. */
function partedByEvent(lines: readonly NamedLine[]): (readonly NamedLine[])[] {
  const own = lines.map(({ symbols }) => grouped(symbols, eventOf));
  const all = [...new Set(own.flatMap((events) => [...events.keys()]))].sort(inLaneOrder);
  return all.flatMap((event) =>
    partedByTime(
      lines.map(({ name }, line) => ({ name, symbols: own[line]?.get(event) ?? [] })),
      beginningOf,
    ),
  );
}

const beginningOf = ({ symbols: [first] }: NamedLine): Time => first?.onset ?? ZERO;

function inLaneOrder(one: string, other: string): number {
  const [[bar = 0, event = 0], [otherBar = 0, otherEvent = 0]] = [
    one.split('.').map(Number),
    other.split('.').map(Number),
  ];
  return bar - otherBar || event - otherEvent;
}

/**
 * What comes before the first shared moment, then what begins with each.
 * @param origin in its bar, from where the moments of a line count
 */
function partedByTime(lines: readonly NamedLine[], origin: (line: NamedLine) => Time): (readonly NamedLine[])[] {
  const moments = lines.map((line) => line.symbols.map(({ onset }) => format(subtract(onset, origin(line)))));
  const known = moments.map((own) => new Set(own));
  const isShared = (moment: string): boolean => known.every((own) => own.has(moment));
  const parts = lines.map(({ symbols }, line) => partedAt(symbols, moments[line] ?? [], isShared));
  const count = Math.max(...parts.map((own) => own.length));
  return Array.from({ length: count }, (_, part) =>
    lines.map(({ name }, line) => ({ name, symbols: parts[line]?.[part] ?? [] })),
  );
}

function partedAt(
  symbols: readonly DrawnSymbol[],
  moments: readonly string[],
  isShared: (moment: string) => boolean,
): DrawnSymbol[][] {
  const parts: DrawnSymbol[][] = [[]];
  for (const [index, symbol] of symbols.entries()) {
    const moment = moments[index] ?? '';
    if (moment !== moments[index - 1] && isShared(moment)) parts.push([]);
    parts.at(-1)?.push(symbol);
  }
  return parts;
}

const areAlike = (texts: readonly string[]): boolean => texts.every((text) => text === texts[0]);

function kindOf(middles: readonly (readonly DrawnSymbol[])[]): DifferenceKind {
  if (middles.some((symbols) => symbols.length === 0)) return 'omission';
  const same = (of: (symbol: DrawnSymbol) => string): boolean =>
    areAlike(middles.map((symbols) => symbols.map(of).join(' ')));
  const [pitch, rhythm] = [same(({ notes }) => notes), same(({ value }) => value)];
  if (pitch && rhythm) return 'sign';
  return pitch ? 'rhythm' : rhythm ? 'pitch' : 'reading';
}

/** Those that have the same together. */
function sidesOf<One extends { readonly name: string }>(
  all: readonly One[],
  textIn: (one: One) => string,
  symbolsIn: (one: One) => readonly DrawnSymbol[],
): Side[] {
  const sides = new Map<string, Side & { readonly names: string[]; readonly doubtful: string[] }>();
  for (const one of all) {
    const text = textIn(one);
    const symbols = symbolsIn(one);
    const [first] = symbols;
    const place = first && { address: first.address, line: first.line, column: first.column };
    const inWords = text === '' ? 'nothing' : text;
    const side = sides.get(text) ?? { names: [], doubtful: [], text, inWords, symbols, place };
    sides.set(text, side);
    side.names.push(one.name);
    if (symbols.some(({ doubtful }) => doubtful)) side.doubtful.push(one.name);
  }
  return [...sides.values()];
}

/** The name, with a question mark where it is doubtful that it belongs there, as it is typed. */
export const nameOn = ({ doubtful }: Pick<Side, 'doubtful'>, name: string): string =>
  doubtful.includes(name) ? `${name}?` : name;

/** Who agrees against whom, and at how many places, the most frequent first. */
export interface Agreement {
  readonly groups: readonly (readonly string[])[];
  readonly places: number;
}

export function agreementsIn(differences: readonly Difference[]): Agreement[] {
  const counts = new Map<string, { readonly groups: readonly (readonly string[])[]; places: number }>();
  for (const { sides } of differences) {
    const groups = sides.map(({ names }) => names);
    const key = groups.map((names) => names.join(' ')).join(' | ');
    const known = counts.get(key);
    if (known === undefined) counts.set(key, { groups, places: 1 });
    else known.places++;
  }
  return [...counts.values()].sort((a, b) => b.places - a.places);
}
