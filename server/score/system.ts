/** Builds the score of one system from its lanes, the declarations and the carry. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Slots } from '../../grammar/findings/finding';
import { keeping } from '../../grammar/keeping';
import { nameInstead, namesListed, nearest } from '../../grammar/nearest';
import { afterWord, allOf, clauseOf, firstOf } from '../../grammar/statements/read';
import { add, compare, equal, isZero, type Time, time, ZERO } from '../../grammar/time';
import type { BlockContents, Clause, Clef, PlacedLane, Span } from '../../grammar/tree';
import { clefsText, clefText } from '../../grammar/vocabulary/clefs';
import { meterOf } from '../../grammar/vocabulary/meters';
import { howMany } from './amounts';
import type { Laid, VoiceBars } from './bars';
import { setBeams } from './beams';
import { type Carry, type OpenBar, type Sung, silentVoice, type VoiceCarry } from './carry';
import { type Choice, preferredWitness, written } from './choice';
import { type From, inForce } from './clock';
import { marksInOrder } from './curveMarks';
import { matchCurves } from './curves';
import type { SystemEnvironment } from './environment';
import type { LaneEvent } from './event';
import { readLane } from './lane';
import type { Report } from './lane/task';
import { layLoose } from './loose';
import { layMeasured } from './measured';
import { withGaps, withoutOmitted } from './omissions';
import { soundingPitch } from './pitch';
import { keyText } from './pitchNames';
import type { RawBar, RawChange, ReadLane } from './rawBars';
import {
  type DrawnBarline,
  isSpecial,
  type KeySign,
  type Meter,
  type PlacedProblem,
  type Source,
  type StateChange,
  type SystemBar,
  type SystemScore,
  type Tempo,
} from './score';
import { attach, figured, isUntied, mayDiffer, type SubLane, sung } from './subLanes';

/** All that a system's score depends on; of the choice only what its options and limits come to in these lanes. */
export interface SystemTask {
  readonly block: BlockContents;
  readonly environment: SystemEnvironment;
  readonly choice: Choice;
  readonly carry: Carry;
}

/** A voice's lanes in this system: its own, and what witnesses have there. */
interface VoiceLanes {
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
}

type ChosenBar = VoiceBars['bars'][number];

interface PlacedVoice {
  readonly voice: number;
  readonly events: readonly LaneEvent[];
}

type Place = Pick<PlacedProblem, 'lane' | 'statement'>;

const sameClefs = (a: readonly Clef[], b: readonly Clef[]): boolean => clefsText(a) === clefsText(b);

class SystemBuilder {
  private readonly problems: PlacedProblem[] = [];
  private readonly changes: StateChange[] = [];
  /** By what they change. */
  private readonly lastChanges = new Map<string, StateChange>();
  /** By stave, when they are asked for: the signatures that come in, in the order of time. */
  private readonly newKeys: (readonly From<readonly KeySign[]>[] | undefined)[] = [];
  private readonly sections: { name: string; within: string | undefined; onset: Time; bar: number }[] = [];
  private readonly kind: SystemScore['kind'];
  private readonly clefs: (readonly Clef[])[];
  private readonly keys: (readonly KeySign[])[];
  private meter: Meter | undefined;
  private tempo: Tempo | undefined;
  private readonly manuals: (string | undefined)[];

  constructor(private readonly task: SystemTask) {
    const { carry, environment } = task;
    const word = firstOf(this.head?.args ?? [], 'word')?.text;
    this.kind = word === 'loose' || word === 'free' ? word : 'measured';
    this.clefs = environment.staves.map((_, stave) => carry.clefs[stave] ?? []);
    this.keys = environment.staves.map((_, stave) => carry.keys[stave] ?? []);
    this.meter = carry.meter;
    this.tempo = carry.tempo;
    this.manuals = environment.voices.map((_, voice) => carry.voices[voice]?.manual);
  }

  private get head(): { readonly args: Clause['args']; readonly clauses: readonly Clause[] } | undefined {
    return this.task.block.statements[0]?.tree.statement;
  }

  build(): SystemScore {
    const { environment, choice, carry } = this.task;
    this.readHead();
    const lanes = this.readLanes();
    const chosen: VoiceBars[] = [];
    for (const one of lanes) chosen.push(this.chosenBars(one));
    const sungOn = this.subLanes(lanes, chosen);
    // In a loose system the bars of the lanes are not the same.
    const typed = this.kind === 'loose' ? chosen : withoutOmitted(chosen, carry.open !== undefined);
    this.checkFree(lanes);
    const elapsed = carry.open?.elapsed ?? ZERO;
    const barMeters = this.metersByBar(typed);
    const report = this.reportInLane;
    const laid: Laid =
      this.kind === 'loose'
        ? layLoose(typed, elapsed, this.meter, report)
        : layMeasured(typed, elapsed, this.kind === 'free' ? [] : barMeters, report);
    const voices: VoiceBars[] = [];
    for (const [v, voice] of typed.entries()) voices.push(withGaps(voice, laid.voices[v]?.starts ?? []));
    const facts = this.changesInLanes(voices, laid);
    const placed: PlacedVoice[] = [];
    for (const [v, voice] of voices.entries()) placed.push({ voice: voice.voice, events: eventsIn(voice, laid, v) });
    this.beam(placed, laid);
    const opening = openingOf(chosen);
    const special = (bar: number): boolean => isSpecial(bar === 0 ? opening : laid.bars[bar - 1]?.closing);
    const pitch = soundingPitch({
      practice: choice.accidentals,
      voices:
        this.kind === 'loose' ? placed.map((one, v) => ({ ...one, barlines: barlinesOf(voices[v], laid, v) })) : placed,
      carried: carry.voices,
      open: carry.open,
      keyAt: (stave, onset) => this.keyAt(stave, onset),
      barOf: (bar) => ({ afterSpecial: special(bar), ending: facts.endings.get(bar) }),
      staves: environment.staves.length,
      report: (code, at, slots) => this.reportAt(code, at, slots),
    });
    const curves = matchCurves(
      marksInOrder(
        placed.map(({ voice, events }, v) => ({
          voice,
          events,
          bars: voices[v]?.bars ?? nothing,
          opening: chosen[v]?.opening,
        })),
        facts.endings,
      ),
      new Map(carry.voices.map((one, voice) => [voice, one.curves])),
      (code, at, slots) => this.reportAt(code, at, slots),
    );
    this.counselClefs(placed);
    return {
      kind: this.kind,
      bars: laid.bars.map((bar, index) => this.systemBar(bar, index, facts, index === 0 ? opening : undefined)),
      duration: laid.duration,
      voices: placed.map(({ voice, events }, v) => ({
        voice,
        lane: lanes[v]?.lane ?? 0,
        events,
      })),
      curves: kept(curves.curves),
      changes: kept([...this.statedBefore(), ...this.changes.sort((a, b) => compare(a.onset, b.onset))]),
      sections: kept(this.sections),
      carryOut: this.carryOut(laid, placed, pitch, curves.open, sungOn),
      problems: kept(
        this.kind === 'loose' ? this.problems.map((one) => inCommonBar(one, voices, laid)) : this.problems,
      ),
    };
  }

  // ─── problems ────────────────────────────────────────────────────────────────────────────────────────────────────

  private add(
    place: Place,
    code: FindingCode,
    at: Span,
    slots: Slots,
    more: Partial<PlacedProblem> & { fixes?: PlacedProblem['problem']['fixes'] } = {},
  ): void {
    const { fixes, ...rest } = more;
    this.problems.push({
      problem: {
        code,
        pos: at.pos,
        len: at.len,
        slots,
        ...(fixes === undefined || fixes.length === 0 ? {} : { fixes }),
      },
      block: 0,
      ...place,
      ...rest,
    });
  }

  private readonly reportInLane = (
    lane: number,
    code: FindingCode,
    at: Span,
    slots: Slots,
    more: { readonly bar?: number; readonly fixes?: PlacedProblem['problem']['fixes'] } = {},
  ): void => this.add({ lane }, code, at, slots, more);

  private reportAt(code: FindingCode, at: Source, slots: Slots): void {
    this.add({ lane: at.lane }, code, at, slots);
  }

  // ─── the head ────────────────────────────────────────────────────────────────────────────────────────────────────

  private readHead(): void {
    // What is in force already holds from the system's start; a head says what is drawn again or changed.
    this.eachOnce(this.head?.clauses ?? [], 'system', undefined, (clause) =>
      this.clause(clause, ZERO, 0, undefined, undefined),
    );
  }

  /** Of two clefs or signatures of a stave, two meters or two tempi in one head or `(now …)` the first counts. */
  private eachOnce(
    clauses: readonly Clause[],
    where: string,
    source: Source | undefined,
    take: (clause: Clause) => void,
  ): void {
    const said = new Set<string>();
    for (const clause of clauses) {
      const stave = firstOf(clause.args, 'name')?.text ?? '';
      const word = clause.name === 'clef' ? stave : `${clause.name} ${stave}`.trim();
      if (!said.has(word)) take(clause);
      else if (REPEATABLE.has(clause.name) && word !== '') {
        const at: Place = source === undefined ? { lane: undefined, statement: 0 } : { lane: source.lane };
        this.add(at, 'repeated-clause', { pos: (source?.pos ?? 0) + clause.pos, len: clause.len }, { word, where });
      }
      said.add(word);
    }
  }

  /** A tempo that a statement before the system states. */
  private statedBefore(): StateChange[] {
    const { stated } = this.task.carry;
    if (stated === undefined) return [];
    return [{ onset: ZERO, bar: 0, stave: undefined, tempo: stated, restated: false, source: undefined }];
  }

  /** Applies a clause of a head or of `(now …)`. */
  private clause(
    clause: Clause,
    onset: Time,
    bar: number,
    stave: number | undefined,
    source: Source | undefined,
  ): void {
    const at: Place = source === undefined ? { lane: undefined, statement: 0 } : { lane: source.lane };
    const place: Span = source === undefined ? clause : { pos: source.pos + clause.pos, len: clause.len };
    const base = { onset, bar, source };
    if (clause.name === 'clef') {
      const on = stave ?? this.staveNamed(clause, at, place);
      const clefs = firstOf(clause.args, 'clef')?.clefs;
      if (on === undefined || clefs === undefined) return;
      const lines = this.task.environment.staves[on]?.lines ?? 5;
      const off = clefs.find((clef) => clef.line > lines);
      if (off !== undefined) {
        this.add(at, 'clef-off-stave', place, {
          clef: clefText(off),
          stave: this.task.environment.staves[on]?.name ?? '',
          lines,
        });
      }
      const restated = sameClefs(this.clefs[on] ?? [], clefs);
      this.clefs[on] = clefs;
      this.pushChange({ ...base, stave: on, clefs, restated }, at, place);
    } else if (clause.name === 'key') {
      const key = allOf(clause.args, 'pitch').flatMap(({ spelling }): KeySign[] =>
        spelling.accidental === undefined
          ? []
          : [{ letter: spelling.letter, accidental: spelling.accidental, octave: spelling.octave }],
      );
      const named = firstOf(clause.args, 'name') === undefined ? undefined : this.staveNamed(clause, at, place);
      if (named === undefined && firstOf(clause.args, 'name') !== undefined) return;
      const restated = this.keys.every(
        (one, s) => (named !== undefined && s !== named) || keyText(one) === keyText(key),
      );
      this.keys.forEach((_, s) => {
        if (named === undefined || s === named) this.keys[s] = key;
      });
      this.pushChange({ ...base, stave: named, key, restated }, at, place);
    } else if (clause.name === 'meter') {
      const meter = meterOfClause(clause);
      if (meter === undefined) return;
      const restated =
        this.meter !== undefined && this.meter.sign === meter.sign && equal(this.meter.length, meter.length);
      this.meter = meter;
      this.pushChange({ ...base, stave: undefined, meter, restated }, at, place);
    } else if (clause.name === 'tempo') {
      const tempo = tempoOfArgs(clause.args);
      if (tempo === undefined) return;
      this.tempo = tempo;
      this.pushChange({ ...base, stave: undefined, tempo, restated: false }, at, place);
    }
  }

  /** The same change in two lanes must agree, and counts once. */
  private pushChange(change: StateChange, at: Place, place: Span): void {
    const of = `${kindOfChange(change)} ${change.stave} ${change.manual?.voice}`;
    // They come in the order of time.
    const same = this.lastChanges.get(of);
    if (same === undefined || !equal(same.onset, change.onset)) {
      this.changes.push(change);
      this.lastChanges.set(of, change);
    } else if (saidBy(same) !== saidBy(change)) {
      this.add(at, 'changes-disagree', place, { here: saidBy(change), there: saidBy(same) });
    }
  }

  private staveNamed(clause: Clause, at: Place, place: Span): number | undefined {
    const name = firstOf(clause.args, 'name');
    if (name === undefined) return undefined;
    const { staves } = this.task.environment;
    const index = stavesByName(this.task.environment).get(name.text);
    if (index !== undefined) return index;
    const known = staves.map((stave) => stave.name);
    const span = { pos: place.pos - clause.pos + name.pos, len: name.len };
    const slots = { name: name.text, stave: name.text, expected: nearest(name.text, known) ?? '' };
    this.add(at, 'unknown-stave', span, slots, { fixes: nameInstead(name.text, span, known) });
    return undefined;
  }

  // ─── lanes ───────────────────────────────────────────────────────────────────────────────────────────────────────

  private readLanes(): WithSubLanes[] {
    const { block, environment } = this.task;
    const found: WithSubLanes[] = [];
    const byVoice = new Map<number, WithSubLanes>();
    let current: (typeof found)[number] | undefined;
    let witness: string | undefined;
    for (const [index, placed] of block.lanes.entries()) {
      if (placed.tree.kind !== 'lane') {
        if (current === undefined) this.atName(placed, 'sub-lane-alone', { name: placed.name.text });
        else this.subLane(placed, placed.tree.kind, index, witness, current);
        continue;
      }
      const voice = voicesByName(environment).get(placed.name.text);
      if (voice === undefined) {
        current = undefined;
        this.unknownVoice(placed);
        continue;
      }
      const above = byVoice.get(voice);
      witness = placed.witness?.text;
      if (witness !== undefined) {
        current = above;
        this.witnessLane(placed, index, voice, above);
      } else if (above !== undefined) {
        current = undefined;
        this.atName(placed, 'lane-twice', { voice: placed.name.text });
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
    { name, subs }: WithSubLanes,
  ): void {
    const stanza = subs.filter((one) => one.kind === kind && one.witness === witness).length;
    if (kind === 'fig' && stanza > 0) {
      const voice = witness === undefined ? name : `${name} ${witness}`;
      this.atName(placed, 'figures-twice', { voice });
    } else subs.push({ kind, stanza, lane, placed, witness });
  }

  private readOne(placed: PlacedLane, index: number, voice: number): WithSubLanes {
    const { bars, opening } = this.read(placed, index, voice, this.task.choice, (code, at, slots = {}, more = {}) =>
      this.reportInLane(index, code, at, slots, more),
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
      this.add({ lane: undefined }, 'unknown-witness', at, slots, { fixes: nameInstead(name, at, known) });
    }
    if (above === undefined) this.atName(placed, 'witness-lane-alone', { voice: placed.name.text, witness: name });
    else if (above.witnesses.some((one) => one.name === name)) {
      this.atName(placed, 'lane-twice', { voice: `${placed.name.text} ${name}` });
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
    this.add(
      { lane },
      'bar-count',
      at,
      { voice, have: howMany(bars.length, 'bar', 'bars'), need },
      { bar: Math.max(0, need - 1) },
    );
  }

  private atName(placed: PlacedLane, code: FindingCode, slots: Slots): void {
    this.add({ lane: undefined }, code, { pos: placed.name.pos, len: placed.name.text.length }, slots);
  }

  private unknownVoice(placed: PlacedLane): void {
    const known = this.task.environment.voices.map((one) => one.name);
    const name = placed.name.text;
    const at = { pos: placed.name.pos, len: name.length };
    const slots = { name, voice: name, expected: nearest(name, known) ?? namesListed(known) };
    this.add({ lane: undefined }, 'unknown-voice', at, slots, { fixes: nameInstead(name, at, known) });
  }

  /** Bar by bar the lane, or the witness lane of a witness that the choice prefers; its empty bars are as in the lane. */
  private chosenBars(lanes: VoiceLanes): VoiceBars {
    const { voice, name, lane, witnesses } = lanes;
    const bars: ChosenBar[] = [];
    for (const [index, bar] of lanes.bars.entries())
      bars.push(witnesses.length === 0 ? { lane, bar } : this.chosenBar(lanes, bar, index));
    const opened = witnesses.filter((one) => one.opening !== undefined);
    const rival = opened.length === 0 ? undefined : preferredWitness(this.task.choice, opened);
    const runningOn = this.task.carry.voices[voice]?.runningOn ?? ZERO;
    return { voice, name, bars, opening: rival?.opening ?? lanes.opening, runningOn };
  }

  private chosenBar({ lane, witnesses }: VoiceLanes, bar: RawBar, index: number): ChosenBar {
    const speaking = witnesses.filter((one) => saysSomething(one.bars[index]));
    const rival = preferredWitness(this.task.choice, speaking);
    const other = rival?.bars[index];
    if (rival === undefined || other === undefined) return { lane, bar };
    const closing = strongerBarline(other.closing, bar.closing);
    if (other.empty) return { lane, bar: { ...bar, closing } };
    return {
      lane: rival.lane,
      bar: { ...other, closing, changes: [...sharedChanges(bar, other), ...other.changes] },
    };
  }

  private checkFree(lanes: readonly VoiceLanes[]): void {
    if (this.kind !== 'free') return;
    for (const one of lanes.slice(1)) {
      const placed = this.task.block.lanes[one.lane];
      if (placed !== undefined) this.atName(placed, 'free-one-lane', { voice: one.name });
    }
  }

  // ─── changes in lanes ────────────────────────────────────────────────────────────────────────────────────────────

  /** The meter of each bar: a change before the first event of a bar counts from there, a later one from the next bar. */
  private metersByBar(voices: readonly VoiceBars[]): (Meter | undefined)[] {
    const count = Math.max(0, ...voices.map((one) => one.bars.length));
    const changed = new Map<number, Meter>();
    for (const { bars } of voices) {
      for (const [index, { bar }] of bars.entries()) {
        for (const one of bar.changes) {
          const clause = clauseOf(one.change.change, 'meter');
          const meter = clause && meterOfClause(clause);
          if (meter !== undefined) changed.set(one.first ? index : index + 1, meter);
        }
      }
    }
    const meters: (Meter | undefined)[] = [];
    let meter = this.meter;
    for (let bar = 0; bar < count; bar++) {
      meter = changed.get(bar) ?? meter;
      meters.push(meter);
    }
    return meters;
  }

  private changesInLanes(voices: readonly VoiceBars[], laid: Laid): LaneFacts {
    const facts: LaneFacts = { endings: new Map(), irregular: new Set() };
    // This goes over all bars, and few have any.
    const all: { change: RawChange; index: number; v: number; voice: number }[] = [];
    for (const [v, { voice, bars }] of voices.entries()) {
      for (const [index, { bar }] of bars.entries()) {
        for (const change of bar.changes) all.push({ change, index, v, voice });
      }
    }
    const placed = all.map((one) => {
      const onset = add(laid.voices[one.v]?.starts[one.index]?.onset ?? ZERO, one.change.offset);
      const bar = laid.barOf?.(onset) ?? one.index;
      return { ...one, onset, bar };
    });
    placed.sort((a, b) => compare(a.onset, b.onset));
    for (const one of placed) this.changeInLane(one, facts, laid);
    return facts;
  }

  private changeInLane(
    { change: raw, bar, onset, voice }: { change: RawChange; bar: number; onset: Time; voice: number },
    facts: LaneFacts,
    laid: Laid,
  ): void {
    const { change } = raw.change;
    // What is typed at the end of a bar concerns the next one.
    const next = laid.bars[bar + 1];
    const atEnd = next !== undefined && equal(onset, next.onset);
    const index = atEnd && !raw.first ? bar + 1 : bar;
    if (change.word === 'now') {
      this.eachOnce(change.clauses, 'now', raw.source, (clause) =>
        this.clause(clause, onset, index, raw.stave, raw.source),
      );
    } else if (change.word === 'ending') {
      const number = firstOf(change.args, 'number')?.value;
      const other = facts.endings.get(index);
      if (number === undefined) return;
      if (other !== undefined && other !== number) {
        this.reportAt('changes-disagree', raw.source, { here: `ending ${number}`, there: `ending ${other}` });
      } else facts.endings.set(index, number);
    } else if (change.word === 'irregular') facts.irregular.add(bar);
    else if (change.word === 'section') {
      const section = sectionOf(change.args);
      const other = this.sections.find((one) => one.bar === index);
      if (section !== undefined && other !== undefined && other.name !== section.name) {
        this.reportAt('changes-disagree', raw.source, {
          here: `section ${section.name}`,
          there: `section ${other.name}`,
        });
      } else if (section !== undefined && other === undefined) {
        if (!raw.first && !atEnd && next !== undefined) {
          this.reportAt('section-not-at-barline', raw.source, { name: section.name });
        }
        const at = raw.first ? (laid.bars[bar]?.onset ?? onset) : (next?.onset ?? laid.duration);
        this.sections.push({ ...section, onset: at, bar: raw.first ? bar : bar + 1 });
      }
    } else if (change.word === 'manual') {
      const name = firstOf(change.args, 'name')?.text;
      if (name === undefined) return;
      this.manuals[voice] = name;
      this.pushChange(
        { onset, bar: index, stave: raw.stave, manual: { voice, name }, restated: false, source: raw.source },
        { lane: raw.source.lane },
        raw.source,
      );
    }
  }

  /** Asked once all changes are known. */
  private keyAt(stave: number, onset: Time): readonly KeySign[] {
    const keys = this.newKeys[stave] ?? this.newKeysOf(stave);
    return (keys.length === 0 ? undefined : inForce(keys, onset)) ?? this.task.carry.keys[stave] ?? nothing;
  }

  private newKeysOf(stave: number): readonly From<readonly KeySign[]>[] {
    const keys = this.changes.flatMap(({ key, onset, stave: of }) =>
      key === undefined || (of !== undefined && of !== stave) ? [] : [{ onset, what: key }],
    );
    this.newKeys[stave] = keys;
    return keys;
  }

  // ─── events ──────────────────────────────────────────────────────────────────────────────────────────────────────

  private beam(voices: readonly { readonly events: readonly LaneEvent[] }[], laid: Laid): void {
    let next = 0;
    for (const { events } of voices) next = setBeams(events, laid.bars, this.task.environment.beaming, next);
  }

  private subLanes(lanes: readonly WithSubLanes[], chosen: readonly VoiceBars[]): ReadonlyMap<number, Sung> {
    const sungOn = new Map<number, Sung>();
    for (const [v, one] of lanes.entries()) {
      const carried = (this.task.carry.voices[one.voice] ?? silentVoice).sung;
      const placed = this.task.block.lanes[one.lane];
      const untied = placed === undefined || isUntied(placed, carried);
      sungOn.set(one.voice, untied ? carried : sung(this.countedAgainst(one, one.voice), carried).carryOut);
      for (const sub of one.subs) {
        // Sub-lanes of a witness lane belong to it alone and are read where it is chosen.
        const owner = sub.witness === undefined ? one : one.witnesses.find((w) => w.name === sub.witness);
        if (owner === undefined) continue;
        this.checkSubLaneBars(sub, owner.bars.length);
        const counted = this.countedAgainst(owner, one.voice);
        const bearing = sub.kind === 'fig' ? figured(counted) : sung(counted, carried).bearing;
        const miscounts = attach(sub, owner.lane, { bearing, counted }, chosen[v]?.bars ?? []);
        for (const { code, item, bar, have, need } of miscounts) {
          const slots = {
            voice: this.task.environment.voices[one.voice]?.name ?? '',
            name: sub.kind,
            have: howMany(have, 'item', 'items'),
            need: howMany(need, 'note', 'notes'),
          };
          this.add({ lane: sub.lane }, code, item, slots, { bar });
        }
      }
    }
    return sungOn;
  }

  /** The lane as its first options have it. */
  private countedAgainst(
    owner: { readonly lane: number; readonly bars: readonly RawBar[] },
    voice: number,
  ): readonly RawBar[] {
    const placed = this.task.block.lanes[owner.lane];
    if (placed === undefined || !mayDiffer(placed)) return owner.bars;
    return this.read(placed, owner.lane, voice, FIRST, () => undefined).bars;
  }

  private checkSubLaneBars(sub: SubLane, need: number): void {
    const have = sub.placed.tree.segments.filter((one) => one.items.length > 0 || one.bar !== undefined).length;
    if (have <= need) return;
    const at = { pos: 0, len: Math.max(sub.placed.tree.text.length, 1) };
    this.add({ lane: sub.lane }, 'sub-lane-bars', at, { name: sub.kind, have: howMany(have, 'bar', 'bars'), need });
  }

  // ─── what comes out ──────────────────────────────────────────────────────────────────────────────────────────────

  private counselClefs(voices: readonly { readonly events: readonly LaneEvent[] }[]): void {
    const missing = new Set<number>();
    for (const { events } of voices) {
      for (const event of events) {
        if (event.kind === 'note' && (this.clefs[event.stave]?.length ?? 0) === 0) missing.add(event.stave);
      }
    }
    for (const stave of missing) {
      const name = this.task.environment.staves[stave]?.name ?? '';
      this.add({ lane: undefined, statement: 0 }, 'clef-missing', { pos: 0, len: 'system'.length }, { stave: name });
    }
  }

  private systemBar(
    bar: Laid['bars'][number],
    index: number,
    facts: LaneFacts,
    opening: DrawnBarline | undefined,
  ): SystemBar {
    return {
      onset: bar.onset,
      duration: bar.duration,
      continues: index === 0 && this.task.carry.open !== undefined,
      closing: bar.closing,
      opening,
      meter: bar.meter,
      ending: facts.endings.get(index),
      irregular: facts.irregular.has(index),
      inner: bar.inner,
      broken: bar.broken,
      sums: bar.sums,
    };
  }

  private carryOut(
    laid: Laid,
    voices: readonly { readonly voice: number; readonly events: readonly LaneEvent[] }[],
    pitch: ReturnType<typeof soundingPitch>,
    open: ReadonlyMap<number, VoiceCarry['curves']>,
    sungOn: ReadonlyMap<number, Sung>,
  ): Carry {
    const { carry, environment } = this.task;
    const last = laid.bars.at(-1);
    const stillOpen: OpenBar | undefined =
      last === undefined
        ? carry.open
        : last.closing === undefined
          ? { elapsed: add(last.elapsed, last.duration), accidentals: pitch.accidentals }
          : undefined;
    const ends = isSpecial(last?.closing);
    const carried: VoiceCarry[] = [];
    for (let voice = 0; voice < environment.voices.length; voice++) {
      const before = carry.voices[voice] ?? silentVoice;
      const state = pitch.voices.get(voice);
      const curves = open.get(voice) ?? [];
      if (ofVoice(voices, voice) === undefined) carried.push({ ...this.absent(before), curves });
      else
        carried.push({
          ties: state?.ties ?? [],
          last: ends ? [] : (state?.last ?? []),
          curves,
          runningOn: ofVoice(laid.voices, voice)?.runningOn ?? ZERO,
          manual: this.manuals[voice],
          atEnding: state?.atEnding,
          sung: sungOn.get(voice) ?? silentVoice.sung,
        });
    }
    return {
      clefs: this.clefs,
      keys: this.keys,
      meter: this.meter,
      tempo: this.tempo,
      stated: undefined,
      open: stillOpen,
      voices: carried,
    };
  }

  /** A voice without a lane has nothing drawn: a tie into such a system leads nowhere. */
  private absent(before: VoiceCarry): VoiceCarry {
    for (const tie of before.ties) {
      this.add(
        { lane: undefined, statement: 0 },
        'tie-to-nothing',
        { pos: 0, len: 'system'.length },
        {
          note: `${tie.letter}${tie.octave}`,
        },
      );
    }
    if (!isZero(before.runningOn)) {
      this.add({ lane: undefined, statement: 0 }, 'through-to-nothing', { pos: 0, len: 'system'.length }, {});
    }
    return { ...before, ties: [], last: [], runningOn: ZERO, sung: silentVoice.sung };
  }
}

/** Of two of one name the first. */
const byName = (all: readonly { readonly name: string }[]): ReadonlyMap<string, number> =>
  new Map(all.map(({ name }, index): [string, number] => [name, index]).reverse());

const voicesByName = keeping((environment: SystemEnvironment) => byName(environment.voices));
const stavesByName = keeping((environment: SystemEnvironment) => byName(environment.staves));
const sourceNames = keeping((environment: SystemEnvironment) => new Set(environment.sources.map(({ name }) => name)));

type WithSubLanes = VoiceLanes & { readonly subs: SubLane[] };

/** What a list has of a voice. */
function ofVoice<Of extends { readonly voice: number }>(all: readonly Of[], voice: number): Of | undefined {
  for (const one of all) if (one.voice === voice) return one;
  return undefined;
}

const saysSomething = (bar: RawBar | undefined): boolean => bar !== undefined && (!bar.empty || isSpecial(bar.closing));

/** A special barline is typed in one lane; a plain one elsewhere agrees. */
const strongerBarline = (own: DrawnBarline | undefined, other: DrawnBarline | undefined): DrawnBarline | undefined =>
  isSpecial(own) || !isSpecial(other) ? (own ?? other) : other;

/** Changes that concern all lanes and that the witness's own bar does not type again. */
export function sharedChanges(bar: RawBar, witness: RawBar): RawChange[] {
  const own = new Set(witness.changes.map(kindOfRaw));
  return bar.changes.filter((one) => one.change.change.word !== 'manual' && !own.has(kindOfRaw(one)));
}

const kindOfRaw = ({ change: { change } }: RawChange): string =>
  [change.word, ...change.clauses.map(({ name }) => name)].join(' ');

/** `section petite in B`: its name and the section of which it is a part. */
function sectionOf(args: Clause['args']): { name: string; within: string | undefined } | undefined {
  const name = firstOf(args, 'name')?.text;
  const within = afterWord(args, 'in');
  return name === undefined ? undefined : { name, within: within?.kind === 'name' ? within.text : undefined };
}

interface LaneFacts {
  readonly endings: Map<number, number>;
  readonly irregular: Set<number>;
}

/** Clauses that may stand several times, each for another stave; the reader of statements has told of the others. */
const REPEATABLE: ReadonlySet<string> = new Set(['clef', 'key']);

const nothing: readonly never[] = [];

/** A list that stays for long, without room to grow. */
const kept = <T>(list: readonly T[]): readonly T[] => (list.length === 0 ? nothing : list.slice());

/** A lane of a loose system counts its own bars; the sentence names the common bar in which that begins. */
function inCommonBar(placed: PlacedProblem, voices: readonly VoiceBars[], laid: Laid): PlacedProblem {
  const { bar, lane } = placed;
  if (bar === undefined || lane === undefined) return placed;
  const v = voices.findIndex(({ bars }) => bars[bar]?.lane === lane);
  const start = laid.voices[v]?.starts[bar]?.onset;
  return start === undefined || laid.barOf === undefined ? placed : { ...placed, bar: laid.barOf(start) };
}

/** When the barline before each event stands. */
const barlinesOf = (voice: VoiceBars | undefined, laid: Laid, v: number): Time[] =>
  (voice?.bars ?? []).flatMap(({ bar }, index) => bar.events.map(() => laid.voices[v]?.starts[index]?.onset ?? ZERO));

const hasOpening = ({ opening }: VoiceBars): boolean => opening !== undefined;

/** The barline that the lanes open with: a special one if any has it, with all that is glued to them. */
function openingOf(lanes: readonly VoiceBars[]): DrawnBarline | undefined {
  if (!lanes.some(hasOpening)) return undefined;
  const all = lanes.flatMap(({ opening }) => opening ?? []);
  const shown = all.find(isSpecial) ?? all[0];
  return (
    shown && {
      ...shown,
      marks: all.flatMap(({ marks }) => marks),
      annotations: all.flatMap(({ annotations }) => annotations),
    }
  );
}

const kindOfChange = (change: StateChange): string =>
  change.clefs !== undefined
    ? 'clef'
    : change.key !== undefined
      ? 'key'
      : change.meter !== undefined
        ? 'meter'
        : change.tempo !== undefined
          ? 'tempo'
          : 'manual';

const saidBy = (change: StateChange): string => {
  if (change.clefs !== undefined) return clefsText(change.clefs);
  if (change.key !== undefined) return change.key.length === 0 ? 'key none' : `key ${keyText(change.key)}`;
  if (change.meter !== undefined) return `meter ${change.meter.sign}`;
  if (change.tempo !== undefined) return `tempo ${change.tempo.value.text} at ${change.tempo.perMinute}`;
  return `manual ${change.manual?.name ?? ''}`;
};

const FIRST = written('note');

/** The events of a voice, each put in its bar and time of the system. */
function eventsIn(voice: VoiceBars, laid: Laid, v: number): LaneEvent[] {
  const { barOf } = laid;
  const starts = laid.voices[v]?.starts;
  let count = 0;
  for (const { bar } of voice.bars) count += bar.events.length;
  const all = new Array<LaneEvent>(count);
  let next = 0;
  for (const [index, { bar }] of voice.bars.entries()) {
    const onset = starts?.[index]?.onset ?? ZERO;
    for (const event of bar.events) {
      event.onset = add(onset, event.onset);
      event.bar = barOf === undefined ? index : barOf(event.onset);
      if (event.fills && event.small === undefined) event.duration = starts?.[index]?.filler ?? ZERO;
      all[next++] = event;
    }
  }
  return all;
}

function meterOfClause(clause: Clause): Meter | undefined {
  const sign = firstOf(clause.args, 'word')?.text;
  if (sign === undefined) return undefined;
  const ratio = firstOf(clause.args, 'ratio');
  const usual = meterOf(sign);
  const beats = ratio?.n ?? usual?.beats;
  const beatValue = ratio?.d ?? usual?.beatValue;
  if (beats === undefined || beatValue === undefined || beats < 1 || beatValue < 1) return undefined;
  return { sign, length: time(beats, beatValue), beats, beatValue };
}

/** `4 at 63`. */
export function tempoOfArgs(args: Clause['args']): Tempo | undefined {
  const value = firstOf(args, 'value')?.form;
  const rate = firstOf(args, 'number') ?? afterWord(args, 'at');
  return value === undefined || rate?.kind !== 'number' ? undefined : { value, perMinute: rate.value };
}

/** The score of one system; it depends on nothing but what the task holds. */
export const buildSystem = (task: SystemTask): SystemScore => new SystemBuilder(task).build();
