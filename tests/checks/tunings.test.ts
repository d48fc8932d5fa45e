/**
 * Tunings and temperaments. That the twelve fifths close one circle: the arithmetic of twelve fifths and seven octaves
 * (1200 log2(f2/f1), the Pythagorean comma 531441/524288).
 */
import { describe, expect, it } from 'vitest';
import { temperamentNames } from '../../grammar/vocabulary/temperaments';
import { openProject } from '../../server/workspace/project';
import { memoryFiles } from '../helpers/memoryFiles';
import { errors, lane, mended, messages } from '../helpers/music';

const tuned = (statements: string) => lane('1 c5', 'C', `${statements}\n`);

describe('the name of a tuning', () => {
  it.each(temperamentNames)('may be the built-in %s', (name) => {
    expect(errors(tuned(`tuning ${name}`))).toEqual([]);
  });
  it('may be a temperament of the file, wherever it stands, and of a meantone the part of the comma', () => {
    expect(errors(tuned('tuning house\ntemperament house from vallotti\n  c-g -1/4 sc'))).toEqual([]);
    expect(errors(tuned('tuning meantone 1/4 wolf g#-eb'))).toEqual([]);
  });
  it('is told with the nearest known one where none bears it', () => {
    const slip = tuned('tuning werkmeister-3');
    expect(errors(slip)).toEqual(['unknown-temperament']);
    expect(mended(slip, 'unknown-temperament')).toContain('tuning werckmeister-3');
    expect(errors(tuned('tuning zz'))).toEqual(['unknown-temperament']);
  });
  it('is told in a reading', () => {
    expect(errors(tuned('reading soft\n  tuning valotti'))).toEqual(['unknown-temperament']);
  });
  it('may come from an included file, whose own slips are told at the include', () => {
    const files = (house: string) =>
      openProject(
        memoryFiles({
          'a.bent': 'bentside 1\ninclude "house.bent"\ntuning house\n',
          'house.bent': `bentside 1\n${house}\n`,
        }),
        'a.bent',
      );
    const found = (house: string) =>
      files(house)
        ?.analysis.findings()
        .flatMap(({ code, level }) => (level === 'error' ? [code] : []));
    expect(found('temperament house from vallotti')).toEqual([]);
    expect(found('temperament home from vallotti')).toEqual(['unknown-temperament']);
  });
});

describe('a temperament', () => {
  it('comes from one that is known', () => {
    const slip = tuned('temperament house from kirnberger3');
    expect(errors(slip)).toEqual(['unknown-temperament']);
    expect(mended(slip, 'unknown-temperament')).toContain('from kirnberger-3');
  });
  it('does not come from itself, by whatever way', () => {
    const circle = tuned('temperament house from chamber\ntemperament chamber from house');
    expect(messages(circle, 'temperament-circle')).toEqual([
      'The temperament “house” comes from itself, by way of chamber, house.',
    ]);
  });
  it('has a name of its own', () => {
    expect(errors(tuned('temperament house\n  c-g -1/4 sc\ntemperament house\n  g-d -1/4 sc'))).toEqual([
      'name-used-twice',
    ]);
  });
  it.each([
    ['by the same notes', 'c-g -1/6 sc', 'c-g'],
    ['in the octave where it beats', 'c4-g4 2.0 beats narrow', 'c4-g4'],
    ['by other names of its keys', 'b#-g -1/6 sc', 'b#-g'],
  ])('names each fifth once, also %s', (_, row, fifth) => {
    expect(messages(tuned(`temperament house\n  c-g -1/4 sc\n  ${row}`), 'fifth-twice')).toEqual([
      `The fifth ${fifth} stands twice in one temperament; the first row counts.`,
    ]);
  });
  it('leaves the rest to one fifth', () => {
    expect(errors(tuned('temperament house\n  c-g -1/4 sc\n  g#-eb rest'))).toEqual([]);
    expect(errors(tuned('temperament house\n  c#-g# rest\n  g#-eb rest'))).toEqual(['rest-twice']);
  });
});

describe('the circle of a temperament', () => {
  it('may leave its rest to a fifth, or come out by itself', () => {
    for (const rows of [
      '\n  c-g -1/4 sc\n  g#-eb rest',
      ' from vallotti',
      ' from vallotti\n  f-c -1/4 pc\n  b-f# -1/12 pc\n  e-b -1/12 pc\n  g-d -1/6 pc',
    ])
      expect(
        tuned(`temperament house${rows}`)
          .findings()
          .map(({ code }) => code),
      ).not.toContain('circle-not-closed');
    expect(messages(tuned('temperament house from vallotti'), 'circle-rest-assumed')).toEqual([]);
  });
  it('says what the last fifth becomes where no row takes the rest', () => {
    const found = tuned('temperament house\n  c-g -1/4 sc\n  g-d -1/4 sc\n  d-a -1/4 sc\n  a-e -1/4 sc\n  e-b -1/4 sc');
    expect(messages(found, 'circle-rest-assumed')).toEqual([
      'No fifth of “house” takes the rest: g#-eb becomes 3.42 cents wide, so that the circle closes.',
    ]);
  });
  it('says by how many cents it does not close where all is told', () => {
    const found = tuned('temperament house from vallotti\n  c-g -1/4 pc\n  g#-eb -1/12 pc');
    expect(messages(found, 'circle-not-closed')).toEqual([
      'The fifths of “house” miss the circle by 3.91 cents: g#-eb takes them, whatever its row says.',
    ]);
  });
  it('says the same of fifths that are told by beats', () => {
    // 3 f(c4) − 4 f(g3) = 3 makes the fifth 6.99 cents narrow, 3.08 more than Vallotti’s; g#-eb says 1.96 where it should be wide.
    const found = tuned('pitch a4 = 415\ntemperament house from vallotti\n  c4-g3 3.0 beats wide\n  ab-eb -1/12 pc');
    expect(messages(found, 'circle-not-closed')).toEqual([
      'The fifths of “house” miss the circle by 5.04 cents: g#-eb takes them, whatever its row says.',
    ]);
  });
  it('has no fifth that beats beyond measure', () => {
    expect(messages(tuned('temperament house\n  c1-g1 20 beats narrow\n  g#-eb rest'), 'beats-too-many')).toEqual([
      'So many beats would put c1-g1 far from any fifth; it counts as pure.',
    ]);
  });
});
