/** Every format that a score can be exported to: those of `export/` and those that are drawn. */
import type { Engraver } from '../engraving/engraver';
import { type Exported, type ExportFormat, type ExportOptions, formats } from '../export/formats';
import type { Score } from '../score/score';
import { exportSvg } from './svg';

/** A format whose pages somebody has to draw. */
export interface DrawnFormat extends Omit<ExportFormat, 'write'> {
  write(score: Score, options: ExportOptions, engraver: Engraver): Exported;
  readonly isDrawn: true;
}

const svg: DrawnFormat = {
  name: 'svg',
  title: 'engraved pages (SVG 1.1), a file a page',
  extension: 'svg',
  isText: true,
  isDrawn: true,
  write: exportSvg,
};

export const everyFormat: readonly (ExportFormat | DrawnFormat)[] = [...formats, svg];

export const isDrawn = (format: ExportFormat | DrawnFormat): format is DrawnFormat => 'isDrawn' in format;

/** A drawn format for whoever knows nothing of drawing. */
export const drawnBy = (format: DrawnFormat, engraver: Engraver): ExportFormat => ({
  ...format,
  write: (score, options) => format.write(score, options, engraver),
});
