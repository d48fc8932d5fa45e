/** Open files and those that they include: what a change of one reaches in the others. */
import { beforeEach, describe, expect, test } from 'vitest';
import { Workspace } from '../../server/workspace/workspace';
import { memoryFiles } from '../helpers/memoryFiles';

const HOUSE = `bentside 1
title "Sources of the house"
source K  "Thornmere Keyboard Book"
table thornmere
  zz "quaver" : on beat, (+1 0) repeated
`;

const score = (title: string): string => `bentside 1
title "${title}"
include "house.bent"
signs thornmere
voice dessus lines 5
system  dessus G2  meter C
  dessus | 1 c5'quaver |
system
  dessus | 1 d5 |||
`;

let files: Record<string, string>;
let workspace: Workspace;

beforeEach(() => {
  files = { 'house.bent': HOUSE };
  workspace = new Workspace(memoryFiles(files));
  workspace.update('gay.bent', score('The Gay'));
  workspace.update('grave.bent', score('The Grave'));
});

const codesOf = (file: string): string[] =>
  workspace
    .project(file)
    ?.analysis.findings()
    .map(({ code }) => code) ?? [];

/** What the included file's change builds in the two that include it. */
function builtWhen(house: string): number {
  files['house.bent'] = house;
  workspace.changed('house.bent');
  const reached = workspace.including('house.bent');
  expect(reached).toEqual(['gay.bent', 'grave.bent']);
  for (const file of reached) workspace.refresh(file);
  return workspace.document('gay.bent').stats.built;
}

test('an included table gives its names to the signs of an open file', () => {
  expect(codesOf('gay.bent')).not.toContain('unknown-sign');
  expect(workspace.project('gay.bent')?.included.map(({ file }) => file)).toEqual(['house.bent']);
});

describe('a change in an included file', () => {
  test('builds nothing where what it brings stays the same', () => {
    expect(builtWhen(HOUSE.replace('Sources', 'Books').replace('Keyboard', 'Virginal'))).toBe(0);
    expect(workspace.project('gay.bent')?.environment.sources[0]?.description).toBe('Thornmere Virginal Book');
  });

  test('reaches the systems where it gives other names to signs', () => {
    expect(builtWhen(HOUSE.replace('quaver', 'quiver'))).toBe(2);
    expect(codesOf('gay.bent')).toContain('unknown-sign');
  });

  test('is told where the file is gone, and taken back when it comes again', () => {
    delete files['house.bent'];
    workspace.changed('house.bent');
    workspace.refresh('gay.bent');
    expect(codesOf('gay.bent')).toContain('include-missing');
    expect(workspace.including('house.bent')).toContain('gay.bent');
    expect(builtWhen(HOUSE)).toBe(0);
    expect(codesOf('gay.bent')).not.toContain('include-missing');
  });

  test('reaches who includes it also while that is still in the making, as when it comes late from far away', () => {
    const opening = new Workspace(memoryFiles({}));
    const work = opening.updating('gay.bent', score('The Gay'));
    const reached: string[] = [];
    while (work.next().done !== true) reached.push(...opening.including('house.bent'));
    expect(reached).toContain('gay.bent');
  });
});

test('what an editor has open goes before what the host has', () => {
  workspace.update('house.bent', HOUSE.replace('table thornmere', 'table elsewhere'));
  workspace.refresh('gay.bent');
  expect(codesOf('gay.bent')).toContain('unknown-table');
  workspace.close('house.bent');
  workspace.refresh('gay.bent');
  expect(codesOf('gay.bent')).not.toContain('unknown-table');
});

test('a closed file is reached by nothing', () => {
  workspace.close('gay.bent');
  expect(workspace.project('gay.bent')).toBeUndefined();
  expect(workspace.including('house.bent')).toEqual(['grave.bent']);
  expect(workspace.refresh('gay.bent')).toBeUndefined();
});

test('an update that is left off leaves the project as it was', () => {
  const before = workspace.project('gay.bent');
  const work = workspace.updating('gay.bent', score('Another'));
  work.next();
  work.return(undefined as never);
  expect(workspace.project('gay.bent')).toBe(before);
  expect(workspace.refresh('gay.bent')?.environment.title).toBe('Another');
});
