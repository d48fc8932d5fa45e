import { entries } from './entry';

/** Findings of the cut into lines and of the lanes. */
export const laneFindings = entries({
  'not-understood': {
    level: 'error',
    sentence: '“{text}” is no sign of this notation.',
    help: `Something in the lane could not be read. The rest of the bar is kept, but its time is not counted.

A lane holds values (\`4\`, \`8.\`), notes (\`c5\`, \`f#\`), rests (\`r\`), gaps (\`_\`), marks glued to their note (\`c5'zz\`),
spans (\`{3in2 8 c5 d e}\`), options (\`<K: 4 c5 ; L: 4 d5>\`), changes (\`(now C3)\`) and barlines.`,
  },
  'typographic-apostrophe': {
    level: 'error',
    ofTyping: true,
    sentence: '“{text}” holds a typographic apostrophe; a mark begins with the straight one.',
    help: `Word processors turn ' into a curly sign. Marks begin with the straight apostrophe: \`c5'zz\`.`,
  },
  'dead-key': {
    level: 'error',
    ofTyping: true,
    sentence: '“{text}” holds an accented letter: the apostrophe key was a dead key; {meant} is meant.',
    help: `On some keyboard layouts ' followed by a vowel gives an accented letter, so \`c5'arp\` becomes \`c5árp\`. The fix takes them apart.`,
  },
  'unshifted-digit': {
    level: 'error',
    sentence: '“{text}” holds the é of a French keyboard, which with shift is 2: {meant} is meant.',
    help: `On French keyboards digits are struck with shift: \`é\` is \`2\`. After a note it may also be an apostrophe of a dead key, if a table of
your own calls a sign \`e\`: then it is \`c'e\`.

Before:
\`\`\`
  dessus | é c5 d |
\`\`\`
After:
\`\`\`
  dessus | 2 c5 d |
\`\`\``,
  },
  'barline-as-drawn': {
    level: 'error',
    sentence: '“{text}” holds a sign that looks like a barline; {meant} is meant.',
    help: `Other keys and word processors give signs that look like a barline and are none: the broken bar ¦, the wide ｜, the double ‖.
A barline is \`|\`, a double one \`||\`.`,
  },
  'note-named-elsewhere': {
    level: 'error',
    sentence: '“{text}” names a note in German or by its syllable; here it is {meant}.',
    help: `Notes are the letters \`a\` to \`g\`, with \`#\` and \`b\` for accidentals: \`cis\` is \`c#\`, \`es\` is \`eb\`, \`h\` is \`b\`, and what is called B in
German is \`bb\`. So where \`h\` was typed, look at every \`b\` as well. Syllables are letters too: \`do\` is \`c\`, \`sol\` \`g\`, \`si\` \`b\`; their octaves may be
counted from elsewhere (middle C is \`c4\`), and \`re\` and \`fa\` may also be two signs run together, so that they are not mended for you.

Before:
\`\`\`
  dessus | 4 h4 cis5 d es |
\`\`\`
After:
\`\`\`
  dessus | 4 b4 c#5 d eb |
\`\`\``,
  },
  'lone-dot': {
    level: 'error',
    sentence:
      "A dot stands alone; it belongs to a value (4.), or to a note that runs through the barline ('through(dot)).",
    help: `A dot drawn after a barline belongs to the note before it. Write the note with its whole value and \`'through(dot)\`:

    dessus | … 2. c5'through(dot) | 4 d5 … |`,
  },
  'accidental-after-octave': {
    level: 'error',
    ofTyping: true,
    sentence: 'In “{text}” the accidental stands after the octave; it stands before: {meant}.',
    help: `A note is typed in this order: letter, accidental, octave: \`f#5\`, \`f[#]5\`, \`f(#)5\`.`,
  },
  'accidental-as-drawn': {
    level: 'error',
    ofTyping: true,
    sentence: '“{text}” has an accidental as it is drawn; it is typed by signs of the keyboard: {meant}.',
    help: `Accidentals are typed \`#\`, \`##\`, \`b\`, \`bb\` and \`n\`: \`f#5\`, \`eb\`, \`bn4\`.`,
  },
  'note-order': {
    level: 'error',
    ofTyping: true,
    sentence: 'The parts of “{text}” stand in another order than they are typed in; {meant} is meant.',
    help: `A note is typed in this order: letter, accidental, \`[#]\` or \`(#)\`, octave, \`?\`, \`=\`, then marks and annotations:
\`c#5?='zz*n7\`. A mark: its name, \`?\`, \`+\`, round brackets, the readings to which it is limited: \`'[zz]?(above):K\`.`,
  },
  'value-glued': {
    level: 'error',
    ofTyping: true,
    sentence: '“{text}” glues a value to a note; put white space between: {meant}.',
    help: `A value is a word of its own and holds until the next value: \`8 c5 d e f\`.`,
  },
  'dot-after-note': {
    level: 'error',
    sentence: 'The dot of “{text}” belongs to the value, which is typed before the note or rest: 4. c5.',
    help: `A value is typed before the notes that it holds for, with its dots.

Before:
\`\`\`
  dessus | 4 c5. 8 d 2 e |
\`\`\`
After:
\`\`\`
  dessus | 4. c5 8 d 2 e |
\`\`\``,
  },
  'typed-otherwise': {
    level: 'error',
    sentence: '“{text}” is typed otherwise here: {meant}.',
    help: `The notes of a chord are joined by hyphens (\`c4-e-g\`), a tie is \`=\`, a rest a small \`r\`, and what is drawn at a note has an
apostrophe before it.

Before:
\`\`\`
  dessus | 4 c5/e d5~ 2 d5tr |
\`\`\`
After:
\`\`\`
  dessus | 4 c5-e d5= 2 d5'tr |
\`\`\``,
  },
  'note-and-value': {
    level: 'error',
    sentence: '“{text}” has the value after the note; a value is typed before its note, by itself: {meant}.',
    help: `A value is typed before the notes that it holds for: \`8 c5 d\`.`,
  },
  'beam-glued': {
    level: 'error',
    ofTyping: true,
    sentence: '“{text}” of a beam must have white space on either side.',
    help: `\`&\` joins and \`,\` parts beams between two events: \`8 c5 & d , e f\`.`,
  },
  'notes-run-together': {
    level: 'error',
    sentence: '“{text}” runs notes together; put white space between: {meant}.',
    help: `Each note is a word of its own: \`f a c e\`. Notes of a chord are joined by a hyphen: \`f4-a-c5\`.`,
  },
  'capital-note': {
    level: 'error',
    sentence: '“{text}”: notes are small letters with the octave as a digit; is {meant} meant?',
    help: `Middle C is \`c4\`; capital letters are values (\`B\`, \`L\`, \`Mx\`) and clefs.`,
  },
  'bad-mark': {
    level: 'error',
    sentence:
      '“{text}” is no mark: after the apostrophe stands the name of a sign, a finger 1 to 5, or a reserved word.',
    help: `Marks: \`'zz\`, \`'pince\`, \`'3\`, \`'4-5\`, \`'#\`, \`'u\` … \`'.\`, \`'fermata\`. Forms stand in this order: \`'[zz]\`, \`?\`, \`+\`, \`(…)\`, \`:reading\`.`,
  },
  'unclosed-bracket': {
    level: 'error',
    sentence: '“{bracket}” is never closed by “{closing}” in this lane.',
    help: `Spans \`{…}\` and options \`<…>\` close in the lane where they open; none crosses a system end.`,
  },
  'stray-bracket': {
    level: 'error',
    sentence: '“{bracket}” closes or parts nothing that is open here.',
    help: `\`}\` closes a span \`{…}\`, \`>\` closes options \`<K: … ; L: …>\`, and \`;\` parts the options between them.`,
  },
  'too-deep': {
    level: 'error',
    sentence: 'Brackets lie more than {deepest} deep here.',
    help: `Spans and options may nest, but not more than 32 deep.`,
  },
  'bad-barline': {
    level: 'error',
    sentence: '“{text}” is no barline; there are |, ||, |||, :||, ||: and :||:.',
    help: `Barlines are typed as drawn: \`|\` single, \`||\` double, \`|||\` final, \`:||\`, \`||:\` and \`:||:\` for repeats. \`[]\` after it makes it the editor's.`,
  },
  'barline-glued': {
    level: 'warning',
    ofTyping: true,
    sentence: 'A barline must have white space before it.',
    help: `Write \`c5 |\`, not \`c5|\`.`,
  },
  'barline-joint': {
    level: 'error',
    sentence:
      'The line above ends with {above}, this one begins with {below}: they are one barline and cannot both be meant.',
    help: `A lane that is continued on a new line begins with the barline that ended the line above, or with a plain one.`,
  },
  'span-without-head': {
    level: 'error',
    sentence: 'A span begins with its head glued to the bracket: {3in2 …}, {small …}, {overdot …}.',
    help: `What braces mean is said right after the bracket: a tuplet \`{3in2 8 c5 d e}\`, small notes \`{small 16 d5 e}\`, a hint \`{overdot …}\`, a state of the source \`{unclear …}\`.`,
  },
  'unknown-span': {
    level: 'error',
    sentence: '“{text}” begins no span; there are {known}, and tuplets like 3in2.',
    help: `The word after \`{\` says what the span is: hints (\`overdot inegal assimilate snap literal\`), \`small\`, \`black\`, \`void\`, \`lig\`, and the state of the source (\`unclear supplied deleted added\`).`,
  },
  'impossible-proportion': {
    level: 'error',
    sentence: '“{text}” is no proportion: both numbers lie between 1 and 99.',
    help: `\`{3in2 …}\` is three in the time of two. Numbers go from 1 to 99.`,
  },
  'span-takes-no-readings': {
    level: 'error',
    sentence: 'A span “{text}” holds for all readings; no reading is named after it.',
    help: `Tuplets, \`small\`, \`black\`, \`void\` and \`lig\` say what the source shows and take no \`:reading\`. Where sources differ, write options.`,
  },
  'span-takes-no-ratio': {
    level: 'error',
    sentence: 'A span “{text}” takes no such numbers.',
    help: `\`{inegal 2:1 …}\` takes the lengths of the two notes, \`{black 3in2 …}\` and \`{void 1in2 …}\` a proportion; the others take none.`,
  },
  'option-without-label': {
    level: 'error',
    sentence: 'An option says whose it is: a label glued to a colon, <K: … ; L: …>.',
    help: `Each option begins with the witnesses or readings that have it, without white space around commas: \`<K,M: 4 c5 ; L: 4 d5>\`.`,
  },
  'omit-misplaced': {
    level: 'error',
    sentence: '`omit` must stand alone in an option: <K: … ; L: omit>.',
    help: `\`omit\` says that a witness has nothing at all here, not even time. It stands alone in its option.`,
  },
  'mark-without-event': {
    level: 'error',
    sentence: 'The mark “{text}” has no note, rest or gap before it.',
    help: `A mark is glued to its event: \`c5'zz\`. At the beginning of a bar there is nothing it could belong to.`,
  },
  'annotation-without-event': {
    level: 'error',
    sentence: 'The annotation “{text}” has nothing before it that it could speak of.',
    help: `An annotation is glued to what it speaks of: a note (\`c5*n7\`), a mark, a closing bracket or a barline.`,
  },
  'member-without-chord': {
    level: 'error',
    sentence: '“{text}” belongs to a chord, but no note stands before it.',
    help: `The notes of a chord are joined by hyphens without white space: \`c4-e-g\`.`,
  },
  'member-apart': {
    level: 'error',
    ofTyping: true,
    sentence: '“{text}” must be glued to the chord to which it belongs.',
    help: `The notes of a chord are joined by hyphens without white space: \`c4-e-g\`.`,
  },
  'mark-apart': {
    level: 'error',
    ofTyping: true,
    sentence: '“{text}” must be glued to the note to which it belongs.',
    help: `Marks and annotations stand without white space after their note: \`c5'zz*n7\`.`,
  },
  'bracket-glued': {
    level: 'warning',
    ofTyping: true,
    sentence: '“{text}” must have white space on either side.',
    help: `A change or words of the source stand by themselves: \`c5 (up) d\`. Round brackets glued to a sign are its parameters, as in
\`c5'zz(above)\`.`,
  },
  'place-apart': {
    level: 'error',
    ofTyping: true,
    sentence: '“{text}” says where a sign is drawn and must be glued to that sign.',
    help: `\`c5'zz(above)\` is a sign drawn above. With white space between, round brackets hold a change or words: \`(below "tr.")\`.`,
  },
  'impossible-value': {
    level: 'error',
    sentence: '“{text}” is no value; there are Mx, L, B, 1, 2, 4, 8, 16, 32, 64 and 128, with up to four dots.',
    help: `Values are named by their fraction of a semibreve: \`1\` semibreve, \`2\` minim, \`4\` crotchet, \`8\` quaver … \`128\`; \`B\` breve, \`L\` longa, \`Mx\` maxima. \`8x\` is a triplet quaver, \`8x5in4\` five in the time of four; the numbers go from 1 to 99.`,
  },
  'lost-without-value': {
    level: 'error',
    sentence: '`lost` says how much is lost: a value, or ? for the rest of the bar.',
    help: `\`lost 2.\` takes the time of a dotted minim; \`lost ?\` takes the rest of the bar, whose time is then not counted.`,
  },
  'lane-without-barline': {
    level: 'error',
    sentence: "This line is neither a lane nor part of the system's head: after the voice's name stands a barline.",
    help: `A lane is a voice and its music after a barline:

    dessus | 4 c5 d e f |`,
  },
  'lane-outside-system': {
    level: 'error',
    sentence: 'A lane stands outside a system; a line `system` opens one.',
    help: `Music stands in systems. Write \`system\` in the first column on the line above, with its clefs:

    system  upper C1  lower F4
      dessus | 4 c5 d e f |`,
  },
  'lane-continues-nothing': {
    level: 'error',
    sentence: 'This line begins with a barline and continues a lane, but no lane stands above.',
    help: `A line that begins with a barline goes on with the lane above. The first lane of a system begins with its voice.`,
  },
  'continues-nothing': {
    level: 'error',
    sentence: 'This indented line continues a statement, but none stands above.',
    help: `A statement begins in the first column. Lines that go on with it are indented.`,
  },
  'bad-figure': {
    level: 'error',
    sentence:
      '“{text}” is no figure of a bass: numbers, accidentals, / between stacked ones, , between successive ones.',
    help: `In a \`fig\` lane each note of the bass has one item: \`6\`, \`6/5\` (stacked), \`5,6\` (one after the other), \`#\`, \`6+\` (stroke through), \`[6]\` (the editor's), \`=\` (hold on), \`_\` (nothing).`,
  },
  'label-alone': {
    level: 'error',
    ofTyping: true,
    sentence: '“{text}” labels an option where none begins; options stand between < and >, and a ; parts them.',
    help: `What one source has in place of another stands between angle brackets, each option after its label: \`<K: 2 c5 ; L: 4 c5 d>\`. A
comma parts beams, and a barline parts bars.`,
  },
  'figures-run-together': {
    level: 'error',
    sentence:
      '“{text}” runs figures of a bass together; a / stands between stacked ones, a comma between successive ones.',
    help: `No figure of a thorough bass is larger than 18. Figures above one another are parted by a slash, those that follow one another within a
note by a comma.

Before:
\`\`\`
  basse | 4 c3 d 2 e   |
    fig | 65   _ 76    |
\`\`\`
After:
\`\`\`
  basse | 4 c3 d 2 e   |
    fig | 6/5  _ 7,6   |
\`\`\``,
  },
  'hyphen-apart': {
    level: 'error',
    ofTyping: true,
    sentence: 'The hyphen “{text}” stands by itself; it must be glued to the syllable before it.',
    help: `A hyphen at the end of a syllable says that the word goes on. By itself it would be counted as a syllable of its own; \`=\` holds a syllable
on. A dash that is printed as a syllable is typed in quotes: \`"-"\`.

Before:
\`\`\`
  dessus | 4 c5 d e f         |
    text | Chan - ter bas =   |
\`\`\`
After:
\`\`\`
  dessus | 4 c5 d e f       |
    text | Chan- ter bas =  |
\`\`\``,
  },
  'align-refused': {
    level: 'error',
    sentence: 'The text was left as it is: laid out, {reason}.',
    help: `Laying out moves white space alone. Before the new text takes the place of the old one, both are read and compared: every
sign, every comment and the whole tree must be the same, and laying out again must change nothing. If that does not hold, the old
text stays. Please report the passage as a fault of Bentside. Until it is mended, keep the passage out of it:

    // align off
    dessus | 4 c5  d   e f |
    // align on`,
  },
});
