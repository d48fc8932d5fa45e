/** Time: values, bars that add up, bars that may be short, bars over system ends (common practice, unless said otherwise). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { format } from '../../grammar/time';
import {
  analysed,
  codes,
  durations,
  errors,
  eventsIn,
  findingOf,
  lane,
  mended,
  messages,
  passage,
  scoreOf,
} from '../helpers/music';

const numbers = (analysis: ReturnType<typeof lane>): string =>
  scoreOf(analysis)
    .pieces.map((piece) => piece.bars.map((bar) => bar.number).join(' '))
    .join(' / ');

describe('written time', () => {
  it('counts values from breve to 1/128, dots adding half, a quarter, an eighth', () => {
    expect(durations(lane('B c5 | 1. d 2 e | 2.. f 8 g', 'C = 4/2'))).toBe('2 3/2 1/2 7/8 1/8');
    expect(durations(lane('64 c5 d 128 e f 32 g 16. a 8.. b 4 c 2 d'))).toContain(
      '1/64 1/64 1/128 1/128 1/32 3/32 7/32',
    );
  });
  it('counts three in the time of two and five in the time of four', () => {
    expect(durations(lane('{3in2 8 c5 d e} 4 f 8x g a b 4 c'))).toBe('1/12 1/12 1/12 1/4 1/12 1/12 1/12 1/4');
    expect(durations(lane('16x5in4 c5 d e f g 2. a'))).toBe('1/20 1/20 1/20 1/20 1/20 3/4');
    expect(errors(lane('16x5in4 c5 d e f g 2. a'))).toEqual([]);
  });
  it('lets time stand still in small notes', () => {
    expect(durations(lane('2 c5 {small 16 d e} 2 f'))).toBe('1/2 0 0 1/2');
    expect(errors(lane('2 c5 {small 16 d e} f'))).toEqual([]);
  });
  it('fills a bar with a whole-bar rest or gap whatever its length', () => {
    expect(durations(lane('rbar | __ | 2. c5', '3/4'))).toBe('3/4 3/4 3/4');
    expect(durations(lane('4 c5 rbar | 4 c5 d __'))).toBe('1/4 3/4 1/4 1/4 1/2');
  });
  it('lets black notes be three in the time of two', () => {
    expect(durations(lane('{black 3in2 1 c5 d e} | B c5', 'C = 2/1'))).toBe('2/3 2/3 2/3 2');
  });
});

describe('a bar that does not add up', () => {
  it('is told in the trade’s words with the dot that mends it', () => {
    const short = lane('1 c5 | 4 c5 d e 8 f | 1 g');
    const finding = findingOf(short, 'bar-too-short');
    expect(finding.message).toBe('Bar 2, dessus: 7 quavers, C needs 8.');
    const dot = lane('1 c5 | 4 c5 d 8 e 4 f | 2 g a');
    expect(findingOf(dot, 'bar-too-short').message).toBe(
      'Bar 2, dessus: 7 quavers, C needs 8; a dot on the last note would fill it.',
    );
    const fixed = analysed(mended(dot, 'bar-too-short'));
    expect(errors(fixed)).toEqual([]);
    expect(fixed.tree.text).toContain('8 e 4. f | 2 g a');
  });
  it('keeps the value of what follows when the dot is written on a value that held', () => {
    const dot = lane('1 c5 | 2 c5 4 d f 8 e 4 f 8 g | 4 a b g f | 1 e', 'C = 5/4');
    expect(codes(dot)).toContain('bar-too-short');
    const dotted = lane('1 c5 | 8 c5 d 4 e f | g a b g | 1 f', 'C = 7/8');
    expect(findingOf(dotted, 'bar-too-long').message).toContain('C needs');
    const held = lane('1 c5 | 8 c5 4 d e f | g a b g | 1 f');
    const fixed = analysed(mended(held, 'bar-too-short'));
    expect(fixed.tree.text).toContain('8 c5 4 d e 4. f | 4 g a b g |');
    expect(errors(fixed)).toEqual([]);
  });
  it.each([
    ['after small notes, which type their own', '4 e | {small 8 f} g a b', '4. e | {small 8 f} 4 g a b'],
    ['after a bar of nothing', '4 e | __ | d5 e f', '4. e | __ | 4 d5 e f'],
    ['nowhere after doubtful ones that others follow', '4 e | 8? f 4 g 8 a 4 b', '4. e | 8? f 4 g 8 a 4 b'],
    ['nowhere after a doubtful one, which held for its note alone', '4? r | 8 f g a b c d', '4.? r | 8 f g a b c d'],
    ['nowhere before a triplet, which types its own', '4 e | {3in2 4 f g a} b', '4. e | {3in2 4 f g a} b'],
    ['within damage', '4 e | {unclear f g} a', '4. e | {unclear 4 f g} a'],
  ])('has the value typed again that what follows needs %s', (_, music, right) => {
    const short = lane(`2. c5 | 4 c5 8 d ${music}`, '3/4');
    const fixed = analysed(mended(short, 'bar-too-short'));
    expect(fixed.tree.text).toContain(right);
    expect(errors(fixed)).toEqual([]);
  });
  it.each([
    ['in an option, whose rivals take the same time', '<K: 4 d ; L: 4 e>'],
    ['where options follow, any of which may need the value', '4 e | <K: a ; L: b> 2 c5'],
    ['on a lacuna', 'lost 4'],
  ])('offers no dot %s', (_, music) => {
    expect(findingOf(lane(`2. c5 | 4 c5 8 d ${music}`, '3/4'), 'bar-too-short').fixes).toEqual([]);
  });
  it('is mended by the dot it offers, and nothing else is spoilt by it', () => {
    const short = [
      '4 c5 8 d 4 e',
      '8 c5 4 d e',
      '2 c5',
      '8 c5 4 d r',
      '8 c5 4 d _',
      '8 c5 4 d =',
      '8 c5 4 d-f lost 4',
    ].concat([
      '4 c5 8 d <K: 4 d ; L: 4 e>',
      '4 c5 8 d 4? e',
      '8 c5 {unclear 4 d e}',
      '8 c5 4 d {small 8 f} e',
      '8 c5 4 d e {small 8 f}',
    ]);
    const after = [
      'd5 e f',
      '4 f g a',
      '8 f g a b 4 c5',
      '__',
      'rbar',
      '{small 8 f} g a b',
      '<K: a ; L: b> 2 c5',
      'a <K: a ; L: b> 4 c5',
    ].concat(
      [
        '<K: omit ; L: a> 2 c5',
        '{3in2 4 f g a} b',
        '8x f g a 4 b c',
        '4? f g a',
        '8? f 4 g 8 a 4 b',
        'lost 4 f g',
        '{unclear f g} a',
      ],
      ['"gay" f g a', '(stems down) f-a g = ', 'r _ f', 'f lost ?', 'f g a | @', '= f g'],
    );
    const counts = (analysis: ReturnType<typeof lane>): Map<string, number> =>
      errors(analysis).reduce((all, code) => all.set(code, (all.get(code) ?? 0) + 1), new Map<string, number>());
    const bars = fc.tuple(fc.constantFrom(...short), fc.array(fc.constantFrom(...after), { maxLength: 3 }));
    fc.assert(
      fc.property(bars, ([first, rest]) => {
        const before = lane(['2. c5', first, ...rest].join(' | '), '3/4');
        const found = before.findings().find(({ code, fixes }) => code === 'bar-too-short' && fixes.length > 0);
        if (found === undefined) return;
        const [was, is] = [counts(before), counts(analysed(mended(before, 'bar-too-short')))];
        expect(is.get('bar-too-short') ?? 0).toBeLessThan(was.get('bar-too-short') ?? 0);
        for (const [code, count] of is) expect(count, code).toBeLessThanOrEqual(was.get(code) ?? 0);
      }),
      { numRuns: 300 },
    );
  });
  it('is told where it is too long', () => {
    expect(findingOf(lane('1 c5 | 2 c5 d e | 1 f'), 'bar-too-long').message).toBe(
      'Bar 2, dessus: 6 crotchets, C needs 4.',
    );
  });
  it('names the lane that differs from the others', () => {
    const two = passage('system upper C1 lower F4 meter C\n dessus | 1 c5 | 1 c5 |||\n basse | 1 c3 | 2. c3 |||\n');
    expect(findingOf(two, 'bar-too-short').message).toBe('Bar 2, basse: 3 crotchets, C needs 4.');
  });
  it('is not told of a bar that holds junk, whose time means nothing', () => {
    expect(codes(lane('1 c5 | 4 c5 %% d | 1 c'))).not.toContain('bar-too-short');
  });
  it('is told without a meter only where the lanes disagree', () => {
    const two = passage('system upper C1 lower F4\n dessus | 1 c5 | 2 c5 |||\n basse | 1 c3 | 1 c3 |||\n');
    expect(errors(two)).toEqual(['bar-too-short']);
  });
});

describe('a short bar', () => {
  it('may begin a piece and is then bar 0', () => {
    const upbeat = lane('4 g4 | 1 c5 | 2. d5');
    expect(errors(upbeat)).toEqual([]);
    expect(numbers(upbeat)).toBe('0 1 2');
  });
  it('may be one of a pair around a repeat that adds up, and shares its number', () => {
    const pair = lane('1 c5 | 2. d5 :|| 4 e | 1 f | 1 g');
    expect(numbers(pair)).toBe('1 2a 2b 3 4');
    expect(errors(pair)).toEqual([]);
    expect(errors(lane('4 g4 | 1 c5 | 2. d5 :|| 4 e | 1 f | 2. g'))).toEqual([]);
  });
  it('is told where the pair does not add up', () => {
    expect(errors(lane('1 c5 | 2. d5 :|| 2 e | 1 f'))).toEqual(['bar-too-short', 'bar-too-short']);
  });
  it('may begin a section, or be marked irregular', () => {
    expect(errors(lane('1 c5 | (section B) 4 c5 | 1 d'))).toEqual([]);
    expect(errors(lane('1 c5 | 2 c5 (irregular) | 1 d'))).toEqual([]);
    expect(errors(lane('1 c5 | 1 c5 2 d (irregular) | 1 d'))).toEqual([]);
  });
  it('in the middle of a piece is told', () => {
    expect(errors(lane('1 c5 | 2. d | 1 e'))).toEqual(['bar-too-short']);
  });
});

describe('a bar over a system end', () => {
  const broken = passage(
    'system upper C1 lower F4 meter C\n dessus | 1 c5 | 2 d5\n basse | 1 c3 | 2 d3\nsystem\n dessus | 2 e5 | 1 f5 |||\n basse | 4 e3 f | 1 g3 |||\n',
  );
  it('is one bar and is checked as joined', () => {
    expect(numbers(broken)).toBe('1 2 3');
    expect(errors(broken)).toEqual([]);
    expect(eventsIn(broken, 'basse').map(({ onset }) => format(onset))).toEqual(['0', '1', '3/2', '7/4', '2']);
  });
  it('breaks at the same time in all lanes', () => {
    const apart = passage(
      'system upper C1 lower F4 meter C\n dessus | 1 c5 | 2 d5\n basse | 1 c3 | 4 d3\nsystem\n dessus | 2 e5 |||\n basse | 2. e3 |||\n',
    );
    expect(codes(apart)).toContain('lanes-break-apart');
  });
});

describe('endings', () => {
  it('share their number with letters', () => {
    expect(numbers(lane('1 c5 | d | (ending 1) e :|| (ending 2) f'))).toBe('1 2 3a 3b');
  });
  it('stand first in their bar', () => {
    expect(errors(lane('2 c5 (ending 1) d :|| 1 f'))).toContain('ending-not-first');
  });
});

describe('a note that runs through the barline', () => {
  it('lasts into the next bar, whose own events follow it', () => {
    const through = lane("1 c5 | 2 d5 2. e'through | 4 f g a | 1 c");
    expect(errors(through)).toEqual([]);
    expect(eventsIn(through).map(({ onset, bar }) => `${format(onset)}@${bar.number}`)).toEqual([
      '0@1',
      '1@2',
      '3/2@2',
      '9/4@3',
      '5/2@3',
      '11/4@3',
      '3@4',
    ]);
  });
  it('is told where it ends with its bar', () => {
    expect(codes(lane("1 c5'through | 1 c"))).toContain('through-without-need');
  });
});

describe('a loose system', () => {
  const loose = (second: string): ReturnType<typeof passage> =>
    passage(
      `system loose upper C1 lower F4 meter C\n dessus | 1 c5 | 2. d5 4 e | 1 f5 |||\n basse | 2 c3 ${second} |||\n`,
    );
  it('lets barlines differ as long as the totals agree', () => {
    expect(errors(loose('| B d3 | 2 e3'))).toEqual([]);
  });
  it('tells totals that differ', () => {
    expect(errors(loose('| 1 d3'))).toEqual(['loose-totals']);
  });
  it('has a bar where all lanes have a barline, and keeps the other barlines inside', () => {
    const bars = scoreOf(loose('| 2 d3 | B e3')).pieces[0]?.bars ?? [];
    expect(bars.map((bar) => format(bar.duration))).toEqual(['1', '2']);
    expect(bars.map((bar) => bar.inner.length)).toEqual([1, 1]);
  });
});

describe('a free system', () => {
  const free = passage('system free upper C1 lower F4\n dessus | c4 e g c5-(down)c3 d5 (up) |||\n');
  it('needs no values and counts nominal semibreves', () => {
    expect(durations(free)).toBe('1 1 1 1 1');
  });
  it('strikes notes of two staves together', () => {
    expect(eventsIn(free)[3]?.event.members.map((member) => member.stave)).toEqual([0, 1]);
  });
  it('lets a chord go on from stave to stave, each counted from the one before', () => {
    const staves = (chord: string) => {
      const three = analysed(
        `bentside 1\nstave upper\nstave middle\nstave lower\nvoice basse lower\nsystem upper C1 middle C4 lower F4\n basse | 1 ${chord} |||\n`,
      );
      expect(errors(three)).toEqual([]);
      return eventsIn(three, 'basse')[0]?.event.members.map((member) => member.stave);
    };
    expect(staves('c3-(up)g-(up)e4')).toEqual([2, 1, 0]);
    expect(staves('c3-(up)g-(down)e3')).toEqual([2, 1, 2]);
  });
});

describe('lanes', () => {
  it('hold the same number of bars', () => {
    const two = passage('system upper C1 lower F4 meter C\n dessus | 1 c5 | 1 d |||\n basse | 1 c3 |||\n');
    expect(findingOf(two, 'bar-count').message).toBe('basse has 1 bar in this system, another lane has 2.');
  });
  it('agree about special barlines', () => {
    const two = passage('system upper C1 lower F4 meter C\n dessus | 1 c5 :|| 1 d |||\n basse | 1 c3 || 1 d |||\n');
    expect(errors(two)).toEqual(['barlines-disagree']);
  });
  it('leave no bar empty: the fixes are a whole-bar rest and a gap', () => {
    const empty = lane('1 c5 | | 1 d');
    expect(findingOf(empty, 'empty-bar').fixes.map((fix) => fix.title)).toEqual(['write rbar', 'write __']);
    expect(errors(analysed(mended(empty, 'empty-bar')))).toEqual([]);
  });
  it('begin with value and octave in every system', () => {
    expect(errors(lane('c5 d e f'))).toEqual(['value-missing']);
    expect(errors(lane('4 c d e f'))).toEqual(['octave-missing']);
    expect(codes(passage('system upper C1 lower F4 meter C\n dessus | 1 c5 |\nsystem\n dessus | d |||\n'))).toEqual(
      expect.arrayContaining(['value-missing', 'octave-missing']),
    );
  });
  it('whose octave may be a value are mended where that makes the bar whole', () => {
    const slip = lane('1 c5 | 2 d e4 f | 4 g a b g');
    expect(messages(slip, 'bar-too-long')).toEqual([
      'Bar 2, dessus: 6 crotchets, C needs 4; the 4 of e4 may be a value.',
    ]);
    expect(errors(analysed(mended(slip, 'bar-too-long')))).toEqual([]);
    expect(mended(slip, 'bar-too-long')).toContain('2 d 4 e f |');
    // The value of the next note, typed without its space.
    expect(mended(lane('1 c5 | 4 d e2 f | 1 g'), 'bar-too-short')).toContain('4 d e 2 f');
    for (const other of ['1 c5 | 2 d4 e f g', '1 c5 | 2 d <K: 2 e4 ; L: 2 f4> 2 g5', '1 c5 | 2 d e3 f']) {
      expect(findingOf(lane(other), 'bar-too-long').fixes).toEqual([]);
    }
  });
  // Common practice: the largest keyboards of the time end between f6 and c7.
  it('have no note in an octave without keys, where a value was meant', () => {
    const slip = lane('4 c5 e8 d 4 f g');
    expect(findingOf(slip, 'octave-without-keys').fixes.map(({ title }) => title)).toEqual(['write 8 e', 'write e 8']);
    expect(codes(lane('4 c5 8 e d 4 f g'))).not.toContain('octave-without-keys');
    expect(codes(lane('4 c5 eb7 d6 c'))).not.toContain('octave-without-keys');
    expect(findingOf(lane('4 c5 eb9 d6 c'), 'octave-without-keys').fixes).toEqual([]);
    const tied = lane('4 c5 e8= 4 e f g');
    expect(findingOf(tied, 'octave-without-keys').fixes.map(({ title }) => title)).toEqual(['write 8 e']);
    expect(mended(tied, 'octave-without-keys')).toContain('4 c5 8 e= 4 e f g');
    // What follows in a chord has no white space before it.
    expect(findingOf(lane('2 c5-e8-g c5'), 'octave-without-keys').fixes).toEqual([]);
    expect(mended(lane('2 c5 4 e8 d'), 'octave-without-keys')).toContain('2 c5 8 e d');
  });

  it('of an octave that no keyboard has nothing more is told, nor of the notes that go on in it', () => {
    const told = codes(
      passage(`instrument french-1700\nsystem upper C1 lower F4 meter C\n dessus | 2 c5 4 e8 d |||\n`),
    );
    expect(told).toContain('octave-without-keys');
    expect(told).not.toContain('ledger-lines');
    expect(told).not.toContain('outside-compass');
  });
  it('type value and octave again after options, as they were before or near to it', () => {
    const after = lane('2 c5 <K: 2 b4 ; L: 2 a4> | c g');
    expect(errors(after)).toEqual(['octave-missing', 'value-missing']);
    expect(mended(after, 'octave-missing')).toContain('| c5 g');
    expect(mended(after, 'value-missing')).toContain('| 2 c g');
    expect(findingOf(lane('{3in2 c5 d e} 2 f g'), 'value-missing').fixes).toEqual([]);
    expect(findingOf(lane('4 c d5 e f'), 'octave-missing').fixes).toEqual([]);
  });
  it('have no value that holds for nothing', () => {
    const slip = lane('2 4 c5 d e f');
    expect(messages(slip, 'value-unused')).toEqual(['Bar 1, dessus: the value 2 holds for nothing.']);
    expect(errors(analysed(mended(slip, 'value-unused')))).toEqual([]);
    expect(messages(lane('1 c5 | 4 d e f g 8'), 'value-unused')).toEqual([
      'Bar 2, dessus: the value 8 holds for nothing.',
    ]);
    // Taken away it would leave nothing in its bar.
    expect(findingOf(lane('1 c5 | 2'), 'value-unused').fixes).toEqual([]);
    // In the next bar, or for the options that type none, it holds.
    expect(codes(lane('4 c5 d e f 8 | g a b c6 2 d'))).not.toContain('value-unused');
    expect(codes(lane('2 <K: 4 c5 d ; L: c5> 2 d5'))).not.toContain('value-unused');
    // What was not understood may have been a note.
    expect(codes(lane('2 @ 4 c5 d'))).not.toContain('value-unused');
  });
  it('may wait for a note while a lane is typed', () => {
    expect(codes(passage(`system upper C1 lower F4 meter C\n dessus | 4 c5 d e 8\n`))).not.toContain('value-unused');
  });
  it('hint at a leap of a seventh without a digit and at a value typed again', () => {
    expect(codes(lane('4 c5 b d e'))).toContain('leap');
    expect(codes(lane('4 c5 b4 c5 d'))).not.toContain('leap');
    expect(codes(lane('4 c5 4 d e f'))).toContain('restated-value');
    expect(codes(lane('8 c5 {small 16 d} 16 e f 2. g'))).not.toContain('restated-value');
    expect(codes(lane('4 c5 d e f | 4 g a b c'))).not.toContain('restated-value');
  });
});

describe('tuplets', () => {
  it('that cannot be are told, not stumbled over', () => {
    expect(errors(lane('{0in2 8 c5 d e} 2 f'))).toContain('impossible-proportion');
    expect(errors(lane('{3in400000000000000000000000000000000000000 8 c5 d e} 2 f'))).toContain(
      'impossible-proportion',
    );
    expect(errors(lane('{black 0in400000000000000000000000000000000000000 8 c5 d e} 2 f'))).toContain(
      'impossible-proportion',
    );
    expect(errors(lane('8x400000000000000000000000000000000000000in1 c5 d'))).toContain('impossible-value');
  });
  it('fill their units', () => {
    expect(errors(lane('{3in2 8 c5 d} 2. f'))).toContain('tuplet-incomplete');
    expect(errors(lane('{3in2 4 c5 8 d} 2. f'))).toEqual([]);
    expect(errors(lane('8x c5 d 2. f'))).toContain('tuplet-incomplete');
  });
});
