/** How long it takes until something happens, in processes of their own that take turns. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { generateScore } from './generateScore';
import { type Line, median, ms } from './measure';

function output(args: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`node ${args.join(' ')}: ${stderr}`);
  return stdout;
}

function wall(args: readonly string[]): number {
  const start = performance.now();
  output(args);
  return performance.now() - start;
}

/**
 * @param folder where the bundled parser lies (`parse.mjs`); a small file is written there
 * @param cli the bundled command line
 */
export function startTimes(folder: string, cli: string, rounds: number): Line[] {
  const file = join(folder, 'small.bent');
  writeFileSync(file, generateScore(1000));
  const script = `
    import { readFileSync } from 'node:fs';
    const text = readFileSync(${JSON.stringify(file)}, 'utf8');
    const start = performance.now();
    const { parseFile } = await import(${JSON.stringify(pathToFileURL(join(folder, 'parse.mjs')).href)});
    parseFile(text);
    console.log(performance.now() - start);`;
  const times = { parser: [] as number[], proof: [] as number[], bare: [] as number[] };
  for (let round = 0; round < rounds; round++) {
    times.parser.push(Number(output(['--input-type=module', '-e', script])));
    times.bare.push(wall(['-e', '0']));
    times.proof.push(wall([cli, 'proof', file]));
  }
  const parser = median(times.parser);
  const above = median(times.proof) - median(times.bare);
  return [
    { what: 'bundled parser: import and first parse, to 60 ms', measured: ms(parser), ratio: parser / 60, wished: 1 },
    { what: 'node -e 0', measured: ms(median(times.bare)) },
    { what: 'bentside proof above that, to 150 ms', measured: ms(above), ratio: above / 150, wished: 1 },
  ];
}
