/** On which staves the notes and rests of a measure stand, and in which order their voices. */
import type { Time } from '../../../grammar/time';
import { childrenOf, type XmlElement } from '../../export/xml';
import { membersOf } from './element';
import { placedIn } from './moments';
import { withoutOssias } from './ossias';

/** A note, of a chord each by itself, or a rest. */
export interface Standing {
  readonly element: XmlElement;
  /** The note, the chord around it, or the rest. */
  readonly event: XmlElement;
  readonly stave: string;
  readonly hasCrossed: boolean;
  /** Its voice among those of the measure, from the highest. */
  readonly voice: number;
  readonly at: Time;
}

export const isRest = ({ name }: XmlElement): boolean => name === 'rest' || name === 'mRest';

export function standingIn(measure: XmlElement): readonly Standing[] {
  const staves = childrenOf(withoutOssias(measure)).filter(({ name }) => name === 'staff');
  const layers = staves.flatMap((staff) =>
    [...childrenOf(staff)].sort(byNumber).map((layer) => ({ layer, home: `${staff.attributes.n}` })),
  );
  return layers.flatMap(({ layer, home }, voice) =>
    [...placedIn(layer)].flatMap(({ element: event, at }) =>
      standingOf(event).map((element) => {
        const stave = `${element.attributes.staff ?? event.attributes.staff ?? home}`;
        return { element, event, stave, hasCrossed: stave !== home, voice, at };
      }),
    ),
  );
}

/** Layers may stand in another order than their voices. */
const byNumber = (a: XmlElement, b: XmlElement): number => Number(a.attributes.n) - Number(b.attributes.n);

const standingOf = (event: XmlElement): readonly XmlElement[] =>
  event.name === 'chord' || event.name === 'note' || isRest(event) ? membersOf(event) : [];
