/** Cross relations (common practice: a note and its chromatic form are kept in one voice). */
import { describe, expect, it } from 'vitest';
import { duet, findingOf, messages } from '../helpers/music';

const CODE = 'false-relation';
const relation = (dessus: string, basse: string, meter = 'C'): string[] => messages(duet(dessus, basse, meter), CODE);

describe('a note against its own sharp in another voice', () => {
  it('is told where both sound at once', () => {
    const found = duet('1 c5', '1 c#3');
    expect(findingOf(found, CODE).message).toBe(
      'Bar 1: c natural in dessus against c sharp in basse within one beat: an accidental missing?',
    );
    expect(findingOf(found, CODE).related.map(({ message }) => message)).toEqual(['c sharp in basse']);
    expect(relation('2 r c#5', '1 c3')).toHaveLength(1);
  });
  it('is told where one follows the other within a beat, and not from beat to beat', () => {
    expect(relation('8 e5 c 4 d 2 d', '8 c#3 a2 4 d3 2 d')).toHaveLength(1);
    expect(relation('4 e5 c 2 d', '4 c#3 a2 2 d3')).toEqual([]);
  });
  it('is let be where the voice itself makes the chromatic step', () => {
    expect(relation('8 c5 c# 4 d 2 d', '8 c3 a2 4 d3 2 d')).toEqual([]);
  });
  it('is let be of the same note in both, and of other letters', () => {
    expect(relation('1 c#5', '1 c#3')).toEqual([]);
    expect(relation('1 c#5', '1 a3')).toEqual([]);
  });
  it('is let be where the editor has written a sign', () => {
    expect(relation('1 c[n]5', '1 c#3')).toEqual([]);
    expect(relation('1 c(n)5', '1 c#3')).toEqual([]);
  });
  it('is let be over a double bar', () => {
    expect(relation('2 e5 c || 2 d d', '2 a3 a || 2 c#3 d')).toEqual([]);
  });
});
