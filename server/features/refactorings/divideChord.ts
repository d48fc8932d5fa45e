/** A chord divided: its outer note goes to another voice that has nothing drawn at that time. */
import { CodeActionKind } from 'vscode-languageserver-types';
import { equal } from '../../../grammar/time';
import type { EventItem, Member } from '../../../grammar/tree';
import type { TextChange } from '../../document/edits';
import { isCurve } from '../../score/curveMarks';
import type { NoteMember, VoiceEvent } from '../../score/score';
import type { Project } from '../../workspace/project';
import { eventHere, systemOf } from '../events';
import { type Here, stretchOf } from '../nodes';
import { leavesMusic, notes } from './music';
import { innermost, type Offer } from './refactoring';
import { octaveAfter } from './sticking';

export const divideChord: Offer = ({ project, here, path }) => {
  const chord = innermost(path, 'member')?.event;
  const event = eventHere(project, here, ['written'])?.event;
  if (chord === undefined || event === undefined || event.members.length < 2) return undefined;
  const gap = gapBeside(project, here, event);
  if (gap === undefined) return undefined;
  const index = outermost(event.members, gap.voice > event.voice);
  const [member, note] = [chord.members[index], event.members[index]];
  if (member === undefined || note === undefined) return undefined;
  const there = laneHere(here, gap.source.lane);
  if (there === undefined || note.marks.some(({ form }) => isCurve(form))) return undefined;
  const moved = typed(here, member, note);
  const voice = project.environment.voices[gap.voice]?.name ?? '';
  const changes = [
    ...leftOut(project, here, chord, index, event),
    { offset: stretchOf(there, gap.source).start, length: gap.source.len, text: moved },
    ...octaveAfter(project, there, gap.source.pos + gap.source.len, note.octave),
  ];
  if (!leavesMusic(project, here.blockIndex, changes, notes)) return undefined;
  return { title: `Give ${moved} to ${voice}`, kind: CodeActionKind.RefactorRewrite, changes };
};

/** Its other end would be left alone in the voice that the note leaves. */
/** A gap of the same time in another voice of the system that bears nothing, for a note in its place could not bear it all. */
function gapBeside(project: Project, here: Here, event: VoiceEvent): VoiceEvent | undefined {
  const voices = systemOf(project, here.blockIndex)?.system.score.voices ?? [];
  return voices
    .flatMap(({ events }) => events)
    .find(
      (one) =>
        one.kind === 'gap' &&
        one.voice !== event.voice &&
        one.value !== undefined &&
        one.marks.length + one.annotations.length === 0 &&
        equal(one.onset, event.onset) &&
        equal(one.duration, event.duration),
    );
}

/** The lowest note goes to a voice below, the highest to one above. */
function outermost(members: readonly NoteMember[], isBelow: boolean): number {
  const keys = members.map(({ midi }) => midi);
  return keys.indexOf(isBelow ? Math.min(...keys) : Math.max(...keys));
}

function laneHere(here: Here, lane: number): Here | undefined {
  const placed = here.block.lanes[lane];
  return placed && { ...here, holder: { kind: 'lane', index: lane, placed } };
}

const textOf = (here: Here, { pos, len }: Member): string => here.holder.placed.tree.text.slice(pos, pos + len);

/** As it is typed alone: without the hyphen, with its octave. */
function typed(here: Here, member: Member, { octave }: NoteMember): string {
  const text = textOf(here, member).replace(/^-(?:\((?:up|down|home)\))?/, '');
  const { text: spelling, doubtful, octave: own } = member.spelling;
  const end = spelling.length - (doubtful ? 1 : 0);
  return own === undefined ? `${text.slice(0, end)}${octave}${text.slice(end)}` : text;
}

/** The chord without the note; the octave that it typed is typed by whoever relied on it. */
function leftOut(project: Project, here: Here, chord: EventItem, index: number, event: VoiceEvent): TextChange[] {
  const left = chord.members.flatMap((member, at) => {
    const note = event.members[at];
    if (at === index || note === undefined) return [];
    return [typed(here, member, note)];
  });
  const [first, last] = [chord.members[0], chord.members.at(-1)];
  if (first === undefined || last === undefined) return [];
  const { start } = stretchOf(here, first);
  const { end } = stretchOf(here, last);
  const held = event.members.filter((_, at) => at !== index).at(-1)?.octave;
  return [
    { offset: start, length: end - start, text: left.join('-') },
    ...octaveAfter(project, here, chord.pos + chord.len, held),
  ];
}
