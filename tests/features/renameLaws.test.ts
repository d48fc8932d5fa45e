/** Whatever name of the samples is written anew, nothing else changes: no finding, no note of any reading. */
import { describe, expect, it } from 'vitest';
import { nodeHost } from '../../server/cli/host';
import type { Analysis } from '../../server/document/analysis';
import { type NameAt, namesIn } from '../../server/features/names';
import { positionOfOffset } from '../../server/features/place';
import { rename } from '../../server/features/rename';
import { eventsOf } from '../../server/score/walk';
import type { Project } from '../../server/workspace/project';
import { Workspace } from '../../server/workspace/workspace';
import { withEdits } from '../helpers/editor';
import { scoreOf, sounding } from '../helpers/music';
import { sampleNames, samplePath, sampleText } from '../helpers/samples';

/** Of names that are no voices or staves one in so many is tried: all of them take a minute. */
const STRIDE = Number(process.env.STRIDE ?? 5);

/** A name that no sample has. */
const ANEW = 'anew';

const newName = ({ name }: NameAt): string => (name.includes('.') ? `${name.split('.')[0]}.9` : ANEW);

/** Notes of every reading, which may be called otherwise, with what is told of the text. */
const told = (analysis: Analysis): string =>
  [
    analysis.findings().map(({ code }) => code),
    ...analysis.choices.map((choice) =>
      scoreOf(analysis, choice).pieces.flatMap((piece) =>
        [...eventsOf(piece)].flatMap(({ event, onset }) =>
          event.members.map((note) => `${event.voice} ${onset.n}/${onset.d} ${sounding(note)}`),
        ),
      ),
    ),
  ]
    .map((lines) => lines.join('\n'))
    .join('\n\n');

function renamed(project: Project, { end }: NameAt, to: string): string {
  const { changes } = rename(project, positionOfOffset(project.tree, end - 1), to, [project]);
  return withEdits(project.tree.text, changes?.[project.file] ?? []);
}

describe.each(sampleNames)('%s', (sample) => {
  const file = samplePath(sample);
  const workspace = new Workspace(nodeHost().includes(file));
  const project = workspace.update(file, sampleText(sample));
  const before = told(project.analysis);
  const given = namesIn(project)
    .filter((one) => one.given && one.space !== 'shape')
    .filter((one, index) => index % STRIDE === 0 || one.space === 'voice' || one.space === 'stave');

  it.each(given.map((one) => [one.space, one.name, one] as const))('%s %s', (_space, _name, one) => {
    const after = workspace.update(file, renamed(project, one, newName(one)));
    expect(told(after.analysis)).toBe(before);
  });
});
