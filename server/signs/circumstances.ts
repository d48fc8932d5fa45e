/** What a sign finds where it stands: gathered from the passage, the tempo and the table for who lays out its notes. */
import { type Time, ZERO } from '../../grammar/time';
import type { Recipe } from '../../grammar/tree';
import type { Clock } from '../score/clock';
import type { PerformedEvent, SoundingPitch } from '../score/performance';
import { aheadOf, NOTHING_AHEAD } from './ahead';
import { appoggiaturaOf } from './appoggiatura';
import { isSlurredFromAbove } from './conditions';
import type { Passage } from './passage';
import { gridOf, type Place, paceOf } from './place';
import type { PlayedTable } from './rows';

export interface Circumstances {
  readonly passage: Passage;
  readonly event: PerformedEvent;
  /** What the sign has of its note. */
  readonly target: { readonly onset: Time; readonly duration: Time };
  readonly clock: Clock;
  /** The length of a beat there. */
  readonly beat: Time;
  readonly recipe: Recipe;
  /** The note on which the sign leans, if any. */
  readonly small: SoundingPitch | undefined;
  readonly table: PlayedTable;
  /** The notes that bear signs. */
  readonly bearers: ReadonlySet<PerformedEvent>;
  readonly print: boolean;
}

export function placeOf(circumstances: Circumstances): Place {
  const { passage, event, target, clock, beat, recipe, small, table, bearers, print } = circumstances;
  const { onset, duration: length } = target;
  const { rules, tellsLeaning } = table;
  const leaning = { passage, event, onset, length, clock, longDotted: rules.dotted !== undefined };
  const isTrill = recipe.phrases.some(({ repeated }) => repeated);
  return {
    length,
    clock,
    ...paceOf(clock, beat),
    ...(isTrill ? aheadOf(passage, event, length, clock, bearers, !tellsLeaning) : NOTHING_AHEAD),
    dots: event.from.length === 1 ? (event.from[0].placed.event.value?.dots ?? 0) : 0,
    tied: isSlurredFromAbove(passage, event),
    appoggiatura: small === undefined ? ZERO : appoggiaturaOf({ ...leaning, small }),
    slowStart: rules.slowStart !== undefined,
    grid: print ? gridOf(length) : undefined,
  };
}
