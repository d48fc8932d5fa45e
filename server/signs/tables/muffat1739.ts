import type { SignTable } from './table';

const COMPONIMENTI = 'Particolari segni delle maniere, 1739, from memory';

export const muffat1739: SignTable = {
  table: 'muffat-1739',
  title: 'Gottlieb Muffat, Componimenti, 1739',
  missing:
    'Trill with suffix, mordent, appoggiaturas, groppo, tirata, spread chords and holding curve have no rows: how their signs look is not recorded.',
  rows: [
    {
      names: ['trill'],
      shapes: ['t'],
      label: 'Trill',
      drawn: 'doubtful',
      note: "The letter is that of Georg Muffat, 1690; the book's own sign is not recorded.",
      recipe: 'on beat, (+1 0) repeated, hold',
      played: 'doubtful',
      citation: COMPONIMENTI,
    },
    {
      names: ['trill_from_below'],
      shapes: ['zu'],
      label: 'Trill from below',
      drawn: 'likely',
      recipe: 'on beat, -2 -1, (0 +1) repeated, hold',
      played: 'doubtful',
      citation: COMPONIMENTI,
    },
    {
      names: ['trill_from_below_with_suffix'],
      shapes: ['zur'],
      label: 'Trill from below with suffix',
      drawn: 'likely',
      recipe: 'on beat, -2 -1, (0 +1) repeated, 0 -1 0',
      played: 'doubtful',
      citation: COMPONIMENTI,
    },
  ],
};
