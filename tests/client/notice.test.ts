/** What the bundles contain is told. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const read = (path: string): string => readFileSync(join(import.meta.dirname, '../..', path), 'utf8');

it('NOTICE.md names every package that a bundle contains, with its licence', () => {
  const packages = JSON.parse(read('dist/packages.json')) as readonly string[];
  const notice = read('NOTICE.md');
  expect(packages).toContain('chevrotain');
  for (const name of packages) {
    const { license } = JSON.parse(read(`node_modules/${name}/package.json`)) as { readonly license: string };
    expect(notice, name).toMatch(new RegExp(`(?<![\\w/-])${name.replace('/', '\\/')}(?![\\w-])`));
    expect(notice, `${name}: ${license}`).toContain(license.replace(/^SEE LICENSE.*$/, ''));
  }
});

it('the licences of the engraver, whose package brings no text, lie here in full', () => {
  const [lesser, general] = ['LGPL-3.0', 'GPL-3.0'].map((name) => read(`server/engraving/licences/${name}.txt`));
  expect(lesser).toMatch(/^\s*GNU LESSER GENERAL PUBLIC LICENSE\s+Version 3, 29 June 2007/);
  expect(general).toMatch(/^\s*GNU GENERAL PUBLIC LICENSE\s+Version 3, 29 June 2007/);
  expect(lesser).toContain('6. Revised Versions of the GNU Lesser General Public License');
  expect(general).toContain('END OF TERMS AND CONDITIONS');
});
