/** All checks, in the order in which they run. */
import type { BlockContents } from '../../grammar/tree';
import type { Choice } from '../score/choice';
import type { Environment } from '../score/environment';
import type { Onlooker } from '../score/piece';
import type { PlacedProblem, Score, SystemScore } from '../score/score';
import { accidentalEnds, sharedLine } from './accidentals';
import type { Check, Given } from './check';
import { clefsAtHeads } from './clefs';
import { outsideCompass, shortOctave } from './compass';
import { consecutives } from './consecutives';
import { custodes } from './custodes';
import { endingsAlone } from './endings';
import { falseRelation } from './falseRelation';
import { figuresHeld } from './figuresHeld';
import { handStretches, handsIn } from './hands';
import { farFromStave, octaveSlips } from './heights';
import { heldKeys } from './heldKeys';
import { leadingNotes } from './leadingNote';
import { countsNotes, missingKeys } from './missingKeys';
import { noMusic } from './music';
import { unknownNames } from './names';
import { usesOf } from './noteUses';
import { optionsUnreached } from './optionsUnreached';
import { orderAgainstRepeats } from './order';
import { placesTwoWays } from './placesTwoWays';
import { ratiosRecorded } from './ratios';
import { nearlyRepeated, printsOf } from './repeats';
import { restated } from './restated';
import { sourIntervals, sourTunings } from './sour';
import { type Facts, type Found, factsOf, keepingLooks, type Look, overSystems } from './systems';
import { tunings } from './tunings';
import { unusedDeclarations } from './unused';
import { findingUses } from './uses';
import { silentWitnesses } from './witnesses';

/** What is looked for in each system. */
const looks: readonly Look[] = [
  outsideCompass,
  shortOctave,
  clefsAtHeads,
  restated,
  custodes,
  figuresHeld,
  farFromStave,
  octaveSlips,
  accidentalEnds,
  sharedLine,
  falseRelation,
  leadingNotes,
  consecutives,
  heldKeys,
];

const foundInSystem = keepingLooks(looks);

export const checks: readonly Check[] = [
  noMusic,
  unknownNames,
  tunings,
  unusedDeclarations,
  silentWitnesses,
  orderAgainstRepeats,
  endingsAlone,
  optionsUnreached,
  placesTwoWays,
  ratiosRecorded,
  overSystems(foundInSystem),
  nearlyRepeated,
  handStretches,
  missingKeys,
  sourIntervals,
];

/** What checks find in the score of one choice; without a choice, in the text that all share. */
export interface Checked {
  readonly choice: string | undefined;
  readonly problems: readonly PlacedProblem[];
}

const nothingFound: Checked = { choice: undefined, problems: [] };

/**
 * Looks at a system as soon as its score is there, while its events are at hand: `checkFile` finds what was found and asks for
 * no events again.
 */
export class LooksAhead implements Onlooker {
  private readonly facts: Facts;
  private readonly counts: boolean;
  private readonly more: readonly Found[];

  constructor(
    environment: Environment,
    private readonly choice: Choice,
  ) {
    this.facts = factsOf(environment, choice);
    this.counts = countsNotes(environment);
    const hands = handsIn(environment);
    this.more = [...(hands === undefined ? [] : [hands]), ...sourTunings(environment)];
  }

  look(contents: BlockContents, score: SystemScore, before: SystemScore | undefined): void {
    foundInSystem(score, before, contents.statements[0]?.tree, this.facts);
    if (this.choice.name === 'written') printsOf(score);
    if (this.counts) usesOf(score);
    for (const found of this.more) found(score, before, undefined, this.facts);
  }
}

/**
 * What all checks find in a file.
 * @param scores those of all choices, `written` first
 */
export function* checkFile(file: Omit<Given, 'score'>, scores: readonly Score[]): Generator<Checked> {
  // Nearly all checks ask for names: to find those of a large file takes too long for one step.
  for (const _ of findingUses(file.tree)) yield nothingFound;
  for (const one of checks) {
    for (const score of one.ofWritten ? scores.slice(0, 1) : scores) {
      yield { choice: one.ofWritten ? undefined : score.choice.name, problems: one.run({ ...file, score }) };
    }
  }
}
