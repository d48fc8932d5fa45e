import type { SignTable } from './table';

const lettersCommon = "The letters are common practice; the book's own sign is not recorded.";
const zigzagCommon = "The zigzag is common practice; the book's own sign is not recorded.";
const CLEMENTI = 'Clementi 1801, from memory';

export const clementi1801: SignTable = {
  table: 'clementi-1801',
  title: 'Clementi, 1801',
  rows: [
    {
      names: ['shake'],
      shapes: ['tr'],
      label: 'Shake',
      drawn: 'likely',
      note: lettersCommon,
      recipe: 'on beat, (+1 0) repeated, -1 0',
      played: 'likely',
      citation: `${CLEMENTI}: from the upper note as a rule, a suffix is expected`,
    },
    {
      names: ['short_shake'],
      shapes: ['zz'],
      label: 'Short shake',
      drawn: 'doubtful',
      note: zigzagCommon,
      recipe: 'on beat, 0 +1 0, hold',
      played: 'doubtful',
      citation: `${CLEMENTI}: short shakes beginning with the note itself, chosen when the melody is legato from above`,
      rivals: [
        { name: 'upper', recipe: 'on beat, +1 0, hold', advocates: 'The same book: the rule is the upper note.' },
      ],
    },
  ],
};
