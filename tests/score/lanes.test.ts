/** What a lane says beyond notes: running through, groups of three, syllables, annotations, opening barlines. */
import { describe, expect, it } from 'vitest';
import { format } from '../../grammar/time';
import { codes, errors, eventsIn, findingOf, lane, mended, messages, passage, scoreOf, sound } from '../helpers/music';

const C = 'system upper C1 lower F4 meter C\n';

describe('a note that runs through the barline', () => {
  it('may be followed by small notes', () => {
    expect(errors(lane("2 c5 1 d5'through {small 16 e5 f} | 2 g5"))).toEqual([]);
  });
  it('is the last of its bar', () => {
    expect(errors(lane("2 c5'through d"))).toEqual(['through-without-need']);
  });
  it('runs on in a loose system, where the barline stands within it', () => {
    const loose = passage(
      "system loose upper C1 lower F4 meter C\n dessus | 2 c5 1 d5'through | 2 e5 |||\n basse | 1 c3 | g |||\n",
    );
    expect(errors(loose)).toEqual([]);
    expect(scoreOf(loose).pieces[0]?.bars.map((bar) => format(bar.duration))).toEqual(['1', '1']);
  });
});

describe('a note that runs through several barlines', () => {
  it('leaves bars empty that it fills', () => {
    const long = lane("2 r B c5'through | | 2 d5");
    expect(errors(long)).toEqual([]);
    expect(eventsIn(long).map(({ onset }) => format(onset))).toEqual(['0', '1/2', '5/2']);
  });
  it('may have a gap under it', () => {
    expect(errors(lane("2 r B c5'through | __ | 2 d5"))).toEqual([]);
  });
});

describe('a note that does not reach its barline', () => {
  it('begins before it, or the bar is too long', () => {
    expect(errors(lane("1 c5 | 2. r 2 c5 4 d5'through | 2 e5"))).toContain('bar-too-long');
  });
  it('has something after it', () => {
    expect(errors(lane("1 c5 | 2 r 1 c5'through"))).toEqual(['through-to-nothing']);
    const absent = passage(`${C} dessus | 2 r 1 c5'through |\n basse | 1 c3 |\nsystem\n basse | 1 c3 |||\n`);
    expect(errors(absent)).toEqual(['through-to-nothing']);
  });
});

describe('small notes', () => {
  it('may be three in the time of two, and lost, while time stands still', () => {
    expect(errors(lane('{small {3in2 16 d5 e f}} 1 g5'))).toEqual([]);
    expect(errors(lane('{small lost 16} 1 g5'))).toEqual([]);
  });
  it('without a sign repeat what is in force and keep it', () => {
    expect(sound(lane('8 f#5 f {small 16 f} f 8 r 2 g'))).toBe('f#5 f#5 f#5 f#5 r g5');
    expect(sound(lane('8 f5 {small 16 f#} f 4 r 2 g'))).toBe('f5 f#5 f5 r g5');
  });
});

describe('an empty bar', () => {
  it('is told, with what may have been meant', () => {
    expect(errors(lane('1 c5 | | 1 d'))).toEqual(['empty-bar']);
  });
});

describe('options that end with their own barlines', () => {
  it('end the lane', () => {
    const ends = passage(`${C} dessus | 1 d5 | <K: 1 c5 ||| ; L: 1 c5 ||| >\n basse | 1 d3 | c |||\n`);
    expect(errors(ends)).toEqual([]);
    expect(scoreOf(ends).pieces[0]?.bars).toHaveLength(2);
  });
});

describe('values with x', () => {
  const groups = (music: string): string[] => {
    const seen = new Map<object, number>();
    for (const { event } of eventsIn(lane(music))) {
      for (const tuplet of event.tuplets) seen.set(tuplet, (seen.get(tuplet) ?? 0) + 1);
    }
    return [...seen].map(
      ([tuplet, count]) => `${count} in ${format((tuplet as { unit: { n: number; d: number } }).unit)}`,
    );
  };
  it('make one group though a note of it is divided', () => {
    expect(groups('8x c5 16x d e 8x f 2. g')).toEqual(['4 in 1/8']);
  });
  it('make one group though a note of it is dotted', () => {
    expect(groups('8.x c5 16x d 8x e 2. g')).toEqual(['3 in 1/8']);
  });
  it('go on over a system end', () => {
    const over = passage(`${C} dessus | 2. c5 8x d e\nsystem\n dessus | 8x f5 | 1 c |||\n`);
    expect(errors(over)).toEqual([]);
  });
  it('make a group of a crotchet and a quaver', () => {
    expect(groups('4x c5 8x d 4x e 8x f 2 g')).toEqual(['2 in 1/8', '2 in 1/8']);
  });
});

describe('syllables', () => {
  const sung = (music: string): string =>
    eventsIn(passage(music))
      .map(({ event }) => event.syllables[0]?.text ?? '.')
      .join(' ');
  it('stand on no note that is tied over a barline', () => {
    expect(sung(`${C} dessus | 1 c5= | 2 c5 d |||\n text | A- | men |||\n`)).toBe('A . men');
  });
  it('stand on no note that is tied over a system end', () => {
    expect(sung(`${C} dessus | 1 c5= |\n text | A- |\nsystem\n dessus | 2 c5 d |||\n text | men |||\n`)).toBe(
      'A . men',
    );
  });
  it('stand on the note after small notes', () => {
    expect(sung(`${C} dessus | 2 c5= {small 8 d5} c5 | 1 e5 |||\n text | A- | men |||\n`)).toBe('A . . men');
  });
  it('stand on no note tied into a second ending', () => {
    expect(sung(`${C} dessus | 1 c5= | (ending 1) 1 c5 :|| (ending 2) 2 c5 d |||\n text | A- | | men |||\n`)).toBe(
      'A . . men',
    );
  });
  it('of a second text are a second stanza, and those of a witness its own', () => {
    const twice = passage(
      `${C} dessus | 2 c5 d | 1 e |||\n text | Lu- men | ad |\n text | So- _ | |\n dessus L | | 1 f5 |||\n text | | es |\n text | | et |\n`,
    );
    expect(errors(twice)).toEqual([]);
    const stanzas = eventsIn(twice, 'dessus', 'L').map(({ event }) => event.syllables.map((one) => one?.text));
    expect(stanzas).toEqual([
      ['Lu', 'So'],
      ['men', ''],
      ['es', 'et'],
    ]);
  });
});

describe('figures', () => {
  it('stand in one lane: a second one is told, and the first counts', () => {
    const twice = passage(`${C} basse | 1 c3 |||\n fig | 6 |\n fig | 7 |\n`);
    expect(errors(twice)).toEqual(['figures-twice']);
    expect(eventsIn(twice, 'basse').map(({ event }) => event.figures?.columns[0]?.[0]?.number)).toEqual([6]);
  });
});

describe('figures and syllables', () => {
  const text = (music: string, choice: string): string =>
    eventsIn(passage(music), 'dessus', choice)
      .map(({ event }) => event.syllables[0]?.text ?? '.')
      .join(' ');
  it('stay with their notes where a witness omits a bar', () => {
    const omitted = `${C} dessus | 1 c5 | <K: 1 e5 | ; L: omit> 1 d5 | 1 c5 |||\n text | a | b | c | d |||\n`;
    expect(text(omitted, 'K')).toBe('a b c d');
    expect(text(omitted, 'L')).toBe('a c d');
  });
  it('stay with their notes where a witness omits part of a bar', () => {
    const part = `${C} dessus | 4 c5 <K: 4 d5 ; L: omit> 2 e5 |||\n text | a b c |||\n basse | 1 c3 |||\n`;
    expect(text(part, 'L')).toBe('a . c');
  });
  it('are counted by the first options, whatever is tied in a reading', () => {
    const tied = `${C} dessus | 2 c5 c=:L |\n text | a b |\nsystem\n dessus | 2 c5 d |||\n text | c d |||\n`;
    expect(errors(passage(tied))).toEqual([]);
    expect(text(tied, 'L')).toBe('a b c d');
  });
});

describe('an accidental of a loose system', () => {
  it('holds to the barline of its own stave under the practice bar', () => {
    const loose = passage(
      'system loose upper C1 lower F4 meter C\n dessus | 2 f#5 f | 2 f f |||\n basse | 1 c3 1 d |||\n',
      'accidentals bar\n',
    );
    expect(sound(loose)).toBe('f#5 f#5 f5 f5');
  });
});

describe('an accidental', () => {
  it('does not reach over a repeat sign that opens a system', () => {
    const over = passage(`${C} dessus | 2 c5 c#5 |\nsystem\n dessus ||: 1 c5 :||\n`);
    expect(sound(over)).toBe('c5 c#5 c5');
  });
});

describe('a lone = after a rest', () => {
  it('is told, and so is the next one', () => {
    const alone = lane('4 r = = c5');
    expect(codes(alone).filter((code) => code === 'repeat-of-nothing')).toHaveLength(2);
    expect(eventsIn(alone).map(({ event }) => event.kind)).toEqual(['rest', 'rest', 'rest', 'note']);
  });
});

describe('an annotation', () => {
  const said = (list: readonly { annotation: { text?: string; ref?: string } }[] | undefined): string[] =>
    (list ?? []).map(({ annotation }) => annotation.ref ?? annotation.text ?? '');
  const N = 'note n1 : "blotted"\nnote n2 : "in another ink"\n';
  it('of a span reaches every note of it', () => {
    const spanned = passage(`${C} dessus | {unclear 2 c5 d}*n1 |||\n`, N);
    expect(eventsIn(spanned).map(({ event }) => said(event.spans[0]?.annotations))).toEqual([['n1'], ['n1']]);
  });
  it('of a tuplet reaches its notes', () => {
    const three = passage(`${C} dessus | {3in2 2 c5 d e}*n1 |||\n`, N);
    expect(said(eventsIn(three)[0]?.event.tuplets[0]?.annotations)).toEqual(['n1']);
  });
  it('of a place, and its reason, reach what is chosen there', () => {
    const place = passage(`${C} dessus | <v1*n1 K: 1 c5 ; L: 1 d5>*n2 |||\n`, N);
    expect(said(eventsIn(place)[0]?.event.chosen[0]?.annotations)).toEqual(['n1', 'n2']);
  });
  it('of an opening barline stands at the beginning of the bar', () => {
    const opened = passage(`${C} dessus |*n1 1 c5 |||\n`, N);
    expect(said(scoreOf(opened).pieces[0]?.bars[0]?.opening?.annotations)).toEqual(['n1']);
  });
});

describe('a curve on an opening barline', () => {
  it('begins or ends there', () => {
    expect(errors(passage(`${C} dessus |'u 2 c5 d'. |||\n`))).toEqual([]);
    expect(errors(passage(`${C} dessus | 1 c5'u |\nsystem\n dessus |'. 1 c5 |||\n`))).toEqual([]);
  });
});

describe('what belongs to no note is told', () => {
  it('a custos before the first note of its lane', () => {
    expect(codes(lane('(custos e5) 1 c5'))).toContain('custos-first');
    expect(codes(lane('1 c5 (custos e5)'))).not.toContain('custos-first');
  });
  it.each(['fig | 6 | 6', 'text | glo- | ria'])('what stands in an empty bar of a witness: %s', (sub) => {
    const under = passage(`${C} dessus | 1 c5 | 1 d5 |||\n dessus L | 1 e5 | |||\n ${sub} |\n`);
    expect(errors(under)).toEqual(['sub-lane-items']);
    expect(findingOf(under, 'sub-lane-items').message).toContain('Bar 2, dessus: ');
  });
});

describe('a lane whose name is no voice', () => {
  const under = (lanes: string) => passage(`${C} basse | 2 c3 d |||\n${lanes}`);
  const fixes = (lanes: string) => findingOf(under(lanes), 'unknown-voice').fixes.map(({ title }) => title);
  it('may be a sub-lane under another name', () => {
    expect(fixes(' figures | 6 6 |||\n')).toEqual(['write fig']);
    expect(fixes(' lyrics | la la |||\n')).toEqual(['write text']);
  });
  it('has the nearest voice that has no lane yet', () => {
    expect(fixes(' desus | 2 c5 d |||\n')).toEqual(['write dessus']);
    expect(fixes(' bassse | 2 c5 d |||\n')).toEqual([]);
    expect(fixes(' bassse L | 2 c5 d |||\n')).toEqual(['write basse']);
  });
  it('is told alone, and not the figures under it', () => {
    expect(errors(passage(`${C} dessus | 1 c5 |||\n bassse | 1 c3 |||\n fig | 6 |||\n`))).toEqual(['unknown-voice']);
  });
});

describe('several figures over the only note of a bar', () => {
  const bass = (figures: string) => passage(`${C} dessus | 1 c5 | 2 d e |||\n fig | ${figures} |||\n`);
  it('follow one another within it', () => {
    const [fix] = findingOf(bass('4  3 | 6 6'), 'sub-lane-items').fixes;
    expect(fix?.title).toBe('put them one after another');
    expect(fix?.edits.map(({ text }) => text)).toEqual([',']);
    expect(errors(bass('4,3 | 6 6'))).toEqual([]);
  });
  it('are not joined where there are more notes, or where one of them only holds on', () => {
    expect(findingOf(bass('4,3 | 6 5 6'), 'sub-lane-items').fixes).toEqual([]);
    expect(findingOf(bass('6 = | 6 6'), 'sub-lane-items').fixes).toEqual([]);
  });
});

describe('a sub-lane with fewer items than notes', () => {
  const under = (music: string, sub: string) => passage(`${C} dessus | ${music} |||\n ${sub} |||\n`);
  it('is told, for all after a forgotten item stand a note too early', () => {
    expect(messages(under('4 c5 d e f', 'fig | 6 _ 6/5'), 'sub-lane-fewer')).toEqual([
      'Bar 1, dessus: 3 items in `fig` for 4 notes of the lane; the last have nothing.',
    ]);
    expect(codes(under('4 c5 d e f | 2 g c', 'text | Par- lons bas ma | voix'))).toContain('sub-lane-fewer');
  });
  it('is none where the bar is empty, or a note is tied', () => {
    expect(codes(under('4 c5 d e f | 2 g c', 'text | Par- lons bas ma |'))).not.toContain('sub-lane-fewer');
    expect(codes(under('2 c5= 4 c d', 'text | Par- lons'))).not.toContain('sub-lane-fewer');
  });
  it('is not counted where something was not understood', () => {
    expect(errors(under('4 c5 d e f', 'text | Par - lons bas ='))).toEqual(['hyphen-apart']);
    expect(errors(under('4 c5 d e f', 'fig | 6 ? _'))).toEqual(['bad-figure']);
    expect(errors(under('4 c5 defg 2 a', 'text | Par- lons bas, ma voix, ah'))).toEqual(['notes-run-together']);
  });
});

describe('one source has one option at a place', () => {
  it.each(['<K: 1 c5 ; K: 1 d5>', '<K: 1 c5 ; L,K?: 1 d5>'])('and a second is told: %s', (music) => {
    expect(messages(lane(music), 'label-twice')).toEqual([
      'Bar 1, dessus: K has two options here; the first one counts.',
    ]);
  });
  it('and each layer of it one of its own', () => {
    const layers = passage(`${C} dessus | <K: 1 c5 ; K.2: 1 d5> |||\n`, 'hand K.2 "paler ink"\n');
    expect(codes(layers)).not.toContain('label-twice');
  });
});

describe('a leap without an octave digit', () => {
  it('is named in the trade’s words', () => {
    expect(messages(lane('2 c5 b'), 'leap')).toEqual([
      'Bar 1, dessus: b lies a seventh from the note before and has no octave digit; is the octave meant?',
    ]);
  });
  it('is not measured where no octave holds', () => {
    expect(codes(lane('2 c5 <K: 4 d5 ; L: 4 e5> 4 e'))).not.toContain('leap');
    expect(errors(lane('2 c5 <K: 4 d5 ; L: 4 e5> 4 e'))).toEqual(['octave-missing']);
  });
});

describe('a lane of a witness that is not declared', () => {
  it('is told with the nearest source as a fix', () => {
    const slip = passage(`${C} dessus | 1 c5 |||\n dessus Thron | 1 d5 |||\n`, 'source Thorn "a copy of K"\n');
    expect(errors(slip)).toEqual(['unknown-witness']);
    expect(mended(slip, 'unknown-witness')).toContain('dessus Thorn | 1 d5');
  });
});

describe('a named curve', () => {
  it('goes on over a system in which its voice has nothing', () => {
    const far = passage(`${C} dessus | 1 c5'u(q1) |\nsystem\n basse | 1 c3 |\nsystem\n dessus | 1 e5'.(q1) |||\n`);
    expect(errors(far)).toEqual([]);
  });
  it('enters every ending, in whatever voice it began', () => {
    const crossed = passage(
      `${C} dessus | 1 c5 | (ending 1) 1 d'.(q1) :|| (ending 2) 1 e'.(q1) |||\n basse | 1 c3'u(q1) | 1 d | 1 e |||\n`,
    );
    expect(errors(crossed)).toEqual([]);
  });
  it('waits for a further ending also where its voice has no lane', () => {
    const absent = passage(
      `${C} dessus | 1 c5 |\n basse | 1 c3'u |\nsystem\n dessus | (ending 1) 1 d5 :||\nsystem\n dessus | (ending 2) 1 e5 |||\n basse | 1 d3'. |||\n`,
    );
    expect(errors(absent).filter((code) => code !== 'curve-never-ends')).toEqual([]);
    expect(errors(absent)).not.toContain('curve-end-alone');
  });
  it('may end in another voice', () => {
    expect(errors(passage(`${C} dessus | 1 c5'u(q1) |\nsystem\n basse | 1 c3'.(q1) |||\n`))).toEqual([]);
  });
});

describe('a sign that is limited to other readings', () => {
  it('takes the accidental and the annotation with it that speak of the sign', () => {
    const trilled = lane("1 f5'zz:K'#*n1'3");
    const marks = (choice: string): string[] =>
      eventsIn(trilled, 'dessus', choice)[0]?.event.members[0]?.marks.map(({ form }) => form.name) ?? [];
    expect([marks('K'), marks('L')]).toEqual([['zz', '3'], ['3']]);
    expect(sound(trilled, 'dessus', 'L')).toBe('f5');
    expect(eventsIn(trilled, 'dessus', 'L')[0]?.event.members[0]?.annotations).toEqual([]);
  });
});

describe('stems', () => {
  it('point as the voice has them again after (stems home)', () => {
    const turned = eventsIn(lane('(stems down) 2 c5 (stems home) d'));
    expect(turned.map(({ event }) => event.stems)).toEqual(['down', 'up']);
  });
});

describe('a syllable', () => {
  it('is not sung by the rest that another source has in place of its note', () => {
    const sung = passage('system upper C1 meter C\n  dessus | 2 c5 <K: 2 d ; L: 2 r> |||\n    text | glo- ria |||\n');
    expect(eventsIn(sung, 'dessus', 'L').map(({ event }) => event.syllables[0]?.text)).toEqual(['glo', undefined]);
  });
});
