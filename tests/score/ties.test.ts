/** Ties, curves, options and witnesses, signs and small things of the source (common practice, unless said otherwise). */
import { describe, expect, it } from 'vitest';
import { curvesOf } from '../../server/score/walk';
import {
  analysed,
  codes,
  durations,
  errors,
  eventsIn,
  findingOf,
  HEAD,
  lane,
  mended,
  passage,
  scoreOf,
  sound,
} from '../helpers/music';

describe('a tie', () => {
  it('is told where the next event has another pitch', () => {
    const wrong = lane('2 c5= d');
    expect(findingOf(wrong, 'tie-other-pitch').message).toBe('The tie on c5 finds no c5 in the next event.');
  });
  it('is told with its accidental where the next note has another', () => {
    const said = (music: string): string => findingOf(lane(music), 'tie-other-pitch').message;
    expect(said('2 f#5= fn')).toBe('The tie on f#5 finds no f#5 in the next event.');
    expect(said('2 b4= bb')).toBe('The tie on bn4 finds no bn4 in the next event.');
  });
  it('on a small note joins nothing, and is told', () => {
    expect(codes(lane('{small 8 d5=} 2 d5 c'))).toContain('small-tie');
    expect(codes(lane("{small 8 d5'u} 2 d5'. c"))).not.toContain('small-tie');
  });
  it('is told where nothing follows', () => {
    expect(errors(lane('2 c5= r'))).toEqual(['tie-to-nothing']);
    expect(errors(lane('1 c5='))).toEqual(['tie-to-nothing']);
  });
  it('ties the members of a chord one by one', () => {
    const chord = lane('2 c5=-e 2 c5-f');
    expect(errors(chord)).toEqual([]);
    expect(eventsIn(chord)[1]?.event.members.map((member) => member.tiedFrom)).toEqual([true, false]);
  });
  it('repeats the whole event where = stands alone, with marks of its own', () => {
    const alone = lane("2 c5-e ='zz");
    expect(sound(alone)).toBe('c5-e5 c5-e5');
    expect(eventsIn(alone)[1]?.event.members.every((member) => member.tiedFrom)).toBe(true);
    expect(eventsIn(alone)[1]?.event.members[0]?.marks.map((mark) => mark.form.name)).toEqual(['zz']);
  });
  it('cannot stand alone first in a system, nor after a chord tied in part, nor after a rest', () => {
    expect(errors(lane('2 = c5'))).toContain('repeat-first');
    expect(errors(lane('2 c5=-e ='))).toContain('repeat-after-partial-tie');
    expect(errors(lane('2 r ='))).toContain('repeat-of-nothing');
  });
  it('is not broken by small notes between', () => {
    expect(errors(lane('2 c5= {small 8 d5} c5'))).toEqual([]);
  });
  it('may hold for one reading only', () => {
    const one = passage('system upper C1 lower F4 meter C\n dessus | 2 c5=:L c5 |||\n');
    expect(eventsIn(one)[1]?.event.members[0]?.tiedFrom).toBe(false);
    expect(eventsIn(one, 'dessus', 'L')[1]?.event.members[0]?.tiedFrom).toBe(true);
  });
});

describe('a curve', () => {
  const ends = (analysis: ReturnType<typeof lane>): string[] =>
    scoreOf(analysis).pieces.flatMap((piece) =>
      curvesOf(piece).map(
        ({ start, end }) =>
          `${start?.voice.events[start.end.event]?.address ?? '~'}-${end?.voice.events[end.end.event]?.address ?? '~'}`,
      ),
    );
  it("lasts from 'u to '.", () => {
    expect(ends(lane("4 c5'u d e'. f"))).toEqual(['1.1-1.3']);
  });
  it('ends the one begun last, or the one begun on a named note', () => {
    expect(ends(lane("4 c5'u d'u e'. f'."))).toEqual(['1.2-1.3', '1.1-1.4']);
    expect(ends(lane("4 c5'u d'u e'.c5 f'."))).toEqual(['1.1-1.3', '1.2-1.4']);
  });
  it('crosses barlines and system ends', () => {
    const over = passage("system upper C1 lower F4 meter C\n dessus | 1 c5'u | 1 d5 |\nsystem\n dessus | 1 e5'. |||\n");
    expect(errors(over)).toEqual([]);
    expect(ends(over)).toEqual(['1.1-1.1']);
  });
  it('is told where it never ends or ends nothing', () => {
    expect(errors(lane("2 c5'u d"))).toEqual(['curve-never-ends']);
    expect(errors(lane("2 c5 d'."))).toEqual(['curve-end-alone']);
    expect(errors(lane("2 c5'u d'.e5")).sort()).toEqual(['curve-end-unmatched', 'curve-never-ends']);
  });
  it("may leave an end unshown: 'u~ and '.~", () => {
    const open = lane("2 c5'u~ d'.~");
    expect(errors(open)).toEqual([]);
    expect(ends(open)).toEqual(['1.1-~', '~-1.2']);
  });
  it('crosses from voice to voice only under one name', () => {
    const two = (name: string): ReturnType<typeof passage> =>
      passage(`system upper C1 lower F4 meter C\n dessus | 2 c5'u${name} d |||\n basse | 2 c3 d'.${name} |||\n`);
    expect(errors(two('(q1)'))).toEqual([]);
    expect(errors(two(''))).toEqual(expect.arrayContaining(['curve-end-alone', 'curve-never-ends']));
  });
});

describe('options', () => {
  const rival = `${HEAD}reading plain "L at face value"\n takes L\nreading mended "as corrected"\n`;
  const bar = `system upper C1 lower F4 meter C\n dessus | 2 c5 <v1 K: 2 d5 ; L: 4 d5 e5> | <sic: 1 f5 ; corr: 1 e5> |||\n`;
  it('take the first option and sic in `written`', () => {
    expect(sound(analysed(rival + bar))).toBe('c5 d5 f5');
  });
  it('take a witness, and corr, in every other choice', () => {
    expect(sound(analysed(rival + bar), 'dessus', 'L')).toBe('c5 d5 e5 e5');
    expect(sound(analysed(rival + bar), 'dessus', 'plain')).toBe('c5 d5 e5 e5');
    expect(sound(analysed(rival + bar), 'dessus', 'mended')).toBe('c5 d5 e5');
  });
  it('take what a reading says of the named place first', () => {
    const at = rival.replace(' takes L\n', ' takes L\n at v1 takes K\n');
    expect(sound(analysed(at + bar), 'dessus', 'plain')).toBe('c5 d5 e5');
  });
  it('take a source itself before its layer, whichever stands first', () => {
    const layers = lane('<K.2: 1 d5 ; K: 1 e5> | <K.2: 1 d5 ; L: 1 e5>', 'C', 'hand K.2 "paler ink"\n');
    expect(sound(layers, 'dessus', 'K')).toBe('e5 d5');
    expect(sound(layers, 'dessus', 'K.2')).toBe('d5 d5');
  });
  it('take equal time', () => {
    expect(
      errors(analysed(`${rival}system upper C1 lower F4 meter C\n dessus | 2 c5 <K: 2 d5 ; L: 4 d5> |||\n`)),
    ).toContain('options-unequal');
  });
  it('ask for value and octave again after them', () => {
    const untyped = analysed(`${rival}system upper C1 lower F4 meter C\n dessus | <K: 2 d5 ; L: 2 e5> f |||\n`);
    expect(errors(untyped).sort()).toEqual(['octave-missing', 'value-missing']);
  });
  it('may hold barlines, the same in each', () => {
    const over = analysed(
      `${rival}system upper C1 lower F4 meter C\n dessus | <K: 1 d5 | 2 e ; L: 2 d5 e | 2 f> 2 g5 |||\n basse | 1 c3 | d |||\n`,
    );
    expect(errors(over)).toEqual([]);
    expect(sound(over, 'dessus', 'L')).toBe('d5 e5 f5 g5');
  });
  it('number the events inside by place, label and event', () => {
    expect(eventsIn(analysed(rival + bar), 'dessus', 'L').map(({ event }) => event.address)).toEqual([
      '1.1',
      '1.2.L.1',
      '1.2.L.2',
      '2.1.corr.1',
    ]);
  });
});

describe('a witness lane', () => {
  const lanes = `${HEAD}system upper C1 lower F4 meter C\n dessus | 1 c5 | 1 d | 1 e |||\n dessus L | | 2 d5 f | |\n basse | 1 c3 | d | e |||\n`;
  it('replaces the bars that differ and leaves the others as above', () => {
    expect(errors(analysed(lanes))).toEqual([]);
    expect(sound(analysed(lanes), 'dessus', 'L')).toBe('c5 d5 f5 e5');
    expect(sound(analysed(lanes))).toBe('c5 d5 e5');
  });
  it('is written voice.witness in addresses', () => {
    expect(eventsIn(analysed(lanes), 'dessus', 'L')[1]?.event.laneName).toBe('dessus.L');
  });
});

describe('signs', () => {
  it('name shapes of the catalogue or rows of a table', () => {
    expect(eventsIn(lane("1 c5'zz"))[0]?.event.members[0]?.marks[0]?.shapes).toEqual(['zz']);
    const table = lane("1 c5'pince", 'C', 'signs anglebert-1689\n');
    expect(errors(table)).toEqual([]);
    // d'Anglebert 1689: the pincé is the comma after the note.
    expect(eventsIn(table)[0]?.event.members[0]?.marks[0]?.shapes).toEqual(['ca']);
  });
  it('are undecided where tables differ and none is chosen', () => {
    expect(errors(lane("1 c5'pince"))).toEqual(['sign-undecided']);
  });
  it('are undecided where the chosen table has no such name, and that is told', () => {
    const choosing = lane("1 c5'trill", 'C', 'signs anglebert-1689\n');
    expect(errors(choosing)).toEqual(['sign-undecided']);
    expect(findingOf(choosing, 'sign-undecided').message).toMatch(
      /; anglebert-1689, the table of this file, has no such name: name the shape\.$/,
    );
  });
  it('are decided where all readings that name a table agree', () => {
    const read = 'reading one "after 1689"\n signs anglebert-1689\n';
    expect(errors(lane("1 c5'pince", 'C', read))).toEqual([]);
  });
  it('are answered with the nearest known name', () => {
    const slip = lane("1 c5'trun");
    expect(errors(slip)).toEqual(['unknown-sign']);
    expect(mended(slip, 'unknown-sign')).toContain("c5'turn");
    expect(findingOf(slip, 'unknown-sign').message).toMatch(/; nearest: turn\.$/);
  });
  it('are answered without one where none is near', () => {
    expect(findingOf(lane("1 c5'qqq"), 'unknown-sign').message).toBe(
      '“qqq” is no sign of the catalogue nor of any table here.',
    );
  });
});

describe('two clefs on one stave', () => {
  it('are kept together and must agree about every line', () => {
    const two = `stave upper\nstave lower lines 6\nvoice basse lower\nsystem upper C1 lower F4+C6 meter C\n basse | 1 c3 |||\n`;
    expect(errors(analysed(two))).toEqual([]);
    expect(codes(analysed(two.replace('F4+C6', 'F4+C5')))).toContain('clefs-disagree');
  });
  it('stand on lines that the stave has', () => {
    expect(errors(passage('system upper C1 lower C7 meter C\n basse | 1 c3 |||\n'))).toContain('clef-off-stave');
  });
});

describe('sub-lanes', () => {
  it('give each note of the bass its figures, gaps and small notes none', () => {
    const bass = passage('system upper C1 lower F4 meter C\n basse | 2 c3 4 d _ | 1 e |||\n fig | 6 6/5 | # |||\n');
    expect(errors(bass)).toEqual([]);
    expect(eventsIn(bass, 'basse').map(({ event }) => event.figures?.columns[0]?.length ?? 0)).toEqual([1, 2, 0, 1]);
  });
  it('give each note that is not tied to the one before its syllable', () => {
    const sung = passage(
      'system upper C1 lower F4 meter C\n dessus | 2 c5= 4 c d | 1 e |||\n text | a- men, so | be |||\n',
    );
    expect(codes(sung)).toContain('sub-lane-items');
    const right = passage(
      'system upper C1 lower F4 meter C\n dessus | 2 c5= 4 c d | 1 e |||\n text | a- men, | so |||\n',
    );
    expect(errors(right)).toEqual([]);
    expect(eventsIn(right).map(({ event }) => event.syllables[0]?.text ?? '')).toEqual(['a', '', 'men,', 'so']);
  });
});

describe('the choice of a witness', () => {
  it('keeps durations equal where options take equal time', () => {
    const two = lane('2 c5 <K: 2 d5 ; L: 4 d5 e5>');
    expect(durations(two, 'dessus', 'K')).toBe('1/2 1/2');
    expect(durations(two, 'dessus', 'L')).toBe('1/2 1/4 1/4');
  });
});
