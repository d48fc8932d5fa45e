/** What a passage sounds like in the time of a practice, as text. */
import { format } from '../../grammar/time';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { perform } from '../../server/readings/perform';
import type { Performance, PerformedEvent } from '../../server/score/performance';
import { scoreOf } from './scores';

/** A passage of one or more voices in a reading. */
export interface Timed {
  /** Lanes from the highest voice to the lowest. */
  readonly lanes: readonly string[];
  /** Practices of the reading, as typed after `practice`. */
  readonly practices?: readonly string[];
  readonly meter?: string;
  /** Statements before the system, such as a tempo or practices of the file. */
  readonly before?: string;
}

export function performedIn({ lanes, practices = [], meter = 'C', before = '' }: Timed): Performance {
  const text = [
    'bentside 1',
    before,
    ...lanes.map((_, i) => `stave stave${i}\nvoice v${i} stave${i}`),
    'reading played',
    ...practices.map((practice) => `  practice ${practice}`),
    `system ${lanes.map((_, i) => `stave${i} G2`).join(' ')} meter ${meter}`,
    ...lanes.map((lane, i) => `  v${i} | ${lane} |||`),
    '',
  ];
  return perform(scoreOf(text.join('\n'), 'played'));
}

const voiceOf = (performance: Performance, voice: number): readonly PerformedEvent[] =>
  performance.pieces.flatMap(({ events }) => events.filter((event) => event.voice === voice));

const nameOf = ({ kind, pitch }: PerformedEvent): string =>
  pitch === undefined ? (kind === 'rest' ? 'r' : '_') : pitchText(pitch);

/** What a voice plays, each note with its length in semibreves: `d5:7/16 e5:1/16`. */
export const timed = (passage: Timed, voice = 0): string =>
  voiceOf(performedIn(passage), voice)
    .map((event) => `${nameOf(event)}:${format(event.duration)}`)
    .join(' ');

/** When a voice strikes, in semibreves from the beginning. */
export const strikes = (passage: Timed, voice = 0): string =>
  voiceOf(performedIn(passage), voice)
    .map(({ onset }) => format(onset))
    .join(' ');

/** Codes of what is told. */
export const toldIn = (passage: Timed): string[] => performedIn(passage).problems.map(({ problem }) => problem.code);
