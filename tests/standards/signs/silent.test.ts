/**
 * Books of which no notes can be tested: what they play is doubtful or disputed, and is offered, never chosen silently.
 * Le Roux 1705, the strokes of English virginal music, Correa 1626, both Muffats, Clementi 1801.
 */
import { describe, expect, it } from 'vitest';
import { shapeByName } from '../../../grammar/vocabulary/shapes';
import { decidedIn } from '../../../server/document/decided';
import { signTableByName } from '../../../server/signs/tables';
import { analysed } from '../../helpers/music';
import { notes, type Passage, problemsIn } from '../../helpers/realised';

const by = (table: string, lane: string): Passage => ({ lanes: [lane], table, tempo: '4 at 60' });

describe('Le Roux 1705', () => {
  it('plays d’Anglebert’s signs (Grove, “Ornaments”: confirmed)', () => {
    expect(notes(by('le-roux-1705', "2 d5'zc"))).toBe(notes(by('anglebert-1689', "2 d5'zc")));
  });
});

describe('The English strokes', () => {
  it('are explained by no English theorist (D. Hunter, 1996: confirmed): the note stays plain, and that is told', () => {
    expect(notes(by('english-strokes', "2 d5'ss"))).toBe('d5');
    expect(problemsIn(by('english-strokes', "2 d5'ss"))).toEqual(['sign-unresolved']);
  });

  it('are a shake from above where the editor follows Reincken, Hortus musicus, 1687 (confirmed)', () => {
    expect(notes(by('english-strokes', "2 d5'ss(shake_upper)"))).toBe('e5 d5 e5 d5');
    expect(problemsIn(by('english-strokes', "2 d5'ss(shake_upper)"))).toEqual([]);
  });
});

describe('Correa 1626', () => {
  it('names his quiebros and redobles, whose notes are not recorded', () => {
    expect(problemsIn(by('correa-1626', "2 d5'r"))).toEqual(['sign-unresolved']);
  });
});

describe.each(['muffat-1690', 'muffat-1739', 'clementi-1801'])('%s', (name) => {
  const rows = signTableByName(name)?.rows ?? [];
  const onNotes = rows.filter(({ shapes }) => shapes.every((shape) => shapeByName(shape)?.drawnFor === 'note'));

  it.each(onNotes.map((row) => [row.label, row] as const))(
    '%s: what nothing confirms is played with its doubt on the list of decisions, or not played, and told',
    (_, { shapes, recipe }) => {
      const text = [
        'bentside 1',
        'voice dessus',
        `signs ${name}`,
        'reading played',
        'tempo 4 at 60',
        'system dessus G2',
        `  dessus | 2 d5${shapes.map((shape) => `'${shape}`).join('')} |||`,
      ].join('\n');
      const { decisions, findings } = decidedIn(analysed(text));
      if (recipe.startsWith('unresolved')) expect(findings.map(({ code }) => code)).toEqual(['sign-unresolved']);
      else expect(decisions.map(({ played }) => played)).toEqual([expect.stringMatching(/^(memory|likely|doubtful)$/)]);
    },
  );
});
