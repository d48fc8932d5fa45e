/** The time that items take as they are written, bar by bar, without events made of them. */
import { andOne } from '../../../grammar/lists';
import { add, multiply, SEMIBREVE, type Time, ZERO } from '../../../grammar/time';
import type { Item, ValueForm } from '../../../grammar/tree';
import { scaleOf } from './proportions';

/** The time of each bar; undefined where it cannot be known. */
export type BarTimes = readonly (Time | undefined)[];

const noTimes: BarTimes = [];

/** Sums up the time that items take, bar by bar. */
class TimesOfItems {
  private bars = noTimes;
  private current: Time | undefined = ZERO;
  /** A doubtful value does not stick: it holds for one event. */
  private once: ValueForm | undefined;

  constructor(private value: ValueForm | undefined) {}

  items(items: readonly Item[], scale: Time): void {
    for (const item of items) this.item(item, scale);
  }

  private item(item: Item, scale: Time): void {
    switch (item.kind) {
      case 'value':
        this.once = item.form;
        if (!item.form.doubtful) this.value = item.form;
        break;
      case 'barline':
        this.endBar();
        break;
      case 'event': {
        const { what } = item.written;
        this.pass(what === 'barRest' || what === 'barGap' ? undefined : (this.once ?? this.value)?.duration, scale);
        break;
      }
      case 'lost':
        this.pass(item.form?.duration, scale);
        break;
      case 'span': {
        const { word, proportion } = item.head;
        if (word === 'small') break;
        this.items(item.items, multiply(scale, scaleOf(proportion) ?? SEMIBREVE));
        break;
      }
      case 'options': {
        const inner = item.options.find((option) => !option.omit);
        if (inner !== undefined) this.items(inner.items, scale);
        this.value = undefined;
        this.once = undefined;
        break;
      }
      case 'junk':
        this.current = undefined;
        break;
    }
  }

  private endBar(): void {
    this.bars = this.result();
    this.current = ZERO;
  }

  result(): BarTimes {
    return andOne(this.bars, this.current);
  }

  private pass(own: Time | undefined, scale: Time): void {
    this.once = undefined;
    if (this.current === undefined || own === undefined) this.current = undefined;
    else this.current = add(this.current, scale === SEMIBREVE ? own : multiply(own, scale));
  }
}

/** @param before the value in force before them, if one is */
export function timesOf(items: readonly Item[], before?: ValueForm): BarTimes {
  const times = new TimesOfItems(before);
  times.items(items, SEMIBREVE);
  return times.result();
}
