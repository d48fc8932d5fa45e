/** Signs drawn as notes: one bar under four tables as it was last looked at, and distances in pages whose signs are notes. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { addressOfId } from '../../server/export/mei/ids';
import { drawPassage } from '../../server/pages/svg';
import type { Score } from '../../server/score/score';
import { boxesIn } from '../helpers/boxes';
import { collisions } from '../helpers/collisions';
import { drawn, ofClass, pictureOf } from '../helpers/drawn';
import { engraver } from '../helpers/engraver';
import { scoreOf } from '../helpers/music';
import { scoreOfPassage } from '../helpers/realised';
import { sampleAnalysis } from '../helpers/samples';

const GOLDEN = join(import.meta.dirname, 'golden');

const BAR = "4. d5'zz 8 c 4 b4'ca c5'turn";
const TABLES = ['anglebert-1689', 'purcell-1696', 'couperin-1713', 'rameau-1724'];

const barUnder = (table: string): Score => scoreOfPassage({ lanes: [BAR, '2 g3 c4'], table, tempo: '4 at 60' });

const drawnIn = async (score: Score, wish: Partial<Parameters<typeof drawPassage>[1]>): Promise<string> => {
  const { svg } = drawPassage(score, { clefs: 'source', leaveGaps: true, ...wish }, await engraver());
  if (svg === undefined) throw new Error('nothing was drawn');
  return svg;
};

/** The addresses of the heads on small staves above others, without their numbers. */
const above = (svg: string): string[] =>
  ofClass(pictureOf(svg), 'note').flatMap(({ attributes }) => {
    const id = attributes['data-id'] ?? '';
    return id.endsWith('-in-ossia') ? [addressOfId(id)?.event ?? ''] : [];
  });

describe('one bar under four tables', () => {
  // What each table makes of its signs stands, with where that is from, in tests/export/writtenOut.test.ts.
  it.each(TABLES)('is drawn as it was: %s', async (table) => {
    const svg = await drawnIn(barUnder(table), { ornaments: 'above' });
    expect(above(svg).length).toBeGreaterThan(6);
    const file = join(GOLDEN, `${table}.svg`);
    if (process.env.UPDATE_GOLDEN !== undefined || !existsSync(file)) writeFileSync(file, svg);
    expect(svg).toBe(readFileSync(file, 'utf8'));
  });

  it('is drawn in four ways', async () => {
    const pictures = await Promise.all(TABLES.map((table) => drawnIn(barUnder(table), { ornaments: 'full' })));
    expect(new Set(pictures).size).toBe(TABLES.length);
  });
});

describe('a sign drawn with what it means above', () => {
  it('leads from every note above it back to its place in the text', async () => {
    const svg = await drawnIn(barUnder('anglebert-1689'), { ornaments: 'above' });
    expect(new Set(above(svg))).toEqual(new Set(['1.1', '1.3', '1.4']));
  });

  it('can be drawn of one voice alone', async () => {
    const score = barUnder('anglebert-1689');
    const svg = await drawnIn(score, { ornaments: 'above', voice: 0 });
    const ids = ofClass(pictureOf(svg), 'note').map(({ attributes }) => addressOfId(attributes['data-id'] ?? '')?.lane);
    expect(new Set(ids)).toEqual(new Set(['v0']));
    expect(ofClass(pictureOf(svg), 'staff').length).toBeLessThan(
      ofClass(pictureOf(await drawnIn(score, { ornaments: 'above' })), 'staff').length,
    );
  });
});

// The library sets an accidental on the last of small notes that cross over to another stave: the overture has such in small notes.
describe.each([
  ['allemande.bent', ['small', 'full', 'above']],
  ['gigue.bent', ['small', 'full', 'above']],
  ['overture.bent', ['full', 'above']],
] as const)('%s', (name, forms) => {
  it.each(forms)('keeps its distance where signs are notes: %s', async (ornaments) => {
    const analysis = sampleAnalysis(name);
    for (const page of await drawn(scoreOf(analysis, analysis.choices[1]), { ornaments })) {
      const boxes = await boxesIn(page);
      expect(boxes.length).toBeGreaterThan(20);
      expect(collisions(boxes)).toEqual([]);
    }
  });
});
