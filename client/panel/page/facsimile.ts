/** The picture of the source: the strip of the system at the caret, or the whole leaf to drag a system's place out on. */
import { setAttributes, svgElement } from './svg';

type Region = readonly number[];

interface Point {
  readonly x: number;
  readonly y: number;
}

export class FacsimileStrip {
  private address: string | undefined;
  private size: Size = { width: 0, height: 0 };
  private regions: readonly (Region | null)[] = [];
  private system = 0;
  private isDragging = false;
  private from: Point | undefined;
  private readonly picture = svgElement('svg');
  private readonly image = svgElement('image');
  private readonly frame = svgElement('rect');

  /** @param dragged told where a system lies, once its place was dragged out */
  constructor(
    private readonly place: HTMLElement,
    private readonly button: HTMLElement,
    private readonly dragged: (system: number, region: Region) => void,
  ) {
    this.picture.append(this.image, this.frame);
    place.append(this.picture);
    button.addEventListener('click', () => this.drag(!this.isDragging));
    this.picture.addEventListener('pointerdown', (event) => this.begin(event));
    this.picture.addEventListener('pointermove', (event) => this.move(event));
    this.picture.addEventListener('pointerup', (event) => this.end(event));
    this.picture.addEventListener('pointercancel', () => this.giveUp());
  }

  /**
   * The picture of the leaf; without one there is no strip.
   * @returns false if it is none that can be shown
   */
  async load(bytes: Uint8Array | undefined, isDrawing: boolean): Promise<boolean> {
    if (this.address !== undefined) URL.revokeObjectURL(this.address);
    const type = isDrawing ? { type: 'image/svg+xml' } : {};
    this.address = bytes && URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], type));
    const isShown = this.address === undefined || (await this.take(this.address));
    if (!isShown) this.address = undefined;
    this.show();
    return isShown;
  }

  private async take(address: string): Promise<boolean> {
    const loaded = new Image();
    loaded.src = address;
    try {
      await loaded.decode();
    } catch {
      return false;
    }
    this.size = { width: loaded.naturalWidth, height: loaded.naturalHeight };
    setAttributes(this.image, { href: address, ...this.size });
    return true;
  }

  /**
   * Where the systems of the leaf lie.
   * @param isOther whether it is another leaf: its first system without a place is the next to be marked
   */
  know(regions: readonly (Region | null)[], isOther: boolean): void {
    this.regions = regions;
    if (isOther) this.system = Math.max(regions.indexOf(null), 0);
    this.show();
  }

  /** The caret stands in this system. */
  turnTo(system: number): void {
    this.system = system;
    this.show();
  }

  /** No place is dragged out after all. */
  giveUp(): void {
    this.from = undefined;
    this.drag(false);
  }

  private drag(isDragging: boolean): void {
    this.isDragging = isDragging;
    this.show();
  }

  /** The strip of the system; the whole leaf while its place is dragged out, or where it is not known. */
  private show(): void {
    const hasPicture = this.address !== undefined;
    this.place.toggleAttribute('hidden', !hasPicture);
    this.button.toggleAttribute('hidden', !hasPicture);
    this.button.setAttribute('aria-pressed', String(this.isDragging));
    this.place.classList.toggle('dragging', this.isDragging);
    const region = this.regions[this.system] ?? undefined;
    const whole = [0, 0, this.size.width, this.size.height];
    this.picture.setAttribute('viewBox', (this.isDragging ? whole : (region ?? whole)).join(' '));
    this.draw(this.isDragging ? region : undefined);
  }

  private draw(region: Region | undefined): void {
    const [x = 0, y = 0, width = 0, height = 0] = region ?? [];
    setAttributes(this.frame, { x, y, width, height });
  }

  // ─── dragging ──────────────────────────────────────────────────────────────────────────────────────────────────

  private begin(event: PointerEvent): void {
    if (!this.isDragging) return;
    this.picture.setPointerCapture(event.pointerId);
    this.from = this.at(event);
  }

  private move(event: PointerEvent): void {
    if (this.from !== undefined) this.draw(regionBetween(this.from, this.at(event), this.size));
  }

  private end(event: PointerEvent): void {
    const { from } = this;
    this.from = undefined;
    if (from === undefined) return;
    const region = regionBetween(from, this.at(event), this.size);
    this.drag(false);
    if (region.every((number, index) => index < 2 || number >= 1)) this.dragged(this.system, region);
  }

  /** In the picture's own units. */
  private at({ clientX, clientY }: PointerEvent): Point {
    return new DOMPoint(clientX, clientY).matrixTransform(this.picture.getScreenCTM()?.inverse());
  }
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** What lies between two corners, as far as it is on the picture. */
function regionBetween(a: Point, b: Point, { width, height }: Size): Region {
  const [left, right] = ends(a.x, b.x, width);
  const [top, bottom] = ends(a.y, b.y, height);
  return [left, top, right - left, bottom - top];
}

function ends(a: number, b: number, most: number): readonly [number, number] {
  const [first, last] = [a, b].map((one) => Math.round(Math.min(Math.max(one, 0), most))).sort((x, y) => x - y);
  return [first ?? 0, last ?? 0];
}
