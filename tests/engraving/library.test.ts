/** The engraving library behind its interface: it draws, or says why not; it never throws. */
import { describe, expect, it } from 'vitest';
import { cannotDraw, type DrawOptions } from '../../server/engraving/engraver';
import { glyphNumber } from '../../server/engraving/font/codepoints';
import { loadEngraver } from '../../server/engraving/library';
import { engraver, fontZip } from '../helpers/engraver';

const measure = (n: number, notes: string, signs = ''): string =>
  `<measure n="${n}"><staff n="1"><layer n="1">${notes}</layer></staff>${signs}</measure>`;

const mei = (measures: string): string => `<?xml version="1.0" encoding="UTF-8"?>
<mei xmlns="http://www.music-encoding.org/ns/mei" meiversion="5.1"><music><body><mdiv><score>
<scoreDef meter.count="2" meter.unit="4"><staffGrp><staffDef n="1" lines="5"><clef shape="G" line="2"/></staffDef></staffGrp></scoreDef>
<section>${measures}</section></score></mdiv></body></music></mei>`;

const TWO_CROTCHETS =
  '<note xml:id="first" pname="a" oct="4" dur="4"/><note xml:id="second" pname="c" oct="5" dur="4"/>';
const LONG: DrawOptions = { breaks: 'none' };

async function pagesOf(text: string, options = LONG): Promise<readonly string[]> {
  const made = (await engraver()).draw(text, options);
  if (cannotDraw(made)) throw new Error(made.failure);
  return made.pages;
}

describe('the engraver', () => {
  it('draws two crotchets under the ids that they have', async () => {
    const [page = ''] = await pagesOf(mei(measure(1, TWO_CROTCHETS)));
    expect(page).toMatch(/data-id="first"/);
    expect(page).toMatch(/data-id="second"/);
    // SMuFL 1.4: U+E0A4 noteheadBlack, U+E050 gClef.
    expect(page.match(/href="#E0A4/g)).toHaveLength(2);
    expect(page).toMatch(/href="#E050/);
  });

  it('draws with the font of ours', async () => {
    const trill = `<trill startid="#first" glyph.auth="smufl" glyph.num="${glyphNumber(0xe5b5)}"/>`;
    const [page = ''] = await pagesOf(mei(measure(1, TWO_CROTCHETS, trill)));
    expect(page).toMatch(/href="#E5B5/);
  });

  it('draws the same score alike every time', async () => {
    const text = mei(measure(1, TWO_CROTCHETS));
    expect(await pagesOf(text)).toEqual(await pagesOf(text));
  });

  it('makes one long system, or as many pages as are needed', async () => {
    const text = mei(
      Array.from({ length: 60 }, (_, i) => measure(i + 1, TWO_CROTCHETS.replace(/xml:id="\w+" /g, ''))).join(''),
    );
    expect(await pagesOf(text)).toHaveLength(1);
    expect((await pagesOf(text, { breaks: 'auto', width: 1000, height: 600 })).length).toBeGreaterThan(2);
  });

  it('says that it cannot read what is no score', async () => {
    const drawn = (await engraver()).draw('a note', LONG);
    expect(drawn).toEqual({ failure: 'the engraving library could not read the score' });
  });

  it('refuses lengths that cannot be', async () => {
    for (const width of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      const drawn = (await engraver()).draw(mei(measure(1, TWO_CROTCHETS)), { breaks: 'auto', width });
      expect(drawn, `${width}`).toEqual({ failure: `a width of ${width} cannot be drawn` });
    }
  });

  it('goes on drawing after a score that it could not draw', async () => {
    const made = (await engraver()).draw(mei(measure(1, '<note pname="h" oct="99999999999" dur="0"/>')), LONG);
    expect(cannotDraw(made) || made.pages.length === 1).toBe(true);
    expect(await pagesOf(mei(measure(1, TWO_CROTCHETS)))).toHaveLength(1);
  });

  it('tells when each note sounds, and its key', async () => {
    const made = (await engraver()).timemap(mei(measure(1, TWO_CROTCHETS)));
    if (cannotDraw(made)) throw new Error(made.failure);
    expect(made.map(({ crotchets, begin, end }) => ({ crotchets, begin, end }))).toEqual([
      { crotchets: 0, begin: ['first'], end: [] },
      { crotchets: 1, begin: ['second'], end: ['first'] },
      { crotchets: 2, begin: [], end: ['second'] },
    ]);
    // MIDI 1.0: middle C is key 60, so a4 is 69 and c5 72.
    expect((await engraver()).keys(['first', 'second'])).toEqual([
      { id: 'first', midi: 69 },
      { id: 'second', midi: 72 },
    ]);
  });

  it('says so where there is no WebAssembly', async () => {
    const kept = globalThis.WebAssembly;
    try {
      Reflect.deleteProperty(globalThis, 'WebAssembly');
      expect(await loadEngraver(await fontZip())).toEqual({ failure: 'cannot draw here: there is no WebAssembly' });
    } finally {
      globalThis.WebAssembly = kept;
    }
  });
});
