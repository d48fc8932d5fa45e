import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bentside, memoryHost } from '../helpers/memoryHost';

const score = (bars: string): string => `bentside 1
title "Gavotte"
source K "Thornmere Keyboard Book"
source L "A loose leaf"
reading plain "As the loose leaf has it"
  takes L
voice dessus lines 5
system  dessus G2  meter C
  dessus | ${bars}
`;

const SOUND = score('1 c5 | 1 d |');
/** Three crotchets where the meter asks for four. */
const SHORT = score('1 c5 | 2. d | 1 e |');

describe('bentside', () => {
  it('says what it can do', async () => {
    for (const flag of ['--help', '-h']) {
      const { code, out } = await bentside(memoryHost(), flag);
      expect(code).toBe(0);
      for (const name of ['proof', 'export', 'align', 'signs', 'help', 'demo'])
        expect(out).toContain(`bentside ${name}`);
    }
    expect(await bentside(memoryHost())).toMatchObject({ code: 2, out: '' });
  });

  it('names the nearest command after a slip', async () => {
    expect(await bentside(memoryHost(), 'prof', 'a.bent')).toEqual({
      code: 2,
      out: '',
      say: 'There is no command “prof”, but proof, export, align, compare, report, signs, tune, help, demo. Did you mean proof?\n',
    });
  });

  it('explains the options of a command', async () => {
    const { code, out } = await bentside(memoryHost(), 'export', '--help');
    expect(code).toBe(0);
    expect(out).toMatch(/--as musicxml\|mxl\|mei\|json\|midi\|wav\|bent\|svg/);
    expect(await bentside(memoryHost(), 'export')).toMatchObject({ code: 2 });
    expect((await bentside(memoryHost(), 'export', 'a.bent', '--red', 'x')).say).toContain('There is no option --red.');
  });
});

describe('bentside proof', () => {
  it('is silent about a sound score', async () => {
    expect(await bentside(memoryHost({ 'a.bent': SOUND }), 'proof', 'a.bent')).toEqual({
      code: 0,
      out: '',
      say: '1 file: no findings\n',
    });
  });

  it('gives counsel on the music, and leaves it out where it is not wished for', async () => {
    const parallel = `${SOUND.replace('voice dessus lines 5', 'voice dessus\nvoice basse')}  basse | 1 c3 | d |\n`;
    const host = memoryHost({ 'a.bent': parallel });
    expect((await bentside(host, 'proof', 'a.bent')).out).toContain(
      'hint consecutive-perfects: Consecutive octaves dessus/basse',
    );
    expect((await bentside(host, 'proof', 'a.bent', '--no-counsel')).out).not.toContain('consecutive-perfects');
  });

  it('names file, line, column, level, code and sentence of each finding', async () => {
    const { code, out } = await bentside(memoryHost({ 'a.bent': SHORT }), 'proof', 'a.bent');
    expect(code).toBe(1);
    expect(out).toMatch(/^a\.bent:9:\d+ error [a-z-]+: .+\.\n$/);
  });

  it('goes on past a file that is not there, and says that it could not do all', async () => {
    const { code, out, say } = await bentside(memoryHost({ 'b.bent': SHORT }), 'proof', 'a.bent', 'b.bent');
    expect(code).toBe(2);
    expect(say).toContain('a.bent: there is no such file\n');
    expect(out).toMatch(/^b\.bent:9:/);
  });

  it('counts the files that it could read, and none where there was none', async () => {
    expect(await bentside(memoryHost(), 'proof', 'a.bent')).toEqual({
      code: 2,
      out: '',
      say: 'a.bent: there is no such file\n',
    });
    expect((await bentside(memoryHost({ 'b.bent': SHORT }), 'proof', 'a.bent', 'b.bent')).say).toContain(
      '\n1 file: 1 error',
    );
  });

  it('takes patterns, each file once, and says which pattern fits nothing', async () => {
    const host = memoryHost({ 'a.bent': SHORT, 'b.bent': SHORT });
    const { out } = await bentside(host, 'proof', 'b.bent', '*.bent');
    expect(out.split('\n').map((line) => line[0])).toEqual(['b', 'a', undefined]);
    const { code, say } = await bentside(host, 'proof', 'suites/*.bent');
    expect(code).toBe(2);
    expect(say).toContain('suites/*.bent: no file is called so, or fits the pattern\n');
  });

  it('reads standard input under the name given', async () => {
    expect((await bentside(memoryHost({}, SHORT), 'proof', '-')).out).toMatch(/^standard-input\.bent:9:/);
    expect((await bentside(memoryHost({}, SHORT), 'proof', '-', '--name', 'gavotte.bent')).out).toMatch(
      /^gavotte\.bent:9:/,
    );
  });

  it('shows only what is as grave as wished, and still ends with 1 for an error', async () => {
    const marked = `\ufeff${SHORT}`;
    const { out: all } = await bentside(memoryHost({ 'a.bent': marked }), 'proof', 'a.bent');
    expect(all).toContain('byte-order-mark');
    const { code, out } = await bentside(memoryHost({ 'a.bent': marked }), 'proof', 'a.bent', '--level', 'error');
    expect(code).toBe(1);
    expect(out).not.toContain('byte-order-mark');
    expect((await bentside(memoryHost({ 'a.bent': SOUND }), 'proof', 'a.bent', '--level', 'grave')).code).toBe(2);
  });

  it('gives a line of JSON for each file', async () => {
    const host = memoryHost({ 'a.bent': SHORT, 'b.bent': SOUND });
    const { code, out } = await bentside(host, 'proof', 'a.bent', 'b.bent', 'c.bent', '--json');
    expect(code).toBe(2);
    const files = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(files).toMatchObject([
      {
        schema: 'bentside.proof/1',
        file: 'a.bent',
        findings: [{ level: 'error', file: 'a.bent', range: { start: { line: 9 } } }],
      },
      { schema: 'bentside.proof/1', file: 'b.bent', findings: [] },
      { schema: 'bentside.proof/1', file: 'c.bent', failure: 'there is no such file' },
    ]);
  });

  it('prints no field in JSON that the reference does not name, and every one that it does', async () => {
    const reference = readFileSync(join(import.meta.dirname, '../../grammar/REFERENCE.md'), 'utf8');
    const table = reference.split('**For programs.**')[1]?.split('How a command ends')[0] ?? '';
    const named = [...table.matchAll(/`([a-z]+)(?:\[\])?`/g)].map(([, field]) => field);
    // A bar that is short in one reading, a name that is used twice, and a sign of which the table is sure.
    const several = score("1 c5'zz | <L: 2. d ; K: 1 d> | 1 e |").replace(
      'reading',
      'signs anglebert-1689\nvoice dessus\nreading',
    );
    const { out } = await bentside(
      memoryHost({ 'a.bent': several, 'b.bent': SHORT }),
      'proof',
      'a.bent',
      'b.bent',
      'c.bent',
      '--json',
      '--decisions',
    );
    const fields = new Set<string>();
    JSON.parse(`[${out.trim().split('\n').join(',')}]`, (key, value) => {
      if (/^[a-z]+$/.test(key)) fields.add(key);
      return value;
    });
    expect([...fields].sort()).toEqual([...new Set(named)].sort());
  });

  // SARIF 2.1.0 (OASIS, 2020): 3.13 (log), 3.14 (run), 3.27 (result: level 3.27.10), 3.30 (region, from 1; 3.30.6).
  it('gives a log in SARIF', async () => {
    const { code, out } = await bentside(memoryHost({ 'Suite 1.bent': SHORT }), 'proof', 'Suite 1.bent', '--sarif');
    expect(code).toBe(1);
    const log = JSON.parse(out);
    expect(log.version).toBe('2.1.0');
    const [run] = log.runs;
    expect(run.columnKind).toBe('utf16CodeUnits');
    const [result] = run.results;
    expect(run.tool.driver.rules[result.ruleIndex].id).toBe(result.ruleId);
    expect(['none', 'note', 'warning', 'error']).toContain(result.level);
    expect(result.locations[0].physicalLocation).toMatchObject({
      artifactLocation: { uri: 'Suite%201.bent' },
      region: { startLine: 9 },
    });
    expect((await bentside(memoryHost(), 'proof', 'a.bent', '--sarif', '--json')).code).toBe(2);
  });

  it('never lets a file write to the terminal', async () => {
    const host = memoryHost({ 'a.bent': 'bentside 1\n\u001b[2Jtitle "x"\n' });
    const { out } = await bentside(host, 'proof', 'a.bent');
    expect(out).not.toContain('\u001b');
  });

  it('finds fault with what is no score at all, and never breaks', async () => {
    for (const text of [
      '',
      '\n',
      '\u0000\u0001',
      '{"a": 1}',
      '<<<<{{{{((((',
      '| | | |',
      'system\n  | c5',
      'é'.repeat(10_000),
    ]) {
      const { code } = await bentside(memoryHost({ 'a.bent': text }), 'proof', 'a.bent');
      expect([0, 1]).toContain(code);
    }
  });
});

describe('bentside export', () => {
  it('sends one text to standard output', async () => {
    const { code, out, say } = await bentside(memoryHost({ 'a.bent': SOUND }), 'export', 'a.bent', '--as', 'json');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ file: 'a.bent', reading: 'written' });
    expect(say).toBe('');
  });

  it('writes MusicXML', async () => {
    const { out } = await bentside(memoryHost({ 'a.bent': SOUND }), 'export', 'a.bent', '--as', 'musicxml');
    expect(out).toMatch(/^<\?xml version="1\.0"/);
    expect(out).toContain('<score-partwise version="4.0">');
  });

  it('writes signs as notes by a table, and says what print rounds', async () => {
    const host = memoryHost({ 'a.bent': SOUND.replace('c5', "c5'zz") });
    const as = ['export', 'a.bent', '--as', 'musicxml'];
    const { out: plain } = await bentside(host, ...as);
    const { out, say } = await bentside(host, ...as, '--ornaments', 'full', '--table', 'anglebert-1689');
    const notesIn = (text: string): number => text.split('<note>').length;
    expect(notesIn(out)).toBeGreaterThan(notesIn(plain));
    expect(say).toContain('ornament-printed');
    expect((await bentside(host, ...as, '--ornaments', 'full')).say).toContain('ornaments-no-table');
    expect((await bentside(host, ...as, '--ornaments', 'fall')).say).toContain('Did you mean full?');
  });

  it('tells once what several readings have alike, and in which where not all have it', async () => {
    const readings = 'reading early\n  signs couperin-1713\nreading late\n  signs rameau-1724\n';
    const text = SOUND.replace('voice dessus', `${readings}voice dessus`).replace('c5', "c5'zz");
    const as = ['export', 'a.bent', '--as', 'json', '--reading', 'all', '--out', 'out'];
    const { say } = await bentside(memoryHost({ 'a.bent': text }), ...as);
    const told = say.split('\n').filter((line) => line.includes(' info '));
    expect(new Set(told).size).toBe(told.length);
    expect(told.filter((line) => line.includes('tempo-assumed'))).toEqual([
      expect.stringContaining('In early, late: Signs are played at 60 crotchets a minute'),
    ]);
  });

  it('speaks of small notes as such, and of signs by their names', async () => {
    const text = score("{small 8 b4} 1 c5 | 1 d'zz |");
    const as = ['--as', 'musicxml', '--ornaments', 'full', '--table', 'couperin-1713'];
    const { say } = await bentside(memoryHost({ 'a.bent': text }), 'export', 'a.bent', ...as);
    expect(say).toContain('Written as notes in bar 1, in standard values: the small notes, by couperin-1713;');
    expect(say).toMatch(/Written as notes in bar 2, in standard values: the sign zz \(.*, couperin-1713\);/);
  });

  it('puts what is no text beside the score, and says where', async () => {
    const host = memoryHost({ 'suites/a.1.bent': SOUND });
    const { code, out, say } = await bentside(host, 'export', 'suites/a.1.bent', '--as', 'mxl');
    expect([code, out]).toEqual([0, '']);
    expect(say).toContain('suites/a.1.mxl: written, reading written\n');
    // "PK": the signature of a ZIP archive (APPNOTE 6.3, 4.3.7), as MusicXML 4.0 asks of a compressed file.
    expect((host.files.get('/home/suites/a.1.mxl') as Uint8Array).slice(0, 2)).toEqual(new Uint8Array([0x50, 0x4b]));
  });

  it('puts several files beside their scores, or into the folder named without mixing them up', async () => {
    const host = memoryHost({ 'one/a.bent': SOUND, 'two/a.bent': SOUND });
    expect((await bentside(host, 'export', '*.bent', '--as', 'json')).code).toBe(0);
    expect([...host.files.keys()]).toEqual(expect.arrayContaining(['/home/one/a.json', '/home/two/a.json']));
    expect((await bentside(host, 'export', '*.bent', '--as', 'json', '--out', 'out')).code).toBe(0);
    expect([...host.files.keys()]).toEqual(expect.arrayContaining(['/home/out/one/a.json', '/home/out/two/a.json']));
  });

  it('never writes over another score of the batch', async () => {
    const host = memoryHost({ 'a.bent': SOUND, 'a.plain.bent': SOUND });
    const { code, say } = await bentside(
      host,
      'export',
      'a.plain.bent',
      'a.bent',
      '--as',
      'json',
      '--reading',
      'all',
      '--out',
      'out',
    );
    expect(code).toBe(1);
    expect(say).toContain('out/a.plain.json: not written over; another score of this batch has that name\n');
    expect(`${host.files.get('/home/out/a.plain.json')}`).toContain('"file": "a.plain.bent"');
    const own = memoryHost({ 'a.bent': SOUND, 'a.json': 'not mine' });
    expect((await bentside(own, 'export', 'a.bent', 'a.json', '--as', 'json')).code).toBe(1);
    expect(own.files.get('/home/a.json')).toBe('not mine');
  });

  it('writes each reading to a file of its own', async () => {
    const host = memoryHost({ 'a.bent': SOUND });
    const { code, say } = await bentside(host, 'export', 'a.bent', '--as', 'json', '--reading', 'all', '--out', 'out');
    expect(code).toBe(0);
    expect(say.split('\n')).toEqual([
      'out/a.json: written, reading written',
      'out/a.plain.json: written, reading plain',
      'out/a.K.json: written, reading K',
      'out/a.L.json: written, reading L',
      '',
    ]);
  });

  it('names the readings that there are when asked for another', async () => {
    const { code, out, say } = await bentside(
      memoryHost({ 'a.bent': SOUND }),
      'export',
      'a.bent',
      '--as',
      'json',
      '--reading',
      'plian',
    );
    expect([code, out]).toEqual([1, '']);
    expect(say).toBe('a.bent: it has no reading or witness “plian”, but written, plain, K, L. Did you mean plain?\n');
  });

  it('says of a text in UTF-16 that it cannot be read, not that it lacks the reading which it declares', async () => {
    // The Unicode Standard, D98 (UTF-16): bytes without a mark, read as UTF-8.
    const host = memoryHost({ 'a.bent': new TextDecoder().decode(Buffer.from(SOUND, 'utf16le')) });
    const exported = await bentside(host, 'export', 'a.bent', '--as', 'bent', '--reading', 'L', '--leave-gaps');
    expect([exported.code, exported.out]).toEqual([1, '']);
    expect(exported.say).toMatch(/^a\.bent:1:2 error not-utf8: .*\na\.bent: not exported, for it cannot be read\n$/);
    for (const words of [
      ['compare', 'a.bent'],
      ['compare', 'a.bent', 'K', 'L'],
      ['tune', 'a.bent'],
    ])
      expect(await bentside(host, ...words)).toMatchObject({
        code: 2,
        out: '',
        say: expect.stringMatching(/^a\.bent:1:2 error not-utf8: .*\n$/),
      });
  });

  it('tunes by a text of which but one sign cannot be read, and says of it what reading it has not', async () => {
    // The Unicode Standard, U+FFFD, for the é of a comment in ISO 8859-1.
    const host = memoryHost({ 'a.bent': SOUND.replace('\n', '\n// caf\ufffd\n') });
    expect((await bentside(host, 'tune', 'a.bent')).code).toBe(0);
    expect((await bentside(host, 'export', 'a.bent', '--as', 'bent', '--reading', 'plian')).say).toContain('“plian”');
  });

  it('writes nothing of a score with errors, unless its broken bars may be left empty', async () => {
    const host = memoryHost({ 'a.bent': SHORT, 'b.bent': SOUND });
    const refused = await bentside(host, 'export', 'a.bent', 'b.bent', '--as', 'json');
    expect(refused.code).toBe(1);
    expect(refused.say).toContain('a.bent: not exported, because of 1 error; --leave-gaps exports what is sound\n');
    expect(refused.say).toContain('1 of 2 files not exported, or not wholly: a.bent\n');
    expect([...host.files.keys()]).toEqual(['/home/a.bent', '/home/b.bent', '/home/b.json']);
    const gaps = await bentside(host, 'export', 'a.bent', '--as', 'json', '--leave-gaps');
    expect(gaps.code).toBe(0);
    expect(gaps.say).toMatch(/^a\.bent:\d+:\d+ \w+ export-gap-left: .*\b2\b/m);
    expect(JSON.parse(gaps.out).pieces[0].bars).toHaveLength(3);
  });

  it('exports the bars asked for, and says when there are none such', async () => {
    const host = memoryHost({ 'a.bent': SOUND });
    const { out } = await bentside(host, 'export', 'a.bent', '--as', 'json', '--bars', '2');
    expect(JSON.parse(out).pieces[0].bars.map(({ number }: { number: string }) => number)).toEqual(['2']);
    const none = await bentside(host, 'export', 'a.bent', '--as', 'json', '--bars', '9-12');
    expect([none.code, none.out]).toEqual([1, '']);
    expect(none.say).toContain('export-no-such-bar');
    expect((await bentside(host, 'export', 'a.bent', '--as', 'json', '--bars', 'nine')).code).toBe(2);
  });

  it('writes a witness into another folder so that it includes what it included', async () => {
    const text = SOUND.replace('voice', 'include "shared/people.bent"\nvoice');
    const host = memoryHost({ 'a.bent': text, 'shared/people.bent': 'source S "Spinet book"\n' });
    await bentside(host, 'export', 'a.bent', '--as', 'bent', '--out', 'out/alone');
    expect(host.files.get('/home/out/alone/a.written.bent')).toContain('include "../../shared/people.bent"');
    expect(await bentside(host, 'proof', 'out/alone/a.written.bent')).toMatchObject({ code: 0 });
  });

  it('refuses a table that nobody knows, and one that would not be looked at', async () => {
    const host = memoryHost({ 'a.bent': SOUND });
    const { code, say } = await bentside(host, 'export', 'a.bent', '--as', 'json', '--table', 'anglebert-1690');
    expect([code, say]).toEqual([1, expect.stringContaining('Did you mean anglebert-1689?')]);
    expect(await bentside(host, 'export', 'a.bent', '--as', 'mei', '--table', 'anglebert-1689')).toMatchObject({
      code: 2,
      say: '--table goes only with --ornaments small|full|above, or with --as midi|wav|html|json.\n',
    });
  });

  it('refuses a tuning that nobody knows, rather than let the score sound in another', async () => {
    const own = SOUND.replace('voice', 'temperament house\n  c-g -1/4 sc\nvoice');
    const host = memoryHost({ 'a.bent': own });
    const as = ['export', 'a.bent', '--as', 'midi', '--out', 'o', '--tuning'];
    const { code, say } = await bentside(host, ...as, 'valloti');
    expect([code, say]).toEqual([1, expect.stringContaining('“valloti”. Did you mean vallotti?')]);
    for (const known of ['vallotti', 'house', 'meantone 1/4 wolf g#-eb'])
      expect((await bentside(host, ...as, known)).code).toBe(0);
  });

  it('asks for a format that there is', async () => {
    expect(await bentside(memoryHost({ 'a.bent': SOUND }), 'export', 'a.bent')).toMatchObject({
      code: 2,
      say: 'Say in which format: --as musicxml|mxl|mei|json|midi|wav|bent|svg|html.\n',
    });
    const { say } = await bentside(memoryHost({ 'a.bent': SOUND }), 'export', 'a.bent', '--as', 'musixml');
    expect(say).toBe(
      '--as is one of musicxml, mxl, mei, json, midi, wav, bent, svg, html, not “musixml”. Did you mean musicxml?\n',
    );
  });
});

describe('bentside export --as svg', () => {
  const TWO_PAGES = `${SOUND}page "2"\nsystem\n  dessus | 1 e5 |\n`;

  it('sends one page to standard output', async () => {
    const { code, out } = await bentside(memoryHost({ 'a.bent': SOUND }), 'export', 'a.bent', '--as', 'svg');
    expect(code).toBe(0);
    expect(out).toMatch(/^<\?xml[^>]*>\s*<svg/);
    expect(out).toContain('data-id="e-1-1-dessus-1.1"');
  });

  it('writes a file for each page of the source, or one for one long system', async () => {
    const host = memoryHost({ 'a.bent': TWO_PAGES });
    expect((await bentside(host, 'export', 'a.bent', '--as', 'svg')).code).toBe(0);
    expect([...host.files.keys()]).toEqual(['/home/a.bent', '/home/a.p1.svg', '/home/a.p2.svg']);
    const line = await bentside(host, 'export', 'a.bent', '--as', 'svg', '--layout', 'line');
    expect([line.code, line.out.match(/data-class="system"/g)?.length]).toEqual([0, 1]);
  });

  it('draws the bars asked for', async () => {
    const host = memoryHost({ 'a.bent': TWO_PAGES });
    const { out } = await bentside(host, 'export', 'a.bent', '--as', 'svg', '--bars', '2');
    expect(out.match(/data-class="measure"/g)).toHaveLength(1);
    expect(out).toContain('data-id="e-1-1-dessus-2.1"');
  });

  it('says so where nobody can draw', async () => {
    const failure = 'cannot draw here: there is no WebAssembly';
    const host = { ...memoryHost({ 'a.bent': SOUND }), engraver: async () => ({ failure }) };
    expect(await bentside(host, 'export', 'a.bent', '--as', 'svg')).toEqual({ code: 2, out: '', say: `${failure}\n` });
  });
});

describe('bentside align', () => {
  const CROOKED = SOUND.replace('| 1 c5 | 1 d |', '|   1 c5    |1 d   |');

  it('lays out a file, and then finds nothing more to do', async () => {
    const host = memoryHost({ 'a.bent': CROOKED });
    expect(await bentside(host, 'align', 'a.bent')).toMatchObject({
      code: 0,
      say: 'a.bent: aligned\n1 file of 1 changed\n',
    });
    const laidOut = host.files.get('/home/a.bent');
    expect(laidOut).not.toBe(CROOKED);
    expect(await bentside(host, 'align', 'a.bent')).toMatchObject({ code: 0, say: '0 files of 1 changed\n' });
    expect(host.files.get('/home/a.bent')).toBe(laidOut);
  });

  it('names what would change on a dry run, and changes nothing', async () => {
    const host = memoryHost({ 'a.bent': CROOKED });
    expect(await bentside(host, 'align', 'a.bent', '--dry')).toMatchObject({ code: 1, out: 'a.bent\n' });
    expect(host.files.get('/home/a.bent')).toBe(CROOKED);
  });

  it('sends standard input to standard output', async () => {
    const { code, out } = await bentside(memoryHost({}, CROOKED), 'align', '-');
    expect(code).toBe(0);
    expect(out).toContain('dessus |');
    expect(out).not.toBe(CROOKED);
  });

  it('leaves a file alone that it could not write back without loss, and a byte order mark where it is', async () => {
    const broken = CROOKED.replace('Gavotte', 'Entr\ufffde');
    const host = memoryHost({ 'a.bent': broken, 'b.bent': `\ufeff${CROOKED}` });
    const { code, say } = await bentside(host, 'align', 'a.bent', 'b.bent');
    expect(code).toBe(1);
    expect(say).toContain('error not-utf8');
    expect(host.files.get('/home/a.bent')).toBe(broken);
    expect(`${host.files.get('/home/b.bent')}`).toMatch(/^\ufeffbentside 1/);
  });
});

describe('bentside help', () => {
  it('shows the page of a finding', async () => {
    const { code, out } = await bentside(memoryHost(), 'help', 'include-missing');
    expect(code).toBe(0);
    expect(out).toMatch(/^include-missing \(error\)\n\n.*\n\n/);
  });

  it('lists all codes', async () => {
    const { code, out } = await bentside(memoryHost(), 'help');
    expect(code).toBe(0);
    expect(out).toMatch(/^include-circle +error/m);
  });

  it('names the nearest code after a slip', async () => {
    const { code, say } = await bentside(memoryHost(), 'help', 'include-mising');
    expect(code).toBe(2);
    expect(say).toBe('No finding has the code “include-mising”. Did you mean include-missing?\n');
  });
});

it.each(['report', 'compare', 'signs', 'export', 'demo'])(
  '%s tells its options, each beside what it does',
  async (name) => {
    const { code, out } = await bentside(memoryHost(), name, '--help');
    expect(code).toBe(0);
    // A value that is one of many may be long; what it does is then said on the next line.
    for (const line of out.split('\n').filter((one) => /^ +\S.* {3}/.test(one)))
      expect(line.search(/\S {3,}\S/)).toBeLessThan(52);
  },
);

describe('bentside demo', () => {
  it('takes no file, and says so', async () => {
    expect(await bentside(memoryHost(), 'demo', 'a.bent')).toMatchObject({ code: 2, out: '' });
  });

  it('proofs a sample, writes its MusicXML into ./out and says so', async () => {
    const host = memoryHost({ 'samples/a.bent': SHORT, 'samples/overture.bent': SOUND });
    const { code, out, say } = await bentside(host, 'demo');
    expect(code).toBe(0);
    expect(out).toContain('The score: /home/samples/overture.bent\n');
    expect(out).toContain('It can be read as: written, plain, K, L\n');
    expect(say).toContain('out/overture.musicxml: written, reading written\n');
    expect(host.files.has('/home/out/overture.musicxml')).toBe(true);
  });

  it('says so where no sample is installed', async () => {
    expect(await bentside(memoryHost(), 'demo')).toMatchObject({
      code: 2,
      say: 'bentside demo: no sample score is installed\n',
    });
  });
});
