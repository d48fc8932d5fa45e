import type { SignTable } from './table';

const FACULTAD = 'Correa 1626, from memory';
const letterBorrowed = 'The book is not known to draw a sign; the letter is borrowed from later sources.';
const CANDIDATE = 'One of the two candidates, from memory.';
const SILENT = 'unresolved "the name is known, its notes are not recorded here"';

export const correa1626: SignTable = {
  table: 'correa-1626',
  title: 'Correa, 1626',
  rows: [
    {
      names: ['quiebro_senzillo'],
      shapes: ['t'],
      label: 'Quiebro senzillo',
      drawn: 'doubtful',
      note: letterBorrowed,
      recipe: SILENT,
      played: 'likely',
      citation: FACULTAD,
      rivals: [
        { name: 'upper', recipe: 'on beat, 0 +1 0, hold', advocates: CANDIDATE },
        { name: 'lower', recipe: 'on beat, 0 -1 0, hold', advocates: CANDIDATE },
      ],
    },
    {
      names: ['quiebro_reiterado'],
      shapes: ['t'],
      label: 'Quiebro reiterado',
      drawn: 'doubtful',
      note: letterBorrowed,
      recipe: SILENT,
      played: 'likely',
      citation: FACULTAD,
      rivals: [
        { name: 'as_1565', recipe: 'on beat, 0 +1 0 +1 0 +1, hold', advocates: 'The quiebro of Santa María, 1565.' },
      ],
    },
    {
      names: ['redoble_senzillo'],
      shapes: ['r'],
      label: 'Redoble senzillo',
      drawn: 'likely',
      recipe: SILENT,
      played: 'likely',
      citation: `${FACULTAD}: only on a note with a semitone beside it`,
    },
    {
      names: ['redoble_reiterado'],
      shapes: ['r'],
      label: 'Redoble reiterado',
      drawn: 'likely',
      recipe: SILENT,
      played: 'likely',
      citation: `${FACULTAD}: only on a note with a semitone beside it`,
      rivals: [
        {
          name: 'as_1565',
          recipe: 'on beat, 0 -1 0 +1 0 +1 0 +1, hold',
          advocates: 'The redoble of Santa María, 1565.',
        },
      ],
    },
  ],
};
