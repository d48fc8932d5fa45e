/** A bar of buttons for the keyboard: one stop of the Tab key, its buttons by the arrow keys (WAI-ARIA Authoring Practices). */

/** Where each key goes from a button, among so many. */
const GOES: Readonly<Record<string, (from: number, many: number) => number>> = {
  ArrowRight: (from, many) => (from + 1) % many,
  ArrowLeft: (from, many) => (from + many - 1) % many,
  Home: () => 0,
  End: (_, many) => many - 1,
};

/** @param bar its first button is always there; others may be hidden */
export function asToolbar(bar: HTMLElement): void {
  const all = (): HTMLElement[] => [...bar.querySelectorAll('button')];
  const stopAt = (one: Element | undefined): void => {
    for (const button of all()) button.tabIndex = button === one ? 0 : -1;
  };
  bar.addEventListener('focusin', ({ target }) => stopAt(target as Element));
  bar.addEventListener('focusout', () => stopAt(all()[0]));
  bar.addEventListener('keydown', (event) => {
    const shown = all().filter(({ hidden }) => !hidden);
    const [goes, from] = [GOES[event.key], shown.indexOf(event.target as HTMLElement)];
    if (goes === undefined || from < 0) return;
    event.preventDefault();
    // The same keys go from note to note elsewhere.
    event.stopPropagation();
    shown[goes(from, shown.length)]?.focus();
  });
  stopAt(all()[0]);
}
