/** The keys of the instrument as they lie, with those that are down, and by which hand. */
import type { KeyOfStrip, Limb, PlayedNote } from '../../../server/features/protocol';
import { svgElement } from './svg';

/** Keys of an octave that are sharps, as they lie. */
const SHARPS: ReadonlySet<number> = new Set([1, 3, 6, 8, 10]);
const isSharp = ({ lies }: KeyOfStrip): boolean => SHARPS.has(lies % 12);

/** In the units of the drawing. */
const WHITE = { width: 20, height: 84 };
const BLACK = { width: 12, height: 50 };
/** Where letters stand: names at the ends of the keys, hands above them. */
const NAME = { white: WHITE.height - 5, black: BLACK.height - 5 };
const HAND = { white: WHITE.height - 20, black: BLACK.height - 16 };

export class Keyboard {
  private keys: readonly KeyOfStrip[] = [];
  private drawn: readonly { readonly key: SVGElement; readonly hand: SVGElement }[] = [];

  /** @param place holds the strip, with the letters of the hands as its data */
  constructor(private readonly place: HTMLElement) {}

  build(keys: readonly KeyOfStrip[]): void {
    if (JSON.stringify(keys) === JSON.stringify(this.keys)) return;
    this.keys = keys;
    const whites = whitesOf(keys);
    const picture = svgElement('svg', {
      viewBox: `0 0 ${WHITE.width * Math.max(1, whites)} ${WHITE.height}`,
      class: 'strip',
      role: 'img',
      'aria-label': this.words(),
    });
    this.drawn = keys.map((key) => keyDrawn(key, keys));
    // Sharps lie over the others.
    const order = [...keys.keys()].sort((a, b) => Number(isSharpAt(keys, a)) - Number(isSharpAt(keys, b)));
    picture.append(...order.map((index) => (this.drawn[index] as { key: SVGElement }).key));
    this.place.replaceChildren(picture);
  }

  press(notes: readonly PlayedNote[]): void {
    const limbs = new Map<number, Limb>();
    for (const { key, limb } of notes) if (key !== null) limbs.set(key, limb);
    for (const [index, { key, hand }] of this.drawn.entries()) {
      const limb = limbs.get(index);
      key.classList.toggle('down', limb !== undefined);
      hand.textContent = limb === undefined ? '' : (this.place.dataset[limb] ?? '');
    }
  }

  /** From the lowest note to the highest, and which keys sound another than their own. */
  private words(): string {
    const { compass = '', short = '', lies = '' } = this.place.dataset;
    const other = this.keys.filter((key) => !soundsOwn(key)).map(({ sounds, place }) => put(lies, sounds, place));
    const whole = put(compass, this.keys[0]?.sounds ?? '', this.keys.at(-1)?.sounds ?? '');
    return other.length === 0 ? whole : `${whole}; ${short}: ${other.join(', ')}`;
  }
}

const put = (text: string, first: string, second: string): string => text.replace('{0}', first).replace('{1}', second);

const isSharpAt = (keys: readonly KeyOfStrip[], index: number): boolean => isSharp(keys[index] as KeyOfStrip);

const soundsOwn = ({ place, sounds }: KeyOfStrip): boolean => sounds === place;

/** White keys from c0 to the left of a key. */
const whitesBelow = (lies: number): number =>
  7 * Math.floor(lies / 12) +
  Array.from({ length: lies % 12 }, (_, one) => one).filter((one) => !SHARPS.has(one)).length;

/** How many white keys the strip is wide: of a short octave those that are there. */
function whitesOf(keys: readonly KeyOfStrip[]): number {
  const [first, last] = [keys[0], keys.at(-1)];
  return first === undefined || last === undefined ? 0 : whitesBelow(last.lies + 1) - whitesBelow(first.lies);
}

function keyDrawn(key: KeyOfStrip, [first]: readonly KeyOfStrip[]): { key: SVGElement; hand: SVGElement } {
  const sharp = isSharp(key);
  const { width, height } = sharp ? BLACK : WHITE;
  const left = WHITE.width * (whitesBelow(key.lies) - whitesBelow(first?.lies ?? 0)) - (sharp ? BLACK.width / 2 : 0);
  // Of a divided key the front half is nearer to the player.
  const halved = key.half === undefined ? 1 : 2;
  const top = key.half === 'front' ? height / halved : 0;
  const middle = left + width / 2;
  const group = svgElement('g', { class: sharp ? 'sharp' : 'natural' });
  const hand = svgElement('text', { x: middle, y: sharp ? HAND.black : HAND.white, class: 'hand' });
  const name = svgElement('text', {
    x: middle,
    y: (sharp ? NAME.black : NAME.white) - (key.half === 'back' ? height / 2 : 0),
  });
  // Every c is named, and whatever sounds another note than its own.
  if (!soundsOwn(key) || key.lies % 12 === 0) name.textContent = key.sounds;
  group.append(svgElement('rect', { x: left, y: top, width, height: height / halved }), name, hand);
  return { key: group, hand };
}
