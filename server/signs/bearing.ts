/** Which signs a note bears. */
import { shapeByName } from '../../grammar/vocabulary/shapes';
import type { PerformedEvent, WrittenEvent } from '../score/performance';
import type { AppliedMark } from '../score/score';
import type { TypedSign } from './rows';

/** A sign as typed, with its mark. */
export interface BorneSign extends TypedSign {
  readonly mark: AppliedMark;
  /** Of the notes tied together the one that bears it. */
  readonly written: WrittenEvent;
  /** It is drawn for all notes of the chord. */
  readonly forChord: boolean;
}

/** The signs of a written note; what stands at a lone `=` belongs to the highest note that it repeats. */
function signsAt(written: WrittenEvent): BorneSign[] {
  const { placed, member } = written;
  if (member === undefined) return [];
  const { marks, members } = placed.event;
  if (member.marks.length === 0 && marks.length === 0) return [];
  const highest = members.every((other) => other.midi <= member.midi);
  return [...member.marks, ...(highest ? marks : [])]
    .filter(({ form, shapes }) => form.type === 'sign' && shapes.length > 0)
    .map((mark) => ({
      name: mark.form.name,
      shapes: mark.shapes,
      parameters: mark.form.parameters,
      mark,
      written,
      forChord: mark.shapes.some((shape) => shapeByName(shape)?.drawnFor === 'chord'),
    }));
}

const none: readonly BorneSign[] = [];

/** All signs of a performed note, those of the notes tied to it too. */
export function signsOf(event: PerformedEvent): readonly BorneSign[] {
  if (event.kind !== 'note') return none;
  const bearing = event.from.filter(bears);
  return bearing.length === 0 ? none : bearing.flatMap(signsAt);
}

const bears = ({ placed, member }: WrittenEvent): boolean =>
  member !== undefined && (member.marks.length > 0 || placed.event.marks.length > 0);
