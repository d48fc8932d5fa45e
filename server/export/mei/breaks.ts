/** Where systems and pages of the source begin. */
import { clefsText } from '../../../grammar/vocabulary/clefs';
import type { Environment } from '../../score/environment';
import { keyText } from '../../score/pitchNames';
import type { ScoreSystem, StateChange } from '../../score/score';
import { type XmlElement, xml } from '../xml';
import type { Pictures } from './facsimile';
import { systemId, wordOf } from './ids';

/** The beginning of a system; its label tells what the source draws again there. */
export function systemBreak(system: ScoreSystem, environment: Environment, pictures: Pictures): XmlElement {
  const again = system.score.changes
    .filter(({ restated }) => restated)
    .map((change) => restatement(change, environment));
  return xml('sb', {
    'xml:id': systemId(system),
    n: system.ordinal,
    facs: pictures.ofSystem(system),
    label: again.length === 0 ? undefined : again.join(' '),
  });
}

/** As the head of a system has it: `upper C1`, `key lower bb`, `meter C`. */
function restatement({ stave, clefs, key, meter }: StateChange, { staves }: Environment): string {
  const name = stave === undefined ? [] : [staves[stave]?.name ?? ''];
  if (clefs !== undefined) return [...name, clefsText(clefs)].join(' ');
  if (key !== undefined) return ['key', ...name, key.length === 0 ? 'none' : keyText(key)].join(' ');
  return `meter ${meter?.sign ?? ''}`;
}

/** The beginning of a page. */
export const pageBreak = ({ page }: ScoreSystem, pictures: Pictures): XmlElement =>
  xml('pb', { ...wordOf(page), facs: pictures.ofPage(page) });
