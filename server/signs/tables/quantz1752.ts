import type { SignTable } from './table';

const lettersCommon = "The letters are common practice; the book's own sign is not recorded.";

export const quantz1752: SignTable = {
  table: 'quantz-1752',
  title: 'Quantz, Versuch, 1752',
  passing: { citation: 'Versuch, VIII.5–6, from memory' },
  dotted: { citation: 'Versuch, VIII.8, from memory' },
  whole: { citation: 'Versuch, VIII.9, from memory' },
  beforeRest: { citation: 'Versuch, VIII.11, from memory' },
  rows: [
    {
      names: ['trill'],
      shapes: ['tr'],
      label: 'Trill',
      drawn: 'likely',
      note: lettersCommon,
      recipe: 'on beat, (+1 0) repeated at 8 a pulse, -1 0',
      played: 'confirmed',
      citation: 'Versuch, IX.6: eight notes in the time of a pulse beat; IX.7, from memory, for beginning and end',
    },
  ],
};
