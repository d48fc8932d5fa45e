import { describe, expect, it } from 'vitest';
import type { Problem } from '../../grammar/findings/finding';
import { sentence } from '../../grammar/findings/word';
import { parseStatement } from '../../grammar/statements/parser';
import type { Recipe, RecipePhrase, Row } from '../../grammar/tree';

/** The row of a table, and what was wrong with it. */
function row(text: string): { row: Row | undefined; problems: readonly Problem[] } {
  const { statement, problems } = parseStatement(`table house\n${text}`, [0, 12]);
  return { row: statement.rows[0], problems };
}

const recipe = (text: string): Recipe | undefined => row(`zz "sign" : ${text}`).row?.recipe;
const codes = (text: string): string[] => row(`zz "sign" : ${text}`).problems.map(({ code }) => code);

/** The fix of each finding applied, the first of each. */
function mended(text: string): string {
  const start = 'table house\nzz : '.length;
  const edits = row(`zz : ${text}`).problems.flatMap(({ fixes }) => fixes?.[0]?.edits ?? []);
  return [...edits]
    .sort((a, b) => b.pos - a.pos)
    .reduce((was, { pos, len, text: by }) => was.slice(0, pos - start) + by + was.slice(pos - start + len), text);
}

const steps = (phrase: RecipePhrase | undefined): string =>
  phrase?.steps.map(({ step, accidental }) => `${step > 0 ? '+' : ''}${step}${accidental ?? ''}`).join(' ') ?? '';

describe('a recipe', () => {
  it('of a trill repeats the upper and the written note at a speed and holds the last quarter', () => {
    const trill = recipe('on beat, (+1 0) repeated at 11 a second, hold 1/4');
    expect(trill?.start).toBe('on beat');
    expect(trill?.phrases).toMatchObject([
      { kind: 'steps', repeated: true, speed: { kind: 'second', number: 11 } },
      { kind: 'hold', share: { n: 1, d: 4 } },
    ]);
    expect(steps(trill?.phrases[0])).toBe('+1 0');
  });

  it('of a pincé strikes the note, the note below, and holds the note', () => {
    const pince = recipe('on beat, 0 -1 0, hold');
    expect(steps(pince?.phrases[0])).toBe('0 -1 0');
    expect(pince?.phrases[1]).toMatchObject({ kind: 'hold', steps: [] });
    expect(pince?.phrases[1]?.share).toBeUndefined();
  });

  it('of an appoggiatura gives the step below half of the value', () => {
    expect(recipe('on beat, -1 for 1/2, 0')?.phrases[0]).toMatchObject({ share: { n: 1, d: 2 }, repeated: false });
  });

  it('of a slide before the beat may count its notes by a pulse or by a written value', () => {
    expect(recipe('before beat, -2 -1 at 8 a pulse, 0')?.start).toBe('before beat');
    expect(recipe('before beat, -2 -1 at 8 a pulse, 0')?.phrases[0]?.speed).toEqual({ kind: 'pulse', number: 8 });
    expect(recipe('on beat, -2 -1 at 32, 0')?.phrases[0]?.speed).toEqual({ kind: 'value', number: 32 });
  });

  it('of an aspiration ends in silence, of a suspension begins with it', () => {
    expect(recipe('on beat, 0 for 3/4, rest')?.phrases[1]?.kind).toBe('rest');
    expect(recipe('on beat, rest 1/4, 0')?.phrases.map(({ kind }) => kind)).toEqual(['rest', 'steps']);
  });

  it('of a trill may lean on its first note as long as the place asks', () => {
    expect(recipe('on beat, +1 leaned, (0 +1) repeated, hold')?.phrases).toMatchObject([
      { kind: 'steps', leaned: true },
      { kind: 'steps', repeated: true },
      { kind: 'hold' },
    ]);
  });

  it('of an accent holds the note until what comes after it must begin', () => {
    expect(recipe('on beat, hold, +1')?.phrases.map(({ kind }) => kind)).toEqual(['hold', 'steps']);
    expect(codes('on beat, hold, +1')).toEqual([]);
  });

  it('of a chord spreads its notes up or down, with what lies between', () => {
    expect(recipe('on beat, spread down filled, hold')?.phrases[0]?.spread).toEqual({
      direction: 'down',
      filled: true,
    });
    expect(recipe('on beat, spread up')?.phrases[0]?.spread).toEqual({ direction: 'up', filled: false });
  });

  it('can force an accidental on a step', () => {
    expect(steps(recipe('on beat, +1# 0 -1n 0 -1bb')?.phrases[0])).toBe('+1# 0 -1n 0 -1bb');
  });

  it('can begin with what another row gives', () => {
    const closed = recipe('extends zz, -1 0');
    expect(closed?.extends).toBe('zz');
    expect(steps(closed?.phrases[0])).toBe('-1 0');
  });

  it('can say that nobody knows', () => {
    expect(recipe('unresolved "its meaning is disputed"')).toMatchObject({
      unresolved: 'its meaning is disputed',
      phrases: [],
    });
  });
});

describe('a row', () => {
  it('can be for signs typed together, for a chord, and for certain notes only', () => {
    const { row: chord, problems } = row('cb+ca "cheute et pincé" when rising when dotted scope chord : on beat, -1 0');
    expect(problems).toEqual([]);
    expect(chord?.args[0]).toMatchObject({ kind: 'names', names: [{ text: 'cb' }, { text: 'ca' }] });
    expect(chord?.clauses.map(({ name, args }) => `${name} ${args.map((arg) => 'text' in arg && arg.text)}`)).toEqual([
      'when rising',
      'when dotted',
      'scope chord',
    ]);
  });

  it('knows conditions of several words', () => {
    for (const condition of [
      'before rest',
      'before higher',
      'before lower',
      'before rising third',
      'slurred from above',
    ]) {
      const { row: one, problems } = row(`cb when ${condition} : on beat, +1 0`);
      expect(problems).toEqual([]);
      expect(one?.clauses[0]?.args[0]).toMatchObject({ kind: 'word', text: condition });
    }
  });

  it('without a recipe is told so', () => {
    expect(row('zz "shake"').problems.map(({ code, slots }) => sentence(code, slots))).toEqual([
      'Something is missing after `table row`: `:` and a recipe.',
    ]);
  });

  it('that is broken leaves the others whole', () => {
    const { statement, problems } = parseStatement('table house\nzz : nonsense\nca : on beat, 0 -1 0', [0, 12, 26]);
    expect(problems.map(({ code }) => code)).toEqual(['recipe-word', 'missing-argument']);
    expect(statement.rows).toHaveLength(2);
    expect(steps(statement.rows[1]?.recipe?.phrases[0])).toBe('0 -1 0');
  });
});

describe('a slip in a recipe', () => {
  it.each([
    ['on beat, (+1 0) repeatd, hold', 'on beat, (+1 0) repeated, hold'],
    ['on beet, 0 -1 0', 'on beat, 0 -1 0'],
    ['on beat, +1 0 repeated', 'on beat, (+1 0) repeated'],
    ['on beat, (+1 0 repeated', 'on beat, (+1 0) repeated'],
    ['on beat, (+1 0)', 'on beat, (+1 0) repeated'],
    ['on beat, (+1 0) repeated at 11 a secnd', 'on beat, (+1 0) repeated at 11 a second'],
    ['on beat,0 -1 0', 'on beat, 0 -1 0'],
    ['on beat, 0,-1', 'on beat, 0, -1'],
    ['on beat, 0 -1 0 hold', 'on beat, 0 -1 0, hold'],
    ['on beat 0 -1 0', 'on beat, 0 -1 0'],
    ['0 -1 0, hold', 'on beat, 0 -1 0, hold'],
    ['on beat, (1 0) repeated', 'on beat, (+1 0) repeated'],
  ])('%s is mended to %s', (wrong, right) => {
    expect(mended(wrong)).toBe(right);
    expect(codes(mended(wrong))).toEqual([]);
  });

  it.each([
    ['on beat, 0, before beat', 'recipe-start-first'],
    ['on beat, 0, extends zz', 'recipe-extends-first'],
    ['on beat, 0, unresolved "why"', 'recipe-unresolved-alone'],
    ['on beat, rest, 0', 'recipe-ended'],
    ['on beat, hold, +1, hold', 'recipe-ended'],
    ['on beat, spread', 'missing-argument'],
    ['on beat, spread sideways', 'missing-argument'],
    ['on beat, 0 for 3/2', 'share-out-of-range'],
    ['on beat, 0 for 0/2', 'share-out-of-range'],
    ['on beat, hold 1/0', 'share-out-of-range'],
    ['on beat, +8 0', 'number-out-of-range'],
    ['on beat, 0 at 100 a second', 'number-out-of-range'],
    ['on beat, 0 at 33', 'wrong-argument'],
    ['on beat, 0 for', 'missing-argument'],
    ['on beat, 0 at', 'missing-argument'],
    ['on beat, 0 at 11 a', 'missing-argument'],
    ['on beat, ()', 'missing-argument'],
    ['unresolved', 'missing-argument'],
    ['extends', 'missing-argument'],
    ['on beat', 'missing-argument'],
    ['', 'missing-argument'],
  ])('%s is %s', (text, code) => {
    expect(codes(text)[0]).toBe(code);
  });
});
