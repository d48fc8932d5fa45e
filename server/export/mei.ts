/**
 * MEI 5.1 (Music Encoding Initiative, 2024): the scholarly form, that keeps everything.
 */
import type { PlacedProblem, Score } from '../score/score';
import { Losses, NOWHERE } from './losses';
import { type BarsWanted, measuresFor } from './measures';
import { musicElement } from './mei/tree';
import type { ClefChoice } from './staves';
import { printXml, type XmlElement, xml } from './xml';

export interface MeiOptions extends BarsWanted {
  /** The source's clefs, or a treble or bass clef for each stave. */
  readonly clefs: ClefChoice;
}

export interface MeiTree {
  /** The element `mei`; undefined where the score is refused, which a problem of level `error` says. */
  readonly root: XmlElement | undefined;
  readonly problems: readonly PlacedProblem[];
}

/** The score as a tree of MEI. Equal scores give equal trees. */
export function meiTree(score: Score, options: MeiOptions): MeiTree {
  const losses = new Losses();
  const measures = measuresFor(score, options, losses);
  if (measures?.length === 0) losses.add('export-no-music', {}, NOWHERE);
  if (measures === undefined || measures.length === 0) return { root: undefined, problems: losses.problems() };
  const root = xml('mei', { xmlns: 'http://www.music-encoding.org/ns/mei', meiversion: '5.1' }, [
    xml('meiHead', {}, [
      xml('fileDesc', {}, [
        xml('titleStmt', {}, [xml('title', {}, score.environment.title ?? '')]),
        xml('pubStmt', {}, [xml('unpub')]),
      ]),
    ]),
    musicElement(score, measures, options.clefs, losses),
  ]);
  return { root, problems: losses.problems() };
}

export interface MeiExport {
  /** The document; empty where the score is refused, which a problem of level `error` says. */
  readonly text: string;
  readonly problems: readonly PlacedProblem[];
}

/** The score as an MEI document. */
export function exportMei(score: Score, options: MeiOptions): MeiExport {
  const { root, problems } = meiTree(score, options);
  return root === undefined ? { text: '', problems } : { text: printXml(root).text, problems };
}
