/**
 * What the signs and small notes of a performance mean by a table: every one becomes notes with exact times.
 *
 * A step from performance to performance. The value of a sign is the performed value of its note; what its notes take they
 * take from it, or from the note before, so that time is conserved.
 */
import { isNegative, subtract, type Time } from '../../grammar/time';
import { Clocks, endOf, secondsOf } from '../score/clock';
import {
  hasTime,
  type Performance,
  type PerformedEvent,
  type PerformedPiece,
  performedOnset,
} from '../score/performance';
import { flowOf } from '../score/unmeasured';
import { isSnapped } from './ahead';
import { type BorneSign, signsOf } from './bearing';
import { SHORTEST_FILLED, type Spreading, spread } from './chords';
import { isUpbeat } from './conditions';
import { rowsAt } from './found';
import { freeingKeys } from './keys';
import { Passage } from './passage';
import { Pieces } from './pieces';
import { gridOf } from './place';
import { Remarks } from './remarks';
import type { FoundRow, PlayedRow } from './rows';
import { recipeSaid } from './said';
import { type RealiseOptions, realisedBy, type Signed, type SignedPassage, SignPlayer } from './signPlayer';
import { playSmall, smallGroups } from './smallNotes';
import { playableRow } from './told';

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
    const clocks = new Clocks(performed.piece, options, index === 0, flowOf(performed.piece, options.pace).clocks);
    const realiser = new Realiser(performed, clocks, options, remarks, voiceName);
    pieces.push({ piece: performed.piece, events: yield* realiser.realising() });
  }
  return { ...performance, pieces, problems: [...performance.problems, ...remarks.problems] };
}

class Realiser implements SignedPassage {
  readonly passage: Passage;
  readonly pieces = new Pieces();
  readonly signs = new Map<PerformedEvent, readonly BorneSign[]>();
  readonly smallBefore = new Map<PerformedEvent, PerformedEvent>();
  readonly smallAfter = new Map<PerformedEvent, readonly PerformedEvent[]>();
  private readonly player: SignPlayer;

  constructor(
    private readonly performed: PerformedPiece,
    readonly clocks: Clocks,
    private readonly options: RealiseOptions,
    readonly remarks: Remarks,
    private readonly voiceName: (voice: number) => string,
  ) {
    this.passage = new Passage(performed);
    this.player = new SignPlayer(this, options);
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
      if (how === undefined) for (const event of notes) this.player.play({ event, signs: found.signs }, row);
      else if (notes.length < 2) this.remarks.ofSign(sign, 'sign-impossible', {});
      else if (how.filled && this.isShort(sign, notes)) continue;
      else this.spread(notes, how, found.signs, row);
    }
  }

  /** A third too short for a note in passing, which is told. */
  private isShort(sign: BorneSign, [first]: readonly PerformedEvent[]): boolean {
    if (first === undefined) return true;
    const clock = this.player.clock(first.onset, [sign]);
    if (secondsOf(clock, first.duration) >= SHORTEST_FILLED) return false;
    this.player.tooShort(sign, clock, first.duration);
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
    const clock = this.player.clock(first.onset, signs);
    const spreading: Spreading = {
      notes,
      how,
      clock,
      final: notes.every((note) => this.passage.after(note) === undefined),
      upbeat: isUpbeat(this.passage, first, clock),
      realised: realisedBy(signs, row),
      between: (lower) => this.player.auxiliaries(lower, lower, []).at({ step: 1 }).pitch,
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
      else this.player.play({ event, signs: found.signs }, row);
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
}

/** The signs of such a kind: mostly a note has but one sign, so no other list is made where all are. */
const only = (signs: readonly BorneSign[], isMeant: (sign: BorneSign) => boolean): readonly BorneSign[] =>
  signs.every(isMeant) ? signs : signs.filter(isMeant);
