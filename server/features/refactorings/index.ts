/** All refactorings, in the order in which they are offered. */
import type { CodeAction, Range } from 'vscode-languageserver-types';
import type { Project } from '../../workspace/project';
import { hereAt, isInside, pathTo } from '../nodes';
import { offsetOfPosition, rangeOfOffsets } from '../place';
import { divideChord } from './divideChord';
import { makeEditors } from './editors';
import { fullNote } from './fullNote';
import { namePlace } from './namePlace';
import type { Offer } from './refactoring';
import { restateHead } from './restateHead';
import { twoWitnesses } from './twoWitnesses';

const offers: readonly Offer[] = [twoWitnesses, makeEditors, namePlace, fullNote, divideChord, restateHead];

/** What can be made of what stands in a range. */
export function refactorings(project: Project, range: Range): CodeAction[] {
  const { tree, file } = project;
  const [start, end] = [offsetOfPosition(tree, range.start), offsetOfPosition(tree, range.end)];
  const here = hereAt(tree, start);
  if (here === undefined || !isInside(here, start)) return [];
  const asked = { project, here, path: pathTo(here), start, end };
  return offers.flatMap((offer) => {
    const made = offer(asked);
    if (made === undefined) return [];
    const edits = made.changes.map(({ offset, length, text }) => ({
      range: rangeOfOffsets(tree, offset, offset + length),
      newText: text,
    }));
    return [{ title: made.title, kind: made.kind, edit: { changes: { [file]: edits } } }];
  });
}
