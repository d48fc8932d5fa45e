/** The generated TextMate grammar as an editor reads it: through vscode-textmate and the Oniguruma matcher. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import oniguruma from 'vscode-oniguruma';
import textmate, { type IGrammar } from 'vscode-textmate';

const SCOPE = 'source.bentside';
export const grammarPath = join(import.meta.dirname, '../../syntaxes/bentside.tmLanguage.json');

export interface Coloured {
  readonly text: string;
  readonly start: number;
  /** The innermost scope, without the language's name at its end; empty where nothing but the language is said. */
  readonly scope: string;
}

export async function loadGrammar(): Promise<IGrammar> {
  const wasm = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm');
  await oniguruma.loadWASM(readFileSync(wasm));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve(oniguruma),
    loadGrammar: async () => textmate.parseRawGrammar(readFileSync(grammarPath, 'utf8'), grammarPath),
  });
  const grammar = await registry.loadGrammar(SCOPE);
  if (grammar === null) throw new Error(`no grammar for ${SCOPE}`);
  return grammar;
}

/** What an editor colours in one line. */
export function coloured(grammar: IGrammar, line: string): Coloured[] {
  const { tokens } = grammar.tokenizeLine(line, textmate.INITIAL);
  return tokens
    .map(({ startIndex, endIndex, scopes }) => ({
      text: line.slice(startIndex, endIndex),
      start: startIndex,
      scope: (scopes.length > 1 ? (scopes.at(-1) ?? '') : '').replace(/\.bentside$/, ''),
    }))
    .filter(({ text }) => text.trim() !== '');
}

/** Whether the line after this one is read as if nothing stood before it. */
export const endsItself = (grammar: IGrammar, line: string): boolean =>
  grammar.tokenizeLine(line, textmate.INITIAL).ruleStack.depth === textmate.INITIAL.depth;

/** Milliseconds of processor time to colour a line, of which nothing is kept from an earlier time. */
export function timeToColour(grammar: IGrammar, line: string): number {
  const before = process.cpuUsage();
  grammar.tokenizeLine(line, textmate.INITIAL);
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
