/** The temperaments that can be chosen by name without defining them, each with its scheme of fifths in words. */

export interface TemperamentName {
  readonly name: string;
  /** Which fifths are how far from pure; sc is the syntonic, pc the Pythagorean comma. */
  readonly describe: string;
}

/** Where an author states the scheme without saying which comma is divided, the Pythagorean one is taken: it closes the circle. */
export const temperaments: readonly TemperamentName[] = [
  { name: 'equal', describe: 'all twelve fifths narrow by 1/12 pc' },
  { name: 'pythagorean', describe: 'eleven pure fifths, g#-eb narrow by 1 pc' },
  { name: 'werckmeister-3', describe: 'Werckmeister 1691, the third: c-g, g-d, d-a, b-f# narrow by 1/4 pc' },
  { name: 'kirnberger-2', describe: 'Kirnberger: d-a and a-e narrow by 1/2 sc' },
  { name: 'kirnberger-3', describe: 'Kirnberger 1779: c-g, g-d, d-a, a-e narrow by 1/4 sc' },
  { name: 'vallotti', describe: 'Vallotti: the six fifths from f to b narrow by 1/6 pc' },
  {
    name: 'young-1',
    describe: 'Young 1799, the first: the four fifths from c to e narrow by 3/16 sc, the four beside them less',
  },
  { name: 'young-2', describe: 'Young 1799, the second: the six fifths from c to f# narrow by 1/6 pc' },
  {
    name: 'neidhardt-1724-village',
    describe:
      'Neidhardt 1724, for a village (1732: for a small city): c-g, g-d, d-a, a-e narrow by 1/6 pc; e-b, b-f#, g#-eb, eb-bb by 1/12',
  },
  {
    name: 'neidhardt-1724-small-city',
    describe:
      'Neidhardt 1724, for a small city (1732: for a large one): c-g, g-d, d-a narrow by 1/6 pc; a-e, b-f#, f#-c#, c#-g#, bb-f, f-c by 1/12',
  },
  {
    name: 'neidhardt-1724-large-city',
    describe:
      'Neidhardt 1724, for a large city: c-g, g-d, d-a narrow by 1/6 pc; a-e, b-f#, f#-c#, c#-g#, eb-bb, bb-f by 1/12',
  },
  {
    name: 'neidhardt-1732-village',
    describe: 'Neidhardt 1732, for a village: c-g narrow by 1/6 pc; g-d, d-a by 1/4; e-b, f#-c#, eb-bb, f-c by 1/12',
  },
  { name: 'rameau-bb', describe: 'Rameau 1726, the seven fifths from bb to b narrow by 1/4 sc, g#-eb and eb-bb wide' },
  { name: 'rameau-bb-even', describe: 'the same seven narrow fifths, the other five equally wide' },
  {
    name: 'rameau-c',
    describe: 'Rameau 1726, the seven fifths from c to c# narrow by 1/4 sc, the four from g# to c wide',
  },
  { name: 'barca', describe: 'Barca 1786: the six fifths from c to f# narrow by 1/6 sc' },
  { name: 'sorge-1744', describe: 'Sorge 1744, the first: the four fifths from c to e narrow by 1/4 pc' },
  {
    name: 'sorge-1758',
    describe: 'Sorge 1758: c-g, g-d, d-a narrow by 1/6 pc; a-e, b-f#, f#-c#, g#-eb, eb-bb, bb-f by 1/12',
  },
];

export const temperamentNames: readonly string[] = temperaments.map(({ name }) => name);
