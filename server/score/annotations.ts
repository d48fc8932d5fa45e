/** The annotations on an event or a barline, with those on all that belongs to it. */
import type { Annotation } from '../../grammar/tree';
import type { Environment } from './environment';
import type { AppliedAnnotation, AppliedMark, DrawnBarline, VoiceEvent } from './score';

const ofMarks = (marks: readonly AppliedMark[]): AppliedAnnotation[] =>
  marks.flatMap(({ annotations, accidentals }) => [...annotations, ...ofMarks(accidentals)]);

export const annotationsOfBarline = ({ annotations, marks }: DrawnBarline): AppliedAnnotation[] => [
  ...annotations,
  ...ofMarks(marks),
];

/** Of its notes, its signs, and the spans, tuplets and places around it. */
export const annotationsOf = ({
  annotations,
  marks,
  members,
  spans,
  chosen,
  tuplets,
}: VoiceEvent): AppliedAnnotation[] => [
  ...annotations,
  ...ofMarks(marks),
  ...members.flatMap((member) => [...member.annotations, ...ofMarks(member.marks)]),
  ...[...spans, ...chosen, ...tuplets].flatMap((around) => [...around.annotations, ...ofMarks(around.marks)]),
];

/** What an annotation says: its own words, or those of the note that it cites. */
export const annotationText = ({ text, ref }: Annotation, { notes }: Pick<Environment, 'notes'>): string =>
  text ?? notes.get(ref ?? '')?.text ?? ref ?? '';
