/**
 * Each sample in each of its readings as MusicXML: valid by the schema of the W3C (MusicXML 4.0, 2021), and its notes as an
 * independent reader (musicxml-io) finds them compared with our own timeline.
 */
import { describe, expect, it } from 'vitest';
import { add, format, ZERO } from '../../grammar/time';
import { exportMusicXml } from '../../server/export/musicxml';
import type { Score } from '../../server/score/score';
import { scoreOf } from '../helpers/music';
import { heard, objections, played, validateMusicXml } from '../helpers/musicxml';
import { sampleAnalysis, sampleNames } from '../helpers/samples';
import { testWithSchema } from '../helpers/schemas';

const musicXml = (score: Score): string => exportMusicXml(score, { clefs: 'source', leaveGaps: false }).text;

describe.each(sampleNames)('%s as MusicXML', (name) => {
  const analysis = sampleAnalysis(name);

  it.each([...analysis.choices])('has the notes of the timeline as an independent reader finds them: %s', (choice) => {
    const score = scoreOf(analysis, choice);
    const found = heard(musicXml(score), score);
    expect(found.length).toBeGreaterThan(100);
    expect(found).toEqual(played(score));
  });

  testWithSchema('musicxml-4.0/musicxml.xsd', 'is valid in every reading', async () => {
    for (const choice of analysis.choices) {
      expect([choice, ...(await validateMusicXml(musicXml(scoreOf(analysis, choice))))]).toEqual([choice]);
    }
  });

  it.each([...analysis.choices])('leaves an independent reader nothing to object to: %s', (choice) => {
    expect(objections(musicXml(scoreOf(analysis, choice)))).toEqual([]);
  });

  it('lasts as long as its bars together', () => {
    for (const piece of scoreOf(analysis).pieces) {
      const sum = piece.bars.reduce((total, bar) => add(total, bar.duration), ZERO);
      expect(format(sum)).toBe(format(piece.duration));
    }
  });
});
