/** Engraved pages as SVG. */

import { engrave } from '../engraving/engrave';
import { cannotDraw, type DrawOptions, type Engraver } from '../engraving/engraver';
import type { Exported, ExportOptions, Layout } from '../export/formats';
import { meiTree } from '../export/mei';
import type { Score } from '../score/score';

/** A4, in tenths of a millimetre. */
const PAPER = { width: 2100, height: 2970 };

const LAYOUTS: Readonly<Record<Layout, DrawOptions>> = {
  source: { breaks: 'encoded', width: PAPER.width },
  flow: { breaks: 'auto', ...PAPER },
  line: { breaks: 'none' },
};

export function exportSvg(score: Score, options: ExportOptions, engraver: Engraver): Exported {
  const { root, problems } = meiTree(score, options);
  if (root === undefined) return { content: [], problems };
  const { environment, choice } = score;
  const title = `${environment.title ?? score.file}, reading ${choice.name}`;
  const drawn = engrave(engraver, root, title, LAYOUTS[options.layout ?? 'source']);
  if (cannotDraw(drawn)) throw new Error(drawn.failure);
  return { content: drawn.pages, problems };
}
