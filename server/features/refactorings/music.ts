/** What a change of one system makes of its music: a refactoring that would alter it is not offered. */
import { parseFile } from '../../../grammar/parse';
import type { BlockContents } from '../../../grammar/tree';
import { edited, type TextChange } from '../../document/edits';
import { canonical } from '../../document/kept';
import { type Carry, startOf } from '../../score/carry';
import type { AppliedMark, NoteMember, SystemScore, VoiceEvent } from '../../score/score';
import { buildSystem } from '../../score/system';
import type { Project } from '../../workspace/project';
import { systemOf } from '../events';

/** What two scores of a system must have in common: texts, in any order. */
export type Telling = (score: SystemScore) => readonly string[];

/**
 * Whether a system says the same after changes in every reading, and nothing more is wrong with it.
 * @param changes all within the system
 */
export function leavesMusic(
  project: Project,
  blockIndex: number,
  changes: readonly TextChange[],
  telling: Telling = everything,
): boolean {
  const before = project.tree.blocks[blockIndex];
  if (before === undefined) return false;
  const { offset, length } = before;
  const moved = changes.map((change) => ({ ...change, offset: change.offset - offset }));
  const text = edited(project.tree.text.slice(offset, offset + length), moved);
  const [after, ...others] = parseFile(text).blocks;
  if (after?.kind !== before.kind || others.length > 0) return false;
  if (faultsOf(after.contents) > faultsOf(before.contents)) return false;
  return project.analysis.choices.every((choice) => {
    const score = project.analysis.score(choice);
    if (score === undefined) return true;
    const { staves, voices } = score.environment;
    const carry = carryInto(project, blockIndex, choice) ?? startOf(staves.length, voices.length);
    const [old, fresh] = [before.contents, after.contents].map((block) => {
      return buildSystem({ block, environment: score.environment, choice: score.choice, carry });
    });
    return old !== undefined && fresh !== undefined && isSame(old, fresh, telling);
  });
}

/** What the parser finds wrong. */
const faultsOf = ({ problems, statements, lanes }: BlockContents): number =>
  [{ problems }, ...[...statements, ...lanes].map(({ tree }) => tree)].flatMap((one) => one.problems).length;

/** What the system before hands on; undefined at the beginning of a piece. */
export function carryInto(project: Project, block: number, choice = 'written'): Carry | undefined {
  const found = systemOf(project, block, choice);
  const before = found?.piece.systems[found.piece.systems.indexOf(found.system) - 1];
  return before?.score.carryOut;
}

const isSame = (before: SystemScore, after: SystemScore, telling: Telling): boolean =>
  after.problems.length <= before.problems.length &&
  canonical(before.carryOut) === canonical(after.carryOut) &&
  canonical([...telling(before)].sort()) === canonical([...telling(after)].sort());

/** Each event with its voice. */
const everything: Telling = ({ voices }) =>
  voices.flatMap(({ voice, events }) => events.map((event) => `${voice} ${eventText(event)}`));

/** Each note, whoever sings it. */
export const notes: Telling = ({ voices }) =>
  voices.flatMap(({ events }) =>
    events.flatMap(({ onset, duration, members }) =>
      members.map((member) => canonical([onset, duration, ...noteText(member)])),
    ),
  );

const eventText = (event: VoiceEvent): string =>
  canonical([
    ...[event.kind, event.stave, event.bar, event.onset, event.duration, event.value?.text, event.small?.to],
    ...[event.stems, event.tuplets.map(({ n, m }) => [n, m]), event.spans.map(({ head }) => head.text)],
    ...[event.members.map(noteText), marksText(event.marks), event.annotations.length, event.custos?.text],
    event.words.map(({ text }) => text),
  ]);

const noteText = ({ spelling, octave, midi, stave, tiedFrom, tie, marks, annotations }: NoteMember) => [
  ...[spelling.letter, octave, midi, stave, tiedFrom, tie?.text],
  ...[marksText(marks), annotations.length],
];

const marksText = (marks: readonly AppliedMark[]): string[] => marks.map(({ form }) => form.text);
