/** Which option is taken at each place of the text. */
import type { Label, Readings } from '../../grammar/tree';

export type AccidentalPractice = 'note' | 'group' | 'bar';

/**
 * A choice is data, so that a system's score can be kept by it.
 *
 * `written` takes the first option and `sic`; every other choice takes `corr`.
 */
export interface Choice {
  /** `written`, a reading's or a witness's name. */
  readonly name: string;
  /** Place names to the labels taken there, the first that it has. */
  readonly at: ReadonlyMap<string, readonly string[]>;
  /** What the reading and those it is built on say of places, the nearest first. */
  readonly stated: readonly { readonly place: string; readonly label: string }[];
  /** Place names to the labels taken there if no other that is wished for is found. */
  readonly otherwise: ReadonlyMap<string, readonly string[]>;
  /** Labels in order of preference: the reading's own, its ancestors' nearest first, then what it takes. */
  readonly labels: readonly string[];
  /** The practice of accidentals of this choice. */
  readonly accidentals: AccidentalPractice;
  /** The order of sections that a reading states, itself or one it is built on. */
  readonly order: StatedOrder | undefined;
}

/** An order of sections and the reading that states it. */
export interface StatedOrder {
  readonly names: readonly string[];
  readonly block: number;
  /** Index in the block's statements. */
  readonly statement: number;
  /** Undefined: the file itself. */
  readonly file: string | undefined;
}

export const written = (accidentals: AccidentalPractice): Choice => ({
  name: 'written',
  at: new Map(),
  stated: [],
  otherwise: new Map(),
  labels: [],
  accidentals,
  order: undefined,
});

/** `K.2` for the second layer of K, else the name. */
export const labelText = (label: Label): string =>
  label.layer === undefined ? label.name : `${label.name}.${label.layer}`;

/**
 * Index of the option that the choice takes: what the reading says of the named place, then its labels in order, then
 * `sic` or `corr`, then what is taken at the places decided together, then the first.
 */
export function chooseOption(choice: Choice, place: string | undefined, options: Options): number {
  const otherwise = place === undefined ? undefined : choice.otherwise.get(place);
  return matchingOption(choice, place, options) ?? firstOf(options, otherwise) ?? 0;
}

/** The same where something that the choice wishes for is found; undefined else. */
export function matchingOption(choice: Choice, place: string | undefined, options: Options): number | undefined {
  const atPlace = place === undefined ? undefined : choice.at.get(place);
  const index = firstOf(options, atPlace) ?? firstOf(options, choice.labels);
  if (index !== undefined) return index;
  const mended = labelled(options, choice.name === 'written' ? 'sic' : 'corr');
  return mended < 0 ? undefined : mended;
}

/** Of lanes of witnesses the one that the choice prefers; undefined where it takes none of them. */
export function preferredWitness<Rival extends { readonly name: string }>(
  choice: Choice,
  rivals: readonly Rival[],
): Rival | undefined {
  const options = rivals.map(({ name }) => ({ labels: [{ name, doubtful: false, pos: 0, len: 0 }] }));
  return rivals[matchingOption(choice, undefined, options) ?? -1];
}

type Options = readonly { readonly labels: readonly Label[] }[];

function firstOf(options: Options, names: readonly string[] | undefined): number | undefined {
  if (names === undefined) return undefined;
  for (const name of names) {
    const index = labelled(options, name);
    if (index >= 0) return index;
  }
  return undefined;
}

/** K itself goes before a layer K.2, which stands for K only where K has no option of its own; -1 where neither has one. */
function labelled(options: Options, name: string): number {
  let ofLayer = -1;
  for (let index = 0; index < options.length; index++) {
    const { labels } = options[index] as Options[number];
    for (const label of labels) {
      if (labelText(label) === name) return index;
      if (ofLayer < 0 && label.name === name) ofLayer = index;
    }
  }
  return ofLayer;
}

/** Whether an option is this name's, or a layer's that stands for it. */
export const bears = (option: Options[number], name: string): boolean => labelled([option], name) >= 0;

/** Whether a mark or tie that is limited to readings or witnesses holds in a choice. */
export const holdsIn = (readings: Readings | undefined, choice: Choice): boolean =>
  readings === undefined ||
  readings.names.some((name) => name === choice.name || choice.labels.includes(name)) !== readings.not;
