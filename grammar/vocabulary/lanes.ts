/** What the words and signs of a lane mean, beyond sign shapes and changes: for completion and hover. */
import type { SpanWord } from '../tree';

/** What `{word …}` says of what it holds. */
export const spanMeanings: Readonly<Record<SpanWord, string>> = {
  overdot: 'Dotted notes in it are stretched.',
  inegal: 'Pairs of equal notes in it are played unequally; `2:1` gives their lengths.',
  assimilate: 'Duple figures in it take the time of triplets.',
  snap: 'Pairs in it with the short note first are sharpened.',
  literal: 'What is in it is played as it is written.',
  small: 'Small notes: time stands still at them.',
  black: 'Blackened notes; a proportion such as `3in2` changes their time.',
  void: 'Void notes; a proportion such as `1in2` changes their time.',
  lig: 'A ligature.',
  unclear: 'The source is hard to read here.',
  supplied: 'The editor supplies it.',
  deleted: 'The source takes it away.',
  added: 'Added in the source, by the hand that is named after a colon.',
};

/** Marks that are no signs of a table. */
export const markMeanings: Readonly<Record<string, string>> = {
  u: "A curve begins; `'.` ends it.",
  '.': 'The curve begun last ends.',
  line: "A straight line begins; `'.` ends it.",
  through: 'The note is longer than its bar, with no tie drawn.',
  fermata: 'A fermata.',
  dot: 'A dot above or below the note.',
  stroke: 'A stroke or wedge above or below the note.',
  renvoi: 'The sign from which a repeat goes on.',
  fin: 'The end is here.',
};

/** Words and signs that stand by themselves. */
export const laneMeanings: Readonly<Record<string, string>> = {
  r: 'A rest of the value in force.',
  rbar: 'A rest that fills the bar.',
  _: 'Time passes with nothing drawn.',
  __: 'The rest of the bar passes with nothing drawn.',
  '=': 'The event before it again, tied, in the value in force.',
  lost: 'A lacuna: `lost 2.` takes that time, `lost ?` the rest of the bar.',
  omit: 'This witness has nothing here, not even time.',
  '&': 'The events on either side stand under one beam.',
  ',': 'The beam is broken here.',
};

/** Where a sign is drawn, in round brackets after it. */
export const markPlaces: Readonly<Record<string, string>> = {
  above: 'Drawn above the note.',
  below: 'Drawn below the note.',
  before: 'Drawn before the note.',
  after: 'Drawn after the note.',
  'from main': 'It begins on the written note.',
};

/** What stands under the lane of a voice. */
export const subLaneNames: Readonly<Record<string, string>> = {
  fig: 'Figures of the bass, an item for each note.',
  text: 'Words that are sung, a syllable for each note.',
};
