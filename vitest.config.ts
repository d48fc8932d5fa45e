import { defineConfig } from 'vitest/config';

export default defineConfig({
  // Only an editor has the module itself.
  resolve: { alias: { vscode: `${import.meta.dirname}/tests/helpers/vscode.ts` } },
  // Tests in a real editor are run by themselves (vitest.editor.config.ts, vitest.packaged.config.ts).
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/editor/**', 'tests/packaged/**'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    expect: { poll: { timeout: 20_000 } },
    pool: 'threads',
  },
});
