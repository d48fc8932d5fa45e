/** What the extension says of itself in package.json. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../grammar/findings/catalogue';
import manifest from '../../package.json';
import texts from '../../package.nls.json';
import { usualSettings } from '../../server/features/protocol';

const ROOT = join(import.meta.dirname, '../..');
const clientText = readdirSync(join(ROOT, 'client'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(join(ROOT, 'client', name), 'utf8'))
  .join('\n');
const { contributes } = manifest;
const properties: Readonly<Record<string, { readonly default: unknown; readonly scope: string }>> =
  contributes.configuration.properties;

describe('the extension', () => {
  it('has a text for each of its titles and descriptions, and no other', () => {
    const used = [...JSON.stringify(contributes).matchAll(/"%([^%"]+)%"/g)].map(([, key]) => key);
    expect([...new Set(used)].sort()).toEqual(Object.keys(texts).sort());
  });

  it('offers the commands that it registers', () => {
    const registered = [...clientText.matchAll(/^\s+'(bentside\.\w+)':/gm)].map(([, name]) => name);
    expect(contributes.commands.map(({ command }) => command).sort()).toEqual(registered.sort());
  });

  it('takes no key of the editor', () => {
    expect(manifest.contributes).not.toHaveProperty('keybindings');
  });

  it('has the settings that the server knows, with what is usual there, each for every folder by itself', () => {
    const flat = (value: object, path: string): [string, unknown][] =>
      Object.entries(value).flatMap(([key, inner]) => {
        const name = `${path}.${key}`;
        const isTable = typeof inner === 'object' && Object.keys(inner).length > 0;
        return isTable ? flat(inner, name) : [[name, inner] as [string, unknown]];
      });
    for (const [name, usual] of flat(usualSettings, 'bentside')) {
      expect(properties[name]?.default, name).toEqual(usual);
      expect(properties[name]?.scope, name).toBe('resource');
    }
  });

  it('has all files that it names', () => {
    const named = [...JSON.stringify(manifest).matchAll(/"(?:\.\/)?((?:client|syntaxes)\/[^"*]+\.\w+)"/g)];
    expect(named.length).toBeGreaterThan(8);
    expect(named.map(([, path = '']) => path).filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
  });

  it('reads the lines of bentside proof into the Problems view', () => {
    const [pattern] = contributes.problemPatterns;
    const match = new RegExp(pattern?.regexp ?? '').exec('a b/Air 1.bent:12:7 error bar-too-short: The bar is short.');
    expect(match?.slice(1)).toEqual(['a b/Air 1.bent', '12', '7', 'error', 'bar-too-short', 'The bar is short.']);
    expect(Object.keys(catalogue).every((code) => /^[a-z0-9-]+$/.test(code))).toBe(true);
  });

  it('works in folders that are not trusted and in those without a disk', () => {
    expect(manifest.capabilities).toEqual({ untrustedWorkspaces: { supported: true }, virtualWorkspaces: true });
  });

  it('hands every text that it shows to translators', () => {
    const shown = [...clientText.matchAll(/l10n\.t\(\s*'((?:[^'\\]|\\.)*)'/g)].map(([, text]) => text);
    const path = join(ROOT, 'client/l10n/bundle.l10n.json');
    const bundle = JSON.parse(readFileSync(path, 'utf8')) as Record<string, string>;
    expect(Object.keys(bundle)).toEqual([...new Set(shown)].sort());
  });
});
