/**
 * MEI 5.1 (Music Encoding Initiative, 2024): the scholarly form, that keeps everything.
 */
import type { Bar, PlacedProblem, Score } from '../score/score';
import { above } from './both';
import { type Formed, type FormOptions, inForm } from './form';
import { Losses, NOWHERE, whereBar } from './losses';
import { type BarsWanted, type Measure, measuresFor } from './measures';
import { merged } from './mei/merge';
import { withOssias } from './mei/ossias';
import { withSaid } from './mei/placeNotes';
import { withoutMarks } from './mei/places';
import { documentOf } from './mei/tree';
import { measuresLike, variantsOf } from './mei/variants';
import { oneVoice } from './oneVoice';
import { tableOf } from './ornaments';
import type { ClefChoice } from './staves';
import { printXml, type XmlElement } from './xml';

export interface MeiOptions extends BarsWanted, FormOptions {
  /** The source's clefs, or a treble or bass clef for each stave. */
  readonly clefs: ClefChoice;
}

export interface TreeOptions extends MeiOptions {
  /** Index in `Environment.voices`: this voice only, on the staves where it stands. */
  readonly voice?: number;
}

export interface MeiTree {
  /** The element `mei`; undefined where the score is refused, which a problem of level `error` says. */
  readonly root: XmlElement | undefined;
  /** In the form that the tree has. */
  readonly score: Score;
  readonly problems: readonly PlacedProblem[];
}

/** What one reading says, as a tree of MEI without variants. Equal scores give equal trees. */
export function meiTree(given: Score, options: TreeOptions): MeiTree {
  const { score: whole, problems } = inOneTree(given, options);
  const losses = new Losses(given.pieces);
  const score = options.voice === undefined ? whole : oneVoice(whole, options.voice, barsOf(whole, options));
  const measures = exportedMeasures(score, options, losses);
  if (measures === undefined) return { root: undefined, score, problems: losses.problems() };
  const { root, said } = documentOf(score, measures, options.clefs, losses);
  const plain = withoutMarks(withSaid(root, said));
  const ossias = realisedAbove(given, options);
  return {
    root: ossias.root === undefined ? plain : withOssias(plain, plain, ossias.root),
    score,
    problems: [...problems, ...losses.problems(), ...ossias.problems],
  };
}

/** The score in its form, where both rhythms are shown one part above the other. */
function inOneTree(given: Score, options: MeiOptions): Pick<Formed, 'score' | 'problems'> {
  const { score, beneath, problems } = inForm(given, options);
  return { score: beneath === undefined ? score : above(score, beneath), problems };
}

const barsOf = (score: Score, options: MeiOptions): ReadonlySet<Bar> =>
  new Set(measuresFor(score, options, new Losses())?.map(({ bar }) => bar));

/** The signs written out, for those who want both. */
const realisedAbove = (score: Score, options: TreeOptions): Pick<MeiTree, 'root' | 'problems'> =>
  options.ornaments === 'above' ? meiTree(score, { ...options, ornaments: 'full' }) : { root: undefined, problems: [] };

export interface MeiExport {
  /** The document; empty where the score is refused, which a problem of level `error` says. */
  readonly text: string;
  readonly problems: readonly PlacedProblem[];
}

/** The score as an MEI document: the text of its reading, with what any other source or reading has beside it. */
export function exportMei(given: Score, options: MeiOptions): MeiExport {
  const { score, problems } = inOneTree(given, options);
  const losses = new Losses(given.pieces);
  const measures = exportedMeasures(score, options, losses);
  if (measures === undefined) return { text: '', problems: losses.problems() };
  const main = documentOf(score, measures, options.clefs, losses);
  const table = options.table ?? tableOf(score);
  // Beneath one another stand two forms of one reading: no room for what others have.
  const all = options.show === 'both' ? [] : variantsOf(score);
  const variants = all.flatMap(({ label, within, score: plain }) => {
    const { score: other } = inForm(plain, { ...options, ...(table === undefined ? {} : { table }) });
    const own = measuresLike(other, score, measures);
    if (within === undefined) tellPiecesWithout(measures, own, score, label, losses);
    return own.length === 0 ? [] : [{ label, within, ...documentOf(other, own, options.clefs, losses) }];
  });
  const root = merged(main, variants, score.environment, (label, { system, bar }) =>
    losses.add('mei-variant-broken', { label }, whereBar(system, bar)),
  );
  const ossias = realisedAbove(given, options);
  const whole = ossias.root === undefined ? root : withOssias(root, withoutMarks(main.root), ossias.root);
  const { text, replaced } = printXml(whole);
  if (replaced > 0) losses.add('export-characters', {}, NOWHERE);
  return { text, problems: [...problems, ...losses.problems(), ...ossias.problems] };
}

/** Names the pieces of which a source has no bar: a movement cannot stand in an apparatus. */
function tellPiecesWithout(
  measures: readonly Measure[],
  own: readonly Measure[],
  score: Score,
  label: string,
  losses: Losses,
): void {
  const names = new Set(own.map(({ piece }) => piece.name));
  for (const piece of new Set(measures.map((measure) => measure.piece))) {
    if (names.has(piece.name)) continue;
    const name = piece.name === '' ? `${score.pieces.indexOf(piece) + 1}` : `“${piece.name}”`;
    losses.add('mei-piece-left-out', { label, name }, { ...NOWHERE, system: piece.systems[0] });
  }
}

/** Undefined where the score is refused. */
function exportedMeasures(score: Score, options: MeiOptions, losses: Losses): readonly Measure[] | undefined {
  const measures = measuresFor(score, options, losses);
  if (measures?.length === 0) losses.add('export-no-music', {}, NOWHERE);
  return measures?.length === 0 ? undefined : measures;
}
