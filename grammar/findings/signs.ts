import { entries } from './entry';

/** What is said where signs are realised: of a performance, not of the text. */
export const signFindings = entries({
  'sign-not-in-table': {
    level: 'info',
    sentence: 'The table {table} says nothing of `{sign}` at this note ({others}): it is played plain.',
    help: `The reading plays its signs by a table that has no row for this one, in this place. Choose a table that has it, or give the sign
a row in a table of your own.

Before:

    signs chambonnieres-1670
      dessus | 2 c5 d'zl |

After:

    table house from chambonnieres-1670
      zl "appuyé" : on beat, +1 leaned, (0 +1) repeated, hold
    signs house
      dessus | 2 c5 d'zl |`,
  },
  'sign-unresolved': {
    level: 'info',
    sentence: '`{sign}` is not resolved in {table} ({reason}): its note is played plain; {others}.',
    help: `The table names the sign, but how it is played is disputed or not known. Where other readings are offered, the name of one
in round brackets after the sign chooses it.

Before:

    signs english-strokes
      dessus | 2 c5 d'ss |

After:

    signs english-strokes
      dessus | 2 c5 d'ss(shake_upper) |`,
  },
  'sign-too-short': {
    level: 'info',
    sentence: 'The note of `{sign}` lasts {ms} ms at {tempo}: too short for its strokes, so it is played plain.',
    help: `A stroke needs some hundredths of a second. At the tempo in force the note is shorter than the strokes of its sign. A slower
tempo, or a table whose row for short notes (\`when short\`) has fewer strokes, makes room.

Before:

    tempo 4 at 120
      dessus | 32 c5'zz d e f 8 g 2. a |

After:

    tempo 4 at 50
      dessus | 32 c5'zz d e f 8 g 2. a |`,
  },
  'sign-snapped': {
    level: 'info',
    sentence: '`{sign}` is left out: its note comes late and short after a stretched dot.',
    help: `A short note after a dot that a practice stretches has no time for a sign. Where it should be played, the dot is taken
literally.

Before:

    practice overdot
      dessus | 4. d5 8 c'zz 2 b4 |

After:

    practice overdot
      dessus | {literal 4. d5 8 c'zz} 2 b4 |`,
  },
  'sign-on-beat': {
    level: 'info',
    sentence: '`{sign}` begins before the beat, but no note before it can give it the time: it begins on the beat.',
    help: `The row takes its first notes from the end of the note before. At the beginning of a piece, or after a note too short for
that, there is none; they are played on the beat, in the time of their own note.

Before:

    signs dandrieu-1724
      dessus | 1 d5'azs |

After:

    signs dandrieu-1724
      dessus | 2 g4 d5'azs |`,
  },
  'auxiliary-undecided': {
    level: 'info',
    sentence:
      'The auxiliary of `{sign}` is taken as {pitch}, while another voice sounds it otherwise: an accidental decides.',
    help: `By the signature and the notes around it the auxiliary would make an augmented second, or clash with a voice that sounds the
same degree with another accidental at that moment. An accidental directly after the sign decides.

Before:

    key bb
      dessus | 2 c#5'turn d |
      basse  | 2 bb3 a |

After:

    key bb
      dessus | 2 c#5'turn'n d |
      basse  | 2 bb3 a |`,
  },
  'key-held': {
    level: 'info',
    sentence: '`{sign}` strikes {pitch}, which {voice} is holding: the held note is released for it.',
    help: `An ornament needs a key that another voice holds down on the same manual. The held note is shortened, so that the ornament can
sound. Played on two manuals both sound: name them.

Before:

      dessus | 2 b4 c5'zz |
      taille | 1 d5 |

After:

      dessus | (manual upper) 2 b4 c5'zz |
      taille | (manual lower) 1 d5 |`,
  },
  'key-shared': {
    level: 'info',
    sentence:
      '`{sign}` strikes {pitch} again while {voice} holds it: the key is the ornament’s, and both end together.',
    help: `The note of a sign stands in another voice too, on the same manual. One key serves both: the ornament is played, and the held
note sounds again with its last note. Played on two manuals both sound: name them.

Before:

      dessus | 1 d5'zz |
      taille | 1 d5 |

After:

      dessus | (manual upper) 1 d5'zz |
      taille | (manual lower) 1 d5 |`,
  },
  'sign-impossible': {
    level: 'info',
    sentence: '`{sign}` spreads a chord, but one note stands there.',
    help: `The row spreads the notes of a chord one after another. Where a sign goes over two staves, a plus after it joins the lanes.

Before:

      dessus | 1 c5'arp |
      basse  | 1 c3'arp |

After:

      dessus | 1 c5'arp+ |
      basse  | 1 c3'arp+ |`,
  },
  'sign-parameter': {
    level: 'info',
    sentence: '“{word}” says nothing about how `{sign}` is played; it may be {known}.',
    help: `In round brackets after a sign stand where it is drawn (\`above\`, \`below\`, \`after\`), from which note it begins (\`from main\`, \`from
upper\`), the name of a row of the table, or that of another reading which the row offers.

Before:

      dessus | 2 c5'zz(form main) d |

After:

      dessus | 2 c5'zz(from main) d |`,
  },
  'tempo-assumed': {
    level: 'info',
    sentence: 'Signs are played at 60 crotchets a minute, for no tempo is stated.',
    help: `How many strokes a trill has depends on how long its note lasts. State the tempo of the piece, or one for the reading.

Before:

    signs anglebert-1689

After:

    signs anglebert-1689
    tempo 2 at 50`,
  },
});
