/** Clefs, signatures and metres drawn within a line that are in force already. */
import { equal, format, isZero, ZERO } from '../../grammar/time';
import { clefsText } from '../../grammar/vocabulary/clefs';
import { keyText } from '../score/pitchNames';
import type { StateChange, SystemScore } from '../score/score';
import { type Facts, type Look, problemIn, type Told } from './systems';

/** What is told of a change that changes nothing. */
function toldOf({ clefs, key, meter, stave }: StateChange, facts: Facts): Pick<Told, 'code' | 'slots'> | undefined {
  if (clefs !== undefined)
    return { code: 'clef-restated', slots: { clef: clefsText(clefs), stave: facts.staves[stave ?? -1]?.name ?? '' } };
  if (key !== undefined) return { code: 'key-restated', slots: { key: keyText(key) || 'none' } };
  if (meter !== undefined) return { code: 'meter-restated', slots: { meter: meter.sign } };
  return undefined;
}

/** Where sources draw signature and metre again: where a line or a section begins, and after a double bar. */
function isUsual({ bars, sections }: SystemScore, { onset, bar, clefs }: StateChange): boolean {
  if (clefs !== undefined) return false;
  if (isZero(onset)) return true;
  const closing = bars[bar - 1]?.closing?.shape ?? '|';
  const begins = closing !== '|' || sections.some((section) => section.bar === bar);
  return begins && equal(onset, bars[bar]?.onset ?? ZERO);
}

const isNewClef = ({ clefs, restated }: StateChange): boolean => clefs !== undefined && !restated;

export const restated: Look = ({ score, facts }) => {
  const newClefs = new Set(score.changes.filter(isNewClef).map(({ onset }) => format(onset)));
  // Under another clef the signs of a signature stand on other lines: scribes draw them again (common practice).
  const isMoved = ({ key, onset }: StateChange): boolean => key !== undefined && newClefs.has(format(onset));
  return score.changes.flatMap((change) => {
    const { source, bar } = change;
    if (!change.restated || source === undefined || isUsual(score, change) || isMoved(change)) return [];
    const told = toldOf(change, facts);
    return told === undefined ? [] : [problemIn({ ...told, at: source, bar })];
  });
};
