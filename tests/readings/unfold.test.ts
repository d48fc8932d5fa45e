/**
 * What is played of a piece in which order (common practice). The petite reprise: the last phrase once more after the repeat
 * of the second half, A A B B b (facts of overture and petite reprise, from memory).
 */
import { describe, expect, it } from 'vitest';
import { format } from '../../grammar/time';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { perform } from '../../server/readings/perform';
import type { Performance } from '../../server/score/performance';
import { sampleAnalysis } from '../helpers/samples';
import { scoreOf } from '../helpers/scores';

const playedOut = (music: string, before = '', reading = 'written'): Performance =>
  perform(
    scoreOf(
      `bentside 1\n${before}\nstave upper\nvoice dessus upper\nsystem upper G2 meter C\n  dessus | ${music}\n`,
      reading,
    ),
    { repeats: 'played' },
  );

const notes = (performance: Performance): string =>
  performance.pieces
    .flatMap(({ events }) => events)
    .map(({ onset, pitch, duration }) => `${format(onset)} ${pitch && pitchText(pitch)}:${format(duration)}`)
    .join(', ');
const pitches = (performance: Performance): string =>
  performance.pieces
    .flatMap(({ events }) => events)
    .map(({ pitch }) => pitch?.letter)
    .join('');
const sections = (performance: Performance): string[] =>
  performance.pieces.flatMap(({ passes = [] }) => passes.map(({ section, time }) => `${section ?? '-'}${time}`));

describe('a piece without an order', () => {
  it('is played as its dots say, once or twice', () => {
    expect(pitches(playedOut('1 c5 | d :|| e | f :|| g |||'))).toBe('cdcdefefg');
    expect(pitches(playedOut('1 c5 ||: d | e :||: f :|| g |||'))).toBe('cdedeffg');
  });

  it('takes the nth ending the nth time', () => {
    expect(pitches(playedOut('1 c5 | (ending 1) d :|| (ending 2) e || f |||'))).toBe('cdcef');
    expect(pitches(playedOut('1 c5 | (ending 1) d :|| (ending 2) e :|| (ending 3) f || g |||'))).toBe('cdcecfg');
  });

  it('holds what is tied into each ending alike', () => {
    expect(notes(playedOut('1 c5= | (ending 1) c :|| (ending 2) c |||'))).toBe('0 c5:2, 2 c5:2');
  });

  it('plays an upbeat before each time', () => {
    expect(notes(playedOut('4 c5 | 2. d :|| 4 e | 2. f :||'))).toBe(
      '0 c5:1/4, 1/4 d5:3/4, 1 c5:1/4, 5/4 d5:3/4, 2 e5:1/4, 9/4 f5:3/4, 3 e5:1/4, 13/4 f5:3/4',
    );
  });
});

describe('an order', () => {
  const strains = '(section A) 1 c5 :|| (section B) d | (section petite in B) e :||';

  it('plays the petite reprise once more after the second half', () => {
    const performance = playedOut(strains, 'order A A B B petite');
    expect(pitches(performance)).toBe('ccdedee');
    expect(sections(performance)).toEqual(['A1', 'A2', 'B1', 'B2', 'petite1']);
  });

  it('of a reading goes before that of the file', () => {
    const before = 'order A A B B petite\nreading short "each once"\n  order A B';
    expect(pitches(playedOut(strains, before, 'short'))).toBe('cde');
  });

  it('that names no section of the piece is not followed: the dots hold', () => {
    expect(pitches(playedOut('1 c5 | d :||', 'order A B'))).toBe('cdcd');
    expect(pitches(playedOut(strains, 'order A C'))).toBe('c');
  });

  it('says of every event from which written note it comes', () => {
    const [first, second] = playedOut(strains, 'order A A B').pieces[0]?.events ?? [];
    expect(second?.from).toBe(first?.from);
    expect([first?.pass, second?.pass]).toEqual([0, 1]);
  });
});

describe('the allemande', () => {
  it('lasts as long as its order makes it: nine bars and ten, each twice, and three', () => {
    const score = sampleAnalysis('allemande.bent').score('inegal');
    const piece = score && perform(score, { repeats: 'played' }).pieces[0];
    expect(piece?.passes?.map(({ section, time }) => `${section}${time}`)).toEqual(['A1', 'A2', 'B1', 'B2', 'petite1']);
    // The petite reprise begins on its downbeat; its last bar lacks the upbeat's semiquaver.
    const last = piece?.passes?.at(-1);
    expect(last && format(last.onset)).toBe('38');
  });
});
