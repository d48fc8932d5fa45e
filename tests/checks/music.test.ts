/** A file without music (a file for others to include is common practice). */
import { describe, expect, it } from 'vitest';
import { analysed, codes, lane } from '../helpers/music';

describe('a file in which no music stands yet', () => {
  it.each([
    ['nothing', ''],
    ['a comment', '// the second book\n'],
    ['its edition and title', 'bentside 1\ntitle "Courante"\n'],
    ['its voices', 'bentside 1\nsource K "Thornmere Keyboard Book"\nvoice dessus\n'],
  ])('is told how a first system looks: it holds %s', (_, text) => {
    expect(codes(analysed(text))).toEqual(['no-music']);
  });
  it.each([
    ['sources and people', 'bentside 1\ntitle "People"\nsource K "Thornmere"\neditor MK "The editor"\n'],
    ['a table', 'table house\n  zz "shake" : on beat, (+1 0) repeated\n'],
    ['a temperament', 'temperament house from vallotti\n'],
    ['what further files bring', 'include "people.bent"\n'],
  ])('may be meant for others to include: %s', (_, text) => {
    expect(codes(analysed(text))).toEqual([]);
  });
  it('is not told of it where something else is to be mended first', () => {
    expect(codes(analysed('sorce K "Thornmere"\n'))).toEqual(['unknown-statement']);
  });
  it('is none where a system stands', () => {
    expect(codes(lane('1 c5'))).not.toContain('no-music');
  });
});
