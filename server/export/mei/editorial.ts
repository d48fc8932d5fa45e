/** Whose something is and how sure: witnesses, hands, editors, what is supplied, unclear, deleted, added. */
import type { Readings, SpanHead, SpanWord } from '../../../grammar/tree';
import { declaredNames, type Environment } from '../../score/environment';
import { type XmlAttributes, type XmlElement, xml } from '../xml';
import { declaredId } from './ids';

/** The id of a witness, layer or reading; undefined of `sic`, `corr` and what is not declared. */
export function idOfLabel(label: string, environment: Environment): string | undefined {
  const { witnesses, layers, readings } = declaredNames(environment);
  if (witnesses.includes(label)) return declaredId('source', label);
  if (layers.includes(label)) return declaredId('hand', label);
  return readings.includes(label) ? declaredId('reading', label) : undefined;
}

/** References to those of the names that are declared, for an attribute that holds several. */
export function references(
  names: readonly string[],
  environment: Environment,
  kinds: RegExp = /^/,
): string | undefined {
  const ids = names.flatMap((name) => idOfLabel(name, environment) ?? []).filter((id) => kinds.test(id));
  return ids.length === 0 ? undefined : ids.map((id) => `#${id}`).join(' ');
}

/** Words of an attribute that holds several; undefined where there are none. */
export const words = (...list: readonly (string | false | undefined)[]): string | undefined => {
  const told = list.filter((word) => word !== undefined && word !== false);
  return told.length === 0 ? undefined : told.join(' ');
};

/** What a mark or tie says of the texts in which it stands. */
export interface Limits {
  readonly attributes: {
    /** Readings. */
    readonly class: string | undefined;
    /** Sources and hands. */
    readonly corresp: string | undefined;
  };
  /** It stands in all but these. */
  readonly except: 'except' | undefined;
}

/** `:french,K` and `:!plain`. */
export const limits = (readings: Readings | undefined, environment: Environment): Limits => ({
  attributes: {
    class: readings && references(readings.names, environment, /^reading-/),
    corresp: readings && references(readings.names, environment, /^(source|hand)-/),
  },
  except: readings?.not === true ? 'except' : undefined,
});

/** The one editor who signs, if there is one alone. */
export function responsible({ editors }: Environment): string | undefined {
  const [name, ...others] = editors.keys();
  return name === undefined || others.length > 0 ? undefined : `#${declaredId('editor', name)}`;
}

/** How sure what is doubtful is (MEI 5.1, `data.CERTAINTY`). */
export const DOUBTFUL = 'low';

interface Doubt {
  readonly editors?: boolean;
  readonly doubtful?: boolean;
}

/** What the editor supplies is `supplied`; what the text doubts is `unclear`. */
export function withDoubt(element: XmlElement, { editors, doubtful }: Doubt, environment: Environment): XmlElement {
  const certain = editors === true ? xml('supplied', { resp: responsible(environment) }, [element]) : element;
  return doubtful === true ? unclear(certain) : certain;
}

export const unclear = (element: XmlElement): XmlElement =>
  xml('unclear', { type: 'doubtful', cert: DOUBTFUL }, [element]);

// ─── passages ────────────────────────────────────────────────────────────────────────────────────────────────────

/** The elements of MEI for the states of a passage; `hand`: whether the element names the hand. */
const STATES: Readonly<Partial<Record<SpanWord, { readonly name: string; readonly hand: boolean }>>> = {
  unclear: { name: 'unclear', hand: true },
  supplied: { name: 'supplied', hand: false },
  deleted: { name: 'del', hand: true },
  added: { name: 'add', hand: true },
};

export const isState = ({ word }: SpanHead): boolean => word !== undefined && STATES[word] !== undefined;

/** The passage around its elements. */
export function stateElement(head: SpanHead, children: readonly XmlElement[], environment: Environment): XmlElement {
  const { word, readings } = head;
  const state = word === undefined ? undefined : STATES[word];
  const { except } = limits(readings, environment);
  return xml(
    state?.name ?? 'supplied',
    {
      ...(word === 'supplied' ? { resp: responsible(environment) } : {}),
      ...holders(readings, state?.hand === true, environment),
      type: except,
    },
    children,
  );
}

/** The sources and hands of a passage; readings are classes of the text. */
function holders(readings: Readings | undefined, hand: boolean, environment: Environment): XmlAttributes {
  if (readings === undefined) return {};
  const { names } = readings;
  return {
    source: references(names, environment, hand ? /^source-/ : /^(source|hand)-/),
    hand: hand ? references(names, environment, /^hand-/) : undefined,
    class: references(names, environment, /^reading-/),
  };
}
