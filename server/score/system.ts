/** Builds the score of one system from its lanes, the declarations and the carry. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Slots } from '../../grammar/findings/finding';
import { nearest } from '../../grammar/nearest';
import { afterWord, allOf, clausesOf, firstOf } from '../../grammar/statements/read';
import { add, compare, equal, subtract, type Time, time, ZERO } from '../../grammar/time';
import type { BlockContents, Clause, Clef, Item, MarkForm, PlacedLane, Span } from '../../grammar/tree';
import { clefText } from '../../grammar/vocabulary/clefs';
import { meterOf } from '../../grammar/vocabulary/meters';
import { type Laid, layLoose, layMeasured, type VoiceBars } from './bars';
import { type Beamable, beamsOf } from './beams';
import { type Carry, type OpenBar, silentVoice, type VoiceCarry } from './carry';
import { type Choice, chooseOption, written } from './choice';
import { type CurveMark, type EndingMark, type MatchedCurves, matchCurves } from './curves';
import type { SystemEnvironment } from './environment';
import { type RawBar, type RawChange, type RawEvent, readLane, sectionOf } from './lane';
import { withGaps, withoutOmitted } from './omissions';
import { type Draft, soundingPitch } from './pitch';
import type {
  AppliedMark,
  CurveEnd,
  DrawnBarline,
  KeySign,
  Meter,
  PlacedProblem,
  Source,
  StateChange,
  SystemBar,
  SystemScore,
  Tempo,
} from './score';

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
  readonly stave: number;
  readonly lane: number;
  readonly bars: readonly RawBar[];
  readonly opening: DrawnBarline | undefined;
  readonly witnesses: { readonly name: string; readonly lane: number; readonly bars: readonly RawBar[] }[];
}

type Place = Pick<PlacedProblem, 'lane' | 'statement'>;

const clefLine = (clefs: readonly Clef[]): string => clefs.map(clefText).join('+');
const sameClefs = (a: readonly Clef[], b: readonly Clef[]): boolean => clefLine(a) === clefLine(b);
const keyText = (key: readonly KeySign[]): string =>
  key.map((sign) => `${sign.letter}${sign.accidental}${sign.octave ?? ''}`).join(' ');

class SystemBuilder {
  private readonly problems: PlacedProblem[] = [];
  private readonly changes: StateChange[] = [];
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
    const typed = withoutOmitted(lanes.map((one) => this.chosenBars(one)));
    this.checkFree(lanes);
    const elapsed = carry.open?.elapsed ?? ZERO;
    const barMeters = this.metersByBar(typed);
    const report = this.reportInLane;
    const laid: Laid & { barOf?: (onset: Time) => number } =
      this.kind === 'loose'
        ? layLoose(typed, elapsed, this.meter, report)
        : layMeasured(typed, elapsed, (bar) => (this.kind === 'free' ? undefined : barMeters[bar]), report);
    const voices = typed.map((voice, v) => ({
      ...voice,
      bars: voice.bars.map((one, b) => ({ ...one, bar: withGaps(one.bar, laid.voices[v]?.starts[b]?.gaps ?? []) })),
    }));
    const facts = this.changesInLanes(voices, laid);
    const drafts = voices.map((voice, v) => ({ voice: voice.voice, events: this.drafts(voice, laid, v) }));
    this.beam(drafts, voices, laid);
    const opening = openingOf(lanes);
    const special = (bar: number): boolean => {
      const before = bar === 0 ? opening : laid.bars[bar - 1]?.closing;
      return before !== undefined && before.shape !== '|';
    };
    const pitch = soundingPitch({
      practice: choice.accidentals,
      voices: drafts,
      carried: carry.voices,
      open: carry.open,
      keyAt: (stave, onset) => this.keyAt(stave, onset),
      barOf: (bar) => ({ afterSpecial: special(bar), ending: facts.endings.get(bar) }),
      staves: environment.staves.length,
      report: (code, at, slots) => this.reportAt(code, at, slots),
    });
    // After the pitches: a syllable stands on no note that is tied to the one before.
    this.attachSubLanes(lanes, voices, drafts);
    const curves = this.curves(drafts, voices, facts);
    this.counselClefs(drafts);
    return {
      kind: this.kind,
      bars: laid.bars.map((bar, index) => this.systemBar(bar, index, facts, index === 0 ? opening : undefined)),
      duration: laid.duration,
      voices: drafts.map(({ voice, events }, v) => ({
        voice,
        lane: lanes[v]?.lane ?? 0,
        events,
      })),
      curves: curves.curves,
      changes: [...this.statedBefore(), ...this.changes.sort((a, b) => compare(a.onset, b.onset))],
      sections: this.sections,
      carryOut: this.carryOut(laid, drafts, pitch, curves.open),
      problems: this.problems,
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
      problem: { code, pos: at.pos, len: at.len, slots, ...(fixes === undefined ? {} : { fixes }) },
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
    for (const clause of this.head?.clauses ?? []) this.clause(clause, ZERO, 0, undefined, undefined);
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
    const same = this.changes.find(
      (one) =>
        equal(one.onset, change.onset) &&
        one.stave === change.stave &&
        kindOfChange(one) === kindOfChange(change) &&
        one.manual?.voice === change.manual?.voice,
    );
    if (same === undefined) this.changes.push(change);
    else if (saidBy(same) !== saidBy(change)) {
      this.add(at, 'changes-disagree', place, { here: saidBy(change), there: saidBy(same) });
    }
  }

  private staveNamed(clause: Clause, at: Place, place: Span): number | undefined {
    const name = firstOf(clause.args, 'name');
    if (name === undefined) return undefined;
    const { staves } = this.task.environment;
    const index = staves.findIndex((stave) => stave.name === name.text);
    if (index >= 0) return index;
    const meant = nearest(
      name.text,
      staves.map((stave) => stave.name),
    );
    const pos = place.pos - clause.pos + name.pos;
    this.add(
      at,
      'unknown-stave',
      { pos, len: name.len },
      { name: name.text, stave: name.text, expected: meant ?? '' },
      {
        ...(meant === undefined
          ? {}
          : { fixes: [{ title: `write ${meant}`, edits: [{ pos, len: name.len, text: meant }] }] }),
      },
    );
    return undefined;
  }

  // ─── lanes ───────────────────────────────────────────────────────────────────────────────────────────────────────

  private readLanes(): WithSubLanes[] {
    const { block, environment } = this.task;
    const found: WithSubLanes[] = [];
    let current: (typeof found)[number] | undefined;
    let witness: string | undefined;
    block.lanes.forEach((placed, index) => {
      if (placed.tree.kind !== 'lane') {
        if (current === undefined) this.atName(placed, 'sub-lane-alone', { name: placed.name.text });
        else current.subs.push({ kind: placed.tree.kind, lane: index, placed, witness });
        return;
      }
      const voice = environment.voices.findIndex((one) => one.name === placed.name.text);
      if (voice < 0) {
        current = undefined;
        this.unknownVoice(placed);
        return;
      }
      if (placed.witness !== undefined) {
        witness = placed.witness.text;
        current = found.find((one) => one.voice === voice);
        this.witnessLane(placed, index, voice, current);
        return;
      }
      witness = undefined;
      if (found.some((one) => one.voice === voice)) {
        current = undefined;
        this.atName(placed, 'lane-twice', { voice: placed.name.text });
        return;
      }
      current = { ...this.readOne(placed, index, voice, false), witnesses: [], subs: [] };
      found.push(current);
    });
    return found;
  }

  private readOne(placed: PlacedLane, index: number, voice: number, witness: boolean): Omit<VoiceLanes, 'witnesses'> {
    const { environment, choice } = this.task;
    const declared = environment.voices[voice];
    const name = placed.witness === undefined ? placed.name.text : `${placed.name.text}.${placed.witness.text}`;
    const { bars, opening } = readLane({
      lane: placed,
      index,
      name,
      stave: declared?.stave ?? 0,
      stems: declared?.stems,
      kind: this.kind,
      witness,
      environment,
      choice,
      report: (code, at, slots = {}, more = {}) => this.reportInLane(index, code, at, slots, more),
    });
    return { voice, name: placed.name.text, stave: declared?.stave ?? 0, lane: index, bars, opening };
  }

  private witnessLane(placed: PlacedLane, index: number, voice: number, above: VoiceLanes | undefined): void {
    const { environment } = this.task;
    const name = placed.witness?.text ?? '';
    if (!environment.sources.some((one) => one.name === name)) {
      const meant = nearest(
        name,
        environment.sources.map((one) => one.name),
      );
      this.add(
        { lane: undefined },
        'unknown-witness',
        { pos: placed.witness?.pos ?? placed.name.pos, len: name.length },
        {
          name,
          meant: meant ?? environment.sources.map((one) => one.name).join(', '),
        },
      );
    }
    if (above === undefined) this.atName(placed, 'witness-lane-alone', { voice: placed.name.text, witness: name });
    else {
      const { bars } = this.readOne(placed, index, voice, true);
      above.witnesses.push({ name, lane: index, bars });
      if (bars.length !== above.bars.length) this.otherBarCount(placed, index, bars, above.bars.length);
    }
  }

  /** A witness lane has as many bars as the lane it stands under, or nobody could tell which bar it differs in. */
  private otherBarCount(placed: PlacedLane, lane: number, bars: readonly RawBar[], need: number): void {
    const at = bars.at(Math.min(need, bars.length - 1))?.at ?? { pos: 0, len: 1 };
    const voice = `${placed.name.text} ${placed.witness?.text ?? ''}`;
    this.add({ lane }, 'bar-count', at, { voice, have: bars.length, need }, { bar: Math.max(0, need - 1) });
  }

  private atName(placed: PlacedLane, code: FindingCode, slots: Slots): void {
    this.add({ lane: undefined }, code, { pos: placed.name.pos, len: placed.name.text.length }, slots);
  }

  private unknownVoice(placed: PlacedLane): void {
    const { voices } = this.task.environment;
    const name = placed.name.text;
    const meant = nearest(
      name,
      voices.map((one) => one.name),
    );
    const at = { pos: placed.name.pos, len: name.length };
    this.add(
      { lane: undefined },
      'unknown-voice',
      at,
      { name, voice: name, expected: meant ?? voices.map((one) => one.name).join(', ') },
      {
        ...(meant === undefined ? {} : { fixes: [{ title: `write ${meant}`, edits: [{ ...at, text: meant }] }] }),
      },
    );
  }

  /** Bar by bar the lane, or the witness lane of a witness that the choice prefers; its empty bars are as in the lane. */
  private chosenBars(lanes: VoiceLanes): VoiceBars {
    const { choice, carry } = this.task;
    const label = (name: string): { labels: { name: string; doubtful: boolean; pos: number; len: number }[] } => ({
      labels: [{ name, doubtful: false, pos: 0, len: 0 }],
    });
    const bars = lanes.bars.map((bar, index) => {
      const rivals = lanes.witnesses.filter((one) => one.bars[index]?.empty === false);
      const taken = chooseOption(choice, undefined, [{ labels: [] }, ...rivals.map((one) => label(one.name))]);
      const rival = rivals[taken - 1];
      const other = rival?.bars[index];
      return rival === undefined || other === undefined
        ? { lane: lanes.lane, bar }
        : { lane: rival.lane, bar: { ...other, closing: other.closing ?? bar.closing } };
    });
    return { voice: lanes.voice, name: lanes.name, bars, runningOn: carry.voices[lanes.voice]?.runningOn ?? ZERO };
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
      bars.forEach(({ bar }, index) => {
        for (const one of bar.changes) {
          for (const clause of clausesOf(one.change.change, 'meter')) {
            const meter = meterOfClause(clause);
            if (meter !== undefined) changed.set(one.first ? index : index + 1, meter);
          }
        }
      });
    }
    let meter = this.meter;
    return Array.from({ length: count }, (_, bar) => {
      meter = changed.get(bar) ?? meter;
      return meter;
    });
  }

  private changesInLanes(voices: readonly VoiceBars[], laid: Laid & { barOf?: (onset: Time) => number }): LaneFacts {
    const facts: LaneFacts = { endings: new Map(), irregular: new Set() };
    const all = voices.flatMap((voice, v) =>
      voice.bars.flatMap(({ bar }, index) => bar.changes.map((change) => ({ change, index, v, voice: voice.voice }))),
    );
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
      for (const clause of change.clauses) this.clause(clause, onset, index, raw.stave, raw.source);
    } else if (change.word === 'ending') {
      const number = firstOf(change.args, 'number')?.value;
      if (number !== undefined) facts.endings.set(index, number);
    } else if (change.word === 'irregular') facts.irregular.add(bar);
    else if (change.word === 'section') {
      const section = sectionOf(change.args);
      const known = this.sections.some((one) => one.name === section?.name && one.bar === index);
      if (section !== undefined && !known) {
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

  private keyAt(stave: number, onset: Time): readonly KeySign[] {
    let key: readonly KeySign[] = this.task.carry.keys[stave] ?? [];
    for (const change of this.changes) {
      if (change.key === undefined || (change.stave !== undefined && change.stave !== stave)) continue;
      if (compare(change.onset, onset) <= 0) key = change.key;
    }
    return key;
  }

  // ─── events ──────────────────────────────────────────────────────────────────────────────────────────────────────

  private drafts(voice: VoiceBars, laid: Laid & { barOf?: (onset: Time) => number }, v: number): Draft[] {
    const drafts: Draft[] = [];
    for (const [index, { bar }] of voice.bars.entries()) {
      const start = laid.voices[v]?.starts[index] ?? { onset: ZERO, filler: ZERO };
      for (const raw of bar.events) {
        const onset = add(start.onset, raw.offset);
        drafts.push(draftOf(raw, voice.voice, laid.barOf?.(onset) ?? index, onset, raw.duration ?? start.filler));
      }
    }
    return drafts.slice();
  }

  private beam(drafts: readonly { voice: number; events: Draft[] }[], voices: readonly VoiceBars[], laid: Laid): void {
    let next = 0;
    drafts.forEach(({ events }, v) => {
      const signs: RawEvent['beam'][] = [];
      for (const { bar } of voices[v]?.bars ?? []) for (const { beam } of bar.events) signs.push(beam);
      const beamable = events.map((event, index): Beamable => {
        const bar = laid.bars[event.bar];
        return {
          bar: event.bar,
          inBar: add(subtract(event.onset, bar?.onset ?? ZERO), bar?.elapsed ?? ZERO),
          value: event.value,
          isNote: event.kind === 'note',
          small: event.small?.group,
          sign: signs[index],
        };
      });
      const beams = beamsOf(beamable, (bar) => laid.bars[bar]?.meter, this.task.environment.beaming, next);
      events.forEach((event, index) => {
        event.beam = beams[index];
        next = Math.max(next, (beams[index] ?? -1) + 1);
      });
    });
  }

  /** Figures and syllables are counted against the first options of the lane above them. */
  private attachSubLanes(
    lanes: readonly WithSubLanes[],
    voices: readonly VoiceBars[],
    drafts: readonly { events: Draft[] }[],
  ): void {
    lanes.forEach((one, v) => {
      for (const sub of one.subs) {
        // Sub-lanes of a witness lane belong to it alone and are read where it is chosen.
        const owner = sub.witness === undefined ? one : one.witnesses.find((w) => w.name === sub.witness);
        if (owner === undefined) continue;
        this.checkSubLaneBars(sub, owner.bars.length);
        const counted = this.countedAgainst(owner, one.voice);
        const bearing = sub.kind === 'fig' ? figured(counted) : sung(counted, this.task.carry.voices[one.voice]);
        let first = 0;
        voices[v]?.bars.forEach(({ lane, bar }, index) => {
          const events = drafts[v]?.events.slice(first, first + bar.events.length) ?? [];
          first += bar.events.length;
          const items = sub.placed.tree.segments[index]?.items.filter(isSubItem) ?? [];
          if (lane === owner.lane) this.attachBar(sub, items, bearing[index] ?? [], { raw: bar.events, events }, index);
        });
      }
    });
  }

  /** The lane as its first options have it. */
  private countedAgainst(
    owner: { readonly lane: number; readonly bars: readonly RawBar[] },
    voice: number,
  ): readonly RawBar[] {
    const placed = this.task.block.lanes[owner.lane];
    const declared = this.task.environment.voices[voice];
    if (this.task.choice.name === FIRST.name || placed === undefined) return owner.bars;
    const { bars } = readLane({
      lane: placed,
      index: owner.lane,
      name: placed.name.text,
      stave: declared?.stave ?? 0,
      stems: declared?.stems,
      kind: this.kind,
      witness: placed.witness !== undefined,
      environment: this.task.environment,
      choice: FIRST,
      report: () => undefined,
    });
    return bars;
  }

  private checkSubLaneBars(sub: SubLane, need: number): void {
    const have = sub.placed.tree.segments.filter((one) => one.items.length > 0 || one.bar !== undefined).length;
    if (have <= need) return;
    const at = { pos: 0, len: Math.max(sub.placed.tree.text.length, 1) };
    this.add({ lane: sub.lane }, 'sub-lane-bars', at, { name: sub.kind, have, need });
  }

  private attachBar(
    sub: SubLane,
    items: readonly Item[],
    bearing: readonly RawEvent[],
    chosen: { readonly raw: readonly RawEvent[]; readonly events: readonly Draft[] },
    bar: number,
  ): void {
    items.forEach((item, index) => {
      const offset = bearing[index]?.offset;
      const at = chosen.raw.findIndex((raw) => offset !== undefined && equal(raw.offset, offset) && bearsFigures(raw));
      const event = chosen.events[at];
      if (event === undefined) return;
      if (item.kind === 'figures') event.figures = item;
      else if (item.kind === 'syllable') event.syllable = item;
    });
    const extra = items[bearing.length];
    if (extra === undefined) return;
    this.add(
      { lane: sub.lane },
      'sub-lane-items',
      extra,
      { name: sub.kind, have: items.length, need: bearing.length },
      { bar },
    );
  }

  // ─── curves ──────────────────────────────────────────────────────────────────────────────────────────────────────

  private curves(
    drafts: readonly { voice: number; events: Draft[] }[],
    voices: readonly VoiceBars[],
    facts: LaneFacts,
  ): MatchedCurves {
    const marks = merged(
      drafts.map(({ voice, events }, v) => [
        ...marksOnEvents(voice, events),
        ...marksOnBarlines(voice, events, voices[v]?.bars ?? []),
        ...endingsIn(voice, events, facts),
      ]),
    );
    const incoming = new Map(this.task.carry.voices.map(({ curves }, voice) => [voice, curves]));
    return matchCurves(
      marks.map(({ mark }) => mark),
      incoming,
      (code, at, slots) => this.reportAt(code, at, slots),
    );
  }

  // ─── what comes out ──────────────────────────────────────────────────────────────────────────────────────────────

  private counselClefs(drafts: readonly { events: Draft[] }[]): void {
    const missing = new Set<number>();
    for (const { events } of drafts) {
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
    drafts: readonly { voice: number; events: readonly Draft[] }[],
    pitch: ReturnType<typeof soundingPitch>,
    open: ReadonlyMap<number, VoiceCarry['curves']>,
  ): Carry {
    const { carry, environment } = this.task;
    const last = laid.bars.at(-1);
    const present = new Set(drafts.map(({ voice }) => voice));
    const stillOpen: OpenBar | undefined =
      last === undefined
        ? carry.open
        : last.closing === undefined
          ? { elapsed: add(last.elapsed, last.duration), accidentals: pitch.accidentals }
          : undefined;
    const ends = last?.closing !== undefined && last.closing.shape !== '|';
    return {
      clefs: this.clefs,
      keys: this.keys,
      meter: this.meter,
      tempo: this.tempo,
      stated: undefined,
      open: stillOpen,
      voices: environment.voices.map((_, voice): VoiceCarry => {
        const before = carry.voices[voice] ?? silentVoice;
        if (!present.has(voice)) return { ...this.absent(before), curves: open.get(voice) ?? [] };
        return {
          ties: pitch.ties.get(voice) ?? [],
          last: ends ? [] : (pitch.last.get(voice) ?? []),
          curves: open.get(voice) ?? [],
          runningOn: laid.voices.find((one) => one.voice === voice)?.runningOn ?? ZERO,
          manual: this.manuals[voice],
          atEnding: pitch.atEnding.get(voice),
        };
      }),
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
    return { ...before, ties: [], last: [], runningOn: ZERO };
  }
}

type WithSubLanes = VoiceLanes & { readonly subs: SubLane[] };

interface SubLane {
  readonly kind: 'fig' | 'text';
  readonly lane: number;
  readonly placed: PlacedLane;
  /** The witness lane under which it stands. */
  readonly witness: string | undefined;
}

interface LaneFacts {
  readonly endings: Map<number, number>;
  readonly irregular: Set<number>;
}

/** A mark of a curve, or an ending, with its place among those of its voice and its moment. */
interface PlacedMark {
  readonly mark: CurveMark | EndingMark;
  readonly onset: Time;
  readonly event: number;
  /** Before the event of that number: first its barline, then the ending that begins there. */
  readonly rank: number;
}

const isCurve = (form: MarkForm): boolean => form.type === 'curveStart' || form.type === 'curveEnd';

const bearsCurve = (marks: readonly AppliedMark[]): boolean => marks.some(({ form }) => isCurve(form));

function marksOnEvents(voice: number, events: readonly Draft[]): PlacedMark[] {
  const found: PlacedMark[] = [];
  for (const [index, event] of events.entries()) {
    // Most events bear none.
    if (!bearsCurve(event.marks) && !event.members.some(({ marks }) => bearsCurve(marks))) continue;
    const pitches = event.members.map(({ spelling, octave, alteration }) => ({
      letter: spelling.letter,
      octave,
      alteration,
    }));
    const take = (marks: readonly AppliedMark[], member: number | undefined): PlacedMark[] =>
      marks
        .filter(({ form }) => isCurve(form))
        .map(({ form, source }) => {
          const end: CurveEnd = { voice, event: index, member, onBarline: false, form, source };
          const on = member === undefined ? pitches : pitches.slice(member, member + 1);
          return { mark: { form, end, pitches: on }, onset: event.onset, event: index, rank: 2 };
        });
    found.push(...take(event.marks, undefined), ...event.members.flatMap((member, m) => take(member.marks, m)));
  }
  return found;
}

function marksOnBarlines(voice: number, events: readonly Draft[], bars: VoiceBars['bars']): PlacedMark[] {
  let count = 0;
  return bars.flatMap(({ bar }) => {
    count += bar.events.length;
    const event = count;
    const before = events[event - 1];
    const onset = before === undefined ? ZERO : add(before.onset, before.duration);
    return (bar.closing?.marks ?? [])
      .filter(({ form }) => isCurve(form))
      .map(({ form, source }) => {
        const end: CurveEnd = { voice, event, member: undefined, onBarline: true, form, source };
        return { mark: { form, end, pitches: [] }, onset, event, rank: 0 };
      });
  });
}

function endingsIn(voice: number, events: readonly Draft[], facts: LaneFacts): PlacedMark[] {
  return [...facts.endings].flatMap(([bar, ending]) => {
    const event = events.findIndex((one) => one.bar >= bar);
    const first = events[event];
    return first === undefined ? [] : [{ mark: { voice, ending }, onset: first.onset, event, rank: 1 }];
  });
}

/** In one voice as its events stand; of several voices what comes first in time, so that a named curve may end in another. */
function merged(voices: readonly (readonly PlacedMark[])[]): PlacedMark[] {
  const waiting = voices.map((marks) => [...marks].sort((a, b) => a.event - b.event || a.rank - b.rank));
  const all: PlacedMark[] = [];
  for (;;) {
    const first = waiting.reduce<PlacedMark[] | undefined>((least, marks) => {
      const [a, b] = [least?.[0], marks[0]];
      return b !== undefined && (a === undefined || compare(b.onset, a.onset) < 0) ? marks : least;
    }, undefined);
    const mark = first?.shift();
    if (mark === undefined) return all;
    all.push(mark);
  }
}

/** The barline that the lanes open with: a special one if any has it, with all that is glued to them. */
function openingOf(lanes: readonly VoiceLanes[]): DrawnBarline | undefined {
  const all = lanes.flatMap(({ opening }) => opening ?? []);
  const shown = all.find(({ shape }) => shape !== '|') ?? all[0];
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
  if (change.clefs !== undefined) return clefLine(change.clefs);
  if (change.key !== undefined) return change.key.length === 0 ? 'key none' : `key ${keyText(change.key)}`;
  if (change.meter !== undefined) return `meter ${change.meter.sign}`;
  if (change.tempo !== undefined) return `tempo ${change.tempo.value.text} at ${change.tempo.perMinute}`;
  return `manual ${change.manual?.name ?? ''}`;
};

const FIRST = written('note');
const isSubItem = (item: Item): boolean => item.kind === 'figures' || item.kind === 'syllable' || item.kind === 'junk';
/** One item for each note, chord, rest or lone `=`; none for gaps and small notes. */
const bearsFigures = (event: RawEvent): boolean =>
  event.small === undefined && (event.kind === 'note' || event.kind === 'rest');
const figured = (bars: readonly RawBar[]): RawEvent[][] => bars.map(({ events }) => events.filter(bearsFigures));

/** One syllable for each note not tied to the one before, which may stand in an earlier bar or system or before the first ending. */
function sung(bars: readonly RawBar[], carried: VoiceCarry | undefined): RawEvent[][] {
  /** Pitches that are tied on. */
  let tied: readonly string[] = (carried?.ties ?? []).map(({ letter, octave }) => `${letter}${octave}`);
  let atEnding = (carried?.atEnding?.ties ?? []).map(({ letter, octave }) => `${letter}${octave}`);
  return bars.map(({ events, changes }) => {
    const ending = endingOf(changes);
    if (ending === 1) atEnding = [...tied];
    else if (ending !== undefined) tied = atEnding;
    return events.filter((event) => {
      if (event.small !== undefined) return false;
      const held = event.repeats !== undefined || event.members.every((member) => tied.includes(pitchText(member)));
      tied = event.members.flatMap((member) => (member.tie === undefined ? [] : [pitchText(member)]));
      return event.kind === 'note' && !held;
    });
  });
}

const pitchText = ({ spelling, octave }: RawEvent['members'][number]): string => `${spelling.letter}${octave}`;

function endingOf(changes: readonly RawChange[]): number | undefined {
  const change = changes.find((one) => one.change.change.word === 'ending')?.change.change;
  return change === undefined ? undefined : firstOf(change.args, 'number')?.value;
}

export function meterOfClause(clause: Clause): Meter | undefined {
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

function draftOf(raw: RawEvent, voice: number, bar: number, onset: Time, duration: Time): Draft {
  return {
    kind: raw.kind,
    voice,
    stave: raw.stave,
    bar,
    onset,
    duration: raw.small === undefined ? duration : ZERO,
    value: raw.value,
    wholeBar: raw.wholeBar,
    small: raw.small,
    members: raw.members,
    marks: raw.marks,
    annotations: raw.annotations,
    words: raw.words,
    tuplets: raw.tuplets,
    beam: undefined,
    stems: raw.stems,
    spans: raw.spans,
    chosen: raw.chosen,
    custos: raw.custos,
    figures: undefined,
    syllable: undefined,
    address: raw.address,
    laneName: raw.laneName,
    source: raw.source,
    repeats: raw.repeats,
  };
}

/** The score of one system; it depends on nothing but what the task holds. */
export const buildSystem = (task: SystemTask): SystemScore => new SystemBuilder(task).build();
