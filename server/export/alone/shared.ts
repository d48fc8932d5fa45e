/** Changes that concern all lanes and stand in the bar of a main lane hold in the bar of a witness that is put in its place. */
import { compare } from '../../../grammar/time';
import { readLane } from '../../score/lane';
import type { RawBar } from '../../score/rawBars';
import type { Score } from '../../score/score';
import { sharedChanges } from '../../score/system/witnesses';
import { type LaneChange, put } from './stretches';
import type { ResolvedLane, ResolvedVoice, StandingBar } from './voices';

/** Bars of lanes in exact time, read when one is asked for. */
export class SharedChanges {
  private readonly read = new Map<number, readonly RawBar[]>();

  constructor(
    private readonly score: Score,
    private readonly kind: 'measured' | 'loose' | 'free',
  ) {}

  /** What is typed in the witness's bar, at the moments when it stands in the other. */
  in(voice: ResolvedVoice, { taken }: StandingBar, index: number): LaneChange[] {
    const witness = voice.witnesses.find((one) => one.index === taken.lane);
    const [bar, other] = [this.barsOf(voice.main, voice)[index], witness && this.barsOf(witness, voice)[index]];
    if (bar === undefined || other === undefined) return [];
    const { text } = voice.main.placed.tree;
    return sharedChanges(bar, other).map(({ offset, first, source }) => {
      const next = first ? undefined : other.events.find((event) => compare(event.onset, offset) >= 0);
      const typed = text.slice(source.pos, source.pos + source.len);
      if (first) return put(taken.from, ` ${typed}`);
      return next === undefined ? put(taken.to, ` ${typed} `) : put(next.typed?.pos ?? next.source.pos, `${typed} `);
    });
  }

  private barsOf({ index, placed }: ResolvedLane, { voice }: ResolvedVoice): readonly RawBar[] {
    const known = this.read.get(index);
    if (known !== undefined) return known;
    const { environment, choice } = this.score;
    const declared = environment.voices[voice];
    const { bars } = readLane({
      lane: placed,
      index,
      voice,
      name: placed.name.text,
      stave: declared?.stave ?? 0,
      stems: declared?.stems,
      kind: this.kind,
      witness: placed.witness !== undefined,
      continues: false,
      environment,
      choice,
      report: () => undefined,
    });
    this.read.set(index, bars);
    return bars;
  }
}
