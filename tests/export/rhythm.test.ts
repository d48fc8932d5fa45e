/**
 * Performed rhythm in standard values: each sample in each of its readings, valid by the schemas of the W3C (MusicXML 4.0,
 * 2021) and of the Music Encoding Initiative (MEI 5.1, 2024), its bars full and its notes as long as they are played, as an
 * independent reader finds them (musicxml-io).
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type FormOptions, inForm } from '../../server/export/form';
import { exportMei } from '../../server/export/mei';
import { exportMusicXml } from '../../server/export/musicxml';
import { comparedText } from '../../server/readings/compare/symbols';
import { perform } from '../../server/readings/perform';
import type { Score } from '../../server/score/score';
import { Chance, numbersOf } from '../helpers/chance';
import { passageByChance } from '../helpers/generateRhythm';
import { looseEnds, MEI_SCHEMA, validateMei } from '../helpers/mei';
import { lane, scoreOf } from '../helpers/music';
import { heard, objections, played, validateAllMusicXml } from '../helpers/musicxml';
import { performedIn } from '../helpers/rhythm';
import { sampleAnalysis, sampleNames } from '../helpers/samples';
import { testWithSchema } from '../helpers/schemas';

const options = { clefs: 'source', leaveGaps: false } as const;
const musicXml = (score: Score, form: FormOptions = { rhythm: 'played' }): string =>
  exportMusicXml(score, { ...options, ...form }).text;
const mei = (score: Score, form: FormOptions = { rhythm: 'played' }): string =>
  exportMei(score, { ...options, ...form }).text;
const inRhythm = (score: Score): Score => inForm(score, { rhythm: 'played' }).score;

/** Onset, length and key of every note that sounds. */
const sounding = (score: Score, rhythm: 'written' | 'played'): string[] =>
  perform(score, { ornaments: 'sign', rhythm })
    .pieces.flatMap(({ events }) => events)
    .filter(({ kind, small }) => kind === 'note' && !small)
    .map(
      ({ onset, duration, pitch, voice }) =>
        `${onset.n}/${onset.d}+${duration.n}/${duration.d} ${pitch?.midi} ${voice}`,
    )
    .sort();

/** The readings of a sample whose rhythm is played otherwise than it is written; of the others other tests tell. */
function playedOtherwise(name: string): Score[] {
  const analysis = sampleAnalysis(name);
  return analysis.choices
    .map((choice) => scoreOf(analysis, choice))
    .filter((score) => analysis.environment.readings.some((reading) => reading.name === score.choice.name))
    .filter((score) => sounding(score, 'played').join() !== sounding(score, 'written').join());
}

const samples = sampleNames
  .map((name) => ({ name, scores: playedOtherwise(name) }))
  .filter(({ scores }) => scores.length > 0);

describe.each(samples)('$name', ({ scores }) => {
  it('has full bars and the notes of its readings to an independent reader', () => {
    for (const score of scores) {
      const text = musicXml(score);
      expect(heard(text, score)).toEqual(played(inRhythm(score)));
      expect(objections(text)).toEqual([]);
    }
  });

  it('above what is written is a part of its own, and so is that', () => {
    for (const score of scores) {
      const text = musicXml(score, { rhythm: 'played', show: 'both' });
      expect(heard(text, score, 0)).toEqual(played(inRhythm(score)));
      expect(heard(text, score, 1)).toEqual(played(score));
      expect(objections(text)).toEqual([]);
    }
  });

  testWithSchema(
    'musicxml-4.0/musicxml.xsd',
    'is valid MusicXML in every reading, alone and above what is written',
    async () => {
      const texts = scores.flatMap((score): [string, string][] => [
        [`${score.choice.name}.xml`, musicXml(score)],
        [`${score.choice.name}-both.xml`, musicXml(score, { rhythm: 'played', show: 'both' })],
      ]);
      expect(await validateAllMusicXml(Object.fromEntries(texts))).toEqual([]);
    },
  );

  testWithSchema(MEI_SCHEMA, 'is valid MEI in every reading, and points to nothing that is not there', async () => {
    const texts = scores.flatMap((score): [string, string][] => [
      [`${score.choice.name}.mei`, mei(score)],
      [`${score.choice.name}-both.mei`, mei(score, { rhythm: 'played', show: 'both' })],
    ]);
    for (const [file, text] of texts) expect([file, ...looseEnds(text)]).toEqual([file]);
    expect(await validateMei(Object.fromEntries(texts))).toEqual([]);
  });
});

describe('the overture', () => {
  const analysis = sampleAnalysis('overture.bent');
  const [written, french, plain] = ['written', 'french', 'plain'].map((name) => scoreOf(analysis, name)) as [
    Score,
    Score,
    Score,
  ];

  it('is written three ways', () => {
    expect(new Set([written, french, plain].map((score) => musicXml(score))).size).toBe(3);
    expect(sounding(inRhythm(french), 'written')).toEqual(sounding(french, 'played'));
    expect(sounding(inRhythm(french), 'written')).not.toEqual(sounding(french, 'written'));
  });

  it('has its signs written out in the time that the dots leave them, its bars full', () => {
    const form = { rhythm: 'played', ornaments: 'full' } as const;
    const text = musicXml(french, form);
    expect(heard(text, french)).toEqual(played(inForm(french, form).score));
    expect(objections(text)).toEqual([]);
  });

  it('has double dots in its french reading: bar 7 (Quantz 1752, XVII.vii.58)', () => {
    const bar = [...comparedText(inRhythm(french)).values()].find(({ number }) => number === '7');
    const values = (voice: string): string | undefined =>
      bar?.voices
        .get(voice)
        ?.map(({ value }) => value)
        .join(' ');
    expect([values('dessus'), values('haute'), values('basse')]).toEqual(['2 4.. 16', '2 4.. 16', '2 4.. 16']);
  });
});

describe('the values', () => {
  const drawn = (music: string, practice: string): string => {
    const score = scoreOf(lane(music, 'C', `reading played\n  practice ${practice}\n`), 'played');
    const [bar] = comparedText(inRhythm(score)).values();
    return (bar?.voices.get('dessus') ?? []).map(({ value, notes, marks }) => `${value} ${notes}${marks}`).join(' ');
  };

  it.each([
    ['4. c5 8 d 2 e', 'overdot', '4.. c5 16 d5 2 e5'],
    ['4. c5 8 d 2 e', 'overdot silent', '4 c5 8. r 16 d5 2 e5'],
    ['8 c5 d 2. e', 'inegal 8 2:1', '3in2 4 c5 3in2 8 d5 2. e5'],
    ['8 c5 d 2. e', 'inegal 8 3:1', '8. c5 16 d5 2. e5'],
    ['4. c5 32 d e f g 2 a', 'overdot', '4.. c5 64 d5 64 e5 64 f5 64 g5 2 a5'],
    ['2 c5= | 4. c 8 d 2 e', 'overdot', '2 c5='],
    ['16 c5 8. d 2. e', 'snap', '32 c5 8.. d5 2. e5'],
  ])('of %s by %s are dots, triplets, rests', (music, practice, values) => {
    expect(drawn(music, practice)).toBe(values);
  });

  it('of three to two do not exist: what is written stands, and that is told', () => {
    expect(drawn('8 c5 d 2. e', 'inegal 8 3:2')).toBe('8 c5 8 d5 2. e5');
    const score = scoreOf(lane('8 c5 d 2. e', 'C', 'reading played\n  practice inegal 8 3:2\n'), 'played');
    const { problems } = exportMusicXml(score, { ...options, rhythm: 'played' });
    expect(problems.map(({ problem }) => problem.code)).toContain('rhythm-unprintable');
  });
});

describe('passages by chance of the figures that practices act on', () => {
  const SEEDS = Array.from({ length: 80 }, (_, seed) => seed + 5000);
  const scores = SEEDS.map((seed) => performedIn(passageByChance(new Chance(numbersOf(seed, 200)), 3)).score);

  it('sound as they are played where they have standard values, and are full bars to an independent reader', () => {
    let printed = 0;
    for (const score of scores) {
      const { score: drawn, problems } = inForm(score, { rhythm: 'played' });
      const text = musicXml(score);
      expect(objections(text)).toEqual([]);
      expect(heard(text, drawn)).toEqual(played(drawn));
      if (problems.some(({ problem }) => problem.code === 'rhythm-unprintable')) continue;
      printed++;
      expect(sounding(drawn, 'written')).toEqual(sounding(score, 'played'));
    }
    expect(printed).toBeGreaterThan(SEEDS.length / 2);
  });
});

// The whole piece in its three answers, kept as it was when last looked at. UPDATE_GOLDEN=1 writes it anew.
describe('the gigue', () => {
  const FILE = join(import.meta.dirname, 'golden/gigue-answers.txt');
  const analysis = sampleAnalysis('gigue.bent');

  /** What each voice has in each bar: what is drawn, and below it when it is struck and how long it lasts, in semibreves. */
  const answer = (reading: string): string => {
    const score = scoreOf(analysis, reading);
    const drawn = [...comparedText(inRhythm(score)).values()];
    const times = [...comparedText(score).values()];
    const bars = drawn.flatMap(({ number, voices }, index) =>
      [...voices].flatMap(([voice, symbols]) => {
        const played = (times[index]?.voices.get(voice) ?? []).map((symbol) => symbol.played ?? symbol.written);
        return [
          `${number} ${voice}: ${symbols.map(({ value, notes }) => `${value} ${notes}`).join(' ')}`,
          `    ${played.map(({ at, lasts }) => `${at}+${lasts}`).join(' ')}`,
        ];
      }),
    );
    return [reading, ...bars, ''].join('\n');
  };

  it('gives its three answers: to the triplet (gay), to the duple figure (leaf), each as written', () => {
    const text = ['gay', 'leaf', 'written'].map(answer).join('\n');
    if (process.env.UPDATE_GOLDEN !== undefined) writeFileSync(FILE, text);
    expect(text).toBe(readFileSync(FILE, 'utf8'));
  });
});
