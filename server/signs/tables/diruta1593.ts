import type { Rival, SignTable } from './table';

const TRANSILVANO = 'Il Transilvano, 1593, from memory';
const letterCameLater = 'The book draws no sign; the letter came into use later.';

const TWICE: Rival = {
  name: 'twice',
  recipe: 'on beat, 0 +1 0 +1 0, hold',
  advocates: 'The same book: one or two alternations.',
};

export const diruta1593: SignTable = {
  table: 'diruta-1593',
  title: 'Diruta, Il Transilvano, 1593',
  missing: 'His groppo, clamation and accento are written out, have no sign and so no rows.',
  rows: [
    {
      names: ['tremoletto_of_a_short_note'],
      shapes: ['t'],
      label: 'Tremoletto, of a quaver or less',
      drawn: 'memory',
      note: letterCameLater,
      when: ['short'],
      recipe: 'on beat, 0 +1 0, hold',
      played: 'memory',
      citation: TRANSILVANO,
      rivals: [TWICE],
    },
    {
      names: ['tremolo'],
      shapes: ['t'],
      label: 'Tremolo',
      drawn: 'memory',
      note: letterCameLater,
      recipe: 'on beat, (0 +1) repeated for 1/2, 0',
      played: 'memory',
      citation: `${TRANSILVANO}: from the written note, with the note above, for half of the value`,
    },
    {
      names: ['tremoletto'],
      shapes: ['t'],
      label: 'Tremoletto',
      drawn: 'memory',
      note: letterCameLater,
      recipe: 'on beat, 0 +1 0, hold',
      played: 'memory',
      citation: `${TRANSILVANO}: on crotchets, too`,
      rivals: [TWICE],
    },
  ],
};
