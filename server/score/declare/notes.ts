/** People and annotations. */
import { clauseOf } from '../../../grammar/statements/read';
import type { Argument } from '../../../grammar/tree';
import type { Declared, NoteDeclaration } from '../environment';
import { type Declarations, nameIn, stringIn, wordIn } from './declarations';

export function editorsOf(declarations: Declarations): Map<string, Declared & { name: string }> {
  const editors = new Map<string, Declared & { name: string }>();
  for (const found of declarations.of('editor')) {
    const name = nameIn(found.statement.args);
    if (name === undefined || !declarations.give('editor', found, name)) continue;
    editors.set(name.text, { ...found.declared, name: stringIn(found.statement.args) ?? '' });
  }
  return editors;
}

export function notesOf(
  declarations: Declarations,
  editors: ReadonlyMap<string, unknown>,
): Map<string, NoteDeclaration> {
  const notes = new Map<string, NoteDeclaration>();
  for (const found of declarations.of('note')) {
    const { statement, declared } = found;
    const name = nameIn(statement.args);
    if (name === undefined || !declarations.give('note', found, name)) continue;
    const args = (clause: string): readonly Argument[] => clauseOf(statement, clause)?.args ?? [];
    const by = nameIn(args('by'));
    if (by !== undefined && !editors.has(by.text)) {
      declarations.unknown(found, by, 'unknown-editor', [...editors.keys()]);
    }
    notes.set(name.text, {
      ...declared,
      text: stringIn(args('text')),
      about: wordIn(args('kind')),
      by: by?.text,
      certainty: wordIn(args('certainty')),
      evidence: stringIn(args('evidence')),
    });
  }
  return notes;
}
