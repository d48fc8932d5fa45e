/** The temperaments that have a name: the schemes of the vocabulary made into circles. */
import { type TemperamentEntry, temperaments } from '../../grammar/vocabulary/temperaments';
import { fifthName, noteInWords } from './fifths';
import { placesFrom, regular, type Temperament, USUAL_FIRST } from './temperament';
import { inWords, PURE, type Tempering, temperingFrom } from './tempering';

const NAMES = placesFrom(USUAL_FIRST).map((place, index) =>
  index === 11 ? fifthName(place, USUAL_FIRST) : fifthName(place),
);

function circleOf({ name, title, scheme, note }: TemperamentEntry): Temperament {
  const byFifth = new Map<string, Tempering>();
  for (const { fifths, by } of scheme) {
    for (const fifth of fifths.split(' ')) byFifth.set(fifth, temperingFrom(by));
  }
  return {
    name,
    title,
    first: USUAL_FIRST,
    fifths: NAMES.map((fifth) => byFifth.get(fifth) ?? PURE),
    ...(note === undefined ? {} : { note }),
  };
}

const circles = new Map(temperaments.map((entry) => [entry.name, circleOf(entry)]));

/** A temperament that needs no definition, by its name. */
export const builtIn = (name: string): Temperament | undefined => circles.get(name);

export const EQUAL = circles.get('equal') as Temperament;

/**
 * Eleven equal narrow fifths and what is left.
 * @param first the flattest note, on the line of fifths
 */
export function meantone(tempering: Tempering, first = USUAL_FIRST): Temperament {
  const part = inWords(tempering).replace(/^-/, '').replace(/ sc$/, '');
  const wolf = fifthName(first + 11, first);
  return {
    name: `meantone ${part} wolf ${wolf}`,
    title: `${part.replace(/ pc$/, '')}-comma meantone${part.endsWith('pc') ? ' (Pythagorean comma)' : ''}, its notes from ${noteInWords(first)} to ${noteInWords(first + 11)}`,
    first,
    fifths: regular(tempering, first),
  };
}
