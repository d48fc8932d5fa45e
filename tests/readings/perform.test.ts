import { describe, expect, it } from 'vitest';
import { add, equal, format, ZERO } from '../../grammar/time';
import { score } from '../../server/library';
import { perform } from '../../server/readings/perform';
import type { PerformedEvent } from '../../server/score/performance';

const played = (...lanes: readonly string[]): readonly PerformedEvent[] => {
  const voices = lanes.map((_, i) => `voice v${i} upper`);
  const text = ['bentside 1', 'stave upper lines 5', ...voices, 'system  upper C1  meter C'];
  const whole = [...text, ...lanes.map((lane, i) => `  v${i} | ${lane}`), ''].join('\n');
  return perform(score(whole)).pieces.flatMap(({ events }) => events);
};

const asText = ({ onset, duration, pitch, kind }: PerformedEvent): string =>
  `${format(onset)}+${format(duration)} ${pitch === undefined ? kind : `${pitch.letter}${pitch.octave}`}`;

describe('a performance as written', () => {
  it('knows every written note of a tied chain, the first of them first', () => {
    const [tied] = played('2. c5= 4 = | 1 = |');
    expect(tied?.from.map(({ placed }) => placed.event.address)).toEqual(['1.1', '1.2', '2.1']);
    expect(tied === undefined ? '' : asText(tied)).toBe('0+2 c5');
  });

  it('is ordered by onset, then by voice as declared, then from the lowest pitch', () => {
    expect(played('2 e5 f', '2 g4-c 4 d4 e').map(asText)).toEqual([
      '0+1/2 e5',
      '0+1/2 c4',
      '0+1/2 g4',
      '1/2+1/2 f5',
      '1/2+1/4 d4',
      '3/4+1/4 e4',
    ]);
  });

  it('marks small notes and gives them no time; a main note after them sounds whole', () => {
    const events = played('2 c5 {small 8 d} 2 c |');
    expect(events.map(({ small }) => small)).toEqual([false, true, false]);
    expect(events.map(asText)).toEqual(['0+1/2 c5', '1/2+0 d5', '1/2+1/2 c5']);
  });

  it('joins no note of a first ending to one of the second, which is tied to what stands before both', () => {
    const events = played('1 d5= | (ending 1) 4 d c 2 d :|| (ending 2) 1 d |||');
    expect(events.map(asText)).toEqual(['0+5/4 d5', '5/4+1/4 c5', '3/2+1/2 d5', '2+1 d5']);
  });

  it('does not tie one voice to another, nor over a rest', () => {
    expect(played('2 c5= r | 1 c |').map(asText)).toEqual(['0+1/2 c5', '1/2+1/2 rest', '1+1 c5']);
  });

  it('keeps two notes of one key in a chord apart', () => {
    expect(played('1 c5=-c= | 1 c5-c |').map(asText)).toEqual(['0+2 c5', '0+2 c5']);
  });

  it('fills the time of a voice without a hole', () => {
    const events = played('4. c5 8 d= 4 d r | {3in2 4 e f g} 2 _ |');
    const end = events.reduce((at, { onset, duration }) => {
      expect(equal(at, onset)).toBe(true);
      return add(onset, duration);
    }, ZERO);
    expect(format(end)).toBe('2');
  });
});
