/** Declarations that nothing uses. */
import { describe, expect, it } from 'vitest';
import { parseFile } from '../../grammar/parse';
import { analyse } from '../../server/document/analysis';
import { analysed, codes, findingOf, HEAD, passage } from '../helpers/music';

/** All three voices have a lane, so that the staves and voices of the usual head are used. */
const played = (music: string): string =>
  `system upper C1 lower F4 meter C\n dessus | ${music} |||\n taille | __ |||\n basse | __ |||\n`;

const unused = (before: string, music = '<K: 1 d5 ; L: 1 e5>'): string[] =>
  passage(played(music), before)
    .findings()
    .filter((finding) => finding.code === 'unused-declaration')
    .map((finding) => finding.message.replace(' is declared but never used.', ''));

describe('a declaration that nothing uses', () => {
  it('is worth knowing, not wrong, and the whole statement is marked', () => {
    const spare = passage(played('<K: 1 c5 ; L: 1 d5>'), 'stave third\n');
    const { level, range } = findingOf(spare, 'unused-declaration');
    expect(level).toBe('info');
    expect(spare.tree.text.slice(range.start.offset, range.end.offset)).toBe('stave third');
  });
  it('is not told of the usual head when all is used', () => {
    expect(unused('')).toEqual([]);
  });
  it('is not told before any music is typed', () => {
    expect(codes(analysed(HEAD))).not.toContain('unused-declaration');
  });
});

describe('a stave', () => {
  it('is used by the voice that stands on it', () => {
    expect(unused('stave third\n')).toEqual(['The stave “third”']);
  });
  it('may be one to which a voice only moves', () => {
    expect(unused('stave third\n', '<K: 1 d5 ; L: 1 e5> | (down) 1 c4')).toEqual([]);
    expect(unused('stave third\n', '<K: 1 d5 ; L: 1 e5> | 1 d4-(down)a')).toEqual([]);
  });
});

describe('a voice', () => {
  it('is used by its lane, not by a practice that names it', () => {
    expect(unused('voice quinte lower\npractice overdot voice quinte\n')).toEqual(['The voice “quinte”']);
  });
});

describe('a source', () => {
  it('is used by an option, a mark, a reading or a witness lane; the first is the main text', () => {
    expect(unused('', '1 c5')).toEqual(['The source “L”']);
    expect(unused('', "1 c5'zz:L")).toEqual([]);
    expect(unused('reading late "as L"\n takes L\n', '1 c5')).toEqual([]);
    expect(unused('', '1 c5 |||\n dessus L | 1 d5')).toEqual([]);
  });
  it('is used by a layer of it', () => {
    expect(unused('hand L.2 "paler ink"\n', '<K: 1 c5 ; L.2: 1 d5>')).toEqual([]);
  });
});

describe('a hand', () => {
  it('is used where an option or an added passage names it, not where its source is named', () => {
    expect(unused('hand K.2 "paler ink"\n')).toEqual(['The hand “K.2”']);
    expect(unused('hand L.2 "paler ink"\n', '<K: 1 c5 ; L: {added:L.2 1 d5}>')).toEqual([]);
  });
});

describe('a note and an editor', () => {
  it('are used where they are cited', () => {
    expect(unused('note n1 : "a blot"\neditor TK "an editor"\n')).toEqual(['The note “n1”', 'The editor “TK”']);
    expect(unused('editor TK "an editor"\nnote n1 by TK : "a blot"\n', '<K: 1 c5*n1 ; L: 1 d5>')).toEqual([]);
  });
});

describe('what an included file brings', () => {
  it('is for many files and may wait', () => {
    const house = {
      file: 'house.bent',
      tree: parseFile('bentside 1\neditor TK "an editor"\nsource M "a third book"\n'),
    };
    const text = `${HEAD}include "house.bent"\n${played('<K: 1 d5 ; L: 1 e5>')}`;
    const codes = analyse('passage.bent', parseFile(text), [house])
      .findings()
      .map((finding) => finding.code);
    expect(codes).not.toContain('unused-declaration');
  });
});
