import { describe, expect, it } from 'vitest';
import { sourceText } from '../../server/workspace/encoding';
import { noFiles } from '../../server/workspace/host';
import { MOST_INCLUDED } from '../../server/workspace/includes';
import { openProject, projectOf } from '../../server/workspace/project';
import { memoryFiles } from '../helpers/memoryFiles';

const SCORE = `bentside 1
include "house.bent"
voice dessus lines 5
system  dessus G2  meter C
  dessus | 1 c5 |
`;

const HOUSE = `bentside 1
source K "Thornmere Keyboard Book"
`;

const open = (files: Record<string, string>, file = 'a.bent') => {
  const project = openProject(memoryFiles(files), file);
  if (project === undefined) throw new Error('no such file');
  return project;
};

/** "line code" of the findings about includes and encoding. */
const found = (files: Record<string, string>): string[] =>
  open(files)
    .analysis.findings()
    .filter(({ code }) => /^include-|utf8|mark/.test(code))
    .map(({ range, code }) => `${range.start.line} ${code}`);

describe('a project', () => {
  it('has what the included file declares', () => {
    const project = open({ 'a.bent': SCORE, 'house.bent': HOUSE });
    expect(project.included.map(({ file }) => file)).toEqual(['house.bent']);
    expect(project.environment.sources.map(({ name }) => name)).toContain('K');
    expect(found({ 'a.bent': SCORE, 'house.bent': HOUSE })).toEqual([]);
  });

  it('is none where there is no file', () => {
    expect(openProject(noFiles, 'a.bent')).toBeUndefined();
  });

  it('follows includes of includes, each file once and after those that it includes', () => {
    const files = {
      'a.bent': `bentside 1\ninclude "deep/b.bent"\ninclude "deep/c.bent"\n`,
      'deep/b.bent': `bentside 1\ninclude "c.bent"\n`,
      'deep/c.bent': HOUSE,
    };
    expect(open(files).included.map(({ file }) => file)).toEqual(['deep/c.bent', 'deep/b.bent']);
    expect(found(files)).toEqual([]);
  });

  it('finds an include that is missing, at the path', () => {
    expect(found({ 'a.bent': SCORE })).toEqual(['2 include-missing']);
    const [missing] = open({ 'a.bent': SCORE })
      .analysis.findings()
      .filter(({ code }) => code === 'include-missing');
    expect(missing?.range.start.column).toBe(9);
    expect(missing?.message).toContain('“house.bent”');
  });

  it('tells of a missing include once, not of each name that it may bring', () => {
    const score = `bentside 1
include "house.bent"
signs house
stave upper
voice dessus upper
system  upper G2  meter C
  dessus | 4 c5 <K: d5 ; L: e5> f5'[pince]:L nosuch |
`;
    const codes = (files: Record<string, string>): string[] =>
      open(files)
        .analysis.findings()
        .map(({ code }) => code)
        .filter((code) => code.startsWith('include') || code.startsWith('unknown'));
    expect(codes({ 'a.bent': score })).toEqual(['include-missing']);
    const unknown = ['unknown-table', 'unknown-label', 'unknown-label', 'unknown-label'];
    expect(codes({ 'a.bent': score, 'house.bent': 'bentside 1\n' })).toEqual(unknown);
  });

  it('finds an include that the host refuses', () => {
    expect(found({ 'a.bent': 'bentside 1\n\ninclude "../secret.bent"\n' })).toEqual(['3 include-refused']);
    const refused = projectOf(noFiles, 'a.bent', SCORE).analysis.findings();
    expect(refused.map(({ code }) => code)).toContain('include-refused');
  });

  it('finds a circle, however long, and opens none of its files twice', () => {
    expect(found({ 'a.bent': 'bentside 1\ninclude "a.bent"\n' })).toEqual(['2 include-circle']);
    const files = {
      'a.bent': 'bentside 1\ninclude "b.bent"\n',
      'b.bent': 'bentside 1\ninclude "c.bent"\n',
      'c.bent': 'bentside 1\ninclude "a.bent"\ninclude "b.bent"\n',
    };
    expect(found(files)).toEqual(['2 include-circle', '2 include-circle']);
    expect(open(files).included.map(({ file }) => file)).toEqual(['c.bent', 'b.bent']);
    const [circle] = open(files)
      .analysis.findings()
      .filter(({ code }) => code === 'include-circle');
    expect(circle?.message).toContain('a.bent → b.bent → c.bent → a.bent');
  });

  it('stops at a bounded number of files', () => {
    const many = Object.fromEntries(
      Array.from({ length: 100 }, (_, i) => [`${i}.bent`, `bentside 1\ninclude "${i + 1}.bent"\n`]),
    );
    const files = { ...many, 'a.bent': 'bentside 1\ninclude "0.bent"\n' };
    expect(open(files).included).toHaveLength(MOST_INCLUDED);
    expect(found(files)).toEqual(['2 include-too-many']);
  });

  it('says at the include that the included file has errors of its own', () => {
    expect(found({ 'a.bent': SCORE, 'house.bent': 'bentside 1\nsorce K "Thornmere"\n' })).toEqual([
      '2 include-unsound',
    ]);
  });

  it.each([
    ['a table from one that nobody knows', 'table house from nowhere'],
    ['a layer of a source that is not declared', 'hand X.2 "paler ink"'],
    ['a source declared twice', 'source K "a"\nsource K "b"'],
    ['a row of a shape that does not exist', 'table house\n  zigzog "shake" : on beat, (+1 0) repeated'],
    ['a temperament from one that nobody knows', 'temperament house from nowhere'],
  ])('says so of errors in what it means: %s', (_, house) => {
    expect(found({ 'a.bent': SCORE, 'house.bent': `bentside 1\n${house}\n` })).toEqual(['2 include-unsound']);
  });

  it('has nothing to say of a file that is sound with what it includes itself, also by way of another', () => {
    const files = {
      'a.bent': 'bentside 1\ninclude "sources.bent"\ninclude "layers.bent"\n',
      'layers.bent': 'bentside 1\ninclude "people.bent"\nhand K.2 "paler ink"\n',
      'people.bent': 'bentside 1\ninclude "sources.bent"\n',
      'sources.bent': HOUSE,
    };
    expect(found(files)).toEqual([]);
    expect(found({ ...files, 'people.bent': 'bentside 1\n' })).toEqual(['3 include-unsound']);
  });

  it('says that an include without a path brings nothing', () => {
    expect(found({ 'a.bent': 'bentside 1\ninclude ""\n' })).toEqual(['2 include-missing']);
  });
});

describe('the encoding of a file', () => {
  it('may begin with a byte order mark, which is left out of the text and of the columns', () => {
    expect(sourceText('\ufeffbentside 1')).toEqual({
      text: 'bentside 1',
      problems: [{ code: 'byte-order-mark', slots: {}, pos: 0, len: 0 }],
    });
    expect(found({ 'a.bent': `\ufeff${SCORE}`, 'house.bent': HOUSE })).toEqual(['1 byte-order-mark']);
  });

  it('is a finding at the first sign that could not be read', () => {
    const text = SCORE.replace('voice', 'title "Entr\ufffde \ufffd la fran\ufffdaise"\nvoice');
    expect(found({ 'a.bent': text, 'house.bent': HOUSE })).toEqual(['3 not-utf8']);
    expect(sourceText(text).problems[0]?.slots).toEqual({ count: 3 });
  });

  it('is told of UTF-16 without a mark as well, in either order of its bytes: every sign of ASCII leaves an empty byte', () => {
    // The Unicode Standard, D98 (the encoding scheme UTF-16): bytes in either order, with or without a mark.
    const low = Buffer.from(SCORE, 'utf16le');
    for (const bytes of [low, Buffer.from(low).swap16()]) {
      const project = open({ 'a.bent': new TextDecoder().decode(bytes) });
      const codes = project.analysis.findings().map(({ code }) => code);
      expect(codes.sort()).toEqual(['and-more', 'not-utf8']);
    }
    expect(sourceText(low.toString('utf8')).problems[0]?.slots).toEqual({ count: SCORE.length });
    expect(sourceText(`${SCORE}\0`).problems).toEqual([]);
  });

  it('where it could not be read, has everything else in one line that says how much that is', () => {
    const typed = `${SCORE}  dessus | 1 d5 |\n\ufffd\ufffdtre 1\nsyst\ufffdme\n`;
    const count = open({ 'a.bent': typed.replaceAll('\ufffd', 'e'), 'house.bent': HOUSE }).analysis.findings().length;
    const { findings } = open({ 'a.bent': typed, 'house.bent': HOUSE }).analysis;
    expect(
      findings()
        .map(({ code }) => code)
        .sort(),
    ).toEqual(['and-more', 'not-utf8']);
    expect(findings().find(({ code }) => code === 'and-more')?.message).toContain(`${count}`);
  });
});
