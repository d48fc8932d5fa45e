/**
 * What practices have to say, at the place that it concerns: what does not act or meets something else in every proof, what
 * is a matter of taste with the decisions of the readings (common practice).
 */
import { describe, expect, it } from 'vitest';
import { decidedIn, foundWhenPlayed } from '../../server/document/decided';
import { duet } from '../helpers/music';

const told = (dessus: string, basse: string, before: string): string[] =>
  decidedIn(duet(dessus, basse, 'C', before)).findings.map(({ range, message }) => `${range.start.line}: ${message}`);

/** The same as an ordinary proof has it: codes and readings. */
const proofed = (dessus: string, basse: string, before: string): string[] =>
  foundWhenPlayed(duet(dessus, basse, 'C', before)).map(({ code, readings }) => `${code} ${readings?.join(',')}`);

describe('a practice', () => {
  it('that finds nothing is told at its statement, with the readings', () => {
    expect(told('1 c5', '1 c3', 'practice snap\nreading one\nreading two\n  practice literal')).toEqual([
      '9: In one: The practice `snap` finds nothing to act on.',
    ]);
  });

  it('before which a nearer one of its kind and extent goes is not told', () => {
    expect(told('4. c5 8 d 2 e', '1 c3', 'practice overdot\nreading one\n  practice overdot shortest silent')).toEqual(
      [],
    );
  });

  it('that would part two voices is told at the figure, and not besides as finding nothing', () => {
    expect(told('4. c5 8 d 2 e', '8 c3 d e f 2 g', 'reading one\n  practice overdot')).toEqual([
      '12: In one: Bar 1, dessus: `overdot` would part this figure from the even notes of basse: it goes with them.',
    ]);
  });

  it('that meets another in one figure is told, and which is played', () => {
    expect(told('4. r 8 c5 2 d', '1 c3', 'reading one\n  practice overdot\n  practice upbeats late')).toContain(
      '13: In one: Bar 1, dessus: `overdot` and `upbeats` both change the time of this figure: overdot is played.',
    );
  });

  it('of unequal notes leaves words without one meaning undecided', () => {
    expect(told('"piqué" 8 c5 d e f 2 g', '1 c3', 'reading one\n  practice inegal 8')).toEqual([
      '12: In one: `inegal` leaves a context undecided: “piqué” has no one agreed meaning.',
    ]);
  });
});

describe('a triplet against a duple figure', () => {
  it('of which nothing is said is offered as a place to decide', () => {
    expect(told('8. c5 16 d 2. e', '8x c3 d e 2. f', 'reading one')).toEqual([
      '11: In one: Bar 1, dessus: a dotted pair against a triplet of basse: to the triplet, to the duple figure, or each as written?',
    ]);
  });
});

describe('an ordinary proof', () => {
  it('tells what does nothing, what stands as written for the sake of another voice, what meets in one figure', () => {
    expect(proofed('1 c5', '1 c3', 'reading one\n  practice snap')).toEqual(['practice-idle one']);
    expect(proofed('4. c5 8 d 2 e', '8 c3 d e f 2 g', 'reading one\n  practice overdot')).toEqual([
      'practice-against one',
    ]);
    expect(proofed('4. r 8 c5 2 d', '1 c3', 'reading one\n  practice overdot\n  practice upbeats late')).toContain(
      'practice-overlap one',
    );
  });

  it('leaves alone what is a matter of taste', () => {
    expect(proofed('8. c5 16 d 2. e', '8x c3 d e 2. f', 'reading one')).toEqual([]);
    expect(proofed('"piqué" 8 c5 d e f 2 g', '1 c3', 'reading one\n  practice inegal 8')).toEqual([]);
  });

  it('calls a practice of the file idle only where no reading has anything for it', () => {
    const readings = 'practice overdot\nreading one\n  takes K\nreading two\n  takes L';
    expect(proofed('<K: 4. c5 8 d ; L: 4 c5 d> 2 e5', '1 c3', readings)).toEqual([]);
    expect(proofed('<K: 4 c5 e ; L: 4 c5 d> 2 e5', '1 c3', readings)).toEqual(['practice-idle one,two']);
  });
});
