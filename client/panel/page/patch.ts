/** Makes one picture out of another, so that what has not changed stays as it is. */

/** `old` is in the page; `next` may be taken apart. */
export function patch(old: Element, next: Element): void {
  if (old.isEqualNode(next)) return;
  const isAlike = old.tagName === next.tagName && old.children.length === next.children.length;
  if (!isAlike || next.children.length === 0) {
    old.replaceWith(next);
    return;
  }
  patchAttributes(old, next);
  // Those of `next` leave it one by one.
  const children = [...next.children];
  for (const [index, child] of [...old.children].entries()) patch(child, children[index] as Element);
}

function patchAttributes(old: Element, next: Element): void {
  for (const name of old.getAttributeNames()) if (!next.hasAttribute(name)) old.removeAttribute(name);
  for (const name of next.getAttributeNames()) {
    const value = next.getAttribute(name) ?? '';
    if (old.getAttribute(name) !== value) old.setAttribute(name, value);
  }
}
