/** What can be chosen in the tuning panel, in groups. */
import { l10n } from 'vscode';
import type { TuningAnswer, TuningChoice } from '../../server/features/protocol';
import type { ChoiceGroup, ShownChoice } from './messages';

/** A score that is open besides the panel’s. */
export interface OpenScore {
  readonly uri: string;
  readonly name: string;
  /** The reading that is shown of it. */
  readonly reading: string;
}

/** Nothing is said of what the instrument has. */
export const FROM_THE_FORK = '';

export function wantedChoice(
  answer: Pick<TuningAnswer, 'readings' | 'offers'>,
  others: readonly OpenScore[],
  chosen: TuningChoice,
): ShownChoice {
  return withChosen(groupsOf(answer, others), chosen);
}

export function beforeChoice(
  answer: Pick<TuningAnswer, 'readings' | 'offers'>,
  others: readonly OpenScore[],
  chosen: TuningChoice | undefined,
): ShownChoice {
  const unknown = { value: FROM_THE_FORK, label: l10n.t('not said: it is laid from the fork on') };
  const groups = [{ label: l10n.t('Unknown'), options: [unknown] }, ...groupsOf(answer, others)];
  return chosen === undefined ? { groups, chosen: FROM_THE_FORK } : withChosen(groups, chosen);
}

function groupsOf(
  { readings, offers }: Pick<TuningAnswer, 'readings' | 'offers'>,
  others: readonly OpenScore[],
): readonly ChoiceGroup[] {
  const groups: readonly ChoiceGroup[] = [
    {
      label: l10n.t('As this score has it'),
      options: readings.map(({ reading, title }) =>
        option({ kind: 'reading', reading }, l10n.t('{0}: {1}', reading, title)),
      ),
    },
    {
      label: l10n.t('Other scores that are open'),
      options: others.map(({ uri, name, reading }) =>
        option({ kind: 'score', uri, reading }, l10n.t('{0} ({1})', name, reading)),
      ),
    },
    {
      label: l10n.t('Temperaments by name'),
      options: offers.map(({ words, title }) => option({ kind: 'words', words }, titled(words, title))),
    },
  ];
  return groups.filter(({ options }) => options.length > 0);
}

const titled = (words: string, title: string): string => (title.startsWith(words) ? title : `${words}: ${title}`);

/** Parts in a fixed order, so that equal choices are equal texts. */
const textOf = (choice: TuningChoice): string => JSON.stringify(Object.entries(choice).sort());

export const choiceOf = (value: string): TuningChoice => Object.fromEntries(JSON.parse(value)) as TuningChoice;

const option = (choice: TuningChoice, label: string): ChoiceGroup['options'][number] => ({
  value: textOf(choice),
  label,
});

/** What was typed, or is not offered any more, has a group of its own. */
function withChosen(groups: readonly ChoiceGroup[], choice: TuningChoice): ShownChoice {
  const chosen = textOf(choice);
  if (groups.some(({ options }) => options.some(({ value }) => value === chosen))) return { groups, chosen };
  const label = choice.kind === 'words' ? choice.words : choice.reading;
  return { groups: [{ label: l10n.t('As it was chosen'), options: [{ value: chosen, label }] }, ...groups], chosen };
}
