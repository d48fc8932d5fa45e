/** Pages and passages: as the source has them, as they fit, one long system; and a few kept as they were last looked at. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stavesIn } from '../../server/engraving/additions/heads';
import { below, lineOf } from '../../server/engraving/svg';
import { addressOfId } from '../../server/export/mei/ids';
import { drawPage, drawPassage, exportSvg, pageNames } from '../../server/pages/svg';
import { boxesIn } from '../helpers/boxes';
import { drawn, ofClass, pictureOf } from '../helpers/drawn';
import { engraver } from '../helpers/engraver';
import { analysed, lane, scoreOf } from '../helpers/music';
import { sampleAnalysis } from '../helpers/samples';

const WISH = { clefs: 'source', leaveGaps: false } as const;
const overture = () => scoreOf(sampleAnalysis('overture.bent'));

const systemsIn = (svg: string): number => ofClass(pictureOf(svg), 'system').length;
const measuresIn = (svg: string): number => ofClass(pictureOf(svg), 'measure').length;

describe('the pages of a score', () => {
  it("are the source's, with its systems", async () => {
    const score = overture();
    const pages = await drawn(score);
    expect(pages).toHaveLength(pageNames(score).length);
    const systems = score.pieces.flatMap((piece) => piece.systems);
    expect(pages.map(systemsIn)).toEqual(
      pageNames(score).map((page) => systems.filter((one) => one.page === page).length),
    );
  });

  it('have all pieces that share a leaf, each under its name, and every bar of the file', async () => {
    const score = scoreOf(sampleAnalysis('leaves.bent'));
    const pages = await drawn(score);
    const piecesOn = (page: string) => score.pieces.filter(({ systems }) => systems.some((one) => one.page === page));
    expect(pages).toHaveLength(pageNames(score).length);
    expect(pages.map(measuresIn)).toEqual(
      pageNames(score).map((page) => piecesOn(page).flatMap(({ bars }) => bars).length),
    );
    for (const [i, page] of pageNames(score).entries()) {
      for (const { name } of piecesOn(page)) expect(pages[i]).toContain(`>${name}</tspan>`);
      const { svg = '' } = drawPage(score, page, WISH, await engraver());
      expect(measuresIn(svg)).toBe(measuresIn(pages[i] ?? ''));
    }
  });

  it('are as many as the music needs where it is reflowed, and one where it is one long system', async () => {
    const score = overture();
    const flow = await drawn(score, { layout: 'flow' });
    const line = await drawn(score, { layout: 'line' });
    const bars = score.pieces.flatMap((piece) => piece.bars).length;
    expect(flow.map(measuresIn).reduce((sum, count) => sum + count, 0)).toBe(bars);
    expect([line.length, ...line.map(systemsIn), ...line.map(measuresIn)]).toEqual([1, 1, bars]);
  });

  it('can be drawn one by one', async () => {
    const score = overture();
    const [first = ''] = pageNames(score);
    const { svg = '', problems } = drawPage(score, first, WISH, await engraver());
    expect(problems.filter(({ problem }) => problem.code === 'export-not-drawn')).toEqual([]);
    expect(systemsIn(svg)).toBe(systemsIn((await drawn(score))[0] ?? ''));
  });

  it('say for those who cannot see them what they show, and in which reading', async () => {
    const [page = ''] = await drawn(overture());
    expect(page).toMatch(/<title>[^<]+, reading written, page 1<\/title>/);
  });

  it('bear the address of its text on every note', async () => {
    const [page = ''] = await drawn(scoreOf(lane('4 c5 d 2 e-g | 1 f')));
    const notes = [...ofClass(pictureOf(page), 'note')].map(({ attributes }) =>
      addressOfId(attributes['data-id'] ?? ''),
    );
    expect(notes.map((address) => [address?.lane, address?.event, address?.member])).toEqual([
      ['dessus', '1.1', undefined],
      ['dessus', '1.2', undefined],
      ['dessus', '1.3', 1],
      ['dessus', '1.3', 2],
      ['dessus', '2.1', undefined],
    ]);
  });

  /** Common practice: only a last line that is clearly short is left short. */
  it.each([
    ['stretch a last system that is nearly full over its line', 6, 1],
    ['leave one that is half full as it is', 4, 0.55],
  ])('%s', async (_, bars, share) => {
    const line = (count: number): string => `  dessus | ${'4 c5 d e f | '.repeat(count)}\n`;
    const text = `bentside 1\nvoice dessus lines 5\nsystem dessus G2 meter C\n${line(9)}system\n${line(bars)}`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    const [first = 0, last = 0] = ofClass(pictureOf(page), 'system').map((system) =>
      Math.max(...ofClass(system, 'measure').flatMap((measure) => stavesIn(measure).map(({ right }) => right))),
    );
    expect(last / first).toBeCloseTo(share, 1);
  });

  it('end a system of the source inside a bar where the source does', async () => {
    const text = `bentside 1\nvoice dessus lines 5\nsystem dessus G2 meter C\n  dessus | 2 c5\nsystem\n  dessus | 2 d5 | 1 e |\n`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    expect(systemsIn(page)).toBe(2);
  });
});

describe('a mark on a barline', () => {
  it('stands over it', async () => {
    const [page = ''] = await drawn(scoreOf(lane("1 c5 |'fermata 1 d")));
    const boxes = await boxesIn(page);
    const [fermata] = boxes.filter(({ what }) => what === 'fermata');
    const [, second] = boxes.filter(({ what }) => what === 'notehead');
    const [barline] = ofClass(pictureOf(page), 'barLine').flatMap((line) =>
      [...below(line)].flatMap((stroke) => lineOf(stroke) ?? []),
    );
    const middle = ((fermata?.left ?? 0) + (fermata?.right ?? 0)) / 2;
    expect(middle).toBeCloseTo((barline?.x ?? 0) / 180, 0);
    expect(middle).toBeLessThan(second?.left ?? 0);
  });
});

describe('a mark on the barline of a bar that two systems share', () => {
  it('stands at its end, in the second of them', async () => {
    const text =
      "bentside 1\nvoice dessus\nsystem dessus G2 meter C\n  dessus | 2 c5\nsystem\n  dessus | 4 d5 d |'fermata 1 e |\n";
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    const boxes = await boxesIn(page);
    const [fermata] = boxes.filter(({ what }) => what === 'fermata');
    const [before, after] = ['1.2', '2.1'].map((event) => boxes.find(({ id }) => id === `e-1-2-dessus-${event}`));
    const middle = ((fermata?.left ?? Number.NaN) + (fermata?.right ?? Number.NaN)) / 2;
    expect(middle).toBeGreaterThan(before?.right ?? Number.NaN);
    expect(middle).toBeLessThan(after?.left ?? Number.NaN);
    expect(Math.abs((fermata?.bottom ?? Number.NaN) - (after?.top ?? Number.NaN))).toBeLessThan(4);
  });
});

describe('a curve on a barline', () => {
  const TWO_STAVES = 'bentside 1\nstave upper\nstave lower\nvoice dessus upper\nvoice basse lower\n';

  /** Where the curve begins and ends, the barline after the first bar, and the middles of the heads, in stave spaces. */
  async function curveOf(dessus: string, basse: string) {
    const text = `${TWO_STAVES}system upper G2 lower F4 meter C\n  dessus | ${dessus} |\n  basse | ${basse} |\n`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    const picture = pictureOf(page);
    const [curve] = ofClass(picture, 'slur').flatMap(({ children }) => children);
    const [, startX, startY, endX, endY] =
      /^M(\d+),(\d+) C\S+ \S+ (\d+),(\d+)/.exec(curve?.attributes.d ?? '')?.map((text) => Number(text) / 180) ?? [];
    const heads = (await boxesIn(page)).filter(({ what }) => what === 'notehead');
    const [barline] = ofClass(picture, 'barLine').flatMap((line) =>
      [...below(line)].flatMap((one) => lineOf(one) ?? []),
    );
    return {
      start: { x: startX ?? Number.NaN, y: startY ?? Number.NaN },
      end: { x: endX ?? Number.NaN, y: endY ?? Number.NaN },
      barline: (barline?.x ?? Number.NaN) / 180,
      heads,
    };
  }

  it.each([
    ['dessus', "2 c5 d |'u 2 e5'. f", '2 c3 d | 2 e3 f'],
    ['basse', '2 c5 d | 2 e5 f', "2 c3 d |'u 2 e3'. f"],
  ])('begins there, at the stave of the %s', async (voice, dessus, basse) => {
    const { start, end, barline, heads } = await curveOf(dessus, basse);
    const head = heads.find(({ id }) => id === `e-1-1-${voice}-2.1`);
    expect(start.x).toBeCloseTo(barline, 1);
    expect(Math.abs(start.y - (head?.top ?? Number.NaN))).toBeLessThan(3);
    expect(end.x).toBeGreaterThan((head?.left ?? Number.NaN) - 0.5);
    expect(end.x).toBeLessThan((head?.right ?? Number.NaN) + 0.5);
  });

  it('is drawn in the next system alone where that barline ends one', async () => {
    const text = `${TWO_STAVES}system upper G2 lower F4 meter C\n  dessus | 2 c5 d |'u\n  basse | 1 c3 |
system\n  dessus | 2 c5 e'. |\n  basse | 1 c3 |\n`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    const curves = ofClass(pictureOf(page), 'slur').map(({ children }) => children.length);
    expect(curves).toEqual([0, 1]);
  });

  it('goes to the last note of its voice, not of another stave, where it ends there', async () => {
    const { end, heads } = await curveOf("2 c5'u d |'. 1 e5", '4 c3 d e f | 1 g3');
    const last = heads.find(({ id }) => id === 'e-1-1-dessus-1.2');
    expect(Math.abs(end.y - (last?.top ?? Number.NaN))).toBeLessThan(3);
    expect(end.x).toBeLessThan((last?.right ?? Number.NaN) + 0.5);
  });
});

describe('a passage', () => {
  it('has the bars asked for, on white', async () => {
    const { svg = '' } = drawPassage(overture(), { ...WISH, bars: { from: '3', to: '4' } }, await engraver());
    expect([systemsIn(svg), measuresIn(svg)]).toEqual([1, 2]);
    expect(svg).toMatch(/<rect width="100%" height="100%" fill="white"/);
  });

  it('shows by short open curves where ties and curves come in and lead out', async () => {
    const score = scoreOf(lane("1 c5= | 2 = d'u | 2 e'. f= | 1 = |"));
    const sides = async (bar: string): Promise<readonly string[]> => {
      const { svg = '' } = drawPassage(score, { ...WISH, bars: { from: bar, to: bar } }, await engraver());
      return ofClass(pictureOf(svg), 'sign').flatMap(({ children: [path] }) => {
        const xs = [...(path?.attributes.d ?? '').matchAll(/(\d+) \d+/g)].map(([, x]) => Number(x));
        return (xs.at(-1) ?? 0) < (xs[0] ?? 0) ? ['from the left'] : ['to the right'];
      });
    };
    expect(await sides('1')).toEqual(['to the right']);
    expect([...(await sides('2'))].sort()).toEqual(['from the left', 'to the right']);
    expect([...(await sides('3'))].sort()).toEqual(['from the left', 'to the right']);
    expect(await sides('4')).toEqual(['from the left']);
  });

  it('tells what it does not show: what the editor says and counts, and what the other sources have', async () => {
    const score = scoreOf(
      analysed(
        'bentside 1\nsource K "f. 3v"\nsource L "leaf"\ntempo 4 at 60\nvoice dessus\nsystem dessus C1 meter C\n' +
          '  dessus | 2 c5*"paler ink" {inegal 8 c5 d e f} | <K: 1 c5 ; L: 1 d5> | 1 c5 |*"erased"\nsystem free\n  dessus | 4 c5\'w2 d ||\n',
      ),
    );
    const { problems } = exportSvg(score, WISH, await engraver());
    expect(problems.map(({ problem: { code, slots } }) => `${code} ${slots.voice ?? ''} ${slots.bars}`)).toEqual([
      'svg-tempo  bar 1',
      'svg-annotation dessus bar 1',
      'svg-hint dessus bar 1',
      'svg-option dessus bar 2',
      'svg-annotation the barlines bar 3',
      'svg-weight dessus bar 4',
    ]);
  });

  it('says why where it cannot be drawn', async () => {
    const nobody = { ...(await engraver()), draw: () => ({ failure: 'the library could not read the score' }) };
    const { svg, problems } = drawPassage(overture(), { ...WISH, bars: { from: '3', to: '4' } }, nobody as never);
    expect(svg).toBeUndefined();
    expect(problems.map(({ problem }) => problem.code)).toContain('export-not-drawn');
    expect(exportSvg(overture(), WISH, nobody as never).content).toEqual([]);
  });
});

const GOLDEN = join(import.meta.dirname, 'golden');

const PASSAGES: Readonly<Record<string, string>> = {
  signs: `bentside 1\nstave upper\nstave lower\nvoice dessus upper stems up\nvoice taille upper stems down\nvoice basse lower
system upper C1 lower F4 key bb meter cut-C = 2/2
  dessus | 4. b4'zz 8 c5'ca 4. d'cb 8 eb'[zz] | 2 d5'ss b4'zz? |\n  taille | 2 d4= d | f4[=] f |\n  basse | 2 b2 f'arp-b | 1 b2'fermata |\n`,
  'great-staves': `bentside 1\nstave upper lines 6\nstave lower lines 8\nvoice canto upper\nvoice basso lower
system upper C1+G3 lower F4+C6 meter C\n  canto | 16 g4 a b c5 d e f e 2 d |\n  basso | {supplied 2 g3-e4} {unclear 2 g3} |\n`,
  free: `bentside 1\nstave upper\nstave lower\nvoice dessus upper
system free upper C1 lower F4\n  dessus | (down) f2'u f3'u (home) c4'u f'u~ 8 g f e f 1 (down) f2'.f2'.f3'.c4'line(l) (home) c5'.(l) |||\n`,
};

describe('what was looked at', () => {
  it.each(Object.keys(PASSAGES))('is drawn as it was: %s', async (name) => {
    const [page = ''] = await drawn(scoreOf(analysed(PASSAGES[name] ?? '')), { layout: 'line' });
    expect((await boxesIn(page)).length).toBeGreaterThan(8);
    const file = join(GOLDEN, `${name}.svg`);
    if (process.env.UPDATE_GOLDEN !== undefined || !existsSync(file)) writeFileSync(file, page);
    expect(page).toBe(readFileSync(file, 'utf8'));
  });
});
