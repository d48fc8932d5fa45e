import { entries } from './entry';

/** Each format that needs clefs tells it under a code of its own. */
export const NO_CLEF = {
  level: 'info',
  sentence: 'The stave {stave} has no clef; the export gives it {clef}.',
  help: `Without a clef a stave cannot be drawn. State the source's clef in the head of the first system:
\`\`\`
system upper C1 lower F4
\`\`\``,
} as const;

/** What becomes of hints of performance where only what is written is shown. */
export const hintLeftOut = (where: 'export' | 'picture') =>
  ({
    level: 'info',
    sentence: `The hint {hint} in {voice} is not in the ${where} ({bars}).`,
    help: `Hints of performance (\`overdot\`, \`inegal\`, \`assimilate\`, \`snap\`, \`literal\`) change what is played and not
what is written. The ${where} has what is written; in the rhythm of a reading (\`--rhythm played\`) it has what they say.`,
  }) as const;

/** What an export of any format leaves out, writes otherwise than the source, or refuses. Each is told once a voice. */
export const exportFindings = entries({
  'export-no-music': {
    level: 'error',
    sentence: 'There is no bar of music to export.',
    help: `The file holds statements but no system with a lane, so an export would be empty.

A first system:
\`\`\`
voice dessus
system dessus C1 meter C
  dessus | 1 c5 |
\`\`\``,
  },
  'export-unknown-tuning': {
    level: 'warning',
    sentence: 'No tuning is called “{tuning}”: what is heard has the tuning of the reading.',
    help: `\`--tuning\` takes what stands after the statement \`tuning\`: a temperament by name, of the file or built in, or a meantone.
\`bentside tune\` lists the temperaments that need no definition.

Before:

    bentside export overture.bent --as midi --tuning valotti

After:

    bentside export overture.bent --as midi --tuning vallotti`,
  },
  'export-midi-octave-limit': {
    level: 'info',
    sentence:
      'This form of tuning message reaches from {least} to {most} cents: {notes} would lie beyond and stand at its end.',
    help: `Messages for the twelve keys of an octave tell by how many cents each is from equal temperament: of one byte in whole cents from
-64 to 63, of two bytes finely from -100 to 100. A pitch that lies between two semitones, with a temperament far from equal, can
go beyond the first.

Before:

    bentside export lamento.bent --as midi --midi-tuning octave-cents

After:

    bentside export lamento.bent --as midi --midi-tuning octave`,
  },
  'export-midi-bend-channels': {
    level: 'info',
    sentence:
      'By pitch bends there are channels for fifteen notes of an octave: {notes} sound as the other note of their key.',
    help: `MIDI has sixteen channels, of which one belongs to percussion. Twelve are bent for the notes of the temperament, so that three are
left for the second notes of divided keys.

Before:

    bentside export lamento.bent --as midi --midi-tuning bend

After:

    bentside export lamento.bent --as midi --midi-tuning notes`,
  },
  'export-sound-assumed': {
    level: 'info',
    sentence: 'Not stated, and so assumed in what is heard: {assumed}.',
    help: `What is heard needs a tempo, a pitch and a tuning. Where the file states none, sixty crotchets a minute, a4 = 415 and equal
temperament are taken.

To state them:

    pitch  a4 = 415
    tuning meantone 1/4 wolf g#-eb
    tempo  2 at 50`,
  },
  'export-plucked': {
    level: 'info',
    sentence: 'The sound is that of plucked strings, though the instrument is called {instrument}.',
    help: `\`--as wav\` computes plucked strings, whatever the file calls its instrument: pitch, temperament, stops and time are those of
the file, the sound is that of a harpsichord. A synthesiser that plays the MIDI file has pipes: there the name of the instrument
chooses the sound.

Before:

    bentside export ricercar.bent --as wav

After:

    bentside export ricercar.bent --as midi`,
  },
  'export-no-such-bar': {
    level: 'error',
    sentence: 'No piece has {wanted}.',
    help: `Bars are named by the trade's numbers: the upbeat is 0, the first whole bar 1, and the halves of a bar that a
repeat parts share a number (8a and 8b). Both numbers must stand in one piece, the first before the last.

The findings of \`bentside proof\` name bars by these numbers.`,
  },
  'export-piece-without-bars': {
    level: 'info',
    sentence: 'The piece {name} does not have {wanted} and is not in the export.',
    help: `Each piece counts its own bars. Where some bars only are asked for, the export has them of every piece in which both
numbers stand; the others are left out.

The second piece is left out of bars 3-4:
\`\`\`
piece "Allemande"
system dessus G2 meter C
  dessus | 1 c5 | d | e | f |||
piece "Gigue"
system dessus G2 meter C
  dessus | 1 c5 |||
\`\`\``,
  },
  'ornament-printed': {
    level: 'info',
    sentence: "Written as notes in {bars}, in standard values: {what}; the timeline has each note's exact share.",
    help: `A trill at eleven strokes a second has no written values. In print its strokes are 32nds, or 64ths where the note is a quaver or
less, and as many as there is room for; what is left goes to the note on which it stops. The timeline has the exact times.

In print:

    dessus | 32 e5 d e d e 16. d |

for:

    dessus | 4 d5'zz |`,
  },
  'ornament-strokes': {
    level: 'info',
    sentence: 'Small notes in {bars} show fewer strokes than are played: {what}.',
    help: `Eight small notes before a note tell what is played; thirty would push the notes around them apart. The timeline has all of
them, and so have signs written out (\`--ornaments full\`).`,
  },
  'ornament-plain': {
    level: 'info',
    sentence: 'Not written as notes in {bars}, for written values cannot tell so many apart: {what}.',
    help: `Nothing shorter than a 128th is printed. The timeline has the notes of such a sign with their exact times.`,
  },
  'ornaments-no-table': {
    level: 'warning',
    sentence: 'Neither the reading nor the file names a sign table, so all signs stay as they are.',
    help: `What a sign means is what a table says. Name one for the file or a reading, or for this export (\`--table\`).

Before:

    reading played

After:

    reading played
      signs anglebert-1689`,
  },
  'ornaments-unknown-table': {
    level: 'warning',
    sentence: 'There is no sign table {table}, so all signs stay as they are.',
    help: `\`bentside signs\` lists the tables that are built in; a file may define its own (\`table\`).`,
  },
  'export-broken-bar': {
    level: 'error',
    sentence: 'The time of {bars} is wrong, so nothing was exported.',
    help: `A bar in which the voices do not add up to its length, or in which something was not understood, has no certain
time. Every other format needs one, and a guess would look like the source. The other findings in that bar say what
is amiss.

Mend the bar, mark it \`(irregular)\` if the source is so, or export with gaps (\`--leave-gaps\`): then such bars are
left empty.`,
  },
  'export-gap-left': {
    level: 'warning',
    sentence: 'The time of {bars} is wrong; the export has an empty bar there.',
    help: `Export with gaps was asked for, so a bar whose time is wrong or unknown became empty time in all voices. The
other findings in that bar say what is amiss; mend it and export again.`,
  },
  'alone-differs': {
    level: 'warning',
    sentence: 'The text of {reading} alone is not what {reading} has in {voice}: {bars}.',
    help: `\`--as bent\` types the options of a witness or reading, and the bars of its witness lanes, into the main lanes, and
compares the music of both. Where the text cannot say what the witness or reading has, the bar is told. Look
at it beside the source and mend it by hand.`,
  },
  'alone-place-omitted': {
    level: 'info',
    sentence: '{reading} omits a place ({bars}); what is said of it is not in the text of {reading} alone: {said}.',
    help: `An annotation of a place stands, in the text of a witness alone, at the last note that the witness has there. Where it has none the
annotation stays in the file that is exported, and a note to which nothing else refers is not declared in the new one.`,
  },
  'export-characters': {
    level: 'warning',
    sentence: 'The export cannot hold some characters of the text; the sign \uFFFD stands in their place.',
    help: `XML forbids control characters, such as those that a damaged file or a copied page may bring along. They are
mostly invisible. Look for them in titles, words, annotations and sung text, and take them out.`,
  },
  'rhythm-unprintable': {
    level: 'info',
    sentence:
      'The rhythm of {bars} in this reading has no standard values: it is written as it stands; the timeline has its time.',
    help: `A reading's rhythm is written in the values that are drawn every day: dots, ties, triplets. Unequal notes of two to one are a
triplet, of three to one a dotted pair; three to two have no values of their own and stand as the source writes them, with
their time in the timeline (\`--as json\`). \`--rhythm written\` writes all as it stands.

Before:

    practice inegal 8 3:2

After:

    practice inegal 8 2:1`,
  },
});
