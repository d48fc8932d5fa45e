/** What is too long to be held at once. */

/** Bytes that are made while they are written: each chunk is written over by the next. */
export interface Chunks {
  readonly chunks: Iterable<Uint8Array>;
}

export const areChunks = (content: unknown): content is Chunks =>
  typeof content === 'object' && content !== null && 'chunks' in content;

/** All bytes at once, for whoever cannot write them one after another. */
export function together({ chunks }: Chunks): Uint8Array {
  const all = Array.from(chunks, (chunk) => chunk.slice());
  const bytes = new Uint8Array(all.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of all) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
