/**
 * What the signs and small notes of a performance mean by a table: every one becomes notes with exact times.
 *
 * A step from performance to performance. The value of a sign is the performed value of its note; what its notes take they
 * take from it, or from the note before, so that time is conserved.
 */
import { add, equal, isNegative, isZero, subtract, type Time, ZERO } from '../../grammar/time';
import type { Recipe } from '../../grammar/tree';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { type Clock, Clocks, endOf, type Opening, secondsOf } from '../score/clock';
import {
  hasTime,
  type Performance,
  type PerformedEvent,
  type PerformedPiece,
  performedOnset,
  type Realised,
  type SoundingPitch,
} from '../score/performance';
import { isSnapped } from './ahead';
import { type Slice, type Step, stepsIn, sumOf } from './atoms';
import { Auxiliaries, type Auxiliary, forcedBy } from './auxiliary';
import { type BorneSign, signsOf } from './bearing';
import { SHORTEST_FILLED, type Spreading, spread } from './chords';
import { placeOf } from './circumstances';
import { isSlurredFromAbove, isUpbeat } from './conditions';
import { accidentalFixes } from './fixes';
import { rowsAt } from './found';
import { freeingKeys } from './keys';
import { type Layout, layOut } from './layout';
import { Passage } from './passage';
import { type Piece, Pieces } from './pieces';
import { gridOf, type Place } from './place';
import { Remarks } from './remarks';
import type { FoundRow, PlayedRow, PlayedTable } from './rows';
import { isDrawnAfter, recipeSaid } from './said';
import { playSmall, smallGroups } from './smallNotes';
import { layOutSuffixed, stepsOf } from './suffix';
import { playableRow } from './told';

export interface RealiseOptions extends Opening {
  readonly table: PlayedTable;
  /** Exact, or in values that can be printed. */
  readonly form: 'play' | 'print';
}

/**
 * The performance with its signs and small notes realised, a piece of work at a time; what could not be is played plain, and
 * a problem says so.
 */
export function* realisingSigns(performance: Performance, options: RealiseOptions): Generator<undefined, Performance> {
  const remarks = new Remarks(performance.score.environment);
  const { voices } = performance.score.environment;
  const voiceName = (voice: number): string => voices[voice]?.name ?? '';
  const pieces: PerformedPiece[] = [];
  for (const [index, performed] of performance.pieces.entries()) {
    const clocks = new Clocks(performed.piece, options, index === 0);
    const realiser = new Realiser(performed, clocks, options, remarks, voiceName);
    pieces.push({ piece: performed.piece, events: yield* realiser.realising() });
  }
  return { ...performance, pieces, problems: [...performance.problems, ...remarks.problems] };
}

/** The signs of a note or chord and its event. */
interface Signed {
  readonly event: PerformedEvent;
  readonly signs: readonly BorneSign[];
}

class Realiser {
  private readonly passage: Passage;
  private readonly pieces = new Pieces();
  /** The notes that bear signs, in the order of the performance. */
  private readonly signs = new Map<PerformedEvent, readonly BorneSign[]>();
  /** The last small note before a main note. */
  private readonly smallBefore = new Map<PerformedEvent, PerformedEvent>();
  /** The small notes at the end of a main note. */
  private readonly smallAfter = new Map<PerformedEvent, readonly PerformedEvent[]>();

  constructor(
    private readonly performed: PerformedPiece,
    private readonly clocks: Clocks,
    private readonly options: RealiseOptions,
    private readonly remarks: Remarks,
    private readonly voiceName: (voice: number) => string,
  ) {
    this.passage = new Passage(performed);
  }

  *realising(): Generator<undefined, readonly PerformedEvent[]> {
    const { passage, pieces, clocks, signs, remarks, voiceName } = this;
    yield;
    for (const event of this.performed.events) {
      const borne = signsOf(event);
      if (borne.length > 0 && hasTime(event)) signs.set(event, borne);
    }
    yield;
    this.smallNotes();
    yield;
    this.chords(this.signed(true));
    for (const one of this.signed(false)) {
      yield;
      this.note(one);
    }
    // In print a held note stands as it is written, whoever strikes its key.
    if (this.options.form === 'play') yield* freeingKeys({ passage, pieces, clocks, signs, remarks, voiceName });
    yield;
    return yield* this.pieces.performing(this.performed.events);
  }

  /** The notes with their signs for the chord, or with those for themselves. */
  private signed(forChord: boolean): Signed[] {
    const signed: Signed[] = [];
    for (const [event, borne] of this.signs) {
      const signs = only(borne, (sign) => sign.forChord === forChord);
      if (signs.length > 0) signed.push({ event, signs });
    }
    return signed;
  }

  // ── small notes ──

  private smallNotes(): void {
    const { table } = this.options;
    for (const group of smallGroups(this.passage)) {
      if (!hasTime(group.main)) continue;
      const clock = this.clocks.at(group.main.onset);
      const grid = this.options.form === 'print' ? gridOf(group.main.duration) : undefined;
      playSmall(group, { passage: this.passage, pieces: this.pieces, table, clock, grid });
      const last = group.notes.at(-1);
      if (group.after) this.smallAfter.set(group.main, group.notes);
      else if (last !== undefined) this.smallBefore.set(group.main, last);
    }
  }

  // ── chords ──

  private chords(signed: readonly Signed[]): void {
    const done = new Set<BorneSign>();
    for (const { event, signs } of signed) {
      if (signs.some((sign) => done.has(sign))) continue;
      const joined = signs.some(({ mark }) => mark.form.linked) ? this.joinedWith(event, signed) : [{ event, signs }];
      for (const one of joined) for (const sign of one.signs) done.add(sign);
      const notes = joined.flatMap((one) =>
        this.passage.momentOf(one.event).events.filter(({ kind }) => kind === 'note'),
      );
      this.chord({ event, signs }, [...new Set(notes)]);
    }
  }

  /** Where one sign goes across lanes: all that bear it at this moment. */
  private joinedWith({ onset }: PerformedEvent, signed: readonly Signed[]): readonly Signed[] {
    return signed.filter(
      (one) => subtract(one.event.onset, onset).n === 0 && one.signs.some(({ mark }) => mark.form.linked),
    );
  }

  private chord(signed: Signed, notes: readonly PerformedEvent[]): void {
    for (const found of this.rows(signed)) {
      const row = playableRow(found, this.options.table, this.remarks);
      const [sign] = found.signs;
      if (row === undefined || sign === undefined) continue;
      const how = recipeSaid(found.signs, row).phrases.find(({ spread: one }) => one !== undefined)?.spread;
      if (how === undefined) for (const event of notes) this.play({ event, signs: found.signs }, row);
      else if (notes.length < 2) this.remarks.ofSign(sign, 'sign-impossible', {});
      else if (how.filled && this.isShort(sign, notes)) continue;
      else this.spread(notes, how, found.signs, row);
    }
  }

  /** A third too short for a note in passing, which is told. */
  private isShort(sign: BorneSign, [first]: readonly PerformedEvent[]): boolean {
    if (first === undefined) return true;
    const clock = this.clock(first.onset, [sign]);
    if (secondsOf(clock, first.duration) >= SHORTEST_FILLED) return false;
    this.tooShort(sign, clock, first.duration);
    return true;
  }

  private spread(
    notes: readonly PerformedEvent[],
    how: Spreading['how'],
    signs: readonly BorneSign[],
    row: PlayedRow,
  ): void {
    const [first] = notes;
    if (first === undefined) return;
    const clock = this.clock(first.onset, signs);
    const spreading: Spreading = {
      notes,
      how,
      clock,
      final: notes.every((note) => this.passage.after(note) === undefined),
      upbeat: isUpbeat(this.passage, first, clock),
      realised: realisedBy(signs, row),
      between: (lower) => this.auxiliaries(lower, lower, []).at({ step: 1 }).pitch,
      grid: this.options.form === 'print' ? gridOf(first.duration) : undefined,
    };
    spread(spreading, this.pieces);
  }

  // ── notes ──

  private note({ event, signs }: Signed): void {
    event.from.forEach((written, index) => {
      const here = only(signs, (sign) => sign.written === written);
      if (here.length === 0) return;
      if (index > 0) this.split(event, performedOnset(event, index));
      this.written({ event, signs: here });
    });
  }

  /** The signs of one of the notes that are tied together. */
  private written(signed: Signed): void {
    const { event } = signed;
    for (const found of this.rows(signed)) {
      const row = playableRow(found, this.options.table, this.remarks);
      if (row === undefined) continue;
      if (isSnapped(this.passage, event)) for (const sign of found.signs) this.remarks.ofSign(sign, 'sign-snapped', {});
      else this.play({ event, signs: found.signs }, row);
    }
  }

  /** A sign at a later one of tied notes: the note stands until then. */
  private split(event: PerformedEvent, at: Time): void {
    const pieces = this.pieces.of(event);
    const last = pieces.at(-1);
    if (last === undefined) return;
    const [before, after] = [subtract(at, last.onset), subtract(endOf(last), at)];
    if (isNegative(before) || isNegative(after)) return;
    this.pieces.set(event, [
      ...pieces.slice(0, -1),
      { ...last, duration: before },
      { ...last, onset: at, duration: after },
    ]);
  }

  private rows({ event, signs }: Signed): FoundRow<BorneSign>[] {
    return rowsAt({ passage: this.passage, table: this.options.table, event }, signs);
  }

  // ── one sign on one note ──

  /** Plays a sign on what is left of its note: after a small note, another sign, or its turn in a chord, before a cut. */
  private play(signed: Signed, row: PlayedRow): void {
    const { event, signs } = signed;
    const [sign] = signs;
    const pieces = this.pieces.of(event);
    const index = pieces.findLastIndex(({ pitch }) => pitch !== undefined);
    const target = pieces[index];
    if (sign === undefined || target === undefined) return;
    const recipe = recipeSaid(signs, row);
    const steps = stepsIn(recipe);
    const auxiliaries = this.auxiliaries(event, target, this.forced(signed, target, steps));
    const leans = recipe.phrases.find(({ leaned }) => leaned)?.steps[0];
    const small = leans && auxiliaries.at(leans).pitch;
    const suffixed = this.suffixed(signed, target, recipe, small);
    const place = this.placeOf(signed, target, recipe, small);
    const layout = suffixed?.layout ?? this.layout(signed, target, recipe, place);
    if (layout === undefined) {
      this.tooShort(sign, place.clock, place.length);
      return;
    }
    const begun = this.begun(event, target, layout, auxiliaries);
    const played = piecesOf(begun.slices, begun.onset, auxiliaries, realisedBy(signs, row));
    if (suffixed === undefined) this.pieces.replace(event, index, played);
    else this.replaceWithSuffix(event, index, played, suffixed.notes);
    const undecided = steps.find((step) => auxiliaries.at(step).against !== undefined);
    if (undecided !== undefined) this.tellUndecided(sign, auxiliaries.at(undecided));
  }

  /** The last of the notes that are played stand for small notes. */
  private replaceWithSuffix(
    event: PerformedEvent,
    index: number,
    played: readonly Piece[],
    suffix: readonly PerformedEvent[],
  ): void {
    const own = played.slice(0, played.length - suffix.length);
    this.pieces.replace(event, index, own);
    for (const [i, note] of suffix.entries()) this.pieces.set(note, played.slice(own.length + i, own.length + i + 1));
  }

  private tellUndecided(sign: BorneSign, { pitch, against = pitch.alteration }: Auxiliary): void {
    const fixes = accidentalFixes(sign, [pitch.alteration, against]);
    this.remarks.ofSign(sign, 'auxiliary-undecided', { pitch: pitchText(pitch) }, fixes);
  }

  /** A trill with the small notes written out at its end, which are its suffix. */
  private suffixed(
    signed: Signed,
    target: Piece,
    recipe: Recipe,
    small: SoundingPitch | undefined,
  ): Suffixed | undefined {
    const { event } = signed;
    const notes = this.smallAfter.get(event);
    if (notes === undefined) return undefined;
    const [first, last] = [notes[0], notes.at(-1)].map((note) => note && this.pieces.of(note).at(-1));
    if (first === undefined || last === undefined || event.pitch === undefined) return undefined;
    if (!equal(first.onset, endOf(target))) return undefined;
    const whole = { ...target, duration: subtract(endOf(last), target.onset) };
    const steps = stepsOf(notes, event.pitch);
    const layout = layOutSuffixed(recipe, steps, this.placeOf(signed, whole, recipe, small));
    return layout && { layout, notes };
  }

  /** What the sign plays; where no note before can give it the time before the beat, it begins on the beat, and that is told. */
  private layout({ event, signs }: Signed, target: Piece, recipe: Recipe, place: Place): Layout | undefined {
    const layout = layOut(recipe, place, isDrawnAfter(signs));
    const [sign] = signs;
    if (layout === undefined || sign === undefined || this.makesRoom(event, target, layout)) return layout;
    const onBeat = layOut({ ...recipe, start: 'on beat' }, place, isDrawnAfter(signs));
    if (onBeat !== undefined) this.remarks.ofSign(sign, 'sign-on-beat', {});
    return onBeat;
  }

  /** Takes from the note before what is played before the beat; after a small note, or another sign, it is out of reach. */
  private makesRoom(event: PerformedEvent, target: Piece, layout: Layout): boolean {
    const early = earlyIn(layout);
    if (isZero(early)) return true;
    const before = this.passage.before(event)?.events.at(-1);
    const isFirst = equal(target.onset, event.onset) && this.pieces.firstOf(event)?.onset === target.onset;
    return isFirst && before !== undefined && this.pieces.shorten(before, early);
  }

  /** Where the sign begins: before the beat, on it, or, if its first note sounds already, after that. */
  private begun(event: PerformedEvent, target: Piece, layout: Layout, auxiliaries: Auxiliaries): Begun {
    const { before, slices } = layout;
    const early = earlyIn(layout);
    if (!isZero(early)) return { onset: subtract(target.onset, early), slices: [...before, ...slices] };
    return this.tiedIn(event, target, slices, auxiliaries) ?? { onset: target.onset, slices };
  }

  /** The first note of the sign is the upper neighbour that sounds already, slurred or leaning: it is not struck again. */
  private tiedIn(
    event: PerformedEvent,
    target: Piece,
    slices: readonly Slice[],
    auxiliaries: Auxiliaries,
  ): Begun | undefined {
    const [first] = slices;
    if (first?.step === undefined || first.step.step <= 0 || slices.length === 1) return undefined;
    const before = this.soundingBefore(event);
    if (before === undefined) return undefined;
    const last = this.pieces.of(before).at(-1);
    const sounds = last?.pitch?.midi === auxiliaries.at(first.step).pitch.midi;
    if (!sounds || !equal(endOf(last), target.onset)) return undefined;
    const onset = add(target.onset, first.length);
    this.pieces.lengthen(before, onset);
    return { onset, slices: slices.slice(1) };
  }

  /** The note from which a slur leads to this one, or the small note before it. */
  private soundingBefore(event: PerformedEvent): PerformedEvent | undefined {
    const small = this.smallBefore.get(event);
    if (small !== undefined) return small;
    return isSlurredFromAbove(this.passage, event) ? this.passage.before(event)?.events.at(-1) : undefined;
  }

  private tooShort(sign: BorneSign, clock: Clock, length: Time): void {
    const ms = Math.round(secondsOf(clock, length) * 1000);
    this.remarks.ofSign(sign, 'sign-too-short', { ms, tempo: clock.words });
  }

  // ── what a sign finds ──

  private clock(at: Time, [sign]: readonly BorneSign[]): Clock {
    const clock = this.clocks.at(at);
    if (clock.assumed && sign !== undefined) this.remarks.once(sign, 'tempo-assumed');
    return clock;
  }

  private placeOf({ event, signs }: Signed, target: Piece, recipe: Recipe, small: SoundingPitch | undefined): Place {
    const { passage, signs: bearers } = this;
    const { table, form } = this.options;
    const clock = this.clock(target.onset, signs);
    const beat = this.clocks.beatAt(target.onset);
    return placeOf({ passage, event, target, clock, beat, recipe, small, table, bearers, print: form === 'print' });
  }

  /** What accidentals at the signs make of their steps. */
  private forced({ event, signs }: Signed, target: Piece, steps: readonly Step[]): readonly Step[] {
    if (signs.every(({ mark }) => mark.accidentals.length === 0)) return NOTHING;
    return forcedBy(signs, steps, this.auxiliaries(event, target, NOTHING));
  }

  private auxiliaries(event: PerformedEvent, target: Lasting, forced: readonly Step[]): Auxiliaries {
    const { bar } = event.from[0].placed;
    const { pitch, voice, stave } = event;
    if (pitch === undefined) throw new RangeError('a sign stands at a note');
    const { onset } = target;
    const bearer = { pitch, voice, stave, onset, end: endOf(target), bar, beat: this.clocks.beatAt(onset) };
    return new Auxiliaries(this.passage, bearer, forced);
  }
}

type Lasting = Pick<Piece, 'onset' | 'duration'>;

interface Suffixed {
  readonly layout: Layout;
  readonly notes: readonly PerformedEvent[];
}

interface Begun {
  readonly onset: Time;
  readonly slices: readonly Slice[];
}

const NOTHING: readonly never[] = [];

/** The signs of such a kind: mostly a note has but one sign, so no other list is made where all are. */
const only = (signs: readonly BorneSign[], isMeant: (sign: BorneSign) => boolean): readonly BorneSign[] =>
  signs.every(isMeant) ? signs : signs.filter(isMeant);

const earlyIn = ({ before }: Layout): Time => (before.length === 0 ? ZERO : sumOf(before.map(({ length }) => length)));

const realisedBy = (signs: readonly BorneSign[], { table, label }: PlayedRow): Realised => ({
  sign: signs.map(({ shapes }) => shapes.join('+')).join('+'),
  table,
  row: label,
});

function piecesOf(slices: readonly Slice[], begin: Time, auxiliaries: Auxiliaries, realised: Realised): Piece[] {
  let onset = begin;
  return slices.map(({ step, length }) => {
    const piece = { pitch: step && auxiliaries.at(step).pitch, onset, duration: length, realised };
    onset = add(onset, length);
    return piece;
  });
}
