/** A tuning as the tuning panel shows it: what can be chosen, how it is laid, and what would write it into the file. */
import { stringsDrawing } from '../../pages/stringsDrawing';
import { isUnknownTuning, pitchOf, statedTuningOf, tuningByWords, tuningOf } from '../../readings/tunings';
import { sheetOf } from '../../tuning/sheet';
import { pitchStandards } from '../../tuning/standards';
import type { Tuning } from '../../tuning/tuning';
import type { Project } from '../../workspace/project';
import type { ShownTuning, TuningAnswer, TuningChoice, TuningParams } from '../protocol';
import { tuningOffers } from './offers';
import { writingTuning } from './write';

/** The project of another score by its address; undefined if it is not open. */
export type OtherScore = (uri: string) => Project | undefined;

type Wish = Pick<TuningParams, 'wanted' | 'pitch'>;

const STANDARDS = pitchStandards.map(({ fork, describe }) => ({ hertz: fork, title: describe }));

interface Refusal {
  readonly failure: string;
}

const isRefused = (found: Tuning | Refusal): found is Refusal => 'failure' in found;

/** What is wanted, or why there is no such tuning; in either case what else can be chosen. */
export function showTuning(
  project: Project,
  params: Omit<TuningParams, 'textDocument'>,
  other: OtherScore,
): TuningAnswer {
  const wanted = wantedTuning(project, params, other);
  const pitch = isRefused(wanted) ? (params.pitch ?? pitchOf(project.environment)) : wanted.pitch;
  const answer = { readings: readingOffers(project), offers: tuningOffers(project), standards: STANDARDS, pitch };
  if (isRefused(wanted)) return { ...answer, ...wanted };
  const before = params.before && chosen(project, params.before, other, wanted.pitch);
  if (before !== undefined && isRefused(before)) return { ...answer, ...before };
  const sheet = sheetOf(wanted, before);
  const { statements, obstacle } = writingTuning(project, params.reading, wanted);
  return {
    ...answer,
    shown: {
      sheet,
      words: wanted.temperament.name,
      drawing: stringsDrawing(sheet, sheet.retuning?.steps),
      assumed: assumedIn(project, params),
      writes: statements.map(({ text }) => text),
      obstacle,
    },
  };
}

/** At the pitch that is asked for, or else at that of the choice. */
export const wantedTuning = (project: Project, { wanted, pitch }: Wish, other: OtherScore): Tuning | Refusal =>
  chosen(project, wanted, other, pitch ?? pitchOf(project.environment), pitch);

/** @param ofWords the pitch of what is typed. @param forced the pitch of a score, where it is not its own */
function chosen(
  project: Project,
  choice: TuningChoice,
  other: OtherScore,
  ofWords: number,
  forced?: number,
): Tuning | Refusal {
  if (choice.kind === 'words') {
    return tuningByWords(project.environment, choice.words, ofWords) ?? { failure: unknown(choice.words) };
  }
  const holder = choice.kind === 'score' ? other(choice.uri) : project;
  if (holder === undefined) return { failure: 'That score is not open any more.' };
  const { environment } = holder;
  if (isUnknownTuning(environment, choice.reading)) {
    return { failure: 'The score states a tuning whose temperament is not known; its findings tell more.' };
  }
  return tuningOf(environment, choice.reading, forced ?? pitchOf(environment));
}

const unknown = (words: string): string =>
  `No temperament is called “${words}”. A meantone is typed “meantone 1/4 wolf g#-eb”.`;

/** What a score does not state, and so is assumed for it. */
function assumedIn({ environment }: Project, { wanted, pitch }: Wish): ShownTuning['assumed'] {
  const temperament = wanted.kind === 'reading' && statedTuningOf(environment, wanted.reading) === undefined;
  const isPitchAssumed = wanted.kind !== 'score' && (pitch ?? environment.pitch) === undefined;
  return [...(temperament ? (['temperament'] as const) : []), ...(isPitchAssumed ? (['pitch'] as const) : [])];
}

/** Each reading with its temperament in words; one whose tuning is unknown has none. */
const readingOffers = ({ environment }: Project): TuningAnswer['readings'] =>
  ['written', ...environment.readings.map(({ name }) => name)]
    .filter((reading) => !isUnknownTuning(environment, reading))
    .map((reading) => ({ reading, title: tuningOf(environment, reading).temperament.title }));
