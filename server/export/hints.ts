/** Words of spans that are hints for a practice: they change no written value, and where readings limit them hold in these alone. */
import type { SpanWord } from '../../grammar/tree';

export const HINTS: ReadonlySet<SpanWord> = new Set(['overdot', 'inegal', 'assimilate', 'snap', 'literal']);
