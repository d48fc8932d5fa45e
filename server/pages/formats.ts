/** Every format that a score can be exported to: those of `export/` and those that are drawn. */
import type { Engraver } from '../engraving/engraver';
import { type EditionFormat, type ExportFormat, type FormatNames, formats } from '../export/formats';
import { exportSvg } from './svg';
import { exportTeachingSheet } from './teachingSheet';

/** A format whose pages somebody has to draw. */
export interface DrawnFormat extends FormatNames {
  /** The same for whoever knows nothing of drawing. */
  drawnBy(engraver: Engraver): ExportFormat | EditionFormat;
}

const svg: FormatNames = {
  name: 'svg',
  title: 'engraved pages (SVG 1.1), a file a page',
  extension: 'svg',
  isText: true,
};

const html: FormatNames = {
  name: 'html',
  title: 'a teaching sheet to read, hear and print: all readings with their reasons (HTML)',
  extension: 'html',
  isText: true,
};

const drawn: readonly DrawnFormat[] = [
  { ...svg, drawnBy: (engraver) => ({ ...svg, write: (score, options) => exportSvg(score, options, engraver) }) },
  {
    ...html,
    drawnBy: (engraver) => ({
      ...html,
      writeEdition: (edition, options) => exportTeachingSheet(edition, options, engraver),
    }),
  },
];

export const everyFormat: readonly (ExportFormat | DrawnFormat)[] = [...formats, ...drawn];

export const isDrawn = (format: ExportFormat | DrawnFormat): format is DrawnFormat => 'drawnBy' in format;
