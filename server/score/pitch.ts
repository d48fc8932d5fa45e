/**
 * Sounding pitch: a pass over the events of a system with the practice of accidentals as argument.
 *
 * `note`: a written accidental holds for its note and its immediate repetitions in the voice; `group`: for the notes under
 * one beam; `bar`: to the barline, in its octave, for all voices of the stave.
 */
import type { FindingCode } from '../../grammar/findings/catalogue';
import { compare, type Time, ZERO } from '../../grammar/time';
import type { AccidentalSign, Spelling } from '../../grammar/tree';
import { ALTERATIONS, midiOf, signOf } from '../../grammar/vocabulary/pitches';
import type { OpenBar, PitchState, VoiceCarry } from './carry';
import type { AccidentalPractice } from './choice';
import { type LaneEvent, type LaneNote, noAnnotations, noMarks } from './event';
import type { KeySign, NoteMember, Source, VoiceEvent } from './score';

/** What a note's signs say: drawn, the editor's, cautionary, or an accidental mark above it. */
export function accidentalOf(member: Pick<NoteMember, 'spelling' | 'marks'>): AccidentalSign | undefined {
  const { accidental, editors, cautionary } = member.spelling;
  const drawn = editors ?? accidental ?? cautionary;
  if (drawn !== undefined || member.marks.length === 0) return drawn;
  for (const { form } of member.marks) if (form.type === 'accidental') return form.accidental;
  return undefined;
}

/** Before naturals were common a flat took a sharp away and a sharp a flat. */
function altered(sign: AccidentalSign, before: number, practice: AccidentalPractice): number {
  if (practice !== 'bar' && sign === 'b' && before > 0) return 0;
  if (practice !== 'bar' && sign === '#' && before < 0) return 0;
  return ALTERATIONS[sign];
}

export interface PitchTask {
  readonly practice: AccidentalPractice;
  /** Events of each voice in the order of the source; `onset` counts from the system's start. */
  readonly voices: readonly {
    readonly voice: number;
    readonly events: readonly LaneEvent[];
    /** Of a loose system, by event: when the barline before it stands, which may be the lane's own. */
    readonly barlines?: readonly Time[];
  }[];
  readonly carried: readonly VoiceCarry[];
  readonly open: OpenBar | undefined;
  /** The signature of a stave at a moment. */
  readonly keyAt: (stave: number, onset: Time) => readonly KeySign[];
  /** Whether the barline before a bar is a double bar or repeat, and the ending that begins with it. */
  readonly barOf: (bar: number) => { readonly afterSpecial: boolean; readonly ending: number | undefined };
  readonly staves: number;
  readonly report: (code: FindingCode, at: Source, slots: Record<string, string>) => void;
}

/** What of a voice crosses the system's end. */
type Left = Pick<VoiceCarry, 'ties' | 'last' | 'atEnding'>;

export interface PitchResult {
  /** By voice. */
  readonly voices: ReadonlyMap<number, Left>;
  readonly accidentals: readonly (readonly PitchState[])[];
}

interface Pending extends PitchState {
  readonly source: Source | undefined;
  /** It entered the first ending already, and now this one. */
  readonly ending?: number;
}

interface VoiceState {
  pending: readonly Pending[];
  last: readonly PitchState[];
  /** Members of the last event that a lone `=` repeats. */
  lastMembers: LaneNote[] | undefined;
  lastKind: VoiceEvent['kind'] | undefined;
  bar: number;
  atEnding: VoiceCarry['atEnding'];
  /** Accidentals under the beam of this number. */
  beam: number | undefined;
  underBeam: PitchState[];
}

/** The first or last state of a pitch in a list. */
function stateIn<State extends PitchState>(
  list: readonly State[],
  { spelling: { letter }, octave }: LaneNote,
  from: 'first' | 'last',
): State | undefined {
  let found: State | undefined;
  for (const state of list) {
    if (state.letter !== letter || state.octave !== octave) continue;
    found = state;
    if (from === 'first') break;
  }
  return found;
}

function stateOf(member: LaneNote, before?: PitchState): PitchState {
  const sign = accidentalOf(member) ?? before?.sign;
  const { octave, alteration } = member;
  const { letter } = member.spelling;
  return sign === undefined ? { letter, octave, alteration } : { letter, octave, alteration, sign };
}

const noStates: readonly PitchState[] = [];
const noTies: readonly Pending[] = [];

/** What ties of an event lead on to. */
function tiedOn(members: readonly LaneNote[]): readonly Pending[] {
  let ties: Pending[] | undefined;
  for (const member of members) {
    if (member.tie === undefined) continue;
    ties ??= [];
    ties.push({ ...stateOf(member), source: member.source });
  }
  return ties ?? noTies;
}

function accidentalIn(key: readonly KeySign[], letter: Spelling['letter']): AccidentalSign | undefined {
  for (const sign of key) if (sign.letter === letter) return sign.accidental;
  return undefined;
}

const noteName = (p: PitchState): string => `${p.letter}${p.octave}`;

const exactName = ({ letter, alteration, octave }: PitchState): string =>
  `${letter}${signOf(alteration) ?? ''}${octave}`;

/** As it crosses a system end: where it was typed stays behind. */
const crossing = ({ source: _, ending: __, ...tie }: Pending): PitchState => tie;

class PitchPass {
  private readonly voices = new Map<number, VoiceState>();
  private readonly onStave: PitchState[][] = [];
  private bar = 0;
  /** Of a loose system, by stave: when its last barline stands. */
  private readonly barlines: Time[] = [];

  constructor(private readonly task: PitchTask) {
    for (let stave = 0; stave < task.staves; stave++) this.onStave.push([...(task.open?.accidentals[stave] ?? [])]);
    for (const { voice } of task.voices) {
      const carried = task.carried[voice];
      this.voices.set(voice, {
        pending: (carried?.ties ?? []).map((tie) => ({ ...tie, source: undefined })),
        last: carried?.last ?? [],
        lastMembers: undefined,
        lastKind: undefined,
        bar: 0,
        atEnding: carried?.atEnding,
        beam: undefined,
        underBeam: [],
      });
    }
  }

  run(): PitchResult {
    const heads = this.task.voices.map(({ voice, events, barlines }) => ({
      events,
      barlines,
      state: this.voices.get(voice) as VoiceState,
      next: 0,
    }));
    for (;;) {
      const head = first(heads);
      const event = head?.events[head.next];
      if (head === undefined || event === undefined) break;
      const { state } = head;
      this.enterBar(event.bar, state);
      const barline = head.barlines?.[head.next];
      if (barline !== undefined) this.enterOwnBar(event.stave, barline);
      if (event.kind === 'note') this.note(event, state);
      else this.silence(event, state);
      head.next++;
    }
    const voices = new Map<number, Left>();
    for (const [voice, { pending, last, atEnding }] of this.voices)
      voices.set(voice, { ties: pending.map(crossing), last, atEnding });
    return { voices, accidentals: this.onStave };
  }

  private enterBar(bar: number, state: VoiceState): void {
    if (bar > this.bar) {
      this.bar = bar;
      // To empty a list takes a while even where nothing is in it.
      for (const list of this.onStave) if (list.length > 0) list.length = 0;
    }
    if (bar === state.bar && !(bar === 0 && state.lastKind === undefined)) return;
    for (let b = state.bar + (state.lastKind === undefined ? 0 : 1); b <= bar; b++) {
      const { afterSpecial, ending } = this.task.barOf(b);
      if (afterSpecial) state.last = noStates;
      if (ending === 1) {
        state.atEnding = {
          ties: state.pending.map(crossing),
          last: state.last,
        };
      } else if (ending !== undefined && state.atEnding !== undefined) {
        // The barline after an ending leads back, so a tie out of it finds nothing.
        this.leadNowhere(state);
        state.pending = state.atEnding.ties.map((tie) => ({ ...tie, source: undefined, ending }));
        state.last = state.atEnding.last;
      }
    }
    state.bar = bar;
  }

  /** In a loose system each stave has its own barlines. */
  private enterOwnBar(stave: number, barline: Time): void {
    if (compare(barline, this.barlines[stave] ?? ZERO) <= 0) return;
    this.barlines[stave] = barline;
    this.onStave[stave]?.splice(0);
  }

  private leadNowhere(state: VoiceState, at?: Source): void {
    for (const tie of state.pending) {
      const source = tie.source ?? at;
      if (tie.ending !== undefined) this.notEntered(tie, source);
      else if (source !== undefined) this.task.report('tie-to-nothing', source, { note: noteName(tie) });
    }
  }

  private silence(event: LaneEvent, state: VoiceState): void {
    if (event.kind !== 'lost') this.leadNowhere(state, event.source);
    state.pending = noTies;
    state.last = noStates;
    state.lastMembers = undefined;
    state.lastKind = event.kind;
  }

  private note(event: LaneEvent, state: VoiceState): void {
    if (event.repeats !== undefined && !this.repeat(event, state)) return;
    const small = event.small !== undefined;
    let bound: PitchState[] | undefined;
    for (const member of event.members) {
      const held = this.member(event, member, state, small);
      if (held === undefined) continue;
      if (bound === undefined) bound = [held];
      else bound.push(held);
    }
    if (!small) {
      this.unmatched(event, state);
      state.pending = tiedOn(event.members);
      state.lastMembers = event.members;
    }
    state.last = bound ?? noStates;
    state.lastKind = 'note';
  }

  /** A lone `=` repeats every member of the event before it, tied; after a rest there is none, which is told. */
  private repeat(event: LaneEvent, state: VoiceState): boolean {
    const before = state.lastMembers;
    if (before === undefined) {
      if (state.lastKind !== undefined) this.task.report('repeat-of-nothing', event.source, {});
      event.kind = state.lastKind === 'rest' ? 'rest' : 'gap';
      state.pending = noTies;
      this.silence(event, state);
      return false;
    }
    const tied = before.filter((member) => member.tie !== undefined);
    if (tied.length > 0 && tied.length < before.length) {
      this.task.report('repeat-after-partial-tie', event.source, {});
    }
    const form = event.repeats === true ? undefined : event.repeats;
    if (form !== undefined) for (const member of before) member.tie ??= form;
    state.pending = tiedOn(before);
    const { source, marks, annotations } = event;
    // The signs of the first note are not drawn again.
    event.members = before.map((member, index) =>
      member.repeated(
        plainSpelling(member.spelling),
        source,
        index === 0 ? marks : noMarks,
        index === 0 ? annotations : noAnnotations,
      ),
    );
    event.stave = event.members[0]?.stave ?? event.stave;
    event.take({ marks: noMarks, annotations: noAnnotations });
    return true;
  }

  /** Gives the member its pitch; tells it where a written accidental, its own or one before it, made it. */
  private member(event: LaneEvent, member: LaneNote, state: VoiceState, small: boolean): PitchState | undefined {
    const { letter } = member.spelling;
    const signature = accidentalIn(this.task.keyAt(member.stave, event.onset), letter);
    const bySignature = signature === undefined ? 0 : ALTERATIONS[signature];
    const tie = small ? undefined : stateIn(state.pending, member, 'first');
    const chained = this.inForce(event, member, state);
    const inForce = tie ?? chained;
    const sign = accidentalOf(member);
    const before = inForce?.alteration ?? bySignature;
    const restated = sign === undefined || (inForce?.sign === sign && this.task.practice !== 'bar');
    member.alteration = restated ? before : altered(sign, before, this.task.practice);
    member.midi = midiOf({ letter, octave: member.octave, alteration: member.alteration });
    if (tie !== undefined) {
      state.pending = state.pending.filter((one) => one !== tie);
      member.tiedFrom = tie.alteration === member.alteration;
      // The same degree under another sign: without their signs the two would look alike.
      if (!member.tiedFrom) this.report('tie-other-pitch', tie, event, stateOf(member), exactName);
    }
    // An accidental on a small note binds nothing else; a small note without one repeats what is in force.
    if (small && sign !== undefined) return undefined;
    if (sign !== undefined) this.bind(event, member, state);
    const bound = sign !== undefined || chained !== undefined || (tie !== undefined && tie.alteration !== bySignature);
    return bound ? stateOf(member, inForce) : undefined;
  }

  private inForce(event: LaneEvent, member: LaneNote, state: VoiceState): PitchState | undefined {
    switch (this.task.practice) {
      case 'note':
        return stateIn(state.last, member, 'first');
      case 'group':
        return event.beam !== undefined && event.beam === state.beam
          ? stateIn(state.underBeam, member, 'last')
          : undefined;
      case 'bar':
        return stateIn(this.onStave[member.stave] ?? [], member, 'last');
    }
  }

  private bind(event: LaneEvent, member: LaneNote, state: VoiceState): void {
    if (this.task.practice === 'group') {
      if (event.beam !== state.beam || event.beam === undefined) state.underBeam = [];
      state.beam = event.beam;
      state.underBeam.push(stateOf(member));
    } else if (this.task.practice === 'bar') {
      const list = this.onStave[member.stave];
      if (list === undefined) return;
      const before = stateIn(list, member, 'first');
      if (before !== undefined) list.splice(list.indexOf(before), 1);
      list.push(stateOf(member));
    }
  }

  /** Ties that this event did not take up. */
  private unmatched(event: LaneEvent, state: VoiceState): void {
    for (const tie of state.pending) {
      if (tie.ending !== undefined) {
        this.notEntered(tie, event.source);
        continue;
      }
      const first = event.members[0];
      this.report('tie-other-pitch', tie, event, first && stateOf(first));
    }
  }

  /** The one tie that is drawn has its note in the first ending; a further one may go elsewhere. */
  private notEntered(tie: Pending, at: Source | undefined): void {
    const slots = { note: noteName(tie), ending: `${tie.ending}` };
    if (at !== undefined) this.task.report('tie-not-in-ending', at, slots);
  }

  private report(
    code: FindingCode,
    tie: Pending,
    event: LaneEvent,
    next: PitchState | undefined,
    name = noteName,
  ): void {
    const slots = { note: name(tie), next: next === undefined ? '' : name(next) };
    this.task.report(code, tie.source ?? event.source, slots);
  }
}

/** The written note without signs of its own, as a tie carries it on. */
function plainSpelling(spelling: Spelling): Spelling {
  if (spelling.accidental === undefined && spelling.editors === undefined && spelling.cautionary === undefined) {
    return spelling;
  }
  const { letter, octave } = spelling;
  return { text: letter, letter, ...(octave === undefined ? {} : { octave }), doubtful: false };
}

/** Where the next event stands: events go by onset, then by voice, each voice in its own order. */
function first<Head extends { readonly events: readonly LaneEvent[]; readonly next: number }>(
  heads: readonly Head[],
): Head | undefined {
  let found: Head | undefined;
  let event: LaneEvent | undefined;
  for (const head of heads) {
    const one = head.events[head.next];
    if (one === undefined || (event !== undefined && !isBefore(one, event))) continue;
    found = head;
    event = one;
  }
  return found;
}

const isBefore = (a: LaneEvent, b: LaneEvent): boolean => (a.bar - b.bar || compare(a.onset, b.onset)) < 0;

/** Gives every member its sounding pitch and finds what ties lead to. */
export const soundingPitch = (task: PitchTask): PitchResult => new PitchPass(task).run();
