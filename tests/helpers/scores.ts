/** Scores straight from the core, with no files around them. */
import { parseFile } from '../../grammar/parse';
import { choiceOf } from '../../server/readings/choices';
import { buildScore } from '../../server/score/build';
import { buildEnvironment } from '../../server/score/environment';
import type { Score } from '../../server/score/score';

/** The score of a text without includes, in one of its readings. */
export function scoreOf(text: string, reading = 'written', file = 'score.bent'): Score {
  const tree = parseFile(text);
  const environment = buildEnvironment(file, tree, []);
  const choice = choiceOf(environment, reading);
  if (choice === undefined) throw new Error(`the text has no reading ${reading}`);
  return buildScore(file, tree, environment, choice);
}
