// Describes the library to TypeScript. The sources import one another without an ending, which a bundler allows and Node's own
// resolution of types does not: the descriptions get their endings here.
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const FOLDER = 'dist/types';

execFileSync(process.execPath, ['node_modules/typescript/lib/tsc.js', '-p', 'tsconfig.build.json'], {
  stdio: 'inherit',
});

for (const name of readdirSync(FOLDER, { recursive: true, encoding: 'utf8' })) {
  if (!name.endsWith('.d.ts')) continue;
  const file = join(FOLDER, name);
  const text = readFileSync(file, 'utf8');
  writeFileSync(file, text.replace(/(\b(?:from|import)\s*\(?\s*['"]\.{1,2}\/[^'"]*?)(?:\.js)?(['"])/g, '$1.js$2'));
}
