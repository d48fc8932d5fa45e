/** Includes of a text that comes to lie elsewhere, against the paths of Node's own library. */
import { posix, win32 } from 'node:path';
import { describe, expect, it } from 'vitest';
import { includesMoved } from '../../server/workspace/moved';

const including = (...paths: readonly string[]): string =>
  `bentside 1\n${paths.map((path) => `include "${path}"  // our house\n`).join('')}title "Suite"\n`;

describe('the includes of a text that comes to lie in another folder', () => {
  const FROM = '/home/suites/one.bent';
  const PATHS = ['shared/people.bent', './tables.bent', '../house.bent', 'a//b/../c.bent'];
  it.each([
    '/home/suites/out/one.K.bent',
    '/home/one.K.bent',
    '/elsewhere/deep/down/one.K.bent',
    '/one.K.bent',
    '/home/suites2/one.K.bent',
  ])('count from there: %s', (to) => {
    const paths = PATHS.map((path) => posix.relative(posix.dirname(to), posix.resolve('/home/suites', path)));
    expect(includesMoved(including(...PATHS), FROM, to)).toBe(including(...paths));
  });
  it('stay as they are typed in the same folder, and where they name a place by itself or nothing', () => {
    expect(includesMoved(including(...PATHS), FROM, '/home/suites/one.K.bent')).toBe(including(...PATHS));
    const others = including('/usr/share/people.bent', '');
    expect(includesMoved(others, FROM, '/home/one.K.bent')).toBe(others);
  });
  it.each(['C:/out/one.K.bent', 'D:/one.K.bent'])('count from there on a computer with drives: %s', (to) => {
    const paths = ['shared/people.bent', '../house.bent'].map((path) =>
      win32.relative(win32.dirname(to), win32.resolve('C:/home/suites', path)).replaceAll('\\', '/'),
    );
    const text = including('shared/people.bent', '../house.bent', 'C:/house.bent');
    expect(includesMoved(text, 'C:/home/suites/one.bent', to)).toBe(including(...paths, 'C:/house.bent'));
  });
  it('keep the ends of lines', () => {
    const text = including('a.bent').replaceAll('\n', '\r\n');
    expect(includesMoved(text, FROM, '/home/one.bent')).toBe(including('suites/a.bent').replaceAll('\n', '\r\n'));
  });
});
