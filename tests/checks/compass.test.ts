/** Notes and the keys of the instrument (common practice: an instrument from C to c''' has no key below its C). */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/document/analysis';
import { messages, passage } from '../helpers/music';

const CLEFS = 'system upper C1 lower F4 meter C\n';
const beyond = (music: string, before = ''): string[] =>
  told(passage(`${CLEFS} basse | ${music} |||\n`, `instrument harpsichord compass c2-c6\n${before}`));

const told = (analysis: Analysis): string[] =>
  analysis
    .findings()
    .filter((finding) => finding.code === 'outside-compass')
    .map((finding) => `${finding.level}: ${finding.message}`);

describe('a note outside the compass', () => {
  it('is a warning that names the lowest and the highest key', () => {
    expect(beyond('2 g1 c2')).toEqual([
      'warning: basse: g1 lies outside the compass c2 to c6 of the instrument; an octave higher, g2, there is a key.',
    ]);
    expect(beyond('2 c2 c6')).toEqual([]);
  });
  it('is judged by the key that sounds', () => {
    expect(beyond('2 cb2 b#5')).toEqual([
      'warning: basse: cb2 lies outside the compass c2 to c6 of the instrument; an octave higher, cb3, there is a key.',
    ]);
    expect(beyond('2 c6 c#6')).toHaveLength(1);
  });
  it('is told once where it is tied', () => {
    expect(beyond('2 g1= g1')).toHaveLength(1);
  });
  it('is told of every note of a chord and of small notes', () => {
    expect(beyond('1 f1-g1-c2')).toHaveLength(2);
    expect(beyond('{small 8 b1} 1 c2')).toHaveLength(1);
  });
  it('is told of what only a witness has', () => {
    expect(beyond('<K: 1 c2 ; L: 1 g1>')).toHaveLength(1);
  });
  it('cannot be told where no compass is declared', () => {
    expect(told(passage(`${CLEFS} basse | 1 c0 |||\n`))).toEqual([]);
  });
});

describe('an instrument called after its type', () => {
  const on = (type: string, music: string): Analysis =>
    passage(`${CLEFS} basse | ${music} |||\n`, `instrument ${type}\n`);
  it('has its compass and its short octave', () => {
    expect(told(on('ruckers-single', '2 c2 b1'))).toHaveLength(1);
    expect(messages(on('ruckers-single', '4 c2 d e f#'), 'short-octave-lacks')).toHaveLength(1);
    expect(told(on('french-1760', '2 f1 f6'))).toEqual([]);
    expect(told(on('french-18th', '2 f1 f6'))).toEqual([
      'warning: basse: f6 lies outside the compass f1 to e6 of the instrument; an octave lower, f5, there is a key.',
    ]);
  });
  it('may lack a key in the midst', () => {
    expect(messages(on('kirkman', '2 f1 f#'), 'short-octave-lacks')).toEqual([
      'basse: f#1 has no key, for the instrument lacks it; an octave higher, f#2, there is a key.',
    ]);
  });
  it('gives way to what the file says of it', () => {
    expect(told(on('ruckers-single compass g1-c6', '2 g1 c#2'))).toEqual([]);
  });
});

describe('a short octave', () => {
  // Borys Medicky, keyboard layouts: C/E lacks c#, e flat, f# and g#; with divided sharps only the first two.
  const lacking = (music: string, kind: string, compass = 'c2-c6'): string[] =>
    messages(
      passage(`${CLEFS} basse | ${music} |||\n`, `instrument virginals compass ${compass} short-octave ${kind}\n`),
      'short-octave-lacks',
    );
  it('of C and E has no key for c sharp, e flat, f sharp and g sharp', () => {
    expect(lacking('4 c#2 eb f# g#', 'c/e')).toEqual(
      ['c#', 'eb', 'f#', 'g#'].map(
        (note) =>
          `basse: ${note}2 has no key, for the short octave C/E lacks it; an octave higher, ${note}3, there is a key.`,
      ),
    );
    expect(lacking('8 c2 d e f g a b c3', 'c/e')).toEqual([]);
  });
  it('with divided sharps lacks two of them', () => {
    expect(lacking('4 c#2 eb f# g#', 'c/e broken')).toHaveLength(2);
  });
  it('of G and B lacks g sharp, b flat, c sharp and e flat', () => {
    expect(lacking('4 g#1 bb c#2 eb', 'g/b', 'g1-c6')).toHaveLength(4);
    expect(lacking('4 g1 a b c2', 'g/b', 'g1-c6')).toEqual([]);
  });
  it('may be declared by its lowest key, which sounds a third lower', () => {
    expect(lacking('4 c2 d e f#', 'c/e', 'e2-c6')).toEqual([
      'basse: f#2 has no key, for the short octave C/E lacks it; an octave higher, f#3, there is a key.',
    ]);
    const music = passage(`${CLEFS} basse | 2 c2 b1 |||\n`, 'instrument virginals compass e2-c6 short-octave c/e\n');
    expect(messages(music, 'outside-compass')).toHaveLength(1);
  });
});
