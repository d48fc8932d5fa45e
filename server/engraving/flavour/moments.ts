/** When each note of a tree begins, as MEI counts beats: from 1, in the units of the meter. */
import { add, multiply, type Time, time, toNumber, ZERO } from '../../../grammar/time';
import { childrenOf, type XmlElement } from '../../export/xml';
import { durationOf } from './duration';
import { idOf, isStave, layersOf } from './element';

export interface Moment {
  readonly tstamp: number;
  readonly staff: number | string;
}

const USUAL_UNIT = 4;

export class Moments {
  private readonly known = new Map<string, Moment>();
  private readonly ends = new Map<string, Moment>();
  private measure = '';
  private unit = USUAL_UNIT;
  private count = USUAL_UNIT;

  constructor(root: XmlElement) {
    this.visit(root);
  }

  of(id: string): Moment | undefined {
    return this.known.get(id);
  }

  /** The end of a measure, on its first stave. */
  endOf(measure: string): Moment | undefined {
    return this.ends.get(measure);
  }

  private visit(element: XmlElement): void {
    const { name, attributes } = element;
    if (name === 'meterSig') {
      this.unit = Number(attributes.unit ?? USUAL_UNIT);
      this.count = Number(attributes.count ?? USUAL_UNIT);
    }
    if (name === 'measure') {
      // Of a measure that is cut the parts that follow have no ids: it ends with the last of them.
      this.measure = idOf(element) || this.measure;
      this.ends.set(this.measure, { tstamp: 1 + this.beatsIn(element), staff: 1 });
    }
    if (!isStave(element)) {
      for (const child of childrenOf(element)) this.visit(child);
      return;
    }
    for (const layer of childrenOf(element)) this.addLayer(layer, element.attributes.n ?? 1);
  }

  /** The time of its longest layer; of one that rests fill, the meter's. */
  private beatsIn(measure: XmlElement): number {
    const longest = Math.max(
      0,
      ...layersOf(measure).map((layer) => toNumber(multiply(durationOf(layer), time(this.unit)))),
    );
    return longest > 0 ? longest : this.count;
  }

  private addLayer(layer: XmlElement, stave: number | string): void {
    for (const { element, at } of placedIn(layer)) {
      const id = idOf(element);
      const beats = toNumber(multiply(at, time(this.unit)));
      if (id !== '') this.known.set(id, { tstamp: 1 + beats, staff: element.attributes.staff ?? stave });
    }
  }
}

/** An element of a layer and when it begins, counted from the beginning of the layer. */
export interface Placed {
  readonly element: XmlElement;
  readonly at: Time;
}

/** All that stands in a layer and in its beams, tuplets and other groups, but not what stands in a note or chord. */
export function* placedIn(parent: XmlElement, from: Time = ZERO, share: Time = time(1)): Generator<Placed> {
  let now = from;
  for (const element of childrenOf(parent)) {
    yield { element, at: now };
    if (element.name !== 'chord' && element.name !== 'note') yield* placedIn(element, now, shareOf(element, share));
    now = add(now, multiply(durationOf(element), share));
  }
}

const shareOf = ({ name, attributes }: XmlElement, share: Time): Time =>
  name === 'tuplet' ? multiply(share, time(Number(attributes.numbase ?? 1), Number(attributes.num ?? 1))) : share;
