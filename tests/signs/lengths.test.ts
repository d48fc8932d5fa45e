/** How long the notes of a sign are: common practice, unless a source is named. */
import { describe, expect, it } from 'vitest';
import { toNumber } from '../../grammar/time';
import { eventsOfVoice, notes, type Passage, performed, played, problemsIn } from '../helpers/realised';

const by = (table: string, lane: string, tempo: string, ...others: string[]): Passage => ({
  lanes: [lane, ...others],
  table,
  tempo,
});

const milliseconds = (passage: Passage): number[] => {
  const [value = 4, perMinute = 60] = (passage.tempo ?? '').split(' at ').map(Number);
  return eventsOfVoice(performed(passage)).map(({ duration }) =>
    Math.round((toNumber(duration) * value * 60_000) / perMinute),
  );
};

describe('a long pincé', () => {
  it('has one pair of strokes on a note of three quarters of a second, two on one of a second, three on one of two', () => {
    expect(notes(by('anglebert-1689', "4 d5'lca 2. e", '4 at 80'))).toBe('d5 c5 d5 e5');
    expect(notes(by('anglebert-1689', "4 d5'lca 2. e", '4 at 60'))).toBe('d5 c5 d5 c5 d5 e5');
    expect(notes(by('anglebert-1689', "2 d5'lca e", '4 at 60'))).toBe('d5 c5 d5 c5 d5 c5 d5 e5');
  });
});

describe('a pincé on a short note', () => {
  it('has strokes of 60 ms, as long as the note that stands has as much', () => {
    expect(milliseconds(by('anglebert-1689', "8 d5'ca e 2. f", '4 at 140')).slice(0, 3)).toEqual([60, 60, 94]);
    expect(problemsIn(by('anglebert-1689', "8 d5'ca e 2. f", '4 at 180'))).toEqual(['sign-too-short']);
  });
});

describe('a trill', () => {
  it('has a pair of strokes more where they would be slower than in slow movements, and are then no quicker than in gay ones', () => {
    // Half a second before the dot: six strokes of 89 ms, not four of 134.
    expect(milliseconds(by('chambonnieres-1670', "8. d5'zz 16 e 2. f", '4 at 56')).slice(0, 6)).toEqual([
      89, 89, 89, 89, 89, 357,
    ]);
  });
});

describe('a slide', () => {
  const slide = (lane: string, tempo: string): number[] =>
    milliseconds(by('anglebert-1689', `${lane}'ccb(slide) 2. e`, tempo));

  it('gives each of its notes an eighth of the main note, but no less than 60 and no more than 90 ms', () => {
    expect(slide('4 d5', '4 at 100').slice(0, 2)).toEqual([75, 75]);
    expect(slide('4 d5', '4 at 40').slice(0, 2)).toEqual([88, 88]);
    expect(slide('8 d5', '4 at 100').slice(0, 2)).toEqual([60, 60]);
  });
});

describe('a third with a note in passing', () => {
  const passing = (tempo: string): number | undefined => {
    const third = by('anglebert-1689', "4 c5-e'tcb 2. d", tempo);
    const [, second] = eventsOfVoice(performed(third));
    return second && Math.round((toNumber(second.duration) * 240_000) / Number(tempo.replace('4 at ', '')));
  };

  it('holds that for an eighth of its time, no less than 60 and no more than 90 ms', () => {
    expect(passing('4 at 100')).toBe(75);
    expect(passing('4 at 200')).toBe(60);
    expect(passing('4 at 40')).toBe(88);
  });

  it('is struck plain where it lasts less than a quarter of a second', () => {
    expect(passing('4 at 250')).not.toBe(60);
    expect(problemsIn(by('anglebert-1689', "4 c5-e'tcb 2. d", '4 at 250'))).toEqual(['sign-too-short']);
  });
});

describe('a spread chord in an upbeat', () => {
  it('has but 30 ms from note to note', () => {
    const onsets = eventsOfVoice(performed(by('anglebert-1689', "4. c5 8 d 4. e 8 c-e-g'scu | 1 c", '4 at 60')))
      .slice(3, 6)
      .map(({ onset }) => Math.round(toNumber(onset) * 4000));
    expect(onsets).toEqual([3500, 3529, 3559]);
  });
});

describe('an appoggiatura', () => {
  const lean = (lane: string, ...others: string[]): string =>
    played(by('turk-1789', lane, '4 at 60', ...others))
      .split(' ')
      .find((_, index, all) => all[index + 1]?.startsWith('d5') === true) ?? '';

  it('is short where it would make fifths with a middle voice, which moves with it (Türk, sec. 25: the harmony would suffer)', () => {
    expect(lean('2 d5 {small 8 e} 2 d', '2 g4 a', '2 g3 f')).toBe('e5:1/8');
    expect(lean('2 d5 {small 8 e} 2 d', '2 b4 b', '2 g3 g')).toBe('e5:1/4');
  });

  it('is short where it goes in octaves with the bass', () => {
    expect(lean('2 f5 {small 8 e} 2 d', '2 f3 e')).toBe('e5:1/8');
  });

  it('is short on the last short note before a barline', () => {
    expect(lean('2. c5 8 c {small 8 e} 8 d | 1 c')).toBe('e5:1/32');
  });

  it('has half of a dotted note too, but two thirds where the table says so (Türk, sec. 12)', () => {
    const onDotted = (table: string): string =>
      played(by(table, '4 d5 {small 8 d} 2. c', '4 at 60')).split(' ')[1] ?? '';
    expect([onDotted('turk-1789'), onDotted('couperin-1713')]).toEqual(['d5:1/2', 'd5:3/8']);
  });

  it('has half of a quaver in music without measure, which no tempo makes quick', () => {
    const free: Passage = { ...by('turk-1789', '8 g4 {small 8 d5} 8 c5 b4', '4 at 60'), meter: '', free: true };
    expect(played(free)).toBe('g4:1/8 d5:1/16 c5:1/16 b4:1/8');
  });

  it('is not short where it goes with the bass in a diminished fourth, which is no third', () => {
    expect(played(by('anglebert-1689', "4 e5 4 g'cb 2 f", '4 at 60', '4 d3 c# 2 d'))).toMatch(
      /^e5:1\/4 f5:1\/8 g5:1\/8 /,
    );
  });

  it('does not take the whole of a tied note, or the place of a rest, where the bass moves below it', () => {
    const tied = (bass: string): string => played(by('turk-1789', '{small 8 d5} 2. c5= 4 c', '4 at 60', bass));
    expect(tied('1 f3')).toBe('d5:3/4 c5:1/4');
    expect(tied('2 a3 4 b c4')).toBe('d5:1/2 c5:1/2');
    const rest = (bass: string): string => played(by('quantz-1752', '{small 8 d5} 2 c5 2 r', '4 at 60', bass));
    expect(rest('1 f3')).toBe('d5:1/2 c5:1/2');
    expect(rest('4 f3 g 2 a')).toBe('d5:1/4 c5:1/4 r:1/2');
  });
});

describe('in print', () => {
  const printed = (table: string, lane: string, tempo = '4 at 72'): string =>
    played({ ...by(table, lane, tempo), form: 'print' });

  it('a trill in a triplet has values of the triplet', () => {
    expect(printed('chambonnieres-1670', "{3in2 8 c5'zz d e} 2. c", '4 at 56')).toMatch(
      /^d5:1\/48 c5:1\/48 d5:1\/48 c5:1\/48 d5:1\/12 /,
    );
  });

  it('a note comes late by a value that can be written', () => {
    expect(printed('couperin-1713', "2 d5'archs e")).toBe('r:1/16 d5:7/16 e5:1/2');
  });

  it('a short appoggiatura has one too', () => {
    expect(printed('rameau-1724', "8 d5'cb e 2. f", '4 at 132')).toMatch(/^c5:3\/64 d5:5\/64 /);
  });

  it('a turn in slow time has 64ths where 32nds would be too slow', () => {
    expect(printed('anglebert-1689', "4. d5'turn 8 e 2 f", '4 at 40')).toMatch(
      /^e5:1\/64 d5:1\/64 c5:1\/64 d5:21\/64 /,
    );
  });
});
