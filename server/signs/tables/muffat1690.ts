import type { SignTable } from './table';

const APPARATUS = 'Apparatus musico-organisticus, 1690, rubric of ornaments, from memory';

export const muffat1690: SignTable = {
  table: 'muffat-1690',
  title: 'Georg Muffat, Apparatus musico-organisticus, 1690',
  rows: [
    {
      names: ['trill'],
      shapes: ['t'],
      label: 'Trill',
      drawn: 'doubtful',
      recipe: 'on beat, (+1 0) repeated, hold',
      played: 'doubtful',
      citation: APPARATUS,
    },
    {
      names: ['trill_with_suffix'],
      shapes: ['tw'],
      label: 'Trill with suffix',
      drawn: 'doubtful',
      recipe: 'on beat, (+1 0) repeated, -1 0',
      played: 'doubtful',
      citation: APPARATUS,
    },
    {
      names: ['mordent'],
      shapes: ['zs'],
      label: 'Mordent',
      drawn: 'doubtful',
      recipe: 'on beat, 0 -1 0, hold',
      played: 'doubtful',
      citation: APPARATUS,
    },
  ],
};
