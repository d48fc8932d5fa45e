/**
 * A witness or reading alone as a text of the notation: its options taken, the lanes of witnesses in place of the main lane's
 * bars, what is limited to others gone. All else of the text, its comments included, stays; then it is laid out.
 */
import { formatFile } from '../../grammar/format';
import { parseFile } from '../../grammar/parse';
import { edited, type TextChange } from '../document/edits';
import { buildScore } from '../score/build';
import { written } from '../score/choice';
import type { PlacedProblem, Score } from '../score/score';
import { withoutOthers } from './alone/declarations';
import { differences, shortByOmission } from './alone/music';
import { systemChanges } from './alone/systems';
import { unsaidPlaces } from './alone/unsaid';

export interface AloneExport {
  readonly text: string;
  /** Bars that could not be typed as the choice has them, and what is said of places that it omits. */
  readonly problems: readonly PlacedProblem[];
}

/** The text of a score's choice alone. Where nothing in it depends on a choice it comes back as it is. */
export function exportAlone(score: Score): AloneExport {
  const { text } = score.tree;
  const changes = score.pieces.flatMap(({ systems }) => systems.flatMap((system) => systemChanges(score, system)));
  if (changes.length === 0 && score.choice.accidentals === score.environment.accidentals) return { text, problems: [] };
  const resolved = withIrregular(score, edited(text, changes));
  const alone = formatFile(withoutOthers(score, resolved)).text;
  return { text: alone, problems: [...differences(score, readAs(score, alone)), ...unsaidPlaces(score)] };
}

/** A text read as it stands, under the declarations of a score. */
function readAs({ file, environment, choice }: Score, text: string): Score {
  const { accidentals } = choice;
  return buildScore(file, parseFile(text), { ...environment, accidentals }, written(accidentals));
}

const OMIT = /\bomit\b/;

/** What is short because something is omitted is meant to be so. */
function withIrregular(score: Score, text: string): string {
  if (!OMIT.test(score.tree.text)) return text;
  const changes = shortByOmission(score, readAs(score, text)).map(
    (offset): TextChange => ({ offset, length: 0, text: ' (irregular)' }),
  );
  return edited(text, changes);
}
