/** Slips of the hand, worse ones, and malice: texts edited at random, each from a seed that makes it again. */

/** A number from 0 up to, not including, `below`. */
export type Random = (below: number) => number;

/** An even run of 32-bit numbers from a seed: a Weyl sequence, its bits mixed. */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    mixed = (mixed ^ (mixed >>> 15)) >>> 0;
    return Math.floor((mixed / 2 ** 32) * below);
  };
}

export const oneOf = (random: Random, all: readonly string[]): string => all[random(all.length)] ?? '';

const CHARACTERS: readonly string[] = [
  ...'abcdefgr0123456789.x?=_-|:;<>{}[]()*\'"/&,#nB@~+! \n\t',
  ...'“”„’á\0\r\u2028\ufeff\u0301\u{1d11e}',
  '\ud800',
  '\udc00',
  '\r\n',
];

const TOKENS: readonly string[] = [
  ...'4 8. 16x 2.. B Mx 8x5in4 3 128..... 99999999999999999999 8x99in1 c5 f# bbb4 e[#] a(b) c9 c0 r rbar _ __ = [=] =?:L c5= omit lost'.split(
    ' ',
  ),
  ..."'zz '[zz]? 'u '. '.c3 'u~ '.~ 'u(q) '.(q) '4-5 'through(dot) 'through 'w2 '# 'fermata 'zz+ 'zz:french *n7 *\"a\"".split(
    ' ',
  ),
  ...'0 0in2 {0in2 {3in0 {99in98 8x3in0 0x 4/0 {3in2 {5in4 {small {overdot {inegal {black {void {lig {unclear } < <K: <K,L: <v3 ; ;L: > <sic: corr:'.split(
    ' ',
  ),
  ...'| || ||| :|| ||: :||: |||| |[]'.split(' '),
  ...[
    '{3in2 8 c5 d e}',
    '{small 16 d5 e}',
    '<K: 2 c5 ; L: 4 c5 d>',
    '{black 3in2 4 c5 d e}',
    'lost 2.',
    'lost ?',
    '"Gay"',
    '(below "tr.")',
  ],
  ...[
    '(now C3)',
    '(now meter 3/4)',
    '(now key f#)',
    '(up)',
    '(home)',
    '(custos c5)',
    '(ending 1)',
    '(ending 2)',
    '<K: 1 c5 | 1 d ; L: omit>',
    '<v1 L: omit ; K: 4 c5>',
    '(section B)',
    '(irregular)',
    '(manual upper)',
  ],
  ...[
    '(now meter C)',
    '(now tempo 4 at 63)',
    '(stems up)',
    '(section petite in B)',
    '(now meter 1/128)',
    '(now meter 99/1)',
  ],
  ...[
    'system',
    'system loose',
    'system free',
    'piece "x"',
    'section B',
    'order A A B',
    'order A A B B',
    'key bb',
    'upper C1',
    'lower F4+C6',
    'meter cut-C',
  ],
  ...[
    '\n  fig | 6 _ = |',
    '\n  text | la la |',
    '\n  dessus L | 4 c5 |',
    '\n  dessus L | | :|| |',
    '\nlink v1 v2',
    '\ninclude "shared/thornmere.bent"',
    '\n  dessus | 1 c5 |',
    '\n  | 4 c5 |',
    '\npage "9"',
    '\nreading plain "x"',
  ],
  ...[
    '\nvoice dessus',
    '\nstave upper lines 4',
    '\nhand K.2 "x"',
    '\naccidentals bar',
    '\naccidentals group',
    '\nsigns anglebert-1689',
    '\nlink v3 v9',
  ],
];

type Edit = (text: string, random: Random) => string;

/** The text with `length` characters from `at` replaced. */
const replaced = (text: string, at: number, length: number, by: string): string =>
  text.slice(0, at) + by + text.slice(at + length);

/** Where words, spaces and lines begin. */
const placesOf = (text: string, pattern: RegExp): number[] => [...text.matchAll(pattern)].map(({ index }) => index);

/** Does something to the lines of a text. */
const onLines =
  (edit: (lines: string[], at: number, random: Random) => void): Edit =>
  (text, random) => {
    const lines = text.split('\n');
    edit(lines, random(lines.length), random);
    return lines.join('\n');
  };

const EDITS: readonly Edit[] = [
  // Characters.
  (text, random) => replaced(text, random(text.length + 1), 0, oneOf(random, CHARACTERS)),
  (text, random) => replaced(text, random(text.length + 1), 1 + random(3), ''),
  (text, random) => replaced(text, random(text.length + 1), 1, oneOf(random, CHARACTERS)),
  (text, random) => replaced(text, random(text.length + 1), 0, oneOf(random, CHARACTERS).repeat(1 + random(40))),
  // Words.
  (text, random) => {
    const places = placesOf(text, /(?<=\s)(?=\S)/g);
    return replaced(text, places[random(places.length)] ?? 0, 0, `${oneOf(random, TOKENS)} `);
  },
  (text, random) => {
    const words = [...text.matchAll(/\S+/g)];
    const word = words[random(words.length)];
    return replaced(text, word?.index ?? 0, word?.[0].length ?? 0, random(3) === 0 ? '' : oneOf(random, TOKENS));
  },
  (text, random) => {
    const words = [...text.matchAll(/\S+/g)];
    const [from, to] = [words[random(words.length)], words[random(words.length)]];
    return replaced(text, to?.index ?? 0, to?.[0].length ?? 0, from?.[0] ?? '');
  },
  // Stretches.
  (text, random) => replaced(text, random(text.length + 1), random(60), ''),
  (text, random) => {
    const from = random(text.length + 1);
    return replaced(text, random(text.length + 1), 0, text.slice(from, from + random(80)));
  },
  // Lines.
  onLines((lines, at) => lines.splice(at, 1)),
  onLines((lines, at) => lines.splice(at, 0, lines[at] ?? '')),
  onLines((lines, at, random) => {
    const other = random(lines.length);
    [lines[at], lines[other]] = [lines[other] ?? '', lines[at] ?? ''];
  }),
  onLines((lines, at, random) => {
    lines[at] = (lines[at] ?? '').trimStart().padStart(random(4));
  }),
  onLines((lines, at, random) => lines.splice(at, 0, oneOf(random, TOKENS))),
];

/** A text with one to five things done to it. */
export function edited(text: string, random: Random): string {
  let now = text;
  for (let times = 1 + random(5); times > 0; times--) now = EDITS[random(EDITS.length)]?.(now, random) ?? now;
  return now;
}

/** Before each line that begins a system. */
export const SYSTEM_START = /^(?=system(?![\w-]))/m;

/** The head of a text and some of its systems, so that a text is small and an edit quickly judged. */
function cutOut(text: string, random: Random): string {
  const [head = '', ...systems] = text.split(SYSTEM_START);
  if (systems.length < 3) return text;
  const from = random(systems.length);
  return [head, ...systems.slice(from, from + 1 + random(2))].join('');
}

/** The edited text of a seed. */
export function textOf(seed: number, sources: readonly string[]): string {
  const random = randomFrom(seed);
  return edited(cutOut(sources[random(sources.length)] ?? '', random), random);
}
