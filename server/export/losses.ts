/** What the exported format cannot say, gathered so that each kind is told once a voice and names its bars. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Slots } from '../../grammar/findings/finding';
import { barsOfPieces, type NamedBar } from '../score/barsInWords';
import type { Bar, PlacedProblem, Score, ScoreSystem, Source } from '../score/score';

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
  readonly bars: Map<Bar, ScoreSystem | undefined>;
  count: number;
}

/** So many bars are named; the others are counted. */
const NAMED = 8;

/** "bar 3", "bars 3, 7 of “Gavotte”, bar 2 of “Double” and 5 more". */
function barList(all: readonly NamedBar[]): string {
  return `${barsOfPieces(all.slice(0, NAMED))}${all.length > NAMED ? ` and ${all.length - NAMED} more` : ''}`;
}

export class Losses {
  private readonly found = new Map<string, Loss>();

  /**
   * @param pieces those of the score: where there are several, bars are named with theirs
   * @param wanted the bars that are told of; all as a rule
   */
  constructor(
    private readonly pieces: Score['pieces'] = [],
    private readonly wanted?: ReadonlySet<Bar>,
  ) {}

  /** Remembers one. Those of one code with equal slots are told together, at the place of the first. */
  add(code: FindingCode, slots: Slots, where: Where): void {
    if (where.bar !== undefined && this.wanted?.has(where.bar) === false) return;
    const key = `${code} ${JSON.stringify(slots)}`;
    let loss = this.found.get(key);
    if (loss === undefined) {
      loss = { code, slots, where, bars: new Map(), count: 0 };
      this.found.set(key, loss);
    }
    loss.count += 1;
    if (where.bar !== undefined) loss.bars.set(where.bar, where.system);
  }

  /** In the order of the text; the slots `count` and `bars` are added to each. */
  problems(): readonly PlacedProblem[] {
    return [...this.found.values()].map((loss) => placed(loss, barList(this.inOrder(loss)))).sort(byPlace);
  }

  private inOrder({ bars }: Loss): readonly NamedBar[] {
    const pieceOf = (system: ScoreSystem | undefined): number =>
      this.pieces.findIndex(({ systems }) => systems.some(({ block }) => block === system?.block));
    const all = [...bars].map(([bar, system]) => ({ bar, piece: pieceOf(system) }));
    const ordered = all.sort((a, b) => a.piece - b.piece || a.bar.index - b.bar.index);
    return ordered.map(({ bar, piece }) => ({ piece: this.pieces[piece]?.name ?? '', number: bar.number }));
  }
}

function placed({ code, slots, where, count }: Loss, bars: string): PlacedProblem {
  const { source, system } = where;
  const inLane = source !== undefined && source.lane >= 0;
  return {
    problem: { code, slots: { ...slots, count, bars }, pos: source?.pos ?? 0, len: source?.len ?? 0 },
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
