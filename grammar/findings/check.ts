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
    sentence: '{voice}: {note} lies outside the compass {low} to {high} of the instrument.',
    help: `The compass names the lowest and the highest key. A note beyond it is a slip of the octave or of the clef, or the
instrument is another one.

    instrument harpsichord  compass c2-c6
    …
    basse | 2 g1 c2 |||    // g1 has no key: g2, or compass g1-c6`,
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
});
