import { defineConfig } from 'vitest/config';

/** The packaged extension in a real editor (`npm run test:packaged`); no part of `npm test`, since the editor is big. */
export default defineConfig({
  test: { include: ['tests/packaged/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 60_000 },
});
