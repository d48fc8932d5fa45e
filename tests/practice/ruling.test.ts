/** Which of several practices acts (common practice: what is said of less, and more nearly, goes before). */
import { describe, expect, it } from 'vitest';
import { format } from '../../grammar/time';
import { perform } from '../../server/readings/perform';
import { scoreOf } from '../helpers/scores';

/** The lengths of dessus and basse, who have the same dotted pair in section A and again in section B. */
function lengths(statements: string, reading = 'one', lane = '4. c4 8 d 2 e || (section B) 4. c 8 d 2 e'): string[] {
  const text = [
    'bentside 1',
    'voice dessus',
    'voice basse',
    statements,
    'section A',
    'system dessus G2 basse F4 meter C',
    `  dessus | ${lane} |||`,
    `  basse  | ${lane} |||`,
    '',
  ].join('\n');
  const events = perform(scoreOf(text, reading)).pieces.flatMap((piece) => piece.events);
  return [0, 1].map((voice) =>
    events
      .filter((event) => event.voice === voice)
      .map(({ duration }) => format(duration))
      .join(' '),
  );
}

const WRITTEN = '3/8 1/8 1/2 3/8 1/8 1/2';
const SHARP = '7/16 1/16 1/2 7/16 1/16 1/2';

describe('a practice', () => {
  it('may be told for a section, for a voice, for both', () => {
    const inA = '7/16 1/16 1/2 3/8 1/8 1/2';
    expect(lengths('reading one\n  practice overdot in A')).toEqual([inA, inA]);
    expect(lengths('reading one\n  practice overdot voice basse')).toEqual([WRITTEN, SHARP]);
    expect(lengths('reading one\n  practice overdot in A voice basse')).toEqual([WRITTEN, inA]);
  });

  it('told of less goes before one told of more', () => {
    expect(lengths('reading one\n  practice overdot\n  practice literal in A')).toEqual([
      '3/8 1/8 1/2 7/16 1/16 1/2',
      '3/8 1/8 1/2 7/16 1/16 1/2',
    ]);
    expect(lengths('reading one\n  practice literal\n  practice overdot voice basse')).toEqual([WRITTEN, SHARP]);
  });

  it('of the file is for every reading but the written text', () => {
    expect(lengths('practice overdot\nreading one')).toEqual([SHARP, SHARP]);
    expect(lengths('practice overdot\nreading one', 'written')).toEqual([WRITTEN, WRITTEN]);
  });

  it('of a reading goes before that on which it is built, and before the file’s', () => {
    const silent = '1/4 3/16 1/16 1/2 1/4 3/16 1/16 1/2';
    const built = 'practice overdot\nreading base\n  practice overdot double silent\nreading one from base';
    expect(lengths(built)).toEqual([silent, silent]);
    expect(lengths(`${built}\n  practice overdot`)).toEqual([SHARP, SHARP]);
  });

  it('is taken back by a literal reading, be it told of a section only', () => {
    const file = 'practice overdot in A\npractice overdot in B voice basse\n';
    expect(lengths(`${file}reading one\n  practice literal`)).toEqual([WRITTEN, WRITTEN]);
    expect(lengths(`${file}reading one\n  practice literal in B`)[1]).toBe('7/16 1/16 1/2 3/8 1/8 1/2');
  });

  it('gives way to a mark in the lane, for the readings of the mark', () => {
    const lane = '{literal:one 4. c4 8 d} 2 e || (section B) {overdot:!two 4. c 8 d} 2 e';
    const readings = 'reading one\n  practice overdot\nreading two';
    expect(lengths(readings, 'one', lane)[0]).toBe('3/8 1/8 1/2 7/16 1/16 1/2');
    expect(lengths(readings, 'two', lane)[0]).toBe(WRITTEN);
  });
});
