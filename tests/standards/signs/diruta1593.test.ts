/** Diruta, Il Transilvano, 1593 (from memory). */
import { describe, expect, it } from 'vitest';
import { notes, type Passage, played } from '../../helpers/realised';

const by1593 = (lane: string, more: Partial<Passage> = {}): Passage => ({
  lanes: [lane],
  table: 'diruta-1593',
  tempo: '4 at 60',
  ...more,
});

describe('The tremolo of 1593', () => {
  it('begins on the written note and goes to the note above', () => {
    expect(notes(by1593("2 d5't"))).toMatch(/^d5 e5 d5 e5 .*d5$/);
    expect(notes(by1593("2 d5't"))).not.toContain('c5');
  });

  it('takes half of the value, then the written note stands: a minim is a crotchet of strokes and a crotchet', () => {
    const all = played(by1593("2 d5't", { meter: '1/2' })).split(' ');
    expect(all.at(-1)).toBe('d5:1/4');
    expect(played(by1593("2 d5't", { meter: '1/2', form: 'print' }))).toBe(
      'd5:1/32 e5:1/32 d5:1/32 e5:1/32 d5:1/32 e5:1/32 d5:1/32 e5:1/32 d5:1/4',
    );
  });

  it('is a tremoletto on a quaver', () => {
    expect(notes(by1593("8 d5't e 2. f"))).toBe('d5 e5 d5 e5 f5');
  });

  it('is shorter as tremoletto: one alternation, or two', () => {
    expect(notes(by1593("4 d5'tremoletto", { meter: '1/4' }))).toBe('d5 e5 d5');
    expect(notes(by1593("4 d5'tremoletto(twice)", { meter: '1/4' }))).toBe('d5 e5 d5 e5 d5');
  });
});
