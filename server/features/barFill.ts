/** How full the bar at the caret is. */
import { offsetIn } from '../../grammar/place';
import { add, compare, equal, isNegative, latest, subtract, sum, type Time, ZERO } from '../../grammar/time';
import type { PlacedLane, Segment } from '../../grammar/tree';
import { portion } from '../score/amounts';
import type { Bar, DrawnBarline, Piece, ScoreSystem, VoiceEvent } from '../score/score';
import type { Project } from '../workspace/project';
import { type SystemHere, systemOf } from './events';
import { hereAt } from './nodes';

interface BarFill {
  /** "bar 12: 5 of 8 quavers". */
  readonly words: string;
  /** Its time is that which its meter asks for, or which another lane has up to the barline there. */
  readonly isFull: boolean;
  /** The bar as typed: where it stands in its lane's joined text. */
  readonly segment: Segment;
  /** The barline that other lanes draw at its end; undefined as long as none does. */
  readonly closing: DrawnBarline | undefined;
}

/**
 * The fill of the bar of a lane in which an offset stands, in one reading; undefined outside a measured bar.
 * @param reading a name that the file does not declare is taken for `written`
 */
export function barFill(project: Project, offset: number, reading: string): BarFill | undefined {
  const place = lanePlace(project, offset);
  const segment = place && segmentAt(place);
  if (place === undefined || segment === undefined) return undefined;
  const found = systemOf(project, place.block, reading) ?? systemOf(project, place.block);
  if (found === undefined || found.system.score.kind !== 'measured') return undefined;
  const events = eventsIn(found.system, place.lane, segment);
  const bar = barOf(found.piece, found.system, events, place.placed.tree.segments.indexOf(segment));
  if (bar?.expected === undefined) return undefined;
  const time = events.some(({ wholeBar }) => wholeBar)
    ? bar.expected
    : sum([before(bar, found.system), ...events.map(({ duration }) => duration)]);
  return {
    words: `bar ${bar.number}: ${portion(time, bar.expected)}${compare(time, bar.expected) > 0 ? ', too many' : ''}`,
    isFull: equal(time, (bar.closing && timeIn(found, bar, place.lane)) ?? bar.expected) && !segment.broken,
    segment,
    closing: bar.closing,
  };
}

/** A place in the music of a lane. */
interface LanePlace {
  /** Index in the tree's blocks. */
  readonly block: number;
  /** Index in the block's lanes. */
  readonly lane: number;
  readonly placed: PlacedLane;
  /** In the joined text. */
  readonly pos: number;
}

function lanePlace({ tree }: Project, offset: number): LanePlace | undefined {
  const here = hereAt(tree, offset);
  if (here?.holder.kind !== 'lane' || here.holder.placed.tree.kind !== 'lane') return undefined;
  const { index, placed } = here.holder;
  // Below its last line there is no lane.
  if (offsetIn(here.block, placed, here.pos) !== offset) return undefined;
  return { block: here.blockIndex, lane: index, placed, pos: here.pos };
}

/** The bar as typed: after a barline the next one. */
const segmentAt = ({ placed: { tree }, pos }: LanePlace): Segment | undefined =>
  tree.segments.find((segment) => pos < segment.pos + segment.len) ?? tree.segments.at(-1);

/** The events of the lane that are typed in the bar, all of one bar of the score. */
function eventsIn({ score }: ScoreSystem, lane: number, { pos, len }: Segment): VoiceEvent[] {
  const typed = score.voices
    .flatMap(({ events }) => events)
    .filter(({ source }) => source.lane === lane && source.pos >= pos && source.pos < pos + len);
  const last = typed.at(-1);
  return typed.filter(({ bar }) => bar === last?.bar);
}

const barOf = (piece: Piece, system: ScoreSystem, events: readonly VoiceEvent[], segment: number): Bar | undefined =>
  piece.bars[system.firstBar + (events[0]?.bar ?? segment)];

/** How long the bar is in the other lanes of its system; undefined if none has it. */
function timeIn({ piece, system }: SystemHere, bar: Bar, lane: number): Time | undefined {
  const index = piece.bars.indexOf(bar) - system.firstBar;
  const ends = system.score.voices
    .flatMap(({ events }) => events)
    .filter((event) => event.bar === index && event.source.lane !== lane)
    .map(({ onset, duration }) => add(onset, duration));
  const start = subtract(bar.onset, system.onset);
  return ends.length === 0 ? undefined : subtract(ends.reduce(latest), start);
}

/** The time of a bar that has passed before this system. */
function before(bar: Bar, system: ScoreSystem): Time {
  const gone = subtract(system.onset, bar.onset);
  return isNegative(gone) ? ZERO : gone;
}
