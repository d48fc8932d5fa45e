/** The formatter moves white space and nothing else. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../grammar/findings/catalogue';
import { formatFile, type LaidOut, laidOut, proved } from '../../grammar/format';
import { parseFile } from '../../grammar/parse';
import { sources } from '../fuzz/check';
import { textOf } from '../fuzz/edits';
import { anyScore } from '../helpers/generate';

function aligned(text: string): string {
  const { text: result, problems } = formatFile(text);
  expect(problems).toEqual([]);
  return result;
}

const refusal = (text: string, layOut: (text: string) => LaidOut): unknown => {
  const { text: result, problems } = proved(text, layOut);
  expect(result).toBe(text);
  return problems[0];
};

describe('in a system', () => {
  test('the bars of the lanes stand under one another', () => {
    expect(
      aligned(`system upper C1 lower F4  meter cut-C = 2/2
 dessus | 4. b4'zz 8 c5   4. d'pince 8 eb|2 d5'zz <K: 2 c5 ; L: 4 c5 b4> |
 taille | 2 d4 f | 2 f4 _ |
   basse |  2 b2 4 =   a | 2 b2 f3'[zz]:french |
   fig | 6 _ = | 6/5 _ |
`),
    ).toBe(`system  upper C1  lower F4  meter cut-C = 2/2
  dessus | 4. b4'zz 8 c5 4. d'pince 8 eb | 2 d5'zz <K: 2 c5 ; L: 4 c5 b4> |
  taille | 2 d4 f                        | 2 f4 _                         |
  basse  | 2 b2 4 = a                    | 2 b2 f3'[zz]:french            |
    fig  | 6 _ =                         | 6/5 _                          |
`);
  });

  test('a line that holds a barline alone keeps it', () => {
    const typed = `system upper C1
  dessus |
     |
   ||: 1 c5 |'fermata
   |
   |*n1
   | 1 d |
`;
    expect(aligned(typed)).toBe(`system  upper C1
  dessus |
         |
         ||: 1 c5 |'fermata
         |
         |*n1
         |    1 d |
`);
  });

  test('special barlines widen their column', () => {
    expect(aligned('system\n a ||: 1 c5 :||*n1 (section B) 1 d5 |||\n b | 1 c4 | 1 d4 |\n')).toBe(
      'system\n  a ||: 1 c5 :||*n1 (section B) 1 d5 |||\n  b |   1 c4 |      1 d4             |\n',
    );
  });

  test('witness lanes with empty bars keep step', () => {
    expect(aligned('system\n a | 1 c5 | 2 d5 e | 1 f5 |\n a L | | 1 d5 | |\n')).toBe(
      'system\n  a   | 1 c5 | 2 d5 e | 1 f5 |\n  a L |      | 1 d5   |      |\n',
    );
  });

  test('the words sung stand under the notes, a witness has its own under it', () => {
    expect(
      aligned(`system
canto | "Adagio  assai" 2 c5 d | 1 e |
text | the word- | "of  old" |
canto L || 2 c5 e | |
   text | the   word- | = |
basso | 1 c3 | c |
fig | _ | 5,6 |
`),
    ).toBe(`system
  canto   |  "Adagio  assai" 2 c5 d | 1 e       |
    text  |  the word-              | "of  old" |
  canto L || 2 c5 e                 |           |
    text  |  the word-              | =         |
  basso   |  1 c3                   | c         |
    fig   |  _                      | 5,6       |
`);
  });

  test('options that hold barlines take as many columns as they have bars', () => {
    expect(aligned('system\n a | <K: 2 c5 | d ; L: 2 e5 | f> | 2 g4 |\n b | 2 c4 | 2 d4 | 2 e4 d c b3 |\n')).toBe(
      'system\n  a | <K: 2 c5 | d ; L: 2 e5 | f> | 2 g4        |\n  b | 2 c4 | 2 d4                 | 2 e4 d c b3 |\n',
    );
  });

  test('lines stay as the writer broke them, those that begin with the same bar together', () => {
    expect(aligned('system\n a | 1 c5 |\n | 2 d5 e | 1 f |\n b | 4 c4 d e f |\n    | 1 d4 | 1 e4 |\n')).toBe(
      'system\n  a | 1 c5       |\n    | 2 d5 e | 1 f  |\n  b | 4 c4 d e f |\n    | 1 d4   | 1 e4 |\n',
    );
    // A system end in the middle of a bar.
    expect(aligned('system\n a | 1 c5 | 2 d5\n b | 4 c4 d e f | 2 d4\n')).toBe(
      'system\n  a | 1 c5       | 2 d5\n  b | 4 c4 d e f | 2 d4\n',
    );
  });

  test('whose barlines need not agree each lane stands by itself', () => {
    expect(aligned('system loose\n dessus | 4 c5 | d  e |\n b | 2. c4 |\n')).toBe(
      'system loose\n  dessus | 4 c5 | d e |\n  b      | 2. c4 |\n',
    );
  });

  test('a lane that is not understood is indented and stays as it is, and the rest is aligned', () => {
    expect(aligned('system\n  a | 4 c5   8d |   1 e |\n b | 1   c4 |\n longer | 2 c3 d |\n')).toBe(
      'system\n  a | 4 c5   8d |   1 e |\n  b      | 1 c4   |\n  longer | 2 c3 d |\n',
    );
    expect(aligned('system\n   a | 1  c5 |||| 1 d |\n')).toBe('system\n  a | 1  c5 |||| 1 d |\n');
    // Its further lines move with the first.
    expect(aligned('system\n\ta | 4 c5   8d |  \n\t  |  1  e |\n')).toBe('system\n  a | 4 c5   8d |\n    |  1  e |\n');
    expect(aligned('system\n    a | 4 c5   8d |\n  |  1  e |\n')).toBe('system\n  a | 4 c5   8d |\n  |  1  e |\n');
  });

  test('so does a line that belongs to nothing', () => {
    expect(aligned('system\n a | 1  c5 |\n   loose   words\n')).toBe('system\n  a | 1 c5 |\n   loose   words\n');
  });

  test('a bar of enormous width does not make every other lane as wide', () => {
    const wide = `  b | "${'x'.repeat(100_000)}" | // z\n`;
    const text = `system\n${'  a | 1 c5 | // z\n'.repeat(1000)}${wide}`;
    const result = aligned(text);
    expect(result.length).toBeLessThan(text.length + 1000 * 1000);
    expect(result.replace(/\s+/g, '')).toBe(text.replace(/\s+/g, ''));
    // So with statements.
    expect(
      aligned(`${'voice a  lower // x\n'.repeat(1000)}voice b  "${'x'.repeat(100_000)}" // y\n`).length,
    ).toBeLessThan(1_000_000);
  });

  test('wide letters take two columns, accents none', () => {
    expect(aligned('system\n a | "序曲" 1 c5 | 1 d |\n b | "e\u0301" 1 c4 | 1 d |\n')).toBe(
      'system\n  a | "序曲" 1 c5 | 1 d |\n  b | "e\u0301" 1 c4    | 1 d |\n',
    );
  });
});

describe('statements', () => {
  test('of one kind stand in columns, clauses two spaces apart', () => {
    const text = `title     "Entrée for the second manual"
source K  "Thornmere Keyboard Book, f. 3v"
source L  "Loose bifolium kept with K"

reading french  "Dots stretched, signs after the table of 1689"
  takes     K
  signs     anglebert-1689
  practice  overdot
reading plain   "As the loose leaf has it, at face value"
  takes     L

instrument  harpsichord  compass g1-d6
pitch       a4 = 415
tuning      meantone 1/4 wolf g#-eb
tempo       2 at 50  // fifty minims a minute
accidentals note     // a written accidental holds for its own note only
beaming     8 by 4

stave upper  lines 5
stave lower  lines 5
voice dessus upper  stems up
voice taille upper  stems down
voice basse  lower

note n1  kind reading  by TK  certainty high
  : "L has the chord, without its sign"
link v3 v9
`;
    expect(aligned(text)).toBe(text);
    expect(aligned(text.replace(/(\S) {2,}(?=\S)/g, '$1 '))).toBe(text);
    expect(aligned(text.replace(/\n {2}/g, '\n\t    '))).toBe(text);
  });

  test('that are tables have the columns of their rows', () => {
    expect(
      aligned(`table house from anglebert-1689
 zz "shake" : on beat, (+1 0) repeated at 11 a second, hold 1/4
  cb "cheute" when falling   : on beat, +1 for 1/2, 0
temperament ours
  c-g    -1/4 sc
instrument spinet compass c2-c6
     manual upper   stops 8
`),
    ).toBe(
      `table house  from anglebert-1689
  zz "shake"                 : on beat, (+1 0) repeated at 11 a second, hold 1/4
  cb "cheute"  when falling  : on beat, +1 for 1/2, 0
temperament ours
  c-g -1/4 sc
instrument spinet  compass c2-c6
  manual upper  stops 8
`,
    );
  });

  test('whose strings are unsure stay as they are', () => {
    const text = 'title   “Entrée”\nsource  K   "the\nsource   nobody  knows\n';
    expect(aligned(text)).toBe(text);
  });
});

describe('comments', () => {
  test('stay between the lines and at the lines where they are', () => {
    expect(
      aligned(`// head
source K "book"// mine
   // indented
source LL "leaf"     //   theirs

system // of the page
   a | 1 c5 |  // sic
      // below
  // a
  bb | 2 c4 d |// so in K
`),
    ).toBe(`// head
source K   "book"  // mine
  // indented
source LL  "leaf"  //   theirs

system  // of the page
  a  | 1 c5   |  // sic
  // below
  // a
  bb | 2 c4 d |  // so in K
`);
  });

  test('that say so switch alignment off and on', () => {
    const text = `system
  a |   1 c5 |
  // align off
  b | 1 c4 |


  c |  2  c3    d |
// align on
  d | 2 c2 d |
`;
    expect(aligned(text)).toBe(text.replace('a |   1 c5 |', 'a | 1 c5   |'));
  });
});

describe('lines', () => {
  test('end as they ended, the last one too', () => {
    expect(aligned('title  "x"\r\nsystem\r\n a | 1  c5 |')).toBe('title "x"\r\nsystem\r\n  a | 1 c5 |\r\n');
    expect(aligned('title  "x"\rsystem')).toBe('title "x"\rsystem\r');
    expect(aligned('title  "x"')).toBe('title "x"\n');
    expect(aligned('')).toBe('');
  });

  test('that are blank never stand in heaps', () => {
    expect(aligned('\n\n\ntitle "x"\n  \n\t\n\nsystem\n\n\n')).toBe('\ntitle "x"\n\nsystem\n');
  });
});

describe('a text that would not say the same', () => {
  const given = 'title  "x"  // y\nsystem\n a | 1 c5  | // z\n';

  test.each<[string, (text: string) => string]>([
    ['a sign would be lost', (text) => text.replace('c5', 'c4')],
    ['a sign would be lost', (text) => text.replace('// y', '')],
    ['a string would change', (text) => text.replace('"x"', '"x "')],
    ['a line would be broken otherwise', (text) => text.replace('1 c5', '1\n c5')],
    ['the music would read otherwise', (text) => text.replace('1 c5', '1c5')],
    ['a comment would be lost', (text) => text.replace('// y', '//  y')],
    ['a comment would be lost', (text) => text.replace('// y', '/ / y')],
    ['it would change once more', (text) => text.replace(/^system *$/m, '$& ')],
  ])('is refused: %s', (reason, spoil) => {
    const spoilt = (text: string): LaidOut => {
      const laid = laidOut(text);
      return { ...laid, text: spoil(reason.startsWith('it') ? text : laid.text) };
    };
    expect(refusal(given, spoilt)).toMatchObject({ code: 'align-refused', slots: { reason } });
  });

  test('and so is one whose system would be lost', () => {
    const indented = (text: string): LaidOut => ({ ...laidOut(text), text: text.replace(/^system/m, ' system') });
    expect(refusal(given, indented)).toMatchObject({
      code: 'align-refused',
      slots: { reason: 'a system would be lost' },
    });
  });

  test('the refusal is an error', () => {
    expect(catalogue['align-refused'].level).toBe('error');
  });
});

describe('whatever the text', () => {
  const SAMPLES = join(import.meta.dirname, '../../samples');
  const samples = readdirSync(SAMPLES).filter((name) => name.endsWith('.bent'));

  test.each(samples)('%s stands as it should, and comes back to that when its spaces are lost', (name) => {
    const text = readFileSync(join(SAMPLES, name), 'utf8');
    expect(aligned(text)).toBe(text);
    // Runs of spaces outside strings and comments become one, indentation a tab.
    const squeezed = text
      .replace(/(\/\/.*|"[^"\n]*")|(?<=\S) {2,}/g, (_, kept?: string) => kept ?? ' ')
      .replace(/^ +/gm, '\t');
    expect(squeezed).not.toBe(text);
    expect(aligned(squeezed)).toBe(text);
  });

  const signs = (text: string): string => text.replace(/\s+/g, '');

  test('a sound score is aligned, keeps its signs and its tree, and is aligned once for all', () => {
    fc.assert(
      fc.property(anyScore(), (text) => {
        const result = aligned(text);
        expect(signs(result)).toBe(signs(text));
        expect(aligned(result)).toBe(result);
        const bars = (all: string): number[] =>
          parseFile(all).blocks.flatMap((block) => block.lanes.map((lane) => lane.tree.segments.length));
        expect(bars(result)).toEqual(bars(text));
      }),
      { numRuns: 200 },
    );
  });

  test('the barlines of its measured systems stand in columns', () => {
    fc.assert(
      fc.property(anyScore({ loose: false, free: false, options: false }), (text) => {
        for (const block of parseFile(aligned(text)).blocks) {
          const oneLine = block.lanes.filter((lane) => lane.lines.length === 1);
          const columns = oneLine.map(({ tree }) =>
            tree.segments.flatMap(({ bar }) => (bar === undefined ? [] : [bar.pos])),
          );
          const starts = oneLine.map(({ starts: [start = 0], lines: [line = 0] }) => {
            const inFile = block.offset + start;
            return inFile - (parseFile(aligned(text)).lineStarts[block.line + line] ?? 0);
          });
          const absolute = columns.map((positions, i) => positions.map((pos) => pos + (starts[i] ?? 0)));
          for (const one of absolute) expect(one).toEqual(absolute[0]);
        }
      }),
      { numRuns: 60 },
    );
  });

  /** Pieces of the notation and what has no business in it. */
  const piece = fc.constantFrom(
    ...[
      'system',
      'system loose',
      'page "1"',
      'title  "x  y"',
      'voice a  b',
      'table h from k',
      '\n zz "s" : on beat, 0',
    ],
    ...['reading r "x"', '\n  takes  K', 'note n1 :', 'section A', '\n', '\n\n', '\r\n', '\r', '\n  ', '\n\t', '  '],
    ...['dessus | ', 'a L | ', 'fig | ', 'text | ', ' |', '|', ' ||:', ' :||', '||||', '// c', '//', '// "', '/', '"'],
    ...['“a”', '<K: ', '; L: ', '>', '{3in2 ', '{', '}', '(now C3)', '(now  meter   3/4)', '(', '[]', "'zz", '*n1'],
    ...[
      '*"a  b"',
      '4 c5',
      '8 d',
      '=',
      '_',
      '__',
      '-',
      'word- ',
      '6/5',
      'rbar',
      'lost 2',
      'omit',
      ':',
      '\n// align on\n',
    ],
    ...['\n// align off\n', '\u00a0', '\u2028', '\ufeff', '\f', '\v', 'é', 'e\u0301', '序', '\u{1f3b5}', '\ud800'],
  );

  test('it is never thrown out, never refused, and keeps its signs', () => {
    const text = fc.oneof(
      fc.array(piece, { maxLength: 40 }).map((pieces) => pieces.join('')),
      fc.string({ unit: 'binary', maxLength: 200 }),
    );
    fc.assert(
      fc.property(text, (given) => {
        const result = aligned(given);
        expect(signs(result)).toBe(signs(given));
        expect(aligned(result)).toBe(result);
      }),
      { numRuns: 2000 },
    );
  });

  test('a spoilt one is never refused, and loses nothing', () => {
    const texts = sources();
    for (let seed = 1; seed <= 1500; seed++) {
      const text = textOf(seed, texts);
      const result = aligned(text);
      if (signs(result) !== signs(text)) throw new Error(`seed ${seed}`);
      if (aligned(result) !== result) throw new Error(`seed ${seed}`);
    }
  });
});
