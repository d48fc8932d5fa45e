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
  'hand-stretch': {
    level: 'hint',
    counsel: true,
    sentence:
      'Bar {bar}: {low} with {high} in the {hand} hand, {interval}, is wider than most hands reach: spread it, let a note go early, or share it otherwise?',
    help: `However the notes are divided between the hands, one of them has more than a tenth to reach on the keyboard (a signed arpeggio: more
than an eleventh). What counts is where the keys lie: on a short octave C/E the twelfth from c to g lies as a tenth, so such
stretches often tell for what keyboard a piece was written. Nobody should force a stretch; if it hurts, spread the chord or
leave a note out, and ask a doctor or a physiotherapist about pain that stays.

Before:

    instrument harpsichord compass g1-d6
    …
    dessus | 1 f5-c6      |||
    basse  | 1 c2-g2-f3   |||

After:

    instrument harpsichord compass g1-d6
    …
    dessus | 1 f5-c6          |||
    basse  | 1 c2-g2-f3'arp   |||`,
  },
  'hand-tenth': {
    level: 'hint',
    counsel: true,
    sentence:
      'The {hand} hand has a tenth to reach in {bars}, here {low} with {high}: easy for some hands; others spread it, let a note go early or share it otherwise.',
    help: `However the notes are divided between the hands, one of them has a tenth to reach on the keyboard. Some hands do it without a thought,
others never, and neither is a fault: so the tenths of a hand are told once a piece, where the first of them stands, with
their bars. What counts is where the keys lie: on a short octave C/E the tenth from c to e lies as an octave. Small or
tender hands should not force it; if it hurts, spread the chord or leave a note out, and ask a doctor or a physiotherapist
about pain that stays.

Before:

    instrument harpsichord compass g1-d6
    …
    dessus | 1 f5-c6   |||
    basse  | 1 f2-c3-a |||

After:

    instrument harpsichord compass g1-d6
    …
    dessus | 1 f5-c6       |||
    basse  | 1 f2-c3-a'arp |||`,
  },
  'hand-full': {
    level: 'hint',
    counsel: true,
    sentence: 'Bar {bar}: the {hand} hand has {count} notes at once, however they are shared: does one end earlier?',
    help: `A hand has five fingers. More notes than ten, or more than five where the others lie too far off, can only be played one after
the other, by a pedal, or by a second player; often one of them is held longer than its drawn end.

Before:

    basse | 1 c2-e-g-c3-e-g |||

After:

    basse | 1 c2-e-g-c3-e |||`,
  },
  'key-still-held': {
    level: 'hint',
    counsel: true,
    sentence: 'Bar {bar}: {voice} strikes {note}, which {other} holds: the held note ends there, or is struck again.',
    help: `Two voices that meet on one key at one stroke are one stroke; that is common. Where one voice holds the key and another strikes
it, the string can only do one of the two, and a player decides which voice is to be heard. On two manuals both are possible.

Before:

    dessus | 1 g4   |||
    taille | 2 e4 g |||

After:

    dessus | 2 g4 _ |||
    taille | 2 e4 g |||`,
  },
  'note-without-string': {
    level: 'info',
    sentence:
      'No string of this tuning gives {note}, wanted in {bars} ({count}): its key sounds {other}, wanted in {against}; {advice}.',
    help: `A tuning that does not close its circle, such as quarter-comma meantone, has twelve notes and no more: g sharp or a flat, e flat or
d sharp. The bars that want each are named, with the retuning that serves best: at once, if nothing wants the other note;
between two bars, if the two never stand together; else the place of the wolf that leaves fewest notes false. A divided key
(\`split g#/ab\`) holds both.

Before you retune, ask the maker of the instrument or a tuner: a string that is drawn up too far can break and hurt.
\`bentside tune FILE --from "meantone 1/4 wolf c#-ab"\` tells how to set what moves.

Before:

    tuning meantone 1/4 wolf c#-ab
    …
    basse | 2 ab2 g#2 |||

After:

    instrument harpsichord compass g1-d6 split g#/ab
    tuning     meantone 1/4 wolf c#-ab
    …
    basse | 2 ab2 g#2 |||`,
  },
  'sour-interval': {
    level: 'info',
    sentence: 'Bar {bar}: {low} with {high}, {what}, sounds for {length} (the {rank} in this piece): meant?',
    help: `In the tuning of this reading a fifth howls or a third is as wide as a Pythagorean one, in a chord that lasts: composers used
such chords for grief or for colour, and avoided them elsewhere. They are ranked by how wide they are, how long they sound,
whether they stand on the first beat and how high they lie; the first five of a piece are told. Where the chord is meant,
nothing needs mending; else another tuning, or another place of the wolf, may suit the piece better.

Before:

    tuning meantone 1/4 wolf g#-eb
    …
    dessus | 1 c5   |||
    basse  | 1 ab3  |||

After:

    tuning meantone 1/4 wolf c#-ab
    …
    dessus | 1 c5   |||
    basse  | 1 ab3  |||`,
  },
});
