/** The page of all signs: as the catalogue and the tables are now, with a picture for all that is drawn. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { signsPage, tableText } from '../../grammar/generate/signsPage';
import { shapes } from '../../grammar/vocabulary/shapes';
import { perform } from '../../server/readings/perform';
import { recipeOf } from '../../server/signs/recipes';
import { signTables } from '../../server/signs/tables';
import { engraver } from '../helpers/engraver';
import { analysed, errors, scoreOf } from '../helpers/music';

const ROOT = join(import.meta.dirname, '../..');

it('is fresh, with all its pictures (else: npm run generate)', async () => {
  for (const { path, text } of signsPage(await engraver())) {
    expect(existsSync(join(ROOT, path)), path).toBe(true);
    expect(readFileSync(join(ROOT, path), 'utf8') === text, path).toBe(true);
  }
});

it('has every shape and every row, leads to no picture that is not there, and is small', async () => {
  const files = new Map((await signsPage(await engraver())).map(({ path, text }) => [path, text]));
  const page = files.get('grammar/SIGNS.md') ?? '';
  expect(shapes.filter(({ short }) => !page.includes(`\`'${short}\``))).toEqual([]);
  expect(page.match(/^\d+\. /gm)).toHaveLength(signTables.flatMap(({ rows }) => rows).length);
  const pictures = [...page.matchAll(/!\[[^\]]*\]\(([^)]*)\)/g)].map(([, path]) => `grammar/${path}`);
  expect(pictures.filter((path) => !files.has(path))).toEqual([]);
  expect(pictures.length).toBe(files.size - 1);
  expect([...files.values()].join('').length).toBeLessThan(700_000);
});

describe.each(signTables.filter(({ rows }) => rows.length > 0).map((table) => [table.table, table] as const))(
  'the picture of %s',
  (name, table) => {
    const analysis = analysed(tableText(table));

    it('is of a sound score with a bar for each row', () => {
      expect(errors(analysis)).toEqual([]);
      expect(scoreOf(analysis).pieces[0]?.bars).toHaveLength(table.rows.length);
    });

    it('plays in each bar that very row, if it is settled how it goes', () => {
      const { events } = perform(scoreOf(analysis), { table: name }).pieces[0] ?? { events: [] };
      const played = table.rows.map((_, index) =>
        [
          ...new Set(
            events
              .filter(({ from: [{ placed }] }) => placed.bar.index === index)
              .flatMap((event) => event.realised?.row ?? []),
          ),
        ].join(),
      );
      const settled = table.rows.map(({ label, recipe }) =>
        recipeOf(recipe).recipe.unresolved === undefined ? label : '',
      );
      expect(played).toEqual(settled);
    });
  },
);

it('is where the reference and the readme lead to', () => {
  for (const file of ['grammar/REFERENCE.md', 'README.md']) {
    expect(readFileSync(join(ROOT, file), 'utf8')).toMatch(/\]\((?:grammar\/)?SIGNS\.md\)/);
  }
});
