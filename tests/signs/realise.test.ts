/** How a sign is played where it stands: rules of common practice, unless a source is named. */
import { describe, expect, it } from 'vitest';
import { format, time, ZERO } from '../../grammar/time';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { perform } from '../../server/readings/perform';
import type { PerformedEvent } from '../../server/score/performance';
import { eventsOfVoice, gaps, notes, type Passage, performed, played, problemsIn } from '../helpers/realised';
import { scoreOf } from '../helpers/scores';

const in1689 = (lane: string, more: Partial<Passage> = {}): Passage => ({
  lanes: [lane],
  table: 'anglebert-1689',
  tempo: '4 at 60',
  ...more,
});

/** A table whose trill comes to a stop, which is common practice; that of 1689 prints one that fills its value. */
const STOPS = { table: 'chambonnieres-1670' };

const printed = (lane: string, more: Partial<Passage> = {}): string => played(in1689(lane, { form: 'print', ...more }));
const count = (passage: Passage): number => notes(passage).split(' ').length;

describe('in print', () => {
  it('a trill on a crotchet is five 32nds and a stop', () => {
    expect(printed("4 d5'zz", { meter: '1/4', ...STOPS })).toBe('e5:1/32 d5:1/32 e5:1/32 d5:1/32 e5:1/32 d5:3/32');
  });

  it('a leaning trill on a minim has a quaver for its lean and one for its stop', () => {
    expect(printed("2 d5'zl", { meter: '2/4' })).toBe(
      ['e5:1/8', ...Array(4).fill('d5:1/32 e5:1/32'), 'd5:1/8'].join(' '),
    );
  });

  it('a pincé on a crotchet is two 32nds and a dotted quaver', () => {
    expect(printed("4 d5'ca", { meter: '1/4', tempo: '4 at 80' })).toBe('d5:1/32 c5:1/32 d5:3/16');
  });

  it('a turn over a crotchet is four semiquavers, after it four 32nds in its second half', () => {
    expect(printed("4 d5'turn", { meter: '1/4', tempo: '4 at 120' })).toBe('e5:1/16 d5:1/16 c5:1/16 d5:1/16');
    expect(printed("4 d5'turn(after)", { meter: '1/4' })).toBe('d5:1/8 e5:1/32 d5:1/32 c5:1/32 d5:1/32');
  });

  it('a turn over a longer note has written values, however long half a second is', () => {
    expect(printed("2. d5'turn", { meter: '3/4', tempo: '4 at 80' })).toBe('e5:1/32 d5:1/32 c5:1/32 d5:21/32');
    expect(printed("2 d5'turn", { meter: '2/4', tempo: '4 at 72' })).toBe('e5:1/32 d5:1/32 c5:1/32 d5:13/32');
  });

  it('a turn after a dotted crotchet leaves the dot to the note', () => {
    expect(printed("4. d5'turn(after)", { meter: '3/8' })).toBe('d5:1/8 e5:1/24 d5:1/24 c5:1/24 d5:1/8');
  });
});

describe('a trill', () => {
  it('has more strokes the longer its note lasts', () => {
    expect(count(in1689("4 d5'zz", { meter: '1/4', ...STOPS }))).toBe(8);
    expect(count(in1689("4 d5'zz", { meter: '1/4', tempo: '4 at 100', ...STOPS }))).toBe(4);
    expect(count(in1689("4 d5'zz", { meter: '1/4', tempo: '4 at 240' }))).toBe(2);
  });

  it('is left out where there is no time for it, and that is told', () => {
    expect(notes(in1689("16 d5'zz e f g", { meter: '1/4', tempo: '4 at 120' }))).toBe('d5 e5 f5 g5');
    expect(problemsIn(in1689("16 d5'zz e f g", { meter: '1/4', tempo: '4 at 120' }))).toEqual(['sign-too-short']);
  });

  it('stops on the dot of a dotted note', () => {
    // Ten strokes on the crotchet; the last of them stands on the dot, a quaver.
    const all = played(in1689("4. d5'zz 8 c", { meter: '2/4', ...STOPS })).split(' ');
    expect(all.slice(0, 9)).toEqual(Array.from({ length: 9 }, (_, i) => `${i % 2 === 0 ? 'e5' : 'd5'}:1/40`));
    expect(all.slice(9)).toEqual(['d5:3/20', 'c5:1/8']);
    // So does one that by its table fills the value.
    expect(played(in1689("4. d5'zz 8 c", { meter: '2/4' })).split(' ')).toEqual(all);
  });

  it('has two strokes on a last short note before the barline, and no stop', () => {
    expect(notes(in1689("2. c5 8 d d'zz", { meter: 'C' }))).toBe('c5 d5 e5 d5');
  });

  it('with a beginning of its own has, on a short note, two strokes from above and not another sign', () => {
    expect(notes(in1689("8 d5'zhb e 2. f", { tempo: '4 at 110' }))).toBe('e5 d5 e5 f5');
    expect(notes(in1689("8 e5'u d'zhb'. 2. f", { tempo: '4 at 110' }))).toBe('e5 d5 e5 d5 f5');
  });

  it('is slow or gay by the dotted beats of 6/8 and 12/8 (Hotteterre 1719)', () => {
    const inBar = (meter: string, tempo: string): number => count(in1689("2. d5'zz", { meter, tempo }));
    expect(inBar('6/8', '4. at 40')).toBe(inBar('6/8', '8 at 120'));
    // Slow, 8.5 strokes a second, on the crotchet and a half before the stop: one and a half seconds.
    expect(inBar('6/8', '4. at 40')).toBeLessThan(inBar('3/4', '4 at 60'));
  });

  it('in thirds goes stroke by stroke with the other', () => {
    const both = in1689("2 e5'zz", { lanes: ["2 e5'zz", "2 c5'zz"], meter: '2/4' });
    const onsets = (voice: number): string[] => eventsOfVoice(performed(both), voice).map(({ onset }) => format(onset));
    expect(onsets(0)).toEqual(onsets(1));
  });

  it('at a later one of tied notes begins there', () => {
    expect(played(in1689("2 d5= ='zz", { meter: 'C' }))).toMatch(/^d5:1\/2 e5:/);
  });

  it('can be told to begin with its note, or with the note above', () => {
    expect(notes(in1689("2 d5'zz(from main)", { meter: '2/4' }))).toMatch(/^d5 e5 d5 .*d5$/);
    expect(notes({ ...in1689("2 d5't(from upper)"), table: 'diruta-1593' })).toMatch(/^e5 d5 /);
  });
});

describe('an auxiliary', () => {
  it('makes no augmented second: a turn on c sharp in d minor has b natural', () => {
    expect(notes(in1689("4 d5 c#'turn 2 d", { key: 'bb', tempo: '4 at 120' }))).toBe('d5 d5 c#5 b4 c#5 d5');
  });

  it('below the final of a cadence is its leading note, where that stands in a bar beside it', () => {
    expect(notes(in1689("2 d5 c# | 1 d'ca", { key: 'bb' }))).toBe('d5 c#5 d5 c#5 d5');
    expect(notes(in1689("2 d5 a4 | 1 d5'ca", { key: 'bb' }))).toBe('d5 a4 d5 c5 d5');
  });

  it('on the dominant is the note of the key', () => {
    expect(notes(in1689("1 a4'ca", { key: 'bb' }))).toBe('a4 g4 a4');
  });

  it('is not the raised third of the final that follows, where the bar before has it lower', () => {
    const close = (before: string): string =>
      notes(in1689('', { lanes: [`1 ${before} | 2 b4'zz g# | 1 a`, '1 a3 | 1 e | 1 c#4'] })).split(' ')[1] ?? '';
    expect(close('c5')).toBe('c5');
    expect(close('e5')).toBe('c#5');
  });

  it('follows an accidental of the bar, of its own voice first', () => {
    expect(notes(in1689("4 f#5 g 2 e'zz")).split(' ')[2]).toBe('f#5');
    expect(notes(in1689('', { lanes: ["2 g5 e'zz", '2 f#4 g'] })).split(' ')[1]).toBe('f#5');
  });

  it('is the key that another voice sounds at that moment, not its other inflection', () => {
    // Without the bass the note below the final would be the leading note of the bar before.
    expect(notes(in1689('', { lanes: ["2 d5 c# | 1 d'ca", '1 a3 | 1 cn3'], key: 'bb' }))).toBe('d5 c#5 d5 c5 d5');
  });

  it('is what its own voice has in the bar, though another sounds it otherwise, and that is told', () => {
    const clash = in1689('', { lanes: ["4 f#5 2 e5'zz 4 d", '4 a4 2 f4 4 f'] });
    expect(notes(clash)).toMatch(/^f#5 f#5 e5 f#5 /);
    expect(problemsIn(clash)).toEqual(['auxiliary-undecided']);
  });

  it('makes no augmented second though another voice sounds its degree otherwise, and that is told', () => {
    const above = in1689('', { lanes: ["2 bb4'zz a", '2 c#4 d'], key: 'bb' });
    expect(notes(above)).toMatch(/^c5 bb4 c5 bb4 /);
    expect(problemsIn(above)).toEqual(['auxiliary-undecided']);
    expect(notes(in1689('', { lanes: ["2 g#4'ca a", '2 f4 e'] }))).toBe('g#4 f#4 g#4 a4');
  });

  it('that is undecided is decided by the accidental that its finding asks for', () => {
    const decided = in1689('', { lanes: ["2 c#5'turn'n d", '2 bb3 a'], key: 'bb' });
    expect(notes(decided)).toBe('d5 c#5 b4 c#5 d5');
    expect(problemsIn(decided)).toEqual([]);
    expect(notes(in1689('', { lanes: ["2 c#5'turn'b d", '2 bb3 a'], key: 'bb' }))).toBe('d5 c#5 bb4 c#5 d5');
  });

  it('that the second of two signs adds is altered by the accidental after that', () => {
    expect(notes({ ...in1689("2 d5'ss'turn'#"), table: 'purcell-1696' })).toMatch(/^e5 d5 .*e5 d5 c#5 d5$/);
  });

  it('is decided by an accidental at the sign', () => {
    expect(notes(in1689("1 d5'ca'#"))).toBe('d5 c#5 d5');
    expect(notes(in1689("1 d5'ca'b"))).toBe('d5 cb5 d5');
  });
});

describe('strokes', () => {
  it('of less than 60 ms are not played: there are fewer, or the note is plain, which is told', () => {
    const redoble = { ...in1689("8 e5'r f 2. g", { key: 'f#' }), table: 'santa-maria-1565' };
    expect(notes(redoble)).toBe('e5 d5 e5 f#5 e5 f#5 g5');
    const quick = in1689("16 d5'ca e f g 2. a", { tempo: '4 at 120' });
    expect(notes(quick)).toBe('d5 e5 f5 g5 a5');
    expect(problemsIn(quick)).toEqual(['sign-too-short']);
  });
});

describe('a key that another voice holds', () => {
  const clash = in1689('', { lanes: ["2 c5 d'zz", '1 e5'] });

  it('is released for the ornament, and that is told', () => {
    const [held, silence] = eventsOfVoice(performed(clash), 1);
    expect(held?.pitch && pitchText(held.pitch)).toBe('e5');
    expect(held && format(held.duration)).toBe('1/2');
    expect(silence?.kind).toBe('rest');
    expect(problemsIn(clash)).toEqual(['key-held']);
  });

  it('stays held on another manual', () => {
    const apart = in1689('', { lanes: ["(manual upper) 2 c5 d'zz", '(manual lower) 1 e5'] });
    expect(eventsOfVoice(performed(apart), 1)).toHaveLength(1);
    expect(problemsIn(apart)).toEqual([]);
  });
});

describe('signs that stand together', () => {
  it('are played one after the other where the table has no row for both', () => {
    expect(notes(in1689("2 c5 d'cb'zz"))).toMatch(/^c5 c5 e5 d5 .*d5$/);
  });

  it('are both played where one of them cuts the note short: the other on what sounds', () => {
    expect(notes(in1689("2 d5'dash'zz e"))).toMatch(/^e5 d5 .*d5 r e5$/);
    expect(notes({ ...in1689("2 d5'wedge'zz e"), table: 'couperin-1713' })).toMatch(/^e5 d5 .*d5 r e5$/);
  });

  it('are one sign where it has: the longest set wins', () => {
    expect(notes(in1689("2 c5 d'ca'cb"))).toBe('c5 c5 d5 c5 d5');
  });
});

describe('a spread chord', () => {
  const chord = (lane: string, more: Partial<Passage> = {}): string =>
    eventsOfVoice(performed(in1689(lane, more)))
      .map(({ pitch, onset }) => `${pitch === undefined ? '' : pitchText(pitch)}@${format(onset)}`)
      .join(' ');

  it('has its lowest note on the beat and holds every note to the end', () => {
    expect(chord("1 c5-e-g'scu")).toMatch(/^c5@0 e5@\S+ g5@/);
    for (const { onset, duration } of eventsOfVoice(performed(in1689("1 c5-e-g'scu")))) {
      expect(Number(onset.n) / Number(onset.d) + Number(duration.n) / Number(duration.d)).toBeCloseTo(1, 12);
    }
  });

  it('begins the trill of a note when its turn has come', () => {
    expect(chord("1 c5-g'scu'zz")).toMatch(/^c5@0 a5@1\/\d+ g5@/);
  });

  it('goes over both staves as one series where one sign joins them', () => {
    const both = { lanes: ["1 g5'arp+", "1 c3-e'arp+"], table: 'purcell-1696', tempo: '4 at 60' };
    const order = performed(both).pieces.flatMap(({ events }) => events.flatMap(({ pitch }) => pitch ?? []));
    expect(order.map(pitchText)).toEqual(['c3', 'e3', 'g5']);
  });

  it('begins in each hand on the beat where no sign joins them', () => {
    const apart = { lanes: ["1 e5-g'arp", "1 c3-e'arp"], table: 'purcell-1696', tempo: '4 at 60' };
    const first = performed(apart).pieces.flatMap(({ events }) => events.filter(({ onset }) => onset.n === 0));
    expect(first).toHaveLength(2);
  });

  it('has no more than 70 ms from note to note, and 90 where notes are struck in passing', () => {
    const second = (lane: string): string => chord(lane).split(' ')[1] ?? '';
    // A semibreve of four seconds: 1/57 of it is 70 ms, 1/44 of it 91.
    expect(second("1 c5-e'scu")).toBe('e5@1/57');
    expect(second("1 c5-e'tcb")).toBe('d5@1/44');
    expect(played(in1689("1 c5-e'tcb"))).toBe('c5:1 d5:1/44 e5:21/22');
  });

  it('is struck plain where a third has no time for a note in passing, and that is told', () => {
    expect(notes(in1689("8 c5-e'tcb 8 d 2. c", { tempo: '4 at 160' }))).toBe('c5 e5 d5 c5');
    expect(problemsIn(in1689("8 c5-e'tcb 8 d 2. c", { tempo: '4 at 160' }))).toEqual(['sign-too-short']);
  });

  it('needs a chord: at one note it is impossible', () => {
    expect(problemsIn(in1689("1 c5'scu"))).toEqual(['sign-impossible']);
  });
});

describe('small notes', () => {
  it('of several are played on the beat, one after another, in the time of their note', () => {
    const slide = played(in1689('2 g4 {small 16 b4 c5} 2 d5'));
    expect(slide).toMatch(/^g4:1\/2 b4:(\S+) c5:\1 d5:/);
  });

  it('at the end of a bar are played at the end of the note before', () => {
    expect(notes(in1689('1 d5 {small 16 c5 d5}'))).toBe('d5 c5 d5');
  });

  it('before and after one note share its time', () => {
    const both = (sign: string): Passage => ({
      ...in1689(`2 c5 {small 8 e5} 2 d${sign} {small 16 c5 d}`),
      table: 'turk-1789',
    });
    const events = (sign: string): readonly PerformedEvent[] => eventsOfVoice(performed(both(sign)));
    expect(notes(both(''))).toBe('c5 e5 d5 c5 d5');
    expect(played(both(''))).toMatch(/^c5:1\/2 e5:1\/4 d5:/);
    for (const sign of ['', "'tr"]) expect(gaps(events(sign), ZERO, time(1))).toEqual([]);
  });

  it('at the end of a trill are its suffix: of its speed, without a stop before them, and instead of that of the table', () => {
    const closed = (table: string): Passage => ({ ...in1689("2 c5 2 d'tr {small 16 c5 d} | 1 e5"), table });
    const [, ...strokes] = played(closed('turk-1789')).split(' ').slice(0, -1);
    expect(strokes.join(' ')).toMatch(/^e5:\S+ d5:\S+ .*e5:\S+ d5:\S+ c5:\S+ d5:\S+$/);
    expect(new Set(strokes.map((note) => note.replace(/.*:/, ''))).size).toBe(1);
    expect(notes(closed('quantz-1752'))).toMatch(/e5 d5 c5 d5 e5$/);
  });

  it('in passing take no more than half of a short note before them, and are never lost', () => {
    const passing = { ...in1689('16 e5 {small 8 d} 16 c 8 d 2. e', { tempo: '4 at 100' }), table: 'quantz-1752' };
    expect(played(passing)).toMatch(/^e5:1\/32 d5:1\/32 c5:1\/16 /);
  });

  it('are short where the bass moves before they would resolve (Türk, sec. 25: the harmony would suffer)', () => {
    const lean = (bass: string): string =>
      played(in1689('', { lanes: ['2 d5 {small 8 d} 2 c', bass] })).split(' ')[1] ?? '';
    expect(lean('2 b3 f')).toBe('d5:1/4');
    expect(lean('2 b3 8 f g f g')).toBe('d5:1/8');
  });
});

describe('a table of one’s own', () => {
  const LANE = "4 c5'zz d'ca 2 c4 {small 8 e4} 2 d4'zz";
  const own = 'table house from anglebert-1689\n  ca "pincé" : on beat, 0 -1 0 -1 0, hold';

  it('overrides one row and changes exactly those notes', () => {
    const base = played(in1689(LANE, { meter: '' })).split(' ');
    const changed = played(in1689(LANE, { meter: '', table: 'house', before: own })).split(' ');
    const pitches = (all: readonly string[]): string[] => all.map((note) => note.replace(/:.*/, ''));
    const at = pitches(base).join(' ').indexOf('d5 c5 d5 c4');
    expect(pitches(changed).join(' ')).toBe(pitches(base).join(' ').replace('d5 c5 d5 c4', 'd5 c5 d5 c5 d5 c4'));
    expect(at).toBeGreaterThan(0);
    const others = (all: readonly string[]): string[] => all.filter((note) => !/^(c5|d5):/.test(note));
    expect(others(changed)).toEqual(others(base));
  });

  it('states speeds in notes a second, a pulse, or a value', () => {
    const trill = (speed: string): number =>
      count(in1689("1 d5'zz", { table: 'own', before: `table own\n  zz : on beat, (+1 0) repeated at ${speed}` }));
    expect(trill('4 a second')).toBe(16);
    expect(trill('8 a pulse')).toBe(42);
    expect(trill('16')).toBe(16);
  });

  it('plays the first row that fits', () => {
    const before = [
      'table own',
      '  zz when dotted : on beat, 0 +1 0, hold',
      '  zz when before rest : on beat, 0 -1 0, hold',
      '  zz : on beat, +1 0, hold',
    ].join('\n');
    const made = (lane: string): string => notes(in1689(lane, { table: 'own', before, meter: '' }));
    expect(made("4. d5'zz 8 r")).toBe('d5 e5 d5 r');
    expect(made("4 d5'zz r")).toBe('d5 c5 d5 r');
    expect(made("4 d5'zz c")).toBe('e5 d5 c5');
  });

  it('can begin with what another row gives', () => {
    const before = 'table own from anglebert-1689\n  zc "closed" : extends zz, -1 0';
    expect(notes(in1689("2 d5'zc", { table: 'own', before }))).toMatch(/^e5 d5 .*e5 d5 c5 d5$/);
  });

  it('can force an accidental, and say that a sign is not understood', () => {
    const before = 'table own\n  ca : on beat, 0 -1# 0, hold\n  x : unresolved "the book has it twice"';
    expect(notes(in1689("1 d5'ca", { table: 'own', before }))).toBe('d5 c#5 d5');
    expect(problemsIn(in1689("1 d5'x", { table: 'own', before }))).toEqual(['sign-unresolved']);
  });

  it('does not come to an end in a circle', () => {
    const before = 'table a from b\n  ca : on beat, 0 -1 0, hold\ntable b from a\n  zz : extends zl\n  zl : extends zz';
    expect(notes(in1689("2 d5'ca e'zz", { table: 'a', before }))).toMatch(/^d5 c5 d5/);
  });
});

describe('a system without music', () => {
  it('has no signs to play, and hinders nothing', () => {
    const empty = 'bentside 1\nsigns anglebert-1689\ntempo 4 at 60\nvoice v\nreading played\nsystem v G2 meter C\n';
    expect(perform(scoreOf(empty, 'played')).problems).toEqual([]);
  });
});

describe('what realising cannot do is told', () => {
  it('where nothing stands before a sign that begins before the beat: it begins on it', () => {
    const alone = { ...in1689("1 d5'azs"), table: 'dandrieu-1724' };
    expect(notes(alone)).toMatch(/^c5 d5 c5 d5 /);
    expect(problemsIn(alone)).toEqual(['sign-on-beat']);
  });

  it('of a note too short for any stroke only that: it is not said as well to begin on the beat', () => {
    const before = 'table house\n  zz "shake" : before beat, -1 0, hold';
    const hurried = in1689("8 d5'zz 8 e 2. f", { table: 'house', tempo: '4 at 300', before });
    expect(notes(hurried)).toBe('d5 e5 f5');
    expect(problemsIn(hurried)).toEqual(['sign-too-short']);
  });

  it('where the table has no such sign, with those that have it', () => {
    const [told] = performed({ ...in1689("1 d5'zl"), table: 'chambonnieres-1670' }).problems;
    expect(told?.problem).toMatchObject({
      code: 'sign-not-in-table',
      slots: { sign: "'zl", table: 'chambonnieres-1670', others: 'it stands in anglebert-1689, rameau-1724' },
    });
  });

  it('where the table has it for other notes only, in words, each row called once', () => {
    const rows = ['table house', '  ca "mezzo" when before higher : on beat, 0 -1 0, hold'];
    const both = [...rows, '  ca "mezzo" when falling : on beat, +1 for 1/4, 0'].join('\n');
    const othersOf = (before: string): unknown => {
      const [told] = performed(in1689("2 d5'ca c", { table: 'house', before })).problems;
      return told?.problem.slots.others;
    };
    expect(othersOf(both)).toBe(
      'it has it only before a higher note, or after a higher note; here the name of a row in round brackets decides: mezzo',
    );
    expect(othersOf('table house\n  ca when rising : on beat, 0 -1 0, hold')).toBe('it has it only after a lower note');
  });

  it('where a word in round brackets says nothing', () => {
    expect(problemsIn(in1689("1 d5'zz(form main)"))).toContain('sign-parameter');
    expect(problemsIn(in1689("1 d5'zz(above)"))).toEqual([]);
  });

  it('where no tempo is stated: sixty crotchets a minute are assumed, and told once', () => {
    const without = { lanes: ["2 d5'zz c'zz"], table: 'anglebert-1689' };
    expect(problemsIn(without)).toEqual(['tempo-assumed']);
    expect(played(without)).toBe(played(in1689("2 d5'zz c'zz")));
  });

  it('where degree and key cannot agree', () => {
    const between = in1689('', { lanes: ["1 c#5'turn", '1 bb3'], key: 'bb' });
    expect(problemsIn(between)).toEqual(['auxiliary-undecided']);
  });
});
