/** What each sign of a lane means, and what becomes of slips of the hand. */
import { Lexer, type TokenType } from 'chevrotain';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FindingCode } from '../../grammar/findings/catalogue';
import { DEEPEST } from '../../grammar/lanes/balance';
import { parseLane } from '../../grammar/lanes/lane';
import { LaneParser } from '../../grammar/lanes/parser';
import { laneTokens, lexerOf, subLaneTokens } from '../../grammar/lanes/tokens';
import { parseFile } from '../../grammar/parse';
import { format } from '../../grammar/time';
import type { EventItem, Item, LaneKind, LaneTree, Member, OptionsItem, SpanItem, ValueItem } from '../../grammar/tree';
import { HEAD } from '../helpers/music';

function read(text: string, kind: LaneKind = 'lane'): LaneTree {
  const lines = text.split('\n');
  return parseLane(
    kind,
    text,
    lines.map((_, i) => lines.slice(0, i).reduce((sum, line) => sum + line.length + 1, 0)),
  );
}

const items = (text: string): readonly Item[] => read(` ${text} |`).segments[0]?.items ?? [];
const codes = (text: string): FindingCode[] => read(` ${text} |`).problems.map(({ code }) => code);

/** The one item of a bar, of this kind, read without a finding. */
function only<Kind extends Item['kind']>(text: string, kind: Kind): Extract<Item, { kind: Kind }> {
  expect(codes(text)).toEqual([]);
  const [item, ...more] = items(text);
  if (item === undefined || more.length > 0) throw new Error(`“${text}” has ${more.length + 1} items`);
  if (item.kind !== kind) throw new Error(`“${text}” is ${item.kind}`);
  return item as Extract<Item, { kind: Kind }>;
}

const event = (text: string): EventItem => only(text, 'event');
const note = (text: string): Member => {
  const [member] = event(text).members;
  if (member === undefined) throw new Error(`“${text}” is no note`);
  return member;
};
const value = (text: string): ValueItem => only(text, 'value');
const span = (text: string): SpanItem => only(text, 'span');
const options = (text: string): OptionsItem => only(text, 'options');
const marks = (text: string) => note(text).suffixes.map((suffix) => (suffix.kind === 'mark' ? suffix.form : suffix));
const mark = (text: string) => {
  const [form, ...more] = marks(text);
  if (form === undefined || !('type' in form) || more.length > 0) throw new Error(`“${text}” has not one mark`);
  return form;
};

/** A bar in a few words: kinds of items, spans and options with what they hold. */
const outline = (all: readonly Item[]): string =>
  all
    .map((item): string => {
      if (item.kind === 'span') return `{${outline(item.items)}}`;
      if (item.kind === 'options') return `<${item.options.map((one) => outline(one.items)).join('; ')}>`;
      return item.kind === 'event' ? item.what : item.kind;
    })
    .join(' ');

/** The text after the first fix of the only finding. */
function mended(text: string): string {
  const { problems } = read(text);
  const edits = problems.flatMap(({ fixes }) => fixes?.[0]?.edits ?? []);
  return [...edits]
    .sort((a, b) => b.pos - a.pos)
    .reduce((now, edit) => now.slice(0, edit.pos) + edit.text + now.slice(edit.pos + edit.len), text);
}

describe('both lexers', () => {
  test('look only at tokens that can begin with the next character', () => {
    // What the lexers and the parser leave out at each start: that their definitions are sound.
    for (const tokens of [laneTokens, subLaneTokens]) {
      const { lexerDefinitionErrors } = new Lexer(tokens, {
        ensureOptimizations: true,
        positionTracking: 'onlyOffset',
      });
      expect(lexerDefinitionErrors).toEqual([]);
    }
    expect(() => new LaneParser(false)).not.toThrow();
    // The flag is the lexer's own: with it set, characters choose the tokens that are tried.
    for (const lexer of [lexerOf('lane'), lexerOf('fig')]) {
      expect(lexer).toMatchObject({ config: { ensureOptimizations: true }, canModeBeOptimized: { defaultMode: true } });
    }
  });

  test('leave out no token that can begin so', () => {
    const text = fc.string({ unit: fc.constantFrom(...`c5'b#[](){}<>;:|=-_&,."*/ \n\u00a0é«“„8xMLBlrosmit`) });
    fc.assert(
      fc.property(fc.oneof(text, fc.string({ unit: 'binary' })), (any) => {
        for (const [lexer, types] of [
          [lexerOf('lane'), laneTokens],
          [lexerOf('text'), subLaneTokens],
        ] as const) {
          for (const { image, startOffset, tokenType } of lexer.tokenize(any).tokens) {
            const fits = ({ PATTERN }: TokenType): boolean =>
              new RegExp((PATTERN as RegExp).source, 'y').test(any.slice(startOffset));
            expect([tokenType.name, image]).toEqual([types.find(fits)?.name, any.substr(startOffset, image.length)]);
          }
        }
      }),
      { numRuns: 2000 },
    );
  });

  test('take every character whatever', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (any) => {
        expect(lexerOf('lane').tokenize(any).errors).toEqual([]);
      }),
      { numRuns: 500 },
    );
    expect(laneTokens.length).toBeGreaterThan(20);
  });
});

describe('a value', () => {
  test.each([
    // Values are named by their fraction of a semibreve; a dot adds half of what stands before it (common practice).
    ['1', '1'],
    ['2', '1/2'],
    ['4', '1/4'],
    ['8', '1/8'],
    ['16', '1/16'],
    ['32', '1/32'],
    ['64', '1/64'],
    ['128', '1/128'],
    ['B', '2'],
    ['L', '4'],
    ['Mx', '8'],
    ['4.', '3/8'],
    ['2..', '7/8'],
    ['B.', '3'],
    ['8x', '1/12'],
    ['8x5in4', '1/10'],
    ['4.x', '1/4'],
  ])('%s lasts %s of a semibreve', (text, duration) => {
    const { form } = value(text);
    expect(form.duration && format(form.duration)).toBe(duration);
  });

  test('is doubtful with a question mark', () => {
    expect(value('8.?').form).toMatchObject({ dots: 1, doubtful: true });
    expect(value('8x?').form).toMatchObject({ proportion: { n: 3, m: 2, drawn: false }, doubtful: true });
  });

  test.each(['3', '5', '256', '4.....', '8x0in4', '8x100in4'])('%s is none', (text) => {
    expect(codes(text)).toEqual(['impossible-value']);
    expect(read(`${text} |`).segments[0]?.broken).toBe(true);
  });

  test('stands before white space, an opening bracket or a comment', () => {
    expect(outline(items('4{small 8 c5} 4<K: 8 d ; L: 8 e> 4// so'))).toBe(
      'value {value event} value <value event; value event> value'.replaceAll('event', 'note'),
    );
  });
});

describe('a note', () => {
  test.each([
    ['c5', { letter: 'c', octave: 5 }],
    ['f#', { letter: 'f', accidental: '#' }],
    ['bb4', { letter: 'b', accidental: 'b', octave: 4 }],
    ['bb', { letter: 'b', accidental: 'b' }],
    ['bbb4', { letter: 'b', accidental: 'bb', octave: 4 }],
    ['eb', { letter: 'e', accidental: 'b' }],
    ['ebb', { letter: 'e', accidental: 'bb' }],
    ['f##3', { letter: 'f', accidental: '##', octave: 3 }],
    ['en', { letter: 'e', accidental: 'n' }],
    ['b', { letter: 'b' }],
    ['f[#]5', { letter: 'f', editors: '#', octave: 5 }],
    ['f(#)5', { letter: 'f', cautionary: '#', octave: 5 }],
    ['b(bb)', { letter: 'b', cautionary: 'bb' }],
    ['c5?', { letter: 'c', octave: 5, doubtful: true }],
  ])('%s: the longest accidental wins', (text, spelling) => {
    expect(note(text).spelling).toEqual({ text, doubtful: false, ...spelling });
  });

  test('has its tie before its marks and annotations', () => {
    const member = note("f#5?='zz*n7'3");
    expect(member.spelling.text).toBe('f#5?');
    expect(member.tie?.text).toBe('=');
    expect(marks("f#5?='zz*n7'3")).toMatchObject([{ name: 'zz' }, { ref: 'n7' }, { type: 'finger' }]);
  });

  test('equal notes, ties, marks and values are one object', () => {
    expect(note("c5='zz").spelling).toBe(note("c5='zz").spelling);
    expect(note("c5='zz").tie).toBe(note('d=').tie);
    expect(mark("c5'zz")).toBe(mark("d'zz"));
    expect(value('8.').form).toBe(value('8.').form);
  });

  test('a finding stands where the accidental follows the octave', () => {
    expect(codes('c5#')).toEqual(['accidental-after-octave']);
    expect(mended('c5# |')).toBe('c#5 |');
    expect(mended('f5[#] |')).toBe('f[#]5 |');
    expect(mended('f5(#) |')).toBe('f(#)5 |');
  });
});

describe('a chord', () => {
  test('is joined by hyphens; a mark belongs to the member it follows', () => {
    const { members } = event("c4-e'3-g=*n1");
    expect(members.map(({ spelling }) => spelling.text)).toEqual(['c4', 'e', 'g']);
    expect(members.map(({ suffixes }) => suffixes.length)).toEqual([0, 1, 1]);
    expect(members[2]?.tie?.text).toBe('=');
  });

  test('may change the stave between its members', () => {
    expect(event('d2-(up)f4-a-(home)c3').members.map(({ stave }) => stave)).toEqual([
      undefined,
      'up',
      undefined,
      'home',
    ]);
  });

  test('a member apart or without a chord is a finding', () => {
    expect(codes('c4 -e')).toEqual(['member-apart']);
    expect(mended('c4 -e |')).toBe('c4-e |');
    expect(codes('-e')).toEqual(['member-without-chord']);
  });
});

describe('rests, gaps, lacunas', () => {
  test.each([
    ['r', 'rest'],
    ['rbar', 'barRest'],
    ['_', 'gap'],
    ['__', 'barGap'],
    ['=', 'repeat'],
  ] as const)('%s is %s', (text, what) => {
    expect(event(text)).toMatchObject({ what, members: [] });
  });

  test('take marks and annotations', () => {
    for (const text of ["r'fermata*n1", "_'u*n1", "='zz*n1"]) expect(event(text).suffixes).toHaveLength(2);
  });

  test('lost takes a value or the rest of the bar', () => {
    expect(only('lost 2.', 'lost').form?.text).toBe('2.');
    expect(only('lost ?', 'lost').form).toBeUndefined();
    expect(codes('lost')).toEqual(['lost-without-value']);
    expect(codes('lost 3')).toEqual(['impossible-value']);
  });
});

describe('a tie', () => {
  test.each([
    ['=', { editors: false, doubtful: false }],
    ['[=]', { editors: true, doubtful: false }],
    ['=?', { editors: false, doubtful: true }],
    ['[=]?', { editors: true, doubtful: true }],
    ['=:L', { readings: { not: false, names: ['L'] } }],
    ['=:!plain,K.2', { readings: { not: true, names: ['plain', 'K.2'] } }],
  ])('%s after a note and alone', (text, form) => {
    expect(note(`c5${text}`).tie).toMatchObject(form);
    expect(event(text).tie).toMatchObject(form);
    expect(event(text).what).toBe('repeat');
  });
});

describe('a mark', () => {
  test.each([
    ["'zz", { type: 'sign', name: 'zz' }],
    ["'pince", { type: 'sign', name: 'pince' }],
    ["'3", { type: 'finger', fingers: [3] }],
    ["'4-5", { type: 'finger', fingers: [4, 5] }],
    ["'#", { type: 'accidental', accidental: '#' }],
    ["'bb", { type: 'accidental', accidental: 'bb' }],
    ["'[#]", { type: 'accidental', accidental: '#', editors: true }],
    ["'u", { type: 'curveStart', name: 'u', openEnded: false }],
    ["'u~", { type: 'curveStart', name: 'u', openEnded: true }],
    ["'line", { type: 'curveStart', name: 'line' }],
    ["'.", { type: 'curveEnd', name: '.', openEnded: false }],
    ["'.~", { type: 'curveEnd', openEnded: true }],
    ["'.c3", { type: 'curveEnd', begunOn: expect.objectContaining({ letter: 'c', octave: 3 }) }],
    ["'.f#3", { type: 'curveEnd', begunOn: expect.objectContaining({ accidental: '#' }) }],
    ["'u(q1)", { type: 'curveStart', parameters: ['q1'] }],
    ["'.(q1)", { type: 'curveEnd', parameters: ['q1'] }],
    ["'through(dot)", { type: 'other', name: 'through', parameters: ['dot'] }],
    ...['through', 'fermata', 'dot', 'stroke', 'renvoi', 'fin'].map((name): [string, object] => [
      `'${name}`,
      { type: 'other', name },
    ]),
    ["'w2", { type: 'weight', weight: 2 }],
    ["'[zz]", { name: 'zz', editors: true }],
    ["'zz?", { name: 'zz', doubtful: true }],
    ["'zz+", { name: 'zz', linked: true }],
    ["'zz(from main)", { parameters: ['from', 'main'] }],
    ["'zz(above)", { parameters: ['above'] }],
    ["'zz:french,K", { readings: { not: false, names: ['french', 'K'] } }],
    ["'zz:!plain", { readings: { not: true, names: ['plain'] } }],
    [
      "'[zz]?+(below):french",
      {
        name: 'zz',
        editors: true,
        doubtful: true,
        linked: true,
        parameters: ['below'],
        readings: { not: false, names: ['french'] },
      },
    ],
  ])('%s', (text, form) => {
    expect(mark(`c5${text}`)).toMatchObject(form);
  });

  test('apart from its note or without one is a finding', () => {
    expect(codes("c5 'zz")).toEqual(['mark-apart']);
    expect(mended("c5 'zz |")).toBe("c5'zz |");
    expect(codes("'zz c5")).toEqual(['mark-without-event']);
    expect(codes('*n1 c5')).toEqual(['annotation-without-event']);
    expect(codes("c5'zz (above)")).toEqual(['place-apart']);
    expect(mended("c5'zz (above) |")).toBe("c5'zz(above) |");
  });
});

describe('a span', () => {
  test.each([
    ['{3in2', { proportion: { n: 3, m: 2 } }],
    ['{overdot', { word: 'overdot' }],
    [
      '{inegal 2:1:french',
      { word: 'inegal', ratio: { long: 2, short: 1 }, readings: { not: false, names: ['french'] } },
    ],
    ['{assimilate:!plain', { word: 'assimilate', readings: { not: true, names: ['plain'] } }],
    ['{black 3in2', { word: 'black', proportion: { n: 3, m: 2 } }],
    ['{void 1in2', { word: 'void', proportion: { n: 1, m: 2 } }],
    ['{added:K.2', { word: 'added', readings: { not: false, names: ['K.2'] } }],
    ...['small', 'snap', 'literal', 'black', 'void', 'lig', 'unclear', 'supplied', 'deleted'].map(
      (word): [string, object] => [`{${word}`, { word }],
    ),
  ])('%s', (head, form) => {
    expect(span(`${head} 8 c5 d}*n7`)).toMatchObject({ head: form, suffixes: [{ ref: 'n7' }] });
  });

  test.each<[string, FindingCode]>([
    ['{ 8 c5}', 'span-without-head'],
    ['{trill 8 c5}', 'unknown-span'],
    ['{0in2 8 c5}', 'impossible-proportion'],
    ['{3in2:french 8 c5}', 'span-takes-no-readings'],
    ['{small:K 8 c5}', 'span-takes-no-readings'],
    ['{small 3:2 8 c5}', 'span-takes-no-ratio'],
    ['{overdot 3in2 8 c5}', 'span-takes-no-ratio'],
  ])('%s is a finding', (text, code) => expect(codes(text)).toEqual([code]));

  test('holds barlines', () => {
    expect(outline(items('{unclear 1 c5 | d}'))).toBe('{value note barline note}');
    expect(read('{unclear 1 c5 | d} | e |').segments).toHaveLength(2);
  });
});

describe('options', () => {
  test('have labels glued to a colon', () => {
    const { options: found } = options('<K,M.2?: 2 c5 ; L: omit>');
    expect(found.map(({ labels }) => labels.map(({ name, layer, doubtful }) => [name, layer, doubtful]))).toEqual([
      [
        ['K', undefined, false],
        ['M', 2, true],
      ],
      [['L', undefined, false]],
    ]);
    expect(found.map(({ omit }) => omit)).toEqual([false, true]);
  });

  test('may have a place and its reason first', () => {
    const item = options('<v3*n7*"the ""ink""" K: 2 c5 ; L: 2 d>*n8');
    expect(item.place?.text).toBe('v3');
    expect(item.reasons).toMatchObject([{ ref: 'n7' }, { text: 'the "ink"' }]);
    expect(item.suffixes).toMatchObject([{ ref: 'n8' }]);
    expect(options('<sic: 4 c5 ; corr: 4 d>').place).toBeUndefined();
  });

  test('nest with spans and hold barlines', () => {
    expect(outline(items('<K: {3in2 8 c5 <L: d ; M: e> f} | 1 g ; N: 1 a | b>'))).toBe(
      '<value note barline value; value note barline note>'.replace(
        'value note barline value',
        '{value note <note; note> note} barline value note',
      ),
    );
  });

  test.each<[string, FindingCode[]]>([
    ['< 2 c5 ; L: 2 d>', ['option-without-label']],
    ['<K: 2 c5 ; 2 d>', ['option-without-label']],
    ['<K: 4 omit ; L: 4 c5>', ['omit-misplaced']],
    ['omit', ['omit-misplaced']],
  ])('%s is a finding', (text, expected) => expect(codes(text)).toEqual(expected));
});

describe('words, changes, beams', () => {
  test('words stand in straight quotes, two quotes for one', () => {
    expect(only('"Gay ""e"" vite"', 'words')).toMatchObject({ text: 'Gay "e" vite' });
    expect(only('(below "tr.")', 'words')).toMatchObject({ text: 'tr.', place: 'below' });
  });

  test.each([
    '(now C3)',
    '(now key f# c#)',
    '(now key lower bb)',
    '(now key none)',
    '(now meter 3/4)',
    '(now C3 meter 3/4)',
    '(now tempo 4 at 63)',
    '(up)',
    '(down)',
    '(home)',
    '(stems up)',
    '(manual upper)',
    '(custos c5)',
    '(ending 1)',
    '(section B)',
    '(section petite in B)',
    '(irregular)',
  ])('%s is a change', (text) => expect(only(text, 'change').change.text).toBe(text));

  test('an unknown change is one finding', () => expect(codes('(sideways)')).toEqual(['unknown-change']));

  test('beams are joined and broken between events', () => {
    expect(items('8 c5 & d , e').flatMap((item) => (item.kind === 'beam' ? [item.join] : []))).toEqual([true, false]);
    expect(codes('8 c5& d')).toEqual(['beam-glued']);
    expect(codes('8 c5, d')).toEqual(['beam-glued']);
  });
});

describe('a barline', () => {
  test.each(['|', '||', '|||', ':||', '||:', ':||:'])('%s ends its bar, [] makes it the editor’s', (shape) => {
    expect(read(`1 c5 ${shape} d`).segments.map(({ bar }) => bar?.shape)).toEqual([shape, undefined]);
    expect(read(`1 c5 ${shape}[]*n3'fermata`).segments[0]?.bar).toMatchObject({
      shape,
      editors: true,
      suffixes: [{ ref: 'n3' }, {}],
    });
  });

  test.each([
    ['||||', '|'],
    ['|:', '||:'],
    [':|', ':||'],
    ['::||', ':||'],
    [':|:', ':||:'],
    [':|[]', ':||[]'],
  ])('%s is none; %s is meant, its dots as they stand', (text, meant) => {
    const { problems, segments } = read(`1 c5 ${text} d |`);
    expect(problems.map(({ code }) => code)).toEqual(['bad-barline']);
    expect(segments[0]?.bar?.shape).toBe(meant.replace('[]', ''));
    expect(mended(`1 c5 ${text} d |`)).toBe(`1 c5 ${meant} d |`);
  });

  test('has white space before it', () => {
    expect(read('1 c5|').problems.map(({ code }) => code)).toEqual(['barline-glued']);
    expect(mended('1 c5|')).toBe('1 c5 |');
  });
});

describe('a lane of several lines', () => {
  test('goes on with the barline that ended the line above', () => {
    const tree = read('1 c5 |\n||: d |');
    expect(tree.segments.map(({ items: bar }) => outline(bar))).toEqual(['value note', 'note']);
    expect(tree.segments[0]?.bar).toMatchObject({ shape: '||:', again: [{ len: 3 }] });
    expect(tree.problems).toEqual([]);
  });

  test('two different special barlines cannot both be meant', () => {
    expect(read('1 c5 :||\n||: d |').problems.map(({ code }) => code)).toEqual(['barline-joint']);
    expect(read('1 c5 ||\n|| d |').problems).toEqual([]);
  });

  const system = (lanes: string) => {
    const tree = parseFile(`${HEAD}system upper C1 lower F4 meter C\n${lanes}\n`);
    const block = tree.blocks.find(({ kind }) => kind === 'system');
    if (block === undefined) throw new Error('no system');
    return block;
  };

  test('is told from a head and from other lanes by its first barline', () => {
    const { lanes, statements } = system(
      '    key bb\n  dessus | 1 c5 |\n\n  // below\n         | d |\n  basse ||: 1 c3 |',
    );
    expect(statements[0]?.tree.text).toContain('key bb');
    expect(lanes.map(({ name, open, tree }) => [name.text, open.shape, tree.segments.length])).toEqual([
      ['dessus', '|', 2],
      ['basse', '||:', 1],
    ]);
  });

  test('a witness lane has its witness, sub-lanes their kinds', () => {
    const { lanes } = system('  dessus | 1 c5 |\n  fig | 6 |\n  text | la |\n  dessus L | 1 d5 |\n  text | lo |');
    expect(lanes.map(({ name, witness, tree }) => [name.text, witness?.text, tree.kind])).toEqual([
      ['dessus', undefined, 'lane'],
      ['fig', undefined, 'fig'],
      ['text', undefined, 'text'],
      ['dessus', 'L', 'lane'],
      ['text', undefined, 'text'],
    ]);
  });

  test('lines that belong to nothing are findings of the system', () => {
    expect(system('  dessus | 1 c5 |\n  loose words').problems.map(({ code }) => code)).toEqual([
      'lane-without-barline',
    ]);
    const [clause] = system('  dessus | 1 c5 |\n  tempo 2 at 60').problems;
    expect(clause).toMatchObject({ code: 'lane-without-barline' });
    expect(clause?.fixes).toBeUndefined();
    expect(system('  | 1 c5 |').problems.map(({ code }) => code)).toEqual(['lane-continues-nothing']);
    expect(parseFile('  dessus | 1 c5 |').blocks[0]?.problems.map(({ code }) => code)).toEqual(['lane-outside-system']);
  });

  test.each<[string, FindingCode, string]>([
    ['dessus |: 1 c5 |', 'bad-barline', 'dessus ||: 1 c5 |'],
    ['haute-contre | 1 c5 |', 'bad-name', 'haute_contre | 1 c5 |'],
    ['ténor | 1 c5 |', 'bad-name', 'tenor | 1 c5 |'],
    ['dessus.L | 1 c5 |', 'bad-name', 'dessus L | 1 c5 |'],
    ['dessus 4. c5 8 d 2 e |', 'lane-without-barline', 'dessus | 4. c5 8 d 2 e |'],
    ['dessus L 4 c5 d 2 e |', 'lane-without-barline', 'dessus L | 4 c5 d 2 e |'],
  ])('%s begins with a slip', (line, code, meant) => {
    const head = 'system upper C1 lower F4 meter C\n  ';
    const { problems } = system(`  ${line}`);
    expect(problems.map((problem) => problem.code)).toEqual([code]);
    const { pos = 0, len = 0, text = '' } = problems[0]?.fixes?.[0]?.edits[0] ?? {};
    const whole = `${head}${line}`;
    expect(`${whole.slice(0, pos)}${text}${whole.slice(pos + len)}`).toBe(`${head}${meant}`);
  });
});

describe('sub-lanes', () => {
  test('figures', () => {
    const { segments, problems } = read('_ 6 6/5 5,6 6+ [6] # #6 = |', 'fig');
    expect(problems).toEqual([]);
    const found = (segments[0]?.items ?? []).map((item) => (item.kind === 'figures' ? item : undefined));
    expect(found.map((item) => item?.what)).toEqual(['none', ...Array.from({ length: 7 }, () => 'figures'), 'hold']);
    expect(found[2]?.columns).toMatchObject([[{ number: 6 }, { number: 5 }]]);
    expect(found[3]?.columns).toMatchObject([[{ number: 5 }], [{ number: 6 }]]);
    expect(found[4]?.columns).toMatchObject([[{ number: 6, stroked: true }]]);
    expect(found[5]?.columns).toMatchObject([[{ number: 6, editors: true }]]);
    expect(found[6]?.columns).toEqual([[{ accidental: '#', stroked: false, editors: false }]]);
    expect(found[7]?.columns).toMatchObject([[{ number: 6, accidental: '#', accidentalFirst: true }]]);
    for (const wrong of ['c5', '#6b']) {
      expect(read(`${wrong} |`, 'fig').problems.map(({ code }) => code)).toEqual(['bad-figure']);
    }
  });

  test('figures that run together are no figure, and may mean two things', () => {
    const ways = (text: string) =>
      read(`${text} |`, 'fig').problems.flatMap(({ code, fixes }) => [
        code,
        ...(fixes ?? []).map(({ edits }) => edits.map((edit) => edit.text).join()),
      ]);
    expect(ways('65')).toEqual(['figures-run-together', '6/5', '6,5']);
    expect(ways('76 #')).toEqual(['figures-run-together', '7/6', '7,6']);
    expect(ways('643+')).toEqual(['figures-run-together', '6/4/3+', '6,4,3+']);
    expect(ways('9/43')).toEqual(['figures-run-together', '9/4/3']);
    // Compound figures as in prints of 1600 (from memory).
    for (const figure of ['10', '11/9', '#13', '14', '18']) expect(ways(figure)).toEqual([]);
    expect(ways('60')).toEqual(['bad-figure']);
    expect(ways('[65]')).toEqual(['figures-run-together', '[6]/[5]', '[6],[5]']);
  });

  // Common practice: prints part successive figures by a dash, draw + before a raised figure, and stack accidentals either way.
  test.each([
    ['5-6', '5,6'],
    ['6\\5', '6/5'],
    ['[6/5]', '[6]/[5]'],
    ['6+5', '6/5', '6+/5'],
    ['6#4', '6#/4', '6/#4'],
    ['+4', '4+'],
    ['6♯', '6#'],
  ])('%s is a figure written as elsewhere', (text, ...meant) => {
    const { problems } = read(`${text} |`, 'fig');
    expect(problems.map(({ code }) => code)).toEqual(['bad-figure']);
    expect(problems[0]?.fixes?.map(({ edits }) => edits[0]?.text)).toEqual(meant);
    for (const one of meant) expect(read(`${one} |`, 'fig').problems).toEqual([]);
  });

  test('a hyphen that stands by itself belongs to the syllable before it', () => {
    const { problems } = read(' Chan - ter bas -- = |', 'text');
    expect(problems.map(({ code }) => code)).toEqual(['hyphen-apart', 'hyphen-apart']);
    const fixes = problems.flatMap((problem) => problem.fixes?.[0]?.edits ?? []);
    expect(fixes).toMatchObject([
      { pos: 5, len: 2, text: '-' },
      { pos: 15, len: 3, text: '-' },
    ]);
    // A dash that is printed as a syllable.
    expect(read('Chan- "-" ter |', 'text').problems).toEqual([]);
    expect(read('- ter |', 'text').problems[0]?.fixes).toBeUndefined();
  });

  test('text', () => {
    const { segments, problems } = read('the word- ing = _ "of old-" {so} \'tis | = |', 'text');
    expect(problems).toEqual([]);
    expect(
      (segments[0]?.items ?? []).map((item) => (item.kind === 'syllable' ? [item.what, item.text, item.goesOn] : [])),
    ).toEqual([
      ['syllable', 'the', false],
      ['syllable', 'word', true],
      ['syllable', 'ing', false],
      ['hold', '', false],
      ['none', '', false],
      ['syllable', 'of old-', false],
      ['syllable', '{so}', false],
      ['syllable', "'tis", false],
    ]);
    expect(segments).toHaveLength(2);
  });

  test('a comment ends the line in both', () => {
    expect(read('la // lo |', 'text').segments).toMatchObject([{ items: [{ text: 'la' }] }]);
  });
});

describe('slips of the hand', () => {
  test.each<[string, FindingCode, string]>([
    ['8c5', 'value-glued', '8 c5'],
    ['c5/8', 'note-and-value', '8 c5'],
    ['face', 'notes-run-together', 'f a c e'],
    ['c5’zz', 'typographic-apostrophe', "c5'zz"],
    ['c5árp', 'dead-key', "c5'arp"],
    ['“Gay”', 'typographic-quotes', '"Gay"'],
    ['C4', 'capital-note', 'c4'],
    ['é', 'unshifted-digit', '2'],
    ['é.', 'unshifted-digit', '2.'],
    // German and solmisation names (common practice: B is called h in German, B flat b).
    ['h4', 'note-named-elsewhere', 'b4'],
    ["cis5'zz", 'note-named-elsewhere', "c#5'zz"],
    ['fisis', 'note-named-elsewhere', 'f##'],
    ['es=', 'note-named-elsewhere', 'eb='],
    ['as4', 'note-named-elsewhere', 'ab4'],
    ['ases', 'note-named-elsewhere', 'abb'],
    ['his', 'note-named-elsewhere', 'b#'],
    ['do', 'note-named-elsewhere', 'c'],
    ['sib', 'note-named-elsewhere', 'bb'],
    ['sol#', 'note-named-elsewhere', 'g#'],
    ['c5/e/g', 'typed-otherwise', 'c5-e-g'],
    ['eb4+g+c5', 'typed-otherwise', 'eb4-g-c5'],
    ['c5~', 'typed-otherwise', 'c5='],
    ['f#5_', 'typed-otherwise', 'f#5='],
    ['R', 'typed-otherwise', 'r'],
    ['c5tr', 'typed-otherwise', "c5'tr"],
    ['c5=fermata', 'typed-otherwise', "c5='fermata"],
    ['d5=d', 'notes-run-together', 'd5= d'],
    ['lost', 'lost-without-value', 'lost ?'],
    ['lost bar', 'lost-without-value', 'lost ?'],
  ])('%s is one finding with a fix', (text, code, meant) => {
    expect(codes(text)).toEqual([code]);
    expect(mended(`${text} |`).replace(/\s+/g, ' ')).toBe(`${meant} |`);
    expect(read(`${text} |`).segments[0]?.broken).toBe(true);
  });

  test.each([
    ['e16', '16 e', 'e 16'],
    ['f#8.', '8. f#', 'f# 8.'],
    ['bb32', '32 bb', 'bb 32'],
    ['r8', '8 r', 'r 8'],
    ['r4.', '4. r', 'r 4.'],
  ])('%s has its value behind it, or lacks the space before the next: %s, or %s', (text, own, next) => {
    const { problems } = read(`${text} |`);
    expect(problems.map(({ code }) => code)).toEqual(['note-and-value']);
    expect(problems[0]?.fixes?.map(({ edits }) => edits[0]?.text)).toEqual([own, next]);
    expect(problems[0]?.slots?.meant).toBe(`“${own}” or “${next}”`);
  });

  test.each([
    ['4 r8 c5', '8 r c5'],
    ['2 c5 4 e16 d', '2 c5 16 e d'],
  ])('%s has its own value behind it and another before: its own is meant', (text, meant) => {
    expect(mended(` ${text} |`)).toBe(` ${meant} |`);
  });

  test.each([
    ['4 c5. 8 d 2 e', '4. c5 8 d 2 e'],
    ['2 c5. d', '2. c5 2 d'],
    ['4 c5 d.. 16 e 2 f', '4 c5 4.. d 16 e 2 f'],
    ["4 c5.'3 8 d", "4. c5'3 8 d"],
    ['4 r. 8 d', '4. r 8 d'],
    ['4. c5. 8 d', '4. c5 8 d'],
    ['2 c5 4 d. | e f', '2 c5 4. d | 4 e f'],
    ['2 c5 4 d. | 8 e f', '2 c5 4. d | 8 e f'],
  ])('%s has the dot at the note: it is the value that is dotted, for this note alone', (text, meant) => {
    expect(codes(text)).toEqual(['dot-after-note']);
    expect(mended(` ${text} |`)).toBe(` ${meant} |`);
    expect(codes(meant)).toEqual([]);
  });

  test('where nobody knows the value in force its dot is told and not set', () => {
    for (const text of [
      'c5.',
      '<K: 4 c5 ; L: 4 d5> d5.',
      '{small 8 c5} d.',
      '4? c5.',
      '4 c5. {small 8 d} e',
      '4 c5. (up) d',
    ]) {
      expect(read(`${text} |`).problems).toMatchObject([{ code: 'dot-after-note' }]);
      expect(mended(`${text} |`)).toBe(`${text} |`);
    }
  });

  test.each([
    ['{supplied C5 d5}', 'capital-note', '{supplied c5 d5}'],
    ['4 {supplied cde}', 'notes-run-together', '4 {supplied c d e}'],
    ['4 {supplied K c5}', 'typed-otherwise', '4 {supplied:K c5}'],
  ])('%s: what follows the head is a name only where it is no note with a slip', (text, code, meant) => {
    expect(codes(text)).toEqual([code]);
    expect(mended(` ${text} |`)).toBe(` ${meant} |`);
  });

  test('d8. after a value is not offered as a note of an octave without keys', () => {
    expect(read('4 c5 d8. e |').problems[0]?.fixes?.map(({ title }) => title)).toEqual(['write 8. d', 'write d 8.']);
  });

  test('c4. after a value may be a middle C with its dot, too', () => {
    expect(read('4 c4. 8 d |').problems[0]?.fixes?.map(({ title }) => title)).toEqual([
      'write 4. c',
      'write c 4.',
      'write 4. c4',
    ]);
  });

  // Common practice (Helmholtz): one stroke is the octave of middle C.
  test.each([
    ["4 c''", '4 c5'],
    ["4 f#'''", '4 f#6'],
  ])('%s has its octave in strokes', (text, meant) => {
    expect(codes(text)).toEqual(['bad-mark']);
    expect(mended(`${text} |`)).toBe(`${meant} |`);
  });

  test.each<[string, FindingCode, string]>([
    ['2 c5- e d', 'member-apart', '2 c5-e d'],
    ["2 c5'zz - e-g d", 'member-apart', "2 c5'zz-e-g d"],
    ['2 c5 d fermata', 'mark-apart', "2 c5 d'fermata"],
    ['4 c5 lost d', 'lost-without-value', '4 c5 lost 4 d'],
  ])('%s is mended by what stands around it', (text, code, meant) => {
    expect(codes(text)).toEqual([code]);
    expect(mended(` ${text} |`)).toBe(` ${meant} |`);
    expect(codes(meant)).toEqual([]);
  });

  test.each([
    ['{3 8 c5 d e}', '{3in2 8 c5 d e}'],
    ['{5 16 c5 d e f g}', '{5in4 16 c5 d e f g}'],
    ['{3:2 8 c5 d e}', '{3in2 8 c5 d e}'],
    ['{ 3in2 8 c5 d e}', '{3in2 8 c5 d e}'],
    ['{ small 8 c5}', '{small 8 c5}'],
    ['{supplied: 4 c5}', '{supplied 4 c5}'],
    ['{inegal2:1 8 c5 d}', '{inegal 2:1 8 c5 d}'],
  ])('%s has a head that is not glued, or not in its signs', (text, meant) => {
    expect(codes(text)).toEqual(['span-without-head']);
    expect(mended(` ${text} |`)).toBe(` ${meant} |`);
  });

  test.each([
    ['{added K.2 4 c5}', '{added:K.2 4 c5}'],
    ['{overdot french 4. c5 8 d}', '{overdot:french 4. c5 8 d}'],
    ['{inegal 2-1 8 c5 d}', '{inegal 2:1 8 c5 d}'],
  ])('%s has a head whose parts are not joined as they are typed', (text, meant) => {
    expect(codes(text)).toEqual(['typed-otherwise']);
    expect(mended(` ${text} |`)).toBe(` ${meant} |`);
    expect(codes(meant)).toEqual([]);
  });

  test('what is not understood after the head of a span may be anything', () => {
    for (const text of ['{small K 8 c5}', '{overdot ! 4. c5 8 d}', '{void 3-2 1 c5}']) {
      expect(codes(text)).toEqual(['not-understood']);
    }
  });

  test.each([
    ['{Small 8 c5}', '{small 8 c5}'],
    ['{overdott:french 4. c5 8 d}', '{overdot:french 4. c5 8 d}'],
  ])('the nearest head of a span is offered for %s', (text, meant) => {
    expect(codes(text)).toEqual(['unknown-span']);
    expect(mended(` ${text} |`)).toBe(` ${meant} |`);
  });

  test.each<[string, FindingCode]>([
    ['.', 'lone-dot'],
    ["c5 '9", 'bad-mark'],
    ['<K: 4 c5 , L: d>', 'label-alone'],
    ['@', 'not-understood'],
    ['$%&', 'not-understood'],
  ])('%s is one finding', (text, code) => expect(codes(text)).toEqual([code]));

  test.each<[string, FindingCode, string]>([
    ['c5é', 'dead-key', "c5'e"],
    ['cé', 'unshifted-digit', 'c2'],
    ['re', 'note-named-elsewhere', 'd'],
    ['fa#', 'note-named-elsewhere', 'f#'],
    ['do3', 'note-named-elsewhere', 'c3'],
  ])('%s says what is meant, and is not mended, for it may be something else', (text, code, meant) => {
    expect(read(`${text} |`).problems).toMatchObject([{ code, slots: { meant } }]);
    expect(mended(`${text} |`)).toBe(`${text} |`);
  });

  test.each([
    ['4 c5 ¦ d', '4 c5 | d'],
    ['4 c5｜d', '4 c5|d'],
    ['4 c5 ‖ d', '4 c5 || d'],
  ])('%s has a sign that looks like a barline', (text, meant) => {
    expect(codes(text)).toEqual(['barline-as-drawn']);
    expect(mended(`${text} |`)).toBe(`${meant} |`);
  });

  test('an unclosed string is one junk to the next barline', () => {
    const tree = read('4 c5 "Gay d e f | 4 g |');
    expect(tree.problems.map(({ code }) => code)).toEqual(['unclosed-string']);
    expect(tree.segments.map(({ items: bar, broken }) => [outline(bar), broken])).toEqual([
      ['value note junk', true],
      ['value note', false],
    ]);
  });

  test('junk breaks its own bar only', () => {
    expect(read('4 @ c5 | d | %% |').segments.map(({ broken }) => broken)).toEqual([true, false, true]);
  });
});

describe('brackets in balance', () => {
  test.each<[string, FindingCode[], string]>([
    ['{3in2 8 c5 d', ['unclosed-bracket'], 'junk value note note'],
    ['8 c5 } d', ['stray-bracket'], 'value note junk note'],
    ['<K: 2 c5', ['unclosed-bracket'], 'junk value note'],
    ['<K: 2 c5 ; L: 2 d', ['unclosed-bracket'], 'junk value note junk value note'],
    ['2 c5 > d', ['stray-bracket'], 'value note junk note'],
    ['2 c5 ; d', ['stray-bracket'], 'value note junk note'],
    ['{small <K: 8 c5 ; L: 8 d} e', ['unclosed-bracket'], '{junk value note junk value note} note'],
    ['<K: {small 8 c5 ; L: 2 d>', ['unclosed-bracket'], '<junk value note; value note>'],
  ])('%s', (text, expected, shape) => {
    expect(codes(text)).toEqual(expected);
    expect(outline(items(text))).toBe(shape);
  });

  test('an unclosed bracket does not swallow the next bar', () => {
    expect(read('{small 8 c5 | 1 d | e |').segments.map(({ broken }) => broken)).toEqual([true, false, false]);
  });

  const nested = (deep: number): string => `${'{unclear '.repeat(deep)}4 c5${' }'.repeat(deep)}`;
  test(`${DEEPEST} may lie in one another`, () => expect(codes(nested(DEEPEST))).toEqual([]));
  test('one more is a finding, and so are a hundred more', () => {
    expect(DEEPEST).toBe(32);
    expect(codes(nested(DEEPEST + 1))).toEqual(['too-deep']);
    expect(codes(nested(DEEPEST + 100))).toEqual(['too-deep']);
  });

  test('whatever the brackets, the parser reads every token', () => {
    const sign = fc.constantFrom(
      '{small',
      '{',
      '}',
      '<K:',
      '<',
      ';',
      '; L:',
      '>',
      '|',
      '4',
      'c5',
      "'zz",
      '=',
      'omit',
      '*n1',
      '@',
    );
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 40 }), (signs) => {
        const text = ` ${signs.join(' ')}`;
        const seen = new Set<number>();
        const visit = (all: readonly Item[]): void => {
          for (const item of all) {
            for (let at = item.pos; at < item.pos + item.len; at++) seen.add(at);
            if (item.kind === 'span') visit(item.items);
          }
        };
        for (const { items: bar, bar: end } of read(text).segments) visit(end === undefined ? bar : [...bar, end]);
        const unseen = [...text].filter((char, at) => char !== ' ' && !seen.has(at));
        expect(unseen).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('barlines that are one', () => {
  const barsOf = (tree: LaneTree) => tree.segments.map(({ bar }) => bar);

  test('bear together what is glued to either', () => {
    const [bar, ...more] = barsOf(read("1 c5 |*n1\n||'fermata d |"));
    expect(bar).toMatchObject({
      shape: '||',
      again: [{ pos: 10, len: 10 }],
      suffixes: [{ ref: 'n1' }, { kind: 'mark' }],
    });
    expect(more).toHaveLength(1);
  });

  test('are more than two where a line holds a barline alone', () => {
    const tree = read("1 c5 |\n|*n1\n|||'fermata\n| d |");
    expect(tree.problems).toEqual([]);
    expect(tree.segments.map(({ items: bar }) => outline(bar))).toEqual(['value note', 'note']);
    expect(tree.segments[0]?.bar).toMatchObject({ shape: '|||', again: [{}, {}, {}], suffixes: [{ ref: 'n1' }, {}] });
    const opening = read('\n|\n||: 1 c5 |');
    expect(opening.opening).toMatchObject({ again: { shape: '||:', again: [{}] } });
    expect(opening.segments).toHaveLength(1);
    expect(read('6 |\n|\n|| 5 |', 'fig').segments.map(({ bar }) => bar?.shape)).toEqual(['||', '|']);
    expect(read('\n|\n|| 6 |', 'fig').opening).toMatchObject({ again: { shape: '||' } });
  });

  test('may stand inside options', () => {
    const tree = read('<K: 1 c5 |\n| d ; L: 1 e5 | f> |');
    expect(outline(tree.segments[0]?.items ?? [])).toBe('<value note barline note; value note barline note>');
    expect(tree.problems).toEqual([]);
  });

  test('may be no barline at all, which is said of each', () => {
    expect(read('1 c5 |\n|||| d |').problems.map(({ code }) => code)).toEqual(['bad-barline']);
  });

  test('may be the first of the lane, with what is glued to it', () => {
    expect(read('*n1 4 c5 |').opening).toMatchObject({ suffixes: [{ ref: 'n1' }] });
    const tree = read('\n||:*n2 1 c5 |');
    expect(tree.opening).toMatchObject({ suffixes: [], again: { shape: '||:', suffixes: [{ ref: 'n2' }] } });
    expect(tree.segments).toHaveLength(1);
    expect(read('\n|| 6 |', 'fig').opening).toMatchObject({ again: { shape: '||' } });
  });

  test('the opening one is the special one of the two, and two special ones disagree', () => {
    const opened = (lane: string) => parseFile(`${HEAD}system\n  dessus ${lane}`).blocks[1];
    expect(opened("|'renvoi\n ||: 1 c5 |")?.lanes[0]?.open).toMatchObject({
      shape: '||:',
      suffixes: [{ form: { name: 'renvoi' } }],
      again: [{ len: 3 }],
    });
    expect(opened('|||\n ||: 1 c5 |')?.problems.map(({ code }) => code)).toEqual(['barline-joint']);
  });

  test('a mark after white space belongs to no barline', () => {
    expect(read("1 c5 | 'zz d |").problems.map(({ code }) => code)).toEqual(['mark-without-event']);
  });
});

describe('slips that are one thing, not several', () => {
  test.each<[string, FindingCode, string]>([
    ['c=5', 'note-order', 'c5='],
    ['f#?5', 'note-order', 'f#5?'],
    ["c5'zz=", 'note-order', "c5='zz"],
    ["c5'zz(above)?", 'note-order', "c5'zz?(above)"],
    ["c5'zz:K(from main)?", 'note-order', "c5'zz?(from main):K"],
    ["c5'[zz]:!K?", 'note-order', "c5'[zz]?:!K"],
    ["c4-e'arp(above)+", 'note-order', "c4-e'arp+(above)"],
    ["c5'zz=?*n1", 'note-order', "c5=?'zz*n1"],
    ['f5(#)', 'accidental-after-octave', 'f(#)5'],
    ['f5[#]', 'accidental-after-octave', 'f[#]5'],
    ['f♯5', 'accidental-as-drawn', 'f#5'],
    ['e♭', 'accidental-as-drawn', 'eb'],
    ['f𝄪5', 'accidental-as-drawn', 'f##5'],
    ["b♮4'zz", 'accidental-as-drawn', "bn4'zz"],
    ['c5′zz', 'typographic-apostrophe', "c5'zz"],
    ['c5´zz’3', 'typographic-apostrophe', "c5'zz'3"],
    ['c5ća', 'dead-key', "c5'ca"],
    ['c5d5', 'notes-run-together', 'c5 d5'],
    ['8 c5 &d', 'beam-glued', '8 c5 & d'],
    ['8 c5,d', 'beam-glued', '8 c5 , d'],
    ['8 . c5', 'lone-dot', '8. c5'],
    ['8 c5 (up)d', 'bracket-glued', '8 c5 (up) d'],
    ['8(up) c5', 'bracket-glued', '8 (up) c5'],
    ['8(up)c5', 'bracket-glued', '8 (up) c5'],
  ])('%s', (text, code, meant) => {
    expect(codes(text)).toEqual([code]);
    expect(mended(` ${text} |`).replace(/\s+/g, ' ').trim()).toBe(`${meant} |`);
    expect(codes(meant)).toEqual([]);
  });

  test.each(['K: c5', 'c5:x', 'c5"x"', '*"x"d', 'c58', 'x/y'])('%s', (text) => {
    expect(codes(`4 c5 ${text}`)).toHaveLength(1);
  });

  test.each(['c5"zz d e', 'c5*"a blot d e', 'r"zz'])(
    'a quotation mark that never ends, glued to a note: %s',
    (text) => {
      expect(codes(`4 c5 ${text}`)).toEqual(['unclosed-string']);
    },
  );

  test('a dot after the barline belongs to the note before it', () => {
    expect(codes('2 c5 | . d')).toEqual(['lone-dot']);
    expect(mended(' 2 c5 | . 4 d |')).toBe(" 2. c5'through(dot) |  4 d |");
    expect(mended(' 2 c5 | . d |')).toBe(" 2. c5'through(dot) |  2 d |");
  });

  test('a place needs a sign to be glued to', () => {
    expect(read(' 4 c5 (above) |').problems).toMatchObject([{ code: 'place-apart' }]);
    expect(read(' 4 c5 (above) |').problems[0]?.fixes).toBeUndefined();
  });

  test('a round bracket that never closes is told so', () => {
    expect(read(' (now C3 4 c5 |').problems[0]).toMatchObject({ code: 'unclosed-bracket', slots: { bracket: '(' } });
  });
});

describe('a comment', () => {
  test.each(["4 c5'zz", '4 c5 @', '4 c5 ,', '4 c5 K', '{small', '(up)', '4'])('ends %s', (text) => {
    const tree = read(` ${text}//| d |\n| 8 e5 |`);
    const [last] = tree.segments.slice(-1);
    expect(outline(last?.items ?? [])).toMatch(/value note$/);
    expect(tree.text.slice(last?.pos, (last?.pos ?? 0) + (last?.len ?? 0))).toMatch(/8 e5 \|$/);
  });

  test('is not in a string', () => {
    expect(only('"http://x"', 'words').text).toBe('http://x');
    expect(note('c5*"a // b"').suffixes).toMatchObject([{ text: 'a // b' }]);
  });

  test('may end a figure or a syllable, and holds any character but a line end', () => {
    expect(read('6//5 |', 'fig').segments).toMatchObject([{ items: [{ what: 'figures' }] }]);
    const tree = parseFile('// a\u2028b\nsystem\n  dessus | 1 c5 | // c\u2028d |\n');
    expect(tree.blocks.flatMap(({ problems }) => problems)).toEqual([]);
    expect(tree.blocks[1]?.lanes[0]?.tree.segments).toHaveLength(1);
  });
});

describe('no token is at a loss in a heap of its own signs', () => {
  // A matcher that repeats without bound fills its memory and throws, here at some ten million repetitions.
  test.each<[string, string, string]>([
    ['Quoted', '', '""'],
    ['Mark', "'zz:a", ',a'],
    ['Mark', "'zz(", '/a'],
    ['Repeat', '=:a', ',a'],
    ['SpanOpen', '{added:K', ',L'],
    ['OptionsOpen', '<K', ',L'],
    ['OptionsOpen', '<v1', '*n1'],
    ['OptionNext', ';K', ',L'],
    ['Round', '(', '""'],
    ['Annotated', '*', '""'],
    ['Junk', '@', '/x'],
    ['SubItem', '6', '/6'],
  ])('%s: %s%s…', (name, begin, piece) => {
    const pattern = [...laneTokens, ...subLaneTokens].find((type) => type.name === name)?.PATTERN;
    if (!(pattern instanceof RegExp)) throw new Error(`no token ${name}`);
    const heap = begin + piece.repeat(20_000_000 / piece.length);
    expect(() => new RegExp(pattern.source, 'y').exec(heap)).not.toThrow();
  });
});
