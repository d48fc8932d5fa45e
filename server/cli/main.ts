#!/usr/bin/env node
/** The entry of the command line. */
import { COULD_NOT } from './command';
import { nodeHost, unwritten } from './host';
import { run } from './run';

/** Whoever reads the output may have seen enough (`| head`): that is no fault. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(process.exitCode);
  process.stderr.write(`standard output: ${unwritten(error)}\n`);
  process.exit(COULD_NOT);
});

try {
  process.exitCode = await run(nodeHost(), process.argv.slice(2));
} catch (error) {
  const what = error instanceof Error ? error.message : String(error);
  process.stderr.write(`bentside: a fault of this program, not of the score: ${what}\n`);
  process.exitCode = COULD_NOT;
}
