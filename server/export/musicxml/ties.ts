/** Which notes are tied to which, among those that are exported. */
import type { TieForm } from '../../../grammar/tree';
import type { NoteMember } from '../../score/score';
import type { Chunk } from './chunks';

/** The ties at a member of a chord. */
export interface MemberTies {
  /** The tie that ends here. */
  readonly stop: TieKind | undefined;
  /** The tie that begins here. */
  readonly start: TieKind | undefined;
  /** A tie begins in the source whose other note is not in the export. */
  readonly open: TieKind | undefined;
}

export type TieKind = 'plain' | 'editors' | 'doubtful';

export type Ties = ReadonlyMap<Chunk, readonly MemberTies[]>;

interface Draft {
  stop: TieKind | undefined;
  start: TieKind | undefined;
  open: TieKind | undefined;
}

const kindOf = (tie: TieForm): TieKind => (tie.editors ? 'editors' : tie.doubtful ? 'doubtful' : 'plain');

/** Whether two members stand on the same line or space and sound the same. */
const samePitch = (a: NoteMember, b: NoteMember): boolean =>
  a.spelling.letter === b.spelling.letter && a.octave === b.octave && a.alteration === b.alteration;

/** The ties of one voice, whose chunks come in the order of the source. */
export function tiesOf(chunks: readonly Chunk[]): Ties {
  const notes = chunks.filter((chunk) => chunk.event.kind === 'note');
  const drafts = new Map<Chunk, Draft[]>(
    notes.map((chunk) => [
      chunk,
      chunk.event.members.map(() => ({ stop: undefined, start: undefined, open: undefined })),
    ]),
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

/** The next note of that pitch, if a tie leads to it. */
function partnerOf(
  notes: readonly Chunk[],
  from: number,
  member: NoteMember,
  drafts: ReadonlyMap<Chunk, readonly Draft[]>,
): Draft | undefined {
  for (let i = from + 1; i < notes.length; i++) {
    const chunk = notes[i];
    if (chunk === undefined || !chunk.first) continue;
    const m = chunk.event.members.findIndex((other) => samePitch(other, member));
    const other = chunk.event.members[m];
    if (other !== undefined) return other.tiedFrom ? drafts.get(chunk)?.[m] : undefined;
  }
  return undefined;
}
