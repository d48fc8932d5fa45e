/**
 * Scores that never existed, in each of their readings as MusicXML and MEI: valid by the schemas of the W3C (MusicXML 4.0,
 * 2021) and of the Music Encoding Initiative (MEI 5.1, 2024), and read back by independent readers (musicxml-io; the
 * engraving library) as our own timeline has them.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exportMei } from '../../server/export/mei';
import { exportMusicXml } from '../../server/export/musicxml';
import type { Score } from '../../server/score/score';
import { scoreOfSeed } from '../helpers/generate';
import { heardInMei, looseEnds, MEI_SCHEMA, struckInTimeline, validateMei } from '../helpers/mei';
import { analysed, scoreOf } from '../helpers/music';
import { heard, objections, played, validateMusicXml } from '../helpers/musicxml';
import { testWithSchema } from '../helpers/schemas';

const OPTIONS = { clefs: 'source', leaveGaps: false } as const;
const mei = (score: Score): string => exportMei(score, OPTIONS).text;
const musicXml = (score: Score): string => exportMusicXml(score, OPTIONS).text;

function scoresOf(text: string): Score[] {
  const analysis = analysed(text);
  return analysis.choices.map((choice) => scoreOf(analysis, choice));
}

const seeds = fc.nat({ max: 1_000_000 });

describe('any score', () => {
  test('is heard from its MusicXML as its timeline plays it', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        for (const score of scoresOf(scoreOfSeed(seed))) expect(heard(musicXml(score), score)).toEqual(played(score));
      }),
      { numRuns: 20 },
    );
  });

  test('leaves an independent reader nothing to object to, unless a drawn meter says another length', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        for (const score of scoresOf(scoreOfSeed(seed))) {
          const { text, problems } = exportMusicXml(score, OPTIONS);
          const told = problems.some(({ problem }) => problem.code === 'musicxml-meter-length');
          const found = objections(text).filter((one) => !(told && one.endsWith('MEASURE_DURATION_OVERFLOW')));
          expect(found).toEqual([]);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('leaves it nothing to object to in some of its bars under modern clefs', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const [score] = scoresOf(scoreOfSeed(seed));
        const bars = score?.pieces[0]?.bars ?? [];
        const [from, to] = [1 / 3, 2 / 3].map((share) => bars[Math.floor(bars.length * share)]?.number ?? '1');
        if (score === undefined || from === undefined || to === undefined) return;
        const { text, problems } = exportMusicXml(score, { clefs: 'modern', leaveGaps: false, bars: { from, to } });
        const told = problems.some(({ problem }) => problem.code === 'musicxml-meter-length');
        expect(objections(text).filter((one) => !(told && one.endsWith('MEASURE_DURATION_OVERFLOW')))).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  testWithSchema('musicxml-4.0/musicxml.xsd', 'is valid MusicXML', async () => {
    for (const seed of fc.sample(seeds, { numRuns: 12, seed: 1689 })) {
      const [score] = scoresOf(scoreOfSeed(seed));
      if (score !== undefined) expect(await validateMusicXml(musicXml(score)), `seed ${seed}`).toEqual([]);
    }
  });

  test('is heard from its MEI as its timeline plays it', { timeout: 60_000 }, async () => {
    for (const seed of fc.sample(seeds, { numRuns: 8, seed: 1593 })) {
      for (const score of scoresOf(scoreOfSeed(seed)).slice(0, 3))
        expect([seed, ...(await heardInMei(mei(score)))]).toEqual([seed, ...struckInTimeline(score)]);
    }
  });

  test('points in its MEI to nothing that is not there', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        for (const score of scoresOf(scoreOfSeed(seed))) expect(looseEnds(mei(score))).toEqual([]);
      }),
      { numRuns: 4 },
    );
  });

  testWithSchema(MEI_SCHEMA, 'is valid MEI, whole and some of its bars', async () => {
    const documents = fc.sample(seeds, { numRuns: 20, seed: 1689 }).flatMap((seed) => {
      const [score] = scoresOf(scoreOfSeed(seed));
      const bars = score?.pieces[0]?.bars ?? [];
      const [from, to] = [1 / 3, 2 / 3].map((share) => bars[Math.floor(bars.length * share)]?.number);
      if (score === undefined || from === undefined || to === undefined) return [];
      const some = exportMei(score, { clefs: 'modern', leaveGaps: false, bars: { from, to } }).text;
      return [[`seed${seed}.xml`, mei(score)] as const, [`bars${seed}.xml`, some] as const];
    });
    expect(documents.length).toBeGreaterThan(20);
    expect(await validateMei(Object.fromEntries(documents.filter(([, text]) => text !== '')))).toEqual([]);
  });
});
