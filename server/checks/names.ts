/** Names that a file cites but nothing gives. Needs the tree, the declarations and the score's sections. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import { nearest } from '../../grammar/nearest';
import { firstOf } from '../../grammar/statements/read';
import { declaredNames } from '../score/environment';
import type { PlacedProblem } from '../score/score';
import type { Check, Checked } from './check';
import { type Use, type UseKind, usesIn } from './uses';

/** By kind: the finding for an unknown name. Editors, voices and labels of readings are told with the declarations. */
const codes: Partial<Record<UseKind, FindingCode>> = {
  label: 'unknown-label',
  note: 'unknown-note',
  manual: 'unknown-manual',
  place: 'unknown-place',
  section: 'unknown-section',
  voice: 'unknown-voice',
};

function knownNames({ tree, environment, score }: Checked): Partial<Record<UseKind, readonly string[]>> {
  const names = declaredNames(environment);
  const manuals = environment.statements.flatMap(({ statement }) =>
    statement.rows.flatMap((row) => (row.kind === 'manual' ? [firstOf(row.args, 'name')?.text ?? ''] : [])),
  );
  return {
    label: [...names.witnesses, ...names.layers, ...names.readings, 'sic', 'corr', 'written', 'main'],
    note: names.notes,
    manual: manuals,
    place: [...usesIn(tree, environment).places],
    section: score.pieces.flatMap((piece) => piece.sections.map((section) => section.name)),
    voice: names.voices,
  };
}

function problemOf(use: Use, code: FindingCode, known: readonly string[]): PlacedProblem {
  const meant = nearest(use.name, known);
  const fixes = meant === undefined ? [] : [{ title: `write ${meant}`, edits: [{ ...use.at, text: meant }] }];
  // A name inside a mark or a tie is marked as a whole; only a name of its own can be replaced.
  const own = use.at.len === use.name.length;
  return {
    problem: {
      code,
      pos: use.at.pos,
      len: use.at.len,
      slots: { name: use.name, known: known.join(', ') || 'none' },
      ...(own && fixes.length > 0 ? { fixes } : {}),
    },
    block: use.block,
    lane: use.lane,
    ...(use.statement === undefined ? {} : { statement: use.statement }),
  };
}

export const unknownNames: Check = (checked) => {
  const known = knownNames(checked);
  return usesIn(checked.tree, checked.environment).all.flatMap((use) => {
    const code = codes[use.kind];
    const names = known[use.kind] ?? [];
    if (code === undefined || names.includes(use.name)) return [];
    // The names in readings' `takes` and `at` are looked up with the declarations.
    if (use.kind === 'label' && use.statement !== undefined) return [];
    return [problemOf(use, code, names)];
  });
};
