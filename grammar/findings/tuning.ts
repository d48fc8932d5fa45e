import { entries } from './entry';

/** Findings about temperaments, keys and hands. */
export const tuningFindings = entries({
  'circle-not-closed': {
    level: 'warning',
    sentence: 'The fifths of “{name}” miss the circle by {cents} cents: {fifth} takes them, whatever its row says.',
    help: `Twelve fifths and seven octaves lead back to the same key, so the twelve distances from pure must come to one Pythagorean comma,
23.46 cents, on the narrow side. Where all twelve are told and come to another sum, the fifth that closes the circle is not
what its row says. Let it take the \`rest\`, or find the row that is wrong.

Before:

    temperament house from vallotti
      c-g -1/4 pc
      g#-eb -1/12 pc

After:

    temperament house from vallotti
      c-g -1/4 pc
      g#-eb rest`,
  },
  'circle-rest-assumed': {
    level: 'info',
    sentence:
      'No fifth of “{name}” takes the rest: {fifth} becomes {cents} cents {direction}, so that the circle closes.',
    help: `The rows of a temperament seldom come to a whole circle by themselves. The fifth that closes it, g#-eb where nothing else is said,
takes what the others leave. If that is meant, say so by \`rest\`, at this fifth or at another.

Before:

    temperament house
      c-g -1/4 sc
      g-d -1/4 sc

After:

    temperament house
      c-g -1/4 sc
      g-d -1/4 sc
      g#-eb rest`,
  },
  'beats-too-many': {
    level: 'error',
    sentence: 'So many beats would put {fifth} far from any fifth; it counts as pure.',
    help: `A fifth that beats as quickly as this row says, in this octave and at the file’s pitch, would lie more than 60 cents from pure.
Look whether the octave is right: the same tempering beats half as fast an octave lower.

Before:

    temperament house
      c2-g2 20 beats narrow

After:

    temperament house
      c2-g2 2.0 beats narrow`,
  },
});
