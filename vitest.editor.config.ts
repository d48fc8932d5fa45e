import { defineConfig } from 'vitest/config';

/** Tests in a real editor, one after the other: each has a browser of its own and counts on the machine being free. */
export default defineConfig({
  test: { include: ['tests/editor/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 60_000, fileParallelism: false },
});
