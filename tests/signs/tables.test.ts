/** The built-in sign tables as data: whole, readable, and honest about what is not known. */
import { describe, expect, it } from 'vitest';
import { shapeByName } from '../../grammar/vocabulary/shapes';
import { statements } from '../../grammar/vocabulary/statements';
import { recipeOf } from '../../server/signs/recipes';
import { rowsWithInherited, signTableByName, signTables } from '../../server/signs/tables';

const rows = signTables.flatMap(({ table, rows: own }) => own.map((row) => ({ table, row })));

describe('every row of every table', () => {
  it.each(rows.map(({ table, row }) => [`${table}: ${row.label}`, row] as const))(
    '%s has recipes without a slip and says where it is from',
    (_, { recipe, rivals = [], citation, shapes }) => {
      for (const text of [recipe, ...rivals.map((rival) => rival.recipe)]) {
        expect({ text, problems: recipeOf(text).problems }).toEqual({ text, problems: [] });
      }
      expect(citation).not.toBe('');
      expect(rivals.filter(({ advocates }) => advocates === '')).toEqual([]);
      expect(shapes.filter((shape) => shapeByName(shape) === undefined)).toEqual([]);
    },
  );

  it('fits where a table of a score could say that it fits', () => {
    const [part] = statements.table?.rows?.clauses.when?.parts ?? [];
    const words = part?.kind === 'words' ? Object.keys(part.words) : [];
    const conditions = new Set(rows.flatMap(({ row }) => row.when ?? []));
    expect(conditions.size).toBeGreaterThan(0);
    expect([...conditions].filter((condition) => !words.includes(condition))).toEqual([]);
  });

  it('gives other readings names of their own that say nothing else in round brackets', () => {
    for (const { row } of rows) {
      const names = (row.rivals ?? []).map(({ name }) => name);
      expect(new Set(names).size).toBe(names.length);
      expect(names.filter((name) => ['above', 'below', 'after', 'dot', 'from', 'main'].includes(name))).toEqual([]);
    }
  });

  it('plays a spreading only of what is drawn for a chord, or beside a chord', () => {
    const spread = rows.filter(({ row }) => recipeOf(row.recipe).recipe.phrases.some(({ kind }) => kind === 'spread'));
    expect(spread.length).toBeGreaterThan(10);
    const odd = spread.filter(({ row }) => row.shapes.some((shape) => shapeByName(shape)?.drawnFor !== 'chord'));
    expect(odd).toEqual([]);
  });
});

describe('what is not known', () => {
  it('of the table of 1689 is one entry of its twenty-nine', () => {
    const table = signTableByName('anglebert-1689');
    expect(table?.rows).toHaveLength(28);
    expect(table?.missing).toMatch(/^One entry of the source.*not placed/);
  });

  it('is left unresolved, with a reason, and not answered silently (D. Hunter, 1996, on the English strokes)', () => {
    for (const { recipe, rivals } of signTableByName('english-strokes')?.rows ?? []) {
      expect(recipeOf(recipe).recipe.unresolved).not.toBe('');
      expect(recipeOf(recipe).recipe.unresolved).toBeDefined();
      expect(rivals?.length).toBeGreaterThan(1);
    }
  });

  it('of the double cadence of 1670 is the order of its notes (Grove, “Ornaments”)', () => {
    const row = signTableByName('chambonnieres-1670')?.rows.find(({ names }) => names.includes('double_cadence'));
    expect(recipeOf(row?.recipe ?? '').recipe.unresolved).toMatch(/two lower auxiliaries/);
  });
});

describe('Le Roux 1705', () => {
  it('plays all signs as d’Anglebert (Grove, “Ornaments”)', () => {
    const [own, base] = [signTableByName('le-roux-1705'), signTableByName('anglebert-1689')];
    expect(own && rowsWithInherited(own)).toEqual(base?.rows);
  });
});
