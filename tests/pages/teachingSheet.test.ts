/**
 * The teaching sheet. What tables say of signs and their years: the sheet takes it from the tables that `tests/standards/signs`
 * checks. Pure thirds of quarter-comma meantone and the frequency of its notes: from its definition, a third of 5/4 in four
 * equal fifths.
 */
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
// @ts-expect-error a script of the build, without types
import { playerFile } from '../../grammar/generate/player.mjs';
import { PLAYER, PLAYER_DIGEST } from '../../server/pages/sheet/playerScript';
import type { SheetSounds } from '../../server/pages/sheet/sounds';
import { sampleProject } from '../helpers/samples';
import { sheetOf, sheetOfText } from '../helpers/sheets';

/** The words of a part of a page, its pictures left out. */
const words = (markup: string): string =>
  markup
    .replace(/<svg.*?<\/svg>(?:<\/svg>)?/gs, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');

/** The section that begins with a heading. */
function section(page: string, heading: string): string {
  const part = page.split('<h2').find((one) => one.includes(`>${heading}</h2>`));
  if (part === undefined) throw new Error(`no section ${heading}`);
  return part;
}

const figures = (markup: string): string[] => [...markup.matchAll(/<figure.*?<\/figure>/gs)].map(([figure]) => figure);
const captions = (markup: string): string[] =>
  figures(markup).map((figure) => words(/<figcaption><span>(.*?)<\/span>/s.exec(figure)?.[1] ?? '').trim());
const heads = (markup: string): number => [...markup.matchAll(/#glyph-E0A[2-4]"/g)].length;

interface Sounding {
  readonly label: string;
  /** At each pace. */
  readonly strings: SheetSounds[string];
}

function soundsIn(page: string): readonly Sounding[] {
  const data = /<script type="application\/json" id="sounds">(.*?)<\/script>/s.exec(page)?.[1] ?? '{}';
  const all: SheetSounds = JSON.parse(data);
  return [...page.matchAll(/data-sound="(\d+)"><span>Play<\/span><span class="unseen">(.*?)<\/span>/g)].map(
    ([, name = '', label = '']) => ({ label: label.trim(), strings: all[name] ?? [] }),
  );
}

const overture = sampleProject('overture.bent');
const begin = sheetOf(overture, { bars: { from: '1', to: '7' } });

describe('the overture’s sheet, bars 1 to 7', () => {
  it('says of each reading what it takes, by which table of which year, and who speaks for its rhythm', async () => {
    const readings = words(section((await begin).page, 'Readings, and why'));
    expect(readings).toContain('Takes K : Thornmere Keyboard Book, ff. 1r-2v, the main text');
    expect(readings).toContain("Signs after anglebert-1689 : J.-H. d'Anglebert, Pièces de clavecin, Paris 1689");
    expect(readings).toContain(
      'Rhythm, dots stretched as by a second dot, the dot held, in A : dots are held longer than they are written',
    );
    expect(readings).toContain('Quantz 1752, XVII.vii.58, confirmed by a text');
    expect(readings).toContain('Takes L : A loose copy in another hand, two leaves kept with K');
  });
  it('has the tuning in its margin: eight thirds of quarter-comma meantone are pure, one fifth is a wolf', async () => {
    const margin = words(/<aside.*?<\/aside>/s.exec((await begin).page)?.[0] ?? '');
    expect(margin).toContain('a4 = 392 Hz');
    expect(margin).toContain('Wolf fifths c♯–a♭');
    expect(margin).toContain('Pure thirds a♭–c, e♭–g, b♭–d, f–a, c–e, g–b, d–f♯, a–c♯');
  });
  it('draws each line in the source’s clefs, in modern clefs, and as each reading plays it', async () => {
    const [first = ''] = section((await begin).page, 'Line for line')
      .split('<section class="line"')
      .slice(1);
    expect(captions(first)).toEqual([
      'In the source’s clefs',
      'As written, in modern clefs',
      'french , as played',
      'plain , as written, in modern clefs',
      'plain , as played',
    ]);
    // SMuFL: cClef, gClef.
    const [source = '', modern = ''] = figures(first);
    expect([source.includes('#glyph-E05C'), modern.includes('#glyph-E05C')]).toEqual([true, false]);
    expect([source.includes('#glyph-E050'), modern.includes('#glyph-E050')]).toEqual([false, true]);
  });
  it('gives the reasons of each reading beneath its line', async () => {
    const [, second = ''] = section((await begin).page, 'Line for line')
      .split('<section class="line"')
      .slice(1);
    const said = words(second);
    expect(said).toContain("as K; L has sb G. L has one semibreve; the falling scale may be a player's own");
    expect(said).toContain('Rhythm, stretched dots : bars 5, 6, 7');
    expect(said).toContain(
      'Signs after anglebert-1689 : Pincé (bar 7), Cheute ou port de voix en descendant (bar 5), Tremblement simple (bars 4, 5)',
    );
  });
  it('explains each sign by its table, with what another table would do', async () => {
    const pince = words(section((await begin).page, 'Signs').split('<section class="sign"')[1] ?? '');
    expect(pince).toContain("french, plain: “Pincé” , J.-H. d'Anglebert");
    expect(pince).toContain(
      '1689, from memory. On the beat: the note, the note below, and the note again, held. Marques',
    );
    expect(pince).toContain('Marques des agréments et leur signification, 1689, no. 9.');
    // How sure it is, and that nobody looked, is one thing and said once.
    expect(pince.match(/from memory/g)).toHaveLength(2);
    expect(pince).toContain('“Pincé” , Rameau, Pièces de clavessin, 1724');
    expect(pince).toContain('Like anglebert-1689: Le Roux, 1705.');
  });
  it('draws what other tables would do: Purcell’s beat begins with the note below', async () => {
    const trill = section((await begin).page, 'Signs')
      .split('<section class="sign"')
      .find((one) => one.includes(">'zz, "));
    const [own, purcell] = figures(trill ?? '').filter((figure) => /Tremblement|Beat/.test(figure));
    expect(heads(purcell ?? '')).toBeGreaterThan(3);
    expect(own?.replace(/<figcaption.*<\/figcaption>/s, '')).not.toBe(
      purcell?.replace(/<figcaption.*<\/figcaption>/s, ''),
    );
  });
  it('leaves a stave empty to write on, with the answer folded away', async () => {
    const [exercise = ''] = section((await begin).page, 'Write your own')
      .split('<section class="exercise"')
      .slice(1);
    const [written = '', blank = '', answer = ''] = figures(exercise);
    expect([heads(written) > 0, heads(blank), heads(answer) > heads(written)]).toEqual([true, 0, true]);
    expect(blank).toContain('#glyph-E050');
    expect(exercise).toMatch(/<details><summary>The answer<\/summary><figure/);
  });
  it('has of the report’s notes those of its bars alone', async () => {
    const notes = words(section((await begin).page, 'Notes of the critical report'));
    expect(notes).toContain('L has one semibreve; the falling scale may be a player');
    expect(notes).not.toContain('The trill supplied from the subject');
  });
  it('has a key to the symbols that it prints, and to no others', async () => {
    const key = words(section((await begin).page, 'Key'));
    expect(key).toContain('Places are given as bar, voice, symbol.');
    expect(key).toContain('Values: sb semibreve; c crotchet; q quaver; dsq demisemiquaver; a full stop after');
  });
  it('warns of strings that break once, wherever a tuning is laid, and leaves the instrument to its maker', async () => {
    const tuning = words(section((await begin).page, 'Tuning'));
    expect(tuning.match(/can break and hurt/g)).toHaveLength(1);
    expect(tuning).toContain('its maker or a professional tuner knows; follow them rather than this sheet');
  });
});

describe('what is played', () => {
  it('is in the tuning of the reading: g4 a mean tone, half of a pure third, below a4 = 392', async () => {
    const [literal] = soundsIn((await begin).page);
    const frequencies = literal?.strings[0]?.filter(([, at]) => at < 50).map(([frequency]) => frequency);
    expect(frequencies).toContainEqual(expect.closeTo(392 / Math.sqrt(5 / 4), 1));
  });
  it('is for each line the music as it is written, and as each reading plays it', async () => {
    const labels = soundsIn((await begin).page).map(({ label }) => label);
    expect(labels.slice(0, 4)).toEqual([
      'bars 1 to 3, as written, in modern clefs',
      'bars 1 to 3, french, as played',
      'bars 1 to 3, plain, as written, in modern clefs',
      'bars 1 to 3, plain, as played',
    ]);
  });
  it('lasts twice as long at half the tempo, and trills have more strokes', async () => {
    const [, , , , , french] = soundsIn((await begin).page);
    expect(french?.label).toBe('bars 4 to 7, french, as played');
    const [whole = [], , half = []] = french?.strings ?? [];
    const end = (strings: typeof whole): number => Math.max(...strings.map(([, at]) => at));
    expect(end(half) / end(whole)).toBeCloseTo(2, 1);
    expect(half.length).toBeGreaterThan(whole.length);
  });
});

const HEAD = `bentside 1
stave upper
voice dessus upper
`;

describe('a sheet', () => {
  it('says what sources have before the editor mends it, and of which piece bars are', async () => {
    const { page } = await sheetOf(sampleProject('lamento.bent'), {}, 'house');
    const sheet = words(page);
    expect(sheet).toContain('Bar 10, basso, 2: m A; K, L have m B.');
    expect(sheet).toContain('It stands in bars 15, 28 of “Lamento”, bars 4, 12 of “Ritornello”.');
  });
  it('counts the symbols of every reading by the main text, as its key says', async () => {
    const sources =
      'source K "one"\nhand K.2 "darker ink"\nsource L "two"\nreading one\n  takes K\nreading two\n  takes L\n';
    const music = 'system upper C1 meter C\n  dessus | <K: 2 c5 ; L: 4 c5 d> <K: 2 e5 ; L: 2 f5> |||\n';
    const { page } = await sheetOfText(`${HEAD}${sources}${music}`);
    expect(words(page)).toContain('Bar 1, dessus, 1: c c′′, c d′′, m f′′, as L; K has m c′′, m e′′.');
    const apart = music.replace('d> <K', 'd> 4 g4 <K').replaceAll('2 e5', '4 e5').replaceAll('2 f5', '4 f5');
    const sheet = words((await sheetOfText(`${HEAD}${sources}${apart}`)).page);
    expect(sheet).toContain('Bar 1, dessus, 3: c e′′, as K; L has c f′′.');
    expect(sheet).toContain('Bar 1, dessus, 3: c f′′, as L; K has c e′′.');
  });
  it('of sources has each as it is drawn, with the slips that the editor mends', async () => {
    const sources = 'source K "one"\nsource L "two"\n';
    const music = 'system upper C1 meter C\n  dessus | <sic: 2 c5 ; corr: 2 d5> <K: 2 e5 ; L: 2 f5> |||\n';
    const sheet = words((await sheetOfText(`${HEAD}${sources}${music}`)).page);
    expect(sheet).toContain('Bar 1, dessus, 1: m d′′, m e′′; L has m c′′, m f′′.');
    expect(sheet).toContain('Bar 1, dessus, 1: m d′′, m f′′; K has m c′′, m e′′.');
  });
  it('explains a sign by every row that plays it: of 1689 the cheute from below and from above', async () => {
    const music = "system upper C1 meter C\n  dessus | 2 c5 d'cb | 2 f5 e'cb |||\n";
    const { page } = await sheetOfText(`${HEAD}signs anglebert-1689\nreading one\n${music}`);
    const signs = words(section(page, 'Signs'));
    expect(signs).toContain("one: “Cheute ou port de voix en montant”, after a lower note , J.-H. d'Anglebert");
    expect(signs).toContain('one, bar 2, dessus: “Cheute ou port de voix en descendant”, after a higher note , J.-H.');
    expect(signs).toContain('On the beat: the note above, leaned on, then the note.');
  });
  it('says what readings have in common with commas between them, and which side of a slip one takes', async () => {
    const { page } = await sheetOf(sampleProject('lamento.bent'), { bars: { from: '1', to: '2' } });
    expect(words(page)).toContain('house, sharp, fair, leaf : played as written.');
    expect(words(page)).toContain('Takes sic : evident slips as the sources have them');
  });
  it('names each practice that can act once, and each tuning once', async () => {
    const { page } = await sheetOf(sampleProject('gigue.bent'), { bars: { from: '1', to: '1' } }, 'leaf');
    const readings = words(section(page, 'Readings, and why'));
    expect(readings.split('late upbeats, in B, voice basse')).toHaveLength(2);
    // Said by the reading itself; what the file says of the same goes after it.
    expect(readings).toContain('triplets in the time of the duple figures that they meet');
    expect(readings).not.toContain('duple figures in the time of the triplets that they meet');
    expect(readings.split('thornmere-fair')).toHaveLength(2);
  });
  it('of one reading has no other', async () => {
    const { page } = await sheetOf(overture, { bars: { from: '1', to: '3' } }, 'french');
    expect(words(page)).toContain('overture.bent: reading french, bars 1 to 3');
    expect(captions(section(page, 'Line for line'))).toEqual([
      'In the source’s clefs',
      'As written, in modern clefs',
      'french , as played',
    ]);
  });
  it('of a file that declares no reading has the text as it is written', async () => {
    const { page } = await sheetOfText(`${HEAD}system upper C1 meter C\n  dessus | 1 c5 |||\n`);
    expect(captions(section(page, 'Line for line'))).toEqual(['In the source’s clefs', 'As written, in modern clefs']);
    expect(words(page)).toContain('written : played as written.');
  });
  it('draws, explains and sounds the text as written by the table of the file', async () => {
    const music = "system upper C1 meter C\n  dessus | 1 c5'ca |||\n";
    const { page } = await sheetOfText(`${HEAD.trimEnd()}\nsigns anglebert-1689\n${music}`);
    expect(words(section(page, 'Readings, and why'))).toContain('Signs after anglebert-1689');
    expect(words(section(page, 'Signs'))).toContain('Pincé');
    const played = soundsIn(page).find(({ label }) => label.includes('as played'));
    // The note, the note below, the note.
    expect(played?.strings[0]).toHaveLength(3);
  });
  it('breaks a long line of free music so that it can be read', async () => {
    const { page } = await sheetOf(sampleProject('prelude.bent'), { bars: { from: '1', to: '1' } });
    const widths = [...section(page, 'Line for line').matchAll(/style="width:([\d.]+)mm/g)].map(([, width]) =>
      Number(width),
    );
    expect(Math.max(...widths)).toBeLessThanOrEqual(178);
  });
  it.each([
    [
      'a bar that is too short',
      `${HEAD}system upper C1 meter C\n  dessus | 1 c5 | 2 c5 | 1 c |||\n`,
      {},
      'bar-too-short',
    ],
    [
      'bars that are not there',
      `${HEAD}system upper C1 meter C\n  dessus | 1 c5 |||\n`,
      { from: '8', to: '9' },
      'export-no-such-bar',
    ],
    ['no music at all', HEAD, {}, 'export-no-music'],
  ])('of %s is refused with a finding', async (_, text, bars, code) => {
    const { page, findings } = await sheetOfText(text, 'from' in bars ? { bars } : {});
    expect(page).toBe('');
    expect(findings.map((finding) => finding.code)).toContain(code);
  });
  it('lets nothing of the user’s be markup', async () => {
    const evil = '</svg><script>alert(1)</script><img src=x onerror=alert(2)>';
    const { page } = await sheetOfText(
      `bentside 1\ntitle "${evil}"\nsource K "${evil}"\nreading R "${evil}"\n  takes K\n  signs T\ntable T\n  zz "${evil}" : on beat, +1 0\nnote n1 : "${evil}"\nstave upper\nvoice dessus upper\nsystem upper C1 meter C\n  dessus | "${evil}" 1 c5'zz*n1 |||\n`,
    );
    expect(page).toContain('&lt;script&gt;alert(1)');
    expect(page).not.toMatch(/<script>alert|<img/);
    expect([...page.matchAll(/<script/g)]).toHaveLength(2);
  });
  it('forbids the network, and every script but its own (W3C, Content Security Policy Level 3)', async () => {
    const { page } = await begin;
    const policy = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(page)?.[1] ?? '';
    const script = /<script>(.*?)<\/script>/s.exec(page)?.[1] ?? '';
    const digest = createHash('sha256').update(script).digest('base64');
    expect(policy.split('; ')).toEqual(expect.arrayContaining(["default-src 'none'", `script-src 'sha256-${digest}'`]));
    expect(page).not.toMatch(/(?:src|href)="(?!#)/);
  });
  it('of the whole overture is under three megabytes', async () => {
    expect((await sheetOf(overture)).page.length).toBeLessThan(3_000_000);
  });
});

it('the script of sheets is as it was generated last', async () => {
  expect((await playerFile()).text).toContain(PLAYER_DIGEST);
  expect(createHash('sha256').update(PLAYER).digest('base64')).toBe(PLAYER_DIGEST);
});
