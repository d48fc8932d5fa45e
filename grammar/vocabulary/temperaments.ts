/**
 * The temperaments that can be chosen by name without defining them.
 *
 * A scheme is typed as a user types his own: fifths by their lower and upper note, and the parts of a comma by which they are
 * narrow (-) or wide (+); sc is the syntonic comma, pc the Pythagorean. Fifths that are not named are pure. Where an author
 * does not say which comma he divides, the Pythagorean one is taken: it closes the circle.
 */

export interface TemperedFifths {
  /** `c-g g-d`. */
  readonly fifths: string;
  /** `-1/4 pc`, `+7/8 sc -1/2 pc`. */
  readonly by: string;
}

export interface TemperamentEntry {
  readonly name: string;
  /** Author and year, as far as they are known. */
  readonly title: string;
  readonly scheme: readonly TemperedFifths[];
  /** What is doubtful in it, or told otherwise elsewhere. */
  readonly note?: string;
}

const ALL_FIFTHS = 'eb-bb bb-f f-c c-g g-d d-a a-e e-b b-f# f#-c# c#-g# g#-eb';

const NEIDHARDT_NAMES =
  'The sets of 1724 and 1732 bear the names of one another’s places: a village of the one is a small city of the other.';
const SCHISMA_ELSEWHERE = 'Other lists put the schisma, here between f# and c#, between g# and eb.';
const RAMEAU_OPEN =
  'Rameau tells the seven narrow fifths; how the others share what is left is one modern reading of several.';

export const temperaments: readonly TemperamentEntry[] = [
  { name: 'equal', title: 'equal temperament', scheme: [{ fifths: ALL_FIFTHS, by: '-1/12 pc' }] },
  { name: 'pythagorean', title: 'eleven pure fifths', scheme: [{ fifths: 'g#-eb', by: '-1 pc' }] },
  {
    name: 'werckmeister-3',
    title: 'Werckmeister 1691, the third',
    scheme: [{ fifths: 'c-g g-d d-a b-f#', by: '-1/4 pc' }],
    note: 'Werckmeister does not say which comma he divides.',
  },
  {
    name: 'kirnberger-2',
    title: 'Kirnberger, the second',
    scheme: [
      { fifths: 'd-a a-e', by: '-1/2 sc' },
      { fifths: 'f#-c#', by: '-1 pc +1 sc' },
    ],
    note: SCHISMA_ELSEWHERE,
  },
  {
    name: 'kirnberger-3',
    title: 'Kirnberger 1779, the third',
    scheme: [
      { fifths: 'c-g g-d d-a a-e', by: '-1/4 sc' },
      { fifths: 'f#-c#', by: '-1 pc +1 sc' },
    ],
    note: SCHISMA_ELSEWHERE,
  },
  { name: 'vallotti', title: 'Vallotti', scheme: [{ fifths: 'f-c c-g g-d d-a a-e e-b', by: '-1/6 pc' }] },
  {
    name: 'young-1',
    title: 'Young 1799, the first',
    scheme: [
      { fifths: 'c-g g-d d-a a-e', by: '-3/16 sc' },
      { fifths: 'e-b b-f# bb-f f-c', by: '+3/16 sc -1/4 pc' },
    ],
  },
  {
    name: 'young-2',
    title: 'Young 1799, the second',
    scheme: [{ fifths: 'c-g g-d d-a a-e e-b b-f#', by: '-1/6 pc' }],
  },
  {
    name: 'neidhardt-1724-village',
    title: 'Neidhardt 1724, for a village; 1732, for a small city',
    scheme: [
      { fifths: 'c-g g-d d-a a-e', by: '-1/6 pc' },
      { fifths: 'e-b b-f# g#-eb eb-bb', by: '-1/12 pc' },
    ],
    note: NEIDHARDT_NAMES,
  },
  {
    name: 'neidhardt-1724-small-city',
    title: 'Neidhardt 1724, for a small city; 1732, for a large one',
    scheme: [
      { fifths: 'c-g g-d d-a', by: '-1/6 pc' },
      { fifths: 'a-e b-f# f#-c# c#-g# bb-f f-c', by: '-1/12 pc' },
    ],
    note: NEIDHARDT_NAMES,
  },
  {
    name: 'neidhardt-1724-large-city',
    title: 'Neidhardt 1724, for a large city',
    scheme: [
      { fifths: 'c-g g-d d-a', by: '-1/6 pc' },
      { fifths: 'a-e b-f# f#-c# c#-g# eb-bb bb-f', by: '-1/12 pc' },
    ],
  },
  {
    name: 'neidhardt-1732-village',
    title: 'Neidhardt 1732, for a village',
    scheme: [
      { fifths: 'c-g', by: '-1/6 pc' },
      { fifths: 'g-d d-a', by: '-1/4 pc' },
      { fifths: 'e-b f#-c# eb-bb f-c', by: '-1/12 pc' },
    ],
    note: NEIDHARDT_NAMES,
  },
  {
    name: 'rameau-bb',
    title: 'Rameau 1726, from b flat',
    scheme: [
      { fifths: 'bb-f f-c c-g g-d d-a a-e e-b', by: '-1/4 sc' },
      { fifths: 'g#-eb eb-bb', by: '+7/8 sc -1/2 pc' },
    ],
    note: RAMEAU_OPEN,
  },
  {
    name: 'rameau-bb-even',
    title: 'Rameau 1726, from b flat, the wide fifths equal',
    scheme: [
      { fifths: 'bb-f f-c c-g g-d d-a a-e e-b', by: '-1/4 sc' },
      { fifths: 'b-f# f#-c# c#-g# g#-eb eb-bb', by: '+7/20 sc -1/5 pc' },
    ],
    note: RAMEAU_OPEN,
  },
  {
    name: 'rameau-c',
    title: 'Rameau 1726, from c',
    scheme: [
      { fifths: 'c-g g-d d-a a-e e-b b-f# f#-c#', by: '-1/4 sc' },
      { fifths: 'g#-eb eb-bb bb-f f-c', by: '+7/16 sc -1/4 pc' },
    ],
    note: RAMEAU_OPEN,
  },
  {
    name: 'barca',
    title: 'Barca 1786',
    scheme: [
      { fifths: 'c-g g-d d-a a-e e-b b-f#', by: '-1/6 sc' },
      { fifths: 'eb-bb', by: '-1 pc +1 sc' },
    ],
    note: 'The ideal form; other lists differ from it by as much as 0.65 cents.',
  },
  { name: 'sorge-1744', title: 'Sorge 1744, the first', scheme: [{ fifths: 'c-g g-d d-a a-e', by: '-1/4 pc' }] },
  {
    name: 'sorge-1758',
    title: 'Sorge 1758',
    scheme: [
      { fifths: 'c-g g-d d-a', by: '-1/6 pc' },
      { fifths: 'a-e b-f# f#-c# g#-eb eb-bb bb-f', by: '-1/12 pc' },
    ],
  },
];

export const temperamentNames: readonly string[] = temperaments.map(({ name }) => name);

/** The scheme in a line: `Vallotti: f-c, c-g, g-d, d-a, a-e, e-b -1/6 pc`. */
export const schemeInWords = ({ title, scheme }: TemperamentEntry): string =>
  `${title}: ${scheme.map(({ fifths, by }) => `${fifths.replaceAll(' ', ', ')} ${by}`).join('; ')}`;
