import type { SignTable } from './table';

/** The music of the two examples as a modern dictionary reprints them, with its own date. */
const BRENET = 'Santa María 1565, as reprinted by Brenet, Dictionnaire pratique et historique, example II';
const letterBorrowed = 'The book is not known to draw a sign; the letter is borrowed from later sources.';

export const santaMaria1565: SignTable = {
  table: 'santa-maria-1565',
  title: 'Santa María, 1565',
  rows: [
    {
      names: ['quiebro', 'quiebro_reiterado'],
      shapes: ['t'],
      label: 'Quiebro reiterado',
      drawn: 'doubtful',
      note: letterBorrowed,
      recipe: 'on beat, 0 +1 0 +1 0 +1, hold',
      played: 'confirmed',
      citation: `${BRENET}: e f sharp e f sharp e f sharp, then e; the sharp is that of the reprint`,
    },
    {
      names: ['quiebro_senzillo'],
      shapes: ['t'],
      label: 'Quiebro senzillo',
      drawn: 'doubtful',
      note: letterBorrowed,
      recipe: 'unresolved "whether it goes to the note above or below is not settled"',
      played: 'likely',
      citation: 'From memory, of Spanish books at large; whether this one has it is not recorded',
      rivals: [
        { name: 'upper', recipe: 'on beat, 0 +1 0, hold', advocates: 'Likely, from memory.' },
        { name: 'lower', recipe: 'on beat, 0 -1 0, hold', advocates: 'Likely, from memory.' },
      ],
    },
    {
      names: ['redoble'],
      shapes: ['r'],
      label: 'Redoble',
      drawn: 'doubtful',
      note: letterBorrowed,
      recipe: 'on beat, 0 -1 0 +1 0 +1 0 +1, hold',
      played: 'confirmed',
      citation: `${BRENET}: e d e f sharp e f sharp e f sharp, then e; the sharp is that of the reprint`,
    },
  ],
};
