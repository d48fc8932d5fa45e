/** Weights of notes without measure: a column over each note that is dragged up and down, and a slider for the marked note. */
import type { ShownWeight } from '../../../server/features/protocol';
import { idOf, type Marks } from './marks';
import { setAttributes, svgElement } from './svg';

/** In the units of the pictures, where a stave space is 180: a column for each weight, and its distance from the note. */
const COLUMN = 130;
const ABOVE = 120;
/** Pixels by which a column is dragged for a weight more. */
const DRAG = 12;

/** What the page has for it: a button that shows the columns, and the slider with its label. */
export interface WeightParts {
  readonly score: HTMLElement;
  readonly button: HTMLElement;
  readonly field: HTMLElement;
  readonly slider: HTMLInputElement;
}

interface Dragged {
  readonly id: string;
  readonly column: Element;
  readonly from: number;
  readonly weight: number;
}

export class Weights {
  private weights = new Map<string, number>();
  private marked: string | undefined;
  private dragged: Dragged | undefined;

  /** @param changed told which note is to have which weight */
  constructor(
    private readonly parts: WeightParts,
    private readonly marks: Marks,
    private readonly changed: (id: string, weight: number) => void,
  ) {
    const { score, button, slider } = parts;
    button.addEventListener('click', () => this.toggle());
    slider.addEventListener('change', () => this.set(this.marked, Number(slider.value)));
    score.addEventListener('pointerdown', (event) => this.begin(event));
    score.addEventListener('pointermove', (event) => this.move(event));
    score.addEventListener('pointerup', (event) => this.end(event));
  }

  /**
   * Of the leaf that was drawn.
   * @returns whether a note that was there before has another weight
   */
  show(weights: readonly ShownWeight[]): boolean {
    const before = this.weights;
    this.weights = new Map(weights.map(({ id, weight }) => [id, weight]));
    this.parts.button.hidden = weights.length === 0;
    this.draw();
    this.showMarked();
    return weights.some(({ id, weight }) => before.has(id) && before.get(id) !== weight);
  }

  /** The note at the caret: its chord's weight is that of the slider. */
  mark(id: string | undefined): void {
    this.marked = id?.replace(/-n\d+$/, '');
    this.showMarked();
  }

  /** The page is to be drawn anew. */
  undraw(): void {
    for (const column of this.parts.score.querySelectorAll('.weight')) column.remove();
  }

  private showMarked(): void {
    const weight = this.marked === undefined ? undefined : this.weights.get(this.marked);
    this.parts.field.hidden = weight === undefined;
    if (weight !== undefined) this.parts.slider.value = String(weight);
  }

  private set(id: string | undefined, weight: number): void {
    if (id !== undefined && this.weights.get(id) !== weight) this.changed(id, weight);
  }

  // ─── columns ─────────────────────────────────────────────────────────────────────────────────────────────────

  private get isShown(): boolean {
    return this.parts.button.getAttribute('aria-pressed') === 'true';
  }

  private toggle(): void {
    this.parts.button.setAttribute('aria-pressed', String(!this.isShown));
    this.draw();
  }

  private draw(): void {
    this.undraw();
    if (!this.isShown) return;
    const places = [...this.weights].flatMap(([id, weight]) =>
      this.marks.of(id).map((note) => ({ note, weight, box: (note as SVGGraphicsElement).getBBox() })),
    );
    for (const { note, weight, box } of places) note.append(columnOver(box, weight));
  }

  private begin(event: PointerEvent): void {
    const column = (event.target as Element).closest('.weight');
    const note = column?.parentElement ?? undefined;
    if (column === null || note === undefined) return;
    const id = idOf(note);
    this.parts.score.setPointerCapture(event.pointerId);
    this.dragged = { id, column, from: event.clientY, weight: this.weights.get(id) ?? 1 };
    event.preventDefault();
  }

  private move(event: PointerEvent): void {
    if (this.dragged !== undefined) setHeight(this.dragged.column, this.weightAt(this.dragged, event));
  }

  private end(event: PointerEvent): void {
    const { dragged } = this;
    this.dragged = undefined;
    if (dragged !== undefined) this.set(dragged.id, this.weightAt(dragged, event));
  }

  private weightAt({ from, weight }: Dragged, { clientY }: PointerEvent): number {
    const { min, max } = this.parts.slider;
    const wished = weight + Math.round((from - clientY) / DRAG);
    return Math.min(Number(max), Math.max(Number(min), wished));
  }
}

function columnOver({ x, y, width }: DOMRect, weight: number): Element {
  const column = svgElement('rect', { class: 'weight', 'data-foot': y - ABOVE, x, width });
  setHeight(column, weight);
  return column;
}

function setHeight(column: Element, weight: number): void {
  const height = COLUMN * weight;
  setAttributes(column, { y: Number(column.getAttribute('data-foot')) - height, height });
}
