/** A system with the lanes of a choice alone. */
import { valueText } from '../../../grammar/lanes/forms';
import type { Block, PlacedLane } from '../../../grammar/tree';
import type { TextChange } from '../../document/edits';
import type { Score, ScoreSystem, VoiceEvent } from '../../score/score';
import { decompose } from '../values';
import { EventsByPlace } from './events';
import { mainLaneChanges, openingChanges } from './mainLanes';
import type { Step } from './resolve';
import { SharedChanges } from './shared';
import { cleared, inFile, type LaneChange, linesOf } from './stretches';
import { subLaneChanges } from './subLanes';
import { Typing } from './typing';
import {
  type BarFate,
  fatesOf,
  looseFatesOf,
  type ResolvedVoice,
  type StandingBar,
  standingBars,
  voicesOf,
} from './voices';

/** Changes of the file's text that leave in a system what the choice of a score has there. */
export function systemChanges(score: Score, system: ScoreSystem): TextChange[] {
  const block = score.tree.blocks[system.block];
  if (block === undefined) return [];
  const voices = voicesOf(block, score.environment, score.choice);
  const bars = voices.map((voice) => standingBars(voice, score.choice));
  const common = fatesOf(bars, system.score.bars[0]?.continues === true);
  return [
    ...voices.flatMap((voice, index) => {
      const own = bars[index] ?? [];
      // In a loose system the bars of the lanes are not the same.
      const fates = system.score.kind === 'loose' ? looseFatesOf(own) : common;
      return new VoiceTask(score, system, block, fates).changes(voice, own);
    }),
    ...cleared(
      score.tree.text,
      witnessLanes(block).flatMap((lane) => linesOf(block, lane, lane.name.pos)),
    ),
  ];
}

class VoiceTask {
  private readonly events: EventsByPlace;
  private readonly shared: SharedChanges;

  constructor(
    private readonly score: Score,
    private readonly system: ScoreSystem,
    private readonly block: Block,
    private readonly fates: readonly BarFate[],
  ) {
    this.events = new EventsByPlace(system);
    this.shared = new SharedChanges(score, system.score.kind);
  }

  changes(voice: ResolvedVoice, bars: readonly StandingBar[]): TextChange[] {
    const { block, fates } = this;
    const { text } = this.score.tree;
    const { choice } = this.score;
    const typed = this.typed(voice, bars);
    const changes = mainLaneChanges(voice, bars, {
      choice,
      fates,
      typedIn: (bar) => typed.get(bar) ?? [],
      sharedIn: (standing, index) => this.shared.in(voice, standing, index),
    });
    const eventAt = (lane: number, pos: number): VoiceEvent | undefined => this.events.at(lane, pos);
    return [
      ...openingChanges(voice, block, text, choice),
      ...inFile(text, block, voice.main.placed, changes),
      ...subLaneChanges(voice, bars, { block, text, fates, eventAt }),
    ];
  }

  /** By bar: value, octave, stave and stems where they are no longer as the bar relies on. */
  private typed({ voice }: ResolvedVoice, bars: readonly StandingBar[]): ReadonlyMap<object, readonly LaneChange[]> {
    const declared = this.score.environment.voices[voice];
    const gaps = this.gaps(bars);
    const typing = new Typing({
      home: declared?.stave ?? 0,
      stems: declared?.stems,
      isFree: this.system.score.kind === 'free',
      eventAt: (lane, pos) => this.events.at(lane, pos),
      gapsAt: (step) => gaps.get(step) ?? [],
    });
    return new Map(bars.map(({ taken }, index) => [taken, this.fates[index]?.isGone ? [] : typing.bar(taken)]));
  }

  /** The values of the empty time that stands for what is omitted while other lanes go on, by where it is omitted. */
  private gaps(bars: readonly StandingBar[]): ReadonlyMap<Step, readonly string[]> {
    const values = new Map<Step, readonly string[]>();
    const left = new Map<string, VoiceEvent[]>();
    bars.forEach(({ taken }, index) => {
      if (this.fates[index]?.isGone) return;
      const steps = taken.steps.filter((step) => step.kind === 'omit');
      for (const step of steps) {
        const key = `${taken.lane} ${step.item.pos}`;
        const all = left.get(key) ?? [...this.events.all(taken.lane, step.item.pos)].filter(isGap);
        left.set(key, all.slice(1));
        const [gap] = all;
        if (gap !== undefined) values.set(step, (decompose(gap.duration) ?? []).map(valueText));
      }
    });
    return values;
  }
}

const isGap = ({ kind, wholeBar }: VoiceEvent): boolean => kind === 'gap' && !wholeBar;

/** Lanes of witnesses, with what stands under each. */
function witnessLanes({ lanes }: Block): PlacedLane[] {
  let isWitness = false;
  return lanes.filter(({ tree, witness }) => {
    if (tree.kind === 'lane') isWitness = witness !== undefined;
    return isWitness;
  });
}
