// Makes the engraver's font from the package whose outlines it takes. Bundles generate.ts, which does no I/O.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
/** The package whose outlines the font takes. */
export const FONT_PACKAGE = '@vexflow-fonts/bravura';

const SOURCE = join(here, '../../../node_modules', FONT_PACKAGE);

/** What the font's makers say of its glyphs: boxes and points by SMuFL's names. */
export const fontMetadata = () => JSON.parse(readFileSync(join(SOURCE, 'metadata.json'), 'utf8'));

/** The font's zip file. */
export async function buildFont() {
  const bundled = await build({
    entryPoints: [join(here, 'generate.ts')],
    bundle: true,
    write: false,
    platform: 'node',
    format: 'esm',
    logLevel: 'error',
  });
  const code = Buffer.from(bundled.outputFiles[0].contents).toString('base64');
  const { makeFont } = await import(`data:text/javascript;base64,${code}`);
  const { buffer, byteOffset, byteLength } = readFileSync(join(SOURCE, 'bravura.otf'));
  return makeFont(buffer.slice(byteOffset, byteOffset + byteLength), fontMetadata());
}
