/** British spelling in what users read: prose says metre (common practice), what is typed is `meter` and stands in code. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { catalogue } from '../../grammar/findings/catalogue';

const ROOT = join(import.meta.dirname, '../..');
const fileText = (path: string): string => readFileSync(join(ROOT, path), 'utf8');

const WALKTHROUGH = 'client/walkthrough';
const files = [
  'README.md',
  'CHANGELOG.md',
  'grammar/REFERENCE.md',
  'grammar/SIGNS.md',
  'client/l10n/bundle.l10n.json',
  ...readdirSync(join(ROOT, WALKTHROUGH)).map((name) => `${WALKTHROUGH}/${name}`),
];

/** Without what is typed: examples in fences or set in, words in code, the slots of sentences, comments. */
const prose = (text: string): string =>
  text
    .replace(/^```.*?^```|^ {4}[^\n]*/gms, '')
    .replace(/<!--.*?-->/gs, '')
    .replace(/`[^`\n]*`|\{\w+\}/g, '');

const AMERICAN = /\b(?:meters?|(?:eighth|quarter) notes?|measures? of music|colors?|centers?)\b/gi;

it.each(files)('%s is in British words', (path) => {
  expect(prose(fileText(path)).match(AMERICAN)).toBeNull();
});

it('so are the sentences and help pages of findings', () => {
  const all = Object.values(catalogue).map(({ sentence, help }) => `${sentence}\n${help}`);
  expect(prose(all.join('\n\n')).match(AMERICAN)).toBeNull();
});
