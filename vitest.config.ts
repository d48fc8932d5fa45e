import { defineConfig } from 'vitest/config';

export default defineConfig({
  // Tests in a real editor are run by themselves (vitest.editor.config.ts).
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/editor/**'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    pool: 'threads',
  },
});
