/** Options side by side in a lane: they take equal time and have equal barlines; what one omits, the others have. */
import { andOne } from '../../../grammar/lists';
import { equal, isZero, multiply, type Time, ZERO } from '../../../grammar/time';
import type { Label, Option, OptionsItem, Span, ValueForm } from '../../../grammar/tree';
import { labelText } from '../choice';
import type { Omission } from '../rawBars';
import type { LaneBars } from './laneBars';
import { type BarTimes, timesOf } from './times';

/**
 * Reports labels that stand twice and options that are not equal, `omit` apart.
 * @param before the value in force before them, if one is
 * @param timed whether time is measured: in free music one source may have more notes than another
 */
export function compareOptions(
  options: readonly Option[],
  before: ValueForm | undefined,
  bars: LaneBars,
  timed: boolean,
): void {
  findLabelsTwice(options, bars);
  let first: BarTimes | undefined;
  for (const option of options) {
    if (option.omit) continue;
    const times = timesOf(option.items, before);
    if (first === undefined) first = times;
    else if (timed || times.length !== first.length) compareTimes(option, times, first, bars);
  }
}

function compareTimes(option: Option, times: BarTimes, first: BarTimes, bars: LaneBars): void {
  const isOther = (time: Time | undefined, index: number): boolean => {
    const wanted = first[index];
    return time !== undefined && wanted !== undefined && !equal(time, wanted);
  };
  const unequal = times.length === first.length && times.some(isOther);
  if (unequal) bars.current.broken = true;
  else if (times.length === first.length) return;
  const label = option.labels.map(labelText).join(',');
  bars.report(unequal ? 'options-unequal' : 'options-barlines', option, { label });
}

function findLabelsTwice(options: readonly Option[], bars: LaneBars): void {
  const seen = new Set<string>();
  for (const { labels } of options) {
    for (const label of labels) {
      const text = labelText(label);
      if (seen.has(text)) bars.report('label-twice', label, { label: text });
      else seen.add(text);
    }
  }
}

/**
 * Keeps the time and barlines in mind that the others have where the option that is taken omits: whether they count is
 * known beside the other lanes.
 * @param scale by how much what is around changes time
 */
export function omit(
  item: OptionsItem,
  before: ValueForm | undefined,
  bars: LaneBars,
  { scale, ...place }: Pick<Omission, 'address' | 'source' | 'stave'> & { readonly scale: Time },
): void {
  const other = item.options.find((one) => !one.omit);
  const times = other === undefined ? [ZERO] : timesOf(other.items, before);
  times.forEach((one, index) => {
    if (index > 0) omitBarline(item, bars);
    // Nothing of the others stands after their last barline.
    if (index > 0 && one !== undefined && isZero(one)) {
      bars.current.empty = true;
      return;
    }
    bars.current.omissions = andOne(bars.current.omissions, {
      offset: bars.offset,
      event: bars.current.events.length,
      time: one === undefined ? undefined : multiply(one, scale),
      ...place,
    });
  });
}

function omitBarline({ pos, len }: Span, bars: LaneBars): void {
  bars.current.closingOmitted = true;
  bars.end(undefined);
  bars.current.at = { pos, len };
  bars.current.empty = false;
}

const noLabels: readonly string[] = [];
const isDoubtful = ({ doubtful }: Label): boolean => doubtful;

/** The labels of an option of which the editor doubts that they have it. */
export const doubtfulAmong = (labels: readonly Label[]): readonly string[] =>
  labels.some(isDoubtful) ? labels.filter(isDoubtful).map(labelText) : noLabels;
