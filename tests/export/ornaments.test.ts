/**
 * Signs as small notes and written out: each sample in each of its readings, valid by the schemas of the W3C (MusicXML 4.0,
 * 2021) and of the Music Encoding Initiative (MEI 5.1, 2024), and its bars full as an independent reader finds them
 * (musicxml-io).
 */
import { describe, expect, it } from 'vitest';
import { keeping } from '../../grammar/keeping';
import { exportMei } from '../../server/export/mei';
import { exportMusicXml } from '../../server/export/musicxml';
import { type OrnamentForm, tableOf, withOrnaments } from '../../server/export/ornaments';
import type { Score } from '../../server/score/score';
import { looseEnds, MEI_SCHEMA, validateMei } from '../helpers/mei';
import { scoreOf } from '../helpers/music';
import { heard, objections, played, readNotes, validateAllMusicXml } from '../helpers/musicxml';
import { sampleAnalysis, sampleNames } from '../helpers/samples';
import { testWithSchema } from '../helpers/schemas';

/** The forms in which a sign becomes notes; signs as they stand have tests of their own. */
const FORMS = ['small', 'full'] as const;

const inForm = (score: Score, ornaments: OrnamentForm): Score => withOrnaments(score, { ornaments }).score;
const options = { clefs: 'source', leaveGaps: false } as const;

/** Documents of each score by form: several tests look at the same ones. */
const documentsOf = keeping((_: Score) => new Map<OrnamentForm, string>());
function musicXml(score: Score, ornaments: OrnamentForm): string {
  const known = documentsOf(score);
  const text = known.get(ornaments) ?? exportMusicXml(score, { ...options, ornaments }).text;
  known.set(ornaments, text);
  return text;
}

const mei = (score: Score, ornaments: OrnamentForm): string => exportMei(score, { ...options, ornaments }).text;

/** Where a voice ends in each of its measures, as the reader finds it. */
function ends(text: string): Map<string, string> {
  const found = new Map<string, number>();
  for (const { index, voice, onset, duration } of readNotes(text)) {
    const key = `measure ${index} voice ${voice}`;
    found.set(key, Math.max(found.get(key) ?? 0, onset + duration));
  }
  return new Map([...found].map(([key, end]) => [key, end.toFixed(6)]));
}

/** The same of a score with its signs as they stand. */
const endsAsWritten = keeping((score: Score) => ends(musicXml(score, 'sign')));

type SampleAnalysis = ReturnType<typeof sampleAnalysis>;

const scoresOf = keeping((analysis: SampleAnalysis) => analysis.choices.map((choice) => scoreOf(analysis, choice)));

/** An MEI document holds all readings side by side, so one for each table says it all. */
const meiDocuments = keeping((analysis: SampleAnalysis) => {
  const byTable = [...new Map(scoresOf(analysis).map((score) => [tableOf(score), score])).values()];
  return { ...documents(mei, ['full'], byTable), ...documents(mei, ['small', 'above'], byTable.slice(0, 1)) };
});

const analyses = new Map(sampleNames.map((name) => [name, sampleAnalysis(name)]));

describe.each([...analyses])('%s', (_, analysis) => {
  const scores = scoresOf(analysis);

  it.each(FORMS)(
    'has full bars to an independent reader of its MusicXML, and the notes that the score has: %s',
    (form) => {
      for (const score of scores) {
        const text = musicXml(score, form);
        expect(ends(text)).toEqual(endsAsWritten(score));
        expect(heard(text, score)).toEqual(played(inForm(score, form)));
        expect(objections(text)).toEqual([]);
      }
    },
  );

  it('is written in MEI in every form, and nothing points to what is not there', () => {
    const all = meiDocuments(analysis);
    for (const [file, text] of Object.entries(all)) expect([file, ...looseEnds(text)]).toEqual([file]);
  });

  it('has full bars where signs are written out in the time of its practices, too', () => {
    for (const score of scores) {
      const text = exportMusicXml(score, { ...options, ornaments: 'full', rhythm: 'played' }).text;
      expect(ends(text)).toEqual(ends(exportMusicXml(score, { ...options, rhythm: 'played' }).text));
      expect(objections(text)).toEqual([]);
    }
  });
});

/** To read a schema takes longer than to check all documents by it. */
describe('all samples together', () => {
  const all = (documentsOfSample: (analysis: SampleAnalysis) => Record<string, string>): Record<string, string> =>
    Object.fromEntries(
      [...analyses].flatMap(([name, analysis]) =>
        Object.entries(documentsOfSample(analysis)).map(([file, text]) => [`${name} ${file}`, text]),
      ),
    );

  testWithSchema('musicxml-4.0/musicxml.xsd', 'are valid MusicXML in every form and reading', async () => {
    const texts = all((analysis) => documents(musicXml, FORMS, scoresOf(analysis)));
    expect(await validateAllMusicXml(texts)).toEqual([]);
  });

  testWithSchema(MEI_SCHEMA, 'are valid MEI in every form', async () => {
    expect(await validateMei(all(meiDocuments))).toEqual([]);
  });
});

const documents = (
  write: (score: Score, form: OrnamentForm) => string,
  forms: readonly OrnamentForm[],
  scores: readonly Score[],
): Record<string, string> =>
  Object.fromEntries(
    forms.flatMap((form) => scores.map((score) => [`${form}-${score.choice.name}.xml`, write(score, form)])),
  );
