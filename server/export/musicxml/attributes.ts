/** Clefs, signatures and meters: what is in force at the first measure, and what changes later. */
import { compare, format, isZero, multiply, type Time, time, ZERO } from '../../../grammar/time';
import type { Clef } from '../../../grammar/tree';
import { clefsText, clefText } from '../../../grammar/vocabulary/clefs';
import { keyText } from '../../score/pitchNames';
import type { Bar, KeySign, Meter, Piece, Score, ScoreSystem, StateChange } from '../../score/score';
import type { Losses, Where } from '../losses';
import type { Measure } from '../measures';
import { type ClefChoice, fifthsOf, type Moment, type State, Staves } from '../staves';
import { leaf, type XmlElement, xml } from '../xml';
import { ACCIDENTALS, ALTERS } from './tables';

/** Attributes that take effect at a moment of a measure. */
export interface PlacedAttributes {
  /** From the start of the bar. */
  readonly offset: Time;
  /** The one stave that they concern; undefined: all. */
  readonly stave: number | undefined;
  readonly elements: readonly XmlElement[];
}

/** The attributes of one piece's measures. */
export class Attributes {
  private readonly staves: Staves;
  /** The `time` in force: the sign with its beats. */
  private inForce = '';

  constructor(
    private readonly score: Score,
    private readonly piece: Piece,
    clefs: ClefChoice,
    private readonly losses: Losses,
  ) {
    this.staves = new Staves(score, piece, clefs);
  }

  private get drawsSource(): boolean {
    return this.staves.clefs === 'source';
  }

  /** All that is in force at the start of a measure: for the first of an export and of each piece. */
  opening(measure: Measure): PlacedAttributes {
    const state = this.stateAt(measure);
    return {
      offset: ZERO,
      stave: undefined,
      elements: [
        ...this.openingKeys(state, measure),
        ...this.time(measure, true),
        ...this.stavesOf(),
        ...state.clefs.flatMap((clefs, stave) => clefElements(this.shown(clefs, stave, measure), stave)),
        ...this.staveDetails(),
      ],
    };
  }

  /** What changes within a measure; at its very start only if it is not restated whole. */
  changes(measure: Measure, restated: boolean): readonly PlacedAttributes[] {
    const here = this.staves.moments.filter((m) => m.bar === measure.bar.index && !m.change.restated);
    const later = restated ? here.filter((m) => !isZero(m.offset)) : here;
    const placed = later.flatMap((moment) => this.placed(moment));
    const time = restated ? [] : this.time(measure, false);
    return merged(time.length === 0 ? placed : [{ offset: ZERO, stave: undefined, elements: time }, ...placed]);
  }

  private placed({ change, offset, system, bar }: Moment): readonly PlacedAttributes[] {
    const { stave } = change;
    const elements: XmlElement[] = [];
    if (change.key !== undefined) {
      const before = this.staves.keyBefore(bar, offset, stave ?? 0);
      elements.push(keyElement(change.key, before, stave, this.drawsSource));
    }
    if (change.clefs !== undefined && this.drawsSource) {
      if (stave !== undefined) elements.push(...clefElements(change.clefs, stave));
      this.tellClefs(change, system, bar);
    }
    return elements.length === 0 ? [] : [{ offset, stave, elements }];
  }

  private tellClefs(change: StateChange, system: ScoreSystem, bar: number): void {
    const [clef, ...others] = change.clefs ?? [];
    if (clef === undefined || others.length === 0 || change.stave === undefined) return;
    const stave = this.score.environment.staves[change.stave]?.name ?? '';
    const clefs = clefsText([clef, ...others]);
    const where = { source: change.source, system, bar: this.piece.bars[bar] };
    this.losses.add('musicxml-two-clefs', { stave, clefs, clef: clefText(clef) }, where);
  }

  // ─── state ───────────────────────────────────────────────────────────────────────────────────────────────────

  private stateAt(measure: Measure): State {
    if (this.drawsSource) {
      for (const { change, system, bar } of this.staves.before(measure.bar.index, ZERO, true)) {
        this.tellClefs(change, system, bar);
      }
    }
    return this.staves.stateAt(measure.bar.index);
  }

  /** One signature for all staves where they agree, else one a stave. */
  private openingKeys(state: State, measure: Measure): readonly XmlElement[] {
    const octaves = this.drawsSource;
    const element = (stave: number, number: number | undefined): XmlElement => {
      const before = this.staves.keyBefore(measure.bar.index, ZERO, stave);
      return keyElement(state.keys[stave] ?? [], before, number, octaves);
    };
    const texts = new Set(state.keys.map(keyText));
    return texts.size <= 1 ? [element(0, undefined)] : state.keys.map((_, stave) => element(stave, stave));
  }

  private time(measure: Measure, opening: boolean): readonly XmlElement[] {
    const { meter } = measure.bar;
    const drawn = meter !== undefined && (opening || this.staves.drawnMeters.has(measure.bar.index));
    const counted = countedMeter(measure, drawn);
    const now = `${counted?.sign} ${counted?.beats}/${counted?.beatValue}`;
    if (!opening && !drawn && now === this.inForce) return [];
    this.inForce = now;
    if (counted === undefined || meter === undefined) return [SENZA_MISURA];
    if (drawn && isOdd(measure.bar, measure.duration) && counted === meter) this.tellLength(meter, measure);
    return [timeElement(meter, counted, drawn, () => this.tellMeter(meter, measure))];
  }

  private tellMeter({ sign, beats, beatValue }: Meter, measure: Measure): void {
    this.losses.add('musicxml-meter-sign', { sign, beats, beatValue }, this.whereMeter(measure));
  }

  private tellLength({ sign }: Meter, measure: Measure): void {
    this.losses.add('musicxml-meter-length', { sign }, this.whereMeter(measure));
  }

  private whereMeter(measure: Measure): Where {
    const change = this.staves.moments.findLast((m) => m.change.meter !== undefined && m.bar <= measure.bar.index);
    return { source: change?.change.source, system: change?.system ?? measure.system, bar: measure.bar };
  }

  // ─── staves and clefs ────────────────────────────────────────────────────────────────────────────────────────

  private stavesOf(): readonly XmlElement[] {
    const { length } = this.score.environment.staves;
    return length > 1 ? [leaf('staves', length)] : [];
  }

  /** Staves of another number of lines than five; a modern pair of clefs has five. */
  private staveDetails(): readonly XmlElement[] {
    if (!this.drawsSource) return [];
    return this.score.environment.staves.flatMap(({ lines }, stave) =>
      lines === 5 ? [] : [xml('staff-details', { number: stave + 1 }, [leaf('staff-lines', lines)])],
    );
  }

  /** The clefs drawn in the export; where the source has stated none yet, its next ones, else a modern one. */
  private shown(clefs: readonly Clef[], stave: number, measure: Measure): readonly Clef[] {
    const shown = this.staves.shown(clefs, stave);
    const [given] = shown.clefs;
    if (shown.isGiven && given !== undefined) {
      const name = this.score.environment.staves[stave]?.name ?? '';
      const where = { source: undefined, system: measure.system, bar: measure.bar };
      this.losses.add('musicxml-no-clef', { stave: name, clef: clefText(given) }, where);
    }
    return shown.clefs;
  }
}

/** Of several at once the lowest is read; the others are additional, and their lines are told for whoever looks. */
const clefElements = (clefs: readonly Clef[], stave: number): readonly XmlElement[] =>
  clefs.map(({ letter, line }, i) =>
    xml('clef', { number: stave + 1, additional: i > 0 ? 'yes' : undefined }, [
      leaf('sign', letter),
      leaf('line', line),
    ]),
  );

// ─── signatures ──────────────────────────────────────────────────────────────────────────────────────────────────

/** Whether these naturals take away the whole of a signature. */
function cancels(naturals: readonly KeySign[], before: readonly KeySign[]): boolean {
  const taken = new Set(naturals.map(({ letter }) => letter));
  return naturals.length > 0 && before.length === taken.size && before.every(({ letter }) => taken.has(letter));
}

function keyElement(
  key: readonly KeySign[],
  before: readonly KeySign[],
  stave: number | undefined,
  octaves: boolean,
): XmlElement {
  const attributes = { number: stave === undefined ? undefined : stave + 1 };
  const naturals = key.filter(({ accidental }) => accidental === 'n');
  const signs = key.filter(({ accidental }) => accidental !== 'n');
  const fifths = fifthsOf(signs);
  const cancelled = cancels(naturals, before) ? fifthsOf(before) : undefined;
  if (fifths !== undefined && (naturals.length === 0 || cancelled !== undefined)) {
    return xml('key', attributes, [
      cancelled === undefined ? undefined : leaf('cancel', cancelled),
      leaf('fifths', fifths),
      ...(octaves ? keyOctaves(signs) : []),
    ]);
  }
  const drawn = octaves ? key : withoutRepeats(key);
  return xml('key', attributes, [...drawn.flatMap(keySign), ...(octaves ? keyOctaves(drawn) : [])]);
}

const withoutRepeats = (key: readonly KeySign[]): readonly KeySign[] =>
  key.filter((sign, i) => key.findIndex((other) => other.letter === sign.letter) === i);

const keySign = ({ letter, accidental }: KeySign): readonly XmlElement[] => [
  leaf('key-step', letter.toUpperCase()),
  leaf('key-alter', ALTERS[accidental]),
  leaf('key-accidental', ACCIDENTALS[accidental]),
];

/** The octaves that the source says; signs are numbered from the left. */
const keyOctaves = (key: readonly KeySign[]): readonly XmlElement[] =>
  key.flatMap(({ octave }, i) => (octave === undefined ? [] : [xml('key-octave', { number: i + 1 }, octave)]));

// ─── meters ──────────────────────────────────────────────────────────────────────────────────────────────────────

/** Signs that MusicXML draws as such, and what else must be true of the meter. */
const SYMBOLS: readonly { readonly fits: (meter: Meter) => boolean; readonly symbol: string | undefined }[] = [
  { fits: ({ sign }) => sign === 'C', symbol: 'common' },
  { fits: ({ sign }) => sign === 'cut-C', symbol: 'cut' },
  { fits: ({ sign, beats }) => sign === `${beats}`, symbol: 'single-number' },
  { fits: ({ sign, beats, beatValue }) => sign === `${beats}/${beatValue}`, symbol: undefined },
];

/** Signs whose look does not change with the beats that they stand for. */
const LETTERS: ReadonlySet<string> = new Set(['C', 'cut-C']);

const SENZA_MISURA = xml('time', { 'print-object': 'no' }, [leaf('senza-misura', '')]);

/**
 * The meter with the beats that the measure has: readers take the length of a measure from its `time`. A measure that is
 * longer than its meter, or of another length in loose music, is counted by what it holds, unless its `time` is drawn and
 * would then look otherwise.
 */
function countedMeter({ bar, duration }: Measure, drawn: boolean): Meter | undefined {
  const { meter } = bar;
  if (meter === undefined || !isOdd(bar, duration) || (drawn && !LETTERS.has(meter.sign))) return meter;
  for (let beatValue = meter.beatValue; beatValue <= SMALLEST_BEAT; beatValue *= 2) {
    const beats = multiply(duration, time(beatValue));
    if (Number(beats.d) === 1) return { ...meter, beats: Number(beats.n), beatValue };
  }
  return meter;
}

/** Whether a reader would take the measure to be faulty, who knows upbeats and other short measures as such. */
function isOdd({ meter, expected }: Bar, duration: Time): boolean {
  const order = meter === undefined ? 0 : compare(duration, meter.length);
  return order > 0 || (order < 0 && expected === undefined);
}

const SMALLEST_BEAT = 128;

function timeElement(meter: Meter, counted: Meter, drawn: boolean, unknown: () => void): XmlElement {
  const found = SYMBOLS.find(({ fits }) => fits(meter));
  if (found === undefined) unknown();
  const symbol = drawn || counted === meter ? found?.symbol : undefined;
  return xml('time', { symbol, 'print-object': drawn ? undefined : 'no' }, [
    leaf('beats', counted.beats),
    leaf('beat-type', counted.beatValue),
  ]);
}

// ─── order ───────────────────────────────────────────────────────────────────────────────────────────────────────

/** The order that the type `attributes` wants. */
const ORDER = ['divisions', 'key', 'time', 'staves', 'part-symbol', 'clef', 'staff-details'];

export const attributesElement = (elements: readonly XmlElement[]): XmlElement =>
  xml(
    'attributes',
    {},
    [...elements].sort((a, b) => ORDER.indexOf(a.name) - ORDER.indexOf(b.name)),
  );

/** What takes effect at one moment, in one. */
function merged(placed: readonly PlacedAttributes[]): readonly PlacedAttributes[] {
  const moments = new Map<string, PlacedAttributes>();
  for (const one of placed) {
    const key = format(one.offset);
    const before = moments.get(key);
    moments.set(
      key,
      before === undefined
        ? one
        : {
            offset: one.offset,
            stave: before.stave === one.stave ? one.stave : undefined,
            elements: [...before.elements, ...one.elements],
          },
    );
  }
  return [...moments.values()].sort((a, b) => compare(a.offset, b.offset));
}
