/** Strains with endings: what enters one ending enters every other alike (common practice; the reference says so). */
import { describe, expect, it } from 'vitest';
import { curvesOf } from '../../server/score/walk';
import { codes, errors, eventsIn, findingOf, messages, passage, scoreOf, sound } from '../helpers/music';

const strain = (music: string, meter = '3 = 3/4'): ReturnType<typeof passage> =>
  passage(`system upper C1 lower F4 meter ${meter}\n dessus | ${music} |||\n`);

const curves = (analysis: ReturnType<typeof passage>): string[] =>
  scoreOf(analysis).pieces.flatMap((piece) =>
    curvesOf(piece).map(
      ({ start, end }) =>
        `${start?.voice.events[start.end.event]?.address ?? '~'}-${end?.voice.events[end.end.event]?.address ?? '~'}`,
    ),
  );

describe('a strain with an upbeat and two endings', () => {
  it('may end short in either ending, for its own upbeat makes them whole', () => {
    expect(errors(strain('2. c5 :||: 4 d | 2. d | (ending 1) 2 e :|| (ending 2) 2 e'))).toEqual([]);
  });
  it('is told where an ending lacks another time than the upbeat has', () => {
    expect(errors(strain('2. c5 :||: 4 d | 2. d | (ending 1) 2 e :|| (ending 2) 4 e'))).toEqual(['bar-too-short']);
  });
});

describe('what is open where the first ending begins', () => {
  it('is a tie that arrives in every ending', () => {
    const tied = strain('2. c5 | d= | (ending 1) d :|| (ending 2) d');
    expect(errors(tied)).toEqual([]);
    expect(eventsIn(tied).map(({ event }) => event.members[0]?.tiedFrom)).toEqual([false, false, true, true]);
  });
  it('is a curve that ends in every ending', () => {
    const curved = strain("2. c5 | d'u | (ending 1) e'. :|| (ending 2) f'.");
    expect(errors(curved)).toEqual([]);
    expect(curves(curved)).toEqual(['2.1-3.1', '2.1-4.1']);
  });
  it('is a curve also over system ends', () => {
    const over = passage(`system upper C1 lower F4 meter 3 = 3/4
  dessus | 2. c5'u |
system
  dessus | (ending 1) 2. e5'. :||
system
  dessus | (ending 2) 2. f5'. |||
`);
    expect(errors(over)).toEqual([]);
    expect(curves(over)).toEqual(['1.1-1.1', '1.1-1.1']);
  });
  it('is an accidental that holds for the repeated note of each ending', () => {
    expect(sound(strain('2. c5 | c#5 | (ending 1) c :|| (ending 2) c'))).toBe('c5 c#5 c#5 c#5');
  });
});

describe('a tie into the first ending', () => {
  it('may find nothing in a further one, which is but remarked', () => {
    const elsewhere = strain('1 f#5= | (ending 1) 2 f5 g :|| (ending 2) 2 g5 a', 'C');
    expect(errors(elsewhere)).toEqual([]);
    expect(findingOf(elsewhere, 'tie-not-in-ending')).toMatchObject({
      level: 'info',
      message: 'The tie on f5 that leads into the first ending finds no f5 in ending 2.',
    });
  });
});

describe('a curve that begins on the barline before a further ending', () => {
  it('leads into it', () => {
    expect(errors(strain("2. c5 | (ending 1) d :||'u (ending 2) e'."))).toEqual([]);
  });
});

describe('what an ending leaves open', () => {
  it('is a tie that finds nothing', () => {
    expect(errors(strain('2. c5 | (ending 1) d= :|| (ending 2) d'))).toEqual(['tie-to-nothing']);
  });
  it('is a curve that never ends', () => {
    expect(errors(strain("2. c5 | (ending 1) d'u :|| (ending 2) d"))).toEqual(['curve-never-ends']);
  });
});

describe('an ending that lacks another, and so would be played at the wrong time or never', () => {
  const told = (music: string): string[] => messages(strain(music), 'ending-alone');
  it('is told where endings are out of order or a number is left out', () => {
    expect(told('2. c5 | (ending 1) d :|| (ending 3) e')).toEqual(['Bar 2c: ending 3 has no ending 2 before it.']);
    expect(told('2. c5 | (ending 2) d :|| (ending 1) e')).toHaveLength(2);
  });
  it('is told of a first one by itself', () => {
    expect(told('2. c5 | (ending 1) d :||')).toEqual(['Bar 2a: ending 1 has no ending 2 after it.']);
    expect(told('2. c5 | (ending 1) d :|| e | f | (ending 1) d :|| (ending 2) e')).toHaveLength(1);
  });
  it('is told at the ending', () => {
    const { range } = findingOf(strain('2. c5 | (ending 1) d :||'), 'ending-alone');
    expect(range.end.offset - range.start.offset).toBe('(ending 1)'.length);
  });
  it('is none where endings follow one another, over several bars and systems too', () => {
    expect(told('2. c5 | (ending 1) d | e :|| (ending 2) d | e :|| (ending 3) f')).toEqual([]);
    const over = passage(`system upper C1 lower F4 meter 3 = 3/4
  dessus | 2. c5 | (ending 1) d :||
system
  dessus | (ending 2) 2. d5 ||| `);
    expect(codes(over)).not.toContain('ending-alone');
  });
});
