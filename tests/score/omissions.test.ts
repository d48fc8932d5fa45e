/** What a witness leaves out: `omit` is exempt from equal time and barlines (the reference says so; common practice of apparatus). */
import { describe, expect, it } from 'vitest';
import { format } from '../../grammar/time';
import { durations, errors, eventsIn, passage, scoreOf, sound } from '../helpers/music';

const C = 'system upper C1 lower F4 meter C\n';
const barsOf = (analysis: ReturnType<typeof passage>, choice: string): string =>
  scoreOf(analysis, choice)
    .pieces.flatMap((piece) => piece.bars.map((bar) => format(bar.duration)))
    .join(' ');

describe('a place that a witness omits', () => {
  it('leaves a shorter bar where the piece has but this voice', () => {
    const alone = passage(`${C} dessus | 2 c5 <v1 K: 2 d5 ; L: omit> | 1 c5 |||\n`);
    expect(errors(alone)).toEqual([]);
    expect(sound(alone, 'dessus', 'L')).toBe('c5 c5');
    expect(barsOf(alone, 'L')).toBe('1/2 1');
  });
  it('is empty time where the other voices go on, so that what follows keeps its beat', () => {
    const two = passage(`${C} dessus | 4 c5 <K: 4 d5 ; L: omit> 2 e5 |||\n basse | 2 c3 e |||\n`);
    expect(errors(two)).toEqual([]);
    expect(sound(two, 'dessus', 'L')).toBe('c5 _ e5');
    expect(durations(two, 'dessus', 'L')).toBe('1/4 1/4 1/2');
    expect(eventsIn(two, 'dessus', 'L').map(({ onset }) => format(onset))).toEqual(['0', '1/4', '1/2']);
  });
  it('takes its bars with it where all voices omit them', () => {
    const gone = passage(
      `${C} dessus | 1 c5 | <v1 K: 1 d5 | 2 e f ; L: omit> | 1 g5 |||\n basse | 1 c3 | <v1 K: 1 g3 | 2 c d ; L: omit> | 1 e3 |||\n`,
    );
    expect(errors(gone)).toEqual([]);
    expect(barsOf(gone, 'K')).toBe('1 1 1 1');
    expect(barsOf(gone, 'L')).toBe('1 1');
    expect(sound(gone, 'basse', 'L')).toBe('c3 e3');
  });
  it('keeps the bars that only one voice omits', () => {
    const one = passage(`${C} dessus | 1 c5 | <K: 1 d5 | 2 e f ; L: omit> | 1 g5 |||\n basse | 1 c3 | g | c | e |||\n`);
    expect(errors(one)).toEqual([]);
    expect(barsOf(one, 'L')).toBe('1 1 1 1');
    expect(sound(one, 'dessus', 'L')).toBe('c5 _ _ g5');
  });
  it('joins what stands around an omitted barline', () => {
    const joined = passage(`${C} dessus | 2 c5 <K: 2 d5 | 2 e5 ; L: omit> 2 f5 |||\n`);
    expect(errors(joined)).toEqual([]);
    expect(sound(joined, 'dessus', 'L')).toBe('c5 f5');
    expect(barsOf(joined, 'L')).toBe('1');
  });
  it('is empty time in a loose system too, so that the barlines stay together', () => {
    const loose = passage(
      'system loose upper C1 lower F4 meter C\n dessus | 2 c5 <K: 2 d5 ; L: omit> 1 e5 |||\n basse | 1 c3 d |||\n',
    );
    expect(errors(loose)).toEqual([]);
    expect(eventsIn(loose, 'dessus', 'L').map(({ onset }) => format(onset))).toEqual(['0', '1/2', '1']);
  });
  it('is empty time at the end of a lane of a loose system, and nothing where all omit it', () => {
    const LOOSE = 'system loose upper C1 lower F4 meter C\n';
    const one = passage(`${LOOSE} dessus | 1 c5 d |||\n basse | 1 c3 | <K: 1 d3 ; L: omit> |||\n`);
    expect(errors(one)).toEqual([]);
    expect(sound(one, 'basse', 'L')).toBe('c3 _');
    const all = passage(
      `${LOOSE} dessus | 1 c5 | <K: 1 d5 ; L: omit> | 1 e5 |||\n basse | 1 c3 <K: 1 d3 ; L: omit> | 1 e3 |||\n`,
    );
    expect(barsOf(all, 'L')).toBe('1 1');
  });
  it('is measured within a tuplet by the tuplet', () => {
    const three = passage(
      `${C} dessus | {3in2 8 c5 d <K: 8 d5 ; L: omit>} 4 f5 <K: 4 d5 ; L: omit> 4 g5 |||\n basse | 1 c3 |||\n`,
    );
    expect(errors(three)).toEqual([]);
    expect(eventsIn(three, 'dessus', 'L').map(({ onset }) => format(onset))).toEqual([
      '0',
      '1/12',
      '1/6',
      '1/4',
      '1/2',
      '3/4',
    ]);
  });
  it('keeps its bar where another voice rests or has a gap', () => {
    for (const filler of ['__', 'rbar', '2 a4 __']) {
      const beside = passage(
        `${C} dessus | 1 c5 | <K: 1 d5 ; L: omit> | 1 e5 |||\n taille | 1 a4 | ${filler} | 1 g4 |||\n basse | 1 c3 | <K: 1 d3 ; L: omit> | 1 e3 |||\n`,
      );
      expect(errors(beside)).toEqual([]);
      expect(barsOf(beside, 'L')).toBe('1 1 1');
    }
  });
  it('leaves the first half of a bar that the system end parts', () => {
    const parted = passage(
      `${C} dessus | 1 c5 | 2 d\n basse | 1 c3 | 2 d\nsystem\n dessus | <v1 K: 2 d5 ; L: omit> | 1 e5 |||\n basse | <v1 K: 2 d3 ; L: omit> | 1 e3 |||\n`,
    );
    expect(errors(parted)).toEqual([]);
    expect(barsOf(parted, 'L')).toBe('1 1/2 1');
  });
  it('takes its ending with it', () => {
    const ending = passage(
      `${C} dessus | 1 c5 | (ending 1) <K: 1 d5 ; L: omit> :|| (ending 2) 1 e5 |||\n basse | 1 c3 | <K: 1 d3 ; L: omit> :|| 1 e3 |||\n`,
    );
    expect(errors(ending)).toEqual([]);
  });
  it('is told where the bar is too long even so', () => {
    expect(errors(passage(`${C} dessus | 1 c5 <K: 2 d5 ; L: omit> 2 e5 |||\n basse | 1 c3 |||\n`))).toContain(
      'bar-too-long',
    );
  });
});

describe('options of one place', () => {
  it('have equal time also where a doubtful value holds for one event', () => {
    expect(errors(passage(`${C} dessus | 2 c5 <K: 4 d5 e ; L: 4? d5 4 e> |||\n`))).toEqual([]);
    expect(errors(passage(`${C} dessus | 4 c5 <K: 4 d5 e f ; L: 4 d5 4? e f> |||\n`))).toEqual([]);
  });
  it('leave stave and stems as they were before', () => {
    const up = passage(`${C} basse | 4 c3 <K: (up) 4 c4 (stems down) ; L: 4 c3> 4 d3 e |||\n`);
    expect(eventsIn(up, 'basse', 'K').map(({ event }) => [event.stave, event.stems ?? '-'])).toEqual([
      [1, '-'],
      [0, '-'],
      [1, '-'],
      [1, '-'],
    ]);
  });
});

describe('a place that stands at several places', () => {
  it('is decided once, where it first stands', () => {
    const twice = passage(`${C} dessus | <v1 K: 1 c5 ; L: 1 d5> |||\n basse | <v1 L: 1 c3 ; K: 1 d3> |||\n`);
    expect([sound(twice, 'dessus'), sound(twice, 'basse')]).toEqual(['c5', 'd3']);
    expect([sound(twice, 'dessus', 'L'), sound(twice, 'basse', 'L')]).toEqual(['d5', 'c3']);
  });
  it('gives a source its own option where it has one, though it has none where the place first stands', () => {
    const missing = passage(
      `${C} dessus | <v1 K: 1 c5 ; L: 1 d5> | <v1 K: 1 e5 ; M: 1 f5> |||\n`,
      'source M "a third copy"\n',
    );
    expect(sound(missing, 'dessus', 'M')).toBe('c5 f5');
    expect(sound(missing)).toBe('c5 e5');
  });
  it('gives a source its own option where it parts from the source with which it agrees at the first place', () => {
    const parting = passage(
      `${C} dessus | <v1 K: 1 c5 ; L,M: 1 d5> | <v2 K: 1 e5 ; L: 1 f5 ; M?: 1 g5> |||\n`,
      'source M "a third copy"\nlink v1 v2\nreading late "the copy, else the book"\n  takes M,K\n',
    );
    expect(sound(parting, 'dessus', 'L')).toBe('d5 f5');
    expect(sound(parting, 'dessus', 'M')).toBe('d5 g5');
    expect(sound(parting, 'dessus', 'late')).toBe('d5 g5');
  });
  it('gives a source its own option also where a hand of it stands for it at the first place', () => {
    const ofHand = passage(
      `${C} dessus | <v1 K: 1 c5 ; L,M.2: 1 d5> | <v2 K: 1 e5 ; L: 1 f5 ; M: 1 g5> |||\n`,
      'source M "a third copy"\nhand M.2 "its corrector"\nlink v1 v2\n',
    );
    expect(sound(ofHand, 'dessus', 'M')).toBe('d5 g5');
    expect(sound(ofHand, 'dessus', 'M.2')).toBe('d5 g5');
  });
  it('gives a hand its own option where the place first stands with its source alone', () => {
    const corrected = passage(
      `${C} dessus | <v1 K: 1 c5 ; L: 1 d5> | <v2 K: 1 e5 ; K.2: 1 f5 ; L: 1 g5> |||\n`,
      'hand K.2 "its corrector"\nlink v1 v2\n',
    );
    expect(sound(corrected, 'dessus', 'K')).toBe('c5 e5');
    expect(sound(corrected, 'dessus', 'K.2')).toBe('c5 f5');
  });
  it('follows the nearest reading that says something of it or of a place linked to it', () => {
    const nearer = passage(
      `${C} dessus | <v1 K: 1 c5 ; L: 1 d5> | <v2 K: 1 e5 ; L: 1 f5> |||\n`,
      'link v1 v2\nreading r1 "the leaf"\n  at v1 takes L\nreading r2 "the book after all"\n  from r1\n  at v2 takes K\n',
    );
    expect(sound(nearer, 'dessus', 'r1')).toBe('d5 f5');
    expect(sound(nearer, 'dessus', 'r2')).toBe('c5 e5');
  });
  it('goes with the places linked to it', () => {
    const linked = passage(
      `${C} dessus | <v1 K: 1 c5 ; L: 1 d5> | <v2 K: 1 c5 ; L: 1 d5> |||\n`,
      'link v1 v2\nreading a "takes the leaf at the first place"\n  at v1 takes L\n',
    );
    expect(sound(linked, 'dessus', 'a')).toBe('d5 d5');
    expect(sound(linked)).toBe('c5 c5');
  });
});

describe('a bar of a witness lane', () => {
  const two = (main: string, witness: string, basse: string): ReturnType<typeof passage> =>
    passage(`${C} dessus | ${main} |||\n dessus L | ${witness} |||\n basse | ${basse} |||\n`);
  const closings = (analysis: ReturnType<typeof passage>, choice: string): string =>
    scoreOf(analysis, choice)
      .pieces.flatMap(({ bars }) => bars.map(({ closing }) => closing?.shape))
      .join(' ');
  it('has the repeat signs that the main lane types for all', () => {
    expect(closings(two('1 c5 :|| 1 d5', '2 c5 e |', '1 c3 | d'), 'L')).toBe(':|| |||');
  });
  it('has the signature, endings and sections that the main lane types for all', () => {
    const sharp = two('1 c5 | (now key f#) 1 f5 | 1 f5', '1 c5 | 2 f5 g | ', '1 c3 | d | c');
    expect(sound(sharp, 'dessus', 'L')).toBe('c5 f#5 g5 f#5');
    const ends = two('1 c5 | (ending 1) 1 d5 :|| (ending 2) 1 e5', '1 c5 | 2 d5 e | 2 e5 f', '1 c3 | d | c');
    const numbers = scoreOf(ends, 'L').pieces[0]?.bars.map(({ number }) => number);
    expect(numbers).toEqual(['1', '2a', '2b']);
  });
  it('that is empty may still have a barline of its own', () => {
    expect(closings(two('1 c5 | 1 d5', ' :|| 1 e5', '1 c3 | d'), 'L')).toBe(':|| |||');
    expect(closings(two('1 c5 | 1 d5', ' :|| 1 e5', '1 c3 | d'), 'written')).toBe('| |||');
  });
  it('belongs to one lane of its witness', () => {
    const twice = passage(`${C} dessus | 1 c5 |||\n dessus L | 1 d5 |||\n dessus L | 1 e5 |||\n`);
    expect(errors(twice)).toEqual(['lane-twice']);
  });
});

describe('a witness lane', () => {
  it('has as many bars as the lane it stands under', () => {
    const more = passage(`${C} dessus | 1 c5 | d |||\n dessus L | | 1 e5 | f |||\n`);
    expect(errors(more)).toEqual(['bar-count']);
  });
});
