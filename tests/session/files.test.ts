/** Where an include leads to, on computers and in file systems that are none's. */
import { describe, expect, it } from 'vitest';
import { Files, folderOf, joined, noDisk } from '../../server/session/files';

const filesOf = (folder: string, open: string): Files => {
  const files = new Files(
    noDisk,
    () => [folderOf(open)],
    async () => undefined,
  );
  files.folders = [folder];
  return files;
};

describe('a path in a score', () => {
  it.each([
    ['file:///music/air.bent', 'shared/house.bent', 'file:///music/shared/house.bent'],
    ['vscode-vfs://github/music/air.bent', './house.bent', 'vscode-vfs://github/music/house.bent'],
    ['memory:/air.bent', 'shared/house.bent', 'memory:/shared/house.bent'],
    ['memory:/suite/air.bent', '../house.bent', 'memory:/house.bent'],
  ])('in %s, %s means %s', (from, path, meant) => {
    expect(joined(from, path)).toBe(meant);
  });

  it('means nothing in a text that has no place yet, nor above the root', () => {
    expect(joined('untitled:Untitled-1', 'house.bent')).toBeUndefined();
    expect(joined('memory:/air.bent', '../house.bent')).toBeUndefined();
  });

  it('leads to all that lies below the folder of the work, though that is a root', () => {
    const files = filesOf('memory:/', 'memory:/suite/air.bent');
    expect(files.resolve('memory:/suite/air.bent', '../shared/house.bent')).toBe('memory:/shared/house.bent');
  });

  it('leads nowhere else', () => {
    const files = filesOf('memory:/work/', 'memory:/work/air.bent');
    expect(files.resolve('memory:/work/air.bent', '../secret.bent')).toBeUndefined();
  });
});
