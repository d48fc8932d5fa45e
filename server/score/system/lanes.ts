/** The lanes of a system read one by one, each voice's with what witnesses have there and what stands below it. */
import { replacing } from '../../../grammar/findings/fixes';
import { keeping } from '../../../grammar/keeping';
import { nameInstead, namesListed, nearest } from '../../../grammar/nearest';
import type { PlacedLane } from '../../../grammar/tree';
import { howMany } from '../amounts';
import { type Choice, written } from '../choice';
import { readLane } from '../lane';
import type { Report } from '../lane/task';
import type { RawBar, ReadLane } from '../rawBars';
import type { DrawnBarline, SystemScore } from '../score';
import { sourceNames, voicesByName } from './names';
import type { SystemProblems } from './problems';
import type { SystemTask } from './task';

/** A lane of figures or of text, which stands below another. */
export interface SubLane {
  readonly kind: 'fig' | 'text';
  /** How many of its kind stand above it under the same lane: texts below one another are stanzas. */
  readonly stanza: number;
  readonly lane: number;
  readonly placed: PlacedLane;
  /** The witness lane under which it stands. */
  readonly witness: string | undefined;
}

/** A voice's lanes in this system: its own, and what witnesses have there. */
export interface VoiceLanes {
  readonly voice: number;
  readonly name: string;
  readonly lane: number;
  readonly bars: readonly RawBar[];
  readonly opening: DrawnBarline | undefined;
  readonly witnesses: {
    readonly name: string;
    readonly lane: number;
    readonly bars: readonly RawBar[];
    readonly opening: DrawnBarline | undefined;
  }[];
  /** Its figures and texts, and those of its witnesses. */
  readonly subs: SubLane[];
}

const FIRST = written('note');

const namesOfLanes = keeping(
  ({ lanes }: SystemTask['block']): ReadonlySet<string> => new Set(lanes.map(({ name }) => name.text)),
);

/** What sub-lanes may be called elsewhere. */
const subLaneNames: ReadonlyMap<string, SubLane['kind']> = new Map([
  ...['fig', 'figs', 'figure', 'figures', 'continuo'].map((name) => [name, 'fig'] as const),
  ...['text', 'texts', 'lyrics', 'words', 'syllables'].map((name) => [name, 'text'] as const),
]);

/** Whether a lane may read otherwise under another choice: it has options, or something limited to readings. */
const mayDiffer = ({ tree }: PlacedLane): boolean => /<|[^|]:[^|]/.test(tree.text);

export class LanesOfSystem {
  constructor(
    private readonly task: SystemTask,
    private readonly kind: SystemScore['kind'],
    private readonly problems: SystemProblems,
  ) {}

  readAll(): VoiceLanes[] {
    const { block, environment } = this.task;
    const found: VoiceLanes[] = [];
    const byVoice = new Map<number, VoiceLanes>();
    let current: VoiceLanes | undefined;
    let witness: string | undefined;
    /** The lane above is told, and what stands below it with it. */
    let isTold = false;
    for (const [index, placed] of block.lanes.entries()) {
      if (placed.tree.kind !== 'lane') {
        if (current !== undefined) this.subLane(placed, placed.tree.kind, index, witness, current);
        else if (!isTold) this.problems.atName(placed, 'sub-lane-alone', { name: placed.name.text });
        continue;
      }
      isTold = false;
      const voice = voicesByName(environment).get(placed.name.text);
      if (voice === undefined) {
        this.unknownVoice(placed);
        current = undefined;
        isTold = true;
        continue;
      }
      const above = byVoice.get(voice);
      witness = placed.witness?.text;
      if (witness !== undefined) {
        current = above;
        this.witnessLane(placed, index, voice, above);
      } else if (above !== undefined) {
        current = undefined;
        isTold = true;
        this.problems.atName(placed, 'lane-twice', { voice: placed.name.text });
      } else {
        current = this.readOne(placed, index, voice);
        found.push(current);
        byVoice.set(voice, current);
      }
    }
    return found;
  }

  /** A text below another is a further stanza; of figures there is one lane. */
  private subLane(
    placed: PlacedLane,
    kind: SubLane['kind'],
    lane: number,
    witness: string | undefined,
    { name, subs }: VoiceLanes,
  ): void {
    const stanza = subs.filter((one) => one.kind === kind && one.witness === witness).length;
    if (kind === 'fig' && stanza > 0) {
      const voice = witness === undefined ? name : `${name} ${witness}`;
      this.problems.atName(placed, 'figures-twice', { voice });
    } else subs.push({ kind, stanza, lane, placed, witness });
  }

  private readOne(placed: PlacedLane, index: number, voice: number): VoiceLanes {
    const { bars, opening } = this.read(placed, index, voice, this.task.choice, (code, at, slots, more) =>
      this.problems.inLane(index, code, at, slots, more),
    );
    return { voice, name: placed.name.text, lane: index, bars, opening, witnesses: [], subs: [] };
  }

  private read(placed: PlacedLane, index: number, voice: number, choice: Choice, report: Report): ReadLane {
    const { environment, carry } = this.task;
    const declared = environment.voices[voice];
    return readLane({
      lane: placed,
      index,
      voice,
      name: placed.witness === undefined ? placed.name.text : `${placed.name.text}.${placed.witness.text}`,
      stave: declared?.stave ?? 0,
      stems: declared?.stems,
      kind: this.kind,
      witness: placed.witness !== undefined,
      continues: carry.open !== undefined,
      environment,
      choice,
      report,
    });
  }

  private witnessLane(placed: PlacedLane, index: number, voice: number, above: VoiceLanes | undefined): void {
    const { environment } = this.task;
    const name = placed.witness?.text ?? '';
    if (!sourceNames(environment).has(name)) {
      const known = environment.sources.map((one) => one.name);
      const at = { pos: placed.witness?.pos ?? placed.name.pos, len: name.length };
      const slots = { name, known: namesListed(known) };
      this.problems.add({ lane: undefined }, 'unknown-witness', at, slots, { fixes: nameInstead(name, at, known) });
    }
    if (above === undefined)
      this.problems.atName(placed, 'witness-lane-alone', { voice: placed.name.text, witness: name });
    else if (above.witnesses.some((one) => one.name === name)) {
      this.problems.atName(placed, 'lane-twice', { voice: `${placed.name.text} ${name}` });
    } else {
      const { bars, opening } = this.readOne(placed, index, voice);
      above.witnesses.push({ name, lane: index, bars, opening });
      if (bars.length !== above.bars.length) this.otherBarCount(placed, index, bars, above.bars.length);
    }
  }

  /** A witness lane has as many bars as the lane it stands under, or nobody could tell which bar it differs in. */
  private otherBarCount(placed: PlacedLane, lane: number, bars: readonly RawBar[], need: number): void {
    const at = bars.at(Math.min(need, bars.length - 1))?.at ?? { pos: 0, len: 1 };
    const voice = `${placed.name.text} ${placed.witness?.text ?? ''}`;
    this.problems.add(
      { lane },
      'bar-count',
      at,
      { voice, have: howMany(bars.length, 'bar', 'bars'), need },
      { bar: Math.max(0, need - 1) },
    );
  }

  private unknownVoice(placed: PlacedLane): void {
    const { environment, block } = this.task;
    const known = environment.voices.map((one) => one.name);
    const name = placed.name.text;
    const at = { pos: placed.name.pos, len: name.length };
    const slots = { name, voice: name, expected: nearest(name, known) ?? namesListed(known) };
    const kind = subLaneNames.get(name.toLowerCase());
    // A voice that has its lane here is meant only by a witness.
    const left = placed.witness === undefined ? known.filter((one) => !namesOfLanes(block).has(one)) : known;
    const fixes = kind === undefined ? nameInstead(name, at, left) : [replacing(at, kind)];
    this.problems.add({ lane: undefined }, 'unknown-voice', at, slots, { fixes });
  }

  /** The lane as its first options have it. */
  countedAgainst(owner: { readonly lane: number; readonly bars: readonly RawBar[] }, voice: number): readonly RawBar[] {
    const placed = this.task.block.lanes[owner.lane];
    if (placed === undefined || !mayDiffer(placed)) return owner.bars;
    return this.read(placed, owner.lane, voice, FIRST, () => undefined).bars;
  }
}
