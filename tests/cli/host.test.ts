import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { nodeHost } from '../../server/cli/host';

const host = nodeHost();
let folder = '';
const at = (...parts: string[]): string => join(folder, ...parts);
const put = (name: string, content: string | Uint8Array = 'bentside 1\n'): string => {
  mkdirSync(join(at(name), '..'), { recursive: true });
  writeFileSync(at(name), content);
  return at(name);
};

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'bentside '));
});
afterEach(() => rmSync(folder, { recursive: true }));

describe('the files of a command', () => {
  it('are found by pattern, in order', async () => {
    for (const name of ['b.bent', 'a.bent', 'deep/c.bent', 'other.txt', 'node_modules/x/d.bent']) put(name);
    expect(await host.find(at('*.bent'))).toEqual([at('a.bent'), at('b.bent')]);
    expect(await host.find(at('**/*.bent'))).toEqual([at('a.bent'), at('b.bent'), at('deep/c.bent')]);
    expect(await host.find(at('*.bentx'))).toEqual([]);
  });

  it('may have signs of a pattern in their names', async () => {
    put('Courante [double] (2).bent');
    expect(await host.find(at('Courante [double] (2).bent'))).toEqual([at('Courante [double] (2).bent')]);
  });

  it('keep a byte order mark and show bytes that are no UTF-8', () => {
    expect(host.read(put('a.bent', new Uint8Array([0xef, 0xbb, 0xbf, 0x65, 0xe9, 0x65])))).toEqual({
      text: '\ufeffe\ufffde',
    });
  });

  it('that cannot be read are told in plain words', () => {
    expect(host.read(at('nowhere.bent'))).toEqual({ failure: 'there is no such file' });
    expect(host.read(folder)).toEqual({ failure: 'it is a folder; name the files in it, such as FOLDER/*.bent' });
  });
});

describe('an include', () => {
  const included = (from: string, path: string): string | undefined => {
    const files = host.includes(from);
    const file = files.resolve(from, path);
    return file === undefined ? 'refused' : files.read(file);
  };

  it('reads what lies below the folder of the score', () => {
    const score = put('a.bent');
    put('shared/house.bent', 'house');
    expect(included(score, 'shared/house.bent')).toBe('house');
    expect(included(score, './shared/../shared/house.bent')).toBe('house');
    expect(included(score, 'shared/none.bent')).toBeUndefined();
  });

  it('of an included file may reach all that the score itself may', () => {
    const score = put('a.bent');
    put('other.bent', 'other');
    const files = host.includes(score);
    expect(files.resolve(at('shared/house.bent'), '../other.bent')).toBe(at('other.bent'));
  });

  it('may not climb, be absolute or follow a link out of the folder', () => {
    const score = put('work/a.bent');
    put('secret.bent', 'secret');
    symlinkSync(at('secret.bent'), at('work/link.bent'));
    symlinkSync(folder, at('work/up'));
    for (const path of [
      '../secret.bent',
      at('secret.bent'),
      'link.bent',
      'up/secret.bent',
      'C:\\secret.bent',
      'a\0b',
      '.',
      '',
    ]) {
      expect([path, included(score, path)]).toEqual([path, 'refused']);
    }
  });

  it('does not read a folder', () => {
    const score = put('a.bent');
    mkdirSync(at('house.bent'));
    expect(included(score, 'house.bent')).toBeUndefined();
  });
});

describe('an output', () => {
  it('is written whole, with the folders above it, and nothing is left beside it', () => {
    expect(host.write(at('out/deep/a.musicxml'), 'text')).toBeUndefined();
    expect(readFileSync(at('out/deep/a.musicxml'), 'utf8')).toBe('text');
    expect(readdirSync(at('out/deep'))).toEqual(['a.musicxml']);
  });

  it('replaces an older one and keeps its permissions', () => {
    const file = put('a.bent', 'old');
    chmodSync(file, 0o640);
    expect(host.write(file, new Uint8Array([110, 101, 119]))).toBeUndefined();
    expect(readFileSync(file, 'utf8')).toBe('new');
    expect(statSync(file).mode & 0o777).toBe(0o640);
  });

  it('is written through a link, which stays', () => {
    put('real/a.bent', 'old');
    symlinkSync(at('real/a.bent'), at('a.bent'));
    expect(host.write(at('a.bent'), 'new')).toBeUndefined();
    expect(readFileSync(at('real/a.bent'), 'utf8')).toBe('new');
  });

  it('is refused at once where no folder can be made', () => {
    expect(host.write('/proc/bentside/overture.musicxml', '')?.failure).toMatch(/^not written; /);
  });
  it('is refused where a folder bears its name, or a file stands where its folder should be', () => {
    mkdirSync(at('a.musicxml'));
    expect(host.write(at('a.musicxml'), 'text')).toEqual({ failure: 'not written; a folder has that name' });
    put('out', 'a file');
    expect(host.write(at('out/a.musicxml'), 'text')?.failure).toMatch(/a file stands where its folder should be/);
    expect(existsSync(at('out'))).toBe(true);
    expect(readdirSync(folder).sort()).toEqual(['a.musicxml', 'out']);
  });
});
