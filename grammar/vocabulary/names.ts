/** What may be a name, and which names are taken. */
import { spellingOf } from '../lanes/forms';

/** What a name in a statement stands for; look-ups, completion and renaming go by it. */
export type NameRole =
  | 'stave'
  | 'voice'
  | 'witness'
  | 'layer'
  | 'reading'
  | 'label'
  | 'place'
  | 'note'
  | 'editor'
  | 'table'
  | 'temperament'
  | 'section'
  | 'instrument'
  | 'manual'
  | 'shape';

const plainName = /^[A-Za-z][A-Za-z0-9_]*$/;
const hyphenedName = /^[A-Za-z][A-Za-z0-9_-]*$/;
const layerName = /^[A-Za-z][A-Za-z0-9_]*\.[1-9][0-9]?$/;
const clefLike = /^[GCF][0-9]$/;

/** Roles whose names no lane cites, so that they may have hyphens. */
const hyphened: ReadonlySet<NameRole> = new Set(['table', 'temperament', 'instrument']);

/** Whether `text` can be a name of this role: a letter, then letters, digits and `_`; a layer is `K.2`. */
export function isName(text: string, role: NameRole): boolean {
  if (role === 'layer') return layerName.test(text);
  if (role === 'label') return plainName.test(text) || layerName.test(text);
  return (hyphened.has(role) ? hyphenedName : plainName).test(text);
}

/** The name that is nearest to a text that is none: without accents, its words joined by `_`; undefined where that is none either. */
export function nameMeant(text: string, role: NameRole): string | undefined {
  const meant = text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[-'’]+/g, '_');
  return meant !== text && isName(meant, role) ? meant : undefined;
}

/** Words that mean something where a name of this role would stand. */
const reserved: Partial<Record<NameRole, ReadonlySet<string>>> = {
  voice: new Set(['fig', 'text']),
  // The rest of a stave's words are clauses that follow a name or stand beside it in a head.
  stave: new Set(['loose', 'free', 'key', 'meter', 'tempo', 'at', 'none', 'lines', 'stems']),
  witness: new Set(['written', 'main', 'sic', 'corr', 'omit']),
  reading: new Set(['written', 'main', 'sic', 'corr', 'omit']),
  place: new Set(['written', 'main', 'sic', 'corr', 'omit']),
};

/** Whether the word has a meaning of its own where names of this role stand. */
export const isReserved = (text: string, role: NameRole): boolean => reserved[role]?.has(text) ?? false;

/** The reserved words of a role, for the reference. */
export const reservedNames = (role: NameRole): readonly string[] => [...(reserved[role] ?? [])];

/** Whether a stave's name would be read as a note (`f`, `bb`) or a clef (`G2`). */
export const readsAsNoteOrClef = (text: string): boolean => spellingOf(text) !== undefined || clefLike.test(text);

/**
 * A table's own name for a sign made typable: small letters without accents, words joined by `_` ("Tremblement appuyé"
 * becomes `tremblement_appuye`); undefined where nothing is left of it.
 */
export function typableName(text: string): string | undefined {
  const plain = text
    .normalize('NFD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/œ/g, 'oe')
    .replace(/æ/g, 'ae')
    .replace(/ß/g, 'ss')
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^[_0-9]+/, '')
    .replace(/_$/, '');
  return plain === '' ? undefined : plain;
}
