/** Which key an auxiliary note is on: what the signature and the notes around it make of its degree. */
import { add, compare, subtract, type Time, toNumber } from '../../grammar/time';
import { ALTERATIONS } from '../../grammar/vocabulary/pitches';
import { endOf } from '../score/clock';
import type { PerformedEvent, SoundingPitch } from '../score/performance';
import type { Bar } from '../score/score';
import type { Step } from './atoms';
import type { BorneSign } from './bearing';
import { degreeOf, pitchOn, semitonesBetween } from './degrees';
import { alterationIn, type DrawnPitch, type Passage } from './passage';

/** The note that a sign stands at. */
export interface Bearer {
  readonly pitch: SoundingPitch;
  readonly voice: number;
  readonly stave: number;
  readonly onset: Time;
  readonly end: Time;
  readonly bar: Bar;
  /** The length of a beat there. */
  readonly beat: Time;
}

export interface Auxiliary {
  readonly pitch: SoundingPitch;
  /** The alteration in which another voice sounds this degree, where no choice avoids both that clash and an augmented second. */
  readonly against: number | undefined;
}

/** An auxiliary by its step and the accidental that it is forced to have. */
interface Found {
  readonly step: number;
  readonly sign: Step['accidental'];
  readonly auxiliary: Auxiliary;
}

/** The pitches of one sign: a step is the same key wherever it comes in the sign. */
export class Auxiliaries {
  private readonly main: Auxiliary;
  /** Found so far: few, for a sign has few notes. */
  private readonly known: Found[] = [];

  /** @param forced the accidentals that stand at the sign, each for one of its steps; they alter the auxiliary only */
  constructor(
    private readonly passage: Passage,
    private readonly bearer: Bearer,
    private readonly forced: readonly Step[],
  ) {
    this.main = { pitch: bearer.pitch, against: undefined };
  }

  at({ step, accidental }: Step): Auxiliary {
    if (step === 0 && accidental === undefined) return this.main;
    const sign = accidental ?? this.forced.find((one) => one.step === step)?.accidental;
    const known = this.known.find((one) => one.step === step && one.sign === sign);
    if (known !== undefined) return known.auxiliary;
    const auxiliary = this.find(step, sign);
    this.known.push({ step, sign, auxiliary });
    return auxiliary;
  }

  private find(step: number, accidental: Step['accidental']): Auxiliary {
    const degree = degreeOf(this.bearer.pitch) + step;
    if (accidental !== undefined) return { pitch: pitchOn(degree, ALTERATIONS[accidental]), against: undefined };
    const plain = pitchOn(degree, this.leading(step) ?? this.alterationOf(degree));
    const inner = this.at({ step: step - Math.sign(step) }).pitch;
    const smooth = withoutAugmentedSecond(plain, inner);
    return this.withoutFalseRelation(smooth, inner);
  }

  // ── signature and neighbours ──

  /**
   * Accidentals of the bar, of the same voice first, then of any, then of the next bar's first beat, then the signature. What
   * other voices bring in the next bar does not act back where the bar before has it otherwise: the third of a final is raised
   * when it comes.
   */
  private alterationOf(degree: number): number {
    const { letter, octave } = pitchOn(degree, 0);
    const { bar, voice, beat, stave, onset } = this.bearer;
    const here = this.passage.drawnIn(bar.index, letter);
    if (here.length > 0) return this.nearest(ofVoice(here, voice) ?? here).pitch.alteration;
    const lastOfBeat = add(endOf(bar), beat);
    const next = this.passage.drawnIn(bar.index + 1, letter).filter((one) => compare(one.onset, lastOfBeat) < 0);
    const before = this.passage.drawnIn(bar.index - 1, letter);
    const acting =
      ofVoice(next, voice) ??
      next.filter(({ pitch }) => before.every((one) => one.pitch.alteration === pitch.alteration));
    return acting.length === 0
      ? alterationIn(this.passage.keyAt(stave, onset), letter, octave)
      : this.nearest(acting).pitch.alteration;
  }

  /** The nearest in time; of two the earlier. */
  private nearest(all: readonly DrawnPitch[]): DrawnPitch {
    const distance = ({ onset }: DrawnPitch): number => Math.abs(toNumber(subtract(onset, this.bearer.onset)));
    return all.reduce((best, one) => (distance(one) < distance(best) ? one : best));
  }

  /** The note below is a leading note where one stands in this bar, the one before or the next, and its voice has it no other way here. */
  private leading(step: number): number | undefined {
    if (step !== -1) return undefined;
    const { pitch, bar, voice } = this.bearer;
    const below = pitchOn(degreeOf(pitch) - 1, 0);
    const alteration = pitch.midi - 1 - below.midi;
    if (Math.abs(alteration) > 2) return undefined;
    const isLeading = (one: DrawnPitch): boolean => one.pitch.alteration === alteration;
    const own = ofVoice(this.passage.drawnIn(bar.index, below.letter), voice);
    if (own !== undefined && !own.some(isLeading)) return undefined;
    const isNear = NEAR_BARS.some((away) => this.passage.drawnIn(bar.index + away, below.letter).some(isLeading));
    return isNear ? alteration : undefined;
  }

  // ── what sounds with it ──

  /**
   * What another voice sounds in its other inflection goes before the signature, but not before what the voice itself has in
   * the bar, nor does it make an augmented second.
   */
  private withoutFalseRelation(smooth: SoundingPitch, inner: SoundingPitch): Auxiliary {
    const { bar, onset, end, voice } = this.bearer;
    const isOtherwise = ({ voice: other, pitch }: PerformedEvent): boolean =>
      other !== voice && pitch?.letter === smooth.letter && pitch.alteration !== smooth.alteration;
    const [against] = this.passage.soundingIn(bar, onset, end, isOtherwise);
    if (against?.pitch === undefined) return { pitch: smooth, against: undefined };
    const yielding = pitchOn(degreeOf(smooth), against.pitch.alteration);
    const isOwn = this.passage.drawnIn(bar.index, smooth.letter).some((one) => one.voice === voice);
    const yields = !isOwn && withoutAugmentedSecond(yielding, inner).midi === yielding.midi;
    return { pitch: yields ? yielding : smooth, against: yields ? undefined : against.pitch.alteration };
  }
}

/** Those of a voice; undefined where there are none. */
function ofVoice(drawn: readonly DrawnPitch[], voice: number): readonly DrawnPitch[] | undefined {
  if (!drawn.some((one) => one.voice === voice)) return undefined;
  return drawn.filter((one) => one.voice === voice);
}

/** A bar and those beside it. */
const NEAR_BARS = [-1, 0, 1];

/**
 * An accidental directly after a sign decides the auxiliary that is undecided, or alters the first, or, where that has it
 * already, the next; after the second of two signs that are one it alters what that sign adds, the last.
 */
export function forcedBy(signs: readonly BorneSign[], steps: readonly Step[], plain: Auxiliaries): Step[] {
  const left = [...new Set(steps.map(({ step }) => step).filter((step) => step !== 0))];
  return signs.flatMap(({ mark }, index) =>
    mark.accidentals.flatMap(({ form: { accidental } }): Step[] => {
      if (accidental === undefined) return [];
      const ordered = index === 0 ? left : [...left].reverse();
      const alters = (step: number): boolean => plain.at({ step }).pitch.alteration !== ALTERATIONS[accidental];
      const step =
        ordered.find((one) => plain.at({ step: one }).against !== undefined) ?? ordered.find(alters) ?? ordered[0];
      if (step === undefined) return [];
      left.splice(left.indexOf(step), 1);
      return [{ step, accidental }];
    }),
  );
}

/** Brought near the note beside it until the two are no more than a tone apart, and not on one key. */
function withoutAugmentedSecond(outer: SoundingPitch, inner: SoundingPitch): SoundingPitch {
  let pitch = outer;
  const up = degreeOf(outer) > degreeOf(inner);
  while (semitonesBetween(pitch, inner) > 2) pitch = pitchOn(degreeOf(pitch), pitch.alteration + (up ? -1 : 1));
  while (up ? pitch.midi <= inner.midi : pitch.midi >= inner.midi)
    pitch = pitchOn(degreeOf(pitch), pitch.alteration + (up ? 1 : -1));
  return pitch;
}
