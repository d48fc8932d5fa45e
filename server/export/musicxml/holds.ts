/** Whether a mark typed for some readings only holds in a choice. */
import type { Readings } from '../../../grammar/tree';
import type { Choice } from '../../score/choice';

export function holdsIn(readings: Readings | undefined, choice: Choice): boolean {
  if (readings === undefined) return true;
  const named = readings.names.some((name) => name === choice.name || choice.labels.includes(name));
  return named !== readings.not;
}
