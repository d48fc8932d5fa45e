/** What the exported format cannot say, gathered so that each kind is told once a voice and names its bars. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Slots } from '../../grammar/findings/finding';
import { barsNamed } from '../score/barsInWords';
import type { Bar, PlacedProblem, ScoreSystem, Source } from '../score/score';

/** Where something stands: its stretch of a lane, the system and the bar. */
export interface Where {
  readonly source: Source | undefined;
  readonly system: ScoreSystem | undefined;
  readonly bar: Bar | undefined;
}

/** Of what concerns the whole score. */
export const NOWHERE: Where = { source: undefined, system: undefined, bar: undefined };

interface Loss {
  readonly code: FindingCode;
  readonly slots: Slots;
  readonly where: Where;
  readonly bars: Set<string>;
  count: number;
}

/** So many bars are named; the others are counted. */
const NAMED = 8;

/** "bar 3", or "bars 3, 7 and 5 more". */
function barList(bars: ReadonlySet<string>): string {
  const named = barsNamed([...bars].slice(0, NAMED));
  return bars.size > NAMED ? `${named} and ${bars.size - NAMED} more` : named;
}

export class Losses {
  private readonly found = new Map<string, Loss>();

  /** Remembers one. Those of one code with equal slots are told together, at the place of the first. */
  add(code: FindingCode, slots: Slots, where: Where): void {
    const key = `${code} ${JSON.stringify(slots)}`;
    let loss = this.found.get(key);
    if (loss === undefined) {
      loss = { code, slots, where, bars: new Set(), count: 0 };
      this.found.set(key, loss);
    }
    loss.count += 1;
    if (where.bar !== undefined) loss.bars.add(where.bar.number);
  }

  /** In the order of the text; the slots `count` and `bars` are added to each. */
  problems(): readonly PlacedProblem[] {
    return [...this.found.values()].map(placed).sort(byPlace);
  }
}

function placed({ code, slots, where, bars, count }: Loss): PlacedProblem {
  const { source, system } = where;
  const inLane = source !== undefined && source.lane >= 0;
  return {
    problem: { code, slots: { ...slots, count, bars: barList(bars) }, pos: source?.pos ?? 0, len: source?.len ?? 0 },
    block: system?.block ?? 0,
    lane: inLane ? source.lane : undefined,
    ...(source?.statement === undefined ? {} : { statement: source.statement }),
  };
}

/** Where a bar begins in the text: its first event in its system. */
export function whereBar(system: ScoreSystem, bar: Bar): Where {
  const index = bar.index - system.firstBar;
  for (const voice of system.score.voices) {
    const event = voice.events.find((one) => one.bar === index);
    if (event !== undefined) return { source: event.source, system, bar };
  }
  return { source: undefined, system, bar };
}

const byPlace = (a: PlacedProblem, b: PlacedProblem): number =>
  a.block - b.block || (a.lane ?? -1) - (b.lane ?? -1) || a.problem.pos - b.problem.pos;
