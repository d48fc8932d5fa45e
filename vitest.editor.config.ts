import { defineConfig } from 'vitest/config';

/** Tests in a real editor, one after the other: each has a browser of its own and counts on the machine being free. */
export default defineConfig({
  test: {
    include: ['tests/editor/**/*.test.ts'],
    // Beyond the patience of the workbench: what is missed is then told by its name.
    testTimeout: 180_000,
    hookTimeout: 180_000,
    expect: { poll: { timeout: 60_000 } },
    fileParallelism: false,
  },
});
