import { entries } from './entry';
import { hintLeftOut, NO_CLEF } from './export';

/** What MusicXML cannot say, or says otherwise than the source. Each is told once a voice. */
export const musicxmlFindings = entries({
  // ── staves, signatures, barlines ──
  'musicxml-above': {
    level: 'info',
    sentence: 'MusicXML has no stave above another for some bars only: the signs stand with small notes beside them.',
    help: `In MusicXML a stave is one of the whole part. MEI (\`--as mei\`) and pictures (\`--as svg\`) have what a sign means above its stave
(\`--ornaments above\`); MusicXML has it in small notes, or written out (\`--ornaments full\`).`,
  },
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

  // ── notes ──
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
  'musicxml-hint': hintLeftOut('export'),
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

  // ── marks ──
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
});
