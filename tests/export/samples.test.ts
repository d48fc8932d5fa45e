/**
 * Each sample in each of its readings as MusicXML and as MEI: valid by the schemas of the W3C (MusicXML 4.0, 2021) and of the
 * Music Encoding Initiative (MEI 5.1, 2024), and its notes as independent readers find them (musicxml-io; the engraving
 * library) compared with our own timeline and with one another.
 */
import { describe, expect, it } from 'vitest';
import { add, format, ZERO } from '../../grammar/time';
import { exportMei } from '../../server/export/mei';
import { exportMusicXml } from '../../server/export/musicxml';
import type { Score } from '../../server/score/score';
import {
  heardInMei,
  inARow,
  looseEnds,
  MEI_SCHEMA,
  struckInMusicXml,
  struckInTimeline,
  validateMei,
} from '../helpers/mei';
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

const mei = (score: Score): string => exportMei(score, { clefs: 'source', leaveGaps: false }).text;

describe.each(sampleNames)('%s as MEI', (name) => {
  const analysis = sampleAnalysis(name);

  it('has the notes of the timeline as an independent reader finds them', { timeout: 60_000 }, async () => {
    for (const choice of analysis.choices) {
      const score = scoreOf(analysis, choice);
      expect([choice, ...(await heardInMei(mei(score)))]).toEqual([choice, ...struckInTimeline(score)]);
    }
  });

  it('has the notes that its MusicXML has, each by its own reader', async () => {
    const score = scoreOf(analysis);
    const found = inARow(await heardInMei(mei(score)), score);
    expect(found.length).toBeGreaterThan(100);
    expect(found).toEqual(struckInMusicXml(musicXml(score), score));
  });

  it('points to nothing that is not there', () => {
    for (const choice of analysis.choices)
      expect([choice, ...looseEnds(mei(scoreOf(analysis, choice)))]).toEqual([choice]);
  });

  testWithSchema(MEI_SCHEMA, 'is valid in every reading', async () => {
    const documents = analysis.choices.map((choice) => [`${choice}.xml`, mei(scoreOf(analysis, choice))]);
    expect(await validateMei(Object.fromEntries(documents))).toEqual([]);
  });
});
