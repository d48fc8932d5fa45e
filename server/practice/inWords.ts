/** Practices of rhythm as reports and sheets name them. */
import { valuesInWords } from '../score/amounts';
import type { Assimilate, How, Inegal, Overdot, Practice, PracticeWord } from './practice';

/** What a practice is about, where no more is said of it. */
export const practiceNames: Readonly<Record<PracticeWord, string>> = {
  overdot: 'stretched dots',
  inegal: 'unequal notes',
  assimilate: 'duple figures against triplets',
  snap: 'sharpened snaps',
  upbeats: 'late upbeats',
  hemiola: 'hemiolas',
  literal: 'all as it is written',
};

const AMOUNTS: Readonly<Record<Overdot['amount'], string>> = {
  double: 'as by a second dot',
  shortest: 'to the shortest figure',
};

const DOTS: Readonly<Record<Overdot['dot'], string>> = { held: 'the dot held', silent: 'the dot silent' };

const ASSIMILATED: Readonly<Record<Assimilate['to'], string>> = {
  triplet: 'duple figures in the time of the triplets that they meet',
  duple: 'triplets in the time of the duple figures that they meet',
  literal: 'duple figures and triplets each as they are written',
};

const inegalInWords = ({ value, ratio: { long, short }, stepwise, longFirst }: Inegal): string =>
  [
    value === undefined ? 'unequal notes by the metre' : `unequal ${valuesInWords({ base: value, dots: 0 })}`,
    `${long}:${short}`,
    longFirst ? 'long before short' : 'short before long',
    ...(stepwise ? ['by step only'] : []),
  ].join(', ');

function howInWords(how: How): string {
  if (how.word === 'overdot') return `dots stretched ${AMOUNTS[how.amount]}, ${DOTS[how.dot]}`;
  if (how.word === 'inegal') return inegalInWords(how);
  return how.word === 'assimilate' ? ASSIMILATED[how.to] : practiceNames[how.word];
}

/** "late upbeats, in B, voice basse": what is done, and where, if not everywhere. */
export const practiceInWords = ({ how, section, voice }: Practice): string =>
  [
    howInWords(how),
    ...(section === undefined ? [] : [`in ${section}`]),
    ...(voice === undefined ? [] : [`voice ${voice}`]),
  ].join(', ');
