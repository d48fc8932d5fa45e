/**
 * The trees of a score and of its variants in one: where they differ, `app` with a `lem` of the main text and a `rdg` for
 * each other text; a slip and its correction are a `choice`.
 *
 * Trees are compared by what they hold. Whatever is written alike and stands in one place of the text is the same; of the
 * rest the smallest stretch of siblings differs that can stand in an `app`: notes, beams or tuplets of a layer, layers,
 * marks of a measure, measures.
 */
import type { Environment } from '../../score/environment';
import type { ChosenOption } from '../../score/score';
import { type XmlAttributes, type XmlElement, xml } from '../xml';
import { align, type Difference } from './alignment';
import { references, responsible, words } from './editorial';
import { withOwnIds } from './ownIds';

/** A text and the options that the events with these ids stand in, the outermost first. */
export interface Text {
  readonly root: XmlElement;
  readonly chosen: ReadonlyMap<string, readonly ChosenOption[]>;
}

export interface LabelledText extends Text {
  readonly label: string;
}

/** @param tellBroken a bar of a variant whose time is wrong has no text to compare */
export function merged(
  main: Text,
  variants: readonly LabelledText[],
  environment: Environment,
  tellBroken: (label: string, measure: XmlElement) => void,
): XmlElement {
  const merger = new Merger(main, environment, tellBroken);
  const root = merger.element(
    main.root,
    variants.map((text) => ({ text, element: text.root })),
  );
  return withOwnIds(root, merger.readings);
}

/** An element of a variant. */
interface Other {
  readonly text: LabelledText;
  readonly element: XmlElement;
}

/** What is compared child by child; everything else is compared whole. */
const COMPARED: ReadonlySet<string> = new Set([
  'mei',
  'music',
  'body',
  'mdiv',
  'score',
  'section',
  'ending',
  'measure',
  'staff',
  'layer',
]);

/** What can hold an `app`; in others the main text stands alone. */
const HOLDING: ReadonlySet<string> = new Set(['score', 'section', 'ending', 'measure', 'staff', 'layer']);

/** What makes two elements of these names the same, besides their name: their attributes but for these. */
const NUMBERED: ReadonlySet<string> = new Set(['n', 'metcon', 'type']);

class Merger {
  /** The texts of the `rdg` and `corr` elements made. */
  readonly readings = new Map<XmlElement, LabelledText>();

  constructor(
    private readonly main: Text,
    private readonly environment: Environment,
    private readonly tellBroken: (label: string, measure: XmlElement) => void,
  ) {}

  element(main: XmlElement, others: readonly Other[]): XmlElement {
    const sound = others.filter((other) => this.isSound(other));
    if (sound.length === 0 || !COMPARED.has(main.name)) return main;
    const children = childrenOf(main);
    const lists = sound.map(({ element }) => childrenOf(element));
    const { differences, same } = align(children, lists, keyOf);
    const content: XmlElement[] = [];
    let next = 0;
    const takeSame = (until: number): void => {
      for (; next < until; next++) {
        const index = next;
        const alike = sound.flatMap(({ text }, i) => {
          const element = same[i]?.(index);
          return element === undefined ? [] : [{ text, element }];
        });
        const child = children[index];
        if (child !== undefined) content.push(this.element(child, alike));
      }
    };
    for (const difference of HOLDING.has(main.name) ? differences : []) {
      takeSame(difference.from);
      next = difference.to;
      content.push(this.apparatus(children.slice(difference.from, difference.to), difference, sound));
    }
    takeSame(children.length);
    return xml(main.name, main.attributes, content);
  }

  private isSound({ text, element }: Other): boolean {
    const isBroken = element.name === 'measure' && /\bbroken\b/.test(`${element.attributes.type}`);
    if (isBroken) this.tellBroken(text.label, element);
    return !isBroken;
  }

  private apparatus(
    lemma: readonly XmlElement[],
    { items }: Difference<XmlElement>,
    others: readonly Other[],
  ): XmlElement {
    const groups = new Map<string, { readonly content: readonly XmlElement[]; readonly texts: LabelledText[] }>();
    const main = textOf(lemma);
    for (const [i, content] of items.entries()) {
      const text = others[i]?.text;
      const key = textOf(content);
      if (text === undefined || key === main) continue;
      const group = groups.get(key) ?? { content, texts: [] };
      group.texts.push(text);
      groups.set(key, group);
    }
    const [only, ...more] = groups.values();
    const slip = only !== undefined && more.length === 0 ? only.texts.find(({ label }) => isSlip(label)) : undefined;
    if (only !== undefined && slip !== undefined) return this.correction(lemma, only.content, slip);
    const own = this.chosenIn(lemma, this.main);
    return xml('app', { label: own.find(({ place }) => place !== undefined)?.place }, [
      xml(
        'lem',
        this.witnesses(
          own.flatMap(({ labels }) => labels),
          own,
        ),
        lemma,
      ),
      ...[...groups.values()].map(({ content, texts }) => this.reading(content, texts)),
    ]);
  }

  private reading(content: readonly XmlElement[], texts: readonly LabelledText[]): XmlElement {
    const [first] = texts;
    const chosen = first === undefined ? [] : this.chosenIn(content, first);
    const labels = [...new Set(texts.map(({ label }) => label))];
    const element = xml('rdg', this.witnesses(labels, chosen), content);
    if (first !== undefined) this.readings.set(element, first);
    return element;
  }

  /** A slip of the source and what must have been meant, the main text first. */
  private correction(lemma: readonly XmlElement[], content: readonly XmlElement[], text: LabelledText): XmlElement {
    const resp = responsible(this.environment);
    const element = xml(text.label, text.label === 'corr' ? { resp } : {}, content);
    this.readings.set(element, text);
    const other = text.label === 'corr' ? xml('sic', {}, lemma) : xml('corr', { resp }, lemma);
    return xml('choice', {}, [other, element]);
  }

  /** The options in which the elements stand: of each the innermost that it has. */
  private chosenIn(elements: readonly XmlElement[], { chosen }: Text): readonly ChosenOption[] {
    const ids = elements.flatMap(idsIn);
    return [...new Set(ids.flatMap((id) => chosen.get(id)?.at(-1) ?? []))];
  }

  private witnesses(labels: readonly string[], chosen: readonly ChosenOption[]): XmlAttributes {
    const named = [...new Set(labels)];
    return {
      source: references(named, this.environment, /^source-/),
      hand: references(named, this.environment, /^hand-/),
      class: references(named, this.environment, /^reading-/),
      type: words(...named.filter(isSlip), chosen.some(({ doubtful }) => doubtful) && 'doubtful'),
    };
  }
}

/** One text for elements that hold the same; bars are counted otherwise where some are left out. */
const textOf = (elements: readonly XmlElement[]): string =>
  JSON.stringify(elements, (key, value) => (key === 'n' || key === 'metcon' ? undefined : value));

const isSlip = (label: string): boolean => label === 'sic' || label === 'corr';

const childrenOf = ({ content }: XmlElement): readonly XmlElement[] =>
  typeof content === 'object' ? content.filter((child) => child !== undefined) : [];

const keys = new WeakMap<XmlElement, string>();

/** What is compared child by child goes by its name and attributes, everything else by all that it holds. */
function keyOf(element: XmlElement): string {
  const known = keys.get(element);
  if (known !== undefined) return known;
  const key = COMPARED.has(element.name) ? `${element.name} ${identity(element)}` : JSON.stringify(element);
  keys.set(element, key);
  return key;
}

function identity({ name, attributes }: XmlElement): string {
  const entries = Object.entries(attributes);
  return JSON.stringify(name === 'measure' ? entries.filter(([key]) => !NUMBERED.has(key)) : entries);
}

/** The ids of an element and all that it holds. */
export function idsIn(element: XmlElement): readonly string[] {
  const id = element.attributes['xml:id'];
  return [...(id === undefined ? [] : [`${id}`]), ...childrenOf(element).flatMap(idsIn)];
}
