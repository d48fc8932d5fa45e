/**
 * Signs as notes in values that can be printed. The examples of common practice are those of the rules for print: 32nds, or 64ths
 * where the note is a quaver or less; what is left goes to the note on which a sign stops.
 */
import { describe, expect, it } from 'vitest';
import { exportMei } from '../../server/export/mei';
import { performedIn, withOrnaments } from '../../server/export/ornaments';
import { exportTimeline } from '../../server/export/timeline';
import { signTableByName } from '../../server/signs/tables';
import { elementsIn, parsed } from '../helpers/mei';
import { eventsOfVoice, type Passage, performed, scoreOfPassage } from '../helpers/realised';
import { written } from '../helpers/writtenOut';

const in1689 = (lane: string, more: Partial<Passage> = {}): Passage => ({
  lanes: [lane],
  table: 'anglebert-1689',
  tempo: '4 at 60',
  ...more,
});
const full = (lane: string, more: Partial<Passage> = {}, voice = 0): string =>
  written(in1689(lane, more), { ornaments: 'full' }, voice);
const small = (lane: string, more: Partial<Passage> = {}): string =>
  written(in1689(lane, more), { ornaments: 'small' });
const codes = (passage: Passage, ornaments: 'small' | 'full' = 'full'): string[] =>
  withOrnaments(scoreOfPassage(passage), { ornaments }).problems.map(({ problem }) => problem.code);

describe('a sign written out', () => {
  it('is 32nds on a dotted quaver, and the note stands on its dot (common practice)', () => {
    expect(full("8. d5'zz 16 c 2. b4")).toBe('32:e5 32:d5 32:e5 16.:d5 16:c5 2.:b4');
  });

  it('is 64ths on a quaver', () => {
    expect(full("8 d5'ca c 2. b4")).toBe('64:d5 64:c5 16.:d5 8:c5 2.:b4');
  });

  it('has a triplet where a turn after a dotted note has the second third (common practice)', () => {
    expect(full("4. d5'turn(after) 8 c 2 b4")).toBe('8:d5 3:2 16:e5 3:2 16:d5 3:2 16:c5 8:d5 8:c5 2:b4');
  });

  it('keeps the proportion of the triplet in which its note stands', () => {
    expect(full("{3in2 8 c5 d'ca e} 2. c")).toBe('3:2 8:c5 3:2 64:d5 3:2 64:c5 3:2 16.:d5 3:2 8:e5 2.:c5');
  });

  it('ties what no single value fills, the longer value on the beat', () => {
    expect(full("2 d5'ca c")).toBe('32:d5 32:c5 16:d5= 4.:d5 2:c5');
  });

  it('goes on through tied notes, and over a barline', () => {
    expect(full("2 c5 d='ca | 2 d e")).toBe('2:c5 32:d5 32:c5 16:d5= 4.:d5= 2:d5 2:e5');
  });

  it('is tied over a barline through which its note runs', () => {
    expect(full("2. c5 2 d'ca'through | 2. e")).toBe('2.:c5 32:d5 32:c5 8.:d5= 4:d5 2.:e5');
  });

  it('stands at the later of tied notes where that bears it, which is struck anew', () => {
    expect(full("2 d5= 2 d'ca")).toBe('2:d5 32:d5 32:c5 16:d5= 4.:d5');
  });

  it('takes time before the beat from the note before', () => {
    const lane = "2 c5 2 d'azs";
    expect(full(lane, { table: 'dandrieu-1724' })).toMatch(/^4\.\.?:c5/);
  });

  it('writes small notes of the source out too', () => {
    expect(full('2 c5 {small 8 e5} 2 d', { table: 'quantz-1752' })).toBe('2:c5 4:e5 4:d5');
  });

  it('leaves a sign of which the table says nothing where it is', () => {
    expect(full("2 d5'ss c5")).toBe("2:d5'ss 2:c5");
  });

  it('keeps the sign at its first note if that is wished for', () => {
    const passage = in1689("8. d5'zz 16 c 2. b4");
    expect(written(passage, { ornaments: 'full', keepSigns: true })).toBe("32:e5'zz 32:d5 32:e5 16.:d5 16:c5 2.:b4");
  });

  it('keeps fingers at the written note, and a fermata at its end', () => {
    expect(full("4 d5'ca'3'fermata 2. c")).toBe("32:d5'3 32:c5 8.:d5'fermata 2.:c5");
  });

  it('has no rests where nothing was silent, and silence where the sign is one', () => {
    expect(full("2 d5'wedge c5", { table: 'couperin-1713' })).toMatch(/^\S+:d5( \S+:r)+ 2:c5$/);
  });

  it('stays a sign where its note is too short, and that is told', () => {
    const quick = { tempo: '4 at 140' };
    expect(full("16 d5'zz c 8 d 2. c", quick)).toBe("16:d5'zz 16:c5 8:d5 2.:c5");
    expect(codes(in1689("16 d5'zz c 8 d 2. c", quick))).toContain('sign-too-short');
  });
});

/** What is written of a bar by a table, then where what it makes of each sign is from. */
function byTable(table: string): string[] {
  const passage: Passage = { lanes: ["4. d5'zz 8 c 4 b4'ca c5'turn"], table, tempo: '4 at 60' };
  const rows = new Set(eventsOfVoice(performed(passage)).flatMap(({ realised }) => realised?.row ?? []));
  const cited = (signTableByName(table)?.rows ?? []).filter(({ label }) => rows.has(label));
  const sources = cited.map(({ label, citation }) => `${label}: ${citation.split(':')[0]}`);
  return [written(passage, { ornaments: 'full' }), ...sources];
}

describe('one bar under four tables', () => {
  it('is written in four ways, each with where it is from', () => {
    expect(byTable('anglebert-1689')).toEqual([
      '32:e5 32:d5 32:e5 32:d5 32:e5 32:d5 32:e5 32:d5= 8:d5 8:c5 32:b4 32:a4 8.:b4 32:d5 32:c5 32:b4 32:c5= 8:c5',
      'Tremblement simple: Marques des agréments et leur signification, 1689, no. 1, from memory',
      'Double cadence sans tremblement: Marques des agréments et leur signification, 1689, no. 7, as told in Grove, “Ornaments”',
      'Pincé: Marques des agréments et leur signification, 1689, no. 9, from memory',
    ]);
    expect(byTable('purcell-1696')).toEqual([
      "32:c5 32:d5 32:c5 32:d5 32:c5 32:d5 32:c5 32:d5= 8:d5 8:c5 4:b4'ca 32:d5 32:c5 32:b4 32:c5= 8:c5",
      'Beat: Rules for Graces, 1696, from memory',
      'Mark for the turn: Rules for Graces, 1696, from memory',
    ]);
    expect(byTable('couperin-1713')).toEqual([
      "32:e5 32:d5 32:e5 32:d5 32:e5 32:d5 32:e5 32:d5= 8:d5 8:c5 4:b4'ca 32:d5 32:c5 32:b4 32:c5= 8:c5",
      'Tremblement détaché: Explication des agrémens, et des signes, 1713, from memory',
      'Doublé: Explication des agrémens, et des signes, 1713, from memory',
    ]);
    expect(byTable('rameau-1724')).toEqual([
      '32:e5 32:d5 32:e5 32:d5 32:e5 32:d5 32:e5 32:d5= 8:d5 8:c5 32:b4 32:a4 32:b4 32:a4 8:b4 32:d5 32:c5 32:b4 32:c5= 8:c5',
      'Cadence, drawn short: Table of 1724, taken over about 1731, from memory',
      'Doublé: Table of 1724, taken over about 1731, as told in Grove, “Ornaments”',
      'Pincé: Table of 1724, taken over about 1731, from memory; the number of strokes is doubtful',
    ]);
  });
});

describe('a slur', () => {
  it('begins at the first note of a sign and ends at the last', () => {
    const passage = in1689("4 c5'u d'ca'. 2 c'zz");
    const { score } = withOrnaments(scoreOfPassage(passage), { ornaments: 'full' });
    const system = score.pieces[0]?.systems[0];
    const [slur] = system?.score.curves ?? [];
    const events = system?.score.voices[0]?.events ?? [];
    const pitchAt = (index = -1): string | undefined => events[index]?.members[0]?.spelling.letter;
    expect([slur?.start?.event, slur?.end?.event]).toEqual([0, 3]);
    expect([pitchAt(slur?.start?.event), pitchAt(slur?.end?.event)]).toEqual(['c', 'd']);
  });
});

describe('a chord', () => {
  it('holds its other notes in a voice of their own while one of them trills', () => {
    const passage = in1689("4 c5-e-g'ca 2. c");
    expect(written(passage, { ornaments: 'full' })).toBe('32:g5 32:f5 8.:g5 2.:c5');
    // Voices 0 and 1 are the passage's and the one that holds.
    expect(written(passage, { ornaments: 'full' }, 1)).toBe('4:c5-e5 :_');
  });

  it('ties them from stroke to stroke where ties bind them to their neighbours', () => {
    expect(full("4 c5=-e'ca 4 c 2 d")).toBe('32:c5=-e5 32:c5=-d5 8.:c5=-e5 4:c5 2:d5');
  });

  it('that is spread grows note by note', () => {
    expect(full("1 c5-e-g'arpu", { table: 'couperin-1713' })).toBe('32:c5= 32:c5=-e5= 8.:c5=-e5=-g5= 2.:c5-e5-g5');
  });
});

describe('an accidental', () => {
  it('is drawn at the first note that needs it', () => {
    expect(full("4 d5'ca c# 2 d", { key: 'b' })).toBe('32:d5 32:c#5 8.:d5 4:c#5 2:d5');
  });

  it("is the editor's at a written note for which that of a sign would seem to hold", () => {
    expect(full("2 d5'turn'# 4 c d", { key: 'b' })).toContain('4:c');
    expect(full("4 d5'ca'# c 2 d")).toBe('32:d5 32:c#5 8.:d5 4:c[n]5 2:d5');
  });

  it('of the written note stands where that first sounds', () => {
    expect(full("4 f#5'zz 2. g")).toMatch(/^32:g5 32:f#5 32:g5 /);
  });
});

describe('a sign as small notes', () => {
  it('leaves the rhythm as it is', () => {
    expect(small("8. d5'zz 16 c 2. b4")).toBe('(32:e5) (32:d5) (32:e5) 8.:d5 16:c5 2.:b4');
  });

  it('has those that follow the main note after it', () => {
    expect(small("2 d5'turn(after) 2 c")).toBe('2:d5 (.16:e5) (.16:d5) (.16:c5) (.16:d5) 2:c5');
  });

  it('shows eight strokes at most, and that is told', () => {
    expect(small("1 d5'zz").match(/\(/g)).toHaveLength(7);
    expect(codes(in1689("1 d5'zz"), 'small')).toContain('ornament-strokes');
  });

  it('tells of the trill that has more strokes, not of the pincé after it, which is whole', () => {
    const { problems } = withOrnaments(scoreOfPassage(in1689("1 d5'zz'ca")), { ornaments: 'small' });
    const told = problems.filter(({ problem }) => problem.code === 'ornament-strokes');
    expect(told.map(({ problem }) => problem.slots.what)).toEqual(['the sign zz (Tremblement simple, anglebert-1689)']);
  });

  it('is told of at its mark, like whatever else is said of it', () => {
    const score = scoreOfPassage(in1689("4 c5 2 d5'zz 4 c"));
    const told = withOrnaments(score, { ornaments: 'small' }).problems.find(
      ({ problem }) => problem.code === 'ornament-printed',
    );
    expect(told?.problem).toMatchObject({ pos: ' 4 c5 2 d5'.length, len: "'zz".length });
  });

  it('stands at the later of tied notes where that bears it', () => {
    expect(small("2 d5= 2 d'ca")).toBe('2:d5= (32:d5) (32:c5) 2:d5');
  });

  it('stands before small notes that the source has after the note', () => {
    const passage = { lanes: ["1 c5'tr {small 16 b4 c5} | 1 d"], table: 'turk-1789', tempo: '4 at 60' };
    expect(written(passage, { ornaments: 'small' })).toMatch(/\) 1:c5 \(\.16:b4\) \(\.16:c5\) 1:d5$/);
  });

  it('shows a spread chord from its first note to its last but one', () => {
    expect(small("1 c5-e-g'arpu", { table: 'couperin-1713' })).toBe('(32:c5) (32:e5) 1:c5-e5-g5');
  });

  it('stays a sign where it is a silence', () => {
    expect(small("2 d5'wedge c5", { table: 'couperin-1713' })).toBe("2:d5'wedge 2:c5");
  });
});

describe('a timeline', () => {
  const score = scoreOfPassage(in1689("4 d5'ca 2. c"));
  const events = (ornaments: 'small' | 'full' | 'sign') =>
    exportTimeline(performedIn(score, { ornaments }), { leaveGaps: false }).timeline?.pieces[0]?.events ?? [];

  it('tells of every note of a sign what it realises, by what sign and table', () => {
    for (const ornaments of ['small', 'full'] as const) {
      const realised = events(ornaments).filter(({ realises }) => realises !== undefined);
      expect(realised.length).toBeGreaterThan(1);
      for (const { realises, sign, table } of realised) {
        expect([realises, sign, table]).toEqual(['1/1/v0/1.1', 'ca', 'anglebert-1689']);
      }
    }
  });

  it('has small notes of no time for signs, where these are small notes', () => {
    expect(events('small').map(({ pitch, duration }) => `${pitch} ${duration}`)).toEqual([
      'd5 0',
      'c5 0',
      'd5 1/4',
      'c5 3/4',
    ]);
  });

  it('has none where signs stay signs', () => {
    expect(events('sign').map(({ pitch, duration }) => `${pitch} ${duration}`)).toEqual(['d5 1/4', 'c5 3/4']);
  });
});

describe('in MEI a note that stands for a sign', () => {
  it('says by what row of what table', () => {
    const { text } = exportMei(scoreOfPassage(in1689("4 d5'ca 2. c")), {
      clefs: 'source',
      leaveGaps: false,
      ornaments: 'full',
    });
    // The head has the beginning as well.
    const music = text.slice(text.indexOf('<music>'));
    expect(music.match(/type="realised" label="ca \(Pincé\), anglebert-1689"/g)).toHaveLength(3);
  });

  it('stands with its sign in one file where both are wished for', () => {
    const { text } = exportMei(scoreOfPassage(in1689("4 d5'ca 2. c")), {
      clefs: 'source',
      leaveGaps: false,
      ornaments: 'above',
    });
    const ossia = elementsIn(parsed(text), 'ossia');
    expect(ossia.map((element) => [...elementsIn(element, 'oStaff'), ...elementsIn(element, 'staff')].length)).toEqual([
      2,
    ]);
    expect(elementsIn(parsed(text), 'ornam')).toHaveLength(1);
  });

  it('stand above a bar that begins with a small note too, which is written out with them', () => {
    const score = scoreOfPassage(in1689("1 c5 | {small 8 d5} 2 c5 2 d'zz"));
    const { text } = exportMei(score, { clefs: 'source', leaveGaps: false, ornaments: 'above' });
    const [ossia, ...others] = elementsIn(parsed(text), 'oStaff');
    expect(others).toEqual([]);
    const notes = ossia === undefined ? [] : elementsIn(ossia, 'note');
    // d5 leans on c5 for half of it, then the trill on d5 begins above it.
    expect(
      notes
        .slice(0, 4)
        .map((note) => note.getAttribute('pname'))
        .join(' '),
    ).toBe('d c e d');
  });
});

describe('a score without a table', () => {
  it('stays as it is, and that is told', () => {
    const score = scoreOfPassage(in1689("1 d5'zz"));
    const without = { ...score, environment: { ...score.environment, readings: [], signs: undefined } };
    const { score: same, problems } = withOrnaments(without, { ornaments: 'full' });
    expect(same).toBe(without);
    expect(problems.map(({ problem }) => problem.code)).toEqual(['ornaments-no-table']);
  });

  it('misses none where no sign and no small note stands', () => {
    const told = (music: string): string[] => {
      const score = scoreOfPassage(in1689(music));
      const without = { ...score, environment: { ...score.environment, readings: [], signs: undefined } };
      return withOrnaments(without, { ornaments: 'full' }).problems.map(({ problem }) => problem.code);
    };
    expect(told("2 d5'3 c'fermata")).toEqual([]);
    expect(told('{small 8 e5} 1 d5')).toEqual(['ornaments-no-table']);
    expect(told("1 r'zz")).toEqual(['ornaments-no-table']);
  });

  it('takes the one that is asked for, if there is such a table', () => {
    const passage = in1689("2 d5'zz c");
    expect(written(passage, { ornaments: 'full', table: 'purcell-1696' })).not.toBe(full("2 d5'zz c"));
    const { problems } = withOrnaments(scoreOfPassage(passage), { ornaments: 'full', table: 'nobody-1700' });
    expect(problems.map(({ problem }) => problem.code)).toEqual(['ornaments-unknown-table']);
  });
});
