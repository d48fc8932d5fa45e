/** The next system with all its lanes. */
import { describe, expect, it } from 'vitest';
import { nextSystem } from '../../server/features/nextSystem';
import { noFiles } from '../../server/workspace/host';
import { projectOf } from '../../server/workspace/project';
import { HEAD } from '../helpers/music';

/** The file with the system after the place `^`, its lanes left empty. */
function following(marked: string): string {
  const text = marked.replace('^', '');
  const { position, snippet } = nextSystem(projectOf(noFiles, 'air.bent', text), marked.indexOf('^'));
  const lines = text.split('\n');
  const made = snippet
    .replace(/\$\{\d+(?::([^}]*))?\}/g, '$1')
    .split('\n')
    .slice(0, -1);
  expect(position.character).toBe(0);
  return [...lines.slice(0, position.line), ...made, ...lines.slice(position.line)].join('\n');
}

describe('the next system', () => {
  it('stands below the one at the caret, with its voices and figures, barlines under one another', () => {
    const system =
      'system upper G2 lower F4 meter C\n  dessus | 1 c5^ |\n  dessus L | 1 d5 |\n  basse  | 1 c3 |\n    fig | _ |\n';
    expect(following(`${HEAD}${system}\npage "2r"\n`)).toBe(
      `${HEAD}${system.replace('^', '')}system\n  dessus | \n  basse  | \n    fig  | \n\npage "2r"\n`,
    );
  });
  it('leaves a voice on the stave where it was, its stems the way they went', () => {
    const goesOn = (lane: string): string =>
      following(`${HEAD}system upper G2 lower F4 meter C\n  dessus | ${lane}^ |\n`).split('\n').at(-2) ?? '';
    expect(goesOn('(down) (stems down) 2 c4 d')).toBe('  dessus | (down) (stems down) ');
    expect(goesOn('(down) 2 c4 (home) d5')).toBe('  dessus | ');
    expect(goesOn('2 c5 (stems down) d')).toBe('  dessus | (stems down) ');
  });
  it('has one lane of words under a voice, whatever a witness has there', () => {
    const system =
      'system upper G2 lower F4 meter C\n  dessus | 1 c5^ |\n    text | ah |\n  dessus L | 1 d5 |\n    text | oh |\n  basse | 1 c3 |\n    fig | _ |\n';
    expect(following(`${HEAD}${system}`)).toBe(
      `${HEAD}${system.replace('^', '')}system\n  dessus | \n    text | \n  basse  | \n    fig  | \n`,
    );
  });

  it('stands before the comment that leads the one after it', () => {
    const [first, second] = [
      'system upper G2 lower F4 meter C\n  dessus | 1 c5^ |\n',
      '\n// the second system\nsystem\n  dessus | 1 d5 |\n',
    ];
    expect(following(`${HEAD}${first}${second}`)).toBe(
      `${HEAD}${first.replace('^', '')}system\n  dessus | \n${second}`,
    );
  });

  it('after a free system is free as well', () => {
    expect(following(`${HEAD}system free upper G2 lower F4\n  dessus | c5^ d e |\n`)).toContain(
      '\nsystem free\n  dessus | \n',
    );
  });

  it('has all voices where no system stands yet', () => {
    expect(following(`${HEAD}^`)).toBe(`${HEAD.trimEnd()}\n\nsystem\n  dessus | \n  taille | \n  basse  | \n`);
  });
});
