/** Notes, chords, rests and the time of gaps, as elements of a layer. */
import { compare, equal, isZero, multiply, type Time, time } from '../../../grammar/time';
import type { AccidentalSign, SpanWord, Spelling } from '../../../grammar/tree';
import type { Environment } from '../../score/environment';
import type { NoteMember, Tuplet, VoiceEvent } from '../../score/score';
import type { Chunk } from '../chunks';
import { decompose, hasStem, type NoteValue, type Ratio, writtenValue } from '../values';
import { type XmlAttributes, type XmlElement, xml } from '../xml';
import { responsible, unclear, words } from './editorial';
import { partId } from './ids';
import type { Names } from './names';
import { marksInNote } from './signs';
import { ACCIDENTALS, durationOf, SOUNDING } from './tables';

/** What a layer asks to write its events. */
export interface Writing {
  readonly environment: Environment;
  readonly names: Names;
  /** The syllables sung under the notes. */
  readonly verses: ReadonlyMap<Chunk, readonly XmlElement[]>;
}

/**
 * The elements of one chunk: one, but for time that no single value fills and for a custos.
 * @param home the stave of its layer; what stands on another says so
 */
export function chunkElements(chunk: Chunk, home: number, writing: Writing): readonly XmlElement[] {
  const { custos } = chunk.event;
  const own = ownElements(chunk, home, writing);
  return custos === undefined || !chunk.last
    ? own
    : [...own, custosElement(custos, writing.names.part(writing.names.of(chunk), 'c', 1))];
}

/** The sign at the end of a line, on the line or space of the note to come. */
const custosElement = ({ letter, octave, accidental }: Spelling, id: string): XmlElement =>
  xml('custos', { 'xml:id': id, pname: letter, oct: octave, accid: accidental && ACCIDENTALS[accidental] });

function ownElements(chunk: Chunk, home: number, writing: Writing): readonly XmlElement[] {
  const { names } = writing;
  const { event } = chunk;
  const id = names.of(chunk);
  const own = { 'xml:id': id, staff: staffOf(event.stave, home), type: isOmitted(event) ? 'omit' : undefined };
  if (event.kind === 'note') return [doubted(chunk, noteOrChord(chunk, home, writing))];
  if (fillsMeasure(chunk)) return [xml(event.kind === 'rest' ? 'mRest' : 'mSpace', own)];
  if (event.kind === 'rest' && !event.wholeBar) {
    return [doubted(chunk, xml('rest', { ...own, ...durationOf(chunk.value), ...graceOf(chunk) }))];
  }
  const time = timeElements(written(chunk), event.kind === 'rest' ? 'rest' : 'space', own);
  return event.kind === 'lost' ? [xml('damage', {}, [lacuna(chunk, id), ...time])] : time;
}

/** Time that a source leaves out while other voices go on. */
const isOmitted = ({ kind, value, wholeBar }: VoiceEvent): boolean =>
  kind === 'gap' && value === undefined && !wholeBar;

/** The time of a chunk before the proportions that it stands in. */
const written = ({ duration, ratio }: Chunk): Time =>
  ratio === undefined ? duration : multiply(duration, time(ratio.actual, ratio.normal));

/**
 * A note or rest that runs through the barline, as the source draws it: whole, in the bar where it begins. Its ids are those
 * of its first part with `-o1` at the end.
 */
export function asDrawn(chunk: Chunk, home: number, { environment, names }: Writing): XmlElement {
  const [part] = ownElements(chunk, home, { environment, names, verses: new Map() });
  return part === undefined
    ? xml('space')
    : lastingAs(part, durationOf(writtenValue(chunk.event.value) ?? chunk.value));
}

/** The same with another value, and with ids of its own. */
const lastingAs = ({ name, attributes, content }: XmlElement, value: XmlAttributes): XmlElement => {
  const id = attributes['xml:id'];
  return {
    name,
    attributes: {
      ...attributes,
      ...(id === undefined ? {} : { 'xml:id': partId(`${id}`, 'o', 1) }),
      ...(attributes.dur === undefined ? {} : value),
    },
    content: typeof content === 'object' ? content.map((child) => child && lastingAs(child, value)) : content,
  };
};

/** What is lost, beside the time that it takes. */
const lacuna = ({ event: { value } }: Chunk, id: string): XmlElement =>
  xml('gap', { 'xml:id': partId(id, 'g', 1), reason: 'lost', extent: value?.text ?? 'unknown' });

/** A value that is doubtful. */
const doubted = ({ event }: Chunk, element: XmlElement): XmlElement =>
  event.value?.doubtful === true ? unclear(element) : element;

const fillsMeasure = ({ event, offset, duration, measure }: Chunk): boolean =>
  event.wholeBar && isZero(offset) && equal(duration, measure.duration) && event.tuplets.length === 0;

const staffOf = (stave: number, home: number): number | undefined => (stave === home ? undefined : stave + 1);

const graceOf = ({ event, duration }: Chunk): { readonly grace?: string } =>
  event.small !== undefined || isZero(duration) ? { grace: 'unknown' } : {};

function noteOrChord(chunk: Chunk, home: number, { environment, names, verses }: Writing): XmlElement {
  const { event, first } = chunk;
  const alone = event.members.length === 1;
  const shared = {
    ...durationOf(chunk.value),
    ...graceOf(chunk),
    'stem.dir': hasStem(chunk.value) ? event.stems : undefined,
  };
  const through = throughType(event);
  const ofEvent = [...(first ? marksInNote(event.marks, environment) : []), ...(verses.get(chunk) ?? [])];
  const notes = event.members.map((member, m) => {
    const attributes = {
      'xml:id': names.ofHead({ chunk, member: m }),
      ...pitchOf(member),
      ...(alone ? shared : {}),
      ...colourOf(chunk),
      ...realisedAs(member, alone ? through : undefined),
      staff: staffOf(member.stave, home),
    };
    const own = first ? [...accidentalsOf(member, environment), ...marksInNote(member.marks, environment)] : [];
    const note = xml('note', attributes, [...own, ...(alone ? ofEvent : [])]);
    return member.spelling.doubtful ? unclear(note) : note;
  });
  const [only] = notes;
  return alone && only !== undefined
    ? only
    : xml('chord', { 'xml:id': names.of(chunk), ...shared, type: through }, [...notes, ...ofEvent]);
}

/** A note that stands for a sign says so, and by what row of what table. */
function realisedAs({ realised }: NoteMember, type: string | undefined): XmlAttributes {
  if (realised === undefined) return { type };
  const { sign, row, table } = realised;
  return { type: words(type, 'realised'), label: `${sign}${row === '' ? '' : ` (${row})`}, ${table}` };
}

/** Whether the note runs through the barline, and its dot is drawn after that. */
function throughType({ members }: VoiceEvent): string | undefined {
  const form = members.flatMap(({ marks }) => marks).find((mark) => mark.form.name === 'through')?.form;
  return words(form && 'through', form?.parameters.includes('dot') === true && 'dot-after-barline');
}

/** What sounds is said where it is not the plain natural, or where a sign is drawn. */
const pitchOf = (member: NoteMember): XmlAttributes => ({
  pname: member.spelling.letter,
  oct: member.octave,
  'accid.ges': member.alteration === 0 && !bearsSign(member) ? undefined : SOUNDING[member.alteration],
});

const bearsSign = ({ spelling: { accidental, cautionary, editors }, marks }: NoteMember): boolean =>
  [accidental, cautionary, editors, ...marks.map(({ form }) => form.accidental)].some((sign) => sign !== undefined);

/** What is drawn before the head: the source's sign, a cautionary one, the editor's. */
function accidentalsOf({ spelling }: NoteMember, environment: Environment): readonly XmlElement[] {
  const { accidental, cautionary, editors } = spelling;
  const element = (sign: AccidentalSign | undefined, how: XmlAttributes = {}): readonly XmlElement[] =>
    sign === undefined ? [] : [xml('accid', { accid: ACCIDENTALS[sign], ...how })];
  return [
    ...element(accidental),
    ...element(cautionary, { func: 'caution', enclose: 'paren' }),
    ...element(editors, { func: 'edit', resp: responsible(environment), enclose: 'brack' }),
  ];
}

// ─── coloration ──────────────────────────────────────────────────────────────────────────────────────────────────

/** Values that are void where nothing is coloured. */
const isVoid = (value: NoteValue | undefined): boolean => value !== undefined && compare(value.base, time(1, 2)) >= 0;

/** A head that is filled or void against its value is coloured. */
function colourOf({ event, value }: Chunk): Readonly<Record<string, string>> {
  const colour = event.spans.findLast(({ head: { word } }) => isColour(word))?.head.word;
  if (colour === undefined) return {};
  const isColoured = isVoid(value) === (colour === 'black');
  return { ...(isColoured ? { colored: 'true' } : {}), 'head.fill': colour === 'black' ? 'solid' : 'void' };
}

export const isColour = (word: SpanWord | undefined): boolean => word === 'black' || word === 'void';

// ─── time ────────────────────────────────────────────────────────────────────────────────────────────────────────

/** Time as drawn values one after another, the first of them with the attributes; in a hidden tuplet where it needs one. */
export function timeElements(
  duration: Time,
  name: 'space' | 'rest',
  attributes: XmlAttributes = {},
): readonly XmlElement[] {
  if (isZero(duration)) return [];
  const odd = oddPart(Number(duration.d));
  const ratio = { actual: odd, normal: powerBelow(odd) };
  const values = (decompose(multiply(duration, time(ratio.actual, ratio.normal))) ?? []).flatMap(common);
  const elements = values.map((value, i) => xml(name, { ...(i === 0 ? attributes : {}), ...durationOf(value) }));
  return odd === 1 || elements.length === 0 ? elements : [hiddenTuplet(ratio, elements)];
}

/** Common notation has nothing longer than a longa (MEI 5.1, `data.DURATION.cmn`): a maxima is two of them, a dotted one three. */
const common = (value: NoteValue): readonly NoteValue[] =>
  value.type === 'maxima' ? Array.from({ length: value.dots === 0 ? 2 : 3 }, () => LONGA) : [value];

const LONGA: NoteValue = { type: 'long', base: time(4), dots: 0 };

const oddPart = (d: number): number => (d % 2 === 0 ? oddPart(d / 2) : d);
const powerBelow = (n: number): number => (n <= 1 ? 1 : 2 * powerBelow(Math.floor(n / 2)));

/** Notes in a proportion of which the source draws no sign. */
export const hiddenTuplet = ({ actual, normal }: Ratio, children: readonly XmlElement[]): XmlElement =>
  xml('tuplet', { num: actual, numbase: normal, 'num.visible': 'false', 'bracket.visible': 'false' }, children);

export const tupletElement = ({ n, m, drawn }: Tuplet, children: readonly XmlElement[]): XmlElement =>
  drawn ? xml('tuplet', { num: n, numbase: m }, children) : hiddenTuplet({ actual: n, normal: m }, children);
