/** Pictures of leaves, and where systems lie on them. */
import { describe, expect, it } from 'vitest';
import { edited } from '../../server/document/edits';
import { facsimileOf, regionEdit } from '../../server/features/facsimile';
import { systemOn } from '../../server/features/pages';
import { offsetOfPosition } from '../../server/features/place';
import { noFiles } from '../../server/workspace/host';
import { projectOf } from '../../server/workspace/project';
import { HEAD } from '../helpers/music';

const LEAF = `${HEAD}page "3v" image "scans/3v.jpg"
system upper G2 lower F4 meter C // the first of the leaf
  dessus | 1 c5 |
system upper C1 at 120,340,1800,410
  dessus | 1 d5 |
page "4r"
system
  dessus | 1 e5 |||
`;

/** The file after a system's place was dragged out. */
function dragged(page: number, system: number, region: readonly number[]): string {
  const project = projectOf(noFiles, 'leaf.bent', LEAF);
  const found = systemOn(project, 'written', page, system);
  const edit = found && regionEdit(project, found, region);
  if (edit === undefined) throw new Error('no such system');
  const offset = offsetOfPosition(project.tree, edit.range.start);
  const length = offsetOfPosition(project.tree, edit.range.end) - offset;
  return edited(LEAF, [{ offset, length, text: edit.newText }]);
}

describe('the picture of a leaf', () => {
  it('is the one that its page names, with the places of its systems', () => {
    const project = projectOf(noFiles, 'leaf.bent', LEAF);
    const systems = [0, 1].flatMap((index) => systemOn(project, 'written', 0, index) ?? []);
    expect(facsimileOf(project, '3v', systems)).toEqual({
      image: 'scans/3v.jpg',
      regions: [null, [120, 340, 1800, 410]],
    });
    expect(facsimileOf(project, '4r', [])).toBeUndefined();
  });
});

describe("a system's place that was dragged out", () => {
  it('is written at the end of its head, before a comment', () => {
    expect(dragged(0, 0, [10.4, -3, 1799.6, 400])).toBe(LEAF.replace('meter C //', 'meter C at 10,0,1800,400 //'));
  });
  it('takes the place of the one that stood there', () => {
    expect(dragged(0, 1, [1, 2, 3, 4])).toBe(LEAF.replace('at 120,340,1800,410', 'at 1,2,3,4'));
  });
  it('is written on another leaf as well, where the head is but its keyword', () => {
    expect(dragged(1, 0, [1, 2, 3, 4])).toBe(LEAF.replace('system\n', 'system at 1,2,3,4\n'));
  });
});
