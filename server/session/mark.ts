/**
 * Places of a text that begins with a byte order mark. A client that keeps the mark counts it as the first sign of the first
 * line; the text that is read is without it.
 */
import { markOf } from '../workspace/encoding';

/** So many signs the client counts more in the first line. */
export const signsBefore = (text: string): number => markOf(text).length;

/** Everything that a message says with its places in the first line moved; where nothing is to be moved, the message itself. */
export function moved<Said>(said: Said, by: number): Said {
  return by === 0 ? said : (movedValue(said, by) as Said);
}

function movedValue(value: unknown, by: number): unknown {
  if (Array.isArray(value)) return value.map((one) => movedValue(one, by));
  if (typeof value !== 'object' || value === null) return value;
  const { line, character } = value as { readonly line?: unknown; readonly character?: unknown };
  if (typeof line === 'number' && typeof character === 'number') {
    return { ...value, character: line === 0 ? Math.max(character + by, 0) : character };
  }
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, key === 'data' ? movedTokens(inner, by) : movedValue(inner, by)]),
  );
}

/** Tokens are numbers; the first says its line and its place in it. */
function movedTokens(data: unknown, by: number): unknown {
  if (!Array.isArray(data) || !data.every((one) => typeof one === 'number')) return data;
  const [line, character = 0, ...others]: readonly number[] = data;
  return line === 0 ? [0, character + by, ...others] : data;
}
