/** Which notes are tied to which, among those that are exported. */
import { add, equal } from '../../grammar/time';
import type { TieForm } from '../../grammar/tree';
import { isSamePitch } from '../score/heights';
import type { NoteMember } from '../score/score';
import { absolute, type Chunk } from './chunks';

/** A note of a chunk. */
export interface Head {
  readonly chunk: Chunk;
  /** Index in the event's members. */
  readonly member: number;
}

export interface TieLink {
  readonly from: Head;
  /** Undefined where the tie leads to no exported note that stands right after. */
  readonly to: Head | undefined;
  /** Undefined between the parts of one event. */
  readonly form: TieForm | undefined;
}

/** The ties that begin in one voice, whose chunks come in the order of the source. */
export function tieLinks(chunks: readonly Chunk[]): readonly TieLink[] {
  const notes = chunks.filter((chunk) => chunk.event.kind === 'note');
  return notes.flatMap((chunk, i) =>
    chunk.event.members.flatMap((note, member): TieLink[] => {
      const from = { chunk, member };
      if (!chunk.last) return [{ from, to: restOf(from, notes[i + 1]), form: undefined }];
      return note.tie === undefined ? [] : [{ from, to: partnerOf(notes, i, note), form: note.tie }];
    }),
  );
}

/** The same member in the next chunk of one event. */
const restOf = ({ chunk, member }: Head, next: Chunk | undefined): Head | undefined =>
  next !== undefined && next.event === chunk.event && !next.first ? { chunk: next, member } : undefined;

/** The note of that pitch to which a tie leads: it begins where the tied one ends. */
function partnerOf(notes: readonly Chunk[], from: number, note: NoteMember): Head | undefined {
  const tied = notes[from];
  if (tied === undefined) return undefined;
  const end = add(absolute(tied), tied.duration);
  for (let i = from + 1; i < notes.length; i++) {
    const chunk = notes[i];
    if (chunk === undefined || !chunk.first || chunk.event.small !== undefined) continue;
    if (chunk.measure.piece !== tied.measure.piece || !equal(absolute(chunk), end)) return undefined;
    const member = chunk.event.members.findIndex((other) => other.tiedFrom && isSamePitch(other, note));
    return member < 0 ? undefined : { chunk, member };
  }
  return undefined;
}
