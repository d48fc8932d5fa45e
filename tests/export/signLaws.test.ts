/** What holds of signs as notes, whatever they stand on: chance writes the music. */
import { describe, expect, it } from 'vitest';
import { add, format, type Time, ZERO } from '../../grammar/time';
import { exportMusicXml } from '../../server/export/musicxml';
import { withOrnaments } from '../../server/export/ornaments';
import { perform } from '../../server/readings/perform';
import type { Score } from '../../server/score/score';
import { eventsOf } from '../../server/score/walk';
import { Chance, numbersOf } from '../helpers/chance';
import { heard, objections, played } from '../helpers/musicxml';
import { scoreOfPassage } from '../helpers/realised';

const TABLES = ['anglebert-1689', 'couperin-1713', 'rameau-1724', 'purcell-1696', 'quantz-1752', 'turk-1789'] as const;
const SIGNS = [
  "'zz",
  "'ca",
  "'turn",
  "'cb",
  "'lca",
  "'tr",
  "'wedge",
  "'turn(after)",
  "'zz'ca",
  "'zz'#",
  "'arpu",
] as const;
const LETTERS = ['c', 'd', 'e', 'f', 'g', 'a', 'b'] as const;
/** With their lengths in demisemiquavers. */
const VALUES = { '1': 32, '2.': 24, '2': 16, '4.': 12, '4': 8, '8.': 6, '8': 4, '16': 2, '32': 1 } as const;

const noteAt = (chance: Chance, octave: number): string =>
  `${chance.pick(LETTERS)}${chance.pick(['', '', '#', 'b'])}${octave}`;

const signAt = (chance: Chance): string => (chance.happens(50) ? chance.pick(SIGNS) : '');

/** A bar of common time: notes, chords, rests, triplets, small notes, with a sign on every second of them. */
function barOf(chance: Chance, octave: number): string {
  const items: string[] = [];
  for (let left = 32; left > 0; ) {
    const note = (): string => noteAt(chance, octave);
    if (chance.happens(10)) items.push(`{small ${chance.pick(['8', '16'])} ${note()}}`);
    if (left >= 8 && chance.happens(12)) {
      items.push(`{3in2 8 ${note()}${signAt(chance)} ${note()} ${note()}${signAt(chance)}}`);
      left -= 8;
      continue;
    }
    const fitting = Object.entries(VALUES).filter(([, length]) => length <= left);
    const [value, length] = fitting[chance.below(fitting.length)] ?? ['32', 1];
    const chord = chance.happens(20) ? `-${noteAt(chance, octave + 1)}` : '';
    items.push(`${value} ${chance.happens(10) ? 'r' : `${note()}${chord}${signAt(chance)}`}`);
    left -= length;
  }
  return items.join(' ');
}

function passageOf(seed: number): Score {
  const chance = new Chance(numbersOf(seed, 2000));
  const lane = (octave: number): string => `${barOf(chance, octave)} | ${barOf(chance, octave)}`;
  return scoreOfPassage({
    lanes: [lane(4), lane(3)],
    table: chance.pick(TABLES),
    tempo: `4 at ${chance.pick(['60', '30', '90', '140'])}`,
    key: chance.pick(['bb', 'f#', 'bb eb']),
  });
}

/** How long each written voice lasts; what is held beside one is no more time. */
function lengths({ pieces, environment }: Score): string[] {
  const sums = environment.voices.map((): Time => ZERO);
  for (const { event } of pieces.flatMap((piece) => [...eventsOf(piece)])) {
    sums[event.voice] = add(sums[event.voice] ?? ZERO, event.duration);
  }
  return sums.filter((_, voice) => environment.voices[voice]?.beside === undefined).map(format);
}

const keys = (score: Score, options: Parameters<typeof perform>[1]): number[] =>
  perform(score, { ...options, rhythm: 'written' })
    .pieces.flatMap(({ events }) => events)
    .flatMap(({ pitch, duration }) => (pitch === undefined || format(duration) === '0' ? [] : [pitch.midi]))
    .sort((a, b) => a - b);

describe.each(Array.from({ length: 40 }, (_, seed) => seed + 1))('music of seed %i', (seed) => {
  const score = passageOf(seed);
  const [small, full] = [withOrnaments(score, { ornaments: 'small' }), withOrnaments(score, { ornaments: 'full' })];

  it('lasts as long in every form', () => {
    expect(score.pieces.some(({ bars }) => bars.some(({ broken }) => broken))).toBe(false);
    expect(lengths(small.score)).toEqual(lengths(score));
    expect(lengths(full.score)).toEqual(lengths(score));
  });

  it('is read by an independent reader as it is written', () => {
    for (const form of [small.score, full.score]) {
      const { text } = exportMusicXml(form, { clefs: 'source', leaveGaps: false });
      expect(objections(text)).toEqual([]);
      expect(heard(text, form)).toEqual(played(form));
    }
  });

  it('has every note that is played, unless it says which sign has too many', () => {
    if (full.problems.some(({ problem }) => problem.code === 'ornament-plain')) return;
    expect(keys(full.score, { ornaments: 'sign' })).toEqual(keys(score, { form: 'print' }));
  });
});
