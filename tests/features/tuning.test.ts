/**
 * The tuning panel’s answers: how a score is tuned, what can be chosen instead, what writes it into the text.
 *
 * Beats of equal temperament: Capleton, Journal of Neuroscience 32 (35), 2012, table 1 (to one decimal; the second place from
 * the definition). Those of quarter-comma meantone are computed from it.
 */
import { describe, expect, it } from 'vitest';
import { edited } from '../../server/document/edits';
import type { TuningChoice } from '../../server/features/protocol';
import { tuningLenses } from '../../server/features/tuning/lens';
import { showTuning, wantedTuning } from '../../server/features/tuning/show';
import { writingTuning } from '../../server/features/tuning/write';
import { tuningOf } from '../../server/readings/tunings';
import type { Project } from '../../server/workspace/project';
import { client } from '../helpers/connection';
import { projectNamed, textIn } from '../helpers/editor';
import { sampleNames, sampleProject, sampleText } from '../helpers/samples';
import { tunedTo } from '../helpers/tuned';

const AIR = (head: string): string => `bentside 1
${head}stave one
voice dessus one
system one G2 meter C
  dessus | 1 c5 |||
`;
const scoreWith = (head: string): Project => projectNamed('air.bent', AIR(head));

const reading = (name: string): TuningChoice => ({ kind: 'reading', reading: name });
const words = (text: string): TuningChoice => ({ kind: 'words', words: text });
const nowhere = (): undefined => undefined;

interface Wish {
  readonly reading?: string;
  readonly wanted?: TuningChoice;
  readonly pitch?: number;
  readonly before?: TuningChoice;
}

const shownFor = (project: Project, wish: Wish = {}, other: (uri: string) => Project | undefined = nowhere) => {
  const answer = showTuning(project, { reading: 'written', wanted: reading('written'), ...wish }, other);
  if (answer.shown === undefined) throw new Error(answer.failure);
  return answer.shown;
};

/** Beats of the step that joins two notes: `6.93 wide`. */
const beatsOf = (project: Project, interval: string, wish: Wish = {}): string | undefined => {
  const step = shownFor(project, wish).sheet.steps.find((one) => one.interval === interval);
  return step && `${step.beats.toFixed(2)} ${step.direction}`;
};

/** The text after a tuning was written into it. */
const writtenInto = (text: string, { reading: name = 'written', wanted = reading('written'), pitch }: Wish): string => {
  const project = projectNamed('air.bent', text);
  const tuning = wantedTuning(project, { wanted, ...(pitch === undefined ? {} : { pitch }) }, nowhere);
  if ('failure' in tuning) throw new Error(tuning.failure);
  return edited(
    text,
    writingTuning(project, name, tuning).statements.map(({ change }) => change),
  );
};

describe('what is shown', () => {
  it('is the tuning of the score at its pitch, step by step with its beats', () => {
    const score = scoreWith('pitch a4 = 440\ntuning equal\n');
    expect(beatsOf(score, 'f3-a3')).toBe('6.93 wide');
    expect(beatsOf(score, 'g3-b3')).toBe('7.78 wide');
    expect(beatsOf(score, 'f3-c4')).toBe('0.59 narrow');
    expect(beatsOf(score, 'a3-d4')).toBe('0.99 wide');
  });

  it('is at any a: beats grow as the frequencies do', () => {
    const score = scoreWith('pitch a4 = 440\ntuning equal\n');
    // 6.929 · 415/440
    expect(beatsOf(score, 'f3-a3', { pitch: 415 })).toBe('6.54 wide');
  });

  it('is that of a reading which states its own', () => {
    const score = scoreWith('pitch a4 = 440\nreading pure\n  tuning meantone 1/4\ntuning equal\n');
    expect(beatsOf(score, 'f3-c4', { wanted: reading('pure') })).toBe('1.64 narrow');
    expect(beatsOf(score, 'g3-b3', { wanted: reading('pure') })).toBe('0.00 pure');
  });

  it('tells what the file does not state', () => {
    expect(shownFor(scoreWith('')).assumed).toEqual(['temperament', 'pitch']);
    expect(shownFor(scoreWith('pitch a4 = 392\ntuning vallotti\n')).assumed).toEqual([]);
  });

  it('draws each string of the bearings with the cents of its note, and a rung for each step that tunes', () => {
    const { drawing, sheet } = shownFor(scoreWith('tuning vallotti\n'));
    const strings = [...drawing.matchAll(/data-string="([^"]+)"/g)].map(([, name]) => name);
    expect(strings).toEqual(['f3', 'f#3', 'g3', 'g#3', 'a3', 'bb3', 'b3', 'c4', 'c#4', 'd4', 'eb4', 'e4', 'a4']);
    const rungs = [...drawing.matchAll(/data-step="([^"]+)"/g)].map(([, name]) => name);
    const tuned = sheet.steps.filter(({ tunes }) => tunes !== null).map(({ interval }) => interval);
    expect(rungs).toEqual([...tuned, 'g#3-eb4']);
  });

  it('says why there is nothing, and what can be chosen instead', () => {
    const answer = showTuning(scoreWith(''), { reading: 'written', wanted: words('nosuch') }, nowhere);
    expect(answer.shown).toBeUndefined();
    expect(answer.failure).toBe('No temperament is called “nosuch”. A meantone is typed “meantone 1/4 wolf g#-eb”.');
    expect(answer.offers.map(({ words: typed }) => typed)).toContain('werckmeister-3');
  });

  it('offers the readings’ tunings, the file’s own temperaments, and those that need no definition', () => {
    const score = scoreWith('reading fair\n  tuning house\ntuning vallotti\ntemperament house\n  c-g -1/4 sc\n');
    const { readings, offers } = showTuning(score, { reading: 'written', wanted: reading('written') }, nowhere);
    expect(readings.map(({ title }) => title)).toEqual(['Vallotti', 'house, as the file defines it']);
    expect(offers[0]).toEqual({ words: 'house', title: 'house, as the file defines it' });
    expect(offers.map(({ words: typed }) => typed)).toEqual(expect.arrayContaining(['vallotti', 'meantone 1/6 pc']));
  });
});

describe('from one piece to the next', () => {
  const lament = scoreWith('pitch a4 = 415\ntuning meantone 1/4 wolf c#-ab\n');

  it('only the key of A flat moves where G sharp is wanted, down by a diesis (41.059 cents)', () => {
    const { sheet, drawing } = shownFor(lament, {
      wanted: words('meantone 1/4 wolf g#-eb'),
      before: reading('written'),
    });
    expect(sheet.retuning?.notes).toEqual([{ note: 'g#', was: 'ab', cents: -41.1 }]);
    expect(sheet.retuning?.steps.map(({ tunes }) => tunes)).toEqual(['g#3']);
    expect([...drawing.matchAll(/data-step/g)]).toHaveLength(1);
    expect([...drawing.matchAll(/data-string/g)]).toHaveLength(13);
  });

  it('another open score is tuned for at its own pitch', () => {
    const other = scoreWith('pitch a4 = 440\ntuning meantone 1/4 wolf c#-ab\n');
    const wish = { wanted: { kind: 'score', uri: 'b.bent', reading: 'written' }, before: reading('written') } as const;
    const { sheet } = shownFor(lament, wish, () => other);
    expect(sheet.pitch).toBe(440);
    expect(new Set(sheet.retuning?.notes.map(({ cents }) => cents))).toEqual(new Set([101.3]));
  });
});

describe('writing it into the file', () => {
  const text = AIR('pitch a4 = 415  // low\ntuning meantone 1/4 wolf g#-eb  // pure thirds\n');

  it('changes what stands after tuning, and leaves the comment', () => {
    expect(writtenInto(text, { wanted: words('vallotti') })).toBe(text.replace('meantone 1/4 wolf g#-eb', 'vallotti'));
  });

  it('changes the pitch alone where the temperament is the same', () => {
    expect(writtenInto(text, { pitch: 440 })).toBe(text.replace('415', '440'));
  });

  it('writes nothing where the file says it in other words', () => {
    expect(
      shownFor(scoreWith('pitch a4 = 415\ntuning meantone 1/4\n'), { wanted: words('meantone 1/4 sc') }).writes,
    ).toEqual([]);
  });

  it('adds the statements that are not there, where they belong', () => {
    expect(writtenInto(AIR('instrument virginals\n'), { wanted: words('vallotti'), pitch: 392 })).toBe(
      AIR('instrument virginals\npitch a4 = 392\ntuning vallotti\n'),
    );
    expect(writtenInto('bentside 1', { wanted: words('vallotti'), pitch: 392 })).toBe(
      'bentside 1\npitch a4 = 392\ntuning vallotti',
    );
  });

  it('changes the clause of the reading that is shown, and no other', () => {
    const two = AIR('reading a\n  tuning equal\nreading b from a  // as a\npitch a4 = 415\ntuning young-1\n');
    expect(writtenInto(two, { reading: 'a', wanted: words('vallotti') })).toBe(two.replace('equal', 'vallotti'));
    expect(writtenInto(two, { reading: 'b', wanted: words('vallotti') })).toBe(
      two.replace('// as a\n', '// as a\n  tuning vallotti\n'),
    );
    expect(writtenInto(two, { wanted: words('vallotti') })).toBe(two.replace('young-1', 'vallotti'));
  });

  it('is read back as what was shown', () => {
    for (const wanted of ['vallotti', 'meantone 1/6 pc wolf c#-ab', 'meantone 2/7']) {
      const after = projectNamed('air.bent', writtenInto(text, { wanted: words(wanted), pitch: 466 }));
      expect(after.analysis.findings()).toEqual([]);
      expect(shownFor(after).sheet).toEqual(
        shownFor(projectNamed('air.bent', text), { wanted: words(wanted), pitch: 466 }).sheet,
      );
    }
  });

  it.each(sampleNames)('%s: each reading has what was written for it, and no line of others is touched', (name) => {
    const text = sampleText(name);
    const project = sampleProject(name);
    for (const { reading: one } of showTuning(project, { reading: 'written', wanted: words('equal') }, nowhere)
      .readings) {
      const { statements } = writingTuning(project, one, tunedTo('young-1', 409));
      const after = edited(
        text,
        statements.map(({ change }) => change),
      );
      const { temperament, pitch } = tuningOf(sampleProject(name, after).environment, one);
      expect([temperament.name, pitch], one).toEqual(['young-1', 409]);
      const kept = new Set(after.split('\n'));
      const lost = text.split('\n').filter((line) => !kept.has(line));
      expect(
        lost.every((line) => /^(pitch|\s*tuning)\b/.test(line)),
        `${one}: ${lost}`,
      ).toBe(true);
    }
  });

  it('does not write a name that means something else here', () => {
    const other = scoreWith('tuning house\ntemperament house\n  c-g -1/4 sc\n');
    const { writes, obstacle } = shownFor(
      scoreWith(''),
      { wanted: { kind: 'score', uri: 'b.bent', reading: 'written' } },
      () => other,
    );
    expect(writes).toEqual([]);
    expect(obstacle).toBe('Another file defines “house”: include that file first.');
  });
});

describe('in the text', () => {
  it('a way to the panel stands over each tuning and each temperament', () => {
    const score = scoreWith(
      'reading fair\n  tuning house\npitch a4 = 415\ntuning equal\ntemperament house\n  c-g -1/4 sc\n',
    );
    const lenses = tuningLenses(score);
    expect(
      lenses.map(({ range, command }) => [textIn(score.tree.text, range), command?.title, command?.arguments]),
    ).toEqual([
      ['tuning house', 'How to tune: house, as the file defines it, a4 = 415 Hz', [reading('fair'), 'air.bent']],
      ['tuning', 'How to tune: equal temperament, a4 = 415 Hz', [reading('written'), 'air.bent']],
      ['house', 'How to tune: house, as the file defines it, a4 = 415 Hz', [words('house'), 'air.bent']],
    ]);
  });
});

describe('over a connection', () => {
  it('a score is tuned for after another that is open, and the text is edited', async () => {
    const one = await client();
    try {
      const textDocument = { uri: await one.open('a.bent', AIR('pitch a4 = 415\ntuning equal\n')) };
      const uri = await one.open('b.bent', AIR('pitch a4 = 440\ntuning vallotti\n'));
      const params = { textDocument, reading: 'written', wanted: { kind: 'score', uri, reading: 'written' } };
      const answer = await one.connection.sendRequest('bentside/tuning', params);
      expect(answer).toMatchObject({ pitch: 440, shown: { writes: ['pitch a4 = 440', 'tuning vallotti'] } });
      const edits = await one.connection.sendRequest<{ newText: string }[]>('bentside/writeTuning', params);
      expect(edits.map(({ newText }) => newText)).toEqual(['a4 = 440', 'vallotti']);
    } finally {
      await one.end();
    }
  });
});
