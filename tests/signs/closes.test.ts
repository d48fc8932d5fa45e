/** How a trill begins and ends by what comes after it: common practice, unless a source is named. */
import { describe, expect, it } from 'vitest';
import { finished } from '../../grammar/finished';
import { add, divide, format, type Time, time, toNumber } from '../../grammar/time';
import { perform } from '../../server/readings/perform';
import type { Performance } from '../../server/score/performance';
import { realisingSigns } from '../../server/signs/realise';
import { tableInForce } from '../../server/signs/rows';
import { eventsOfVoice, notes, type Passage, performed, played, problemsIn } from '../helpers/realised';

const by = (table: string, ...lanes: string[]): Passage => ({ lanes, table, tempo: '4 at 60' });

/** The last note that a trill plays, with its length. */
const stopIn = (passage: Passage, count = 1): string => {
  const own = eventsOfVoice(performed(passage)).filter(({ realised }) => realised !== undefined);
  return own
    .slice(-count)
    .map(({ pitch, duration }) => `${pitch?.letter}:${format(duration)}`)
    .join(' ');
};
/** The length of the first note of the sign. */
const leanIn = (passage: Passage): number => {
  const first = eventsOfVoice(performed(passage)).find(({ realised }) => realised !== undefined);
  return first === undefined ? 0 : toNumber(first.duration);
};

describe('a trill before its anticipation', () => {
  it('has no suffix, though its sign would have one, and stops on the dot', () => {
    // The stroke on which it stops is a fortieth, the dot a quaver.
    expect(stopIn(by('anglebert-1689', "4. b4'zc 8 c5 2 c"))).toBe('b:3/20');
    expect(stopIn(by('anglebert-1689', "4. b4'zc 8 a 2 c5"), 3)).toMatch(/^b:\S+ a:\S+ b:\S+$/);
  });

  it('stops for a third of its note where that has no dot', () => {
    const stop = stopIn(by('chambonnieres-1670', "2 b4'zz 8 c5 4. c")).split(':')[1] ?? '';
    expect(stop).toBe('4/21');
    // One stroke of a forty-second, and a sixth of a semibreve.
    expect(format(add(time(1, 42), time(1, 6)))).toBe(stop);
  });
});

describe('a trill on a note tied on', () => {
  const tied = (bass: string): Passage => by('chambonnieres-1670', "2. d5='zz 4 d", bass);

  it('does not stop where the bass goes to another note under the tie', () => {
    const [stroke, stop] = stopIn(tied('2. g3 4 b'), 2)
      .split(' ')
      .map((note) => note.split(':')[1]);
    expect(stop).toBe(stroke);
  });

  it('stops where the bass stays', () => {
    const [stroke, stop] = stopIn(tied('1 g3'), 2)
      .split(' ')
      .map((note) => note.split(':')[1]);
    expect([stroke, stop]).toEqual(['1/42', '5/14']);
    // A stroke, and a third of the note.
    expect(format(add(time(1, 42), time(1, 3)))).toBe(stop);
  });
});

describe('a trill on a note that performance has stretched', () => {
  /** The passage with its dotted note longer and the next as much shorter, as if by a practice. */
  function stretched(lane: string, by: Time): Performance {
    const written = performed({ lanes: [lane], table: 'chambonnieres-1670', tempo: '4 at 60' });
    const plain = perform(written.score, { ornaments: 'sign' });
    const table = tableInForce('chambonnieres-1670', written.score.environment);
    if (table === undefined) throw new Error('no table');
    const pieces = plain.pieces.map((piece) => ({
      ...piece,
      events: piece.events.map((event, index) => {
        if (index === 0) return { ...event, duration: add(event.duration, by) };
        if (index !== 1) return event;
        const onset = add(event.onset, by);
        return { ...event, onset, duration: add(event.duration, { n: -by.n, d: by.d }) };
      }),
    }));
    return finished(realisingSigns({ ...plain, pieces }, { table, tempo: undefined, ownTempo: false, form: 'play' }));
  }

  it('stops for half of the longer dot', () => {
    const own = eventsOfVoice(stretched("4. d5'zz 8 c 2 d", time(1, 16))).filter(({ realised }) => realised);
    const [stroke, stop] = [own[0]?.duration, own.at(-1)?.duration];
    // The dot has become three semiquavers; the last stroke stands on the note too.
    expect(stroke && stop && format(stop)).toBe(stroke && format(add(stroke, divide(time(3, 16), time(2)))));
  });

  it('leaves no time for a sign on the short note after it, which is told', () => {
    const performance = stretched("4. d5 8 c'zz 2 d", time(1, 16));
    expect(eventsOfVoice(performance).map(({ pitch }) => pitch?.letter)).toEqual(['d', 'c', 'd']);
    expect(performance.problems.map(({ problem }) => problem.code)).toContain('sign-snapped');
  });
});

describe('a plain trill before a close', () => {
  const CLOSE = ["2 d5'zz c", '2 g3 c'] as const;

  it('leans on its first note where the table has no other trill that does (Hotteterre 1707, ch. IV, of slow movements)', () => {
    expect(leanIn(by('chambonnieres-1670', ...CLOSE))).toBe(1 / 8);
    expect(notes(by('chambonnieres-1670', ...CLOSE))).toMatch(/^e5 d5 e5 d5 .*d5 c5$/);
    expect(leanIn({ ...by('chambonnieres-1670', ...CLOSE), tempo: '4 at 40' })).toBe(1 / 4);
  });

  it('does not where the table tells the leaning trill from the plain one', () => {
    expect(leanIn(by('anglebert-1689', ...CLOSE))).toBeLessThan(1 / 32);
  });

  it('does not where no close follows: the music goes on, the bass does not fall a fifth, or the note is short', () => {
    expect(leanIn(by('chambonnieres-1670', "2 d5'zz 4 c d", '2 g3 c'))).toBeLessThan(1 / 32);
    expect(leanIn(by('chambonnieres-1670', "2 d5'zz c", '2 f3 e'))).toBeLessThan(1 / 32);
    expect(leanIn({ ...by('chambonnieres-1670', ...CLOSE), tempo: '2 at 100' })).toBeLessThan(1 / 8);
  });

  it('leans over an anticipation to its final', () => {
    const close = by('chambonnieres-1670', "4. d5'zz 8 c 2 c", '2 g3 c');
    expect(leanIn(close)).toBe(3 / 32);
  });
});

describe('trills in thirds and sixths', () => {
  it('have the same strokes at the same moments, though one of them is followed by an anticipation', () => {
    const both = by('chambonnieres-1670', "2 d5'zz 8 c 4. c", "2 b4'zz 2 c5");
    const onsets = (voice: number): string[] =>
      eventsOfVoice(performed(both), voice)
        .filter(({ realised }) => realised !== undefined)
        .map(({ onset }) => format(onset));
    expect(onsets(1)).toEqual(onsets(0));
  });
});

describe('a trill against another hand', () => {
  it('is not bound to its notes, but stops with one of them where one is near (Frescobaldi 1615, from memory)', () => {
    const stop = (bass: string): string => stopIn(by('chambonnieres-1670', "2 d5'zz e", bass));
    // The stop of a minim is its last quaver; beside triplets it is the last of three.
    expect(stop('4 g3 a 2 b')).not.toBe(stop('{3in2 4 g3 a b} 2 c4'));
  });
});

describe('a note too short for its sign', () => {
  it('is told with its time and the tempo', () => {
    const quick = { ...by('anglebert-1689', "16 d5'zz e f g 2. a"), tempo: '2 at 63' };
    const [told] = performed(quick).problems;
    expect(told?.problem.slots).toMatchObject({ ms: 119, tempo: '63 minims a minute' });
    expect(problemsIn(quick)).toEqual(['sign-too-short']);
    expect(played(quick)).toMatch(/^d5:1\/16 e5:1\/16/);
  });
});
