import { entries } from './entry';

/** Findings about the recipes by which tables say how a sign is played. */
export const recipeFindings = entries({
  'recipe-word': {
    level: 'error',
    sentence: '“{word}” says nothing in a recipe; expected was {expected}.',
    help: `A recipe is phrases parted by commas: \`on beat\` or \`before beat\` first, then steps from the written note with
their \`for\` or \`at\`, then \`hold\` or \`rest\`. The phrase was passed over from here.

Before:
\`\`\`
zz "shake" : on beat, (+1 0) repeatd, hold
\`\`\`
After:
\`\`\`
zz "shake" : on beat, (+1 0) repeated, hold
\`\`\``,
  },
  'recipe-comma': {
    level: 'error',
    sentence: 'A comma and a space must stand between the phrases of a recipe, here at “{word}”.',
    help: `Before:
\`\`\`
ca "pincé" : on beat,0 -1 0 hold
\`\`\`
After:
\`\`\`
ca "pincé" : on beat, 0 -1 0, hold
\`\`\``,
  },
  'recipe-bracket': {
    level: 'error',
    sentence: 'What is repeated must stand between round brackets.',
    help: `Before:
\`\`\`
zz "shake" : on beat, +1 0 repeated
\`\`\`
After:
\`\`\`
zz "shake" : on beat, (+1 0) repeated
\`\`\``,
  },
  'recipe-start-first': {
    level: 'error',
    sentence: '`{word}` must stand once, at the head of a recipe.',
    help: `Before:
\`\`\`
ca "pincé" : 0 -1 0, on beat, hold
\`\`\`
After:
\`\`\`
ca "pincé" : on beat, 0 -1 0, hold
\`\`\``,
  },
  'recipe-start-missing': {
    level: 'warning',
    sentence: 'The recipe does not say whether it begins on the beat or before it; on the beat is taken.',
    help: `Before:
\`\`\`
ca "pincé" : 0 -1 0, hold
\`\`\`
After:
\`\`\`
ca "pincé" : on beat, 0 -1 0, hold
\`\`\``,
  },
  'recipe-extends-first': {
    level: 'error',
    sentence: '`extends` must stand once, before all steps of its own.',
    help: `A row that extends another begins with what that row gives and goes on with its own steps.

Before:
\`\`\`
zz+ca "shake and beat" : -1 0, extends zz
\`\`\`
After:
\`\`\`
zz+ca "shake and beat" : extends zz, -1 0
\`\`\``,
  },
  'recipe-unresolved-alone': {
    level: 'error',
    sentence: 'A row that is `unresolved` gives no notes; the steps are passed over.',
    help: `A table that names a sign without saying how it is played says \`unresolved\` and why, and nothing more.

Before:
\`\`\`
ss "two strokes" : on beat, 0 +1 0, unresolved "its meaning is disputed"
\`\`\`
After:
\`\`\`
ss "two strokes" : unresolved "its meaning is disputed"
\`\`\``,
  },
  'recipe-ended': {
    level: 'error',
    sentence: '`{word}` alone takes all the time that is left; say here for which share of the value it lasts.',
    help: `\`rest\` alone lasts to the end of the note, so nothing follows it. \`hold\` alone stands as long as the rest of the recipe
leaves, so it stands once.

Before:
\`\`\`
cb "suspension" : on beat, rest, 0
\`\`\`
After:
\`\`\`
cb "suspension" : on beat, rest 1/4, 0
\`\`\``,
  },
  'step-without-sign': {
    level: 'error',
    sentence: 'Does “{word}” mean a step above or below? Write +{word} or -{word}.',
    help: `Steps are counted from the written note, which is 0: +1 the step above, -1 the step below.

Before:
\`\`\`
zz "shake" : on beat, (1 0) repeated
\`\`\`
After:
\`\`\`
zz "shake" : on beat, (+1 0) repeated
\`\`\``,
  },
  'share-out-of-range': {
    level: 'error',
    sentence: 'A share of the value cannot be {word}: it is a part of the whole, such as 1/2.',
    help: `Before:
\`\`\`
cb "cheute" : on beat, -1 for 3/2, 0
\`\`\`
After:
\`\`\`
cb "cheute" : on beat, -1 for 1/2, 0
\`\`\``,
  },
});
