/** A file in which nothing is to be heard yet. */
import type { FileTree } from '../../grammar/tree';
import { brought } from '../score/environment';
import { check, problemAt } from './check';

/** What is meant for other files has no music of its own: it declares what an `include` brings, and neither staves nor voices. */
function isForOthers(keywords: readonly string[]): boolean {
  const shares = keywords.some((keyword) => brought.has(keyword) || keyword === 'include');
  return shares && !keywords.includes('voice') && !keywords.includes('stave');
}

const hasProblems = ({ blocks }: FileTree): boolean =>
  blocks.some(
    ({ problems, statements, lanes }) =>
      problems.length > 0 || [...statements, ...lanes].some(({ tree }) => tree.problems.length > 0),
  );

export const noMusic = check('no-music', ['tree', 'environment'], ({ tree, environment }) => {
  if (tree.blocks.some(({ kind }) => kind === 'system')) return [];
  // Whoever is told of something else has begun.
  if (hasProblems(tree) || environment.problems.length > 0) return [];
  if (isForOthers([...environment.stated])) return [];
  return [problemAt('no-music', { pos: 0, len: 0, block: 0 }, {})];
});
