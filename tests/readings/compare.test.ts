/** Sources and readings beside one another (common practice of collation: by bar and voice, with the groups that agree). */
import { describe, expect, it } from 'vitest';
import { format } from '../../grammar/time';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { type Comparison, compareScores } from '../../server/readings/compare';
import { perform } from '../../server/readings/perform';
import { analysed, errors, lane, scoreOf } from '../helpers/music';
import { sampleAnalysis } from '../helpers/samples';

const THREE = 'source M "a third"\n';
const compared = (music: string, names: readonly string[], before = THREE): Comparison => {
  const analysis = lane(music, 'C', before);
  return compareScores(names.map((name) => scoreOf(analysis, name)));
};

/** `bar voice symbol kind: K=… | L=…`. */
const told = ({ differences }: Comparison): string[] =>
  differences.map(
    ({ bar, voice, symbol, kind, sides }) =>
      `${bar} ${voice} ${symbol} ${kind}: ${sides.map(({ names, text }) => `${names.join(',')}=${text}`).join(' | ')}`,
  );

describe('two sources', () => {
  it('that agree have no differences', () => {
    expect(told(compared('1 c5 | d', ['K', 'L']))).toEqual([]);
  });

  it.each([
    ['<K: 2 c5 d ; L: 2 c5 e>', '1 dessus 2 pitch: K=2 d5 | L=2 e5'],
    ['<K: 2 c5 d ; L: 2. c5 4 d>', '1 dessus 1 rhythm: K=2 c5 2 d5 | L=2. c5 4 d5'],
    ['<K: 2 c5 4 d e ; L: 2 c5 f>', '1 dessus 2 reading: K=4 d5 4 e5 | L=2 f5'],
    ["<K: 1 c5'zz ; L: 1 c5>", "1 dessus 1 sign: K=1 c5'zz | L=1 c5"],
    ['<K: 2 c5= c ; L: 2 c5 c>', '1 dessus 1 sign: K=2 c5= | L=2 c5'],
    ['<K: {small 8 d5} 1 c5 ; L: 1 c5>', '1 dessus 1 reading: K=small 8 d5 1 c5 | L=1 c5'],
    ['<K: {3in2 4 c5 d e} 2 f ; L: 4 c5 d 2 f>', '1 dessus 1 reading: K=3in2 4 c5 3in2 4 d5 3in2 4 e5 | L=4 c5 4 d5'],
  ])('with %s differ there alone', (music, difference) => {
    expect(told(compared(music, ['K', 'L']))).toEqual([difference]);
  });

  it('differ at two places of a bar by themselves', () => {
    expect(told(compared('<K: 4 c5 d e f ; L: 4 b4 d5 e g>', ['K', 'L']))).toEqual([
      '1 dessus 1 pitch: K=4 c5 | L=4 b4',
      '1 dessus 4 pitch: K=4 f5 | L=4 g5',
    ]);
  });

  it('of which one leaves out a bar differ in that bar', () => {
    expect(told(compared('1 c5 | <K: 1 d5 | ; L: omit> 1 e5', ['K', 'L']))).toEqual(['2  0 omission: K=the bar | L=']);
  });

  it('of which one leaves out a note differ in that note, not in what comes later for it', () => {
    const music = '(irregular) 4 c5 <K: 4 d ; L: omit> 4 e5 f g';
    expect(told(compared(music, ['K', 'L']))).toEqual(['1 dessus 2 omission: K=4 d5 | L=']);
  });

  it('of a prelude without measure may have more notes, one than the other', () => {
    const analysis = analysed(
      'bentside 1\nsource K "one"\nsource L "two"\nvoice dessus\nsystem free dessus G2\n  dessus | c5 d <K: e f g ; L: 8 e f> 1 a4 g ||\n',
    );
    expect(errors(analysis)).toEqual([]);
    expect(told(compareScores(['K', 'L'].map((name) => scoreOf(analysis, name))))).toEqual([
      '1 dessus 3 reading: K=1 e5 1 f5 1 g5 | L=8 e5 8 f5',
    ]);
  });

  it('differ in the second bar of options that go over a barline', () => {
    expect(told(compared('1 c5 | <K: 1 d5 | 2 e f ; L: 1 d5 | 2 e g> | 1 a5', ['K', 'L']))).toEqual([
      '3 dessus 2 pitch: K=2 f5 | L=2 g5',
    ]);
  });

  it('are named with a question mark where it is doubtful that they have it', () => {
    const [difference] = compared('<K: 1 c5 ; L?: 1 d5>', ['K', 'L']).differences;
    expect(difference?.sides.map(({ names, doubtful }) => [names, doubtful])).toEqual([
      [['K'], []],
      [['L'], ['L']],
    ]);
  });

  it('have curves of their own', () => {
    expect(told(compared("2 c5'u:K d'.:K", ['K', 'L']))).toEqual(["1 dessus 1 sign: K=2 c5'u 2 d5'. | L=2 c5 2 d5"]);
  });
});

describe('three sources', () => {
  it('agree by two against one, and how often is counted', () => {
    const { agreements } = compared('<K,M: 1 c5 ; L: 1 d5> | <K,M: 1 c5 ; L: 1 d5> | <K: 1 c5 ; L,M: 1 d5>', [
      'K',
      'L',
      'M',
    ]);
    expect(agreements).toEqual([
      { groups: [['K', 'M'], ['L']], places: 2 },
      { groups: [['K'], ['L', 'M']], places: 1 },
    ]);
  });
});

describe('two readings', () => {
  it('differ in what is played where they agree in what is written', () => {
    const readings = 'reading sharp\n  practice overdot\nreading plain\n';
    expect(told(compared('4. c5 8 d 2 e', ['sharp', 'plain'], readings))).toEqual([
      '1 dessus 1 time: sharp=c5 0+7/16 d5 7/16+1/16 | plain=c5 0+3/8 d5 3/8+1/8',
    ]);
  });

  it('differ in what sounds where their practices of accidentals do', () => {
    const readings = 'reading old\n  accidentals note\nreading new\n  accidentals bar\n';
    expect(told(compared('4 f#5 g f 4 r', ['old', 'new'], readings))).toEqual([
      '1 dessus 3 sounding: old=f5 (77) | new=f5 (78)',
    ]);
  });

  it('are told in words of what sounds, and when', () => {
    const readings = 'reading old\n  accidentals note\nreading new\n  accidentals bar\n  practice overdot\n';
    const { differences } = compared('4. f#5 8 g 4 f f', ['old', 'new'], readings);
    expect(differences.map(({ sides }) => sides.map(({ inWords }) => inWords))).toEqual([
      ['f#5 at 0 for 3/8, g5 at 3/8 for 1/8 of a semibreve', 'f#5 at 0 for 7/16, g5 at 7/16 for 1/16 of a semibreve'],
      ['f5 sounds f5, f5 sounds f5', 'f5 sounds f#5, f5 sounds f#5'],
    ]);
  });
});

describe('a small note', () => {
  it('that alone is the same but comes later is told with its moment', () => {
    const readings = 'reading unequal\n  takes K\n  practice inegal 8 2:1\nreading even\n  takes L\n';
    const music = '<K: 8 c5 ; L: 8 e5> {small 16 f5} <K: 8 d5 ; L: 8 g5> 4 c5 2 c5';
    const { differences } = compared(music, ['unequal', 'even'], readings);
    expect(differences.map(({ kind, sides }) => [kind, ...sides.map(({ inWords }) => inWords)])).toEqual([
      ['pitch', '8 c5', '8 e5'],
      ['time', 'f5 at 1/6 of a semibreve', 'f5 at 1/8 of a semibreve'],
      ['pitch', '8 d5', '8 g5'],
    ]);
  });
});

describe('three readings', () => {
  const readings = 'reading sharp\n  takes K\n  practice overdot\nreading plain\n  takes K\nreading loose\n  takes L\n';

  it('of which two agree in what is written differ from each other in what is played there', () => {
    const comparison = compared('<K: 4. c5 8 d ; L: 2 c5> 2 e5', ['sharp', 'plain', 'loose'], readings);
    expect(told(comparison)).toEqual([
      '1 dessus 1 reading: sharp,plain=4. c5 8 d5 | loose=2 c5',
      '1 dessus 1 time: sharp=c5 0+7/16 d5 7/16+1/16 | plain=c5 0+3/8 d5 3/8+1/8',
    ]);
    expect(comparison.agreements).toEqual([
      { groups: [['sharp', 'plain'], ['loose']], places: 1 },
      { groups: [['sharp'], ['plain']], places: 1 },
    ]);
  });

  it('say in words all that each chooses, by whomever it is built on', () => {
    const before = [
      'table house from anglebert-1689',
      '  zz : on beat, +1 0',
      'temperament hall',
      '  c-g -1/4 sc',
      'tuning meantone 1/4',
      'link v1 v2',
      'reading grave',
      '  takes K',
      '  at v1 takes K',
      '  practice overdot',
      '  tempo 2 at 44',
      'reading even from grave',
      '  practice literal',
      '  signs house',
      '  accidentals bar',
      '  tuning hall',
      '  at v1 takes L',
      '',
    ].join('\n');
    const { texts } = compared('<v1 K: 1 c5 ; L: 1 d5> | <v2 K: 1 c5 ; L: 1 d5>', ['even', 'K'], before);
    expect(texts.map(({ inWords }) => inWords)).toEqual([
      [
        'built on grave',
        'takes K',
        'at v1 L',
        'signs after house, as the file defines it from anglebert-1689',
        'all as it is written',
        'a written accidental holds to the barline, in its octave, for all voices of its stave',
        '44 minims a minute',
        'hall, as the file defines it',
      ],
      [
        'signs not played',
        'a written accidental holds for its note and the immediate repetitions of that pitch in its voice',
        '1/4-comma meantone, its notes from e flat to g sharp',
      ],
    ]);
  });
});

describe('the overture', () => {
  const analysis = sampleAnalysis('overture.bent');
  const overture = (...names: string[]): Comparison => compareScores(names.map((name) => scoreOf(analysis, name)));
  const places = ({ differences }: Comparison, kinds: readonly string[]): string[] =>
    differences.filter(({ kind }) => kinds.includes(kind)).map(({ bar, voice }) => `${bar} ${voice}`);

  it('as the loose copy has it lacks the tirades, two signs, a moving bass and a curve', () => {
    expect(places(overture('K', 'L'), ['reading', 'sign'])).toEqual([
      '2 dessus',
      '6 dessus',
      '6 basse',
      '8 dessus',
      '10 dessus',
      '32 dessus',
      '35 dessus',
    ]);
  });

  /** By bar and voice: every event with its onset, length and pitch, as the timeline has them. */
  const soundingIn = (name: string): ReadonlyMap<string, string> => {
    const events = perform(scoreOf(analysis, name), { ornaments: 'sign' }).pieces.flatMap((piece) => piece.events);
    const lines = new Map<string, string>();
    for (const { voice, onset, duration, pitch, kind, from } of events) {
      const place = `${from[0].placed.bar.number} ${analysis.environment.voices[voice]?.name}`;
      const event = `${format(onset)}+${format(duration)} ${pitch === undefined ? kind : pitchText(pitch)}`;
      lines.set(place, `${lines.get(place) ?? ''} ${event}`);
    }
    return lines;
  };

  it.each([
    ['written', 'french'],
    ['written', 'plain'],
    ['french', 'plain'],
  ])('in %s and %s has differences of pitch and time listed exactly where what sounds differs', (one, other) => {
    const [here, there] = [soundingIn(one), soundingIn(other)];
    const differing = [...here.keys()].filter((place) => here.get(place) !== there.get(place));
    const listed = new Set(places(overture(one, other), ['pitch', 'rhythm', 'reading', 'time', 'sounding']));
    expect([...listed].sort()).toEqual(differing.sort());
    expect(differing.length).toBeGreaterThan(0);
  });

  it('in the french reading differs from the main text in time alone, and only in its grave part', () => {
    const comparison = overture('written', 'french');
    expect(new Set(comparison.differences.map(({ kind }) => kind))).toEqual(new Set(['time', 'sign']));
    const bars = comparison.differences.filter(({ kind }) => kind === 'time').map(({ bar }) => Number(bar));
    expect(Math.max(...bars)).toBeLessThanOrEqual(14);
    // The curve that only K has, bar 35, is not of the main text.
    expect(places(comparison, ['sign'])).toEqual(['35 dessus']);
  });
});
