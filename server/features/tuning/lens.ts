/** Over what a file says of its tuning: the way to the tuning panel. */
import type { CodeLens } from 'vscode-languageserver-types';
import { stretchIn } from '../../../grammar/place';
import { clauseOf, firstOf } from '../../../grammar/statements/read';
import type { Span, Statement } from '../../../grammar/tree';
import { pitchOf, statedTuningOf, tuningByWords } from '../../readings/tunings';
import type { Tuning } from '../../tuning/tuning';
import type { Project } from '../../workspace/project';
import { rangeOfOffsets } from '../place';
import type { TuningChoice } from '../protocol';

/** The client's command that opens the panel; its arguments are the choice that it is to show and the address of the score. */
const OPEN = 'bentside.openTuning';

export const tuningLenses = (project: Project): CodeLens[] =>
  project.tree.blocks.flatMap((block) =>
    block.statements.flatMap((placed) =>
      saidOfTuning(placed.tree.statement).flatMap(({ at, choice }) => {
        const tuning = tuningOfChoice(project, choice);
        if (tuning === undefined) return [];
        const { start, end } = stretchIn(block, placed, at);
        const title = `How to tune: ${tuning.temperament.title}, a4 = ${tuning.pitch} Hz`;
        const command = { title, command: OPEN, arguments: [choice, project.file] };
        return [{ range: rangeOfOffsets(project.tree, start, end), command }];
      }),
    ),
  );

interface Said {
  readonly at: Span;
  readonly choice: Exclude<TuningChoice, { kind: 'score' }>;
}

/** What a statement says: the file’s tuning, a temperament, a tuning of a reading. */
function saidOfTuning(statement: Statement): Said[] {
  const name = firstOf(statement.args, 'name');
  switch (statement.keyword) {
    case 'tuning':
      return [{ at: { pos: statement.pos, len: 'tuning'.length }, choice: { kind: 'reading', reading: 'written' } }];
    case 'temperament':
      return name === undefined ? [] : [{ at: name, choice: { kind: 'words', words: name.text } }];
    case 'reading': {
      const at = clauseOf(statement, 'tuning');
      return at && name ? [{ at, choice: { kind: 'reading', reading: name.text } }] : [];
    }
    default:
      return [];
  }
}

const tuningOfChoice = ({ environment }: Project, choice: Said['choice']): Tuning | undefined =>
  choice.kind === 'words'
    ? tuningByWords(environment, choice.words, pitchOf(environment))
    : statedTuningOf(environment, choice.reading);
