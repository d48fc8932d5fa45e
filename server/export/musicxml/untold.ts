/** What stands at an event and MusicXML cannot say, or says in a way that few programs show. */
import type { FindingCode } from '../../../grammar/findings/catalogue';
import type { SpanWord } from '../../../grammar/tree';
import type { AppliedMark, NoteMember, Score, Source, VoiceEvent } from '../../score/score';
import { marksOfEvent } from '../../score/walk';
import type { Chunk } from '../chunks';
import { HINTS } from '../hints';
import type { Losses } from '../losses';
import { notationsOf } from './notations';
import { coversChord } from './signs';
import { LEVELS } from './tables';
import type { Written } from './written';

/** A question asked of each event: the code and slots of what is lost, with its place where it is not the event's own. */
interface Untold {
  readonly code: FindingCode;
  readonly slots?: Readonly<Record<string, string | number>>;
  readonly source?: Source;
}

/** Tells all that is lost at an event, once, at its first chunk. */
export function tellEvent(chunk: Chunk, written: Written, score: Score, losses: Losses): void {
  if (!chunk.first) return;
  const { event, system, measure } = chunk;
  for (const { code, slots, source } of untoldAt(chunk, written, score)) {
    losses.add(code, { voice: event.laneName, ...slots }, { source: source ?? event.source, system, bar: measure.bar });
  }
}

function untoldAt(chunk: Chunk, written: Written, score: Score): readonly Untold[] {
  const { event } = chunk;
  const marks = [...marksOfEvent(event), ...(written.passages.marks.get(chunk) ?? [])];
  return [
    ...ofTime(chunk),
    ...ofAnnotations(chunk, written),
    ...ofSpans(event),
    ...ofPlace(event),
    ...event.members.flatMap((member) => ofMember(member)),
    ...marks.filter((mark) => !written.elsewhere.has(mark)).flatMap((mark) => ofMark(mark, event, score)),
  ];
}

const when = (told: boolean, code: FindingCode, slots?: Untold['slots'], source?: Source): readonly Untold[] =>
  told ? [{ code, ...(slots && { slots }), ...(source && { source }) }] : [];

function ofTime({ event, last, value }: Chunk): readonly Untold[] {
  const drawn = event.kind === 'note' || (event.kind === 'rest' && !event.wholeBar);
  return [
    ...when(drawn && !last, 'musicxml-through'),
    ...when(drawn && value === undefined, 'musicxml-value'),
    ...when(event.kind === 'lost', 'musicxml-lacuna'),
    ...when(event.custos !== undefined, 'musicxml-custos'),
    ...when(event.value?.doubtful === true, 'musicxml-doubtful'),
    ...when(event.kind === 'gap' && event.figures?.what === 'figures', 'musicxml-figures'),
  ];
}

/** All that is said of the event, its notes, their signs and the passages that begin with it. */
function ofAnnotations(chunk: Chunk, { passages }: Written): readonly Untold[] {
  const { event } = chunk;
  const annotations = [
    ...event.annotations,
    ...event.members.flatMap((member) => member.annotations),
    ...[...marksOfEvent(event), ...(passages.marks.get(chunk) ?? [])].flatMap((mark) => mark.annotations),
    ...(passages.annotations.get(chunk) ?? []),
  ];
  return annotations.map(({ source }) => ({ code: 'musicxml-annotation', source }));
}

function ofSpans(event: VoiceEvent): readonly Untold[] {
  const words = event.spans.flatMap(({ head: { word } }) => (word === undefined ? [] : [word]));
  return [...new Set(words)].flatMap((word) => ofSpan(word));
}

function ofSpan(word: SpanWord): readonly Untold[] {
  if (HINTS.has(word)) return [{ code: 'musicxml-hint', slots: { hint: word } }];
  if (LEVELS[word] !== undefined) return [{ code: 'musicxml-span', slots: { passage: word } }];
  return when(word === 'lig', 'musicxml-ligature');
}

const ofPlace = (event: VoiceEvent): readonly Untold[] =>
  event.chosen.flatMap(({ labels, doubtful }) => [
    { code: 'musicxml-option' as const, slots: { labels: labels.join(', ') } },
    ...when(doubtful.length > 0, 'musicxml-doubtful'),
  ]);

const ofMember = ({ spelling, tie, source }: NoteMember): readonly Untold[] => [
  ...when(spelling.doubtful || tie?.doubtful === true, 'musicxml-doubtful', undefined, source),
  ...when(tie?.readings !== undefined, 'musicxml-readings', undefined, source),
];

/** Parameters that the export says. */
const SAID = new Set(['above', 'below', 'after', 'dot']);

function ofMark(mark: AppliedMark, event: VoiceEvent, score: Score): readonly Untold[] {
  const { form, source } = mark;
  const unsaid = form.parameters.filter((parameter) => !SAID.has(parameter));
  const bears = event.kind === 'note' || event.kind === 'rest';
  const isNotation = notationsOf(mark, event.voice, score.environment).length > 0;
  return [
    ...when(form.doubtful, 'musicxml-doubtful', undefined, source),
    ...when(form.editors && form.type !== 'accidental', 'musicxml-editors', undefined, source),
    ...when(form.readings !== undefined, 'musicxml-readings', undefined, source),
    ...when(form.type === 'weight', 'musicxml-weight', undefined, source),
    ...when(isNotation && !bears, 'musicxml-mark-gap', { mark: form.text }, source),
    ...when(form.type === 'sign' && unsaid.length > 0, 'musicxml-parameter', { sign: form.name }, source),
    ...when(form.linked && !coversChord(mark), 'musicxml-linked', undefined, source),
  ];
}
