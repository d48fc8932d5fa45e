/** A witness or reading alone as a text of the notation: its music is that of the score, whatever else the text loses. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { format } from '../../grammar/time';
import type { Analysis } from '../../server/document/analysis';
import { exportAlone } from '../../server/export/alone';
import { differences } from '../../server/export/alone/music';
import type { AppliedMark, Score, VoiceEvent } from '../../server/score/score';
import { eventsOf } from '../../server/score/walk';
import { scoreOfSeed } from '../helpers/generate';
import { analysed, duet, errors, lane, passage, scoreOf } from '../helpers/music';
import { sampleNames, sampleProject } from '../helpers/samples';

const alone = (analysis: Analysis, choice: string): string => exportAlone(scoreOf(analysis, choice)).text;

/** The line of a voice's lane, columns left out. */
const laneOf = (text: string, voice = 'dessus'): string =>
  text
    .split('\n')
    .filter((line) => line.trimStart().startsWith(`${voice} `) && line.includes('|'))
    .map((line) => line.trim().replace(/ +/g, ' '))
    .join('\n');

const marks = (all: readonly AppliedMark[]): string => all.map(({ form, shapes }) => `${form.name}${shapes}`).join(' ');

const eventText = ({ kind, duration, members, marks: own, voice }: VoiceEvent): string => {
  const notes = members.map((one) => `${one.midi}${one.tiedFrom ? '~' : ''}${marks(one.marks)}`);
  return `${voice} ${kind} ${format(duration)} ${notes.join('-')} ${marks(own)}`;
};

/** Events with their time, pitch and marks; empty time, which may be typed as several gaps, left out. */
const music = ({ pieces }: Score): string[] =>
  pieces.flatMap((piece) =>
    [...eventsOf(piece)]
      .filter(({ event }) => event.kind !== 'gap')
      .map(({ event, onset }) => `${format(onset)} ${eventText(event)}`)
      .sort(),
  );

describe('what the text alone has otherwise', () => {
  const told = (here: Analysis, there: Analysis): string[] =>
    differences(scoreOf(here), scoreOf(there)).map(
      ({ problem: { code, slots } }) => `${code} ${slots.voice}, ${slots.bars}`,
    );

  test.each([
    ['another pitch', '2 e', '2 d'],
    ['another value', '2. d', '2 d'],
    ['a sign more', "2 d'zz", '2 d'],
    ['a sign that is the editor’s', "2 d'[zz]", "2 d'zz"],
    ['a tie more', '2 d=', '2 d'],
    ['stems that turn the other way', '(stems down) 2 d', '2 d'],
    ['another stave', '(down) 2 d', '2 d'],
    ['a rest where nothing was', '2 r', '2 _'],
  ])('is told with its bar: %s', (_, here, there) => {
    const around = (music: string): Analysis => lane(`1 c5 | 2 d ${music}`);
    expect(told(around(here), around(there))).toEqual(['alone-differs dessus, bar 2']);
    expect(told(around(here), around(here))).toEqual([]);
  });

  test('is told of figures, and of no empty time that is cut otherwise', () => {
    const figured = (figure: string): Analysis =>
      passage(`system lower F4 meter C\n  basse | 2 c3 _ |||\n    fig | ${figure} |||\n`);
    expect(told(figured('6'), figured('5'))).toEqual(['alone-differs basse, bar 1']);
    expect(told(lane('2 c5 _'), lane('2 c5 4 _ _'))).toEqual([]);
  });

  test('is told where options of unequal length leave it open when the next bar begins', () => {
    const { problems } = exportAlone(scoreOf(lane('2 c5 <K: 2 d e ; L: 2 d> | 1 f5 | 1 g5'), 'K'));
    expect(problems.map(({ problem: { code, slots } }) => [code, slots.bars])).toEqual([
      ['alone-differs', 'bars 2, 3'],
    ]);
  });
});

describe('a witness alone', () => {
  test('has its options and no brackets, labels or names of places', () => {
    const text = alone(lane('2 c5 <v3 K: 2 d ; L: 4 d e> | <K,M: 1 c5 | 1 d ; L: 1 e5 | 2 d5 b4>'), 'L');
    expect(laneOf(text)).toBe('dessus | 2 c5 4 d e | 1 e5 | 2 d5 b4 |||');
  });

  test('keeps what is said of a place, at the last note that stands there', () => {
    expect(laneOf(alone(lane('2 c5 <v3*n7 K: 2 d ; L: 4 d e>*"a blot"'), 'L'))).toBe(
      'dessus | 2 c5 4 d e*n7*"a blot" |||',
    );
  });

  test('has a mark of a place on its last note, and its music is then the same', () => {
    const paused = lane("2 c5 <K: 2 d ; L: 4 d e>'fermata");
    expect(laneOf(alone(paused, 'L'))).toBe("dessus | 2 c5 4 d e'fermata |||");
    expect(exportAlone(scoreOf(paused, 'L')).problems).toEqual([]);
  });

  test('tells what is said of a place that it omits, for nothing is left to bear it', () => {
    const smudged = passage(
      'system upper C1 lower F4 meter C\n  dessus | 2 c5 <v3*n1 K: 2 d ; L: omit>*"a blot" |||\n',
      'note n1 : "a smudge"\n',
    );
    const { problems } = exportAlone(scoreOf(smudged, 'L'));
    expect(problems.map(({ problem: { code, slots } }) => [code, slots.said, slots.bars])).toEqual([
      ['alone-place-omitted', '*n1*"a blot"', 'bar 1'],
    ]);
    expect(exportAlone(scoreOf(smudged, 'K')).problems).toEqual([]);
  });

  test('has the slip where it stands as written, and what was meant in a source', () => {
    const slip = lane('2 c5 <sic: 2 d ; corr: 2 e>');
    expect(laneOf(alone(slip, 'written'))).toBe('dessus | 2 c5 2 d |||');
    expect(laneOf(alone(slip, 'L'))).toBe('dessus | 2 c5 2 e |||');
  });

  test('goes back to the stave and the stems that hold after options', () => {
    const moved = lane('2 c5 <K: 2 d ; L: (down) (stems down) 2 d4> 2 e5 f');
    expect(laneOf(alone(moved, 'L'))).toBe('dessus | 2 c5 (down) (stems down) 2 d4 (home) (stems home) 2 e5 f |||');
  });

  test('has signs that are limited to it without their limit, and others not at all', () => {
    const limited = lane("4 c5'zz:L d'zz:K'b*n1 e'3:!K f=:K | 1 f");
    expect(laneOf(alone(limited, 'L'))).toBe("dessus | 4 c5'zz d e'3 f | 1 f |||");
    expect(laneOf(alone(limited, 'K'))).toBe("dessus | 4 c5 d'zz'b*n1 e f= | 1 f |||");
  });

  test('has a repeated chord as notes where its tie is another’s', () => {
    expect(laneOf(alone(lane("2 c5-e'3 =:L'fermata"), 'K'))).toBe("dessus | 2 c5-e'3 c5'fermata-e5 |||");
    expect(laneOf(alone(lane("2 c5-e'3 =:L'fermata"), 'L'))).toBe("dessus | 2 c5-e'3 ='fermata |||");
  });

  test('has hints of rhythm that are meant for it', () => {
    const hinted = lane('{inegal 2:1:L 8 c5 d e f} {snap:K 16 g 8. e} 4 d');
    expect(laneOf(alone(hinted, 'L'))).toBe('dessus | {inegal 2:1 8 c5 d e f} 16 g 8. e 4 d |||');
  });

  test('has the bars of its own lane in the main lane, value and octave typed where they are needed', () => {
    const twoLanes = passage(`system upper C1 lower F4 meter C
  dessus   | 4. c5'zz 8 d 2 e | 1 d | 4 c b4 2 c5 |||  // from K
  dessus L |                  | 2 g4 a |  |||          // from the leaf
  basse    | 1 c3 | 1 g2 | 1 c3 |||
`);
    const text = alone(twoLanes, 'L');
    expect(laneOf(text)).toBe("dessus | 4. c5'zz 8 d 2 e | 2 g4 a | 4 c5 b4 2 c5 ||| // from K");
    expect(text).toContain('// from the leaf');
    expect(text).not.toContain('dessus L');
  });

  test('has its own figures under its own bar, and figures counted against what it has', () => {
    const figured = passage(`system lower F4 meter C
  basse   | 1 c3 | <K: 2 g3 4 e c ; L: 2 g3 c> |||
    fig   | 6    | 4 6 5/3 |||
  basse L | 2 c3 e |  |||
    fig   | _ 6/5 |  |||
`);
    expect(laneOf(alone(figured, 'L'), 'basse')).toBe('basse | 2 c3 e | 2 g3 c |||');
    expect(laneOf(alone(figured, 'L'), 'fig')).toBe('fig | _ 6/5 | 4 6 |||');
  });

  test('sings the stanzas that stand under its own bars', () => {
    const sung = passage(`system upper C1 meter C
  dessus   | 1 c5 | 2 d c  |||
    text   | O    | nox    |||
    text   | lux  | al- ma |||
  dessus L |      | 1 d5   |||
    text   |      | nox    |||
    text   |      | al-    |||
`);
    expect(laneOf(alone(sung, 'L'), 'text')).toBe('text | O | nox |||\ntext | lux | al- |||');
  });

  test('keeps every comment, also those between the lines of what goes', () => {
    const text = alone(
      passage(`system upper C1 lower F4 meter C
  dessus | 2 c5 <K: 2 d | // of K
  // of the place
         | 1 e ; L: 2 e | 1 f5> | // of "both"
         | 1 g5 |||
`),
      'L',
    );
    expect(laneOf(text)).toContain('dessus | 2 c5 2 e | 1 f5 |');
    for (const comment of ['// of K', '// of the place', '// of "both"']) expect(text).toContain(comment);
    expect(errors(analysed(text))).toEqual([]);
  });

  test('lacks bars that it omits in all voices, with their barlines', () => {
    const shorter = duet('1 c5 | <K: 1 d | ; L: omit> 1 e5', '1 c3 | <K: 1 d | ; L: omit> 1 e3');
    const text = alone(shorter, 'L');
    expect([laneOf(text), laneOf(text, 'basse')]).toEqual(['dessus | 1 c5 | 1 e5 |||', 'basse | 1 c3 | 1 e3 |||']);
  });

  test('has empty time where it omits something while another voice goes on', () => {
    expect(laneOf(alone(duet('2 c5 <K: 2 d ; L: omit> | 1 e5', '1 c3 | 1 c3'), 'L'))).toBe(
      'dessus | 2 c5 2 _ | 1 e5 |||',
    );
  });

  test('says that a bar is irregular which lacks something in all voices', () => {
    const short = duet('1 c5 | 2 c5 <K: 2 d ; L: omit> | 1 e5', '1 c3 | 2 c3 <K: 2 d ; L: omit> | 1 c3');
    const text = alone(short, 'L');
    expect(laneOf(text)).toBe('dessus | 1 c5 | (irregular) 2 c5 | 1 e5 |||');
    expect(errors(analysed(text))).toEqual([]);
  });

  test('declares the sources and notes that are still spoken of, and no others', () => {
    const text = alone(
      passage(
        'system upper C1 lower F4 meter C\n  dessus | <v1*n1 K: 1 c5 ; L: 1 d5> | {supplied:M 1 e5} |||\n',
        [
          'source M "a print"',
          'note n1 : "faint"',
          'reading french "after K"\n  takes K\n  at v1 takes L',
          'reading plain\n  takes L',
          'link v1 v2\n',
        ].join('\n'),
      ),
      'french',
    );
    expect(text).toContain('source M');
    expect(text).toContain('note n1');
    expect(text).toMatch(/reading french +"after K"\n +takes +K\n/);
    expect(text).not.toMatch(/plain|link|at v1/);
  });

  test('states the practice of accidentals of its reading', () => {
    const text = alone(
      lane('4 f#5 g f g | 1 <K: 1 a5 ; L: 1 b5>', 'C', 'reading modern\n  accidentals bar\n'),
      'modern',
    );
    expect(text).toMatch(/^accidentals +bar$/m);
  });

  test('is the text itself where nothing depends on a choice', () => {
    const plain = lane('4  c5 d   e f // as typed');
    expect(alone(plain, 'L')).toBe(plain.tree.text);
  });
});

const MISSED = new Set(['restated-value', 'leap']);

/** What is wrong with the music itself, counsel on typing left out. */
const faults = ({ problems }: Score): string[] =>
  problems.map(({ problem }) => problem.code).filter((code) => !MISSED.has(code));

/** Its music, no new faults, and the same text when it is asked for once more. */
function expectAlone(analysis: Analysis, choice: string, reread: (text: string) => Analysis): void {
  const score = scoreOf(analysis, choice);
  const { text: own, problems } = exportAlone(score);
  const again = reread(own);
  const read = scoreOf(again);
  expect(music(read)).toEqual(music(score));
  expect(problems).toEqual([]);
  expect(faults(read).filter((code) => !faults(score).includes(code))).toEqual([]);
  expect(alone(again, again.choices.includes(choice) ? choice : 'written')).toBe(own);
}

describe('every choice alone', () => {
  test.each(sampleNames)('of %s', (name) => {
    const { analysis } = sampleProject(name);
    for (const choice of analysis.choices) expectAlone(analysis, choice, (text) => sampleProject(name, text).analysis);
  });

  test('of any score', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(fc.nat({ max: 1_000_000 }), (seed) => {
        const analysis = analysed(scoreOfSeed(seed));
        for (const choice of analysis.choices) expectAlone(analysis, choice, analysed);
      }),
      { numRuns: 10 },
    );
  });

  test('never fails, whatever is wrong with the text', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(fc.nat({ max: 1_000_000 }), fc.nat(), fc.nat({ max: 40 }), (seed, at, length) => {
        const whole = scoreOfSeed(seed);
        const from = at % whole.length;
        const broken = analysed(whole.slice(0, from) + whole.slice(from + length));
        for (const choice of broken.choices) expect(() => exportAlone(scoreOf(broken, choice))).not.toThrow();
      }),
      { numRuns: 20 },
    );
  });
});
