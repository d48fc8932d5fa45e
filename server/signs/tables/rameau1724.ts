import type { SignTable } from './table';

const TABLE = 'Table of 1724, taken over about 1731';
const fromMemory = `${TABLE}, from memory`;
const grove = `${TABLE}, as told in Grove, “Ornaments”`;

/**
 * A note slurred to one that bears a cadence serves as the first note of that cadence. The liaison, a curve over several
 * notes that are held, is no sign of a note and has no row.
 */
export const rameau1724: SignTable = {
  table: 'rameau-1724',
  title: 'Rameau, Pièces de clavessin, 1724',
  slowStart: { citation: 'Saint-Lambert, 1702: a long trill is better begun slowly' },
  rows: [
    {
      names: ['cadence'],
      shapes: ['zzz'],
      label: 'Cadence',
      drawn: 'memory',
      recipe: 'on beat, (+1 0) repeated, hold',
      played: 'memory',
      citation: fromMemory,
      rivals: [
        {
          name: 'unbroken',
          recipe: 'on beat, (+1 0) repeated',
          advocates: 'The table itself, where the strokes last the whole value.',
        },
      ],
    },
    {
      names: ['cadence_appuyee'],
      shapes: ['zl'],
      label: 'Cadence appuyée',
      drawn: 'memory',
      recipe: 'on beat, +1 leaned, (0 +1) repeated, hold',
      played: 'memory',
      citation: fromMemory,
    },
    {
      names: ['double_cadence'],
      shapes: ['zr'],
      label: 'Double cadence',
      drawn: 'confirmed',
      recipe: 'on beat, (+1 0) repeated, -1 0',
      played: 'confirmed',
      citation: `${grove}: identical with d'Anglebert's tremblement et pincé`,
    },
    {
      names: ['double'],
      shapes: ['turn'],
      label: 'Doublé',
      drawn: 'confirmed',
      recipe: 'on beat, +1 0 -1 0',
      played: 'confirmed',
      citation: grove,
    },
    {
      names: ['pince'],
      shapes: ['ca'],
      label: 'Pincé',
      drawn: 'memory',
      recipe: 'on beat, 0 -1 0 -1 0, hold',
      played: 'likely',
      citation: `${fromMemory}; the number of strokes is doubtful`,
      rivals: [{ name: 'single', recipe: 'on beat, 0 -1 0, hold', advocates: 'The shorter pincé, from memory.' }],
    },
    {
      names: ['coulez'],
      shapes: ['cb'],
      label: 'Coulez',
      drawn: 'memory',
      when: ['falling'],
      recipe: 'on beat, +1 leaned, 0',
      played: 'memory',
      citation: fromMemory,
    },
    {
      names: ['port_de_voix'],
      shapes: ['cb'],
      label: 'Port de voix',
      drawn: 'memory',
      recipe: 'on beat, -1 leaned, 0',
      played: 'memory',
      citation: fromMemory,
    },
    {
      names: ['pince_et_port_de_voix'],
      shapes: ['cb', 'ca'],
      label: 'Pincé et port de voix',
      drawn: 'memory',
      recipe: 'on beat, -1 leaned, 0 -1 0, hold',
      played: 'memory',
      citation: fromMemory,
    },
    {
      names: ['son_coupe'],
      shapes: ['dash'],
      label: 'Son coupé',
      drawn: 'memory',
      recipe: 'on beat, 0 for 1/2, rest',
      played: 'doubtful',
      citation: `${fromMemory}; the half is doubtful`,
    },
    {
      names: ['suspension'],
      shapes: ['arch'],
      label: 'Suspension',
      drawn: 'memory',
      recipe: 'on beat, rest 1/4, 0',
      played: 'memory',
      citation: `${fromMemory}; the length of the silence is common practice`,
    },
    {
      names: ['arpegement_simple'],
      shapes: ['scu'],
      label: 'Arpègement simple',
      drawn: 'memory',
      recipe: 'on beat, spread up, hold',
      played: 'memory',
      citation: fromMemory,
    },
    {
      names: ['arpegement_figure'],
      shapes: ['scs'],
      label: 'Arpègement figuré',
      drawn: 'memory',
      recipe: 'on beat, spread up filled, hold',
      played: 'memory',
      citation: fromMemory,
    },
  ],
};
