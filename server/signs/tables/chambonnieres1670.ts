import type { SignTable } from './table';

const MARQUES = 'Démonstration des marques, 1670';

export const chambonnieres1670: SignTable = {
  table: 'chambonnieres-1670',
  title: 'Chambonnières, Pièces de clavessin, 1670',
  rows: [
    {
      names: ['cadence'],
      shapes: ['zz'],
      label: 'Cadence',
      drawn: 'memory',
      recipe: 'on beat, (+1 0) repeated, hold',
      played: 'memory',
      citation: `${MARQUES}, from memory`,
    },
    {
      names: ['pincement'],
      shapes: ['zs'],
      label: 'Pincement',
      drawn: 'likely',
      recipe: 'on beat, 0 -1 0, hold',
      played: 'memory',
      citation: `${MARQUES}, from memory`,
    },
    {
      names: ['double_cadence'],
      shapes: ['turn'],
      label: 'Double cadence',
      drawn: 'confirmed',
      recipe:
        'unresolved "it has two lower auxiliaries, no upper one, and a stop; the order of its notes is not known"',
      played: 'confirmed',
      citation: `${MARQUES}, as told in Grove, “Ornaments”`,
    },
    {
      names: ['port_de_voix'],
      shapes: ['plus'],
      label: 'Port de voix',
      drawn: 'likely',
      recipe: 'unresolved "a lower note slurred to the written one; whether before the beat or on it is disputed"',
      played: 'likely',
      citation: `${MARQUES}, from memory`,
      rivals: [
        { name: 'on_the_beat', recipe: 'on beat, -1 leaned, 0', advocates: 'One side of the dispute, from memory.' },
        { name: 'before_the_beat', recipe: 'before beat, -1, 0', advocates: 'The other side, from memory.' },
      ],
    },
    {
      names: ['coule'],
      shapes: ['stu'],
      label: 'Coulé',
      drawn: 'memory',
      recipe: 'on beat, spread up filled, hold',
      played: 'memory',
      citation: `${MARQUES}, from memory`,
    },
    {
      names: ['harpegement'],
      shapes: ['arpu'],
      label: 'Harpègement',
      drawn: 'likely',
      recipe: 'on beat, spread up, hold',
      played: 'likely',
      citation: `${MARQUES}, from memory`,
    },
    {
      names: ['harpegement_autre'],
      shapes: ['arpd'],
      label: 'Harpègement, autre',
      drawn: 'likely',
      recipe: 'on beat, spread down, hold',
      played: 'likely',
      citation: `${MARQUES}, from memory`,
    },
  ],
};
