/** Which tunings can be chosen for a score, by the words that stand after `tuning`. */
import { temperamentNames } from '../../../grammar/vocabulary/temperaments';
import { ownTemperaments, pitchOf, tuningByWords } from '../../readings/tunings';
import type { Project } from '../../workspace/project';
import type { TuningOffer } from '../protocol';

const MEANTONES: readonly string[] = ['1/4', '2/7', '1/5', '1/6', '1/6 pc'].map((part) => `meantone ${part}`);

/** The temperaments that the file defines, then those that need no definition. */
export function tuningOffers({ environment }: Project): TuningOffer[] {
  return [...new Set([...ownTemperaments(environment), ...temperamentNames, ...MEANTONES])].flatMap((words) => {
    const tuning = tuningByWords(environment, words, pitchOf(environment));
    return tuning === undefined ? [] : [{ words, title: tuning.temperament.title }];
  });
}
