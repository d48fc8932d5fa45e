/** Notes, chords, rests and the time of gaps, as elements of a layer. */
import { compare, equal, isZero, multiply, type Time, time } from '../../../grammar/time';
import type { SpanWord } from '../../../grammar/tree';
import type { NoteMember, Tuplet } from '../../score/score';
import type { Chunk } from '../chunks';
import { decompose, hasStem, type NoteValue, type Ratio } from '../values';
import { type XmlAttributes, type XmlElement, xml } from '../xml';
import type { Names } from './names';
import { ACCIDENTALS, durationOf, SOUNDING } from './tables';

/**
 * The elements of one chunk: one, but for time that no single value fills.
 * @param home the stave of its layer; what stands on another says so
 */
export function chunkElements(chunk: Chunk, home: number, names: Names): readonly XmlElement[] {
  const { event } = chunk;
  const id = names.of(chunk);
  const own = { 'xml:id': id, staff: staffOf(event.stave, home) };
  if (event.kind === 'note') return [noteOrChord(chunk, home, names)];
  if (fillsMeasure(chunk)) return [xml(event.kind === 'rest' ? 'mRest' : 'mSpace', own)];
  if (event.kind === 'rest' && !event.wholeBar) {
    return [xml('rest', { ...own, ...durationOf(chunk.value), ...graceOf(chunk) })];
  }
  return timeElements(chunk.duration, event.kind === 'rest' ? 'rest' : 'space', own);
}

const fillsMeasure = ({ event, offset, duration, measure }: Chunk): boolean =>
  event.wholeBar && isZero(offset) && equal(duration, measure.duration) && event.tuplets.length === 0;

const staffOf = (stave: number, home: number): number | undefined => (stave === home ? undefined : stave + 1);

const graceOf = ({ event, duration }: Chunk): { readonly grace?: string } =>
  event.small !== undefined || isZero(duration) ? { grace: 'unknown' } : {};

function noteOrChord(chunk: Chunk, home: number, names: Names): XmlElement {
  const { event } = chunk;
  const shared = {
    ...durationOf(chunk.value),
    ...graceOf(chunk),
    'stem.dir': hasStem(chunk.value) ? event.stems : undefined,
  };
  const [only, ...others] = event.members.map((member, m) => {
    const id = names.ofHead({ chunk, member: m });
    const staff = staffOf(member.stave, home);
    const alone = event.members.length === 1 ? shared : {};
    const attributes = { 'xml:id': id, ...pitchOf(member), ...alone, ...colourOf(chunk), staff };
    return xml('note', attributes, accidentalsOf(chunk, member));
  });
  if (only !== undefined && others.length === 0) return only;
  return xml('chord', { 'xml:id': names.of(chunk), ...shared }, [only, ...others]);
}

/** What sounds is said where it is not the plain natural, or where a sign is drawn. */
const pitchOf = (member: NoteMember): XmlAttributes => ({
  pname: member.spelling.letter,
  oct: member.octave,
  'accid.ges': member.alteration === 0 && !bearsSign(member) ? undefined : SOUNDING[member.alteration],
});

const bearsSign = ({ spelling: { accidental, cautionary, editors }, marks }: NoteMember): boolean =>
  [accidental, cautionary, editors, ...marks.map(({ form }) => form.accidental)].some((sign) => sign !== undefined);

/** What is drawn before or above the head: the source's sign, a cautionary one, the editor's. A tied note has them once. */
function accidentalsOf({ first }: Chunk, { spelling, marks }: NoteMember): readonly XmlElement[] {
  if (!first) return [];
  const { accidental, cautionary, editors } = spelling;
  return [
    ...(accidental === undefined ? [] : [xml('accid', { accid: ACCIDENTALS[accidental] })]),
    ...(cautionary === undefined
      ? []
      : [xml('accid', { accid: ACCIDENTALS[cautionary], func: 'caution', enclose: 'paren' })]),
    ...(editors === undefined ? [] : [xml('accid', { accid: ACCIDENTALS[editors], func: 'edit', enclose: 'brack' })]),
    ...marks.flatMap(({ form }) =>
      form.accidental === undefined
        ? []
        : [
            xml('accid', {
              accid: ACCIDENTALS[form.accidental],
              place: form.parameters.includes('below') ? 'below' : 'above',
              ...(form.editors ? { func: 'edit', enclose: 'brack' } : {}),
            }),
          ],
    ),
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
  const values = decompose(multiply(duration, time(ratio.actual, ratio.normal))) ?? [];
  const elements = values.map((value, i) => xml(name, { ...(i === 0 ? attributes : {}), ...durationOf(value) }));
  return odd === 1 || elements.length === 0 ? elements : [hiddenTuplet(ratio, elements)];
}

const oddPart = (d: number): number => (d % 2 === 0 ? oddPart(d / 2) : d);
const powerBelow = (n: number): number => (n <= 1 ? 1 : 2 * powerBelow(Math.floor(n / 2)));

/** Notes in a proportion of which the source draws no sign. */
export const hiddenTuplet = ({ actual, normal }: Ratio, children: readonly XmlElement[]): XmlElement =>
  xml('tuplet', { num: actual, numbase: normal, 'num.visible': 'false', 'bracket.visible': 'false' }, children);

export const tupletElement = ({ n, m, drawn }: Tuplet, children: readonly XmlElement[]): XmlElement =>
  drawn ? xml('tuplet', { num: n, numbase: m }, children) : hiddenTuplet({ actual: n, normal: m }, children);
