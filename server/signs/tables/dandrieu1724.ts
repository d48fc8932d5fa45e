import type { SignTable } from './table';

const SMUFL = 'Dandrieu 1724, as the Standard Music Font Layout describes his signs';

export const dandrieu1724: SignTable = {
  table: 'dandrieu-1724',
  title: 'Dandrieu, 1724',
  slowStart: { citation: 'Saint-Lambert, 1702: a long trill is better begun slowly' },
  rows: [
    {
      names: ['trill_with_suffix'],
      shapes: ['zr'],
      label: 'Trill with two-note suffix',
      drawn: 'confirmed',
      recipe: 'on beat, (+1 0) repeated, -1 0',
      played: 'confirmed',
      citation: SMUFL,
    },
    {
      names: ['port_de_voix_and_mordent'],
      shapes: ['azs'],
      label: 'Port de voix followed by multiple mordent',
      drawn: 'confirmed',
      recipe: 'before beat, -1, 0 -1 0 -1 0, hold',
      played: 'confirmed',
      citation: `${SMUFL}: “pre-beat port de voix followed by multiple mordent”`,
    },
  ],
};
