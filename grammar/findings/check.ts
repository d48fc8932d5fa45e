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
    sentence: 'The instrument has no manual called “{name}”; it has {known}.',
    help: `\`(manual upper)\` names a manual that a row of \`instrument\` declares:

    instrument harpsichord
      manual upper stops 8
      manual lower stops 8 4`,
  },
  'unknown-place': {
    level: 'error',
    sentence: 'No options bear the place name “{name}”; there are {known}.',
    help: `A place is named where its options stand: \`<v3 K: … ; L: …>\`. A reading decides about it by \`at v3 takes L\`, and
\`link v3 v9\` joins two places.`,
  },
  'unused-declaration': {
    level: 'info',
    sentence: 'The {what} “{name}” is declared but never used.',
    help: `Nothing in the file cites this name. It may be left over, or its use misspelt. A first \`source\` is the main text and needs
no citation.`,
  },
  'outside-compass': {
    level: 'warning',
    sentence: '{voice}: {note} lies outside the compass {low} to {high} of the instrument.',
    help: `\`instrument … compass g1-d6\` states the lowest and the highest key. A note beyond it is a slip of the octave or of the clef, or
the instrument is another one.`,
  },
});
