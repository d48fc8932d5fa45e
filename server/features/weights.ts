/** The editor's weights in music without measure: what they are, and what writes another into the text. */
import type { TextEdit } from 'vscode-languageserver-types';
import type { ScoreSystem, Source } from '../score/score';
import { weightMarkOf, weightOf } from '../score/unmeasured';
import { offsetOf } from '../score/walk';
import type { Project } from '../workspace/project';
import { eventOfId, pictureId, scoreOf } from './pages';
import { rangeOfOffsets } from './place';
import type { ShownWeight } from './protocol';

/** Weights that can be set: 1 is that of a note of which nothing is said. */
const LEAST = 1;
const MOST = 9;

/** Every note or chord of systems without measure, with its weight. */
export const weightsOn = (systems: readonly ScoreSystem[]): ShownWeight[] =>
  systems
    .filter(({ score }) => score.kind === 'free')
    .flatMap((system) =>
      system.score.voices
        .flatMap(({ events }) => events)
        .filter(({ kind, small }) => kind === 'note' && small === undefined)
        .map((event) => ({ id: pictureId(system, event, -1), weight: weightOf(event) })),
    );

/** What gives a note this weight; undefined where no note of a system without measure has that id. */
export function weightEdit(project: Project, id: string, reading: string, wished: number): TextEdit | undefined {
  const score = scoreOf(project, reading);
  const found = score && eventOfId(score, id);
  if (found === undefined || found.system.score.kind !== 'free') return undefined;
  const weight = Math.min(MOST, Math.max(LEAST, Math.round(wished)));
  const newText = weight === LEAST ? '' : `'w${weight}`;
  const mark = weightMarkOf(found.event);
  const last = found.event.members.at(-1);
  if (last === undefined) return undefined;
  const [start, end] =
    mark === undefined ? marksOf(project, found.system, last.source) : stretchOf(project, found.system, mark.source);
  return { range: rangeOfOffsets(project.tree, start, end), newText };
}

function stretchOf({ tree }: Project, system: ScoreSystem, source: Source): readonly [number, number] {
  const start = offsetOf(tree, system, source);
  return [start, start + source.len];
}

/** Where the marks of a note begin. */
function marksOf(project: Project, system: ScoreSystem, source: Source): readonly [number, number] {
  const [start, end] = stretchOf(project, system, source);
  const marks = project.tree.text.slice(start, end).search(/['*]/);
  const at = marks < 0 ? end : start + marks;
  return [at, at];
}
