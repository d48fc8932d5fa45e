/** What stands beside the staves of a measure: ties, curves, signs, words, annotations. */
import type { Score } from '../../score/score';
import type { Measure } from '../measures';
import { tieLinks } from '../tieLinks';
import type { Written } from '../written';
import { type XmlElement, xml } from '../xml';
import type { Names } from './names';

export function besideMeasures(_: Score, written: Written, names: Names): ReadonlyMap<Measure, readonly XmlElement[]> {
  const found = new Map<Measure, XmlElement[]>(written.measures.map((measure) => [measure, []]));
  for (const chunks of written.byVoice.values()) {
    for (const { from, to } of tieLinks(chunks)) {
      if (to === undefined) continue;
      found
        .get(from.chunk.measure)
        ?.push(xml('tie', { startid: `#${names.ofHead(from)}`, endid: `#${names.ofHead(to)}` }));
    }
  }
  return found;
}
