/**
 * The same text by itself. A piece cut from a text keeps the whole text in memory, so whatever is kept longer than a
 * version of a file is detached from it first.
 */
export const detached = (text: string): string => ` ${text}`.slice(1);
