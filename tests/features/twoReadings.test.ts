/** Two readings one above the other on a leaf, and where they differ. */
import { describe, expect, it } from 'vitest';
import { engravedPage, placeOfNote } from '../../server/features/pages';
import type { EngravedPage } from '../../server/features/protocol';
import { noFiles } from '../../server/workspace/host';
import { type Project, projectOf } from '../../server/workspace/project';
import { engraver } from '../helpers/engraver';
import { HEAD } from '../helpers/music';

const AIR = `${HEAD}reading french
  practice overdot double held voice dessus
page "2v"
system upper G2 lower F4 meter C
  dessus | 4 c5 d <K: e ; L: f> 4 g5 | 4. g4 8 a 2 c5 |
  basse  | 1 c3                      | 1 e3            |
page "3r"
system
  dessus | 1 c5 | <K: 4 d e f g ; L: 1 d> |||
  basse  | 1 c3 | 1 g2                      |||
`;
const air = projectOf(noFiles, 'air.bent', AIR);

async function leaf(reading: string, beneath: string, page = 0, of: Project = air): Promise<EngravedPage> {
  const wish = { reading, beneath, clefs: 'source', ornaments: 'sign', page } as const;
  const made = engravedPage(of, wish, await engraver());
  if (made === undefined) throw new Error('nothing is drawn');
  return made;
}

/** The notes drawn, by their ids. */
const notes = ({ pictures }: EngravedPage): string[] =>
  pictures.flatMap((picture) =>
    [...picture.matchAll(/data-id="(e-[^"]*)" data-class="note"/g)].map(([, id = '']) => id),
  );

describe('two readings on one leaf', () => {
  it('stand in one picture, each in a part with its name', async () => {
    const made = await leaf('K', 'L');
    expect(made.pictures).toHaveLength(1);
    expect(made.pictures[0]).toMatch(/>K<[\s\S]*>L</);
    const beneath = notes(made).filter((id) => id.includes('.written-'));
    expect(beneath).toHaveLength(notes(made).length / 2);
  });

  it('differ where their sources do, and nowhere else', async () => {
    const { differences } = await leaf('K', 'L');
    expect(differences).toEqual([
      {
        says: 'bar 1, dessus: other pitch: K 4 e5; L 4 f5',
        ids: ['e-2v-1-dessus-1.3.K.1', 'e-2v-1-dessus.written-1.3.L.1'],
      },
    ]);
  });

  it('differ on the leaf that is shown alone', async () => {
    const { differences } = await leaf('K', 'L', 1);
    expect(differences?.map(({ says }) => says)).toEqual([
      'bar 4, dessus: other pitch and rhythm: K 4 d5 4 e5 4 f5 4 g5; L 1 d5',
    ]);
  });

  it('are drawn as they are played: a dot that is stretched is seen', async () => {
    const made = await leaf('written', 'french');
    expect(made.differences?.map(({ says }) => says)).toEqual([
      'bar 2, dessus: played at another time: written g4 at 0 for 3/8, a4 at 3/8 for 1/8 of a semibreve; french g4 at 0 for 7/16, a4 at 7/16 for 1/16 of a semibreve',
    ]);
    expect(notes(made)).toContain('e-2v-1-dessus.written-2.2');
  });

  it('that are one and the same differ nowhere', async () => {
    expect((await leaf('K', 'K')).differences).toEqual([]);
  });

  it('whose bars are not the same stand in two pictures, the other after the first', async () => {
    const text = AIR.replace('4. g4 8 a 2 c5 |', '<K: 2 g4 c5 | ; L: omit>').replace(
      '1 e3            |',
      '<K: 1 e3 | ; L: omit>',
    );
    const made = await leaf('K', 'L', 0, projectOf(noFiles, 'air.bent', text));
    expect(made.pictures).toHaveLength(2);
    expect(notes({ ...made, pictures: made.pictures.slice(1) }).every((id) => id.includes('.written-'))).toBe(true);
  });

  it('lead each to its own text', () => {
    const text = (id: string): string => {
      const place = placeOfNote(air, id, 'K', 'L');
      const [line = 0, from, to] = [place?.start.line, place?.start.character, place?.end.character];
      return AIR.split('\n')[line]?.slice(from, to) ?? '';
    };
    expect(text('e-2v-1-dessus-1.3.K.1')).toBe('e');
    expect(text('e-2v-1-dessus.written-1.3.L.1')).toBe('f');
    expect(text('e-2v-1-dessus.written-1.1')).toContain('c5');
  });
});
