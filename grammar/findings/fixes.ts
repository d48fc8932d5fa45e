/** Changes of text that many findings offer. */
import type { Span } from '../tree';
import type { Fix } from './finding';

/** Another text in the place of what is typed. */
export const replacing = ({ pos, len }: Span, text: string, title = `write ${text}`): Fix => ({
  title,
  edits: [{ pos, len, text }],
});

/** Glues what begins at one place to what ends at another. */
export const gluing = (end: number, begin: number): Fix =>
  replacing({ pos: end, len: begin - end }, '', 'take the white space away');
