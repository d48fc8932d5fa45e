/** Purcell, A Choice Collection of Lessons, 1696, “Rules for Graces”: the verbal rules, from memory. */
import { describe, expect, it } from 'vitest';
import { notes, type Passage, played, problemsIn } from '../../helpers/realised';

const by1696 = (lane: string, more: Partial<Passage> = {}): Passage => ({
  lanes: [lane],
  table: 'purcell-1696',
  tempo: '4 at 60',
  ...more,
});

describe('The rules of 1696', () => {
  it('“you always shake from the note above”', () => {
    expect(notes(by1696("2 d5'ss"))).toMatch(/^e5 d5 e5 .*d5$/);
  });

  it('“beat from the note or half note below, according to the key you play in”', () => {
    expect(notes(by1696("2 d5'zz"))).toMatch(/^c5 d5 c5 .*d5$/);
    expect(notes(by1696("2 d5'zz", { key: 'f# c#' }))).toMatch(/^c#5 d5 /);
  });

  it('hold half of a plain note “upon the note above that which is marked” and shake the other half', () => {
    const [held, ...shaken] = played(by1696("2 d5'sbd'ss", { meter: '1/2' })).split(' ');
    expect(held).toBe('e5:1/4');
    expect(shaken[0]).toMatch(/^d5/);
    expect(shaken.at(-1)).toMatch(/^d5/);
  });

  it('hold all of a note with a point plain and shake only the point', () => {
    const [held, ...shaken] = played(by1696("2. d5'sbd'ss", { meter: '3/4' })).split(' ');
    expect(held).toBe('e5:1/2');
    expect(shaken.length).toBeGreaterThan(2);
  });

  it('have a fore-fall from below and a back-fall from above', () => {
    expect(notes(by1696("2 g4 d5'sbu"))).toBe('g4 c5 d5');
    expect(notes(by1696("2 g4 d5'sbd"))).toBe('g4 e5 d5');
  });

  it('turn a shake with the note below', () => {
    expect(notes(by1696("2 d5'ss'turn"))).toMatch(/^e5 d5 .*c5 d5$/);
  });

  it('fill a third with a slur', () => {
    expect(notes(by1696("2 c5'cj e"))).toBe('c5 d5 e5');
    expect(notes(by1696("2 e5'cj c"))).toBe('e5 d5 c5');
    expect(problemsIn(by1696("2 c5'cj d"))).toEqual(['sign-not-in-table']);
  });
});
