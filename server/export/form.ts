/** The form in which a score is written and drawn: its rhythm and its signs as the source has them, or as they are played. */
import { catalogue } from '../../grammar/findings/catalogue';
import type { PlacedProblem, Score } from '../score/score';
import type { BarsChosen } from './measures';
import { type OrnamentOptions, withOrnaments } from './ornaments';
import { type RhythmOptions, withRhythm } from './rhythm';

export interface FormOptions extends OrnamentOptions, RhythmOptions, BarsChosen {
  /** `both`: beneath it the rhythm as it is written, in a part of its own. */
  readonly show?: 'both';
}

export interface Formed {
  readonly score: Score;
  /** The rhythm as it is written, where both are shown. */
  readonly beneath?: Score;
  /** What could not be said in that form. */
  readonly problems: readonly PlacedProblem[];
}

/** Signs stand in the time that the rhythm leaves them, as they are played. */
export function inForm(given: Score, options: FormOptions): Formed {
  const formed = inOneForm(given, options);
  if (options.show !== 'both') return formed;
  const { score: beneath } = inOneForm(given, { ...options, rhythm: 'written' });
  return { ...formed, beneath };
}

function inOneForm(given: Score, options: FormOptions): Formed {
  const timed = withRhythm(given, options);
  const { score, problems } = withOrnaments(timed.score, options);
  return { score, problems: [...timed.problems.filter(isOfExport), ...problems] };
}

/** What a reading leaves to be decided is asked by the proof. */
export const isOfExport = ({ problem }: PlacedProblem): boolean => catalogue[problem.code].level !== 'hint';
