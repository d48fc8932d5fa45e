/** Writing a measure: voices one after another, with the cursor moved between them. */
import { add, compare, earliest, isZero, subtract, type Time, ZERO } from '../../../grammar/time';
import type { Bar, Score } from '../../score/score';
import type { Chunk } from '../chunks';
import type { Measure } from '../measures';
import { inDivisions } from '../values';
import { leaf, type XmlElement, xml } from '../xml';
import { attributesElement, type PlacedAttributes } from './attributes';
import type { Barlines, PlacedBarline } from './barlines';
import { custosElements, eventDirections, type PlacedDirection } from './directions';
import { chunkElements, type VoiceLinks } from './notes';

/** What one measure holds. */
export interface MeasureParts {
  readonly measure: Measure;
  readonly print: XmlElement | undefined;
  readonly barlines: Barlines | undefined;
  /** Barlines within the measure. */
  readonly inner: readonly PlacedBarline[];
  readonly opening: PlacedAttributes | undefined;
  readonly divisions: bigint;
  /** The divisions are written where they change. */
  readonly statesDivisions: boolean;
  readonly changes: readonly PlacedAttributes[];
  readonly directions: readonly PlacedDirection[];
  readonly voices: readonly { readonly links: VoiceLinks; readonly chunks: readonly Chunk[] }[];
}

/** Collects elements and keeps count of the moment that MusicXML's cursor has reached. */
class Cursor {
  readonly elements: XmlElement[] = [];
  private now: Time = ZERO;

  constructor(private readonly divisions: bigint) {}

  moveTo(moment: Time): void {
    const order = compare(moment, this.now);
    if (order === 0) return;
    const [name, length] = order > 0 ? ['forward', subtract(moment, this.now)] : ['backup', subtract(this.now, moment)];
    this.elements.push(xml(name, {}, [leaf('duration', inDivisions(length, this.divisions))]));
    this.now = moment;
  }

  put(elements: readonly XmlElement[], length: Time = ZERO): void {
    this.elements.push(...elements);
    this.now = add(this.now, length);
  }
}

export function measureElement(parts: MeasureParts, score: Score): XmlElement {
  const { measure, barlines, divisions } = parts;
  const cursor = new Cursor(divisions);
  cursor.put([parts.print, barlines?.left].filter((element) => element !== undefined));
  const heads = headElements(parts);
  if (heads.length > 0) cursor.put([attributesElement(heads)]);
  cursor.put(parts.directions.filter(({ offset }) => isZero(offset)).map(({ element }) => element));
  if (measure.broken) leaveEmpty(cursor, parts);
  else writeVoices(cursor, parts, score);
  cursor.moveTo(measure.duration);
  if (barlines?.right !== undefined) cursor.put([barlines.right]);
  const implicit = isImplicit(measure) ? 'yes' : undefined;
  return xml('measure', { ...numbersOf(measure, score), implicit }, cursor.elements);
}

/**
 * A measure's number shall be its own in the whole part: those of a further piece begin with the piece's, and the number
 * that is displayed stands beside it (MusicXML 4.0, `measure`).
 */
function numbersOf({ piece, bar }: Measure, { pieces }: Score): { readonly number: string; readonly text?: string } {
  const before = pieces.indexOf(piece);
  return before <= 0 ? { number: bar.number } : { number: `${before + 1}-${bar.number}`, text: bar.number };
}

const isShort = (bar: Bar): boolean => bar.expected !== undefined && compare(bar.duration, bar.expected) < 0;

/** Whether the bar is none of the count: an upbeat, an irregular bar, the second half of a pair, all of free music. */
const isImplicit = ({ bar, system }: Measure): boolean =>
  system.score.kind === 'free' || bar.number === '0' || bar.irregular || (isShort(bar) && /[b-z]$/.test(bar.number));

/** Everything that takes effect at the very start. */
const headElements = ({ opening, changes, divisions, statesDivisions }: MeasureParts): readonly XmlElement[] => [
  ...(statesDivisions ? [leaf('divisions', `${divisions}`)] : []),
  ...(opening?.elements ?? []),
  ...changes.filter(({ offset }) => isZero(offset)).flatMap(({ elements }) => elements),
];

/** What stands between the notes and belongs to a moment, not to a voice. */
interface Between {
  readonly offset: Time;
  readonly stave: number | undefined;
  readonly element: XmlElement;
}

function writeVoices(cursor: Cursor, parts: MeasureParts, score: Score): void {
  const between = betweenOf(parts);
  const hosts = new Map<Between, number>(between.map((one) => [one, hostOf(one, parts)]));
  for (const [index, { links, chunks }] of parts.voices.entries()) {
    const own = between.filter((one) => hosts.get(one) === index);
    writeVoice(cursor, chunks, own, links, score, parts.divisions);
  }
  for (const one of between.filter((other) => hosts.get(other) === -1)) {
    cursor.moveTo(one.offset);
    cursor.put([one.element]);
  }
}

function betweenOf({ changes, directions, inner }: MeasureParts): readonly Between[] {
  const barlines = inner.map((one) => ({ ...one, stave: undefined }));
  const attributes = changes
    .filter(({ offset }) => !isZero(offset))
    .map(({ offset, stave, elements }) => ({ offset, stave, element: attributesElement(elements) }));
  const others = directions
    .filter(({ offset }) => !isZero(offset))
    .map(({ offset, element }) => ({ offset, stave: undefined, element }));
  return [...barlines, ...attributes, ...others].sort((a, b) => compare(a.offset, b.offset));
}

/** The first voice that begins a note at that moment on that stave, else at that moment, else the first; -1 of none. */
function hostOf({ offset, stave }: Between, { voices }: MeasureParts): number {
  const begins = (index: number, onStave: boolean): boolean =>
    voices[index]?.chunks.some(
      (chunk) =>
        compare(chunk.offset, offset) === 0 && (!onStave || stave === undefined || chunk.event.stave === stave),
    ) ?? false;
  const indices = [...voices.keys()];
  return indices.find((i) => begins(i, true)) ?? indices.find((i) => begins(i, false)) ?? (voices.length > 0 ? 0 : -1);
}

function writeVoice(
  cursor: Cursor,
  chunks: readonly Chunk[],
  between: readonly Between[],
  links: VoiceLinks,
  score: Score,
  divisions: bigint,
): void {
  const waiting = [...between];
  const writeWaiting = (until: Time | undefined): void => {
    while (waiting[0] !== undefined && (until === undefined || compare(waiting[0].offset, until) <= 0)) {
      const one = waiting.shift();
      if (one === undefined) return;
      cursor.moveTo(one.offset);
      cursor.put([one.element]);
    }
  };
  for (const chunk of chunks) {
    writeWaiting(chunk.offset);
    cursor.moveTo(chunk.offset);
    cursor.put([...eventDirections(chunk), ...(links.passages.before.get(chunk) ?? [])]);
    cursor.put(links.figures.get(chunk)?.(divisions) ?? []);
    cursor.put(chunkElements(chunk, links, score, divisions), chunk.duration);
    cursor.put([...(links.passages.after.get(chunk) ?? []), ...custosElements(chunk)]);
  }
  writeWaiting(undefined);
}

/** A bar whose time is wrong is left empty, for all voices; clefs and the like that it brings hold in later bars. */
function leaveEmpty(cursor: Cursor, parts: MeasureParts): void {
  const { measure, voices, divisions } = parts;
  for (const { links } of voices) {
    cursor.moveTo(ZERO);
    if (isZero(measure.duration)) continue;
    const duration = leaf('duration', inDivisions(measure.duration, divisions));
    cursor.put([xml('forward', {}, [duration, leaf('voice', links.voice + 1)])], measure.duration);
  }
  for (const { offset, element } of betweenOf(parts)) {
    cursor.moveTo(earliest(offset, measure.duration));
    cursor.put([element]);
  }
}
