/** A small tree of XML elements and its text. */

export interface XmlElement {
  readonly name: string;
  readonly attributes: XmlAttributes;
  readonly content: XmlContent;
}

/** An attribute whose value is undefined is left out. */
export type XmlAttributes = Readonly<Record<string, string | number | undefined>>;

/** Text, a number, or elements in their order; undefined ones are left out. */
export type XmlContent = string | number | readonly (XmlElement | undefined)[];

export const xml = (name: string, attributes: XmlAttributes = {}, content: XmlContent = []): XmlElement => ({
  name,
  attributes,
  content,
});

/** The id of an element; "" where it has none. */
export const idOf = ({ attributes }: XmlElement): string => `${attributes['xml:id'] ?? ''}`;

/** The elements in an element. */
export const childrenOf = ({ content }: XmlElement): readonly XmlElement[] =>
  typeof content === 'object' ? content.filter((child) => child !== undefined) : [];

/** An element that holds nothing but text or a number. */
export const leaf = (name: string, content: string | number): XmlElement => xml(name, {}, content);

/** Everything that the production `Char` of XML 1.0 (fifth edition, section 2.2) does not allow, lone surrogates too. */
const FORBIDDEN = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  '\t': '&#9;',
  '\n': '&#10;',
  '\r': '&#13;',
};

const escaped = (text: string, pattern: RegExp): string => text.replace(pattern, (c) => ESCAPES[c] ?? c);

/**
 * The document: declaration and root, two spaces a level, a line feed at each line's end.
 * `replaced` counts the characters that XML forbids, each written as U+FFFD.
 */
export function printXml(root: XmlElement): { readonly text: string; readonly replaced: number } {
  let replaced = 0;
  const lines: string[] = ['<?xml version="1.0" encoding="UTF-8"?>'];
  const clean = (text: string): string =>
    text.replace(FORBIDDEN, () => {
      replaced += 1;
      return '\uFFFD';
    });
  const opening = (element: XmlElement): string => {
    let text = element.name;
    for (const [name, value] of Object.entries(element.attributes)) {
      if (value !== undefined) text += ` ${name}="${escaped(clean(`${value}`), /[&<>"\t\n\r]/g)}"`;
    }
    return text;
  };
  const print = (element: XmlElement, indent: string): void => {
    const { name, content } = element;
    if (typeof content !== 'object') {
      const text = escaped(clean(`${content}`), /[&<>\r]/g);
      lines.push(`${indent}<${opening(element)}>${text}</${name}>`);
      return;
    }
    const children = content.filter((child) => child !== undefined);
    if (children.length === 0) {
      lines.push(`${indent}<${opening(element)}/>`);
      return;
    }
    lines.push(`${indent}<${opening(element)}>`);
    for (const child of children) print(child, `${indent}  `);
    lines.push(`${indent}</${name}>`);
  };
  print(root, '');
  return { text: `${lines.join('\n')}\n`, replaced };
}
