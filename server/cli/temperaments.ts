/** What the command line says of tunings typed by words. */
import { temperaments } from '../../grammar/vocabulary/temperaments';
import { ownTemperaments } from '../readings/tunings';
import type { Environment } from '../score/environment';
import { didYouMean } from './options';
import { shown } from './print';

/** That the words after `--tuning` or `--temperament` state no tuning, neither a known one nor one of the file. */
export function noTemperament(words: string, environment: Environment): string {
  const own = ownTemperaments(environment);
  const meant = didYouMean(words, [...own, ...temperaments.map(({ name }) => name)]);
  const defined = own.length === 0 ? '' : ` The file defines ${own.map(shown).join(', ')};`;
  return `No temperament is called “${shown(words)}”.${meant}${defined} bentside tune lists ${own.length === 0 ? 'them' : 'others'}; a meantone is typed "meantone 1/4 wolf g#-eb".`;
}
