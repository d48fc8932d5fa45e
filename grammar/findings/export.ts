import { entries } from './entry';

/** Each format that needs clefs tells it under a code of its own. */
const NO_CLEF = {
  level: 'info',
  sentence: 'The stave {stave} has no clef; the export gives it {clef}.',
  help: `Without a clef a stave cannot be drawn. State the source's clef in the head of the first system:
\`\`\`
system upper C1 lower F4
\`\`\``,
} as const;

/** What an export leaves out, writes otherwise than the source, or refuses. Each is told once a voice. */
export const exportFindings = entries({
  // ── all formats ──
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
  'musicxml-above': {
    level: 'info',
    sentence: 'MusicXML has no stave above another for some bars only: the signs stand with small notes beside them.',
    help: `In MusicXML a stave is one of the whole part. MEI (\`--as mei\`) and pictures (\`--as svg\`) have what a sign means above its stave
(\`--ornaments above\`); MusicXML has it in small notes, or written out (\`--ornaments full\`).`,
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

  // ── MusicXML: staves, signatures, barlines ──
  'musicxml-two-clefs': {
    level: 'info',
    sentence: 'Of {clefs} on the stave {stave} most programs draw {clef} alone.',
    help: `The source draws two clefs on one stave that agree about every line, so either is enough to read it. The export
has the lower one as the clef and the other as an additional one, which few programs draw, and then not always on its
line. Pitches are not changed.`,
  },
  'musicxml-no-clef': NO_CLEF,
  'musicxml-meter-sign': {
    level: 'info',
    sentence: 'MusicXML cannot draw the metre {sign}; the export has {beats}/{beatValue}.',
    help: `MusicXML draws C, cut C, a single figure and a fraction, and all must say how long a bar is. Another sign, or a
figure whose bar is longer or shorter than it says, is written as the fraction of that length. The bars are not changed.`,
  },
  'musicxml-meter-length': {
    level: 'info',
    sentence:
      'The metre {sign} is drawn before {bars} of another length; some programs find fault with such a measure.',
    help: `Programs take the length of a measure from its metre. Where a bar is longer than its metre, or of another length
in a loose system, the export counts the bar by what it holds and hides that fraction. Where the source draws a fraction
or a figure at this very bar, what is drawn stands: MusicXML cannot draw one and count another.`,
  },
  'musicxml-inner-barline': {
    level: 'info',
    sentence: 'A barline that only {voice} draws crosses all staves in the export ({bars}).',
    help: `In a loose system the lanes may draw their barlines at different moments. A measure of MusicXML ends in all
voices at once, and a barline crosses all staves. Such a barline is written inside its measure, short where it is a
plain one, with a footnote that names the voices that draw it. Many programs pass over it.`,
  },
  'musicxml-repeat-open': {
    level: 'info',
    sentence: 'The repeat that begins after {bars} is not in the export, for no music follows.',
    help: `The piece ends with a barline that begins a repeat. MusicXML writes such a barline at the start of the next
measure, and there is none. If the source means a repeat of what stands before, it is \`:||\`.`,
  },
  'musicxml-break': {
    level: 'info',
    sentence: 'A system of the source ends inside {bars}; the export breaks after that bar.',
    help: `MusicXML can begin a system with a measure only. The bar is written whole, and the new system or page begins
with the next one.`,
  },
  'musicxml-order': {
    level: 'info',
    sentence: 'The order {order} stands in the export as words alone; programs play the repeats as they are drawn.',
    help: `MusicXML knows repeats, endings and jumps, but no list of sections in their playing order. An order is written for
programs too where it plays the strains one after another as they stand, those with a repeat any number of times, and then at
most one section once more, without repeats:
\`\`\`
order A A B B petite
\`\`\`
Any other order is written above the first bar, and the names of the sections above the staves, so that a player can
follow it.`,
  },
  'musicxml-pieces': {
    level: 'info',
    sentence: 'MusicXML holds one piece a file; the export has the pieces of this file one after another.',
    help: `Each further piece begins on a new system, with its name, clefs, signature and metre, and repeats in it do not
lead back into the piece before. Its bars count from 1 to the eye; in the file their numbers begin with the piece's, as
“2-1”, for no two measures may bear one number.`,
  },

  // ── MusicXML: notes ──
  'musicxml-through': {
    level: 'info',
    sentence: 'A note or rest of {voice} that crosses a barline is written in parts ({bars}).',
    help: `The source draws one note that sounds on after the barline. In MusicXML a note ends with its measure, so the
export cuts it at the barline into usual values and ties them. Its length is not changed.`,
  },
  'musicxml-value': {
    level: 'info',
    sentence:
      'No drawn value has the length of a note or rest of {voice} ({bars}); the export states its length alone.',
    help: `What is left of a note cut at a barline, or of a value in proportion, is too short or too odd for any value that
MusicXML can draw. The length is written exactly; a program that draws the note must choose a shape.`,
  },
  'musicxml-ligature': {
    level: 'info',
    sentence: 'The ligatures of {voice} are written as single notes under a bracket ({bars}).',
    help: `MusicXML has no ligatures. The notes and their values are kept, the joined shape is not; a bracket stands above the
notes, as editions draw it.`,
  },
  'musicxml-doubtful': {
    level: 'info',
    sentence: 'What is doubtful in {voice} ({bars}) stands in the export in a form that few programs show.',
    help: `A reading marked with \`?\` is written with the editorial level “doubtful”, a doubtful tie or curve as a dotted
line. Most programs keep neither. Keep this text, or the critical report, beside the export.`,
  },
  'musicxml-span': {
    level: 'info',
    sentence: 'That notes of {voice} are {passage} ({bars}) stands in the export in a form that few programs show.',
    help: `Passages that are unclear, supplied, deleted or added are written with an editorial level of MusicXML. Most
programs read the notes and pass over the level, so that the passage looks like any other.`,
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
  'musicxml-hint': {
    level: 'info',
    sentence: 'The hint {hint} in {voice} is not in the export ({bars}).',
    help: `Hints of performance (\`overdot\`, \`inegal\`, \`assimilate\`, \`snap\`, \`literal\`) change what is played and not
what is written. The export has what is written; in the rhythm of a reading (\`--rhythm played\`) it has what they say.`,
  },
  'musicxml-option': {
    level: 'info',
    sentence: 'Where the sources of {voice} differ ({bars}) the export has only what is labelled {labels}.',
    help: `MusicXML holds one text. The export has the options that its reading takes; the file's field “reading” names it.
Export each reading or witness by itself to have them all.`,
  },
  'musicxml-readings': {
    level: 'info',
    sentence: 'Marks or ties of {voice} that hold for some readings only look like any others in the export ({bars}).',
    help: `A mark such as \`'zz:french\` is written if it holds in the exported reading and left out if not. MusicXML cannot
say that another reading has it otherwise.`,
  },
  'musicxml-weight': {
    level: 'info',
    sentence: "The editor's weights in {voice} are not in the export ({bars}).",
    help: `A weight (\`'w2\`) says how much a note of an unmeasured system counts. It is no sign of the source, and MusicXML
has no word for it.`,
  },
  'musicxml-lacuna': {
    level: 'info',
    sentence: 'A lacuna of {voice} is empty time in the export ({bars}).',
    help: `What is lost takes time but has no notes. The export moves on by that time, with the editorial level “lost”,
which few programs show; most show nothing at all there.`,
  },
  'musicxml-custos': {
    level: 'info',
    sentence: 'The custodes of {voice} stand in the export in a form that few programs show ({bars}).',
    help: `MusicXML has no custos, the sign at the end of a system that shows the next note. It is written as a direction
after the last note, with the name of the note and of the glyph in SMuFL; where it stands on the stave cannot be said.
Nothing is lost for a player, since the next note is there.`,
  },
  'musicxml-manual': {
    level: 'info',
    sentence: 'The manuals of {voice} ({bars}) stand in the export in a form that no program shows.',
    help: `MusicXML has no manuals of a keyboard instrument. A change such as \`(manual upper)\` is written as a hidden
direction with the manual's name.`,
  },
  'musicxml-annotation': {
    level: 'info',
    sentence: 'The annotations of {voice} ({bars}) stand in the export as footnotes, which few programs show.',
    help: `An annotation on a note, a sign, a passage, a place or a barline is written as a footnote of MusicXML, with all that
a \`note\` statement says: its kind, who says so, how sure it is and on what it rests. Most programs pass over footnotes.
Keep this text, or the critical report, beside the export.`,
  },
  'musicxml-figures': {
    level: 'info',
    sentence: 'Figures of {voice} that stand over nothing drawn are not in the export ({bars}).',
    help: `Figured bass of MusicXML is tied to the note after it. Here the source draws figures where the voice has a gap.`,
  },

  // ── MusicXML: marks ──
  'musicxml-editors': {
    level: 'info',
    sentence: "The editor's marks in {voice} ({bars}) look like the source's in most programs.",
    help: `An editor's sign, fermata, finger or articulation is written with the editorial level “editor's”. MusicXML has
brackets for accidentals but for no other mark, and most programs pass over the level.`,
  },
  'musicxml-mark-gap': {
    level: 'info',
    sentence: 'The mark {mark} of {voice} stands where nothing is drawn and is not in the export ({bars}).',
    help: `In MusicXML a mark belongs to a note or a rest. This one stands at a gap or a lacuna.`,
  },
  'musicxml-mark-barline': {
    level: 'info',
    sentence: 'The mark {mark} on the barline of {bars} is not in the export.',
    help: `On a barline MusicXML can write a fermata, a segno and words. Other marks belong to a note or a rest.`,
  },
  'musicxml-parameter': {
    level: 'info',
    sentence: 'How {sign} is to be played in {voice} is not in the export ({bars}).',
    help: `A sign may say how it is meant, as \`'zz(from main)\` does. The export draws the sign; MusicXML cannot say the rest
for every sign.`,
  },
  'musicxml-linked': {
    level: 'info',
    sentence: 'A sign drawn across several voices stands in the export at {voice} alone ({bars}).',
    help: `The source draws one sign for notes of several lanes. Except an arpeggio, which MusicXML spreads over staves, a
sign belongs to one note; the export has it at the first lane that bears it.`,
  },
  'musicxml-line': {
    level: 'info',
    sentence: 'The straight lines of {voice} ({bars}) stand in the export in a form that few programs show.',
    help: `The lines of unmeasured preludes show which notes belong together or are held. MusicXML's own lines between notes
mean a slide or a glissando, which would say something else, so they are written as notations that the standard leaves
open, named “line”, from the first note to the last.`,
  },
  'musicxml-curve-open': {
    level: 'info',
    sentence:
      'A curve of {voice} whose other end the source does not show is drawn within its bar in the export ({bars}).',
    help: `A slur of MusicXML needs both ends. One whose end is not shown ends at the last note of its bar in that voice, one
whose beginning is not shown begins at the first.`,
  },
  'musicxml-curve-ending': {
    level: 'info',
    sentence: 'A curve of {voice} that leads into a further ending begins with that ending in the export ({bars}).',
    help: `A curve open where the first ending begins leads into each ending. A slur of MusicXML joins two notes that are
played after one another as they are written, so in a second or third ending it is drawn from the first note there. A curve
that ends on that very note is drawn into the first ending alone.`,
  },
  'musicxml-curve-moved': {
    level: 'info',
    sentence: 'A curve of {voice} that begins or ends where no note stands is drawn to the nearest note ({bars}).',
    help: `In the source the curve stands on a barline, a gap or a lacuna. A slur of MusicXML joins two notes, so it is drawn
to the nearest one inside the curve.`,
  },
  'musicxml-curve-left-out': {
    level: 'info',
    sentence: 'A curve of {voice} finds no two notes to join and is not in the export ({bars}).',
    help: `A slur of MusicXML joins two notes. Between the ends of this curve there is at most one that is exported.`,
  },
  'musicxml-curves-many': {
    level: 'info',
    sentence: 'More than sixteen curves overlap in {bars}; the export has sixteen of them.',
    help: `MusicXML tells overlapping slurs apart by a number from 1 to 16.`,
  },

  // ── pages ──
  'export-not-drawn': {
    level: 'error',
    sentence: 'The score could not be drawn: {why}.',
    help: `Pages are drawn by an engraving library, which takes no score that it cannot make sense of. Other formats do not
depend on it: \`bentside export --as musicxml\`. Drawing fewer bars (\`--bars 9-12\`) shows where the trouble lies.`,
  },
  'svg-annotation': {
    level: 'info',
    sentence: 'The annotations of {voice} ({bars}) are not in the picture.',
    help: `A picture shows what the source has on its page. What the editor says of it stands in the critical report
(\`bentside report score.bent\`) and, beside the music, in MEI and MusicXML.`,
  },
  'svg-option': {
    level: 'info',
    sentence: 'Where the sources of {voice} differ ({bars}) the picture has only what is labelled {labels}.',
    help: `A picture shows one text. Export each reading or witness by itself (\`--reading all\`) to have them all; MEI holds them
side by side.`,
  },
  'svg-tempo': {
    level: 'info',
    sentence: 'The tempo of the editor is not in the picture ({bars}).',
    help: `A \`tempo\` says how fast the music is played, in numbers that no source of the time writes, so it is not drawn. Words of
the source that speak of movement are typed in a lane, \`"Lentement"\`, and are drawn.`,
  },
  'svg-hint': {
    level: 'info',
    sentence: 'The hint {hint} in {voice} is not in the picture ({bars}).',
    help: `Hints of performance (\`overdot\`, \`inegal\`, \`assimilate\`, \`snap\`, \`literal\`) change what is played and not
what is written. The picture has what is written; in the rhythm of a reading (\`--rhythm played\`) it has what they say.`,
  },
  'svg-weight': {
    level: 'info',
    sentence: "The editor's weights in {voice} are not in the picture ({bars}).",
    help: `A weight (\`'w2\`) says how much a note of an unmeasured system counts. It is no sign of the source, so it is not drawn.`,
  },

  // ── MEI ──
  'mei-no-clef': NO_CLEF,
  'mei-variant-broken': {
    level: 'warning',
    sentence: 'The time of {bars} is wrong in {label}; the export has there what the main text has.',
    help: `MEI holds the texts of all sources and readings side by side. A bar whose time is wrong in one of them cannot be
laid beside the others. The other findings of that reading say what is amiss (“In L: …”); mend it and export again.`,
  },
  'mei-piece-left-out': {
    level: 'info',
    sentence: '{label} has no bar of the piece {name}, which the export cannot say.',
    help: `MEI lays texts side by side bar by bar; a whole movement cannot stand in its apparatus. The piece is in the export as
the other sources have it. Say in an annotation that this source leaves it out.`,
  },
});
