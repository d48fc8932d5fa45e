import { entries } from './entry';

/** Findings about statements and changes by themselves: words, strings, names, numbers, metres, clefs. */
export const statementFindings = entries({
  // ── words ──
  'unknown-statement': {
    level: 'error',
    sentence: '“{word}” begins no statement; expected was {expected}.',
    help: `A line that begins in the first column is a statement and opens with its keyword. This word is none, so the
line and what belongs to it were passed over.

Before:
\`\`\`
stav upper lines 5
\`\`\`
After:
\`\`\`
stave upper lines 5
\`\`\`
A line that continues a statement, or a lane, is indented.`,
  },
  'unknown-clause': {
    level: 'error',
    sentence: '“{word}” has no place in `{where}`; expected was {expected}.',
    help: `After its first words a statement has clauses, each with a keyword. Neither a clause nor anything else that
could stand here begins with this word; it was passed over to the next clause.

Before:
\`\`\`
voice taille upper stms down
\`\`\`
After:
\`\`\`
voice taille upper stems down
\`\`\``,
  },
  'unknown-word': {
    level: 'error',
    sentence: '“{word}” cannot stand here; expected was {expected}.',
    help: `In this place one word of a short list stands.

Before:
\`\`\`
practice overdot doubel
\`\`\`
After:
\`\`\`
practice overdot double
\`\`\``,
  },
  'unknown-change': {
    level: 'error',
    sentence: '“{word}” is no change that can be made in a lane; expected was {expected}.',
    help: `A round bracket that stands by itself in a lane is a change or words of the source. It begins with one of
\`now up down home stems manual custos ending section irregular above below\`. A new clef, signature, metre or tempo stands after \`now\`.

Before:
\`\`\`
dessus | (nwo C3) 4 c5 d |
\`\`\`
After:
\`\`\`
dessus | (now C3) 4 c5 d |
\`\`\``,
  },
  'missing-word': {
    level: 'error',
    sentence: 'Before “{before}” `{word}` is missing.',
    help: `A small word or sign belongs between the two.

Before:
\`\`\`
tempo 2 50
pitch a4 415
\`\`\`
After:
\`\`\`
tempo 2 at 50
pitch a4 = 415
\`\`\``,
  },
  'missing-argument': {
    level: 'error',
    sentence: 'Something is missing after `{where}`: {expected}.',
    help: `The statement or clause breaks off before it has said all that it must.

Before:
\`\`\`
reading french
  takes
\`\`\`
After:
\`\`\`
reading french
  takes K
\`\`\``,
  },
  'wrong-argument': {
    level: 'error',
    sentence: '“{word}” cannot stand here; expected was {expected}.',
    help: `Something of another kind is expected in this place: a note value, a pitch, a clef, a number.

Before:
\`\`\`
instrument harpsichord compass g-d
tempo minim at 50
\`\`\`
After:
\`\`\`
instrument harpsichord compass g1-d6
tempo 2 at 50
\`\`\`
Pitches in statements are small letters, with the octave where one place on the keyboard is meant: c4 is middle C.
A fifth is given from its lower to its upper note (\`c-g\`, and \`g#-eb\` for the wolf), a divided key by the two names of
one key (\`d#/eb\`).`,
  },
  'too-much': {
    level: 'error',
    sentence: 'Nothing more can stand after `{where}`: “{word}” was passed over.',
    help: `The statement or change is complete before this word.

Before:
\`\`\`
accidentals note bar
\`\`\`
After:
\`\`\`
accidentals note
\`\`\``,
  },
  'repeated-clause': {
    level: 'warning',
    sentence: '`{word}` stands twice in one `{where}`; the first one counts.',
    help: `This clause can stand only once in a statement.

Before:
\`\`\`
reading french
  takes K
  takes L
\`\`\`
After:
\`\`\`
reading french
  takes K,L
\`\`\``,
  },

  // ── strings and lists ──
  'typographic-quotes': {
    level: 'error',
    ofTyping: true,
    sentence: 'The quotation mark {quote} is typographic; a quoted text stands between straight ones ("…").',
    help: `Quoted texts stand between straight quotation marks; a word processor likes to change them. Inside them
typographic marks are welcome, and two straight marks stand for one.

Before:
\`\`\`
title “Entrée”
\`\`\`
After:
\`\`\`
title "Entrée"
\`\`\``,
  },
  'escaped-quote': {
    level: 'error',
    ofTyping: true,
    sentence: 'A quotation mark inside a quoted text is doubled ("") and has no backslash.',
    help: `Two quotation marks inside a quoted text stand for one. A backslash is a sign like any other.

Before:
\`\`\`
title "La \\"Belle\\" dame"
\`\`\`
After:
\`\`\`
title "La ""Belle"" dame"
\`\`\``,
  },
  'unclosed-string': {
    level: 'error',
    sentence: 'The quoted text is not closed on its line.',
    help: `A quoted text begins and ends with a quotation mark on one line. Two quotation marks inside stand for one.

Before:
\`\`\`
title "Entrée
\`\`\`
After:
\`\`\`
title "Entrée"
\`\`\``,
  },
  'needs-quotes': {
    level: 'error',
    ofTyping: true,
    sentence: '“{word}” must stand in quotes.',
    help: `Titles, descriptions, page labels and file names stand in quotes, however short they are.

Before:
\`\`\`
page 3v
\`\`\`
After:
\`\`\`
page "3v"
\`\`\``,
  },
  'space-in-list': {
    level: 'error',
    sentence: 'The commas of a list must have no space around them.',
    help: `Members of a list are typed without spaces.

Before:
\`\`\`
takes K, L
\`\`\`
After:
\`\`\`
takes K,L
\`\`\``,
  },

  // ── names ──
  'bad-name': {
    level: 'error',
    sentence: '“{word}” cannot be {expected}: a name is a letter, then letters, digits and `_`.',
    help: `Names that lanes cite are letters without accents, digits and \`_\`, and begin with a letter. Names of tables,
temperaments and instruments may have hyphens. A layer of a source is the source, a full stop and a number.

Before:
\`\`\`
voice haute-contre upper
\`\`\`
After:
\`\`\`
voice haute_contre upper
\`\`\``,
  },
  'reserved-name': {
    level: 'error',
    sentence: '“{word}” cannot be {expected}: the word has a meaning of its own there.',
    help: `\`fig\` and \`text\` are no voices; \`loose free key meter tempo at none lines stems\` are no staves;
\`written main sic corr omit\` are no sources, readings or places.

Before:
\`\`\`
reading main "The main text"
\`\`\`
After:
\`\`\`
reading plain "The main text"
\`\`\``,
  },
  'stave-like-note': {
    level: 'error',
    sentence: 'A stave cannot be called “{word}”: in a signature or a head it would be read as a note or a clef.',
    help: `\`key f bb\` would not say whether f is a stave or a note.

Before:
\`\`\`
stave f lines 5
\`\`\`
After:
\`\`\`
stave lower lines 5
\`\`\``,
  },

  // ── numbers, meters, clefs ──
  'number-out-of-range': {
    level: 'error',
    sentence: '{word} is out of range: {what} lies between {low} and {high}.',
    help: `The number is beyond what there is.

Before:
\`\`\`
stave upper lines 12
\`\`\`
After:
\`\`\`
stave upper lines 6
\`\`\``,
  },
  'ratio-out-of-range': {
    level: 'error',
    sentence: 'The numbers of {word} must lie between 1 and {most}.',
    help: `Neither number of a ratio can be 0 or more than 99.

Before:
\`\`\`
practice inegal 8 300:200
\`\`\`
After:
\`\`\`
practice inegal 8 3:2
\`\`\``,
  },
  'bar-out-of-range': {
    level: 'error',
    sentence: 'A bar cannot be {word} long: 1 to {beats} of a semibreve, its half, its quarter … to its {smallest}th.',
    help: `The length of a bar is a fraction of a semibreve whose lower number is a note value: 1, 2, 4, 8 … 128.

Before:
\`\`\`
meter cut-C = 2/3
\`\`\`
After:
\`\`\`
meter cut-C = 2/2
\`\`\``,
  },
  'unknown-meter': {
    level: 'error',
    sentence: 'The metre sign “{word}” has no usual length; say it: `meter {word} = 3/2`.',
    help: `The signs \`C cut-C O 2 3\` and fractions such as \`6/4\` have a usual length. Any other sign is kept as the source
draws it, if the length of its bar is said.

Before:
\`\`\`
meter cut-O
\`\`\`
After:
\`\`\`
meter cut-O = 3/1
\`\`\``,
  },
  'clefs-disagree': {
    level: 'error',
    sentence: 'The clefs {first} and {second} do not agree about the lines of the stave.',
    help: `Two clefs at the head of one stave must give every line the same note: C stands two lines above F, G two above C.

Before:
\`\`\`
system lower F4+C5
\`\`\`
After:
\`\`\`
system lower F4+C6
\`\`\``,
  },
});
