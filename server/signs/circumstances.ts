/** What a sign finds where it stands: gathered from the passage, the tempo and the table for who lays out its notes. */
import { type Time, ZERO } from '../../grammar/time';
import type { Recipe } from '../../grammar/tree';
import type { Clock } from '../score/clock';
import type { PerformedEvent, SoundingPitch } from '../score/performance';
import { aheadOf, type Bearers, NOTHING_AHEAD } from './ahead';
import { appoggiaturaOf } from './appoggiatura';
import { partsOf } from './atoms';
import { isSlurredFromAbove, soundingDots } from './conditions';
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
  readonly bearers: Bearers;
  readonly print: boolean;
}

export function placeOf(circumstances: Circumstances): Place {
  const { passage, event, target, clock, beat, recipe, small, table, bearers, print } = circumstances;
  const { onset, duration: length } = target;
  const { rules, tellsLeaning } = table;
  const isTrill = partsOf(recipe).cycle !== undefined;
  const { strokes, slow } = paceOf(clock, beat);
  const ahead = isTrill ? aheadOf(passage, event, length, clock, bearers, !tellsLeaning) : NOTHING_AHEAD;
  return {
    length,
    clock,
    strokes,
    slow,
    stop: ahead.stop,
    anticipated: ahead.anticipated,
    cadential: ahead.cadential,
    upbeat: ahead.upbeat,
    dots: soundingDots(event),
    tied: isSlurredFromAbove(passage, event),
    appoggiatura:
      small === undefined
        ? ZERO
        : appoggiaturaOf({ passage, event, onset, length, clock, small, longDotted: rules.dotted !== undefined }),
    slowStart: rules.slowStart !== undefined,
    grid: print ? gridOf(length) : undefined,
  };
}
