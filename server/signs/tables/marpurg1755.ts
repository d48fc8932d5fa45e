import type { SignTable } from './table';

const lettersCommon = "The letters are common practice; the book's own sign is not recorded.";

export const marpurg1755: SignTable = {
  table: 'marpurg-1755',
  title: 'Marpurg, 1755',
  dotted: { citation: 'Marpurg, 1755, from memory: two thirds of a dotted note' },
  rows: [
    {
      names: ['trill'],
      shapes: ['tr'],
      label: 'Trill',
      drawn: 'likely',
      note: lettersCommon,
      recipe: 'on beat, (+1 0) repeated, hold',
      played: 'confirmed',
      citation: 'Marpurg 1755, as told in Grove, “Shake”: a series of descending appoggiaturas',
    },
    {
      names: ['slide_trill_with_suffix'],
      shapes: ['zhbr'],
      label: 'Slide-trill with one-note suffix',
      drawn: 'confirmed',
      recipe: 'unresolved "a slide, a trill and one closing note; which note that is, is not recorded"',
      played: 'confirmed',
      citation: 'The Standard Music Font Layout, which names the sign for Marpurg',
    },
  ],
};
