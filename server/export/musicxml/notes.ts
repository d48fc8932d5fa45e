/** Notes, chords, rests and the time of gaps. */
import { isZero } from '../../../grammar/time';
import type { AppliedMark, NoteMember, Score } from '../../score/score';
import { marksAtNote, marksOfEvent } from '../../score/walk';
import type { Chunk } from '../chunks';
import { hasStem, inDivisions } from '../values';
import { leaf, type XmlElement, xml } from '../xml';
import type { Beams } from './beams';
import type { SlurEnds } from './curves';
import { type Editorial, editorialElements, ofEvent } from './editorial';
import type { Figures } from './figures';
import { graceElement } from './grace';
import type { Lyrics } from './lyrics';
import {
  accidentalElement,
  editorsAccidental,
  type Notation,
  notationsElements,
  notationsOf,
  plainNotation,
} from './notations';
import type { Passages } from './passages';
import { coversChord } from './signs';
import { type MemberTies, NO_TIES, type Ties, tiedElements, tieElements } from './ties';
import { type TupletEnds, timeModification } from './tuplets';

/** All that the notes of one voice need beside their chunks. */
export interface VoiceLinks {
  readonly voice: number;
  readonly chunks: readonly Chunk[];
  readonly ties: Ties;
  readonly beams: Beams;
  readonly tuplets: TupletEnds;
  readonly slurs: SlurEnds;
  readonly lyrics: Lyrics;
  readonly figures: Figures;
  readonly passages: Passages;
  /** Marks drawn at another lane. */
  readonly elsewhere: ReadonlySet<AppliedMark>;
}

/** The elements of one chunk: a note for each member of a chord, a rest, or a `forward`. */
export function chunkElements(chunk: Chunk, links: VoiceLinks, score: Score, divisions: bigint): readonly XmlElement[] {
  const { event } = chunk;
  if (event.kind === 'note') {
    return event.members.map((member, m) => noteElement({ chunk, member, m, links, score, divisions }));
  }
  if (event.kind === 'rest') return [noteElement({ chunk, member: undefined, m: 0, links, score, divisions })];
  return forwardElement(chunk, links, score, divisions);
}

/** Time in which nothing is drawn. */
function forwardElement(chunk: Chunk, links: VoiceLinks, score: Score, divisions: bigint): readonly XmlElement[] {
  const duration = inDivisions(chunk.duration, divisions);
  if (duration === '0') return [];
  return [
    xml('forward', {}, [
      leaf('duration', duration),
      ...editorialElements(editorialAt(chunk, undefined, links, score)),
      leaf('voice', links.voice + 1),
      leaf('staff', chunk.event.stave + 1),
    ]),
  ];
}

interface Head {
  readonly chunk: Chunk;
  /** Undefined of a rest. */
  readonly member: NoteMember | undefined;
  readonly m: number;
  readonly links: VoiceLinks;
  readonly score: Score;
  readonly divisions: bigint;
}

/** What is said of an event stands at the first of its chunks, its level at each. */
function editorialAt(chunk: Chunk, member: NoteMember | undefined, links: VoiceLinks, score: Score): Editorial {
  const editorial = ofEvent(chunk.event, member, links.passages.annotations.get(chunk) ?? [], score.environment);
  return chunk.first ? editorial : { ...editorial, footnote: undefined };
}

function noteElement(head: Head): XmlElement {
  const { chunk, member, m, links, score, divisions } = head;
  const { event } = chunk;
  const ties = links.ties.get(chunk)?.[m] ?? NO_TIES;
  const lead = m === 0;
  // What takes no time can only be a small note: MusicXML has no duration of zero.
  const small = event.small !== undefined || isZero(chunk.duration);
  return xml('note', {}, [
    small ? graceElement(chunk, links.chunks) : undefined,
    lead ? undefined : xml('chord'),
    member === undefined ? xml('rest', { measure: event.wholeBar ? 'yes' : undefined }) : pitchElement(member),
    small ? undefined : leaf('duration', inDivisions(chunk.duration, divisions)),
    ...tieElements(ties),
    ...editorialElements(editorialAt(chunk, member, links, score)),
    leaf('voice', links.voice + 1),
    chunk.value === undefined ? undefined : leaf('type', chunk.value.type),
    ...Array.from({ length: chunk.value?.dots ?? 0 }, () => xml('dot')),
    member === undefined || !chunk.first ? undefined : accidentalElement(member.spelling),
    small ? undefined : timeModification(chunk),
    event.stems !== undefined && member !== undefined && hasStem(chunk.value) ? leaf('stem', event.stems) : undefined,
    member === undefined ? undefined : notehead(chunk),
    leaf('staff', (member?.stave ?? event.stave) + 1),
    ...(lead ? (links.beams.get(chunk) ?? []) : []),
    ...notationsElements(notationsAt(head, ties)),
    ...(lead ? (links.lyrics.get(chunk) ?? []) : []),
  ]);
}

const pitchElement = ({ spelling, octave, alteration }: NoteMember): XmlElement =>
  xml('pitch', {}, [
    leaf('step', spelling.letter.toUpperCase()),
    alteration === 0 ? undefined : leaf('alter', alteration),
    leaf('octave', octave),
  ]);

/** Coloration: a head filled or void against its value. */
function notehead(chunk: Chunk): XmlElement | undefined {
  const colour = chunk.event.spans.findLast(({ head: { word } }) => word === 'black' || word === 'void')?.head.word;
  return colour === undefined ? undefined : xml('notehead', { filled: colour === 'black' ? 'yes' : 'no' }, 'normal');
}

function notationsAt(head: Head, ties: MemberTies): readonly Notation[] {
  const { chunk, member, m, links } = head;
  const slurs = (links.slurs.get(chunk) ?? []).filter((end) => end.member === m).map(({ element }) => element);
  const tuplets = m === 0 ? (links.tuplets.get(chunk) ?? []) : [];
  const { accidental: drawn, editors } = member?.spelling ?? {};
  const second = chunk.first && drawn !== undefined && editors !== undefined ? [editorsAccidental(editors)] : [];
  return [...[...tiedElements(ties), ...slurs, ...tuplets].map(plainNotation), ...second, ...markNotations(head)];
}

/** Marks stand at the first of the notes into which an event was cut. */
function markNotations({ chunk, member, m, links, score }: Head): readonly Notation[] {
  if (!chunk.first) return [];
  const here = marksAt(chunk, member).filter((mark) => !links.elsewhere.has(mark));
  const ofPassages = m === 0 ? (links.passages.marks.get(chunk) ?? []) : [];
  return [...here, ...ofPassages].flatMap((mark) => notationsOf(mark, links.voice, score.environment));
}

/** A member's own marks, those of the whole event at its first member, and the signs that cover its chord. */
function marksAt({ event }: Chunk, member: NoteMember | undefined): readonly AppliedMark[] {
  const covering = marksOfEvent(event).find(coversChord);
  return [
    ...marksAtNote(event, member).filter((mark) => !coversChord(mark)),
    ...(covering === undefined ? [] : [covering]),
  ];
}
