/** What can begin a line: statements, lanes, the next system. */
import type { Block } from '../../grammar/tree';
import { subLaneNames } from '../../grammar/vocabulary/lanes';
import { statements } from '../../grammar/vocabulary/statements';
import type { Project } from '../workspace/project';
import { systemLike } from './nextSystem';
import { described, KINDS, knownNames, namesOf, type Proposal } from './proposal';

/** What stands before the caret on a line that has barely begun. */
export interface Beginning {
  readonly indentation: string;
  /** The first of two words. */
  readonly voice: string | undefined;
  /** The word before the caret. */
  readonly word: string;
}

/** @returns undefined where more stands before the caret than the beginning of a line */
export function beginningOfLine(line: string, block: Block | undefined): Beginning | undefined {
  const match = /^([ \t]*)(?:(\w+)[ \t]+)?(\w*)$/.exec(line);
  if (match === null) return undefined;
  const [, indentation = '', voice, word = ''] = match;
  // Only a lane begins with two words.
  const isLane = block?.kind === 'system' && indentation !== '';
  return voice !== undefined && !isLane ? undefined : { indentation, voice, word };
}

/** @param block that the line goes on or ends, in which the offset lies */
export function completeLine(
  project: Project,
  block: Block | undefined,
  beginning: Beginning,
  offset: number,
): readonly Proposal[] {
  const { indentation, voice, word } = beginning;
  const isSystem = block?.kind === 'system';
  const next = isSystem && voice === undefined ? nextSystem(project, block, beginning, offset) : [];
  const words = described(statements, word.length);
  if (indentation === '') return [...next, ...words.filter(({ label }) => next.every((one) => one.label !== label))];
  if (!isSystem) return [];
  if (voice !== undefined) return witnessesFor(project, voice, word);
  return [...(word === '' ? next : []), ...laneNames(project, block, word.length)];
}

/** The next system with the lanes that this one has; between those it would cut this one in two. */
function nextSystem(
  { environment }: Project,
  block: Block,
  { indentation, word }: Beginning,
  offset: number,
): Proposal[] {
  const last = block.lanes.at(-1);
  if (last === undefined || block.offset + last.name.pos > offset) return [];
  return [
    {
      label: 'system',
      kind: KINDS.Snippet,
      replaces: indentation.length + word.length,
      detail: `the next system: ${block.lanes.map(({ name }) => name.text).join(', ')}`,
      insert: systemLike(block, environment),
      isSnippet: true,
      filter: `${indentation}system`,
      isFirst: true,
    },
  ];
}

/** Voices that have no lane here yet, and what can stand under one. */
function laneNames(project: Project, block: Block, replaces: number): Proposal[] {
  const present = new Set(block.lanes.map(({ name }) => name.text));
  const voices = knownNames(project, 'voice', replaces).filter(({ label }) => !present.has(label));
  return [...voices, ...described(subLaneNames, replaces)].map((one) => ({ ...one, insert: `${one.label} | ` }));
}

const witnessesFor = (project: Project, voice: string, word: string): Proposal[] =>
  project.environment.voices.some(({ name }) => name === voice)
    ? namesOf(
        project,
        'label',
        project.environment.sources.map(({ name }) => name),
        word.length,
      )
    : [];
