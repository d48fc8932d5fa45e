/**
 * MEI 5.1 (Music Encoding Initiative, 2024): the scholarly form, that keeps everything.
 */
import type { PlacedProblem, Score } from '../score/score';
import { Losses, NOWHERE } from './losses';
import { type BarsWanted, measuresFor } from './measures';
import { documentElement } from './mei/tree';
import type { ClefChoice } from './staves';
import { printXml, type XmlElement } from './xml';

export interface MeiOptions extends BarsWanted {
  /** The source's clefs, or a treble or bass clef for each stave. */
  readonly clefs: ClefChoice;
}

export interface MeiTree {
  /** The element `mei`; undefined where the score is refused, which a problem of level `error` says. */
  readonly root: XmlElement | undefined;
  readonly problems: readonly PlacedProblem[];
}

/** What one reading says, as a tree of MEI. Equal scores give equal trees. */
export function meiTree(score: Score, options: MeiOptions): MeiTree {
  const losses = new Losses();
  const root = rootOf(score, options, losses);
  return { root, problems: losses.problems() };
}

export interface MeiExport {
  /** The document; empty where the score is refused, which a problem of level `error` says. */
  readonly text: string;
  readonly problems: readonly PlacedProblem[];
}

/** The score as an MEI document. */
export function exportMei(score: Score, options: MeiOptions): MeiExport {
  const losses = new Losses();
  const root = rootOf(score, options, losses);
  if (root === undefined) return { text: '', problems: losses.problems() };
  const { text, replaced } = printXml(root);
  if (replaced > 0) losses.add('export-characters', {}, NOWHERE);
  return { text, problems: losses.problems() };
}

function rootOf(score: Score, options: MeiOptions, losses: Losses): XmlElement | undefined {
  const measures = measuresFor(score, options, losses);
  if (measures?.length === 0) losses.add('export-no-music', {}, NOWHERE);
  if (measures === undefined || measures.length === 0) return undefined;
  return documentElement(score, measures, options.clefs, losses);
}
