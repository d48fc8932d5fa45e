/** How long it takes until something happens, in processes of their own that take turns. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { generateScore } from './generateScore';
import { type Line, median, ms } from './measure';

function errorOutput(args: readonly string[]): string {
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`node ${args.join(' ')}: ${stderr}`);
  return stderr;
}

/** Says at its end how much of the processor's time a process has taken, in microseconds. */
const TELLS_USAGE = `
process.on('exit', () => {
  const { user, system } = process.cpuUsage();
  require('node:fs').writeSync(2, '\\n' + (user + system));
});`;

/** Milliseconds of the processor's time that a process takes from its very start: a busy machine does not count. */
const taken = (preload: string, args: readonly string[]): number =>
  Number(
    errorOutput(['--require', preload, ...args])
      .split('\n')
      .at(-1),
  ) / 1000;

/**
 * @param folder where the bundled parser lies (`parse.mjs`); a small file is written there
 * @param cli the bundled command line
 */
export function startTimes(folder: string, cli: string, rounds: number): Line[] {
  const file = join(folder, 'small.bent');
  writeFileSync(file, generateScore(1000));
  const preload = join(folder, 'usage.cjs');
  writeFileSync(preload, TELLS_USAGE);
  const script = `
    const { parseFile } = await import(${JSON.stringify(pathToFileURL(join(folder, 'parse.mjs')).href)});
    parseFile(${JSON.stringify(generateScore(1000))});`;
  const times = { parser: [] as number[], proof: [] as number[], module: [] as number[], bare: [] as number[] };
  for (let round = 0; round < rounds; round++) {
    times.module.push(taken(preload, ['--input-type=module', '-e', '0']));
    times.parser.push(taken(preload, ['--input-type=module', '-e', script]));
    times.bare.push(taken(preload, ['-e', '0']));
    times.proof.push(taken(preload, [cli, 'proof', file]));
  }
  const parser = median(times.parser) - median(times.module);
  const above = median(times.proof) - median(times.bare);
  return [
    { what: 'bundled parser: import and first parse, to 60 ms', measured: ms(parser), ratio: parser / 60, wished: 1 },
    { what: 'node -e 0', measured: ms(median(times.bare)) },
    { what: 'bentside proof above that, to 150 ms', measured: ms(above), ratio: above / 150, wished: 1 },
  ];
}
