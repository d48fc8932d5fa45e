/** Every snippet, filled in as it is offered, is sound notation. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { statements } from '../../grammar/vocabulary/statements';
import { analysed, HEAD } from '../helpers/music';

interface Snippet {
  readonly prefix: string;
  readonly description: string;
  readonly body: string | readonly string[];
}

const file = join(import.meta.dirname, '../../syntaxes/bentside.code-snippets.json');
const snippets = Object.entries(JSON.parse(readFileSync(file, 'utf8')) as Record<string, Snippet>);

/** The text that stands when nothing is typed over: of a list the first word. */
const filled = (body: Snippet['body']): string =>
  [body]
    .flat()
    .join('\n')
    .replace(/\$\{\d+\|([^,|]*)[^}]*\}/g, '$1')
    .replace(/\$\{\d+:([^}]*)\}/g, '$1')
    .replace(/\$\d/g, '');

const isWholeFile = (text: string): boolean => text.startsWith('bentside');
const isStatement = (text: string): boolean => Object.hasOwn(statements, /^\w*/.exec(text)?.[0] ?? '');

/** The file in which a snippet stands: by itself, under the usual head, or in a lane whose bar is lost after it. */
function asFile(text: string): string {
  if (isWholeFile(text)) return text;
  if (!isStatement(text)) return `${HEAD}system upper G2 lower F4 meter C\n  dessus | ${text} lost ? |\n`;
  const named = text.split('\n').map((line) => line.split(' ', 2).join(' '));
  const head = HEAD.split('\n').filter((line) => !named.includes(line.split(' ', 2).join(' ')));
  return `${head.join('\n')}${text}\n`;
}

describe('the snippets', () => {
  for (const [name, { body }] of snippets) {
    it(`give sound notation: ${name}`, () => {
      const findings = analysed(asFile(filled(body))).findings();
      expect(findings.filter(({ level }) => level === 'error').map(({ message }) => message)).toEqual([]);
    });
  }
});
