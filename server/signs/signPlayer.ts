/** How one sign is played on one note: when it begins, what its notes are, and whom they take their time from. */
import { add, equal, isZero, subtract, type Time, ZERO } from '../../grammar/time';
import type { Recipe } from '../../grammar/tree';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { type Clock, type Clocks, endOf, type Opening, secondsOf } from '../score/clock';
import type { PerformedEvent, Realised, SoundingPitch } from '../score/performance';
import { type Slice, type Step, stepsIn, sumOf } from './atoms';
import { Auxiliaries, type Auxiliary, forcedBy } from './auxiliary';
import type { BorneSign } from './bearing';
import { placeOf } from './circumstances';
import { isSlurredFromAbove } from './conditions';
import { accidentalFixes } from './fixes';
import { type Layout, layOut } from './layout';
import type { Passage } from './passage';
import type { Piece, Pieces } from './pieces';
import type { Place } from './place';
import type { Remarks } from './remarks';
import type { PlayedRow, PlayedTable } from './rows';
import { isDrawnAfter, recipeSaid } from './said';
import { layOutSuffixed, stepsOf } from './suffix';

export interface RealiseOptions extends Opening {
  readonly table: PlayedTable;
  /** Exact, or in values that can be printed. */
  readonly form: 'play' | 'print';
}

/** The signs of a note or chord and its event. */
export interface Signed {
  readonly event: PerformedEvent;
  readonly signs: readonly BorneSign[];
}

/** A passage whose signs are played. */
export interface SignedPassage {
  readonly passage: Passage;
  readonly pieces: Pieces;
  readonly clocks: Clocks;
  readonly remarks: Remarks;
  /** The notes that bear signs, in the order of the performance. */
  readonly signs: ReadonlyMap<PerformedEvent, readonly BorneSign[]>;
  /** The last small note before a main note. */
  readonly smallBefore: ReadonlyMap<PerformedEvent, PerformedEvent>;
  /** The small notes at the end of a main note. */
  readonly smallAfter: ReadonlyMap<PerformedEvent, readonly PerformedEvent[]>;
}

/** Plays the signs of a passage, one at a time on one note at a time. */
export class SignPlayer {
  constructor(
    private readonly music: SignedPassage,
    private readonly options: RealiseOptions,
  ) {}

  /** Plays a sign on what is left of its note: after a small note, another sign, or its turn in a chord, before a cut. */
  play(signed: Signed, row: PlayedRow): void {
    const { event, signs } = signed;
    const [sign] = signs;
    const pieces = this.music.pieces.of(event);
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
    if (suffixed === undefined) this.music.pieces.replace(event, index, played);
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
    this.music.pieces.replace(event, index, own);
    for (const [i, note] of suffix.entries())
      this.music.pieces.set(note, played.slice(own.length + i, own.length + i + 1));
  }

  private tellUndecided(sign: BorneSign, { pitch, against = pitch.alteration }: Auxiliary): void {
    const fixes = accidentalFixes(sign, [pitch.alteration, against]);
    this.music.remarks.ofSign(sign, 'auxiliary-undecided', { pitch: pitchText(pitch) }, fixes);
  }

  /** A trill with the small notes written out at its end, which are its suffix. */
  private suffixed(
    signed: Signed,
    target: Piece,
    recipe: Recipe,
    small: SoundingPitch | undefined,
  ): Suffixed | undefined {
    const { event } = signed;
    const notes = this.music.smallAfter.get(event);
    if (notes === undefined) return undefined;
    const [first, last] = [notes[0], notes.at(-1)].map((note) => note && this.music.pieces.of(note).at(-1));
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
    if (onBeat !== undefined) this.music.remarks.ofSign(sign, 'sign-on-beat', {});
    return onBeat;
  }

  /** Takes from the note before what is played before the beat; after a small note, or another sign, it is out of reach. */
  private makesRoom(event: PerformedEvent, target: Piece, layout: Layout): boolean {
    const early = earlyIn(layout);
    if (isZero(early)) return true;
    const before = this.music.passage.before(event)?.events.at(-1);
    const isFirst = equal(target.onset, event.onset) && this.music.pieces.firstOf(event)?.onset === target.onset;
    return isFirst && before !== undefined && this.music.pieces.shorten(before, early);
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
    const last = this.music.pieces.of(before).at(-1);
    const sounds = last?.pitch?.midi === auxiliaries.at(first.step).pitch.midi;
    if (!sounds || !equal(endOf(last), target.onset)) return undefined;
    const onset = add(target.onset, first.length);
    this.music.pieces.lengthen(before, onset);
    return { onset, slices: slices.slice(1) };
  }

  /** The note from which a slur leads to this one, or the small note before it. */
  private soundingBefore(event: PerformedEvent): PerformedEvent | undefined {
    const small = this.music.smallBefore.get(event);
    if (small !== undefined) return small;
    return isSlurredFromAbove(this.music.passage, event) ? this.music.passage.before(event)?.events.at(-1) : undefined;
  }

  /** Tells that a sign is not played. */
  tooShort(sign: BorneSign, clock: Clock, length: Time): void {
    const ms = Math.round(secondsOf(clock, length) * 1000);
    this.music.remarks.ofSign(sign, 'sign-too-short', { ms, tempo: clock.words });
  }

  // ── what a sign finds ──

  /** The clock of a moment; where its tempo is assumed, that is told once. */
  clock(at: Time, [sign]: readonly BorneSign[]): Clock {
    const clock = this.music.clocks.at(at);
    if (clock.assumed && sign !== undefined) this.music.remarks.once(sign, 'tempo-assumed');
    return clock;
  }

  private placeOf({ event, signs }: Signed, target: Piece, recipe: Recipe, small: SoundingPitch | undefined): Place {
    const { passage, signs: bearers, clocks } = this.music;
    const { table, form } = this.options;
    const clock = this.clock(target.onset, signs);
    const beat = clocks.beatAt(target.onset);
    return placeOf({ passage, event, target, clock, beat, recipe, small, table, bearers, print: form === 'print' });
  }

  /** What accidentals at the signs make of their steps. */
  private forced({ event, signs }: Signed, target: Piece, steps: readonly Step[]): readonly Step[] {
    if (signs.every(({ mark }) => mark.accidentals.length === 0)) return NOTHING;
    return forcedBy(signs, steps, this.auxiliaries(event, target, NOTHING));
  }

  /** The neighbours of what is left of a note. @param forced steps whose accidentals the sign itself says */
  auxiliaries(event: PerformedEvent, target: Lasting, forced: readonly Step[]): Auxiliaries {
    const { bar } = event.from[0].placed;
    const { pitch, voice, stave } = event;
    if (pitch === undefined) throw new RangeError('a sign stands at a note');
    const { onset } = target;
    const bearer = { pitch, voice, stave, onset, end: endOf(target), bar, beat: this.music.clocks.beatAt(onset) };
    return new Auxiliaries(this.music.passage, bearer, forced);
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

const earlyIn = ({ before }: Layout): Time => (before.length === 0 ? ZERO : sumOf(before.map(({ length }) => length)));

/** How the notes of a sign say where they come from. */
export const realisedBy = (signs: readonly BorneSign[], { table, label }: PlayedRow): Realised => ({
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
