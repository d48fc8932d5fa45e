/** Quantz, Versuch, 1752. */
import { describe, expect, it } from 'vitest';
import { notes, type Passage, played } from '../../helpers/realised';

const by1752 = (lane: string, more: Partial<Passage> = {}): Passage => ({
  lanes: [lane],
  table: 'quantz-1752',
  tempo: '4 at 80',
  ...more,
});

/** Strokes of a trill on a semibreve, its two closing notes with them. */
const strokes = (tempo: string): number => notes(by1752("1 d5'tr", { tempo })).split(' ').length;

describe('Quantz', () => {
  it('IX.6: not much more than four movements, eight notes, in a pulse beat (confirmed), of eighty a minute (XVII.vii.55, from memory)', () => {
    // At eighty crotchets a minute a crotchet is a pulse beat; at forty it is two.
    expect(strokes('4 at 80')).toBe(4 * 8);
    expect(strokes('4 at 40')).toBe(8 * 8);
    expect(strokes('2 at 80')).toBe(2 * 8);
  });

  it('IX.5: the strokes are even (confirmed)', () => {
    const lengths = played(by1752("1 d5'tr"))
      .split(' ')
      .map((note) => note.split(':')[1]);
    expect(new Set(lengths)).toEqual(new Set(['1/32']));
  });

  it('IX.7: it begins with the upper note and ends with two small notes of the same speed (from memory)', () => {
    expect(notes(by1752("2 d5'tr"))).toMatch(/^e5 d5 .*e5 d5 c5 d5$/);
  });

  it('VIII.7: an accented appoggiatura has half of its note (from memory)', () => {
    expect(played(by1752('2 d5 {small 8 d} 2 c'))).toBe('d5:1/2 d5:1/4 c5:1/4');
  });

  it('VIII.8: before a dotted note two of its three parts (from memory)', () => {
    expect(played(by1752('{small 8 d5} 2. c5', { meter: '3/4' }))).toBe('d5:1/2 c5:1/4');
  });

  it('VIII.9: before a dotted note tied to another it lasts as long as the dotted note (from memory)', () => {
    expect(played(by1752('{small 8 d5} 4. c5= 4. c', { meter: '6/8' }))).toBe('d5:3/8 c5:3/8');
  });

  it('VIII.11: before a rest it takes the time of the note, and the note that of the rest (from memory)', () => {
    expect(played(by1752('{small 8 d5} 2 c5 2 r'))).toBe('d5:1/2 c5:1/2');
  });

  it('VIII.11: a longer rest goes on after the note, and in a shorter one there is no room for it', () => {
    expect(played(by1752('{small 8 d5} 4 c5 2. r'))).toBe('d5:1/4 c5:1/4 r:1/2');
    expect(played(by1752('{small 8 d5} 2. c5 4 r'))).toBe('d5:1/2 c5:1/4 r:1/4');
  });

  it('VIII.5–6: between falling thirds it passes in the time of the note before (from memory)', () => {
    const passing = played(by1752('2 e5 {small 8 d} 2 c'));
    expect(passing).toMatch(/^e5:\S+ d5:\S+ c5:1\/2$/);
  });
});
