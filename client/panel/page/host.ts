/** What the page of every panel has: its elements, and the editor in which it stands. */

interface Host<Message, Kept> {
  postMessage(message: Message): void;
  getState(): Kept | undefined;
  setState(state: Kept): void;
}

declare function acquireVsCodeApi<Message, Kept>(): Host<Message, Kept>;

/** The editor gives it once. */
export const hostOfPage = <Message, Kept>(): Host<Message, Kept> => acquireVsCodeApi();

/** @throws Error where the page has no such element */
export function element<Kind extends HTMLElement>(id: string): Kind {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`the page has no ${id}`);
  return found as Kind;
}
