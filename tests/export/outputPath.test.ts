import { describe, expect, it } from 'vitest';
import { outputPath, sharedFolder } from '../../server/export/outputPath';

const written = (input: string) => outputPath({ input, reading: 'written', extension: 'musicxml' });

describe('where an output goes', () => {
  it.each([
    ['gavotte.bent', 'gavotte.musicxml'],
    ['suites/gavotte.bent', 'suites/gavotte.musicxml'],
    ['/home/music/gavotte.bent', '/home/music/gavotte.musicxml'],
    ['/gavotte.bent', '/gavotte.musicxml'],
    ['./gavotte.bent', './gavotte.musicxml'],
    ['../gavotte.bent', '../gavotte.musicxml'],
  ])('is beside the score: %s gives %s', (input, output) => {
    expect(written(input)).toBe(output);
  });

  it.each([
    ['Suite 1.2.bent', 'Suite 1.2.musicxml'],
    ['v1.0/Entrée 三.bent', 'v1.0/Entrée 三.musicxml'],
    ['GAVOTTE.BENT', 'GAVOTTE.musicxml'],
    ['no ending', 'no ending.musicxml'],
    ['gavotte.txt', 'gavotte.txt.musicxml'],
    ['.bent', 'score.musicxml'],
    ['suites/.bent', 'suites/score.musicxml'],
    ['a.bent.bent', 'a.bent.musicxml'],
    ['back\\slash.bent', 'back\\slash.musicxml'],
  ])('keeps the dots and spaces of a name: %s gives %s', (input, output) => {
    expect(written(input)).toBe(output);
  });

  it('names the reading that it shows', () => {
    expect(outputPath({ input: 'Suite 1.2.bent', reading: 'french', extension: 'json' })).toBe('Suite 1.2.french.json');
  });

  it('lies in the folder wished for', () => {
    const into = { folder: 'out', shared: '/home/suites' };
    expect(outputPath({ input: '/home/suites/gavotte.bent', reading: 'written', extension: 'mxl', into })).toBe(
      'out/gavotte.mxl',
    );
    expect(
      outputPath({ input: '/gavotte.bent', reading: 'written', extension: 'mxl', into: { folder: '/', shared: '/' } }),
    ).toBe('/gavotte.mxl');
  });

  it('keeps apart two scores of one name from two folders', () => {
    const files = ['/home/first/gavotte.bent', '/home/second/gavotte.bent'];
    const into = { folder: 'out/', shared: sharedFolder(files) };
    expect(files.map((input) => outputPath({ input, reading: 'written', extension: 'mxl', into }))).toEqual([
      'out/first/gavotte.mxl',
      'out/second/gavotte.mxl',
    ]);
  });

  it('is not led astray by folders whose names begin alike', () => {
    expect(sharedFolder(['/suite/a.bent', '/suites/b.bent'])).toBe('');
    expect(sharedFolder(['/m/suite/a.bent', '/m/suites/b.bent'])).toBe('/m');
    expect(sharedFolder(['/m/a.bent', '/m/deep/b.bent'])).toBe('/m');
    expect(sharedFolder([])).toBe('');
  });
});
