/**
 * What other choices would take: one for each label of the text, the labels around it included, so that every option of
 * every place is taken by one of them.
 */
import type { EventItem, Item, LaneTree, Readings, Suffix } from '../../../grammar/tree';
import { choiceOf } from '../../readings/choices';
import { PlaceDecisions } from '../../readings/places';
import { buildScore } from '../../score/build';
import { type Choice, labelText } from '../../score/choice';
import type { Score } from '../../score/score';
import { type Measure, numbered } from '../measures';
import { barName } from './names';

export interface Variant {
  /** The label that it takes wherever it stands. */
  readonly label: string;
  /** Of a label inside an option: that option's label, which it takes only there. */
  readonly within: string | undefined;
  readonly score: Score;
}

/** The scores of all variants of a score, in the order in which their labels first stand in the text. */
export function variantsOf(score: Score): readonly Variant[] {
  const { file, tree, environment } = score;
  const paths = new Map<string, Path>();
  const note = (path: Path): void => {
    if (!paths.has(path.join(' '))) paths.set(path.join(' '), path);
  };
  for (const { lanes } of tree.blocks) {
    for (const { tree: lane, witness } of lanes) {
      if (witness !== undefined) note([witness.text]);
      labelsInLane(lane, witness === undefined ? [] : [witness.text], note);
    }
  }
  return [...paths.values()].map((path) => ({
    label: path[0] ?? '',
    within: path[1],
    score: buildScore(file, tree, environment, choiceFor(path, score)),
  }));
}

/** Labels from the innermost place outwards. */
type Path = readonly string[];

/** Of a reading all that it chooses, but sounding as the exported one does; of other labels what takes these wherever they stand. */
function choiceFor(path: Path, { tree, environment, choice }: Score): Choice {
  const [label = ''] = path;
  const reading = environment.readings.some(({ name }) => name === label) ? choiceOf(environment, label) : undefined;
  if (reading === undefined || path.length > 1) return taking(path, choice);
  const decided = new PlaceDecisions().decide(tree, environment, new Map([[label, reading]])).get(label);
  return { ...(decided ?? reading), accidentals: choice.accidentals };
}

/**
 * The bars of a variant that lie between the first and the last of the bars exported, piece by piece: what a source leaves
 * out makes it count them otherwise.
 */
export function measuresLike(variant: Score, main: Score, measures: readonly Measure[]): readonly Measure[] {
  const wanted = new Set(measures.map((measure) => barName(main, measure)));
  const all = numbered(variant.pieces.map((piece) => ({ piece, bars: piece.bars })));
  return numbered(
    variant.pieces.map((piece) => {
      const own = all.filter((measure) => measure.piece === piece);
      const isWanted = (measure: Measure): boolean => wanted.has(barName(variant, measure));
      const [first, last] = [own.findIndex(isWanted), own.findLastIndex(isWanted)];
      return { piece, bars: first < 0 ? [] : own.slice(first, last + 1).map(({ bar }) => bar) };
    }),
  );
}

/** The choice that takes these labels wherever they stand, and else what the other takes. */
const taking = (path: Path, choice: Choice): Choice => ({
  ...choice,
  at: new Map([...choice.at].map(([place, labels]) => [place, [...path, ...labels]])),
  labels: [...path, ...choice.labels],
});

type Note = (path: Path) => void;

function labelsInLane({ opening, segments }: LaneTree, outer: Path, note: Note): void {
  labelsInSuffixes(opening.suffixes, note);
  for (const { items, bar } of segments) {
    labelsInItems(items, outer, note);
    if (bar !== undefined) labelsInSuffixes(bar.suffixes, note);
  }
}

function labelsInItems(items: readonly Item[], outer: Path, note: Note): void {
  for (const item of items) {
    if (item.kind === 'event') labelsInEvent(item, note);
    if (item.kind === 'barline') labelsInSuffixes(item.suffixes, note);
    if (item.kind === 'span') {
      labelsInLimits(item.head.readings, note);
      labelsInItems(item.items, outer, note);
      labelsInSuffixes(item.suffixes, note);
    }
    if (item.kind !== 'options') continue;
    labelsInSuffixes(item.suffixes, note);
    for (const option of item.options) {
      const own = option.labels.map((label) => [labelText(label), ...outer]);
      for (const path of own) note(path);
      labelsInItems(option.items, own[0] ?? outer, note);
    }
  }
}

function labelsInEvent({ tie, suffixes, members }: EventItem, note: Note): void {
  labelsInLimits(tie?.readings, note);
  labelsInSuffixes(suffixes, note);
  for (const member of members) {
    labelsInLimits(member.tie?.readings, note);
    labelsInSuffixes(member.suffixes, note);
  }
}

function labelsInSuffixes(suffixes: readonly Suffix[], note: Note): void {
  for (const suffix of suffixes) if (suffix.kind === 'mark') labelsInLimits(suffix.form.readings, note);
}

/** `'zz:french` is there for one who names that reading, `'zz:!plain` not for one who names this. */
const labelsInLimits = (readings: Readings | undefined, note: Note): void => {
  for (const name of readings?.names ?? []) note([name]);
};
