/** Groups of tests that need a browser. */
import { describe, expect, test } from 'vitest';
import { missing } from './workbench';

/** Without the browser the tests are skipped with one line that says so; where CI is `true` that is a failure. */
export function describeInEditor(name: string, tests: () => void): void {
  if (missing === undefined) describe(name, tests);
  else if (process.env.CI === 'true') test(name, () => expect.fail(missing));
  else {
    console.warn(missing);
    describe.skip(name, tests);
  }
}
