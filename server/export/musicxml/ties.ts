/** Which notes are tied to which, among those that are exported. */
import { add, equal } from '../../../grammar/time';
import type { TieForm } from '../../../grammar/tree';
import type { NoteMember } from '../../score/score';
import { absolute, type Chunk } from '../chunks';
import { type XmlElement, xml } from '../xml';

/** The ties at a member of a chord. */
export interface MemberTies {
  /** The tie that ends here. */
  readonly stop: TieKind | undefined;
  /** The tie that begins here. */
  readonly start: TieKind | undefined;
  /** A tie that comes from a note which does not stand right before: from before the first ending, or not exported. */
  readonly entered: 'ending' | 'excerpt' | undefined;
  /** A tie begins in the source whose other note is not in the export. */
  readonly open: TieKind | undefined;
}

export type TieKind = 'plain' | 'editors' | 'doubtful';

export type Ties = ReadonlyMap<Chunk, readonly MemberTies[]>;

type Draft = { -readonly [K in keyof MemberTies]: MemberTies[K] };

export const NO_TIES: MemberTies = { stop: undefined, start: undefined, entered: undefined, open: undefined };

const kindOf = (tie: TieForm): TieKind => (tie.editors ? 'editors' : tie.doubtful ? 'doubtful' : 'plain');

/** Whether two members stand on the same line or space and sound the same. */
const samePitch = (a: NoteMember, b: NoteMember): boolean =>
  a.spelling.letter === b.spelling.letter && a.octave === b.octave && a.alteration === b.alteration;

/** The ties of one voice, whose chunks come in the order of the source. */
export function tiesOf(chunks: readonly Chunk[]): Ties {
  const notes = chunks.filter((chunk) => chunk.event.kind === 'note');
  const drafts = new Map<Chunk, Draft[]>(
    notes.map((chunk) => [chunk, chunk.event.members.map(() => ({ ...NO_TIES }))]),
  );
  for (const [i, chunk] of notes.entries()) {
    for (const [m, member] of chunk.event.members.entries()) {
      const draft = drafts.get(chunk)?.[m];
      if (draft === undefined) continue;
      const kind = chunk.last ? (member.tie === undefined ? undefined : kindOf(member.tie)) : 'plain';
      if (kind === undefined) continue;
      const partner = chunk.last ? partnerOf(notes, i, member, drafts) : restOf(chunk, m, notes[i + 1], drafts);
      if (partner === undefined) draft.open = kind;
      else {
        draft.start = kind;
        partner.stop = kind;
      }
    }
  }
  for (const chunk of notes) enter(chunk, drafts.get(chunk) ?? []);
  return drafts;
}

/** The same member in the next chunk of one event. */
const restOf = (
  chunk: Chunk,
  member: number,
  next: Chunk | undefined,
  drafts: ReadonlyMap<Chunk, readonly Draft[]>,
): Draft | undefined =>
  next !== undefined && next.event === chunk.event && !next.first ? drafts.get(next)?.[member] : undefined;

/** What is tied from a note that no exported one before it is tied to. */
function enter(chunk: Chunk, drafts: readonly Draft[]): void {
  if (!chunk.first || chunk.event.small !== undefined) return;
  for (const [m, draft] of drafts.entries()) {
    if (chunk.event.members[m]?.tiedFrom !== true || draft.stop !== undefined) continue;
    draft.entered = (chunk.measure.bar.ending ?? 1) > 1 ? 'ending' : 'excerpt';
  }
}

/** The note of that pitch to which a tie leads: it begins where the tied one ends. */
function partnerOf(
  notes: readonly Chunk[],
  from: number,
  member: NoteMember,
  drafts: ReadonlyMap<Chunk, readonly Draft[]>,
): Draft | undefined {
  const tied = notes[from];
  if (tied === undefined) return undefined;
  const end = add(absolute(tied), tied.duration);
  for (const chunk of notes.slice(from + 1)) {
    if (!chunk.first || chunk.event.small !== undefined) continue;
    if (chunk.measure.piece !== tied.measure.piece || !equal(absolute(chunk), end)) return undefined;
    const m = chunk.event.members.findIndex((other) => other.tiedFrom && samePitch(other, member));
    return drafts.get(chunk)?.[m];
  }
  return undefined;
}

// ─── elements ────────────────────────────────────────────────────────────────────────────────────────────────────

/** What sounds: the note of a second ending goes on sounding from before the first. */
export const tieElements = ({ stop, start, entered }: MemberTies): readonly XmlElement[] => [
  ...(stop !== undefined || entered === 'ending' ? [xml('tie', { type: 'stop' })] : []),
  ...(start === undefined ? [] : [xml('tie', { type: 'start' })]),
];

const LINES: Readonly<Record<TieKind, string | undefined>> = {
  plain: undefined,
  editors: 'dashed',
  doubtful: 'dotted',
};

const tied = (type: 'start' | 'stop', kind: TieKind): XmlElement => xml('tied', { type, 'line-type': LINES[kind] });

/** A tie drawn at one note alone is a start and a stop at that note (MusicXML 4.0, `tied`: "ties into or out of repeated sections"). */
const lone = (kind: TieKind): readonly XmlElement[] => [tied('start', kind), tied('stop', kind)];

/** What is drawn. */
export const tiedElements = ({ stop, start, entered, open }: MemberTies): readonly XmlElement[] => [
  ...(entered === undefined ? [] : lone('plain')),
  ...(stop === undefined ? [] : [tied('stop', stop)]),
  ...(start === undefined ? [] : [tied('start', start)]),
  ...(open === undefined ? [] : lone(open)),
];
