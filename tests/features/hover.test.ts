import { describe, expect, it } from 'vitest';
import { completion, resolved } from '../../server/features/completion';
import { readAs } from '../../server/features/events';
import { hover } from '../../server/features/hover';
import { asTyped } from '../../server/features/markdown';
import { positionOfOffset } from '../../server/features/place';
import { helmholtz, scientific } from '../../server/score/pitchNames';
import { type AtCaret, atCaret, FILE, inLane, projectNamed } from '../helpers/editor';
import { HEAD } from '../helpers/music';

const told = ({ project, position }: AtCaret, picture?: Parameters<typeof hover>[2]): string => {
  const contents = hover(project, position, picture)?.contents;
  return contents !== undefined && typeof contents === 'object' && 'value' in contents ? contents.value : '';
};

// Common practice: c′ is the middle C, C4; a′ sounds 440 today; C is two octaves below the middle C.
it.each([
  ['c', 0, 4, 'C4', 'c′'],
  ['a', 0, 4, 'A4', 'a′'],
  ['b', -1, 5, 'B♭5', 'b♭′′'],
  ['f', 1, 3, 'F♯3', 'f♯'],
  ['c', 0, 2, 'C2', 'C'],
  ['g', 0, 1, 'G1', 'G͵'],
] as const)('%s %i %i is %s and after Helmholtz %s', (letter, alteration, octave, one, other) => {
  expect(scientific({ letter, alteration, octave })).toBe(one);
  expect(helmholtz({ letter, alteration, octave })).toBe(other);
});

describe('a note says', () => {
  it('what sounds, under the signature, and what is written', () => {
    // The signature of one flat: a written b sounds b flat.
    expect(told(inLane('4 c5 ‸b4 a g'))).toContain('**b♭′ (B♭4)**; written `b4`');
    expect(told(inLane('4 c5 b4 a ‸b'))).toContain('written `b` in octave 4');
  });

  it('its value, voice, bar, beat and time', () => {
    expect(told(inLane('2 c5 4. ‸d 8 e | 1 f'))).toContain('dotted crotchet · dessus · bar 1, beat 3 · 0:02');
    expect(told(inLane('4 c5 8 d ‸e 2 f', 'tempo 2 at 60\n'))).toContain('bar 1, beat 2 1/2 · 0:00.8');
  });

  it('its time by the tempo of the reading that is shown, and by those on the way', () => {
    const slow = 'tempo 4 at 60\nreading swift\n  tempo 4 at 120\n';
    const { project, position } = inLane('4 c5 d e ‸f', slow);
    expect(told({ project, position })).toContain('beat 4 · 0:03');
    expect(told({ project: readAs(project, 'swift'), position })).toContain('beat 4 · 0:01.5 · in swift');
    expect(told(inLane('4 c5 (now tempo 4 at 30) d e ‸f', slow))).toContain('beat 4 · 0:05');
  });

  it('which reading has it, where it stands in an option', () => {
    expect(told(inLane('<K: 1 c5 ; L: 2 d5 ‸e>'))).toContain('· in L');
    expect(told(inLane('<K: 1 ‸c5 ; L: 2 d5 e>'))).not.toContain('· in');
  });

  it('that it is tied, or struck with others', () => {
    expect(told(inLane('2 c5= ‸c'))).toContain('tied to the note before');
    expect(told(inLane('1 c5-‸e-g'))).toMatch(/\*\*e′′ \(E5\)\*\*, of 3 struck together/);
  });

  it('how it sounds in the tuning of the reading, and how pure what sounds with it is', () => {
    // Quarter-comma meantone at a4 = 440: middle C 263.181 hertz, 10.26 cents above; its thirds pure, fifths 5.38 cents narrow.
    const meantone = 'pitch a4 = 440\ntuning meantone 1/4 wolf g#-eb\n';
    expect(told(inLane('1 ‸c4-en-g', meantone))).toContain(
      '263.2 Hz, 10.3 cents above equal temperament; with e′ a major third, pure; with g′ a fifth, 5.4 cents narrow',
    );
    expect(told(inLane('1 c4-en-‸g', meantone))).toContain('with e′ a minor third, 5.4 cents narrow');
    expect(told(inLane('1 ‸c4-en-g'))).not.toContain('Hz');
    const flat = meantone.replace('g#-eb', 'c#-ab');
    expect(told(inLane('<K: 1 c4 ; L: 1 ‸ab4>', `${flat}reading L2\n  takes L\n`))).toContain('Hz');
  });

  it('on which key a short octave has it (Borys Medicky, keyboard layouts, borysmedicky.com/options)', () => {
    const short = 'instrument virginals compass c2-c6 short-octave c/e\n';
    expect(told(inLane('1 ‸en2', short))).toContain('Short octave C/E: on the key of g#2');
    expect(told(inLane('1 ‸c2', short.replace('c/e', 'c/e broken')))).toContain('on the key of e2');
    expect(told(inLane('1 ‸f#2', short.replace('c/e', 'c/e broken')))).toContain('on the back half of the key of f#2');
    expect(told(inLane('1 ‸f2', short))).not.toContain('Short octave');
  });

  it('with the picture of its bar, if there is one, and without it the words alone', () => {
    const place = inLane('4 c5 ‸d e f');
    expect(told(place, ({ bar }) => `![bar ${bar.number}](data:image/svg+xml,)`)).toMatch(/!\[bar 1\]\(data:/);
    expect(told(place, () => undefined)).not.toContain('![');
  });
});

it('a custos says the note that is announced, with its accidental or under the signature', () => {
  // The signature of one flat.
  expect(told(inLane('1 c5 (custos ‸eb5)'))).toBe('e♭′′ (E♭5)');
  expect(told(inLane('1 c5 (custos ‸b4)'))).toBe('b♭′ (B♭4)');
  expect(told(inLane('1 c5 (custos ‸bn4)'))).toBe('b′ (B4)');
});

describe('a sign says', () => {
  // D'Anglebert's table of 1689: the comma after the note is the pincé.
  it('what is drawn, and how the chosen table calls and plays it', () => {
    const words = told(inLane("1 c5'pin‸ce", 'signs anglebert-1689\n'));
    expect(words).toContain("**'ca**");
    expect(words).toContain(
      'K, L: **Pincé** of anglebert-1689 (from memory), on the beat: the note, the note below, and the note again, held. Here: c5 bb4 c5.',
    );
  });

  it('where it is drawn, once', () => {
    expect(told(inLane("1 c5'z‸z"))).toMatch(/^\*\*'zz\*\* a short zigzag, above the note$/m);
    expect(told(inLane("1 c5'c‸a"))).toMatch(/half-circle to the right of the note$/m);
    expect(told(inLane("1 c5's‸s"))).toMatch(/^\*\*'ss\*\* two oblique strokes through the stem, .* without stem$/m);
  });

  it('what a table of the file calls it', () => {
    const table = 'table house\n  zz "shake" : on beat, (+1 0) repeated\nsigns house\n';
    expect(told(inLane("1 c5'z‸z", table))).toContain(
      'K, L: **shake** of house, on the beat: the note above and the note by turns. Here: d5 c5',
    );
  });

  it('of marks that are no signs what they mean', () => {
    expect(told(inLane("1 c5'fer‸mata"))).toBe('A fermata.');
    expect(told(inLane("1 c5'‸3"))).toBe('Finger 3.');
  });
});

it('a barline says how much of its bar there is, in a value that counts it', () => {
  expect(told(inLane('4 c5 d e f ‸| 1 c'))).toBe('End of bar 1: 4 of 4 crotchets');
  expect(told(inLane('8 c5 ‸| 1 c'))).toBe('End of bar 0: 1 of 8 quavers');
});

describe('a head says', () => {
  const head = (clefs: string): AtCaret => atCaret(`${HEAD}stave low lines 6\nsystem ${clefs}\n  dessus | 1 c5 |||\n`);

  it('the note of each line under a clef', () => {
    const words = told(head('upper ‸C1 lower F4 meter C'));
    expect(words).toContain('**C1** soprano clef (C clef: middle C)');
    expect(words).toContain('- line 1: c′ (C4), where the clef stands');
    expect(words).toContain('- line 5: d′′ (D5)');
    expect(words).not.toContain('line 6');
  });

  it('as many lines as the stave has', () => {
    expect(told(head('low ‸F4 meter C'))).toContain('- line 6: c′ (C4)');
  });

  // Quantz, Versuch, 1752, chapter V, section 13.
  it('what a meter sign means', () => {
    expect(told(head('upper C1 meter cut‸-C'))).toContain('cut time: two minims');
  });

  it('what a keyword and a clause are for', () => {
    expect(told(head('upper C1 met‸er C'))).toContain('The metre sign as drawn');
    expect(told(atCaret(`${HEAD.replace('stave upper', 'sta‸ve upper')}`))).toBe('A stave.');
  });
});

describe('a name says what it stands for', () => {
  it.each([
    ['<‸K: 1 c5 ; L: 1 d5>', 'Source K: the Thornmere Keyboard Book'],
    ['1 c5*‸n1', '**n1** a sharp is wanting'],
    ['<K: 1 c5 ; co‸rr: 1 d5>', 'as the editor mends it'],
  ])('%s', (music, words) => {
    expect(told(inLane(music, 'note n1 kind pitch : "a sharp is wanting"\n'))).toContain(words);
  });

  it('before a lane', () => {
    expect(told(atCaret(`${HEAD}system upper C1 meter C\n  des‸sus | 1 c5 |||\n`))).toBe(
      'Voice dessus, on the stave upper, stems up',
    );
  });
});

it('a place where sources differ shows what each has and who prefers it', () => {
  const words = told(inLane('‸<v1 K: 1 c5 ; L: 2 d5 e>', 'reading plain\n  takes L\n'));
  expect(words).toContain('Place v1; the first is the main text');
  expect(words).toContain('- `L: 2 d5 e`, preferred by plain');
});

describe('what a file says is no Markdown', () => {
  // A picture's address would be asked for as soon as the pointer rests there.
  const SAID = 'x ![p](https://elsewhere/p.png) <img src=q> *b* \\\\ `c`';
  const file = `bentside 1
source K "${SAID}"
source L "${SAID}"
hand L.2 "${SAID}"
editor MK "${SAID}"
reading plain "${SAID}"
  takes L
stave upper
voice dessus upper
table house
  zz "${SAID}" : unresolved "${SAID}"
signs house
note n1 kind pitch by MK evidence "${SAID}" : "${SAID}"
system upper C1 meter C
  dessus | <v1 K: 2 c5*"${SAID}" ; L: 2 d5'zz*n1 ; plain: 4 c "${SAID}" d> 2 c5*n1 |||
`;
  const project = projectNamed(FILE, file);
  /** Markdown without what it shows as it is. */
  const bare = (text: string): string => text.replace(/``? .*? ``?|`[^`]*`|\\[^\w\s]/g, '');

  it('wherever the pointer rests', () => {
    const all = Array.from({ length: file.length }, (_, offset) =>
      told({ project, position: positionOfOffset(project.tree, offset) }),
    );
    expect(all.filter((text) => text.includes('elsewhere')).length).toBeGreaterThan(100);
    for (const text of all) expect(bare(text)).not.toMatch(/\]\(|<img|https:|\*b/);
  });

  it('nor in what is told of a proposal', () => {
    const told = ["c5'", '<', "c5'zz:", 'c5*'].flatMap((typed) => {
      const { project: asked, position } = atCaret(file.replace('2 c5*n1', `2 ${typed}‸`));
      const { items } = completion(asked, position, true);
      return items.map((item) => (item.data === undefined ? item : resolved(item, asked)).documentation);
    });
    const texts = told.flatMap((one) => (typeof one === 'object' ? [one.value] : []));
    expect(texts.filter((text) => text.includes('elsewhere')).length).toBeGreaterThan(5);
    for (const text of texts) expect(bare(text)).not.toMatch(/\]\(|<img|https:|\*b/);
  });

  it.each([
    ['a b', '`a b`'],
    ['a `b` c', '`` a `b` c ``'],
    ['``', '``` `` ```'],
  ])('%s is typed as %s', (typed, shown) => {
    expect(asTyped(typed)).toBe(shown);
  });
});

it('blank lines and broken text say nothing and break nothing', () => {
  expect(told(atCaret('‸'))).toBe('');
  expect(told(inLane('4 c5 <K: ‸ {'))).toBe('');
});
