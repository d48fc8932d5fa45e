import { entries } from './entry';

/** Findings about what a file's declarations say together. */
export const declarationFindings = entries({
  'name-used-twice': {
    level: 'error',
    sentence: 'The name “{name}” is given twice; the first one counts.',
    help: `Each name stands for one thing. Sources and readings share their names, since an option can cite either.

Before:
\`\`\`
source  K "Thornmere Keyboard Book"
reading K "As the book has it"
\`\`\`
After:
\`\`\`
source  K     "Thornmere Keyboard Book"
reading plain "As the book has it"
\`\`\``,
  },
  'stated-twice': {
    level: 'warning',
    sentence: '`{name}` is stated twice for the file; the first one counts.',
    help: `A file has one title, pitch, tuning, instrument, practice of accidentals and sign table; readings may choose others.

Before:
\`\`\`
accidentals note
accidentals bar
\`\`\`
After:
\`\`\`
accidentals note

reading modern
  accidentals bar
\`\`\``,
  },
  'unknown-stave': {
    level: 'error',
    sentence: 'No stave is called “{name}”.',
    help: `A voice stands on a stave that is declared, or has one of its own if none is named.

Before:
\`\`\`
stave upper
voice dessus uper
\`\`\`
After:
\`\`\`
stave upper
voice dessus upper
\`\`\``,
  },
  'unknown-voice': {
    level: 'error',
    sentence: 'No voice is called “{name}”.',
    help: `A practice can be for one voice; the voice must be declared.

Before:
\`\`\`
voice dessus upper
practice overdot voice desus
\`\`\`
After:
\`\`\`
voice dessus upper
practice overdot voice dessus
\`\`\``,
  },
  'lines-of-another': {
    level: 'warning',
    sentence: 'The lines of stave “{stave}” are told where the stave is declared, not by voice “{voice}”.',
    help: `Only a voice that has a stave of its own says how many lines it has.

Before:
\`\`\`
stave upper
voice dessus upper lines 6
\`\`\`
After:
\`\`\`
stave upper lines 6
voice dessus upper
\`\`\``,
  },
  'unknown-shape': {
    level: 'error',
    sentence: 'No sign is called “{name}”.',
    help: `A row of a table begins with the name of a sign's shape, or several joined by \`+\`; what the table calls it stands
after it in quotes.

Before:
\`\`\`
table house
  zigzagg "shake" : on beat, (+1 0) repeated
\`\`\`
After:
\`\`\`
table house
  zz "shake" : on beat, (+1 0) repeated
\`\`\``,
  },
  'unknown-source': {
    level: 'error',
    sentence: 'No source is called “{name}”.',
    help: `A layer belongs to a source that is declared.

Before:
\`\`\`
hand K.2 "paler ink"
\`\`\`
After:
\`\`\`
source K "Thornmere Keyboard Book"
hand K.2 "paler ink"
\`\`\``,
  },
  'unknown-reading': {
    level: 'error',
    sentence: 'No reading is called “{name}”.',
    help: `A reading is built on another that is declared, before it or after it.

Before:
\`\`\`
reading late from early
\`\`\`
After:
\`\`\`
reading early
  takes K
reading late from early
\`\`\``,
  },
  'unknown-label': {
    level: 'error',
    sentence: 'No source, layer or reading is called “{name}”.',
    help: `What a reading takes is a source, a layer of one, another reading's options, \`sic\` or \`corr\`.

Before:
\`\`\`
source K "Thornmere Keyboard Book"
reading plain
  takes M
\`\`\`
After:
\`\`\`
source K "Thornmere Keyboard Book"
reading plain
  takes K
\`\`\``,
  },
  'reading-circle': {
    level: 'error',
    sentence: 'The reading “{name}” is built on itself, by way of {way}.',
    help: `Readings are built one on another; following \`from\` must come to an end.

Before:
\`\`\`
reading early from late
reading late from early
\`\`\`
After:
\`\`\`
reading early
reading late from early
\`\`\``,
  },
  'unknown-table': {
    level: 'error',
    sentence: 'No sign table is called “{name}”.',
    help: `A table is built in, defined in the file, or included.

Before:
\`\`\`
signs anglebert-1698
\`\`\`
After:
\`\`\`
signs anglebert-1689
\`\`\``,
  },
  'table-circle': {
    level: 'error',
    sentence: 'The table “{name}” comes from itself, by way of {way}.',
    help: `Tables come one from another; following \`from\` must come to an end.

Before:
\`\`\`
table house from house
\`\`\`
After:
\`\`\`
table house from anglebert-1689
\`\`\``,
  },
  'unknown-editor': {
    level: 'error',
    sentence: 'No editor signs as “{name}”.',
    help: `Whoever signs an annotation is declared once with the full name.

Before:
\`\`\`
note n7 by MK : "the tie is doubtful"
\`\`\`
After:
\`\`\`
editor MK "M. Keene"
note n7 by MK : "the tie is doubtful"
\`\`\``,
  },
});
