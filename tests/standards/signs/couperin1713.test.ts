/** François Couperin, “Explication des agrémens, et des signes”, 1713; L'art, 1716–17. All from memory where not said otherwise. */
import { describe, expect, it } from 'vitest';
import { notes, type Passage, played, problemsIn } from '../../helpers/realised';

const by1713 = (lane: string, more: Partial<Passage> = {}): Passage => ({
  lanes: [lane],
  table: 'couperin-1713',
  tempo: '4 at 60',
  ...more,
});

describe('The table of 1713', () => {
  it('has a pincé simple and a pincé double, of one and two strokes below', () => {
    expect(notes(by1713("2 d5'zs"))).toBe('d5 c5 d5');
    expect(notes(by1713("4 d5'zzs", { meter: '1/4' }))).toBe('d5 c5 d5 c5 d5');
  });

  it('has a pincé continu that fills the whole value and stops on its note', () => {
    const beaten = played(by1713("2 d5'wls", { meter: '1/2' })).split(' ');
    const lengths = new Set(beaten.map((note) => note.split(':')[1]));
    expect(beaten[0]).toMatch(/^d5/);
    expect(beaten.at(-1)).toMatch(/^d5/);
    expect(lengths.size).toBe(1);
  });

  it('stops every pincé on the note where it stands, inside its value (1716–17)', () => {
    for (const value of ['1', '2', '4', '8']) {
      expect(notes(by1713(`${value} d5'zzs`, { meter: '' }))).toMatch(/d5$/);
    }
  });

  it('inflects with an accidental at the pincé the note below and not the note itself', () => {
    expect(notes(by1713("2 d5'zs'#"))).toBe('d5 c#5 d5');
    expect(notes(by1713("2 d5'zs'b"))).toBe('d5 cb5 d5');
  });

  it('strikes the small note of a port de voix with the harmony: on the beat, in the time of its note (1716–17)', () => {
    expect(played(by1713('2 c5 {small 8 c} 2 d'))).toBe('c5:1/2 c5:1/4 d5:1/4');
  });

  it('has a port de voix simple and a double: the small note, then the pincé', () => {
    expect(notes(by1713("2 c5 {small 8 c} 2 d'zs"))).toBe('c5 c5 d5 c5 d5');
    expect(notes(by1713("2 c5 {small 8 c} 2 d'zzs"))).toBe('c5 c5 d5 c5 d5 c5 d5');
  });

  it('begins a trill with the upper note, struck again where it is détaché', () => {
    expect(notes(by1713("2 e5 d'zz"))).toMatch(/^e5 e5 d5 e5 /);
  });

  it('leans on the upper note that is slurred over and does not strike it again: appuyé et lié', () => {
    const bound = played(by1713("2 e5'u d'zz'."));
    expect(bound).toMatch(/^e5:5\/8 d5:/);
  });

  it('lets a tremblement continu fill the value without a stop', () => {
    const [, ...strokes] = played(by1713("1 d5'wl")).split(' ').reverse();
    const stop = played(by1713("1 d5'wl")).split(' ').at(-1);
    const lasts = (note = ''): number =>
      (note.split(':')[1] ?? '')
        .split('/')
        .map(Number)
        .reduce((n, d) => n / d);
    expect(lasts(stop)).toBeLessThanOrEqual(lasts(strokes[0]));
  });

  it('begins a long trill more slowly than it ends (1716–17), and prints it even (1713)', () => {
    const lengths = (form: 'play' | 'print'): number[] =>
      played(by1713("1 d5'wl", { form }))
        .split(' ')
        .map((note) =>
          (note.split(':')[1] ?? '')
            .split('/')
            .map(Number)
            .reduce((n, d) => n / d),
        );
    const heard = lengths('play');
    expect(heard[0]).toBeGreaterThan((heard.at(-2) ?? 0) * 1.4);
    expect(heard.every((length, i) => i === 0 || length <= (heard[i - 1] ?? 0))).toBe(true);
    expect(new Set(lengths('print'))).toEqual(new Set([1 / 32]));
  });

  it('has a doublé of four notes from above', () => {
    expect(notes(by1713("4 d5'turn", { meter: '1/4' }))).toBe('e5 d5 c5 d5');
  });

  it('fills thirds with its tierces coulées, rising and falling', () => {
    expect(notes(by1713("2 c5-e'stu"))).toBe('c5 d5 e5');
    expect(notes(by1713("2 c5-e'std"))).toBe('e5 d5 c5');
  });

  it('spreads a chord up or down, as the hook of its sign shows', () => {
    expect(notes(by1713("1 c5-e-g'arpu"))).toBe('c5 e5 g5');
    expect(notes(by1713("1 c5-e-g'arpd"))).toBe('g5 e5 c5');
  });

  it('ends an aspiration in silence and begins a suspension with it (Grove, “Ornaments”: confirmed)', () => {
    expect(notes(by1713("2 d5'wedge"))).toBe('d5 r');
    expect(notes(by1713("2 d5'archs"))).toBe('r d5');
  });

  it('does not say whether the trill with a turn sign above it begins with the turn (disputed 2017 and 2018): it is chosen', () => {
    expect(problemsIn(by1713("2 d5'zz'turn"))).toEqual(['sign-unresolved']);
    expect(notes(by1713("2 d5'zz(trill_first)'turn"))).toMatch(/^e5 d5 .*c5 d5$/);
    expect(notes(by1713("2 d5'zz(turn_first)'turn"))).toMatch(/^e5 d5 c5 d5 e5 /);
  });

  it('touches the note above at the end of an accent, before the next beat', () => {
    expect(notes(by1713("2 d5'sa"))).toBe('d5 e5');
  });
});
