/** Over each reading: how much it differs, and the way to it; over each tuning: the way to its panel. */
import type { CodeLens } from 'vscode-languageserver-types';
import { howMany } from '../score/amounts';
import type { SystemScore } from '../score/score';
import type { Project } from '../workspace/project';
import { namesIn } from './names';
import { rangeOfOffsets } from './place';
import { tuningLenses } from './tuning/lens';

/** The client's command that shows a reading; its arguments are the reading's name and the address of its score. */
const CHOOSE = 'bentside.chooseReading';

export const codeLenses = (project: Project): CodeLens[] => [...readingLenses(project), ...tuningLenses(project)];

/** None in a file without music, which nobody sees: includes bring no readings. */
const readingLenses = (project: Project): CodeLens[] =>
  systems(project, 'written').length === 0
    ? []
    : namesIn(project)
        .filter(({ given, kind }) => given && kind === 'reading')
        .map(({ name, start, end }) => ({
          range: rangeOfOffsets(project.tree, start, end),
          command: { title: title(project, name), command: CHOOSE, arguments: [name, project.file] },
        }));

/** Readings that take the same in a system share its score. */
function title(project: Project, reading: string): string {
  const [main, own] = [systems(project, 'written'), systems(project, reading)];
  const count = own.filter((system, index) => system !== main[index]).length;
  const difference = count === 0 ? 'nowhere' : `in ${count} of ${howMany(own.length, 'system', 'systems')}`;
  return `Show this reading (it differs from the main text ${difference})`;
}

const systems = ({ analysis }: Project, choice: string): SystemScore[] =>
  (analysis.score(choice)?.pieces ?? []).flatMap((piece) => piece.systems.map(({ score }) => score));
