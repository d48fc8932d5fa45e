/** Where systems and pages of the source begin. */
import type { ScoreSystem } from '../../score/score';
import { type XmlElement, xml } from '../xml';
import { systemId } from './ids';

/** The beginning of a system. */
export const systemBreak = (system: ScoreSystem): XmlElement =>
  xml('sb', { 'xml:id': systemId(system), n: system.ordinal });

/** The beginning of a page. */
export const pageBreak = ({ page }: ScoreSystem): XmlElement => xml('pb', { n: page });
