import { entries } from './entry';

/** What is said where practices of rhythm are played: of a performance, not of the text. */
export const rhythmFindings = entries({
  'practice-idle': {
    level: 'info',
    sentence: 'The practice `{practice}` finds nothing to act on.',
    help: `In this reading no note is played at another time for the practice: the passage has no such figures, they are protected by
\`{literal …}\`, another practice has them, or the metre sign makes no value unequal. In cut C quavers are as a rule equal
(Hotteterre 1719): a value of your own (\`inegal 8\`) says otherwise.

Before:

    practice inegal by-meter
    system upper C1  meter cut-C
      dessus | 8 c5 d e f g a g f |||

After:

    practice inegal 8
    system upper C1  meter cut-C
      dessus | 8 c5 d e f g a g f |||`,
  },
  'practice-against': {
    level: 'info',
    sentence:
      'Bar {bar}, {voice}: `{practice}` would part this figure from the even notes of {other}: it goes with them.',
    help: `The short note is written together with one of several even notes in another voice. To sharpen the one would part the two, or
bend the even notes. As a rule the figure is then played as it stands; a mark in the lane plays it sharp nevertheless.

Before:

      dessus | 4. d5 8 e 2 f |
      taille | 8 a4 b c5 d 2 a4 |

After:

      dessus | {overdot 4. d5 8 e} 2 f |
      taille | 8 a4 b c5 d 2 a4 |`,
  },
  'practice-overlap': {
    level: 'info',
    sentence: 'Bar {bar}, {voice}: `{taken}` and `{left}` both change the time of this figure: {taken} is played.',
    help: `Two practices would give the time of one note to its neighbours twice. One of them is played. Limit the other to a section or
voice, or mark the passage in the lane.

Before:

    practice overdot
    practice upbeats late
      dessus | 2 c5 4. r 8 d | 1 e |

After:

    practice overdot
      dessus | 2 c5 4. r 8 d | 1 e |`,
  },
  'practice-undecided': {
    level: 'hint',
    sentence: '`{practice}` leaves a context undecided: {why}.',
    help: `Sources cancel inequality in contexts for which they give no measure, or use words without one agreed meaning. What is said
here is played as the practice says; \`{literal …}\` or a mark in the lane decides the passage.

Before:

    practice inegal 8
    tempo 4 at 240
      dessus | 8 c5 d e f g a g f |

After:

    practice inegal 8
    tempo 4 at 240
      dessus | {literal 8 c5 d e f g a g f} |`,
  },
  'practice-candidate': {
    level: 'hint',
    sentence:
      'Bar {bar}, {voice}: {figure} against a triplet of {other}: to the triplet, to the duple figure, or each as written?',
    help: `Players of the time did each of the three, and books of equal rank speak for each. Nothing is said of this place: it is played
as written. \`practice assimilate\` with \`triplet\`, \`duple\` or \`literal\` decides.

Before:

      dessus | 8. c5 16 d 4 e 2 f |
      basse  | 8x c3 e g 4 c 2 f |

After:

    practice assimilate triplet
      dessus | 8. c5 16 d 4 e 2 f |
      basse  | 8x c3 e g 4 c 2 f |`,
  },
});
