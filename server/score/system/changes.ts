/** What is in force in a system and changes in it: clefs, signatures, metre, tempo, manuals; endings and sections. */
import { nameInstead, nearest } from '../../../grammar/nearest';
import { clauseOf, firstOf } from '../../../grammar/statements/read';
import { add, compare, equal, type Time, ZERO } from '../../../grammar/time';
import type { Clause, Clef, Span } from '../../../grammar/tree';
import { clefsText, clefText } from '../../../grammar/vocabulary/clefs';
import type { Laid, VoiceBars } from '../bars';
import { keyOfArgs, meterOfArgs, sectionOf, tempoOfArgs } from '../clauses';
import { type From, inForce } from '../clock';
import { keyText } from '../pitchNames';
import type { RawChange } from '../rawBars';
import type { KeySign, Meter, Source, StateChange, SystemScore, Tempo } from '../score';
import { stavesByName } from './names';
import { HEAD, type Place, type SystemProblems } from './problems';
import type { SystemTask } from './task';

/** When a clause takes effect, and where it is typed. */
interface Moment {
  readonly onset: Time;
  readonly bar: number;
  /** That of its lane; undefined in a head. */
  readonly stave: number | undefined;
  /** The change whose clause it is; undefined in a head. */
  readonly source: Source | undefined;
}

/** A change typed in a lane, at its place in the system. */
interface PlacedChange {
  readonly raw: RawChange;
  /** In which it is typed. */
  readonly bar: number;
  /** Which it concerns: what is typed at the end of a bar concerns the next one. */
  readonly concerns: number;
  readonly onset: Time;
  readonly voice: number;
}

/** A head speaks of the system's start. */
const START: Moment = { onset: ZERO, bar: 0, stave: undefined, source: undefined };

/** Clauses that may stand several times, each for another stave; the reader of statements has told of the others. */
const REPEATABLE: ReadonlySet<string> = new Set(['clef', 'key']);

const nothing: readonly never[] = [];

export class SystemChanges {
  // In force at the place that has been read so far, in the end at the system's end.
  readonly clefs: (readonly Clef[])[];
  readonly keys: (readonly KeySign[])[];
  readonly manuals: (string | undefined)[];
  meter: Meter | undefined;
  tempo: Tempo | undefined;
  readonly sections: SystemScore['sections'][number][] = [];
  /** The numbers of endings by the bars that they begin with. */
  readonly endings = new Map<number, number>();
  /** Bars that say themselves that their length is unusual. */
  readonly irregular = new Set<number>();
  private readonly changes: StateChange[] = [];
  /** By what they change. */
  private readonly lastChanges = new Map<string, StateChange>();
  /** By stave, when they are asked for: the signatures that come in, in the order of time. */
  private readonly newKeys: (readonly From<readonly KeySign[]>[] | undefined)[] = [];

  constructor(
    private readonly task: SystemTask,
    private readonly problems: SystemProblems,
  ) {
    const { carry, environment } = task;
    this.clefs = environment.staves.map((_, stave) => carry.clefs[stave] ?? []);
    this.keys = environment.staves.map((_, stave) => carry.keys[stave] ?? []);
    this.meter = carry.meter;
    this.tempo = carry.tempo;
    this.manuals = environment.voices.map((_, voice) => carry.voices[voice]?.manual);
  }

  /** What is in force already holds from the system's start; a head says what is drawn again or changed. */
  readHead(clauses: readonly Clause[]): void {
    this.eachOnce(clauses, 'system', START);
  }

  /** The meter of each bar: a change before the first event of a bar counts from there, a later one from the next bar. */
  metersByBar(voices: readonly VoiceBars[]): (Meter | undefined)[] {
    const count = Math.max(0, ...voices.map((one) => one.bars.length));
    const changed = new Map<number, Meter>();
    for (const { bars } of voices) {
      for (const [index, { bar }] of bars.entries()) {
        for (const one of bar.changes) {
          const clause = clauseOf(one.change.change, 'meter');
          const meter = clause && meterOfArgs(clause.args);
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

  /** Reads what is typed in the lanes, in the order of time. */
  readLanes(voices: readonly VoiceBars[], laid: Laid): void {
    // This goes over all bars, and few have any.
    const all: { raw: RawChange; index: number; v: number; voice: number }[] = [];
    for (const [v, { voice, bars }] of voices.entries()) {
      for (const [index, { bar }] of bars.entries()) {
        for (const raw of bar.changes) all.push({ raw, index, v, voice });
      }
    }
    const placed = all.map(({ raw, index, v, voice }): PlacedChange => {
      const onset = add(laid.voices[v]?.starts[index]?.onset ?? ZERO, raw.offset);
      const bar = laid.barOf?.(onset) ?? index;
      return { raw, bar, concerns: !raw.first && isAtEnd(onset, bar, laid) ? bar + 1 : bar, onset, voice };
    });
    placed.sort((a, b) => compare(a.onset, b.onset));
    for (const one of placed) this.changeInLane(one, laid);
  }

  /** Asked once all changes are known. */
  keyAt(stave: number, onset: Time): readonly KeySign[] {
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

  /** In the order of time, after a tempo that a statement before the system states. */
  inOrder(): StateChange[] {
    return [...this.statedBefore(), ...this.changes.sort((a, b) => compare(a.onset, b.onset))];
  }

  private statedBefore(): StateChange[] {
    const { stated } = this.task.carry;
    if (stated === undefined) return [];
    return [{ onset: ZERO, bar: 0, stave: undefined, tempo: stated, restated: false, source: undefined }];
  }

  // ─── clauses of a head or of `(now …)` ───────────────────────────────────────────────────────────────────────────

  /** Of two clefs or signatures of a stave, two meters or two tempi in one head or `(now …)` the first counts. */
  private eachOnce(clauses: readonly Clause[], where: string, moment: Moment): void {
    const said = new Set<string>();
    for (const clause of clauses) {
      const stave = firstOf(clause.args, 'name')?.text ?? '';
      const word = clause.name === 'clef' ? stave : `${clause.name} ${stave}`.trim();
      if (!said.has(word)) this.clause(clause, moment);
      else if (REPEATABLE.has(clause.name) && word !== '') {
        this.problems.add(placeOf(moment), 'repeated-clause', spanOf(clause, moment), { word, where });
      }
      said.add(word);
    }
  }

  private clause(clause: Clause, moment: Moment): void {
    switch (clause.name) {
      case 'clef':
        this.clef(clause, moment);
        break;
      case 'key':
        this.key(clause, moment);
        break;
      case 'meter':
        this.newMeter(clause, moment);
        break;
      case 'tempo':
        this.newTempo(clause, moment);
        break;
    }
  }

  private clef(clause: Clause, moment: Moment): void {
    const { onset, bar, source } = moment;
    const stave = moment.stave ?? this.staveNamed(clause, moment);
    const clefs = firstOf(clause.args, 'clef')?.clefs;
    if (stave === undefined || clefs === undefined) return;
    this.findClefOff(stave, clefs, clause, moment);
    const restated = clefsText(this.clefs[stave] ?? []) === clefsText(clefs);
    this.clefs[stave] = clefs;
    this.push({ onset, bar, source, stave, clefs, restated }, placeOf(moment), spanOf(clause, moment));
  }

  private findClefOff(stave: number, clefs: readonly Clef[], clause: Clause, moment: Moment): void {
    const declared = this.task.environment.staves[stave];
    const lines = declared?.lines ?? 5;
    const off = clefs.find((clef) => clef.line > lines);
    if (off === undefined) return;
    const slots = { clef: clefText(off), stave: declared?.name ?? '', lines };
    this.problems.add(placeOf(moment), 'clef-off-stave', spanOf(clause, moment), slots);
  }

  private key(clause: Clause, moment: Moment): void {
    const { onset, bar, source } = moment;
    const key = keyOfArgs(clause.args);
    const stave = this.staveNamed(clause, moment);
    if (stave === undefined && firstOf(clause.args, 'name') !== undefined) return;
    const isMeant = (other: number): boolean => stave === undefined || other === stave;
    const restated = this.keys.every((one, other) => !isMeant(other) || keyText(one) === keyText(key));
    this.keys.forEach((_, other) => {
      if (isMeant(other)) this.keys[other] = key;
    });
    this.push({ onset, bar, source, stave, key, restated }, placeOf(moment), spanOf(clause, moment));
  }

  private newMeter(clause: Clause, moment: Moment): void {
    const { onset, bar, source } = moment;
    const before = this.meter;
    const meter = meterOfArgs(clause.args);
    if (meter === undefined) return;
    const restated = before !== undefined && before.sign === meter.sign && equal(before.length, meter.length);
    this.meter = meter;
    this.push({ onset, bar, source, stave: undefined, meter, restated }, placeOf(moment), spanOf(clause, moment));
  }

  private newTempo(clause: Clause, moment: Moment): void {
    const { onset, bar, source } = moment;
    const tempo = tempoOfArgs(clause.args);
    if (tempo === undefined) return;
    this.tempo = tempo;
    const change = { onset, bar, source, stave: undefined, tempo, restated: false };
    this.push(change, placeOf(moment), spanOf(clause, moment));
  }

  private staveNamed(clause: Clause, moment: Moment): number | undefined {
    const name = firstOf(clause.args, 'name');
    if (name === undefined) return undefined;
    const { staves } = this.task.environment;
    const index = stavesByName(this.task.environment).get(name.text);
    if (index !== undefined) return index;
    const known = staves.map((stave) => stave.name);
    const span = spanOf(name, moment);
    const slots = { name: name.text, stave: name.text, expected: nearest(name.text, known) ?? '' };
    this.problems.add(placeOf(moment), 'unknown-stave', span, slots, { fixes: nameInstead(name.text, span, known) });
    return undefined;
  }

  /** The same change in two lanes must agree, and counts once. */
  private push(change: StateChange, at: Place, span: Span): void {
    const of = `${kindOf(change)} ${change.stave} ${change.manual?.voice}`;
    // They come in the order of time.
    const same = this.lastChanges.get(of);
    if (same === undefined || !equal(same.onset, change.onset)) {
      this.changes.push(change);
      this.lastChanges.set(of, change);
    } else if (saidBy(same) !== saidBy(change)) {
      this.problems.add(at, 'changes-disagree', span, { here: saidBy(change), there: saidBy(same) });
    }
  }

  // ─── changes in lanes ────────────────────────────────────────────────────────────────────────────────────────────

  private changeInLane(placed: PlacedChange, laid: Laid): void {
    const { raw, bar, concerns, onset } = placed;
    const { change } = raw.change;
    switch (change.word) {
      case 'now':
        this.eachOnce(change.clauses, 'now', { onset, bar: concerns, stave: raw.stave, source: raw.source });
        break;
      case 'ending':
        this.ending(placed);
        break;
      case 'irregular':
        this.irregular.add(bar);
        break;
      case 'section':
        this.section(placed, laid);
        break;
      case 'manual':
        this.manual(placed);
        break;
    }
  }

  private ending({ raw, concerns }: PlacedChange): void {
    const number = firstOf(raw.change.change.args, 'number')?.value;
    const other = this.endings.get(concerns);
    if (number === undefined) return;
    if (other !== undefined && other !== number) {
      this.problems.at('changes-disagree', raw.source, { here: `ending ${number}`, there: `ending ${other}` });
    } else this.endings.set(concerns, number);
  }

  private section({ raw, bar, concerns, onset }: PlacedChange, laid: Laid): void {
    const section = sectionOf(raw.change.change.args);
    if (section === undefined) return;
    const other = this.sections.find((one) => one.bar === concerns);
    if (other !== undefined) {
      if (other.name === section.name) return;
      const slots = { here: `section ${section.name}`, there: `section ${other.name}` };
      this.problems.at('changes-disagree', raw.source, slots);
      return;
    }
    const next = laid.bars[bar + 1];
    if (!raw.first && !isAtEnd(onset, bar, laid) && next !== undefined) {
      this.problems.at('section-not-at-barline', raw.source, { name: section.name });
    }
    const begins = raw.first ? (laid.bars[bar]?.onset ?? onset) : (next?.onset ?? laid.duration);
    this.sections.push({ ...section, onset: begins, bar: raw.first ? bar : bar + 1 });
  }

  private manual({ raw: { change, stave, source }, concerns, onset, voice }: PlacedChange): void {
    const name = firstOf(change.change.args, 'name')?.text;
    if (name === undefined) return;
    this.manuals[voice] = name;
    const manual = { voice, name };
    this.push({ onset, bar: concerns, stave, manual, restated: false, source }, { lane: source.lane }, source);
  }
}

/** Whether the next bar begins at a moment. */
function isAtEnd(onset: Time, bar: number, { bars }: Laid): boolean {
  const next = bars[bar + 1];
  return next !== undefined && equal(onset, next.onset);
}

const placeOf = ({ source }: Moment): Place => (source === undefined ? HEAD : { lane: source.lane });

/** Places in a change count from its beginning, those in a head from that of the statement. */
const spanOf = ({ pos, len }: Span, { source }: Moment): Span => ({ pos: (source?.pos ?? 0) + pos, len });

const kindOf = (change: StateChange): string =>
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
