import { entries } from './entry';
import { hintLeftOut, NO_CLEF } from './export';

/** What MEI and the pictures drawn from it leave out or cannot say. */
export const meiFindings = entries({
  // ── pictures ──
  'export-not-drawn': {
    level: 'error',
    sentence: 'The score could not be drawn: {why}.',
    help: `Pages are drawn by an engraving library, which takes no score that it cannot make sense of. Other formats do not
depend on it: \`bentside export --as musicxml\`. Drawing fewer bars (\`--bars 9-12\`) shows where the trouble lies.`,
  },
  'svg-annotation': {
    level: 'info',
    sentence: 'The annotations of {voice} ({bars}) are not in the picture.',
    help: `A picture shows what the source has on its page. What the editor says of it stands in the critical report
(\`bentside report score.bent\`) and, beside the music, in MEI and MusicXML.`,
  },
  'svg-option': {
    level: 'info',
    sentence: 'Where the sources of {voice} differ ({bars}) the picture has only what is labelled {labels}.',
    help: `A picture shows one text. Export each reading or witness by itself (\`--reading all\`) to have them all; MEI holds them
side by side.`,
  },
  'svg-tempo': {
    level: 'info',
    sentence: 'The tempo of the editor is not in the picture ({bars}).',
    help: `A \`tempo\` says how fast the music is played, in numbers that no source of the time writes, so it is not drawn. Words of
the source that speak of movement are typed in a lane, \`"Lentement"\`, and are drawn.`,
  },
  'svg-hint': hintLeftOut('picture'),
  'svg-weight': {
    level: 'info',
    sentence: "The editor's weights in {voice} are not in the picture ({bars}).",
    help: `A weight (\`'w2\`) says how much a note of an unmeasured system counts. It is no sign of the source, so it is not drawn.`,
  },

  // ── MEI ──
  'mei-no-clef': NO_CLEF,
  'mei-variant-broken': {
    level: 'warning',
    sentence: 'The time of {bars} is wrong in {label}; the export has there what the main text has.',
    help: `MEI holds the texts of all sources and readings side by side. A bar whose time is wrong in one of them cannot be
laid beside the others. The other findings of that reading say what is amiss (“In L: …”); mend it and export again.`,
  },
  'mei-piece-left-out': {
    level: 'info',
    sentence: '{label} has no bar of the piece {name}, which the export cannot say.',
    help: `MEI lays texts side by side bar by bar; a whole movement cannot stand in its apparatus. The piece is in the export as
the other sources have it. Say in an annotation that this source leaves it out.`,
  },
});
