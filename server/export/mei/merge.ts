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
import type { Measure } from '../measures';
import { childrenOf, type XmlAttributes, type XmlElement, xml } from '../xml';
import { align, type Difference } from './alignment';
import { DOUBTFUL, references, responsible, words } from './editorial';
import { idsIn } from './elements';
import { addressOfId, eventOf, Ids, placeAt } from './ids';
import { withOwnIds } from './ownIds';
import { withSaid } from './placeNotes';
import { withoutMarks } from './places';
import { withSharedIds } from './sharedIds';
import type { Document } from './tree';

export interface LabelledText extends Document {
  readonly label: string;
  /** The label of the option inside which alone it differs. */
  readonly within: string | undefined;
}

type TellBroken = (label: string, bar: Measure) => void;

/** @param tellBroken a bar of a variant whose time is wrong has no text to compare */
export function merged(
  main: Document,
  variants: readonly LabelledText[],
  environment: Environment,
  tellBroken: TellBroken,
): XmlElement {
  const others = variants.map((text) => ({ text, element: withSharedIds(main.root, text.root) }));
  const first = new Merger(main, environment, tellBroken, new Map());
  first.element(main.root, others);
  // What points to a note that a variant repeats differs in it, too: it points to the note as repeated.
  const second = new Merger(main, environment, () => undefined, repeatedIds(main.root, first.readings));
  const both = withOwnIds(second.element(main.root, others), second.readings);
  const said = [main, ...variants].flatMap((text) => text.said);
  return withoutMarks(withSaid(both, said));
}

/** Ids of the main text that stand in a variant again. */
function repeatedIds(main: XmlElement, readings: ReadonlyMap<XmlElement, LabelledText>): Repeated {
  const own = new Set(idsIn(main));
  const repeated = new Map<LabelledText, Set<string>>();
  for (const [element, text] of readings) {
    const ids = repeated.get(text) ?? new Set<string>();
    for (const id of idsIn(element)) if (own.has(id)) ids.add(id);
    repeated.set(text, ids);
  }
  return repeated;
}

type Repeated = ReadonlyMap<LabelledText, ReadonlySet<string>>;

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
const NUMBERED: ReadonlySet<string> = new Set(['n', 'metcon']);

class Merger {
  /** The texts of the `rdg` and `corr` elements made. */
  readonly readings = new Map<XmlElement, LabelledText>();
  private readonly ids = new Ids();

  constructor(
    private readonly main: Document,
    private readonly environment: Environment,
    private readonly tellBroken: TellBroken,
    private readonly repeated: Repeated,
  ) {}

  element(main: XmlElement, others: readonly Other[]): XmlElement {
    const sound = others.filter((other) => this.isSound(other));
    if (sound.length === 0 || !COMPARED.has(main.name)) return main;
    const children = childrenOf(main);
    const lists = sound.map(({ element }) => childrenOf(element));
    const { differences, same } = align(children, lists, keyOf, (item, i) =>
      this.pointsToRepeated(item, sound[i]?.text),
    );
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
      content.push(...this.apparatus(children.slice(difference.from, difference.to), difference, sound));
    }
    takeSame(children.length);
    return xml(main.name, main.attributes, content);
  }

  private isSound({ text, element }: Other): boolean {
    if (!isBroken(element)) return true;
    this.tell(text, [element]);
    return false;
  }

  private tell({ label, bars }: LabelledText, broken: readonly XmlElement[]): void {
    for (const { attributes } of broken) {
      const bar = bars.get(`${attributes['xml:id']}`);
      if (bar !== undefined) this.tellBroken(label, bar);
    }
  }

  /** Whether an element beside the staves points to a note that this text repeats. */
  private pointsToRepeated(element: XmlElement, text: LabelledText | undefined): boolean {
    const ids = text && this.repeated.get(text);
    return (
      ids !== undefined && ids.size > 0 && !COMPARED.has(element.name) && targetsOf(element).some((id) => ids.has(id))
    );
  }

  private apparatus(
    lemma: readonly XmlElement[],
    { items }: Difference<XmlElement>,
    others: readonly Other[],
  ): readonly XmlElement[] {
    const groups = new Map<string, { readonly content: readonly XmlElement[]; readonly texts: LabelledText[] }>();
    const main = textOf(lemma);
    for (const [i, content] of items.entries()) {
      const text = others[i]?.text;
      if (text === undefined || !this.differsHere(content, text)) continue;
      const points = content.some((element) => this.pointsToRepeated(element, text));
      const key = points ? `${text.label} ${text.within} ${textOf(content)}` : textOf(content);
      if (key === main) continue;
      const group = groups.get(key) ?? { content, texts: [] };
      group.texts.push(text);
      groups.set(key, group);
    }
    const [only, ...more] = groups.values();
    if (only === undefined) return lemma;
    const slip = more.length === 0 ? only.texts.find(({ label }) => isSlip(label)) : undefined;
    const texts = [{ content: lemma, text: this.main }, ...[...groups.values()].flatMap(besideItsText)];
    const named = this.named(texts);
    if (slip !== undefined) return [this.correction(named, lemma, only.content, slip)];
    const own = this.chosenIn(lemma, this.main);
    const elsewhere = new Set([...groups.values()].flatMap(({ texts }) => texts.map(({ label }) => label)));
    const labels = own.flatMap((option) => option.labels).filter((label) => !elsewhere.has(label));
    return [
      xml('app', named, [
        xml('lem', this.witnesses(labels, own), lemma),
        ...[...groups.values()].map(({ content, texts }) => this.reading(content, texts)),
      ]),
    ];
  }

  /** The id of the place where texts differ, and its name if it has one. */
  private named(
    texts: readonly { readonly content: readonly XmlElement[]; readonly text: Document }[],
  ): Pick<XmlAttributes, 'xml:id' | 'label'> {
    const label = texts
      .flatMap(({ content, text }) => this.chosenIn(content, text))
      .find(({ place }) => place !== undefined)?.place;
    const ids = texts.flatMap(({ content, text }) => content.flatMap(idsIn).map((id) => ({ id, text })));
    const place = ids.map(({ id, text }) => text.places.get(eventOf(id))).find((one) => one !== undefined);
    const first = ids[0] && placeAt(ids[0].id);
    const id = place ?? first;
    return { 'xml:id': id && this.ids.take(id), label };
  }

  /** A text that is taken inside one option only differs where it stands in that; one whose time is wrong says nothing. */
  private differsHere(content: readonly XmlElement[], text: LabelledText): boolean {
    const broken = content.flatMap(brokenIn);
    this.tell(text, broken);
    if (broken.length > 0) return false;
    if (text.within === undefined) return true;
    const { label, within, chosen } = text;
    return content.flatMap(idsIn).some((id) => {
      const options = chosen.get(eventOf(id)) ?? [];
      const isWithin = options.some(({ labels }) => labels.includes(within)) || isOfWitness(id, within);
      return isWithin && options.at(-1)?.labels.includes(label) === true;
    });
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
  private correction(
    named: XmlAttributes,
    lemma: readonly XmlElement[],
    content: readonly XmlElement[],
    text: LabelledText,
  ): XmlElement {
    const resp = responsible(this.environment);
    const made = (name: string, children: readonly XmlElement[], of: Document): XmlElement => {
      const isDoubtful = this.chosenIn(children, of).some(({ doubtful }) => doubtful.length > 0);
      return xml(name, { resp: name === 'corr' ? resp : undefined, cert: isDoubtful ? DOUBTFUL : undefined }, children);
    };
    const element = made(text.label, content, text);
    this.readings.set(element, text);
    const other = made(text.label === 'corr' ? 'sic' : 'corr', lemma, this.main);
    return xml('choice', named, [other, element]);
  }

  /** The outermost options in which the elements stand. */
  private chosenIn(elements: readonly XmlElement[], text: Document): readonly ChosenOption[] {
    return [...new Set(optionsIn(elements, text).flatMap(([outermost]) => outermost ?? []))];
  }

  private witnesses(labels: readonly string[], chosen: readonly ChosenOption[]): XmlAttributes {
    const named = [...new Set(labels)];
    return {
      source: references(named, this.environment, /^source-/),
      hand: references(named, this.environment, /^hand-/),
      class: references(named, this.environment, /^reading-/),
      type: words(...named.filter(isSlip), chosen.some(({ doubtful }) => doubtful.length > 0) && 'doubtful'),
    };
  }
}

/** The content of a group, with the first of the texts that have it. */
const besideItsText = <T>({
  content,
  texts,
}: {
  readonly content: readonly XmlElement[];
  readonly texts: readonly T[];
}) => texts.slice(0, 1).map((text) => ({ content, text }));

/** One text for elements that hold the same; bars are counted otherwise where some are left out. */
const textOf = (elements: readonly XmlElement[]): string =>
  JSON.stringify(withoutMarks(xml('text', {}, elements)), (key, value) =>
    key === 'n' || key === 'metcon' ? undefined : value,
  );

const isSlip = (label: string): boolean => label === 'sic' || label === 'corr';

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
  if (name !== 'measure') return JSON.stringify(entries);
  const kept = entries.filter(([key]) => !NUMBERED.has(key));
  return JSON.stringify(kept).replace(/ ?\bbroken\b/, '');
}

const isBroken = ({ name, attributes }: XmlElement): boolean =>
  name === 'measure' && /\bbroken\b/.test(`${attributes.type}`);

/** Whether an event stands in the lane of a witness. */
const isOfWitness = (id: string, witness: string): boolean => addressOfId(id)?.lane?.endsWith(`.${witness}`) === true;

/** The measures in an element whose time is wrong. */
const brokenIn = (element: XmlElement): readonly XmlElement[] =>
  isBroken(element) ? [element] : childrenOf(element).flatMap(brokenIn);

/** The options around the events that elements are, hold, or belong to. */
const optionsIn = (elements: readonly XmlElement[], { chosen }: Document): readonly (readonly ChosenOption[])[] =>
  elements.flatMap(idsIn).flatMap((id) => {
    const options = chosen.get(eventOf(id));
    return options === undefined ? [] : [options];
  });

/** The ids to which an element and all that it holds point. */
const targetsOf = (element: XmlElement): readonly string[] => [
  ...Object.values(element.attributes).flatMap((value) =>
    typeof value === 'string' && value.startsWith('#') ? value.split(' ').map((one) => one.slice(1)) : [],
  ),
  ...childrenOf(element).flatMap(targetsOf),
];
