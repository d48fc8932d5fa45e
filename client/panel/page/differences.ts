/** What two readings have otherwise: framed on the page, and told in words, one after another. */
import type { ShownDifference } from '../../../server/features/protocol';
import type { Marks } from './marks';

/** The name of the frames. */
const DIFFERS = 'differs';

export class Differences {
  private readonly summary: HTMLElement;
  private readonly list: HTMLElement;
  /** What the list says, as one text. */
  private told = '[]';

  /**
   * @param place holds a summary and a list, and the texts of the summary as its data
   * @param goTo called with the id of a note that is chosen
   */
  constructor(
    private readonly place: HTMLElement,
    private readonly marks: Marks,
    private readonly goTo: (id: string) => void,
  ) {
    this.summary = place.querySelector('summary') as HTMLElement;
    this.list = place.querySelector('ol') as HTMLElement;
  }

  /** @param differences undefined where one reading alone is shown */
  show(differences: readonly ShownDifference[] | undefined): void {
    this.place.hidden = differences === undefined;
    this.marks.frame(DIFFERS, new Set(differences?.flatMap(({ ids }) => ids)));
    this.summary.textContent = this.count(differences?.length ?? 0);
    const told = JSON.stringify(differences ?? []);
    // One of them may have the focus.
    if (told !== this.told) this.list.replaceChildren(...(differences ?? []).map((one) => this.item(one)));
    this.told = told;
  }

  private count(number: number): string {
    const { none = '', one = '', many = '' } = this.place.dataset;
    return number === 0 ? none : number === 1 ? one : many.replace('{0}', String(number));
  }

  private item({ says, ids }: ShownDifference): Element {
    const item = document.createElement('li');
    const [drawn] = ids.filter((id) => this.marks.of(id).length > 0);
    if (drawn === undefined) {
      item.textContent = says;
      return item;
    }
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = says;
    button.addEventListener('click', () => this.goTo(drawn));
    item.append(button);
    return item;
  }
}
