/** The leaves of a source as engraved pages, and the way between their notes and the text. */
import type { Position, Range } from 'vscode-languageserver-types';
import type { Engraver } from '../engraving/engraver';
import { isOfLower, laneOfSource } from '../export/both';
import { addressOfId, eventId, type IdAddress, partId } from '../export/mei/ids';
import { tableOf } from '../export/ornaments';
import { exportSvg } from '../pages/svg';
import { barsFromTo } from '../score/barsInWords';
import type { Bar, NoteMember, Piece, Score, ScoreSystem, VoiceEvent } from '../score/score';
import { addressOf, offsetOf } from '../score/walk';
import type { Project } from '../workspace/project';
import { eventHere, type SystemHere, systemOf } from './events';
import { facsimileOf } from './facsimile';
import { hereAt } from './nodes';
import { spoken } from './noteWords';
import { offsetOfPosition, rangeOfOffsets } from './place';
import type { EngravedPage, NotePlace, SignsShown } from './protocol';
import { differencesOn, twoReadings } from './twoReadings';
import { weightsOn } from './weights';

/** What stands of one movement on one leaf. */
interface Part {
  readonly piece: Piece;
  readonly systems: readonly ScoreSystem[];
}

export interface SourcePage {
  readonly label: string;
  readonly parts: readonly Part[];
}

/** The leaves in the order in which they are written; one that is taken up again after another counts anew. */
export function sourcePages({ pieces }: Score): SourcePage[] {
  const pages: { label: string; parts: { piece: Piece; systems: ScoreSystem[] }[] }[] = [];
  for (const piece of pieces) {
    for (const system of piece.systems) {
      const last = pages.at(-1);
      const page = last?.label === system.page ? last : { label: system.page, parts: [] };
      if (page !== last) pages.push(page);
      const part = page.parts.at(-1);
      if (part?.piece === piece) part.systems.push(system);
      else page.parts.push({ piece, systems: [system] });
    }
  }
  return pages;
}

/** The score of a reading; of one that is gone, as written. */
export const scoreOf = ({ analysis }: Project, reading: string): Score | undefined =>
  analysis.score(reading) ?? analysis.score('written');

// ─── drawing ─────────────────────────────────────────────────────────────────────────────────────────────────────

interface PageWish {
  readonly reading: string;
  readonly clefs: 'source' | 'modern';
  /** Signs as they stand, with what they mean above the stave, or written out. */
  readonly ornaments: SignsShown;
  /** Index of the leaf; one beyond the last is taken for the last. */
  readonly page: number;
  /** Another reading, to stand beneath. */
  readonly beneath?: string;
}

/** One leaf, engraved; undefined if there is no music yet. */
export function engravedPage(project: Project, wish: PageWish, engraver: Engraver): EngravedPage | undefined {
  const score = scoreOf(project, wish.reading);
  const pages = score === undefined ? [] : sourcePages(score);
  const index = Math.min(Math.max(wish.page, 0), pages.length - 1);
  const page = pages[index];
  if (score === undefined || page === undefined) return undefined;
  const facsimile = facsimileOf(project, page.label, systemsOf(page));
  const other = wish.beneath === undefined ? undefined : scoreOf(project, wish.beneath);
  return {
    labels: pages.map(({ label }) => label),
    page: index,
    pictures: page.parts.flatMap((part) => {
      const whole = other === undefined ? [score] : twoReadings(score, other, part.piece, wish.ornaments);
      return whole.flatMap((one) => drawn(one, part, wish, engraver));
    }),
    summary: page.parts.flatMap(summaryOf),
    hasTable: tableOf(score) !== undefined,
    weights: weightsOn(systemsOf(page)),
    ...(facsimile === undefined ? {} : { facsimile }),
    ...(other === undefined ? {} : { differences: differencesOn(systemsOf(page), score, other) }),
  };
}

/** The system of this index on a leaf. */
export const systemOn = (project: Project, reading: string, page: number, system: number): ScoreSystem | undefined => {
  const score = scoreOf(project, reading);
  const leaf = score === undefined ? undefined : sourcePages(score)[page];
  return leaf && systemsOf(leaf)[system];
};

export const systemsOf = ({ parts }: SourcePage): readonly ScoreSystem[] => parts.flatMap(({ systems }) => systems);

/** The pictures of a part: only its bars are drawn, so that a long score is as quick as a short one. */
function drawn(
  score: Score,
  part: Part,
  { clefs, ornaments, beneath }: PageWish,
  engraver: Engraver,
): readonly string[] {
  // Of two readings a piece is already in the form in which it is to be drawn.
  const [piece, form] =
    beneath === undefined ? [part.piece, ornaments] : [score.pieces[0] ?? part.piece, 'sign' as const];
  const bars = piece.systems.filter((system) => part.systems.some(isSame(system))).flatMap((one) => barsOf(piece, one));
  const [first, last] = [bars[0], bars.at(-1)];
  if (first === undefined || last === undefined) return [];
  const range = { from: first.number, to: last.number };
  const options = { clefs, ornaments: form, leaveGaps: true, bars: range } as const;
  const { content } = exportSvg({ ...score, pieces: [piece] }, options, engraver);
  return Array.isArray(content) ? content : [];
}

const isSame =
  ({ block }: ScoreSystem) =>
  (other: ScoreSystem): boolean =>
    block === other.block;

const barsOf = (piece: Piece, { firstBar, score }: ScoreSystem): readonly Bar[] =>
  piece.bars.slice(firstBar, firstBar + score.bars.length);

/** What a system holds, for whoever does not see it. */
const summaryOf = ({ piece, systems }: Part): string[] =>
  systems.map((system) => {
    const bars = barsOf(piece, system);
    const name = piece.name === '' ? '' : `${piece.name}, `;
    return `${name}system ${system.ordinal}, ${barsFromTo(bars[0]?.number ?? '?', bars.at(-1)?.number ?? '?')}`;
  });

// ─── between text and page ───────────────────────────────────────────────────────────────────────────────────────

/** The note at a place of the text, by the id that its picture bears, and the leaf where it stands. */
export function noteAt(project: Project, position: Position, reading: string): NotePlace | undefined {
  const found = lastBegun(project, position, reading);
  if (found === undefined) return undefined;
  const { score, piece, system, event, pos } = found;
  const pages = sourcePages(score).map(systemsOf);
  const page = pages.findIndex((systems) => systems.includes(system));
  const member = event.members.findLastIndex(({ source }) => source.pos <= pos);
  const here = hereAt(project.tree, offsetOfPosition(project.tree, position));
  const heard = here && eventHere(project, here, [score.choice.name]);
  return {
    id: pictureId(system, event, member),
    page,
    system: pages[page]?.indexOf(system) ?? 0,
    bar: piece.bars[system.firstBar + event.bar]?.number ?? '',
    says: heard === undefined ? '' : spoken(heard),
  };
}

/** The id that the picture of a note bears. @param member index of a chord's note; -1 of the whole */
export function pictureId(system: ScoreSystem, event: VoiceEvent, member: number): string {
  const id = eventId(system, event);
  return event.members.length > 1 && member >= 0 ? partId(id, 'n', member + 1) : id;
}

export interface EventBegun extends SystemHere {
  readonly event: VoiceEvent;
  /** In the lane's joined text. */
  readonly pos: number;
}

/** The event at a place: the last that begins at or before it in its lane. */
export function lastBegun(project: Project, position: Position, reading: string): EventBegun | undefined {
  const here = hereAt(project.tree, offsetOfPosition(project.tree, position));
  if (here?.holder.kind !== 'lane') return undefined;
  const { index } = here.holder;
  const found = systemOf(project, here.blockIndex, reading) ?? systemOf(project, here.blockIndex);
  const events = found?.system.score.voices.flatMap((voice) => voice.events) ?? [];
  const event = events.findLast(({ source }) => source.lane === index && source.pos <= here.pos);
  return found && event && { ...found, event, pos: here.pos };
}

/**
 * The place in the text of a note, by the id of its picture; undefined of an id that no event has.
 * @param beneath the reading of ids in the lower of two parts
 */
export function placeOfNote(project: Project, id: string, reading: string, beneath = reading): Range | undefined {
  const score = scoreOf(project, isOfLower(addressOfId(id)?.lane ?? '') ? beneath : reading);
  const found = score && eventOfId(score, id);
  if (found === undefined) return undefined;
  const { source } = found.member ?? found.event;
  const start = offsetOf(project.tree, found.system, source);
  return rangeOfOffsets(project.tree, start, start + source.len);
}

export interface EventOfId extends SystemHere {
  readonly event: VoiceEvent;
  /** The note of a chord that is meant. */
  readonly member: NoteMember | undefined;
}

/** The event that the id of a picture names; undefined if no event of the score has it. */
export function eventOfId(score: Score, id: string): EventOfId | undefined {
  const address = addressOfId(id);
  if (address?.lane === undefined) return undefined;
  const wanted = `${address.page}/${address.system}/${laneOfSource(address.lane)}/${address.event}`;
  const found = firstIn(score, address, (system, event) => addressOf(system, event) === wanted);
  return found && { ...found, member: found.event.members[(address.member ?? 0) - 1] };
}

/** The first event of the bar in which an id stands, for a reading that has not the note itself. */
export function barOfId(score: Score, id: string): Omit<EventOfId, 'member'> | undefined {
  const address = addressOfId(id);
  const bar = address?.event?.split('.')[0];
  return address && firstIn(score, address, (_, event) => event.address.split('.')[0] === bar);
}

function firstIn(
  score: Score,
  { page, system: ordinal }: IdAddress,
  isWanted: (system: ScoreSystem, event: VoiceEvent) => boolean,
): Omit<EventOfId, 'member'> | undefined {
  for (const piece of score.pieces) {
    const system = piece.systems.find((one) => one.page === page && one.ordinal === ordinal);
    const event = system?.score.voices.flatMap(({ events }) => events).find((one) => isWanted(system, one));
    if (system !== undefined && event !== undefined) return { score, piece, system, event };
  }
  return undefined;
}
