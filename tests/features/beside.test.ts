/** What stands beside the text: colours, hints between the signs, lenses over readings, what comes next. */
import { describe, expect, it } from 'vitest';
import { codeLenses } from '../../server/features/codeLens';
import { inlayHints } from '../../server/features/inlayHints';
import { offsetOfPosition } from '../../server/features/place';
import { decoded, semanticTokens, tokenEdits } from '../../server/features/semanticTokens';
import { signatureHelp } from '../../server/features/signatureHelp';
import { atCaret, FILE, laneText, projectNamed } from '../helpers/editor';
import { HEAD } from '../helpers/music';
import { sampleNames, sampleText } from '../helpers/samples';

/** Each token with what it is. */
const tokens = (text: string, data = semanticTokens(projectNamed(FILE, text).tree)): string[] =>
  decoded(projectNamed(FILE, text).tree, data).map(
    ({ start, length, type }) => `${text.slice(start, start + length)} ${type}`,
  );

describe('the colours', () => {
  it('tell voices, sources, staves and signs apart', () => {
    const text = laneText("4 c5'zz <v1 K: d ; L.2: e[#]=> r-(now C3) {3in2 8 f g a}*n1");
    const found = tokens(text);
    expect(found).toEqual(
      expect.arrayContaining([
        'dessus variable',
        'upper class',
        'K label',
        'L.2 label',
        'v1 parameter',
        "'zz decorator",
        '4 number',
        'c5 variable',
        'e[#] variable',
        '= operator',
        '{3in2 macro',
        '*n1 parameter',
        'system keyword',
        'C1 enumMember',
        '"a loose leaf" string',
      ]),
    );
  });

  it.each(sampleNames)('%s: tokens stand in order and do not overlap', (name) => {
    const { tree } = projectNamed(FILE, sampleText(name));
    let end = 0;
    for (const { start, length } of decoded(tree, semanticTokens(tree))) {
      expect(start).toBeGreaterThanOrEqual(end);
      expect(length).toBeGreaterThan(0);
      end = start + length;
    }
    expect(end).toBeGreaterThan(0);
  });

  it('of some lines are those of the whole', () => {
    const text = sampleText('gigue.bent');
    const { tree } = projectNamed(FILE, text);
    const range = { start: { line: 40, character: 0 }, end: { line: 60, character: 0 } };
    const [from, to] = [offsetOfPosition(tree, range.start), offsetOfPosition(tree, { line: 61, character: 0 })];
    const whole = decoded(tree, semanticTokens(tree)).filter(({ start }) => start >= from && start < to);
    expect(decoded(tree, semanticTokens(tree, range))).toEqual(whole);
  });

  it('after an edit are sent as the stretch that has changed', () => {
    const before = semanticTokens(projectNamed(FILE, laneText('4 c5 d e f')).tree);
    const after = semanticTokens(projectNamed(FILE, laneText("4 c5 d'zz e f")).tree);
    const edits = tokenEdits(before, after);
    const [edit] = edits;
    expect(edits).toHaveLength(1);
    expect((edit?.data ?? []).length).toBeLessThan(20);
    const made = [...before];
    made.splice(edit?.start ?? 0, edit?.deleteCount ?? 0, ...(edit?.data ?? []));
    expect(made).toEqual(after);
    expect(tokenEdits(after, after)).toEqual([]);
  });
});

describe('hints between the signs', () => {
  const all = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
  const shown = (music: string, wishes: Partial<Parameters<typeof inlayHints>[2]>): string => {
    const text = laneText(music);
    const project = projectNamed(FILE, text);
    const hints = inlayHints(project, all, { barNumbers: false, accidentals: false, leaps: false, ...wishes });
    const marked = hints
      .map(({ position, label }) => ({ offset: offsetOfPosition(project.tree, position), label: `${label}` }))
      .sort((a, b) => b.offset - a.offset)
      .reduce((told, { offset, label }) => `${told.slice(0, offset)}«${label}»${told.slice(offset)}`, text);
    return /dessus \| (.*) \|\|\|/.exec(marked)?.[1] ?? '';
  };

  it('are none as a rule', () => {
    expect(shown('4 b4 c5 d e', {})).toBe('4 b4 c5 d e');
  });

  // The signature has one flat; under the practice `note` a sharp holds for the immediate repetition.
  it('name the accidental that sounds and is not written', () => {
    expect(shown("4 b4'zz f#5 f bb", { accidentals: true })).toBe("4 b4«♭»'zz f#5 f«♯» bb");
  });

  it('name the octave after a fifth or more that no digit shows', () => {
    expect(shown('4 c5 d g c | d5 a a4 b', { leaps: true })).toBe('4 c5 d g c«5» | d5 a«5» a4 b');
  });

  it('number the bars', () => {
    expect(shown('1 c5 | d', { barNumbers: true })).toBe('«1»1 c5 | «2»d');
  });
});

it('a reading says in how many systems it differs, and leads there', () => {
  const project = projectNamed(
    FILE,
    `${HEAD}reading plain "as the leaf"\n  takes L\nreading same\n  takes K\nsystem upper C1 lower F4 meter C\n  dessus | <K: 1 c5 ; L: 1 d5> |\nsystem\n  dessus | 1 c5 |||\n`,
  );
  expect(codeLenses(project).map(({ command }) => [command?.title, command?.arguments])).toEqual([
    ['Show this reading (it differs from the main text in 1 of 2 systems)', ['plain', FILE]],
    ['Show this reading (it differs from the main text nowhere)', ['same', FILE]],
  ]);
});

it('a reading leads nowhere in a file without music: a score does not have the readings of what it includes', () => {
  expect(codeLenses(projectNamed(FILE, 'bentside 1\nsource L "leaf"\nreading plain\n  takes L\n'))).toEqual([]);
});

describe('what comes next', () => {
  const shown = (marked: string): string => {
    const { project, position } = atCaret(marked);
    const help = signatureHelp(project, position);
    const [signature] = help?.signatures ?? [];
    const active = signature?.parameters?.[help?.activeParameter ?? 0]?.label;
    return signature === undefined ? '' : `${signature.label} → ${active ?? ''}`;
  };

  it.each([
    [`${HEAD}voice canto ‸`, 'voice ‹the name of a voice› [‹the name of a stave›] → [‹the name of a stave›]'],
    [`${HEAD}tempo 4 ‸`, 'tempo ‹a note value› at ‹a number a minute› → at ‹a number a minute›'],
    [
      `${HEAD}system upper C1 meter ‸`,
      'meter ‹the metre sign as drawn› [= ‹the length of a bar, such as 3/2›] → ‹the metre sign as drawn›',
    ],
    [
      `${HEAD}system upper ‸`,
      'clef ‹the name of a stave› ‹a clef, such as C1 or F4+C6› → ‹a clef, such as C1 or F4+C6›',
    ],
    [
      `${HEAD}tuning meantone 1/4 wolf ‸`,
      'meantone ‹the part of a comma by which each fifth is narrow, such as 1/4› [‹a comma›] [wolf ‹the fifth that is left wide, such as g#-eb›] → [wolf ‹the fifth that is left wide, such as g#-eb›]',
    ],
    [laneText('1 c5 (custos ‸'), 'custos ‹a note with its octave, such as c5› → ‹a note with its octave, such as c5›'],
  ])('%#', (marked, told) => {
    expect(shown(marked)).toBe(told);
  });

  it('after the colon of a row is a recipe', () => {
    expect(shown(`${HEAD}table house\n  zz "shake" : ‸`)).toContain('on beat | before beat');
  });

  it('is nothing among notes', () => {
    expect(shown(laneText('4 c5 ‸ d'))).toBe('');
  });
});
