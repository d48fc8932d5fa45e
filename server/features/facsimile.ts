/** The picture of a leaf, and where its systems lie on it. */
import type { TextEdit } from 'vscode-languageserver-types';
import { stretchIn } from '../../grammar/place';
import { clauseOf } from '../../grammar/statements/read';
import { imagesIn, regionOf } from '../export/mei/facsimile';
import type { ScoreSystem } from '../score/score';
import type { Project } from '../workspace/project';
import { saidIn } from './nodes';
import { rangeOfOffsets } from './place';
import type { Facsimile } from './protocol';

/** Undefined where the leaf has no picture. */
export function facsimileOf({ tree }: Project, label: string, systems: readonly ScoreSystem[]): Facsimile | undefined {
  const image = imagesIn(tree).get(label);
  return image === undefined ? undefined : { image, regions: systems.map((system) => regionOf(tree, system) ?? null) };
}

/** What writes a system's place on the picture (left, top, width, height) into its head. */
export function regionEdit(
  { tree }: Project,
  { block: index }: ScoreSystem,
  region: readonly number[],
): TextEdit | undefined {
  const block = tree.blocks[index];
  const head = block?.statements[0];
  if (block === undefined || head === undefined) return undefined;
  const { statement } = head.tree;
  const clause = `at ${region.map((number) => Math.max(0, Math.round(number))).join(',')}`;
  const written = clauseOf(statement, 'at');
  const { start, end } = stretchIn(block, head, written ?? saidIn(statement));
  if (written !== undefined) return { range: rangeOfOffsets(tree, start, end), newText: clause };
  return { range: rangeOfOffsets(tree, end, end), newText: ` ${clause}` };
}
