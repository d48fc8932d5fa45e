/** The bundles as their users meet them: a process and a package. */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  closeSync,
  existsSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bin, version } from '../../package.json';

const ROOT = join(import.meta.dirname, '../..');
const CLI = join(ROOT, 'dist/cli.js');

const SOUND = `bentside 1
voice dessus lines 5
system  dessus G2  meter C
  dessus | 1 c5 | "𝄞 é" 1 d |
`;

let folder = '';
const put = (name: string, text: string | Uint8Array): void => writeFileSync(join(folder, name), text);
const bentside = (argv: readonly string[], input = '') =>
  spawnSync(process.execPath, [CLI, ...argv], { cwd: folder, input, encoding: 'utf8' });

beforeAll(() => {
  // Always built afresh: an older bundle would answer for code that has changed.
  execFileSync(process.execPath, ['esbuild.config.mjs'], { cwd: ROOT, stdio: 'pipe' });
  folder = mkdtempSync(join(tmpdir(), 'bentside '));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the command line as a process', () => {
  it('tells its version', () => {
    expect(bentside(['--version'])).toMatchObject({ status: 0, stdout: `${version}\n`, stderr: '' });
  });

  it.skipIf(process.platform === 'win32')('is a program that a shell can start, as `npx bentside` does', () => {
    const started = spawnSync(join(ROOT, bin.bentside), ['--version'], { cwd: folder, encoding: 'utf8' });
    expect(started).toMatchObject({ status: 0, stdout: `${version}\n`, stderr: '' });
  });

  it('proofs a sound score, a faulty one and one that is not there', () => {
    put('a b.bent', SOUND);
    expect(bentside(['proof', 'a b.bent'])).toMatchObject({ status: 0, stdout: '' });
    expect(bentside(['proof', '-'], SOUND.replace('1 c5', '2 c5 4 d e f'))).toMatchObject({ status: 1 });
    expect(bentside(['proof', 'none.bent'])).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('no such file'),
    });
  });

  it('shows no trace of the program for a file that is no text', () => {
    put(
      'noise.bent',
      Uint8Array.from({ length: 4096 }, (_, i) => (i * 197) % 256),
    );
    const { status, stdout, stderr } = bentside(['proof', 'noise.bent']);
    expect(status).toBe(1);
    expect(stdout).toContain('not-utf8');
    expect(stdout + stderr).not.toMatch(/^\s+at /m);
    expect(stdout + stderr).not.toContain('a fault of this program');
  });

  it.runIf(process.platform === 'linux')(
    'writes ten minutes of sound to the disk within 150 MB of memory',
    () => {
      const bars = (bar: string): string => Array.from({ length: 150 }, () => bar).join(' | ');
      put(
        'long.bent',
        `bentside 1
pitch a4 = 415
tempo 4 at 60
instrument harpsichord compass g1-d6
  manual only stops 8 4
voice dessus lines 5
voice basse lines 5
system dessus C1 basse F4 meter C
  dessus | ${bars('16 c5 d e f g f e d c5 d e f g f e d')} |||
  basse  | ${bars('2 c3-e-g g2-d3-g')} |||
`,
      );
      // The system's own mark, for `maxRSS` of a process may be that of the process which started it.
      const tellingMemory = `data:text/javascript,import fs from 'node:fs';process.on('exit',()=>console.error(/VmHWM:\\s+(\\d+)/.exec(fs.readFileSync('/proc/self/status','utf8'))[1]))`;
      const argv = ['--import', tellingMemory, CLI, 'export', 'long.bent', '--as', 'wav', '--out', 'heard'];
      const { status, stderr } = spawnSync(process.execPath, argv, { cwd: folder, encoding: 'utf8' });
      expect(status).toBe(0);
      // Ten minutes of 44,100 samples, two bytes each; memory in kilobytes.
      expect(statSync(join(folder, 'heard/long.wav')).size).toBeGreaterThan(600 * 88_200);
      expect(Number(stderr.trim().split('\n').at(-1)) / 1000).toBeLessThan(150);
    },
    120_000,
  );

  it('exports into a folder that it makes, each file whole', () => {
    put('one.bent', SOUND);
    const { status, stderr } = bentside(['export', 'one.bent', '--as', 'musicxml', '--out', 'made/here']);
    expect([status, stderr]).toEqual([0, expect.stringContaining('made/here/one.musicxml: written')]);
    expect(readdirSync(join(folder, 'made/here'))).toEqual(['one.musicxml']);
    expect(readFileSync(join(folder, 'made/here/one.musicxml'), 'utf8')).toMatch(/<\/score-partwise>\s*$/);
  });

  it('reads a score that includes another below its folder', () => {
    put('house.bent', 'bentside 1\nsource K "Thornmere Keyboard Book"\n');
    put('with.bent', SOUND.replace('voice', 'include "house.bent"\nvoice'));
    expect(bentside(['proof', 'with.bent'])).toMatchObject({ status: 0, stdout: '' });
    put('climbs.bent', SOUND.replace('voice', 'include "../house.bent"\nvoice'));
    expect(bentside(['proof', 'climbs.bent']).stdout).toMatch(/^climbs\.bent:2:9 error include-refused:/);
  });

  it('does not mind a reader who stops reading', () => {
    for (let i = 0; i < 50; i++) put(`bad-${i}.bent`, SOUND.replace('1 c5', `${'zz '.repeat(150)}`));
    const { stdout, stderr } = spawnSync('sh', ['-c', `"${process.execPath}" "${CLI}" proof bad-*.bent | head -n 1`], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect(stdout.split('\n')).toHaveLength(2);
    expect(stderr).not.toMatch(/EPIPE|^\s+at /m);
  });

  it.skipIf(!existsSync('/dev/full'))('says that its output could not be written', () => {
    put('a.bent', SOUND);
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = spawnSync(process.execPath, [CLI, 'export', '--as', 'json', 'a.bent'], {
      cwd: folder,
      stdio: ['ignore', full, 'pipe'],
      encoding: 'utf8',
    });
    closeSync(full);
    expect([status, stderr]).toEqual([2, 'standard output: not written; the disk is full\n']);
  });

  it.skipIf(process.platform === 'win32')('never writes over a score that it was given, under whatever name', () => {
    put('own.bent', SOUND);
    symlinkSync('own.bent', join(folder, 'own.written.bent'));
    const { status, stderr } = bentside(['export', '--as', 'bent', 'own.bent', '--out', '.']);
    expect([status, stderr]).toEqual([1, expect.stringContaining('own.written.bent: not written over')]);
    expect(readFileSync(join(folder, 'own.bent'), 'utf8')).toBe(SOUND);
  });

  it('has a demonstration', () => {
    const anySample =
      existsSync(join(ROOT, 'samples')) && readdirSync(join(ROOT, 'samples')).some((name) => name.endsWith('.bent'));
    const { status, stdout, stderr } = bentside(['demo']);
    if (!anySample) expect([status, stderr]).toEqual([2, expect.stringContaining('no sample')]);
    else expect([status, stdout]).toEqual([0, expect.stringContaining('The score: ')]);
  });
});

describe('the package', () => {
  const script = (code: string) =>
    spawnSync(process.execPath, ['--input-type=module', '--eval', code], { cwd: ROOT, encoding: 'utf8' });

  it('can be imported by its name', () => {
    const code = `
      import { proof, score, timeline, exportMusicXml } from 'bentside';
      const text = ${JSON.stringify(SOUND)};
      const xml = exportMusicXml(score(text), { clefs: 'source', leaveGaps: false }).text;
      const events = timeline(score(text)).timeline.pieces[0].events.length;
      console.log(JSON.stringify([proof(text).findings.length, events, xml.slice(0, 5)]));`;
    expect(script(code)).toMatchObject({ stdout: '[0,2,"<?xml"]\n', stderr: '' });
  });
});
