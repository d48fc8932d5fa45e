/** Elements of the pictures that a page makes itself. */

type Attributes = Readonly<Record<string, string | number>>;

/** A new one, which stands nowhere yet. */
export function svgElement<Name extends keyof SVGElementTagNameMap>(
  name: Name,
  attributes: Attributes = {},
): SVGElementTagNameMap[Name] {
  const made = document.createElementNS('http://www.w3.org/2000/svg', name);
  setAttributes(made, attributes);
  return made;
}

/** Sets them beside those that the element has. */
export function setAttributes(element: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
}
