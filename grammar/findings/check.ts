import { entries } from './entry';

/** Findings of the checks that look over a whole file. */
export const checkFindings = entries({
  'unknown-note': {
    level: 'error',
    sentence: 'No note is called “{name}”; `note {name} … : "text"` would declare it.',
    help: `\`*n7\` cites an annotation that a \`note\` statement writes out. A short remark can stand in the lane itself:
\`c5*"blotted"\`.

Before:

    dessus | 1 c5*n7 |||

After:

    note n7 : "the head is blotted"
    …
    dessus | 1 c5*n7 |||`,
  },
  'unknown-manual': {
    level: 'error',
    sentence: 'The instrument has no manual called “{name}”; declared: {known}.',
    help: `\`(manual upper)\` names a manual that a row of \`instrument\` declares.

Before:

    instrument harpsichord
    …
    dessus | (manual upper) 1 c5 |||

After:

    instrument harpsichord
      manual upper stops 8
      manual lower stops 8 4
    …
    dessus | (manual upper) 1 c5 |||`,
  },
  'unknown-place': {
    level: 'error',
    sentence: 'No options bear the place name “{name}”; places named: {known}.',
    help: `A place is named where its options stand. A reading decides about it by \`at v3 takes L\`, and \`link v3 v9\` joins two
places.

Before:

    reading late
      at v3 takes L
    …
    dessus | <K: 1 c5 ; L: 1 e5> |||

After:

    reading late
      at v3 takes L
    …
    dessus | <v3 K: 1 c5 ; L: 1 e5> |||`,
  },
  'no-music': {
    level: 'hint',
    sentence: 'There is no music in this file yet; a first system would begin it.',
    help: `A file that declares sources, people, tables or temperaments for others needs no music. Any other holds systems: the head
says which clefs and which metre are drawn, and below it stands a lane for each voice.

    bentside 1
    voice dessus
    system dessus G2 meter C
      dessus | 4 c5 d e f | 1 g |||`,
  },
  'unknown-temperament': {
    level: 'error',
    sentence: 'No temperament is called “{name}”.',
    help: `A temperament is built in, defined by \`temperament\` in the file, or included. Meantone is named by the part of the comma by
which its fifths are narrow: \`tuning meantone 1/4\`.

Before:

    tuning werkmeister-3

After:

    tuning werckmeister-3`,
  },
  'temperament-circle': {
    level: 'error',
    sentence: 'The temperament “{name}” comes from itself, by way of {way}.',
    help: `Temperaments come one from another; following \`from\` must come to an end.

Before:

    temperament house from chamber
    temperament chamber from house

After:

    temperament house from vallotti
    temperament chamber from house`,
  },
  'fifth-twice': {
    level: 'warning',
    sentence: 'The fifth {fifth} stands twice in one temperament; the first row counts.',
    help: `The circle has each of its twelve fifths once. \`ab-eb\` is the fifth of the same keys as \`g#-eb\`, and the octave in which
beats are counted makes no other fifth of it.

    temperament house
      c-g -1/4 sc
      c-g -1/6 sc     // g-d?`,
  },
  'rest-twice': {
    level: 'error',
    sentence: 'Two fifths of the temperament “{name}” take the rest; only one can.',
    help: `What the other eleven fifths leave of the circle falls to one fifth. Where two share it, one of them must be given.

Before:

    temperament house
      c#-g# rest
      g#-eb rest

After:

    temperament house
      c#-g# -1/4 sc
      g#-eb rest`,
  },
  'unused-declaration': {
    level: 'info',
    sentence: 'The {what} “{name}” is declared but never used.',
    help: `Nothing in the file cites this name: a stave bears no voice, a voice has no lane, and no option, witness lane, sign or
reading names the source or hand. It may be left over, or its use misspelt. The first \`source\` is the main text and needs no
citation; what an included file brings may wait for another file.

    note n7 : "the head is blotted"
    …
    dessus | 1 c5 |||      // the note cites nothing: c5*n7`,
  },
  'outside-compass': {
    level: 'warning',
    sentence: '{voice}: {note} lies outside the compass {low} to {high} of the instrument{instead}.',
    help: `The compass names the lowest and the highest key. A note beyond it is a slip of the octave or of the clef, or the
instrument is another one.

    instrument harpsichord  compass c2-c6
    …
    basse | 2 g1 c2 |||    // g1 has no key: g2, or compass g1-c6`,
  },
  'short-octave-lacks': {
    level: 'warning',
    sentence: '{voice}: {note} has no key, for {why} lacks it{instead}.',
    help: `A short octave gives the lowest notes to keys that would else be of little use: where the key of e sounds c, there is no
c sharp, e flat, f sharp or g sharp below. Divided sharps (\`broken\`) bring the upper two back.

    instrument virginals compass c2-c6 short-octave c/e
    …
    basse | 2 f#2 g2 |||    // f#2 has no key: short-octave c/e broken, or another instrument`,
  },
  'clef-restated': {
    level: 'hint',
    sentence: 'Bar {bar}: stave {stave} bears {clef} already; this changes nothing.',
    help: `\`(now …)\` draws a clef within a line. Where the same clef is in force already it says nothing new: perhaps another clef was
meant, or the change stands a bar late. If the source really draws the clef again here, leave it.

Before:

    system  lower F4
      basse | 2 c3 (now F4) d |||

After:

    system  lower F4
      basse | 2 c3 (now C4) d |||`,
  },
  'ending-alone': {
    level: 'warning',
    sentence: 'Bar {bar}: ending {ending} has no ending {missing} {where} it.',
    help: `The nth playing of a strain takes ending n, or the last there is. So endings are numbered from 1 without a gap, and a first one is
followed by a second: an ending out of order would never be played, or at the wrong time.

Before:

    system  upper C1  meter C
      dessus | 1 c5 | (ending 1) d :|| (ending 3) e |||

After:

    system  upper C1  meter C
      dessus | 1 c5 | (ending 1) d :|| (ending 2) e |||`,
  },
  'key-restated': {
    level: 'hint',
    sentence: 'Bar {bar}: the signature {key} holds already; this changes nothing.',
    help: `\`(now key …)\` draws a signature. Where the same one is in force already it says nothing new: perhaps another was meant, or the
change stands a bar late. At the head of a line, after a double bar and beside a new clef sources draw it again, and there nothing is
told. If the source really draws it again here, leave it.

Before:

    system  lower F4  key bb
      basse | 1 c3 | (now key bb) 1 d |||

After:

    system  lower F4  key bb
      basse | 1 c3 | (now key bb eb) 1 d |||`,
  },
  'meter-restated': {
    level: 'hint',
    sentence: 'Bar {bar}: the metre {meter} holds already; this changes nothing.',
    help: `\`(now meter …)\` draws a metre sign. Where the same one is in force already, with bars of the same length, it says nothing new: perhaps
another was meant, or the change stands a bar late. At the head of a line and after a double bar sources draw it again as a rule, and there
nothing is told. If the source really draws it again here, leave it.

Before:

    system  lower F4  meter 3/4
      basse | 2. c3 | (now meter 3/4) 2. d |||

After:

    system  lower F4  meter 3/4
      basse | 2. c3 | (now meter 3/2) 1. d |||`,
  },
  'custos-mismatch': {
    level: 'info',
    sentence: '{voice}: the custos promises {promised}, but this system begins on {note}: text lost, or a wrong clef?',
    help: `The sign at the end of a line shows the note with which the next line begins, under the clef at the line's end. Where the two
differ a line may have been left out in copying, or a clef misread on either side; or the scribe's custos is wrong, and then
it stays as it is.

    system  upper C1
      dessus | 2 c5 b4 (custos a4) |
    system  upper C1
      dessus | 1 g4 |||           // a4 was promised`,
  },
  'figures-hold-nothing': {
    level: 'warning',
    sentence: '{voice}: “=” beneath this note says that figures hold on, but none stand before it.',
    help: `In a \`fig\` lane \`=\` says that the figures before it hold on, as a line does in print. Where none are before it in this system or
the one above, type the figures, or \`_\` for a note without any.

Before:
\`\`\`
  basse | 2 c3 d  | 1 e |
    fig | =    6+ | 6   |
\`\`\`
After:
\`\`\`
  basse | 2 c3 d  | 1 e |
    fig | _    6+ | 6   |
\`\`\``,
  },
  'ledger-lines': {
    level: 'hint',
    sentence:
      'Bar {bar}, {voice}: {note} needs {count} ledger lines under {clef} on stave {stave}{more}: another clef or octave?',
    help: `Scribes changed the clef rather than draw more than three or four ledger lines. A note beyond them is mostly a slip of the
octave, or of the clef in force.

Before:

    system  upper C1
      dessus | 2 c7 c5 |||

After:

    system  upper C1
      dessus | 2 c6 c5 |||`,
  },
  'witness-falls-silent': {
    level: 'info',
    sentence: 'Witness {witness} is never used after bar {bar}: leaf missing, or place forgotten?',
    help: `A witness that differs every few bars and then nowhere in the last third or more of the piece may have lost a leaf, or the
collating stopped there. If it simply agrees from here on, all is well; a \`note\` can say so.

    source K "the Thornmere Keyboard Book"
    source L "a loose leaf"
    …
    dessus | <K: 2 c5 ; L: 4 c5 d> 2 e | … |||    // 40 bars follow without a word of L`,
  },
  'order-against-repeats': {
    level: 'info',
    sentence: '`order` plays {section} once, but the source has repeat dots where it {where}.',
    help: `Dots at a double bar say that the music on their side is played again; many sources draw them at one end of the strain only.
The \`order\` of the file says what is played: it should follow the dots, or a \`note\` say why not. A reading may leave out
repeats as it likes.

Before:

    order A A B
    …
    dessus | 1 c5 :||: (section B) 1 d |||

After:

    order A A B B`,
  },
  'clef-change-at-head': {
    level: 'hint',
    sentence: 'Stave {stave} begins this system with {head}, but the end of the system before announces {announced}.',
    help: `A scribe who changes the clef with a new system often draws the new clef at the end of the old one, as a warning. The two
should then be the same; if the source really draws two different ones, the head counts.

Before:

    system  lower F4
      basse | 1 c3 (now C3) |
    system  lower C4
      basse | 1 c4 |||

After:

    system  lower F4
      basse | 1 c3 (now C3) |
    system  lower C3
      basse | 1 c4 |||`,
  },
  'option-unreached': {
    level: 'hint',
    sentence:
      'Nothing takes the option {label}: neither the main text nor a reading, source or hand would ever come to it.',
    help: `Of the options at a place every reading takes the first that it prefers. This one stands behind another for whoever could want
it: its label stands twice, or it stands within an option that nobody takes who wants it.

Before:

    dessus | <K: <K: 2 c5 d ; L: 2 c5 e> ; L: 1 c5> |

After:

    dessus | <K: 2 c5 d ; L: 1 c5> |`,
  },
  'place-two-ways': {
    level: 'warning',
    sentence:
      'At `{place}` this reading takes {label}, but it is decided together with `{other}`, where it takes {taken}.',
    help: `A \`link\` joins places: who decides one decides all. A reading can say of one of them what it takes; of two that it names
otherwise the first counts.

Before:

    link t1 t2
    reading plain
      at t1 takes L
      at t2 takes K

After:

    link t1 t2
    reading plain
      at t1 takes L`,
  },
  'inegal-ratio': {
    level: 'warning',
    sentence: 'Unequal notes of {ratio}: nothing recorded lies outside 1:1 to 3:1; the longer number stands first.',
    help: `Pinned mechanisms of the time show 3:2, 2:1 and 3:1; treatises give no more than a dot would. It is played as it is typed. That the
short note comes first is said by \`short-long\`, not by the ratio.

Before:

    practice inegal 8 2:3

After:

    practice inegal 8 3:2 short-long`,
  },
});
