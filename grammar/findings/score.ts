import { entries } from './entry';

/** Findings of structure, time, pitch and names, made while the score is built. */
export const scoreFindings = entries({
  'bar-too-short': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: {have}, {meter} needs {need}{hint}.',
    help: `The values of this lane do not fill the bar. A dot may be missing, a value wrong, or a rest not typed.

A bar may be short where a piece or section begins (an upbeat), as one of a pair around a repeat that adds up, and where
\`(irregular)\` says so. Where the source draws nothing for the missing time, type a gap: \`_\`.

    dessus | 4 c5 d e |          // short of a crotchet under C
    dessus | 4. c5 4 d 4. e |    // fills it`,
  },
  'bar-too-long': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: {have}, {meter} needs {need}{hint}.',
    help: `The values of this lane overfill the bar. A barline may be missing, a value wrong, or a dot too many.

A note that the source lets run through the barline is marked: \`2. c5'through | …\`. A bar that is meant to be longer is
marked \`(irregular)\`.`,
  },
  'bar-count': {
    level: 'error',
    sentence: '{voice} has {have} in this system, another lane has {need}.',
    help: `All lanes of a system hold the same number of bars. A bar in which a voice has nothing drawn is typed \`__\`, one with
a whole-bar rest \`rbar\`. Only in a \`system loose\` may barlines differ.`,
  },
  'lanes-break-apart': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: the system ends inside this bar, but not at the same time in all lanes.',
    help: `A bar that goes on in the next system breaks at one moment for all lanes.`,
  },
  'barline-missing': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: the other lanes end with a barline here, this one does not.',
    help: `A lane that ends without a barline goes on in the next system; all lanes of a system do so together or none.`,
  },
  'barlines-disagree': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: {here} ends the bar here, {there} in another lane.',
    help: `A special barline is typed in one lane; a plain \`|\` in the others agrees with it. Two different special ones do not.`,
  },
  'loose-totals': {
    level: 'error',
    sentence: '{voice}: {have} in this loose system, another lane has {need}.',
    help: `In a \`system loose\` the barlines of the lanes need not agree, but all lanes last equally long.`,
  },
  'free-one-lane': {
    level: 'error',
    sentence: '{voice}: a free system has one lane, which holds everything from left to right.',
    help: `In a \`system free\` one lane of any voice holds all notes; \`(up)\` and \`(down)\` change the stave, \`d2-(up)f4\` is struck
together on two staves.`,
  },
  'empty-bar': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: nothing is typed in this bar.',
    help: `Type \`rbar\` if the source has a whole-bar rest, \`__\` if it draws nothing. Only in a witness lane an empty bar means
“as in the lane above”.`,
  },
  'after-filler': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: `rbar`, `__` and `lost ?` take the rest of the bar and must stand last in it.',
    help: `What fills the bar is its last event.`,
  },
  'through-without-need': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: this note ends with its bar, so it does not run through the barline.',
    help: `\`'through\` marks a note that the source lets last beyond the barline with no tie drawn: \`2. c5'through | 4 d5 …\`.`,
  },
  'through-to-nothing': {
    level: 'error',
    sentence: 'The note runs through the barline, but its voice has nothing after it.',
    help: `What a note marked \`'through\` has beyond its bar stands in the next bar of its voice: \`2. c5'through | 4 d5 …\`. Here
the piece ends, or the voice has no lane in the next system.`,
  },
  'value-missing': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: no value holds here; type one before this event.',
    help: `Each lane of each system begins with a value and an octave: \`4 c5 d e\`. Both are typed again after options (\`>\`), and a
tuplet or a group of small notes begins with its value.`,
  },
  'octave-missing': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: no octave holds for {note}; type its digit, c4 is middle C.',
    help: `The last digit typed holds. Each lane of each system begins with one, and so does what follows options (\`>\`).`,
  },
  'octave-without-keys': {
    level: 'warning',
    sentence: 'Bar {bar}, {voice}: no keyboard has the octave of {note}; a value is typed before its note, by itself.',
    help: `c4 is middle C, and no keyboard reaches beyond the octave of c7. A value stands before the notes that it holds for, as a word of its own:
\`4 c5 8 d e\`.`,
  },
  'tuplet-incomplete': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: the {head} group is not complete: its notes must make up {n} equal values.',
    help: `A tuplet N in M fills N units of one value: \`{3in2 8 c5 d e}\`, \`{3in2 4 c5 8 d}\`. Values with \`x\` are gathered until
they do: \`8x c5 d e\`.`,
  },
  'proportion-in-tuplet': {
    level: 'hint',
    sentence: 'Bar {bar}, {voice}: {text} stands inside a tuplet, so both proportions act.',
    help: `Inside \`{3in2 …}\` values are typed without \`x\`; an \`x\` there is a tuplet within the tuplet.`,
  },
  'options-unequal': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: the option {label} does not take the same time as the first one.',
    help: `Rival options take equal time, so that either can stand: \`<K: 2 c5 ; L: 4 c5 b4>\`. A witness that has nothing at all is
\`L: omit\`.`,
  },
  'options-barlines': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: the option {label} does not have the same barlines as the first one.',
    help: `Options over several bars have a barline wherever the first one has.`,
  },
  'repeat-first': {
    level: 'error',
    sentence: '{voice}: a lone = cannot stand first in a system.',
    help: `A lone \`=\` repeats the event before it in the same lane, tied. Over a system end the suffix is enough: \`c5=\` at the end,
the note again at the beginning of the next system.`,
  },
  'repeat-of-nothing': {
    level: 'error',
    sentence: 'A lone = repeats the note before it, but there is none.',
    help: `A lone \`=\` stands after a note or chord: \`2 c5 4 =\`.`,
  },
  'repeat-after-partial-tie': {
    level: 'error',
    sentence: 'A lone = repeats the whole chord before it, but only some of its notes are tied.',
    help: `Type the tied notes of the chord instead: \`2 c4=-e 4 c4-f\`.`,
  },
  'tie-other-pitch': {
    level: 'error',
    sentence: 'The tie on {note} finds no {note} in the next event.',
    help: `A tie leads to the same pitch in the next event of its voice. Between different notes a curve is meant: \`c5'u d'.\`.`,
  },
  'small-tie': {
    level: 'warning',
    sentence: 'The tie on the small note {note} joins nothing: time stands still at small notes.',
    help: `A tie makes two notes sound as one. A small note takes no time of its own, so its tie leads nowhere; what the source draws
between it and its note is a curve.

Before:

    dessus | {small 8 d5=} 2 d5 c |||

After:

    dessus | {small 8 d5'u} 2 d5'. c |||`,
  },
  'custos-first': {
    level: 'warning',
    sentence: 'The custos on {note} stands before every note of its lane; it belongs after the last.',
    help: `A custos at the end of a line shows the note with which the next line begins. It is typed after the last note of its lane;
before the first one there is nothing to which it belongs, and it is passed over.

Before:

    dessus | (custos e5) 1 c5 |

After:

    dessus | 1 c5 (custos e5) |`,
  },
  'label-twice': {
    level: 'warning',
    sentence: 'Bar {bar}, {voice}: {label} has two options here; the first one counts.',
    help: `At one place each source, layer or reading has one option. Where a source shows two states, the later one is a layer of it.

Before:

    dessus | <K: 1 c5 ; K: 1 d5> |||

After:

    hand K.2 "paler ink"
    …
    dessus | <K: 1 c5 ; K.2: 1 d5> |||`,
  },
  'order-twice': {
    level: 'warning',
    sentence: 'The order of this piece is stated twice; the first one counts.',
    help: `A piece is played in one order; a reading can state another.

Before:

    order A A B
    order A B

After:

    order A A B
    reading short
      order A B`,
  },
  'tie-not-in-ending': {
    level: 'info',
    sentence: 'The tie on {note} that leads into the first ending finds no {note} in ending {ending}.',
    help: `What is open where the first ending begins enters every ending alike: a tie, a curve, an accidental. Here a further
ending begins with another note. The source may well have it so; then nothing needs mending.`,
  },
  'tie-to-nothing': {
    level: 'error',
    sentence: 'The tie on {note} has no partner: no note follows it.',
    help: `A tie leads to the same pitch in the next event of its voice, over barlines and system ends. A curve whose end the source
does not show is \`'u~\`.`,
  },
  'curve-never-ends': {
    level: 'error',
    sentence: 'The curve begun here by {text} never ends.',
    help: `A curve \`'u\` is ended by \`'.\` in the same voice. Where the source does not show its end, write \`'u~\`.

Of the curves that are open in a voice at the end of a system the latest hundred go on; those begun before them never end.`,
  },
  'curve-end-alone': {
    level: 'error',
    sentence: "{text} ends a curve, but none is open in this voice (a staccato dot is 'dot).",
    help: `\`'.\` ends the curve begun last. A dot over the note is \`'dot\`; an end whose beginning the source does not show is \`'.~\`.`,
  },
  'curve-end-unmatched': {
    level: 'error',
    sentence: '{text} ends a curve that was never begun: no open curve has that note or name.',
    help: `\`'.c3\` ends the latest open curve begun on c3; \`'.(q1)\` the one begun with \`'u(q1)\`, also in another voice.`,
  },
  'unknown-sign': {
    level: 'error',
    sentence: '“{name}” is no sign of the catalogue nor of any table here{nearest}.',
    help: `After an apostrophe stands the short or long name of a shape (\`zz\`, \`ca\`, \`turn\`), or a name that a built-in table or
one of the file's own gives to a shape (\`pince\`).`,
  },
  'sign-undecided': {
    level: 'error',
    sentence: '“{name}” means different shapes in different tables ({tables}); {unsaid}.',
    help: `The same word names different drawings in different books. \`signs anglebert-1689\` at the head of the file decides it where
that table has the word; else write the shape that the source draws: \`'ca\`, \`'zs\`.`,
  },
  leap: {
    level: 'hint',
    sentence:
      'Bar {bar}, {voice}: {note} lies {interval} from the note before and has no octave digit; is the octave meant?',
    help: `The last digit typed holds, there is no nearest octave. A leap of a seventh or more without a digit is often a slip; typing
the digit says that it is meant.`,
  },
  'restated-value': {
    level: 'hint',
    sentence: 'Bar {bar}, {voice}: the value {text} holds already.',
    help: `A value holds until the next one. Typing it again within a bar does no harm, but often another value was meant.`,
  },
  'value-unused': {
    level: 'warning',
    sentence: 'Bar {bar}, {voice}: the value {text} holds for nothing.',
    help: `A value is typed before the notes that it holds for. Another value follows this one, or the lane ends: a note is missing between
them, or one value was typed in the place of another.

Before:
\`\`\`
  dessus | 2 4 c5 d e f |
\`\`\`
After:
\`\`\`
  dessus | 4 c5 d e f |
\`\`\``,
  },
  'ending-not-first': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: (ending …) must stand first in its bar.',
    help: `An ending begins with its bar: \`| (ending 1) 2 c5 d :||\`.`,
  },
  'section-not-at-barline': {
    level: 'error',
    sentence: 'The section {name} begins inside a bar; a section begins at a barline.',
    help: `Write \`(section B)\` first in its bar, or \`section B\` on a line before its system.`,
  },
  'unknown-section': {
    level: 'error',
    sentence: 'There is no section {name} in this piece; there are {known}.',
    help: `\`order\` names sections that the piece has: \`section A\` before a system or \`(section A)\` at a barline.`,
  },
  'section-without-music': {
    level: 'warning',
    sentence: 'No system of this piece follows the section {name}.',
    help: `\`section B\` stands before the first system of its section. A section belongs to the piece in which it stands, so it cannot
be the last thing before \`piece\`.`,
  },
  'order-without-music': {
    level: 'warning',
    sentence: 'The order belongs to a piece that has no system.',
    help: `\`order A A B B\` belongs to the piece in which it stands: after \`piece "…"\`, or before the first one and then to that.`,
  },
  'order-halves': {
    level: 'info',
    sentence:
      'Bar {last} at the end of {before} and bar {first} at the beginning of {after} make {have}, where a bar has {need}.',
    help: `Where the order leads from one section to the next, a short last bar and an upbeat should make one bar. If they do not, a
beat is lost or given twice. A last chord may be held for what is lacking, as before a petite reprise that begins on a
full bar; then nothing needs mending.`,
  },
  'no-stave-there': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: there is no stave {way} this one.',
    help: `\`(up)\` and \`(down)\` move to the neighbouring stave in the order of the declarations, from top to bottom.`,
  },
  'clef-off-stave': {
    level: 'error',
    sentence: '{clef} stands on no line of the stave {stave}, which has {lines} lines.',
    help: `Lines are counted from the bottom. \`stave lower lines 8\` declares more than five.`,
  },
  'clef-missing': {
    level: 'warning',
    sentence: 'The stave {stave} has notes but no clef so far.',
    help: `The head of the first system states the clefs: \`system  upper C1  lower F4\`.`,
  },
  'meter-missing': {
    level: 'hint',
    sentence: 'No metre is stated, so the bars are not summed.',
    help: `\`system  meter C\` states the sign as drawn; \`meter cut-C = 2/1\` says a length of its own. Without one, only the lanes are
compared with one another.`,
  },
  'piece-ends-open': {
    level: 'warning',
    sentence: 'The last system of the piece ends without a barline.',
    help: `A lane that ends without a barline goes on in the next system, but none follows. Type the final barline: \`|||\`.`,
  },
  'changes-disagree': {
    level: 'error',
    sentence: 'What is drawn here disagrees with another lane, or with the head of the system: {here} and {there}.',
    help: `A change of clef, signature, metre or tempo is typed in one lane; typed in two it must be the same. What is drawn at
the beginning of a system stands in its head.`,
  },
  'sub-lane-alone': {
    level: 'error',
    sentence: '`{name}` stands under the lane of a voice, but none stands above it.',
    help: `\`fig\` and \`text\` belong to the lane above them.`,
  },
  'sub-lane-bars': {
    level: 'error',
    sentence: 'This `{name}` lane has {have}, its voice has {need}.',
    help: `A sub-lane has the bars of its lane; one that has nothing is left empty between its barlines.`,
  },
  'sub-lane-items': {
    level: 'error',
    sentence: 'Bar {bar}, {voice}: {have} in `{name}` for {need} of the lane.',
    help: `\`fig\` has one item for each note, chord, rest or lone \`=\`; \`text\` one for each note that is not tied to the one before.
\`_\` means nothing drawn, \`=\` holds on.`,
  },
  'sub-lane-fewer': {
    level: 'hint',
    sentence: 'Bar {bar}, {voice}: {have} in `{name}` for {need} of the lane; the last have nothing.',
    help: `Items belong to notes in their order: where one is forgotten, all after it move to the note before. \`_\` is a note that has nothing, \`=\`
holds on. A bar may be left empty as a whole. If only the last notes have nothing, all is well.

Before:
\`\`\`
  basse | 4 c3 d e f |
    fig | 6 6/5      |
\`\`\`
After:
\`\`\`
  basse | 4 c3 d e f |
    fig | _ 6 _ 6/5  |
\`\`\``,
  },
  'figures-twice': {
    level: 'error',
    sentence: '{voice} has two lanes of figures in this system; the first one counts.',
    help: `A thorough bass has one \`fig\` lane: figures above one another are typed \`6/5\`, after one another \`5,6\`. Several \`text\` lanes
are stanzas.`,
  },
  'lane-twice': {
    level: 'error',
    sentence: '{voice} has two lanes in this system.',
    help: `A voice has at most one lane a system. To go on with it on the next line, begin that line with a barline. What a witness has
is a witness lane: \`dessus L | … |\`.`,
  },
  'witness-lane-alone': {
    level: 'error',
    sentence: 'The lane of witness {witness} stands under the lane of {voice}, which is missing above it.',
    help: `A witness lane \`dessus L | … |\` stands under \`dessus | … |\` and has only the bars that differ.`,
  },
  'unknown-witness': {
    level: 'error',
    sentence: '{name} is no witness of this file; known: {known}.',
    help: `Witnesses are declared by \`source K "…"\`.`,
  },
});
