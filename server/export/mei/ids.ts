/**
 * The `xml:id` of every element that comes from the text: made of its address, so that the same text gives the same ids and
 * whoever meets one finds the place again.
 *
 * | id | of |
 * | --- | --- |
 * | `e-3v-2-dessus-4.3` | the event at the address `3v/2/dessus/4.3`: a note, chord, rest, gap or lacuna |
 * | `e-3v-2-dessus-4.3-n2` | the second note of that chord |
 * | `e-3v-2-dessus-4.3-k2` | the second of the notes into which it is cut at barlines |
 * | `e-3v-2-dessus-4.3-m1`, `-n2-m1` | the first mark of that event, of a note of that chord; likewise `o` what the source draws of a note that runs through a barline, `t` a tie, `u` a curve that begins there, or ends there if its beginning is not shown, `w` words, `f` figures, `s` a syllable, `c` a custos, `a` an annotation, `g` what is lost, `h` a hint or bracket over a passage |
 * | `e-3v-2-dessus-4.3-r2` | the second of the events that stand for it where signs or rhythm are written as played; in an ossia with `-in-ossia` at its end |
 * | `b-3v-2-dessus-4.1` | the bar that begins with that event |
 * | `b-3v-2-dessus-4.1-l1` | the first barline inside that bar; likewise `q` a tempo or a manual |
 * | `v-3v-2-dessus-4.2` | where texts differ: a place of options, or what begins with that event |
 * | `s-3v-2`, `z-3v-2`, `p-3v` | a system, its place on the picture of its page, that page |
 * | `source-K`, `hand-K.2`, `reading-french`, `editor-MK`, `note-n7` | what is declared |
 *
 * In a page's name whatever is no letter or digit of ASCII stands as its code between underscores: `_20_` a space. An id that
 * would stand twice has `-x2`, `-x3` … at its end; what a variant repeats of the main text ends with `-in-` and its label.
 */
import type { ScoreSystem, VoiceEvent } from '../../score/score';

const encoded = (name: string): string =>
  name.replace(/[^A-Za-z0-9]/gu, (c) => `_${(c.codePointAt(0) ?? 0).toString(16)}_`);

const decoded = (text: string): string =>
  text.replace(/_([0-9a-f]+)_/g, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)));

/** A name as an attribute holds it that allows no white space. */
export const wordOf = (name: string): { readonly n: string | undefined; readonly label: string | undefined } =>
  name === '' || /\s/.test(name) ? { n: undefined, label: name } : { n: name, label: undefined };

type Place = Pick<ScoreSystem, 'page' | 'ordinal'>;

export const pageId = (page: string): string => `p-${encoded(page)}`;

export const systemId = ({ page, ordinal }: Place): string => `s-${encoded(page)}-${ordinal}`;

/** Where a system lies on the picture of its page. */
export const zoneId = ({ page, ordinal }: Place): string => `z-${encoded(page)}-${ordinal}`;

export const eventId = (system: Place, { laneName, address }: Pick<VoiceEvent, 'laneName' | 'address'>): string =>
  `e-${encoded(system.page)}-${system.ordinal}-${laneName}-${address}`;

/** The id of the event at an address, `3v/2/dessus/4.3`; in the part beneath another its lane is `lane(dessus)`. */
export function idOfAddress(address: string, lane = (name: string): string => name): string {
  const [, page = '', system = '', name = '', event = ''] = /^(.*)\/(\d+)\/([^/]+)\/([^/]+)$/.exec(address) ?? [];
  return eventId({ page, ordinal: Number(system) }, { laneName: lane(name), address: event });
}

/** A place where texts differ. */
export const placeId = (system: Place, event: Pick<VoiceEvent, 'laneName' | 'address'>): string =>
  placeAt(eventId(system, event));

/** The place that begins with the element of this id. */
export const placeAt = (id: string): string => id.replace(/^[a-z]-/, 'v-');

/** A bar by the event that begins it, whatever option or witness that stands in, so that a bar has one id in all of them. */
export function barId(system: Place, voice: string, address: string): string {
  const [bar = '1', event = '1'] = address.split('.');
  return `b-${encoded(system.page)}-${system.ordinal}-${voice}-${bar}.${event}`;
}

/** Parts of an event, by the letter that stands before their number. */
export type Part = 'n' | 'k' | 'o' | 'm' | 't' | 'u' | 'w' | 'f' | 's' | 'c' | 'a' | 'g' | 'h' | 'l' | 'q';

export const partId = (id: string, part: Part, number: number): string => `${id}-${part}${number}`;

export type DeclaredKind = 'source' | 'hand' | 'reading' | 'editor' | 'note';

export const declaredId = (kind: DeclaredKind, name: string): string => `${kind}-${name}`;

/** Gives each id once. */
export class Ids {
  private readonly taken = new Map<string, number>();

  has(id: string): boolean {
    return this.taken.has(id);
  }

  take(id: string): string {
    const before = this.taken.get(id) ?? 0;
    this.taken.set(id, before + 1);
    return before === 0 ? id : this.take(`${id}-x${before + 1}`);
  }
}

/** Where an element comes from. */
export interface IdAddress {
  readonly page: string;
  /** From 1 on its page. */
  readonly system: number;
  /** A voice, or `voice.witness`; undefined of a system. */
  readonly lane: string | undefined;
  /** `4.3`, `4.3.L.2`; of a bar the address of its first event. */
  readonly event: string | undefined;
  /** From 1: which note of a chord; undefined of the whole event. */
  readonly member: number | undefined;
}

const PATTERN = /^[ebsvz]-([A-Za-z0-9_]+)-(\d+)(?:-([A-Za-z][\w.]*)-(\d[\w.]*)((?:-[a-z]\d+)*))?/;

/** The address from which an id was made; undefined of ids that no event, bar or system of the text has. */
export function addressOfId(id: string): IdAddress | undefined {
  const match = PATTERN.exec(id);
  if (match === null) return undefined;
  const [, page = '', system = '', lane, event, parts = ''] = match;
  const member = /-n(\d+)/.exec(parts)?.[1];
  return {
    page: decoded(page),
    system: Number(system),
    lane,
    event,
    member: member === undefined ? undefined : Number(member),
  };
}

/** The ids of events in a text. */
export const EVENT_ID = /\be-[A-Za-z0-9_]+-\d+-[\w.]+-[\w.]+/g;

/** The id of the event to which a part of it belongs: of `e-3v-2-dessus-4.3-m1` that without its end. */
export const eventOf = (id: string): string => /^e-[A-Za-z0-9_]+-\d+-[\w.]+-[\w.]+/.exec(id)?.[0] ?? id;
