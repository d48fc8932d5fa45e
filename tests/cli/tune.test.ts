/** `bentside tune` against facts that its sheets have to agree with, and what it says to slips. */
import { describe, expect, it } from 'vitest';
import { bentside, memoryHost } from '../helpers/memoryHost';

const SCORE = (tuning: string, more = ''): string => `bentside 1\npitch a4 = 440\ntuning ${tuning}\n${more}stave one
voice dessus one
system one G2 meter C
  dessus | 1 c5 |||
`;

interface Step {
  readonly interval: string;
  readonly beats: number;
  readonly direction: string;
  readonly tunes: string | null;
}

const json = async (...words: string[]) => JSON.parse((await bentside(memoryHost(), 'tune', ...words, '--json')).out);
const step = (steps: readonly Step[], interval: string) => {
  const found = steps.find((one) => one.interval === interval);
  return found && { interval: found.interval, beats: found.beats, direction: found.direction };
};

describe('bentside tune --temperament', () => {
  it('has the cents of Werckmeister’s third and lays it from the fork on (public scale archive, werck3)', async () => {
    const { code, out } = await bentside(memoryHost(), 'tune', '--temperament', 'werckmeister-3', '--pitch', '415');
    expect(code).toBe(0);
    expect(out).toContain('Werckmeister 1691, the third (werckmeister-3), a4 = 415 Hz');
    expect(out).toMatch(/^ {2}f# +588\.270 +900\.000 +0\.00 /m);
    expect(out).toMatch(/^ {2}c +0\.000 +311\.730 +\+11\.73 +248\.438$/m);
    expect(out).toMatch(/^ {2}b-f# +-1\/4 pc +-5\.865 cents$/m);
    // |3 f(d4) − 4 f(a3)| of a quarter comma, 5.865 cents, at 207.5 hertz.
    expect(out).toMatch(/^ {3}2 {2}d4 +a3-d4 +fourth +2\.82 beats a second, wide$/m);
    expect(out).toMatch(/^ {6}proof +g#3-eb4 +fifth +pure$/m);
    expect(out).toContain('unrest is the mean distance of the thirds on tonic, fourth and fifth.\n');
    expect(out).toContain('its maker or a professional tuner knows');
  });
  it('gives each step as data', async () => {
    const { steps, pitch, schema } = await json('--temperament', 'vallotti');
    expect([schema, pitch]).toEqual(['bentside.tuning/1', 415]);
    expect(step(steps, 'f3-a3')).toEqual({ interval: 'f3-a3', beats: 2.81, direction: 'wide' });
    expect(steps[0]).toMatchObject({ interval: 'a3-a4', beats: 0, direction: 'pure', tunes: 'a3' });
  });
  it('beats as the tables of meantone have it', async () => {
    // Computed from the definition: quarter-comma meantone at a4 = 440.
    const { steps } = await json('--temperament', 'meantone 1/4', '--pitch', '440');
    expect(step(steps, 'f3-a3')).toEqual({ interval: 'f3-a3', beats: 0, direction: 'pure' });
    expect(step(steps, 'a3-e4')).toEqual({ interval: 'a3-e4', beats: 2.05, direction: 'narrow' });
    expect(step(steps, 'f3-c4')).toEqual({ interval: 'f3-c4', beats: 1.64, direction: 'narrow' });
    expect(step(steps, 'g3-d4')).toEqual({ interval: 'g3-d4', beats: 1.83, direction: 'narrow' });
  });
  it('takes a pitch standard by its name', async () => {
    expect((await json('--temperament', 'equal', '--pitch', 'A-1')).pitch).toBe(415.305);
  });
  it('tells slips', async () => {
    const host = memoryHost();
    expect((await bentside(host, 'tune', '--temperament', 'valloti')).say).toContain('Did you mean vallotti?');
    expect((await bentside(host, 'tune', '--temperament', 'vallotti', '--pitch', '41')).say).toContain('300 to 600');
    expect(await bentside(host, 'tune', '--temperament', 'meantone 1/4 wolf c-e')).toMatchObject({ code: 2 });
    expect(await bentside(host, 'tune', '--temperament', 'vallotti', '--from', 'none')).toMatchObject({ code: 2 });
    expect(await bentside(host, 'tune', 'none.bent')).toMatchObject({ code: 2 });
  });
  it('lists the temperaments where none is named', async () => {
    const { out, code } = await bentside(memoryHost(), 'tune');
    expect(code).toBe(0);
    expect(out).toMatch(/^sorge-1758 +Sorge 1758$/m);
    expect(out).toMatch(/^meantone 1\/4 /m);
  });
});

describe('bentside tune FILE', () => {
  const OWN = 'temperament house\n  c4-g4 2.0 beats narrow\n  g#-eb rest\nreading soft\n  tuning house\n';
  it('lays the tuning of the score, or of a reading, at its pitch', async () => {
    const host = memoryHost({ 'a.bent': SCORE('vallotti', OWN) });
    expect((await bentside(host, 'tune', 'a.bent')).out).toMatch(/^Vallotti \(vallotti\), a4 = 440 Hz$/m);
    const soft = await bentside(host, 'tune', 'a.bent', '--reading', 'soft', '--pitch', '392');
    expect(soft.out).toMatch(/^house, as the file defines it, a4 = 392 Hz$/m);
    // 3 f(c4) − 4 f(g3) is 3 f(c4) − 2 f(g4): the fourth below beats as the fifth.
    expect(soft.out).toMatch(/g3-c4 +fourth +2\.00 beats a second, wide/);
    expect((await bentside(host, 'tune', 'a.bent', '--reading', 'hard')).say).toContain('written, soft');
    expect((await bentside(host, 'tune', 'a.bent', '--temperament', 'house')).out).toContain('house, as the file');
  });
  it('closes the circle of what is told in beats, or says by how many cents it does not close', async () => {
    const beats = (closing: string): string =>
      SCORE('ear', `temperament ear from vallotti\n  c4-g4 1.0 beats narrow\n${closing}`);
    const host = memoryHost({
      'closed.bent': beats('  g#-eb rest\n'),
      'open.bent': beats('  g#-eb -1/12 pc\n'),
      'unsaid.bent': beats(''),
    });
    const noted = async (file: string) => JSON.parse((await bentside(host, 'tune', file, '--json')).out);
    const sum = ({ fifths }: { fifths: { width: number }[] }) => fifths.reduce((all, { width }) => all + width, 0);
    // One Pythagorean comma, narrow.
    for (const file of ['closed.bent', 'open.bent', 'unsaid.bent'])
      expect(sum(await noted(file))).toBeCloseTo(-23.46, 2);
    expect((await noted('closed.bent')).note).toBe('');
    // 1 beat a second of c4 at 440 is 1200 log2(3 f(c4) / (3 f(c4) - 1)), 2.20 cents, where Vallotti has 3.91.
    expect((await noted('unsaid.bent')).note).toMatch(/^No fifth takes the rest: g#-eb is 1\.7\d cents narrow,/);
    expect((await noted('open.bent')).note).toMatch(/^Its fifths miss the circle by 0\.2\d cents: g#-eb takes them/);
  });
  it('tunes from one score to the next, and moves only what has to move', async () => {
    const host = memoryHost({ 'a.bent': SCORE('meantone 1/4 wolf g#-eb'), 'b.bent': SCORE('meantone 1/4 wolf c#-ab') });
    const { out } = await bentside(host, 'tune', 'a.bent', 'b.bent');
    expect(out).toMatch(/^From meantone 1\/4 wolf g#-eb, a4 = 440 Hz$/m);
    // The lesser diesis, 128/125.
    expect(out).toMatch(/^ {2}g# becomes ab +41\.1 cents up$/m);
    expect(out.match(/ cents (up|down)$/gm)).toHaveLength(1);
    const back = JSON.parse((await bentside(host, 'tune', 'b.bent', 'a.bent', '--json')).out).retuning;
    expect(back.notes).toEqual([{ note: 'g#', was: 'ab', cents: -41.1 }]);
    expect(back.steps).toMatchObject([{ interval: 'g#3-c#4', tunes: 'g#3' }]);
    expect((await bentside(host, 'tune', 'a.bent', 'a.bent', 'b.bent')).code).toBe(0);
    expect((await bentside(host, 'tune', 'a.bent', '--from', 'meantone 1/4')).out).toContain('nothing moves');
  });
  it('says what it had to assume, and knows no temperament that there is not', async () => {
    const bare = SCORE('equal').replace('tuning equal\n', '').replace('pitch a4 = 440\n', '');
    const host = memoryHost({ 'a.bent': bare, 'b.bent': SCORE('valotti') });
    expect((await bentside(host, 'tune', 'a.bent')).say).toBe(
      'a.bent: not stated, and so assumed: equal temperament, a4 = 415\n',
    );
    expect(await bentside(host, 'tune', 'b.bent')).toMatchObject({
      code: 2,
      say: expect.stringContaining('bentside proof'),
    });
  });
  it('moves every string where the pitch is another', async () => {
    const host = memoryHost({ 'a.bent': SCORE('equal') });
    const low = SCORE('equal').replace('440', '415.305');
    host.files.set('/home/b.bent', low);
    const { notes } = JSON.parse((await bentside(host, 'tune', 'a.bent', 'b.bent', '--json')).out).retuning;
    expect(notes).toHaveLength(12);
    expect(notes[0].cents).toBe(-100);
  });
  it('sends whoever would draw strings up much to the maker first', async () => {
    const low = SCORE('equal').replace('440', '392');
    const host = memoryHost({ 'high.bent': SCORE('equal'), 'low.bent': low });
    // 1200 log2(440/392) is 200 cents.
    const up = JSON.parse((await bentside(host, 'tune', 'low.bent', 'high.bent', '--json')).out).cautions;
    expect(up[0]).toMatch(/^Here strings rise by as much as 200 cents: ask the maker/);
    const down = JSON.parse((await bentside(host, 'tune', 'high.bent', 'low.bent', '--json')).out).cautions;
    expect(down).toEqual(up.slice(1));
  });
  it('sets the rarer note of a divided key too', async () => {
    const host = memoryHost({ 'a.bent': SCORE('meantone 1/4', 'instrument virginals\n  split d#/eb a#/bb\n') });
    const { steps, notes } = JSON.parse((await bentside(host, 'tune', 'a.bent', '--json')).out);
    expect(notes).toHaveLength(14);
    expect(step(steps, 'g#3-d#4')).toEqual({ interval: 'g#3-d#4', beats: 1.91, direction: 'narrow' });
    expect(steps.filter(({ tunes }: Step) => tunes === 'a#3')).toHaveLength(1);
  });
  it('proves no note by the third by which it was set', async () => {
    const host = memoryHost({ 'a.bent': SCORE('meantone 1/4 wolf c#-ab', 'instrument virginals\n  split d#/eb\n') });
    const { steps } = JSON.parse((await bentside(host, 'tune', 'a.bent', '--json')).out);
    const third = steps.filter(({ interval }: Step) => interval === 'b3-d#4');
    expect(third.map(({ tunes }: Step) => tunes)).toEqual(['d#4']);
  });
  it('knows the temperaments of the file beside those by name, and proposes them', async () => {
    const host = memoryHost({ 'a.bent': SCORE('house', 'temperament house\n  c-g -1/4 sc\n') });
    const { code, say } = await bentside(host, 'tune', 'a.bent', '--temperament', 'huose');
    expect([code, say]).toEqual([
      2,
      'No temperament is called “huose”. Did you mean house? The file defines house; bentside tune lists others; a meantone is typed "meantone 1/4 wolf g#-eb".\n',
    ]);
  });
  it('makes a sheet to print of it, with the cautions, and nothing of the file becomes markup', async () => {
    const host = memoryHost({ 'a.bent': SCORE('vallotti') });
    const { out } = await bentside(host, 'tune', 'a.bent', '--html');
    expect(out).toMatch(/^<!doctype html>\n<html lang="en-GB">/);
    expect(out).toContain('<title>Tuner’s sheet: Vallotti, a4 = 440 Hz</title>');
    expect(out).toMatch(/<td>b♭3<\/td><td>f3–b♭3<\/td>/);
    expect(out).toContain('its maker or a professional tuner knows');
    expect(out).not.toMatch(/<script|https?:|url\(/);
  });
});
