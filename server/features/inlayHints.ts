/** What is not written but holds, beside the notes: bar numbers, sounding accidentals, octaves after a leap. */
import { type InlayHint, InlayHintKind, type Range } from 'vscode-languageserver-types';
import { offsetIn } from '../../grammar/place';
import type { Block } from '../../grammar/tree';
import { degreeOf } from '../score/heights';
import { accidentalText } from '../score/pitchNames';
import type { NoteMember, SystemVoice } from '../score/score';
import type { Project } from '../workspace/project';
import { type SystemHere, systemOf } from './events';
import { meets, positionOfOffset, rangeOfOffsets } from './place';
import type { Settings } from './protocol';

type Wishes = Settings['inlayHints'];

/** Hints of the systems that a range touches, as the reading has them. */
export function inlayHints(project: Project, range: Range, wishes: Wishes, reading = 'written'): InlayHint[] {
  if (!Object.values(wishes).includes(true)) return [];
  const { tree } = project;
  return tree.blocks.flatMap((block, index) => {
    if (block.kind !== 'system' || !meets(range, rangeOfOffsets(tree, block.offset, block.offset + block.length)))
      return [];
    const found = systemOf(project, index, reading) ?? systemOf(project, index);
    if (found === undefined) return [];
    return [
      ...(wishes.barNumbers ? barNumbers(project, block, found) : []),
      ...found.system.score.voices.flatMap((voice) => besideNotes(project, block, voice, wishes)),
    ];
  });
}

/** At the beginning of each bar of the system's first lane. */
function barNumbers({ tree }: Project, block: Block, { piece, system }: SystemHere): InlayHint[] {
  const lane = block.lanes.find((one) => one.tree.kind === 'lane');
  return (lane?.tree.segments ?? []).flatMap(({ items: [first] }, index) => {
    const number = piece.bars[system.firstBar + index]?.number;
    if (lane === undefined || first === undefined || number === undefined) return [];
    const position = positionOfOffset(tree, offsetIn(block, lane, first.pos));
    return [{ position, label: number, kind: InlayHintKind.Type, paddingRight: true, tooltip: `bar ${number}` }];
  });
}

/** A leap is a fifth or more. */
const LEAP = 4;

function besideNotes({ tree }: Project, block: Block, { events }: SystemVoice, wishes: Wishes): InlayHint[] {
  const hints: InlayHint[] = [];
  let before: NoteMember | undefined;
  for (const { members } of events) {
    for (const member of members) {
      const label = [
        wishes.accidentals && !isMarked(member) ? accidentalText(member.alteration) : '',
        wishes.leaps && leaps(before, member) ? `${member.octave}` : '',
      ].join('');
      const lane = block.lanes[member.source.lane];
      if (label !== '' && lane !== undefined) {
        const end = offsetIn(block, lane, member.source.pos) + lengthOf(tree.text, block, lane, member);
        hints.push({ position: positionOfOffset(tree, end), label, kind: InlayHintKind.Parameter });
      }
    }
    before = members[0] ?? before;
  }
  return hints;
}

/** It bears an accidental of some kind. */
const isMarked = ({ spelling: { accidental, editors, cautionary } }: NoteMember): boolean =>
  (accidental ?? editors ?? cautionary) !== undefined;

const leaps = (before: NoteMember | undefined, member: NoteMember): boolean =>
  before !== undefined && member.spelling.octave === undefined && Math.abs(degreeOf(member) - degreeOf(before)) >= LEAP;

/** Of the note alone, without what is glued to it; a member of a chord begins with its hyphen, a repeated note is a sign of its own. */
function lengthOf(text: string, block: Block, lane: Block['lanes'][number], { source, spelling }: NoteMember): number {
  const typed = text.slice(offsetIn(block, lane, source.pos), offsetIn(block, lane, source.pos) + source.len);
  const at = typed.indexOf(spelling.text);
  return at < 0 ? 1 : at + spelling.text.length;
}
