/** A piece as it is played aloud: its keys, bars and places; for the score panel. */
import { describe, expect, it } from 'vitest';
import { playingOf } from '../../server/features/playing';
import type { Playing } from '../../server/features/protocol';
import { tuningOffers } from '../../server/features/tuning/offers';
import { noFiles } from '../../server/workspace/host';
import { type Project, projectOf } from '../../server/workspace/project';
import { HEAD } from '../helpers/music';

const project = (text: string): Project => projectOf(noFiles, 'air.bent', text);
const WISH = { reading: 'written', tuning: null, pace: 1, begin: { page: 0 } };
type Wish = Parameters<typeof playingOf>[1];
function playing(text: string, wish: Partial<Wish> = {}): Playing {
  const found = playingOf(project(text), { ...WISH, ...wish });
  if (found === undefined) throw new Error('nothing is played');
  return found;
}

const AIR = `${HEAD}tempo 4 at 60
page "2v"
system upper G2 lower F4 meter C
  dessus | 4 c5 d e f :||: 2 g5 c5 :||
  basse  | 1 c3       :||: 1 c3    :||
`;

const key = ({ keys }: Playing, index: number | null): string => (index === null ? '-' : (keys[index]?.sounds ?? '?'));
const ofVoice = (all: Playing, voice: string) => all.notes.filter((note) => all.voices[note.voice] === voice);

describe('a piece that is played', () => {
  it('has its strains twice, and each bar as often as it is played', () => {
    const { bars } = playing(AIR);
    expect(bars.map(({ number, at, until }) => [number, at, until])).toEqual([
      ['1', 0, 4],
      ['1', 4, 8],
      ['2', 8, 12],
      ['2', 12, 16],
    ]);
  });

  it('knows of each note where it is written and which picture is its own', () => {
    const all = playing(AIR);
    expect(ofVoice(all, 'dessus').map(({ ids, bar, onset }) => `${ids} ${all.bars[bar]?.number} ${onset}`)).toEqual([
      ...['1.1 1 0', '1.2 1 0.25', '1.3 1 0.5', '1.4 1 0.75'].map((one) => `e-2v-1-dessus-${one}`),
      ...['1.1 1 0', '1.2 1 0.25', '1.3 1 0.5', '1.4 1 0.75'].map((one) => `e-2v-1-dessus-${one}`),
      ...['2.1 2 0', '2.2 2 0.5', '2.1 2 0', '2.2 2 0.5'].map((one) => `e-2v-1-dessus-${one}`),
    ]);
  });

  it('begins at a note, or at the top of a leaf', () => {
    expect(playing(AIR, { begin: { id: 'e-2v-1-dessus-2.2' } }).start).toEqual({ bar: 1, onset: 0.5 });
    expect(playing(AIR).start).toEqual({ bar: 0, onset: 0 });
    expect(playing(AIR, { begin: { id: 'e-9v-1-dessus-2.2' } }).start).toEqual({ bar: 0, onset: 0 });
  });

  it('sounds in the tuning of the reading or in another: the third of meantone is pure', () => {
    const text = AIR.replace('tempo', 'pitch a4 = 400\ntuning meantone 1/4 sc\ntempo');
    const frequency = (all: Playing, name: string): number =>
      all.notes.find((note) => key(all, note.key) === name)?.frequencies[0] ?? 0;
    const meantone = playing(text);
    // The third e is 5/4 of c (facts of tuning: quarter-comma meantone has eight pure thirds).
    expect(frequency(meantone, 'e5') / frequency(meantone, 'c5')).toBeCloseTo(5 / 4, 6);
    const equal = playing(text, { tuning: 'equal' });
    expect(frequency(equal, 'e5') / frequency(equal, 'c5')).toBeCloseTo(2 ** (4 / 12), 6);
    expect([meantone.pitch, equal.tuning]).toEqual([400, 'equal temperament']);
  });

  it('tells what nobody has stated', () => {
    expect(playing(AIR).assumed).toBe('a4 = 415, equal temperament');
    expect(playing(AIR.replace('tempo 4 at 60\n', '')).assumed).toContain('60 crotchets a minute');
  });

  it('is nothing where there is no music, and stays what it was where a tuning has no such name', () => {
    expect(playingOf(project(HEAD), WISH)).toBeUndefined();
    expect(playing(AIR, { tuning: 'no-such' }).tuning).toBe('equal temperament');
  });
});

describe('the tempo of playing', () => {
  const TRILL = `${HEAD}tempo 4 at 60
reading french
  signs anglebert-1689
page "2v"
system upper G2 lower F4 meter C
  dessus | 2 d5'zz c5 |||
`;
  const strokes = (pace: number): number =>
    playing(TRILL, { reading: 'french', pace }).notes.filter(({ ids }) => ids[0] === 'e-2v-1-dessus-1.1').length;

  it('is longer at half the speed, for everything', () => {
    expect(playing(AIR, { pace: 0.5 }).bars.at(-1)?.until).toBe(32);
    expect(playing(AIR, { pace: 0.75 }).bars[0]?.until).toBeCloseTo(16 / 3, 3);
  });

  it('leaves trills their speed: twice the time has half as many strokes again and more', () => {
    expect(strokes(0.5)).toBeGreaterThan(1.5 * strokes(1));
    expect(strokes(0.75)).toBeGreaterThan(strokes(1));
  });

  it('is slower in music without measure as well', () => {
    const free = `${HEAD}page "2v"\nsystem free upper G2 lower F4\n  dessus | 1 c5 e g |||\n`;
    const [whole, half] = [playing(free), playing(free, { pace: 0.5 })].map(({ bars }) => bars.at(-1)?.until ?? 0);
    expect(half).toBeCloseTo(2 * (whole ?? 0), 3);
    expect(playing(free).isFree).toBe(true);
  });
});

describe('keys and hands', () => {
  const SHORT = AIR.replace('tempo', 'instrument harpsichord compass c2-c6\n  short-octave c/e\ntempo').replaceAll(
    '1 c3',
    '1 c2',
  );

  it('show the keys as they lie: on a short octave c lies where e would', () => {
    const all = playing(SHORT);
    expect(all.keys.slice(0, 6).map(({ lies, sounds }) => [lies, sounds])).toEqual([
      [40, 'c2'],
      [41, 'f2'],
      [42, 'd2'],
      [43, 'g2'],
      [44, 'e2'],
      [45, 'a2'],
    ]);
    expect(key(all, ofVoice(all, 'basse')[0]?.key ?? null)).toBe('c2');
  });

  it('have no key for a note that the instrument lacks', () => {
    const all = playing(SHORT.replaceAll('1 c2', '1 c#2'));
    expect(ofVoice(all, 'basse')[0]?.key).toBeNull();
  });

  it('without a compass are the octaves that the piece needs', () => {
    const { keys } = playing(AIR);
    expect([keys[0]?.sounds, keys.at(-1)?.sounds]).toEqual(['c3', 'c6']);
  });

  it('are divided between the hands by stave, as long as both can reach them', () => {
    const all = playing(AIR);
    expect(new Set(ofVoice(all, 'dessus').map(({ limb }) => limb))).toEqual(new Set(['right']));
    expect(new Set(ofVoice(all, 'basse').map(({ limb }) => limb))).toEqual(new Set(['left']));
  });

  it('give the left hand a note of the upper stave that the right cannot reach', () => {
    const text = `${HEAD}page "2v"\nsystem upper G2 lower F4 meter C\n  dessus | 1 c5-g5-c6 |\n  taille | 1 g4 |\n  basse | 1 c4 |\n`;
    const all = playing(text);
    const limbs = Object.fromEntries(all.notes.map((note) => [key(all, note.key), note.limb]));
    // From g4 to c6 there are more keys than a ninth.
    expect(limbs).toEqual({ c4: 'left', g4: 'left', c5: 'right', g5: 'right', c6: 'right' });
  });
});

it('the temperaments that can be chosen begin with those of the file', () => {
  const offers = tuningOffers(project(`${HEAD}temperament mine\n  fifth c-g beats 2 narrow\n`));
  expect(offers[0]?.words).toBe('mine');
  expect(offers.map(({ words }) => words)).toContain('werckmeister-3');
});
