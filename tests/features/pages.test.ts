/** The leaves of a source, engraved, and the way between their notes and the text. */
import { describe, expect, it } from 'vitest';
import { engravedPage, noteAt, placeOfNote } from '../../server/features/pages';
import { offsetOfPosition, positionOfOffset } from '../../server/features/place';
import type { PluckedNote } from '../../server/features/protocol';
import { soundingAt } from '../../server/features/sounding';
import { noFiles } from '../../server/workspace/host';
import { type Project, projectOf } from '../../server/workspace/project';
import { engraver } from '../helpers/engraver';
import { HEAD } from '../helpers/music';

const LEAVES = `${HEAD}tempo 4 at 120
page "2v"
system upper C1 lower F4 meter C
  dessus | 4 c5 d e f | 2 g4 c4-e-g |
  basse  | 1 c3       | 2 c3 d      |
page "3r"
system
  dessus | 1 a4 | b4 |
  basse  | 1 f3 | g3 |
piece "Gigue"
system upper G2 lower F4 meter 3/4
  dessus | 2. c5 |
  basse  | 2. c3 |
page "3v"
system
  dessus | 2. d5 |||
  basse  | 2. g2 |||
`;

const project = (text: string): Project => projectOf(noFiles, 'leaves.bent', text);
const leaves = project(LEAVES);
const drawn = async (page: number, clefs: 'source' | 'modern' = 'source', of = leaves) =>
  engravedPage(of, { reading: 'written', clefs, ornaments: 'sign', page }, await engraver());

/** The place of a text in the file. */
const at = (text: string, further = 0) => positionOfOffset(leaves.tree, LEAVES.indexOf(text) + further);
const idAt = (text: string, further = 0): string | undefined => noteAt(leaves, at(text, further), 'written')?.id;

/** The notes drawn, by their ids. */
const notes = (picture: string): string[] =>
  [...picture.matchAll(/data-id="(e-[^"]*)" data-class="note"/g)].map(([, id = '']) => id);

/** A plucked string by the MIDI key that it has in equal temperament, a4 at the 415 hertz that are assumed. */
const inKeys = ({ at: begins, until, frequency }: PluckedNote) => ({
  at: begins,
  until,
  key: Math.round(69 + 12 * Math.log2(frequency / 415)),
});

describe('a leaf of the source', () => {
  it('is one of the strip, and drawn alone', async () => {
    const leaf = await drawn(0);
    expect(leaf?.labels).toEqual(['2v', '3r', '3v']);
    expect(leaf?.pictures).toHaveLength(1);
    expect(notes(leaf?.pictures.join('') ?? '').every((id) => id.startsWith('e-2v-1-'))).toBe(true);
    expect(notes(leaf?.pictures.join('') ?? '')).toHaveLength(4 + 1 + 3 + 3);
  });

  it('holds the end of one movement and the beginning of the next', async () => {
    const leaf = await drawn(1);
    expect(leaf?.pictures).toHaveLength(2);
    expect(notes(leaf?.pictures[0] ?? '')).toHaveLength(4);
    expect(notes(leaf?.pictures[1] ?? '')).toHaveLength(2);
    expect(leaf?.summary).toEqual(['system 1, bars 3 to 4', 'Gigue, system 2, bar 1']);
  });

  it('is the last one where more are asked for, and none where there is no music', async () => {
    expect((await drawn(9))?.page).toBe(2);
    expect(await drawn(0, 'source', project(HEAD))).toBeUndefined();
  });

  it('has the same notes under the clefs of today', async () => {
    expect(notes((await drawn(0, 'modern'))?.pictures[0] ?? '')).toEqual(notes((await drawn(0))?.pictures[0] ?? ''));
  });
});

describe('between text and page', () => {
  it('the caret marks its note, in a chord the one where it stands', async () => {
    expect(idAt('d e f')).toBe('e-2v-1-dessus-1.2');
    expect(idAt('c4-e-g', 3)).toBe('e-2v-1-dessus-2.2-n2');
    expect(noteAt(leaves, at('d5 |||'), 'written')).toEqual({
      says: 'd′′ (D5); written d5 · dotted minim · dessus · bar 2, beat 1 · 0:01.5',
      bar: '2',
      id: 'e-3v-1-dessus-1.1',
      page: 2,
      system: 0,
    });
    expect(idAt('title')).toBeUndefined();
  });

  it('every note that is drawn leads to the text that says it, and back', async () => {
    for (const page of [0, 1, 2]) {
      for (const id of notes((await drawn(page))?.pictures.join('') ?? '')) {
        const place = placeOfNote(leaves, id, 'written');
        const typed =
          place && LEAVES.slice(...[place.start, place.end].map((one) => offsetOfPosition(leaves.tree, one)));
        expect(typed, id).toMatch(/^-?[a-g]/);
        expect(place && noteAt(leaves, place.start, 'written')?.id, id).toBe(id);
      }
    }
  });

  it('an id that no event has leads nowhere', () => {
    expect(placeOfNote(leaves, 'e-9r-1-dessus-1.1', 'written')).toBeUndefined();
    expect(placeOfNote(leaves, 'z18ft702', 'written')).toBeUndefined();
  });
});

describe('what sounds', () => {
  // A hundred and twenty crotchets a minute: half a second each. Keys count from c4 = 60 (MIDI 1.0).
  it('is the chord at the caret, all its notes at once', () => {
    expect(soundingAt(leaves, at('c4-e-g'), 'written', 'note').map(inKeys)).toEqual(
      [60, 64, 67].map((key) => ({ at: 0, until: 1, key })),
    );
  });
  it('is the whole bar, in time, with the other voices', () => {
    const heard = soundingAt(leaves, at('d e f'), 'written', 'bar').map(inKeys);
    expect(heard.filter(({ key }) => key > 60).map(({ at: when, key }) => [when, key])).toEqual([
      [0, 72],
      [0.5, 74],
      [1, 76],
      [1.5, 77],
    ]);
    expect(heard).toContainEqual({ at: 0, until: 2, key: 48 });
  });
  it('has in music without measure the time of its flow, and a trill the strokes that it has time for', () => {
    const text = `${HEAD}reading played\n  signs turk-1789\nsystem free upper G2\n  dessus | c5 e'tr'w2 d g c5 |||\n`;
    const free = project(text);
    const caret = positionOfOffset(free.tree, text.indexOf("e'tr"));
    const [note, bar] = (['note', 'bar'] as const).map((what) => soundingAt(free, caret, 'played', what).map(inKeys));
    // The trill has twice the 0.315 s of a step. Common practice.
    expect(note?.map(({ key }) => key)).toEqual([77, 76, 77, 76]);
    expect(note?.at(-1)?.until).toBeCloseTo(0.63);
    // From the bass with which it begins 1.6 of 0.45 s, those of the trill, and 0.45 s for each fourth.
    const begins = bar?.filter(({ key }) => key === 72 || key === 79).map(({ at: when }) => when.toFixed(2));
    expect(begins).toEqual(['0.00', '1.80', '2.25']);
  });
});

describe('signs', () => {
  const FRENCH = `bentside 1
reading french
  signs rameau-1724
tempo 4 at 60
voice dessus
system dessus G2 meter C
  dessus | 2 d5'turn e'ca | 1 c |||
`;
  const air = project(FRENCH);
  const caret = (text: string) => positionOfOffset(air.tree, FRENCH.indexOf(text) + 1);
  const page = async (ornaments: 'sign' | 'above' | 'full', reading = 'french') =>
    engravedPage(air, { reading, clefs: 'source', ornaments, page: 0 }, await engraver());
  const heads = (picture = ''): number => picture.split('data-class="note"').length - 1;

  it('stand as drawn, with what they mean above, or written out', async () => {
    const [drawn, above, full] = [await page('sign'), await page('above'), await page('full')];
    expect(heads(drawn?.pictures[0])).toBe(3);
    // Rameau's table of 1724, from memory: four notes for the turn, at least five for the pincé.
    expect(heads(full?.pictures[0])).toBeGreaterThanOrEqual(4 + 5 + 1);
    expect(heads(above?.pictures[0])).toBeGreaterThanOrEqual(3 + 4 + 5);
  });

  it('cannot be shown otherwise in a reading without a table, which is told', async () => {
    const written = await page('full', 'written');
    expect(written).toMatchObject({ hasTable: false, pictures: (await page('sign', 'written'))?.pictures });
    expect((await page('full'))?.hasTable).toBe(true);
  });

  it('sound as the reading plays them, at the note and in its bar', () => {
    const keys = (reading: string, what: 'note' | 'bar') =>
      soundingAt(air, caret("d5'turn"), reading, what).map((note) => inKeys(note).key);
    expect(keys('french', 'note')).toEqual([76, 74, 72, 74]);
    expect(keys('french', 'bar').slice(0, 9)).toEqual([76, 74, 72, 74, 76, 74, 76, 74, 76]);
    expect(keys('written', 'bar')).toEqual([74, 76]);
    expect(soundingAt(air, caret("d5'turn"), 'french', 'note').at(-1)?.until).toBeCloseTo(2);
  });
});
