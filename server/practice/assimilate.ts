/**
 * Duple figures against triplets: to the triplet, to the duple figure, or each as written. The three are of equal rank: the
 * first is assumed in much keyboard music of the mid-eighteenth century (from memory); Quantz 1752, V.22, wants the short note
 * after the third of the triplet (from memory); Türk 1789, I.64, takes exact division as the norm (confirmed by a text).
 */
import { add, multiply, type Time } from '../../grammar/time';
import type { Divider, Meeting } from './meetings';
import type { Assimilate } from './practice';
import type { Acting } from './ruling';
import { fixed, type Knot, type Stretch, type Together } from './stretch';
import type { View } from './view';

export const assimilations = (view: View): Together[] => view.meetings.map((meeting) => assimilated(view, meeting));

/** Meetings about which nothing is said: places where a player has to choose. */
export const undecidedMeetings = (view: View): Meeting[] =>
  view.meetings.filter(({ triplets, duples }) =>
    [...triplets, ...duples].every(({ within: [stroke] }) => !isDecided(view, stroke)),
  );

const isDecided = (view: View, stroke: Divider['within'][0]): boolean => view.ruling.says('assimilate', stroke);

interface Ruled {
  readonly divider: Divider;
  readonly acting: Acting<Assimilate>;
}

/** The voices of which the practice is told move; where it is told of both sides, the answer says which. */
function assimilated(view: View, { onset, length, triplets, duples, answer }: Meeting): Together {
  const at = (share: Time): Time => add(onset, multiply(length, share));
  const knotsOf = (moments: readonly Knot[]): Stretch['knots'] => [fixed(onset), ...moments, fixed(add(onset, length))];
  const toTriplet = answer.pairs.map(([duple, triple]) => ({ written: at(duple), performed: at(triple) }));
  const toDuple = toTriplet.map(({ written, performed }) => ({ written: performed, performed: written }));
  const stretch = ({ divider, acting }: Ruled, moments: readonly Knot[]): Stretch => ({
    voice: divider.line.voice,
    knots: knotsOf(moments),
    acting,
    stroke: divider.within[0],
  });
  return [
    ...ruled(view, duples, 'triplet').map((one) => stretch(one, toTriplet)),
    ...ruled(view, triplets, 'duple').map((one) => stretch(one, toDuple)),
  ];
}

const ruled = (view: View, dividers: readonly Divider[], to: Assimilate['to']): Ruled[] =>
  dividers.flatMap((divider): Ruled[] => {
    const acting = view.ruling.at('assimilate', divider.within[0]);
    return acting?.how.to === to ? [{ divider, acting }] : [];
  });
