import type { SignTable } from './table';

const lettersCommon = "The letters are common practice; the book's own sign is not recorded.";

export const turk1789: SignTable = {
  table: 'turk-1789',
  title: 'D. G. Türk, Klavierschule, 1789',
  dotted: { citation: 'Klavierschule, ch. III, sec. 12' },
  whole: { citation: 'Klavierschule, ch. III, sec. 13, from memory' },
  rows: [
    {
      names: ['trill'],
      shapes: ['tr'],
      label: 'Trill',
      drawn: 'likely',
      note: lettersCommon,
      recipe: 'on beat, (+1 0) repeated, hold',
      played: 'confirmed',
      citation: 'Türk 1789, as told in Grove, “Shake”: it begins with the upper note',
    },
  ],
};
