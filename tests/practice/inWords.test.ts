/** Practices in the words of reports and sheets (terms: common practice). */
import { expect, it } from 'vitest';
import { practiceInWords } from '../../server/practice/inWords';
import { practicesOfFile } from '../../server/readings/choices';
import { scoreOf } from '../helpers/scores';

it.each([
  ['overdot', 'dots stretched as by a second dot, the dot held'],
  ['overdot shortest silent in A', 'dots stretched to the shortest figure, the dot silent, in A'],
  ['inegal by-meter', 'unequal notes by the metre, 3:2, long before short'],
  [
    'inegal 8 2:1 stepwise short-long voice dessus',
    'unequal quavers, 2:1, short before long, by step only, voice dessus',
  ],
  ['assimilate duple', 'triplets in the time of the duple figures that they meet'],
  ['assimilate literal', 'duple figures and triplets each as they are written'],
  ['upbeats late in A voice dessus', 'late upbeats, in A, voice dessus'],
  ['hemiola', 'hemiolas'],
  ['literal', 'all as it is written'],
])('practice %s is “%s”', (typed, words) => {
  const music = 'section A\nsystem dessus G2 meter C\n  dessus | 1 c5 |||\n';
  const { environment } = scoreOf(`bentside 1\nvoice dessus\npractice ${typed}\n${music}`, 'written');
  expect(practicesOfFile(environment).map(practiceInWords)).toEqual([words]);
});
