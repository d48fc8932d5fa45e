/** Text between quotation marks: each of its own is doubled. */
export const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** What is typed between quotation marks, each doubled one made one. */
export const undoubled = (inner: string): string => inner.replaceAll('""', '"');

/** The text that stands between quotation marks. */
export const unquoted = (image: string): string => undoubled(image.slice(1, -1));
