/** Where systems and pages of the source begin. */
import type { ScoreSystem } from '../../score/score';
import { type XmlElement, xml } from '../xml';
import type { Pictures } from './facsimile';
import { systemId, wordOf } from './ids';

/** The beginning of a system. */
export const systemBreak = (system: ScoreSystem, pictures: Pictures): XmlElement =>
  xml('sb', { 'xml:id': systemId(system), n: system.ordinal, facs: pictures.ofSystem(system) });

/** The beginning of a page. */
export const pageBreak = ({ page }: ScoreSystem, pictures: Pictures): XmlElement =>
  xml('pb', { ...wordOf(page), facs: pictures.ofPage(page) });
