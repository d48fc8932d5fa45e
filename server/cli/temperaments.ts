/** What the command line says of tunings typed by words. */
import { temperaments } from '../../grammar/vocabulary/temperaments';
import { didYouMean } from './options';
import { shown } from './print';

/** That the words after `--tuning` or `--temperament` state no tuning. */
export const noTemperament = (words: string): string => {
  const meant = didYouMean(
    words,
    temperaments.map(({ name }) => name),
  );
  return `No temperament is called “${shown(words)}”.${meant} bentside tune lists them; a meantone is typed "meantone 1/4 wolf g#-eb".`;
};
