/** Marks on the engraved page: elements by the ids of their pictures, which stand twice where two readings are shown. */
import { svgElement } from './svg';

/** How far a frame stands from what it is around, in the units of the pictures: a stave space is 180. */
const MARGIN = 50;

interface Framed {
  readonly ids: ReadonlySet<string>;
  /** What is framed is not the note but that of this kind in which it stands. */
  readonly within: string | undefined;
}

/** The id of an element; of what is written out in several notes that of the one that is written. */
export const idOf = (one: Element): string => (one.getAttribute('data-id') ?? '').replace(/-r\d+/, '');

export const isBeneath = (id: string): boolean => beneath(id) === id;

/** The id under which a note stands in the lower of two parts. */
export const beneath = (id: string): string => id.replace(/^(e-\w+-\d+-[A-Za-z][\w.]*?)(?:\.written)?-/, '$1.written-');

export class Marks {
  private elements: Map<string, Element[]> | undefined;
  private readonly shown = new Map<string, ReadonlySet<string>>();
  private readonly frames = new Map<string, Framed>();

  constructor(private readonly score: HTMLElement) {}

  /** The page is to be drawn anew: what is not of the picture itself is taken away. */
  undraw(): void {
    for (const name of this.frames.keys()) this.unframe(name);
  }

  /** It was drawn anew. */
  drawn(): void {
    this.elements = undefined;
    for (const [name, ids] of this.shown) for (const one of this.ofAll(ids)) one.classList.add(name);
    for (const [name, framed] of this.frames) this.draw(name, framed);
  }

  /** Elements get the class of this name, and those that had it lose it. */
  show(name: string, ids: ReadonlySet<string>): void {
    for (const one of this.ofAll(this.shown.get(name) ?? [])) one.classList.remove(name);
    for (const one of this.ofAll(ids)) one.classList.add(name);
    this.shown.set(name, ids);
  }

  /** Draws frames of this name, so that what is marked is known by more than its colour. */
  frame(name: string, ids: ReadonlySet<string>, within?: string): void {
    this.unframe(name);
    this.frames.set(name, { ids, within });
    this.draw(name, { ids, within });
  }

  of(id: string): readonly Element[] {
    this.elements ??= this.index();
    return this.elements.get(id) ?? [];
  }

  private ofAll(ids: Iterable<string>): Element[] {
    return [...ids].flatMap((id) => this.of(id));
  }

  private index(): Map<string, Element[]> {
    const found = new Map<string, Element[]>();
    for (const one of this.score.querySelectorAll('[data-id]')) {
      const id = idOf(one);
      const same = found.get(id);
      if (same === undefined) found.set(id, [one]);
      else same.push(one);
    }
    return found;
  }

  private draw(name: string, { ids, within }: Framed): void {
    const wished = this.ofAll(ids).map((one) => (within === undefined ? one : (one.closest(within) ?? one)));
    const boxes = [...new Set(wished)].map((one) => [one, (one as SVGGraphicsElement).getBBox()] as const);
    for (const [one, box] of boxes) one.append(frameAround(box, name));
  }

  private unframe(name: string): void {
    for (const one of this.score.querySelectorAll(`rect.frame.${name}`)) one.remove();
  }
}

function frameAround({ x, y, width, height }: DOMRect, name: string): Element {
  const box = { x: x - MARGIN, y: y - MARGIN, width: width + 2 * MARGIN, height: height + 2 * MARGIN };
  return svgElement('rect', { ...box, class: `frame ${name}` });
}
