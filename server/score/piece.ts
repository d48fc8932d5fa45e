/** One movement, its systems strung together: bars joined and numbered, lengths judged, sections found. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import { type Fix, problemOf, type Slots } from '../../grammar/findings/finding';
import { isAlike } from '../../grammar/keeping';
import { nameInstead, namesListed } from '../../grammar/nearest';
import { afterWord, allOf, firstOf } from '../../grammar/statements/read';
import { add, isZero, type Time, ZERO } from '../../grammar/time';
import type { Block, BlockContents, FileTree, Span, Statement } from '../../grammar/tree';
import { BarLengths, type DraftBar, madeOnce, oddIn } from './barLengths';
import { type Carry, startOf } from './carry';
import type { Choice, StatedOrder } from './choice';
import { tempoOfArgs } from './clauses';
import type { Environment } from './environment';
import { halvesApart } from './order';
import type { Curve, Piece, PlacedProblem, ScoreSystem, Section, Source, SystemBar, SystemScore } from './score';
import { curvesOf } from './walk';

/** Gives the score of a system with these contents after this carry: built anew, or kept from another time. */
export type SystemScores = (contents: BlockContents, carry: Carry) => SystemScore;

/** Looks at a system as soon as its score is there, beside the one before it in its piece. */
export interface Onlooker {
  look(contents: BlockContents, score: SystemScore, before: SystemScore | undefined): void;
}

/** Of an order that an included file states, the beginning of this one. */
const placeOf = ({ block, statement, file }: StatedOrder): { readonly block: number; readonly statement?: number } =>
  file === undefined ? { block, statement } : { block: 0 };

/** The first words of statements, as places in them. */
const SECTION: Span = { pos: 0, len: 'section'.length };
const ORDER: Span = { pos: 0, len: 'order'.length };
const SYSTEM: Span = { pos: 0, len: 'system'.length };

const throughToNothing = ({ lane, pos, len }: Source, block: number): PlacedProblem => ({
  problem: { code: 'through-to-nothing', pos, len, slots: {} },
  block,
  lane,
});

/** A system as it is met, before its bars have their places in the piece. */
interface Met extends Pick<ScoreSystem, 'score' | 'block' | 'page' | 'ordinal'> {
  /** The statement before it that begins a section. */
  readonly section:
    | {
        readonly name: string;
        readonly within: string | undefined;
        readonly said: Statement;
        readonly block: number;
        readonly statement: number;
      }
    | undefined;
}

/** Where a section ends: the bar that follows it, and when that begins. */
interface SectionEnd {
  readonly bar: number;
  readonly onset: Time;
}

/** A section where it begins. */
interface FoundSection {
  readonly name: string;
  readonly within: string | undefined;
  readonly bar: number;
  readonly onset: Time;
  readonly at: Pick<PlacedProblem, 'block' | 'lane' | 'statement'>;
}

/** What the bars of a piece were made from. */
const metIn = new WeakMap<Piece, readonly Met[]>();

const haveSameBars = (a: Met, b: Met): boolean =>
  a.section?.said === b.section?.said &&
  (a.score === b.score ||
    (a.score.kind === b.score.kind &&
      isAlike(a.score.duration, b.score.duration) &&
      isAlike(a.score.sections, b.score.sections) &&
      isAlike(a.score.bars, b.score.bars)));

/** Whether the bars of a piece are as they were: most changes leave all barlines where they stand. */
const areAsBefore = (met: readonly Met[], before: readonly Met[]): boolean =>
  met.length === before.length &&
  met.at(-1)?.score.carryOut === before.at(-1)?.score.carryOut &&
  met.every((one, index) => haveSameBars(one, before[index] as Met));

/** The place of a system as before, if possible the very same. */
const systemLike = (before: ScoreSystem, { score, block, page, ordinal }: Met): ScoreSystem =>
  before.score === score && before.block === block && before.page === page && before.ordinal === ordinal
    ? before
    : { score, block, page, ordinal, firstBar: before.firstBar, onset: before.onset };

const leadsNowhere = ({ end, outgoing, waits, form }: Curve): boolean =>
  end === undefined && outgoing === undefined && !waits && !form.openEnded;
const hasCurveToNowhere = ({ score }: ScoreSystem): boolean => score.curves.some(leadsNowhere);

const lacksMeter = ({ score }: ScoreSystem): boolean => oddIn(score).lacksMeter;

/** One movement while its systems are strung together. */
export class PieceBuilder {
  private readonly met: Met[] = [];
  private systems: readonly ScoreSystem[] = [];
  private bars: DraftBar[] = [];
  private readonly found: FoundSection[] = [];
  private carry: Carry;
  private section: Met['section'];
  order:
    | { readonly names: readonly { text: string; pos: number; len: number }[]; block: number; statement: number }
    | undefined;

  constructor(
    /** Undefined before the first `piece`. */
    readonly name: string | undefined,
    private readonly environment: Environment,
    private readonly choice: Choice,
    private readonly systemScore: SystemScores,
    private readonly onlooker: Onlooker | undefined,
    private readonly problems: PlacedProblem[],
    /** The same piece of an earlier version. */
    private readonly before: Piece | undefined,
  ) {
    this.carry = startOf(environment.staves.length, environment.voices.length);
  }

  takeTempo(statement: Statement): void {
    const tempo = tempoOfArgs(statement.args);
    if (tempo === undefined) return;
    this.carry = { ...this.carry, tempo, stated: tempo };
  }

  takeOrder(statement: Statement, block: number, index: number): void {
    if (this.order === undefined) {
      this.order = { names: allOf(statement.args, 'name'), block, statement: index };
      return;
    }
    this.tell('order-twice', { pos: statement.pos, len: 'order'.length }, { block, statement: index });
  }

  beginSection(statement: Statement, block: number, index: number): void {
    const name = firstOf(statement.args, 'name')?.text;
    const within = afterWord(statement.args, 'in');
    if (name === undefined) return;
    this.section = {
      name,
      within: within?.kind === 'name' ? within.text : undefined,
      said: statement,
      block,
      statement: index,
    };
  }

  get hasSystems(): boolean {
    return this.met.length > 0;
  }

  /** @returns whether it and its neighbour stood in the same place before, so that nothing was to be done */
  addSystem(tree: FileTree, block: number, page: string, ordinal: number): boolean {
    const { contents } = tree.blocks[block] as Block;
    const neighbour = this.met.at(-1)?.score;
    const score = this.systemScore(contents, this.carry);
    const stands = this.stoodBefore(score, neighbour);
    if (!stands) this.onlooker?.look(contents, score, neighbour);
    this.met.push({ score, block, page, ordinal, section: this.section });
    this.section = undefined;
    this.carry = score.carryOut;
    return stands;
  }

  /** Whether the next system and its neighbour stood side by side in the same place. */
  private stoodBefore(score: SystemScore, neighbour: SystemScore | undefined): boolean {
    const [systems, index] = [this.before?.systems ?? [], this.met.length];
    return systems[index]?.score === score && systems[index - 1]?.score === neighbour;
  }

  // ─── bars ────────────────────────────────────────────────────────────────────────────────────────────────────────

  /** Gives the systems and their bars their places, the same as before where nothing has moved. */
  private string(): void {
    const { before, met } = this;
    if (before !== undefined && areAsBefore(met, metIn.get(before) ?? [])) {
      this.systems = met.map((one, index) => systemLike(before.systems[index] as ScoreSystem, one));
      this.bars = before.bars as DraftBar[];
      this.findSections();
      return;
    }
    let onset = ZERO;
    const systems: ScoreSystem[] = [];
    for (const { score, block, page, ordinal } of met) {
      const continues = score.bars[0]?.continues === true && this.bars.length > 0;
      const firstBar = continues ? this.bars.length - 1 : this.bars.length;
      const system: ScoreSystem = { score, block, page, ordinal, firstBar, onset };
      for (const [index, bar] of score.bars.entries())
        this.addBar(bar, system, systems.length, continues && index === 0 ? this.bars.at(-1) : undefined);
      systems.push(system);
      onset = add(onset, score.duration);
    }
    this.systems = systems;
    this.findSections();
    this.lengths.number(new Set(this.found.map(({ bar }) => bar)));
  }

  private findSections(): void {
    this.met.forEach(({ score, block, section }, index) => {
      if (section === undefined && score.sections.length === 0) return;
      const { firstBar, onset } = this.systems[index] as ScoreSystem;
      if (section !== undefined) {
        const { name, within, block: saidIn, statement } = section;
        const at = { block: saidIn, statement };
        if (index > 0 && score.bars[0]?.continues === true) this.tell('section-not-at-barline', SECTION, at, { name });
        this.found.push({ name, within, bar: firstBar, onset, at: { ...at, lane: undefined } });
      }
      for (const one of score.sections) {
        const at = { block, lane: undefined, statement: 0 };
        this.found.push({
          name: one.name,
          within: one.within,
          bar: firstBar + one.bar,
          onset: add(onset, one.onset),
          at,
        });
      }
    });
  }

  private get lengths(): BarLengths {
    return new BarLengths(this.bars, this.environment.voices);
  }

  private get duration(): Time {
    const last = this.systems.at(-1);
    return last === undefined ? ZERO : add(last.onset, last.score.duration);
  }

  /** @param before the bar with which it makes one, if that began in the system before */
  private addBar(bar: SystemBar, system: ScoreSystem, index: number, before: DraftBar | undefined): void {
    // This goes over every bar: most have neither.
    const inner =
      bar.inner.length === 0 ? bar.inner : bar.inner.map((one) => ({ ...one, onset: add(system.onset, one.onset) }));
    if (before !== undefined) {
      before.duration = add(before.duration, bar.duration);
      before.closing = bar.closing;
      before.irregular ||= bar.irregular;
      before.broken ||= bar.broken;
      before.inner = [...before.inner, ...inner];
      return;
    }
    const measured = system.score.kind === 'measured';
    this.bars.push({
      index: this.bars.length,
      number: '',
      system: index,
      onset: add(system.onset, bar.onset),
      duration: bar.duration,
      expected: measured ? bar.meter?.length : undefined,
      meter: bar.meter,
      opening: bar.opening,
      closing: bar.closing,
      ending: bar.ending,
      irregular: bar.irregular,
      broken: bar.broken,
      inner,
    });
  }

  /** What stands before the first `piece` with no music of its own is meant for that piece. */
  handOver(next: PieceBuilder): void {
    next.order = this.order;
    next.section = this.section;
  }

  /** A section that begins where no system follows in its piece, or an order where there is none at all. */
  reportIdle(): void {
    const { section, order } = this;
    if (section !== undefined) this.tell('section-without-music', SECTION, section, { name: section.name });
    if (order !== undefined && !this.hasSystems) this.tell('order-without-music', ORDER, order);
  }

  /** Tells of something at its place in a statement. */
  private tell(
    code: FindingCode,
    { pos, len }: Span,
    { block, statement }: { readonly block: number; readonly statement?: number | undefined },
    slots: Slots = {},
    fixes: readonly Fix[] = [],
  ): void {
    this.problems.push({
      problem: problemOf(code, { pos, len }, slots, fixes),
      block,
      lane: undefined,
      ...(statement === undefined ? {} : { statement }),
    });
  }

  finish(): Piece {
    this.string();
    const sections = this.sections();
    const begin = new Set(sections.map((one) => one.firstBar));
    for (const problem of this.lengths.judge(this.systems, begin)) this.problems.push(problem);
    this.reportOfSystems();
    const last = this.bars.at(-1);
    if (last !== undefined && this.carry.voices.some(({ runningOn }) => !isZero(runningOn))) last.broken = true;
    const piece: Piece = {
      name: this.name ?? '',
      systems: this.systems,
      bars: this.bars,
      sections,
      order: this.orderOf(sections),
      duration: this.duration,
    };
    metIn.set(piece, this.met);
    this.reportOpenEnds(piece);
    return piece;
  }

  // ─── sections and order ──────────────────────────────────────────────────────────────────────────────────────────

  private sections(): Section[] {
    const names = new Set(this.found.map(({ name }) => name));
    const ends = this.sectionEnds();
    return this.found.map((one, index) => {
      if (one.within !== undefined && !names.has(one.within)) {
        this.tell('unknown-section', SYSTEM, one.at, { name: one.within, known: this.sectionNames() });
      }
      const until = ends[index] as SectionEnd;
      return {
        name: one.name,
        within: one.within,
        firstBar: one.bar,
        endBar: until.bar,
        onset: one.onset,
        end: until.onset,
      };
    });
  }

  /** Of each section: a part ends with what it is a part of, all others where the next of them begins. */
  private sectionEnds(): readonly SectionEnd[] {
    const last: SectionEnd = { bar: this.bars.length, onset: this.duration };
    const ends: SectionEnd[] = [];
    let next = last;
    for (let index = this.found.length - 1; index >= 0; index--) {
      const one = this.found[index] as FoundSection;
      if (one.within !== undefined) continue;
      ends[index] = next;
      next = one;
    }
    const begun = new Map<string, SectionEnd>();
    this.found.forEach(({ name, within }, index) => {
      const end = ends[index] ?? begun.get(within ?? '') ?? last;
      ends[index] = end;
      begun.set(name, end);
    });
    return ends;
  }

  private sectionNames(): string {
    return namesListed(this.found.map((one) => one.name));
  }

  private orderOf(sections: readonly Section[]): readonly string[] | undefined {
    const own = this.order;
    const known = new Set(sections.map(({ name }) => name));
    const isKnown = (name: string): boolean => known.has(name);
    for (const name of own?.names ?? []) {
      if (own === undefined || isKnown(name.text)) continue;
      const slots = { name: name.text, known: this.sectionNames() };
      this.tell('unknown-section', name, own, slots, nameInstead(name.text, name, known));
    }
    // The order of a reading is that of the pieces which have its sections.
    const { order: stated } = this.choice;
    const ofReading = stated?.names.some(isKnown) === true ? stated : undefined;
    const names = ofReading?.names ?? own?.names.map((one) => one.text);
    const at = ofReading === undefined ? own : placeOf(ofReading);
    if (names === undefined || at === undefined) return names;
    for (const slots of halvesApart(names, sections, this.bars)) this.tell('order-halves', ORDER, at, slots);
    return names;
  }

  // ─── problems ────────────────────────────────────────────────────────────────────────────────────────────────────

  /** Problems of the systems, with their blocks and bar numbers. */
  private reportOfSystems(): void {
    for (const system of this.systems) {
      for (const placed of system.score.problems) {
        const bar = placed.bar === undefined ? undefined : this.barAt(system, placed.bar)?.number;
        const { problem } = placed;
        const make = (): PlacedProblem => ({
          ...placed,
          block: system.block,
          problem: bar === undefined ? problem : { ...problem, slots: { bar, ...problem.slots } },
        });
        this.problems.push(madeOnce(placed, system.block, bar, make));
      }
    }
  }

  /** Whether a curve leads nowhere, at the end of the piece or of an ending. To find out which asks for events. */
  private hasOpenCurves(): boolean {
    return this.carry.voices.some(({ curves }) => curves.length > 0) || this.systems.some(hasCurveToNowhere);
  }

  /** The bar of a system; of a lane that has more bars than the others, the last. */
  private barAt(system: ScoreSystem, bar: number): DraftBar | undefined {
    return this.bars[system.firstBar + bar] ?? this.bars.at(-1);
  }

  private reportOpenEnds(piece: Piece): void {
    for (const curve of this.hasOpenCurves() ? curvesOf(piece) : []) {
      if (curve.end !== undefined || curve.start === undefined || curve.form.openEnded) continue;
      const { source } = curve.start.end;
      this.problems.push({
        problem: { code: 'curve-never-ends', pos: source.pos, len: source.len, slots: { text: curve.form.text } },
        block: curve.start.system.block,
        lane: source.lane,
      });
    }
    const last = this.systems.at(-1);
    if (last === undefined) return;
    const goesOn = this.carry.voices.some(({ ties, runningOn }) => ties.length > 0 || !isZero(runningOn));
    for (const { voice, events } of goesOn ? last.score.voices : []) {
      const event = events.findLast((one) => one.small === undefined);
      if (event !== undefined && !isZero(this.carry.voices[voice]?.runningOn ?? ZERO)) {
        this.problems.push(throughToNothing(event.source, last.block));
      }
      if (event === undefined || this.carry.voices[voice]?.ties.length === 0) continue;
      for (const member of event.members) {
        if (member.tie === undefined) continue;
        this.problems.push({
          problem: {
            code: 'tie-to-nothing',
            pos: member.source.pos,
            len: member.source.len,
            slots: { note: `${member.spelling.letter}${member.octave}` },
          },
          block: last.block,
          lane: member.source.lane,
        });
      }
    }
    const bar = this.bars.at(-1);
    if (bar !== undefined && bar.closing === undefined) {
      this.tell('piece-ends-open', SYSTEM, { block: last.block, statement: 0 });
    }
    const missingMeter = this.systems.find(lacksMeter);
    if (missingMeter !== undefined) {
      this.tell('meter-missing', SYSTEM, { block: missingMeter.block, statement: 0 });
    }
  }
}
