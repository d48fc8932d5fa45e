import { entries } from './entry';

/**
 * Counsel: what a teacher or a careful reader would remark on in the music itself. The source may well have it so; nothing here
 * is a fault of the text.
 */
export const counselFindings = entries({
  'consecutive-perfects': {
    level: 'hint',
    counsel: true,
    sentence: 'Consecutive {kind} {upper}/{lower}, {bars} ({above} over {below}): copyist’s or yours?',
    help: `Two voices go the same way from one perfect fifth, octave or unison to another, at once or from beat to beat with other notes
between. Counterpoint avoids it, so that it often betrays a wrong note. Four octaves or more in a row are a doubling and are
not told, nor are octaves and fifths over a rest or a double bar, or in a system of more than 24 voices. If the source is so and you keep it, nothing needs mending.

Before:

    dessus | 2 f5 e |||
    basse  | 2 f3 e |||

After:

    dessus | 2 f5 e |||
    basse  | 2 f3 c |||`,
  },
  'false-relation': {
    level: 'hint',
    counsel: true,
    sentence: 'Bar {bar}: {note} in {voice} against {against} in {other} within one beat: an accidental missing?',
    help: `A note and its own sharp or flat stand in two voices at once, or one directly after the other within a beat. English and French
composers loved it at cadences; elsewhere it mostly means that one of the two lacks a sign. Where the editor has written a
sign (\`c[#]5\`, \`c(n)5\`) it is not told.

Before:

    dessus | 2 c5 |||
    basse  | 2 c#3 |||

After:

    dessus | 2 c[#]5 |||
    basse  | 2 c#3 |||`,
  },
  'leading-note-unsigned': {
    level: 'hint',
    counsel: true,
    sentence:
      'At the cadence on {final} ({bars}) the leading note of {voice} has no sign: the source shows {shown}, the practice expects {expected} (editor’s).',
    help: `Where the bass falls a fifth, rises a fourth or falls a whole tone to the final, and a voice above leaves it for the step below
and comes back, that step is a semitone: sources before about 1700 leave the sign to the player. An edition adds it as the
editor's. A close in which the bass falls a semitone has none.

Before:

    dessus | 2 a4 g | 1 a |||
    basse  | 1 e3 | a2 |||

After:

    dessus | 2 a4 g[#] | 1 a |||
    basse  | 1 e3 | a2 |||`,
  },
  'accidental-ends': {
    level: 'hint',
    counsel: true,
    sentence:
      'Bar {bar}, {voice}: the {note} ends by the rule `{rule}`; the next note on its line is {next}. A player will ask.',
    help: `By this practice a written accidental holds for its note and what repeats it (\`note\`), or for the notes under its beam
(\`group\`). Soon after, the same note comes again in the bar without a sign and sounds otherwise: players of today will carry
the accidental on to it. A sign of the editor's answers them.

Before:

    accidentals note
    …
    dessus | 4 c#5 d c d |||

After:

    dessus | 4 c#5 d c[n] d |||`,
  },
  'accidental-other-voice': {
    level: 'hint',
    counsel: true,
    sentence:
      'Bar {bar}: {voice} strikes {note} on the line of {against} in {other}, without a sign by the rule `{rule}`. A player will ask.',
    help: `By the practices \`note\` and \`group\` an accidental binds its own voice only. Another voice strikes the same line of the same stave
while it is in force: whoever reads the stave at a glance will give it the accidental too. A sign of the editor's, one way or
the other, answers the question.

Before:

    accidentals note
    …
    dessus | 2 c#5 d |||
    taille | 4 e4 c5 2 d |||

After:

    dessus | 2 c#5 d |||
    taille | 4 e4 c[#]5 2 d |||`,
  },
  'octave-slip': {
    level: 'hint',
    counsel: true,
    sentence:
      '{voice}, {bars}: {note} leaps a seventh or more and back; {meant} would lie within a fourth of both its neighbours.',
    help: `A single note far above or below the notes on either side is often the right letter in the wrong octave. Leaps of a plain
octave, and two lines written as one, are not told.

Before:

    dessus | 4 a4 b c6 b4 |||

After:

    dessus | 4 a4 b c5 b4 |||`,
  },
  'bar-nearly-repeats': {
    level: 'hint',
    counsel: true,
    sentence:
      'Bar {bar} matches bar {earlier} in all voices but one note: {voice}, symbol {symbol}, {here} here, {there} there.',
    help: `Two bars of six notes or more are the same throughout but for one note, and that by a third at most or an octave. If the music
comes again on purpose, one of the two may be a slip of the scribe or of the copy. Neighbouring bars are not compared.

    dessus | 8 c5 d e f 4 g e | 1 d | 8 c5 d e f 4 g f |||    // e in the first bar, f in the third`,
  },
});
