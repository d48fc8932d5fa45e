import type { SignTable } from './table';

const HUNTER = 'D. Hunter, 1996';
const CANDIDATE = 'One of the candidates, from memory.';

/** No English theorist of the time explains the strokes: every reading is offered, none is chosen. */
export const englishStrokes: SignTable = {
  table: 'english-strokes',
  title: 'The strokes of English virginal music, about 1570 to 1650',
  missing:
    'The manuscript table of Bevin, about 1630, the only English explanation, has several graces written out that are not recorded here; nor has the cross of Reincken, 1687, a shake that strikes from below, a row.',
  rows: [
    {
      names: ['single_stroke'],
      shapes: ['s'],
      label: 'Single stroke',
      drawn: 'memory',
      recipe:
        'unresolved "the strokes are explained by no English theorist of their time; one stroke has many readings"',
      played: 'doubtful',
      citation: `${HUNTER}: not used as a sign of a grace until about 1570`,
      rivals: [
        { name: 'slide', recipe: 'on beat, -2 -1 0, hold', advocates: CANDIDATE },
        { name: 'appoggiatura', recipe: 'on beat, -1 leaned, 0', advocates: CANDIDATE },
        { name: 'mordent', recipe: 'on beat, 0 -1 0, hold', advocates: CANDIDATE },
      ],
    },
    {
      names: ['double_stroke'],
      shapes: ['ss'],
      label: 'Double stroke',
      drawn: 'memory',
      recipe: 'unresolved "in nearly every source and explained in none; even the first note of a shake is open"',
      played: 'doubtful',
      citation: `${HUNTER}: usage of the sixteenth century associates it with a form of shake`,
      rivals: [
        { name: 'shake_main', recipe: 'on beat, 0 +1 0, hold', advocates: CANDIDATE },
        {
          name: 'shake_upper',
          recipe: 'on beat, +1 0 +1 0, hold',
          advocates: 'Reincken, Hortus musicus, 1687, whose two strokes are a shake that strikes from above.',
        },
        { name: 'shake_long', recipe: 'on beat, (+1 0) repeated, hold', advocates: CANDIDATE },
        { name: 'mordent', recipe: 'on beat, 0 -1 0, hold', advocates: CANDIDATE },
      ],
    },
  ],
};
