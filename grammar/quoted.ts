/** Text between quotation marks: each of its own is doubled. */
export const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** The text that stands between them. */
export const unquoted = (image: string): string => image.slice(1, -1).replaceAll('""', '"');
