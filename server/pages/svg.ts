/** Engraved pages as SVG. */
import { engrave } from '../engraving/engrave';
import { type CannotDraw, cannotDraw, type Drawing, type DrawOptions, type Engraver } from '../engraving/engraver';
import type { FormOptions } from '../export/form';
import type { Exported, ExportOptions, Layout } from '../export/formats';
import { Losses, NOWHERE } from '../export/losses';
import type { BarsWanted } from '../export/measures';
import { type MeiTree, meiTree } from '../export/mei';
import type { PlacedProblem, Score } from '../score/score';
import { beneathEachOther, leavesOf } from './leaves';
import { undrawn } from './undrawn';

/** A4, in tenths of a millimetre. */
const PAPER = { width: 2100, height: 2970 };

const LAYOUTS: Readonly<Record<Layout, DrawOptions>> = {
  source: { breaks: 'encoded', width: PAPER.width },
  flow: { breaks: 'auto', ...PAPER },
  line: { breaks: 'none' },
};

/** All pages of a score. */
export function exportSvg(score: Score, options: ExportOptions, engraver: Engraver): Exported {
  const tree = meiTree(score, options);
  const layout = options.layout ?? 'source';
  const drawn = drawTree(score, tree, LAYOUTS[layout], engraver);
  if (cannotDraw(drawn)) return { content: [], problems: [...tree.problems, ...notDrawn(drawn)] };
  const isOnLeaves = layout === 'source' && tree.root !== undefined;
  const content = isOnLeaves ? leavesOf(drawn.pages, tree.root) : drawn.pages;
  return { content, problems: [...tree.problems, ...undrawn(tree.score, options)] };
}

/** What is to be drawn of a score, in which form its signs, and with which clefs. */
export interface PictureWish extends BarsWanted, FormOptions {
  readonly clefs: ExportOptions['clefs'];
  /** Index in `Environment.voices`: this voice only, on the staves where it stands. */
  readonly voice?: number;
}

export interface Picture {
  /** Undefined where nothing could be drawn, which a problem of level `error` says. */
  readonly svg: string | undefined;
  readonly problems: readonly PlacedProblem[];
}

/** The names of the source's pages, in their order. */
export const pageNames = (score: Score): readonly string[] => [
  ...new Set(score.pieces.flatMap(({ systems }) => systems.map(({ page }) => page))),
];

/** One page of the source, without a thought for the others: the first page of a long score takes as long as any. */
export const drawPage = (score: Score, page: string, wish: PictureWish, engraver: Engraver): Picture =>
  picture(score, { ...wish, page }, LAYOUTS.source, engraver);

/**
 * Some bars as one long system.
 * @param width in tenths of a millimetre: where it is given, as many systems beneath one another as it asks for
 */
export const drawLine = (score: Score, wish: PictureWish, engraver: Engraver, width?: number): Picture =>
  picture(score, wish, width === undefined ? LAYOUTS.line : { breaks: 'auto', width }, engraver);

/** The same on white: a picture that can stand anywhere. */
export function drawPassage(score: Score, wish: PictureWish, engraver: Engraver): Picture {
  const { svg, problems } = drawLine(score, wish, engraver);
  return { svg: svg === undefined ? undefined : onWhite(svg), problems };
}

function picture(score: Score, wish: PictureWish, layout: DrawOptions, engraver: Engraver): Picture {
  const tree = meiTree(score, wish);
  const drawn = drawTree(score, tree, layout, engraver);
  if (cannotDraw(drawn)) return { svg: undefined, problems: [...tree.problems, ...notDrawn(drawn)] };
  return { svg: beneathEachOther(drawn.pages), problems: tree.problems };
}

function drawTree(score: Score, { root }: MeiTree, layout: DrawOptions, engraver: Engraver): Drawing | CannotDraw {
  if (root === undefined) return { pages: [] };
  const { environment, choice } = score;
  const title = `${environment.title ?? score.file}, reading ${choice.name}`;
  return engrave(engraver, root, title, layout);
}

function notDrawn({ failure }: CannotDraw): readonly PlacedProblem[] {
  const losses = new Losses();
  losses.add('export-not-drawn', { why: failure }, NOWHERE);
  return losses.problems();
}

/** A picture without a ground of its own would vanish on a dark one. */
export const onWhite = (svg: string): string =>
  svg.replace(
    /<svg class="definition-scale"[^>]*>/g,
    (tag) => `${tag}<rect width="100%" height="100%" fill="white" stroke="none" />`,
  );
