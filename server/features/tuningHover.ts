/** How a note sounds in the tuning of its reading: frequency, cents, and the purity of what sounds with it. */
import { add, compare } from '../../grammar/time';
import type { Pitch } from '../../grammar/vocabulary/pitches';
import { statedTuningOf } from '../readings/tunings';
import { helmholtz } from '../score/pitchNames';
import type { NoteMember } from '../score/score';
import {
  FIFTH,
  FOURTH,
  type IntervalKind,
  MAJOR_SIXTH,
  MAJOR_THIRD,
  MINOR_SIXTH,
  MINOR_THIRD,
  OCTAVE,
  widthOf,
} from '../tuning/beats';
import { placeOf } from '../tuning/fifths';
import { frequencyOf, offset, sounding, type Tuning } from '../tuning/tuning';
import type { EventHere } from './events';

const KINDS: readonly IntervalKind[] = [OCTAVE, FIFTH, FOURTH, MAJOR_THIRD, MINOR_THIRD, MAJOR_SIXTH, MINOR_SIXTH];

/** Nearer than this nobody tells an interval from a pure one, in cents. */
const PURE = 0.05;

const pitchOf = ({ spelling, alteration, octave }: NoteMember): Pitch => ({
  letter: spelling.letter,
  alteration,
  octave,
});

/** "247.6 Hz, 5.9 cents above equal temperament; with e′ a major third, 5.9 cents wide". Nothing where no tuning is stated. */
export function tuningInWords(here: EventHere, member: NoteMember): readonly string[] {
  const { environment, choice } = here.score;
  const tuning = statedTuningOf(environment, choice.name);
  if (tuning === undefined) return [];
  const pitch = pitchOf(member);
  const cents = offset(tuning, sounding(tuning, placeOf(pitch)));
  const place =
    Math.abs(cents) < PURE
      ? 'as in equal temperament'
      : `${inCents(cents)} ${cents < 0 ? 'below' : 'above'} equal temperament`;
  const intervals = soundingWith(here, member).flatMap((other) => intervalInWords(tuning, member, other));
  return [[`${frequencyOf(tuning, pitch).toFixed(1)} Hz, ${place}`, ...new Set(intervals)].join('; ')];
}

const inCents = (cents: number): string => `${Math.abs(cents).toFixed(1)} cents`;

/** What sounds in the system when the note is struck. */
function soundingWith({ system, event }: EventHere, member: NoteMember): readonly NoteMember[] {
  return system.score.voices.flatMap(({ events }) =>
    events
      .filter(
        ({ onset, duration }) => compare(onset, event.onset) <= 0 && compare(add(onset, duration), event.onset) > 0,
      )
      .flatMap(({ members }) => members.filter(({ midi }) => midi !== member.midi)),
  );
}

function intervalInWords(tuning: Tuning, member: NoteMember, other: NoteMember): string[] {
  const [low, high] = member.midi < other.midi ? [member, other] : [other, member];
  const [below, above] = [pitchOf(low), pitchOf(high)];
  const apart = placeOf(above) - placeOf(below);
  const kind = KINDS.find(({ places }) => places === apart);
  if (kind === undefined) return [];
  // Of wider intervals the octaves are left out.
  const octaves = Math.floor((high.midi - low.midi - kind.semitones) / 12);
  const width = widthOf(kind, frequencyOf(tuning, below), frequencyOf(tuning, above) / 2 ** octaves);
  const purity = Math.abs(width) < PURE ? 'pure' : `${inCents(width)} ${width < 0 ? 'narrow' : 'wide'}`;
  return [`with ${helmholtz(pitchOf(other))} ${kind === OCTAVE ? 'an' : 'a'} ${kind.name}, ${purity}`];
}
