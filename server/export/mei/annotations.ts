/** Annotations: each where it is said, and whole in the head of the document where it is declared. */
import type { Environment, NoteDeclaration } from '../../score/environment';
import type { AppliedAnnotation } from '../../score/score';
import { leaf, type XmlElement, xml } from '../xml';
import { declaredId } from './ids';

/** An annotation that speaks of the elements with these ids. */
export function annotationElement(
  { annotation: { text, ref = '' } }: AppliedAnnotation,
  id: string,
  about: readonly string[],
  environment: Environment,
): XmlElement {
  const note = environment.notes.get(ref);
  return xml(
    'annot',
    {
      'xml:id': id,
      plist: about.map((one) => `#${one}`).join(' '),
      corresp: note && `#${declaredId('note', ref)}`,
      resp: respOf(note, environment),
      type: note?.about,
    },
    text ?? note?.text ?? ref,
  );
}

const respOf = (note: NoteDeclaration | undefined, { editors }: Environment): string | undefined =>
  note?.by !== undefined && editors.has(note.by) ? `#${declaredId('editor', note.by)}` : undefined;

/** All that a `note` statement says: its text, how sure it is, on what it rests. */
export const declaredAnnotation = (name: string, note: NoteDeclaration, environment: Environment): XmlElement =>
  xml('annot', { 'xml:id': declaredId('note', name), n: name, resp: respOf(note, environment), type: note.about }, [
    note.text === undefined ? undefined : leaf('p', note.text),
    note.certainty === undefined ? undefined : xml('p', { type: 'certainty' }, note.certainty),
    note.evidence === undefined ? undefined : xml('p', { type: 'evidence' }, note.evidence),
  ]);
