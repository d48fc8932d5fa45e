/** Keys that an ornament needs and another note has: common practice. */
import { describe, expect, it } from 'vitest';
import { format, toNumber } from '../../grammar/time';
import { eventsOfVoice, type Passage, performed, played, problemsIn } from '../helpers/realised';

const by = (table: string, ...lanes: string[]): Passage => ({ lanes, table, tempo: '4 at 60' });
const in1689 = (...lanes: string[]): Passage => by('anglebert-1689', ...lanes);

/** Seconds, at sixty crotchets a minute, for which the keys of a voice come up before their notes end. */
const releases = (passage: Passage, voice = 0): number[] =>
  eventsOfVoice(performed(passage), voice).map(({ released }) => (released === undefined ? 0 : 4 * toNumber(released)));

describe('a key that an ornament of the same hand needs', () => {
  it('is given up by the other note of the chord after the stroke that both have', () => {
    const chord = in1689("2 d5'zz-e e");
    const [, other] = eventsOfVoice(performed(chord));
    expect(other && format(other.duration)).toBe('1/44');
    expect(problemsIn(chord)).toEqual(['key-held']);
  });

  it('is given up to a small note by the voice that holds it', () => {
    const held = in1689('4 c5 {small 8 e} 2. d', '1 e5');
    expect(played(held, 1)).toBe('e5:1/4 e5:3/4');
    expect(problemsIn(held)).toEqual(['key-shared']);
  });
});

describe('a key that another voice has held through a bar of very many notes', () => {
  // Common time for twelve maximas: 384 crotchets, of which the last bears the trill.
  const bar = (crotchets: number, held: string): Passage =>
    in1689(`4 ${'c5 '.repeat(crotchets - 1)}d5'zz (irregular)`, `${held} (irregular)`);

  it('is given up to a trill on its last crotchet as in a bar of four', () => {
    const [many, four] = [bar(384, `Mx d5 ${'= '.repeat(11)}`), bar(4, '1 d5')].map((passage) =>
      eventsOfVoice(performed(passage), 1).slice(1),
    );
    expect(many?.map(({ kind, duration }) => [kind, format(duration)])).toEqual(
      four?.map(({ kind, duration }) => [kind, format(duration)]),
    );
    expect(many).toHaveLength(2);
    expect(problemsIn(bar(384, `Mx d5 ${'= '.repeat(11)}`))).toEqual(['key-shared']);
  });
});

describe('the same note in two voices', () => {
  it('is the end of the trill that one of them bears', () => {
    const unison = in1689("1 d5'zz", '1 d5');
    expect(played(unison, 1)).toMatch(/^r:\S+ d5:\S+$/);
    const [own, other] = [0, 1].map((voice) => eventsOfVoice(performed(unison), voice).at(-1)?.onset);
    expect(own && other && format(own) === format(other)).toBe(true);
    expect(problemsIn(unison)).toEqual(['key-shared']);
  });

  it('sounds until the trill strikes its key, if it is held from before', () => {
    expect(played(in1689("2 c5 d'zz", '1 d5'), 1)).toBe('d5:23/44 r:5/11 d5:1/44');
  });

  it('is struck at one moment by Couperin’s unisson (1713: from memory)', () => {
    const unison = by('couperin-1713', "2 d5'unisson e", "2 d5'unisson c");
    expect([played(unison), played(unison, 1)]).toEqual(['d5:1/2 e5:1/2', 'd5:1/2 c5:1/2']);
  });

  it('is left as written in print', () => {
    expect(played({ ...in1689("1 d5'zz", '1 d5'), form: 'print' }, 1)).toBe('d5:1');
  });
});

describe('a key that is struck again', () => {
  it('comes up an eighth of its note before a trill that begins with it, if no curve leads over', () => {
    // A minim of two seconds: a quarter of one.
    expect(releases(by('couperin-1713', "2 e5 d'zz"))[0]).toBe(0.25);
    expect(releases(by('couperin-1713', "2 e5'u d'zz'."))[0]).toBe(0);
  });

  it('comes up at least 80 ms before', () => {
    expect(releases(in1689("8 d5 d'ca 2. e"))[0]).toBeCloseTo(0.08, 9);
  });

  it('comes up after a sign too, if the next note has it', () => {
    expect(releases(in1689("2 d5'ca d")).map((time) => time > 0)).toEqual([false, false, true, false]);
    expect(releases(in1689("2 d5'ca e")).every((time) => time === 0)).toBe(true);
  });

  it('comes up in another voice, whose note ends where an ornament begins on it', () => {
    expect(releases(in1689("2 r c5'zz", '2 d5 a4'), 1)[0]).toBe(0.25);
  });

  it('is not shortened in print', () => {
    expect(releases({ ...in1689("2 d5 d'ca"), form: 'print' }).every((time) => time === 0)).toBe(true);
  });
});
