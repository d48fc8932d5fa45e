/** Builds the score of one system from its lanes, the declarations and the carry. */
import { firstOf } from '../../grammar/statements/read';
import { type Time, ZERO } from '../../grammar/time';
import type { Clause } from '../../grammar/tree';
import type { Laid, VoiceBars } from './bars';
import { setBeams } from './beams';
import { marksInOrder } from './curveMarks';
import { matchCurves } from './curves';
import type { LaneEvent } from './event';
import { layLoose } from './loose';
import { layMeasured } from './measured';
import { withGaps, withoutOmitted } from './omissions';
import { soundingPitch } from './pitch';
import { type DrawnBarline, isSpecial, type SystemBar, type SystemScore } from './score';
import { carryOut } from './system/carryOut';
import { SystemChanges } from './system/changes';
import { LanesOfSystem, type VoiceLanes } from './system/lanes';
import { barlinesOf, eventsIn, inCommonBar, openingOf } from './system/placing';
import { SystemProblems } from './system/problems';
import { attachSubLanes } from './system/subLanes';
import type { SystemTask } from './system/task';
import { chosenBars } from './system/witnesses';

interface PlacedVoice {
  readonly voice: number;
  readonly events: readonly LaneEvent[];
}

const nothing: readonly never[] = [];

class SystemBuilder {
  private readonly kind: SystemScore['kind'];
  private readonly problems = new SystemProblems();
  private readonly changes: SystemChanges;
  private readonly lanes: LanesOfSystem;

  constructor(private readonly task: SystemTask) {
    const word = firstOf(this.head?.args ?? [], 'word')?.text;
    this.kind = word === 'loose' || word === 'free' ? word : 'measured';
    this.changes = new SystemChanges(task, this.problems);
    this.lanes = new LanesOfSystem(task, this.kind, this.problems);
  }

  private get head(): { readonly args: Clause['args']; readonly clauses: readonly Clause[] } | undefined {
    return this.task.block.statements[0]?.tree.statement;
  }

  build(): SystemScore {
    const { task, kind, changes, problems } = this;
    changes.readHead(this.head?.clauses ?? []);
    const lanes = this.lanes.readAll();
    const chosen: VoiceBars[] = [];
    for (const one of lanes) chosen.push(chosenBars(one, task));
    const sungOn = attachSubLanes(task, this.lanes, lanes, chosen, problems);
    // In a loose system the bars of the lanes are not the same.
    const typed = kind === 'loose' ? chosen : withoutOmitted(chosen, task.carry.open !== undefined);
    this.checkFree(lanes);
    const laid = this.lay(typed);
    const voices: VoiceBars[] = [];
    for (const [v, voice] of typed.entries()) voices.push(withGaps(voice, laid.voices[v]?.starts ?? []));
    changes.readLanes(voices, laid);
    const placed: PlacedVoice[] = [];
    for (const [v, voice] of voices.entries()) placed.push({ voice: voice.voice, events: eventsIn(voice, laid, v) });
    this.beam(placed, laid);
    const opening = openingOf(chosen);
    const pitch = this.pitch(placed, voices, laid, opening);
    const curves = this.curves(placed, voices, chosen);
    this.counselClefs(placed);
    const carried = carryOut(task, { laid, changes, pitch, openCurves: curves.open, sungOn }, problems);
    const { found } = problems;
    return {
      kind,
      bars: laid.bars.map((bar, index) => this.systemBar(bar, index, index === 0 ? opening : undefined)),
      duration: laid.duration,
      voices: placed.map(({ voice, events }, v) => ({ voice, lane: lanes[v]?.lane ?? 0, events })),
      curves: kept(curves.curves),
      changes: kept(changes.inOrder()),
      sections: kept(changes.sections),
      carryOut: carried,
      problems: kept(kind === 'loose' ? found.map((one) => inCommonBar(one, voices, laid)) : found),
    };
  }

  private checkFree(lanes: readonly VoiceLanes[]): void {
    if (this.kind !== 'free') return;
    for (const one of lanes.slice(1)) {
      const placed = this.task.block.lanes[one.lane];
      if (placed !== undefined) this.problems.atName(placed, 'free-one-lane', { voice: one.name });
    }
  }

  /** The bars of the lanes laid beside one another in time. */
  private lay(typed: readonly VoiceBars[]): Laid {
    const { kind, changes, problems } = this;
    const elapsed = this.task.carry.open?.elapsed ?? ZERO;
    if (kind === 'loose') return layLoose(typed, elapsed, changes.meter, problems.inLane);
    return layMeasured(typed, elapsed, kind === 'free' ? [] : changes.metersByBar(typed), problems.inLane);
  }

  private beam(voices: readonly PlacedVoice[], laid: Laid): void {
    let next = 0;
    for (const { events } of voices) next = setBeams(events, laid.bars, this.task.environment.beaming, next);
  }

  private pitch(
    placed: readonly PlacedVoice[],
    voices: readonly VoiceBars[],
    laid: Laid,
    opening: DrawnBarline | undefined,
  ): ReturnType<typeof soundingPitch> {
    const { environment, choice, carry } = this.task;
    const special = (bar: number): boolean => isSpecial(bar === 0 ? opening : laid.bars[bar - 1]?.closing);
    return soundingPitch({
      practice: choice.accidentals,
      voices:
        this.kind === 'loose' ? placed.map((one, v) => ({ ...one, barlines: barlinesOf(voices[v], laid, v) })) : placed,
      carried: carry.voices,
      open: carry.open,
      keyAt: (stave: number, onset: Time) => this.changes.keyAt(stave, onset),
      barOf: (bar) => ({ afterSpecial: special(bar), ending: this.changes.endings.get(bar) }),
      staves: environment.staves.length,
      report: this.problems.at,
    });
  }

  private curves(
    placed: readonly PlacedVoice[],
    voices: readonly VoiceBars[],
    chosen: readonly VoiceBars[],
  ): ReturnType<typeof matchCurves> {
    const marks = marksInOrder(
      placed.map(({ voice, events }, v) => ({
        voice,
        events,
        bars: voices[v]?.bars ?? nothing,
        opening: chosen[v]?.opening,
      })),
      this.changes.endings,
    );
    const open = new Map(this.task.carry.voices.map((one, voice) => [voice, one.curves]));
    return matchCurves(marks, open, this.problems.at);
  }

  private counselClefs(voices: readonly PlacedVoice[]): void {
    const missing = new Set<number>();
    for (const { events } of voices) {
      for (const event of events) {
        if (event.kind === 'note' && (this.changes.clefs[event.stave]?.length ?? 0) === 0) missing.add(event.stave);
      }
    }
    for (const stave of missing) {
      this.problems.atHead('clef-missing', { stave: this.task.environment.staves[stave]?.name ?? '' });
    }
  }

  private systemBar(bar: Laid['bars'][number], index: number, opening: DrawnBarline | undefined): SystemBar {
    return {
      onset: bar.onset,
      duration: bar.duration,
      continues: index === 0 && this.task.carry.open !== undefined,
      closing: bar.closing,
      opening,
      meter: bar.meter,
      ending: this.changes.endings.get(index),
      irregular: this.changes.irregular.has(index),
      inner: bar.inner,
      broken: bar.broken,
      sums: bar.sums,
    };
  }
}

/** A list that stays for long, without room to grow. */
const kept = <T>(list: readonly T[]): readonly T[] => (list.length === 0 ? nothing : list.slice());

/** The score of one system; it depends on nothing but what the task holds. */
export const buildSystem = (task: SystemTask): SystemScore => new SystemBuilder(task).build();
