/** Figures and syllables, which are counted against what stands above them: with the options gone, against what the choice has. */
import type { Block, LaneTree, Placed } from '../../../grammar/tree';
import type { TextChange } from '../../document/edits';
import type { VoiceEvent } from '../../score/score';
import type { TakenBar } from './resolve';
import { drop, endOfBarline, endOfLines, inFile, type LaneChange, put } from './stretches';
import type { BarFate, ResolvedLane, ResolvedVoice, StandingBar } from './voices';

type Kind = 'fig' | 'text';

export interface SubLaneTask {
  readonly block: Block;
  readonly text: string;
  readonly fates: readonly BarFate[];
  eventAt(lane: number, pos: number): VoiceEvent | undefined;
}

/** Nothing drawn. */
const NONE = '_';

/** A sub-lane by its kind and how many of it stand above it: texts below one another are stanzas. */
type Row = readonly [kind: Kind, stanza: number];

/** Changes of a voice's sub-lanes. */
export const subLaneChanges = (voice: ResolvedVoice, bars: readonly StandingBar[], task: SubLaneTask): TextChange[] =>
  rowsOf(voice, task.block).flatMap((row) => new SubLane(row, voice, bars, task).changes());

/** Figures, then every stanza that any of the lanes has. */
function rowsOf({ main, witnesses }: ResolvedVoice, block: Block): readonly Row[] {
  const stanzas = [main, ...witnesses].map((lane) => ofKind('text', lane, block).length);
  return [['fig', 0], ...Array.from({ length: Math.max(...stanzas) }, (_, stanza): Row => ['text', stanza])];
}

const ofKind = (kind: Kind, { subs }: ResolvedLane, { lanes }: Block): Placed<LaneTree>[] =>
  subs.flatMap((index) => lanes[index] ?? []).filter(({ tree }) => tree.kind === kind);

class SubLane {
  private readonly main: Placed<LaneTree> | undefined;

  constructor(
    private readonly row: Row,
    private readonly voice: ResolvedVoice,
    private readonly bars: readonly StandingBar[],
    private readonly task: SubLaneTask,
  ) {
    this.main = this.under(voice.main.index);
  }

  /** The sub-lane that stands under a lane. */
  private under(lane: number): Placed<LaneTree> | undefined {
    const { main, witnesses } = this.voice;
    const [kind, stanza] = this.row;
    const owner = [main, ...witnesses].find(({ index }) => index === lane);
    return owner && ofKind(kind, owner, this.task.block)[stanza];
  }

  changes(): TextChange[] {
    const { text, block } = this.task;
    if (this.main !== undefined) return inFile(text, block, this.main, this.ofMain(this.main.tree));
    return this.bars.some(({ own, taken }) => own !== taken && this.under(taken.lane) !== undefined)
      ? [this.added()]
      : [];
  }

  private ofMain({ segments }: LaneTree): LaneChange[] {
    return this.bars.flatMap(({ own, taken }, index): LaneChange[] => {
      const segment = segments[index];
      const fate = this.task.fates[index];
      if (segment === undefined) return [];
      const { bar } = segment;
      const end = bar?.pos ?? segment.pos + segment.len;
      const closing = bar !== undefined && (fate?.isGone || fate?.isJoined) ? [drop(bar.pos, endOfBarline(bar))] : [];
      if (fate?.isGone) return [drop(segment.pos, end), ...closing];
      if (own === taken && !own.isChosen) return closing;
      const typed = segment.items.map(({ pos, len }) => this.main?.tree.text.slice(pos, pos + len) ?? '');
      const wanted = this.itemsIn(taken);
      const isSame = shortened(typed).join(' ') === shortened(wanted).join(' ') && typed.length <= wanted.length;
      if (isSame) return closing;
      return [drop(segment.pos, end), put(end, ` ${wanted.join(' ')} `), ...closing];
    });
  }

  /** One for each event that can bear one, as typed under the lane from which the bar is taken. */
  private itemsIn({ lane, steps }: TakenBar): string[] {
    const text = this.under(lane)?.tree.text ?? '';
    return steps.flatMap((step) => {
      if (step.kind !== 'event') return [];
      const event = this.task.eventAt(lane, step.item.pos);
      if (event === undefined || event.small !== undefined) return [];
      const isLoneTie = step.item.what === 'repeat' && !step.untied;
      if (!this.isBorne(event, isLoneTie)) return [];
      const [kind, stanza] = this.row;
      const item = kind === 'fig' ? event.figures : event.syllables[stanza];
      return [item === undefined ? NONE : text.slice(item.pos, item.pos + item.len)];
    });
  }

  /** Figures stand at notes and rests, syllables at notes that are not tied to the one before. */
  private isBorne({ kind, members }: VoiceEvent, isLoneTie: boolean): boolean {
    if (this.row[0] === 'fig') return kind === 'note' || kind === 'rest';
    return kind === 'note' && !isLoneTie && !members.every(({ tiedFrom }) => tiedFrom);
  }

  /** A sub-lane that only a witness has, under the main lane. */
  private added(): TextChange {
    const { block, text, fates } = this.task;
    const parts = this.bars.flatMap(({ own, taken, ending }, index) => {
      if (fates[index]?.isGone) return [];
      const items = own === taken ? [] : shortened(this.itemsIn(taken));
      return [...items, ...(ending.closing === undefined || fates[index]?.isJoined ? [] : ['|'])];
    });
    const { main } = this.voice;
    const [kind] = this.row;
    const above = (kind === 'fig' ? undefined : block.lanes[main.subs.at(-1) ?? -1]) ?? main.placed;
    return { offset: endOfLines(text, block, above), length: 0, text: `\n    ${kind} | ${parts.join(' ')}` };
  }
}

/** What draws nothing need not be typed at the end of a bar. */
function shortened(items: readonly string[]): readonly string[] {
  const last = items.findLastIndex((item) => item !== NONE);
  return items.slice(0, last + 1);
}
