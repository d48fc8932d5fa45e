/** Outline, folding, selection, layout, links: what the text is made of. */
import { describe, expect, it } from 'vitest';
import type { DocumentSymbol, SelectionRange } from 'vscode-languageserver-types';
import { foldingRanges } from '../../server/features/folding';
import { formatting, rangeFormatting } from '../../server/features/formatting';
import { documentLinks } from '../../server/features/links';
import { offsetOfPosition, positionOfOffset } from '../../server/features/place';
import { fixAll, quickFixes } from '../../server/features/quickFixes';
import { selectionRanges } from '../../server/features/selection';
import { documentSymbols } from '../../server/features/symbols';
import { aligned } from '../../server/workspace/aligned';
import { atCaret, FILE, laneText, projectNamed, textIn, withEdits } from '../helpers/editor';
import { sampleNames, sampleText } from '../helpers/samples';

const SUITE = `bentside 1
// sources of the suite
// and who mended them
source K "the Thornmere Keyboard Book"
reading plain "at face value"
  takes K
voice dessus
voice basse

piece "Allemande"
page "3v" image "scans/3v.jpg"
section A
system dessus G2 basse F4 meter C
  dessus | 4 c5 | 1 d5 |
  basse  | 4 c3 | 1 d3 |
system
  dessus | 1 e5 |||
  basse  | 1 e3 |||

piece "Gigue"
page "4r"
system dessus G2 basse F4 meter 6/4
  dessus | 1. c5 |||
  basse  | 1. c3 |||
`;

const outline = (symbols: readonly DocumentSymbol[] = [], depth = 0): string[] =>
  symbols.flatMap(({ name, detail, children }) => [
    `${'  '.repeat(depth)}${name}${detail === undefined ? '' : `, ${detail}`}`,
    ...outline(children, depth + 1),
  ]);

const flat = (symbols: readonly DocumentSymbol[]): DocumentSymbol[] =>
  symbols.flatMap((one) => [one, ...flat(one.children ?? [])]);

describe('the outline of a suite', () => {
  it('has what is declared, then movement, leaf, section, system and bar', () => {
    expect(outline(documentSymbols(projectNamed(FILE, SUITE)))).toEqual([
      'K, source',
      'plain, reading',
      'dessus, voice',
      'basse, voice',
      'Allemande',
      '  page 3v',
      '    section A',
      '    system 1, bars 0 to 1',
      '      bar 0',
      '      bar 1',
      '    system 2, bar 2',
      '      bar 2',
      'Gigue',
      '  page 4r',
      '    system 1, bar 1',
      '      bar 1',
    ]);
  });

  it('is there, whole, wherever a file breaks off', () => {
    const text = sampleText('leaves.bent');
    const all = flat(documentSymbols(projectNamed(FILE, text)));
    for (let end = 0; end < text.length; end += 197) {
      const lines = text.slice(0, end).split('\n').length - 1;
      const above = all.filter(({ range }) => range.end.line < lines).map(({ name }) => name);
      const found = flat(documentSymbols(projectNamed(FILE, text.slice(0, end)))).map(({ name }) => name);
      expect(found).toEqual(expect.arrayContaining(above));
    }
  });
});

it('movements, leaves, systems, long statements and comments can be folded away', () => {
  const lines = SUITE.split('\n');
  const folds = foldingRanges(projectNamed(FILE, SUITE).tree).map(
    ({ startLine, endLine }) => `${lines[startLine]?.trim()} … ${lines[endLine]?.trim()}`,
  );
  expect(folds.sort()).toEqual([
    '// sources of the suite … // and who mended them',
    'page "3v" image "scans/3v.jpg" … basse  | 1 e3 |||',
    'page "4r" … basse  | 1. c3 |||',
    'piece "Allemande" … basse  | 1 e3 |||',
    'piece "Gigue" … basse  | 1. c3 |||',
    'reading plain "at face value" … takes K',
    'system dessus G2 basse F4 meter 6/4 … basse  | 1. c3 |||',
    'system dessus G2 basse F4 meter C … basse  | 4 c3 | 1 d3 |',
    'system … basse  | 1 e3 |||',
  ]);
});

it('the selection grows from the mark over note, group, option, place, bar, lane and system to the file', () => {
  const text = laneText("4 c5 <K: {3in2 4 d5'zz e f} ; L: 2 d5> 4 c |");
  const caret = text.indexOf("'zz") + 1;
  const { project, position } = atCaret(`${text.slice(0, caret)}‸${text.slice(caret)}`);
  const [innermost] = selectionRanges(project.tree, [position]);
  const texts: string[] = [];
  for (let one: SelectionRange | undefined = innermost; one !== undefined; one = one.parent) {
    texts.push(textIn(project.tree.text, one.range).trim());
  }
  expect(texts.slice(0, 7)).toEqual([
    "'zz",
    "d5'zz",
    "{3in2 4 d5'zz e f}",
    "K: {3in2 4 d5'zz e f}",
    "<K: {3in2 4 d5'zz e f} ; L: 2 d5>",
    "4 c5 <K: {3in2 4 d5'zz e f} ; L: 2 d5> 4 c |",
    "4 c5 <K: {3in2 4 d5'zz e f} ; L: 2 d5> 4 c | |||",
  ]);
  expect(texts.at(-1)).toBe(project.tree.text.trim());
});

describe('laying out', () => {
  const loose = SUITE.replace('  dessus | 4 c5 | 1 d5 |', ' dessus |   4 c5 |1 d5 |').replace(
    '\n\npiece "Gigue"',
    '\n\n\n\npiece "Gigue"',
  );

  it('a file says what the command line says', () => {
    const project = projectNamed(FILE, loose);
    expect(withEdits(loose, formatting(project))).toBe(aligned(FILE, loose).text);
    expect(formatting(projectNamed(FILE, aligned(FILE, loose).text))).toEqual([]);
  });

  it.each(sampleNames)('%s says the same from any disorder of spaces', (name) => {
    const disorder = sampleText(name).replace(/^( +)/gm, '$1   ').replace(/\n\n/g, '\n\n\n');
    expect(withEdits(disorder, formatting(projectNamed(FILE, disorder)))).toBe(aligned(FILE, disorder).text);
  });

  it('a range that ends where the next system begins leaves that alone', () => {
    const both = loose.replace('  dessus | 1. c5', ' dessus |   1. c5').replace('system upper F4', 'system   upper F4');
    const project = projectNamed(FILE, both);
    for (const [index, block] of project.tree.blocks.entries()) {
      const next = project.tree.blocks[index + 1]?.line ?? Number.POSITIVE_INFINITY;
      const whole = { start: { line: block.line, character: 0 }, end: { line: next, character: 0 } };
      for (const { range } of rangeFormatting(project, whole)) {
        expect(range.start.line).toBeGreaterThanOrEqual(block.line);
        expect(range.start.line).toBeLessThan(next);
      }
    }
  });

  it('a range leaves other systems alone', () => {
    const both = loose.replace('  dessus | 1. c5', ' dessus |   1. c5');
    const project = projectNamed(FILE, both);
    const line = both.split('\n').findIndex((one) => one.includes('1. c5'));
    const range = { start: { line, character: 0 }, end: { line, character: 5 } };
    const laid = withEdits(both, rangeFormatting(project, range));
    expect(laid).toContain('  dessus | 1. c5 |||');
    expect(laid).toContain(' dessus |   4 c5 |1 d5 |');
  });
});

describe('a selection grows from any place', () => {
  it.each(sampleNames)('of %s around the place itself, also in names, comments and blank lines', (name) => {
    const { tree } = projectNamed(name, sampleText(name));
    for (let offset = 0; offset <= tree.text.length; offset += 7) {
      const position = positionOfOffset(tree, offset);
      const [range] = selectionRanges(tree, [position]);
      for (let one = range; one !== undefined; one = one.parent) {
        expect(offsetOfPosition(tree, one.range.start)).toBeLessThanOrEqual(offset);
        expect(offsetOfPosition(tree, one.range.end)).toBeGreaterThanOrEqual(offset);
      }
    }
  });
});

it('included files and pictures of pages can be followed', () => {
  const text = `${SUITE}include "shared/house.bent"\ninclude "/etc/passwd"\n`;
  const project = projectNamed(FILE, text);
  const links = documentLinks(project, (path) => (path.startsWith('/') ? undefined : `file:///music/${path}`));
  expect(links.map(({ target, range }) => `${textIn(text, range)} ${target}`)).toEqual([
    '"scans/3v.jpg" file:///music/scans/3v.jpg',
    '"shared/house.bent" file:///music/shared/house.bent',
  ]);
});

describe('fixes', () => {
  it('are offered where the finding is, and mend it', () => {
    const text = laneText("1 c5'zigzagg");
    const project = projectNamed(FILE, text);
    const line = text.split('\n').findIndex((one) => one.includes('zigzagg'));
    const [fix] = quickFixes(project, { start: { line, character: 16 }, end: { line, character: 16 } }, []);
    expect(fix?.title).toContain('zigzag');
    expect(withEdits(text, fix?.edit?.changes?.[FILE] ?? [])).toContain("c5'zigzag |");
  });

  /** The text after all slips of typing are mended at once. */
  const allMended = (text: string, name = FILE): string => {
    const [all] = fixAll(projectNamed(name, text), {});
    return withEdits(text, all?.edit?.changes?.[name] ?? []);
  };

  it('of slips of typing are made at once', () => {
    expect(allMended(laneText("8c5 d5# 4.(up)e5 5'zz d5 'ca e5’zz"))).toBe(
      laneText("8 c5 d#5 4. (up) e5 5'zz d5'ca e5'zz"),
    );
  });

  it.each([
    ['a bar that is left empty', '1 c5 | | 1 d5'],
    ['a sign of which no table says what is meant', "1 c5'pince"],
    ['an unknown name', "1 c5'zigzagg"],
    ['a bar that lacks time', '2 c5 4 d5 | 1 e'],
    ['a note whose value is typed after it', 'c5/8 4 d5'],
    ['barlines that are none', '1 c5 |||| d'],
  ])('of %s are left to whoever looks at the source', (_, music) => {
    expect(allMended(laneText(music))).toBe(laneText(music));
  });

  it.each(sampleNames)('of %s, mended unseen, leave every letter, digit and sign', (name) => {
    const slips: readonly (readonly [RegExp, string])[] = [
      [/([a-g])([#n])(\d)/g, '$1$3$2'],
      [/([a-g]\d?)'(?=[ab]\w)/g, "$1 '"],
      [/ (\d+\.?) (?=[a-g])/g, ' $1'],
      [/'zz/g, '’zz'],
      [/ (\((?:up|down|home)\)) /g, '$1'],
    ];
    const text = slips.reduce((all, [right, slip]) => all.replace(right, slip), sampleText(name));
    const bare = (one: string): string => [...one.replace(/\s/g, '').replace(/’/g, "'")].sort().join('');
    expect(bare(allMended(text, name))).toBe(bare(text));
    expect(allMended(text, name)).not.toBe(text);
  });

  it('are made again where one shows that another is needed, and there is never one place changed twice', () => {
    const text = laneText("8c5(up)d c(now C3)6 2 d5 8c5 4/d5 e'zigzagg");
    const [all] = fixAll(projectNamed(FILE, text), {});
    const edits = all?.edit?.changes?.[FILE] ?? [];
    const starts = edits.map(({ range }) => range.start.character);
    expect(new Set(starts).size).toBe(starts.length);
    const mended = withEdits(text, edits);
    expect(fixAll(projectNamed(FILE, mended), {})).toEqual([]);
    const codes = projectNamed(FILE, mended)
      .analysis.findings()
      .map(({ code }) => code);
    expect(codes).not.toContain('bracket-glued');
    expect(codes).not.toContain('value-glued');
  });

  it.each(sampleNames)('of %s with all its marks torn off are made until none is left', (name) => {
    const torn = sampleText(name).replace(/([a-g]\d?)'(?=[a-z])/g, "$1 '");
    const [all] = fixAll(projectNamed(name, torn), {});
    const mended = withEdits(torn, all?.edit?.changes?.[name] ?? []);
    expect(fixAll(projectNamed(name, mended), {})).toEqual([]);
  });

  it('are offered for every finding that has one', () => {
    const text = laneText("8c5 restx c5/8 é 4 f5'zzzzz9 {3in2 8 c5 d} '", 'stave upperr\n');
    const project = projectNamed(FILE, text);
    const whole = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const fixable = project.analysis.findings().flatMap(({ fixes }) => fixes);
    expect(quickFixes(project, whole, [])).toHaveLength(fixable.length);
  });
});
