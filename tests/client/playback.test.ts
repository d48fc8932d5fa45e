/** Playing in the score panel: places that stay when the reading changes, loops, what sounds. */
import { describe, expect, it } from 'vitest';
import { Course } from '../../client/panel/page/course';
import { Timeline } from '../../client/panel/page/timeline';
import { playingOf } from '../../server/features/playing';
import { noFiles } from '../../server/workspace/host';
import { projectOf } from '../../server/workspace/project';
import { HEAD } from '../helpers/music';

function played(text: string, reading = 'written', pace = 1): Timeline {
  const project = projectOf(noFiles, 'air.bent', text);
  const playing = playingOf(project, { reading, tuning: null, pace, begin: { page: 0 } });
  if (playing === undefined) throw new Error('nothing is played');
  return new Timeline(playing);
}

/** At sixty crotchets a minute a crotchet is a second. */
const AIR = `${HEAD}tempo 4 at 60
reading french
  practice overdot
  signs anglebert-1689
reading slow
  tempo 4 at 30
page "2v"
system upper G2 lower F4 meter C
  dessus | 4. c5 8 d 4 e f | 2 g4 c5 :||: 4 g5 e5'zz c5 c4 :||
  basse  | 1 c3            | 1 e3    :||: 1 c3             :||
`;
const air = played(AIR);
const french = played(AIR, 'french');
const slow = played(AIR, 'slow');

const names = (timeline: Timeline, notes: readonly { readonly key: number | null }[]): string[] =>
  notes.map(({ key }) => timeline.playing.keys[key ?? -1]?.sounds ?? '-');

describe('a place in the music', () => {
  it('is the note that was struck last, in the bar as often as it was played', () => {
    expect(air.placeAt(1.9)).toEqual({ bar: 0, onset: 0.375, before: 0 });
    expect(air.placeAt(8 + 2.5)).toEqual({ bar: 0, onset: 0.5, before: 1 });
    expect(air.placeAt(0)).toEqual({ bar: 0, onset: 0, before: 0 });
  });

  it('is found again in another tempo', () => {
    expect(slow.secondsOf(air.placeAt(8 + 2.5))).toBeCloseTo(16 + 4, 3);
  });

  it('is found again where a practice plays its note late, and from there back', () => {
    // The quaver after the dot is a semiquaver: it comes when seven eighths of the minim are over.
    const late = french.secondsOf(air.placeAt(1.6));
    expect(late).toBeCloseTo(1.75, 2);
    expect(air.secondsOf(french.placeAt(late))).toBeCloseTo(1.5, 3);
  });

  it('in the midst of a trill is the note that bears it', () => {
    const trill = air.placeAt(16 + 1.5);
    expect(trill).toEqual({ bar: 2, onset: 0.25, before: 0 });
    expect(french.placeAt(french.secondsOf(trill) + 0.4)).toEqual(trill);
  });

  it('in a bar that another reading plays once is there the once', () => {
    const once = played(AIR.replaceAll(':||:', '||').replace(':||', '||'));
    expect(once.secondsOf(air.placeAt(8 + 2.5))).toBeCloseTo(2, 3);
  });
});

describe('what sounds', () => {
  it('is known at every moment', () => {
    expect(names(air, air.soundingAt(2.5)).sort()).toEqual(['c3', 'e5']);
  });
  it('is struck once in moments that follow one another', () => {
    const all = Array.from({ length: 240 }, (_, tenth) => air.struckIn({ from: tenth / 10, until: (tenth + 1) / 10 }));
    expect(all.flat()).toEqual(air.playing.notes);
  });
});

describe('a loop', () => {
  const second = air.between('2', '2');
  it('lasts from the beginning of its first bar to the end of its last', () => {
    expect(second).toEqual({ from: 4, until: 8 });
    expect(air.between('1', '2')).toEqual({ from: 0, until: 8 });
    expect(air.between('2', '1')).toEqual(air.between('1', '2'));
    expect(air.between('1', '99')).toBeUndefined();
  });

  it('comes round again, each time with the same notes', () => {
    const course = new Course(air, 4, second);
    const lap = (n: number): string[] =>
      names(
        air,
        course.struckIn(4 * n, 4 * n + 4).map(({ note }) => note),
      ).sort();
    expect(lap(0)).toEqual(['c5', 'e3', 'g4']);
    expect(lap(1)).toEqual(lap(0));
    expect(lap(250)).toEqual(lap(0));
    expect(course.at(4 * 250 + 1)).toBeCloseTo(5, 6);
  });

  it('is joined in the midst of it, and entered at its beginning from elsewhere', () => {
    expect(new Course(air, 6, second).at(0)).toBe(6);
    expect(new Course(air, 6, second).at(2.5)).toBeCloseTo(4.5, 6);
    expect(new Course(air, 17, second).at(0)).toBe(4);
  });

  it('lets go at its end what would sound beyond it', () => {
    const held = played(`${HEAD}tempo 4 at 60\nsystem upper G2 lower F4 meter C\n  dessus | 1 c5= | 1 c5 |\n`);
    const course = new Course(held, 0, held.between('1', '1'));
    expect(course.struckIn(0, 8).map(({ at, until }) => [at, until])).toEqual([
      [0, 4],
      [4, 8],
    ]);
  });
});

it('a piece without a loop is over at its end', () => {
  const course = new Course(air, 20);
  expect(course.at(3.9)).toBeCloseTo(23.9, 6);
  expect(course.at(4.1)).toBeUndefined();
  expect(course.struckIn(4, 100)).toEqual([]);
});
