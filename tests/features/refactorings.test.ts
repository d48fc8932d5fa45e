/** Refactorings: the text says the same, or says it more fully. */
import { describe, expect, it } from 'vitest';
import { positionOfOffset } from '../../server/features/place';
import { refactorings } from '../../server/features/refactorings';
import { FILE, laneText, projectNamed, withEdits } from '../helpers/editor';
import { analysed, errors, HEAD, sound } from '../helpers/music';

/** The text after the refactoring whose title holds these words; a caret is `‸`, a selection stands between `⟦` and `⟧`. */
function made(marked: string, words: string): string {
  const text = marked.replace(/[‸⟦⟧]/g, '');
  const project = projectNamed(FILE, text);
  const start = marked.search(/[‸⟦]/);
  const end = Math.max(marked.indexOf('⟧') - 1, start);
  const range = { start: positionOfOffset(project.tree, start), end: positionOfOffset(project.tree, end) };
  const all = refactorings(project, range);
  const one = all.find(({ title }) => title.includes(words));
  if (one === undefined) throw new Error(`no such refactoring among: ${all.map(({ title }) => title).join('; ')}`);
  return withEdits(text, one.edit?.changes?.[FILE] ?? []);
}

const offered = (marked: string): string[] => {
  const text = marked.replace('‸', '');
  const project = projectNamed(FILE, text);
  const at = positionOfOffset(project.tree, marked.indexOf('‸'));
  return refactorings(project, { start: at, end: at }).map(({ title }) => title);
};

const music = (text: string): string => /dessus \| (.*) \|\|\|/.exec(text)?.[1] ?? '';

describe('a sign, an accidental, a tie', () => {
  it.each([
    ["4 c5'z‸z? d", "4 c5'[zz]? d"],
    ["4 c5'[z‸z]:K d", "4 c5'zz:K d"],
    ['4 f‸#5 g', '4 f[#]5 g'],
    ['4 c5-f‸#-a g', '4 c5-f[#]-a g'],
    ['4 f[‸#]5 g', '4 f#5 g'],
    ['4 f#5‸= f', '4 f#5[=] f'],
    ["4 c5-e[‸=]?'zz e", "4 c5-e=?'zz e"],
    ['4 f#5 ‸=:K g', '4 f#5 [=]:K g'],
  ])('%s is made the other’s: %s', (before, after) => {
    expect(music(made(laneText(before), 'Make it the'))).toBe(after);
  });

  it('there is none for a natural note without a sign', () => {
    expect(offered(laneText('4 c‸5 d')).filter((title) => title.includes('Make it'))).toEqual([]);
  });
});

it('a place is given the first free name', () => {
  expect(music(made(laneText('<v1 K: 2 c5 ; L: 2 d5> <‸K: 2 c5 ; L: 2 e5>'), 'Name this place'))).toBe(
    '<v1 K: 2 c5 ; L: 2 d5> <v2 K: 2 c5 ; L: 2 e5>',
  );
});

describe('a quick annotation', () => {
  it('becomes a full one in the head, which the note cites', () => {
    const text = made(laneText('1 c5*"a ""wrong"" ‸note"', 'note n1 kind pitch : "a sharp"\n'), 'full annotation');
    expect(music(text)).toBe('1 c5*n2');
    expect(text).toContain('note n1 kind pitch : "a sharp"\nnote n2 : "a ""wrong"" note"\n');
    expect(errors(analysed(text))).toEqual([]);
  });

  it('without others stands below what is declared, not between a comment and what it leads', () => {
    const text = made(laneText('1 c5*"‸dark"', 'page "2r"\n\n// the opening\n'), 'full annotation');
    expect(text).toContain('\nvoice basse lower\nnote n1 : "dark"\npage "2r"\n\n// the opening\nsystem ');
  });

  it('without others goes before the first system', () => {
    expect(made(laneText('1 c5*"‸dark"'), 'full annotation')).toContain('\nnote n1 : "dark"\nsystem ');
  });
});

describe('a passage made options of two witnesses', () => {
  it.each([
    ['4 c5 ⟦d e⟧ f', '4 c5 <K: d e ; L: d e> 4 f5'],
    ['4 c5 ⟦8 d e⟧ 4 f | 1 g', '4 c5 <K: 8 d e ; L: 8 d e> 4 f5 | 1 g'],
    ["2 c5 ⟦4 d'zz⟧ e5", "2 c5 <K: 4 d'zz ; L: 4 d'zz> 4 e5"],
    ['2 c5 ⟦{3in2 4 d e f}⟧', '2 c5 <K: {3in2 4 d e f} ; L: {3in2 4 d e f}>'],
    ['⟦4 c5⟧ r d 2 e', '<K: 4 c5 ; L: 4 c5> 4 r d5 2 e'],
    ['⟦4 c5⟧ = d 2 e', '<K: 4 c5 ; L: 4 c5> 4 = d5 2 e'],
    ['⟦4 c5⟧ 2? d 4 e', '<K: 4 c5 ; L: 4 c5> 2? d5 4 e'],
    ['8 c5 ⟦d⟧ {small 16 e} f g 2 a', '8 c5 <K: d ; L: d> {small 16 e5} 8 f5 g 2 a'],
    ['4 c5 ⟦d⟧ {3in2 8 e f g} 4 a', '4 c5 <K: d ; L: d> {3in2 8 e5 f g} 4 a'],
    ['4 ⟦8 d5 e⟧ <K: 4 f ; L: 8 f g> 2 a5', '4 <K: 8 d5 e ; L: 8 d5 e> <K: 4 f5 ; L: 8 f5 g> 2 a5'],
    ['<K: 4 d5 ; L: 4 e5> 4 f5 ⟦e⟧ 8 g a', '<K: 4 d5 ; L: 4 e5> 4 f5 <K: e ; L: e> 8 g5 a'],
  ])('%s becomes %s', (before, after) => {
    const text = made(laneText(before), 'Make options');
    expect(music(text)).toBe(after);
    expect(errors(analysed(text))).toEqual(errors(analysed(laneText(before.replace(/[⟦⟧]/g, '')))));
  });

  it('sounds as before in both', () => {
    const before = laneText('4 c5 d e f | 2 g a');
    const after = made(laneText('4 c5 ⟦d e⟧ f | 2 g a'), 'Make options');
    for (const choice of ['written', 'L']) {
      expect(sound(analysed(after), 'dessus', choice)).toBe(sound(analysed(before), 'dessus', choice));
    }
    expect(errors(analysed(after))).toEqual([]);
  });

  it.each([
    ['it moves the voice to another stave', '4 c5 ⟦(down) d4⟧ e f'],
    ['it is a value alone', '4 c5 d ⟦2⟧ e'],
    ['it is a beam sign alone', '8 c5 d e f ⟦,⟧ 8 g a b c'],
    ['it stands in an option', '2 c5 <K: ⟦4 d e⟧ ; L: 2 d>'],
  ])('is not offered where %s', (_, before) => {
    expect(() => made(laneText(before), 'Make options')).toThrow('no such refactoring');
  });

  it('is offered in no lane of words, figures or a witness', () => {
    const lanes = `${HEAD}system upper C1 lower F4 meter C\n  dessus | 4 c5 d e f |||\n    text | Ky- ri- e e- |||\n  dessus L | 4 c5 d e g |||\n`;
    expect(() => made(lanes.replace('ri- e', '⟦ri- e⟧'), 'Make options')).toThrow('no such refactoring');
    expect(() => made(lanes.replace('d e g', '⟦d e⟧ g'), 'Make options')).toThrow('no such refactoring');
  });

  it('leaves a value that belongs to what follows where it is', () => {
    expect(music(made(laneText('⟦4 c5 d 2⟧ e'), 'Make options'))).toBe('<K: 4 c5 d ; L: 4 c5 d> 2 e5');
  });

  it('is not offered for half a note or over a barline', () => {
    expect(() => made(laneText('4 c5 d ⟦e f | 1 g⟧'), 'Make options')).toThrow('no such refactoring');
    expect(() => made(laneText("4 c5'z⟦z d⟧ e f"), 'Make options')).toThrow('no such refactoring');
  });
});

describe('the head of a system', () => {
  const SUITE = `${HEAD}system upper C1 lower F4 key bb meter C\n  dessus | 1 c5 |\n  basse | 1 c3 |\nsystem // second\n  dessus | 1 d5 |||\n  basse | 1 d3 |||\n`;

  it('restates clefs and signature in force, before its comment', () => {
    const text = made(SUITE.replace('system //', 'sys‸tem //'), 'Restate');
    expect(text).toContain('system  upper C1  lower F4  key bb // second');
    expect(sound(analysed(text))).toBe(sound(analysed(SUITE)));
  });

  it('restates them before a comment that holds quotation marks', () => {
    const text = made(SUITE.replace('system // second', 'sys‸tem // the "old" head'), 'Restate');
    expect(text).toContain('system  upper C1  lower F4  key bb // the "old" head');
  });

  it('is left alone where a lane changes at once what it would say', () => {
    const text = SUITE.replace('system //', 'sys‸tem //').replace('1 d5', '(now key bn) 1 d5');
    expect(offered(text).filter((title) => title.includes('Restate'))).toEqual([]);
  });

  it('says what it does not say yet', () => {
    const text = made(SUITE.replace('system // second', 'sys‸tem upper G2'), 'Restate');
    expect(text).toContain('system upper G2  lower F4  key bb\n');
  });

  it('of the first system has nothing to restate', () => {
    expect(offered(SUITE.replace('system upper', 'sys‸tem upper'))).toEqual([]);
  });
});

describe('a chord divided between voices', () => {
  const duet = (dessus: string, taille: string): string =>
    `${HEAD}system upper C1 lower F4 meter C\n  dessus | ${dessus} |||\n  taille | ${taille} |||\n`;

  it('gives its lowest note to the voice below that has nothing there', () => {
    const text = made(duet('2 c5-e‸-g f', '2 _ d4'), 'Give c5 to taille');
    expect(text).toBe(duet('2 e5-g5 f', '2 c5 d4'));
  });

  it('keeps every other note where it was', () => {
    const before = duet("2 g4-c5'zz d", '2 _ e4');
    const after = made(duet("2 g4-‸c5'zz d", '2 _ e4'), 'Give g4 to taille');
    expect(after).toBe(duet("2 c5'zz d", '2 g4 e4'));
    expect(sound(analysed(after), 'dessus')).toBe(sound(analysed(before), 'dessus').replace('g4-', ''));
  });

  it('types the octave in options that relied on the note', () => {
    const before = duet('4 c5-g‸4 <K: 4 d ; L: 4 d5> 4 e5 d', '4 _ r 2 r');
    expect(made(before, 'Give g4 to taille')).toBe(duet('4 c5 <K: 4 d4 ; L: 4 d5> 4 e5 d', '4 g4 r 2 r'));
  });

  it.each([
    ['the gap bears something that would be lost', '2 c5-e‸-g f', '2 _"here" d4'],
    ['the note bears one end of a curve', "2 c5'u‸-e-g'u d'.", '2 _ d4'],
  ])('is not done where %s', (_, dessus, taille) => {
    expect(offered(duet(dessus, taille)).filter((title) => title.startsWith('Give'))).toEqual([]);
  });

  it('needs a gap of the same time', () => {
    expect(offered(duet('2 c5-‸e f', '1 _')).filter((title) => title.startsWith('Give'))).toEqual([]);
  });
});
