/** What a passage sounds like when its signs are realised, as text. */
import { add, compare, format, subtract, type Time } from '../../grammar/time';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { type PerformOptions, perform } from '../../server/readings/perform';
import type { Performance, PerformedEvent } from '../../server/score/performance';
import type { Score } from '../../server/score/score';
import { scoreOf } from './scores';

/** A passage of one or more voices under a table, a key and a tempo. */
export interface Passage {
  /** Lanes from the highest voice to the lowest. */
  readonly lanes: readonly string[];
  readonly table: string;
  readonly key?: string;
  readonly meter?: string;
  /** Without measure. */
  readonly free?: boolean;
  readonly tempo?: string;
  /** Statements before the system, such as a table of one's own. */
  readonly before?: string;
  readonly form?: PerformOptions['form'];
}

const STAVES = ['upper', 'lower'];

export const performed = (passage: Passage): Performance =>
  perform(scoreOfPassage(passage), { form: passage.form ?? 'play' });

export function scoreOfPassage({ lanes, table, key, meter = 'C', tempo, before = '', free = false }: Passage): Score {
  const text = [
    'bentside 1',
    before,
    ...STAVES.map((stave) => `stave ${stave}`),
    ...lanes.map((_, i) => `voice v${i} ${i === 0 ? 'upper' : 'lower'}`),
    'reading played',
    `  signs ${table}`,
    ...(tempo === undefined ? [] : [`tempo ${tempo}`]),
    `system ${free ? 'free ' : ''}upper G2 lower F4${key === undefined ? '' : ` key ${key}`}${meter === '' ? '' : ` meter ${meter}`}`,
    ...lanes.map((lane, i) => `  v${i} | ${lane} |||`),
    '',
  ];
  return scoreOf(text.join('\n'), 'played');
}

export const eventsOfVoice = (performance: Performance, voice = 0): readonly PerformedEvent[] =>
  performance.pieces.flatMap(({ events }) => events.filter((event) => event.voice === voice));

const asText = ({ pitch, kind, duration }: PerformedEvent): string =>
  `${pitch === undefined ? (kind === 'rest' ? 'r' : '_') : pitchText(pitch)}:${format(duration)}`;

/** Notes in order, each with its length in semibreves: `e5:1/32 d5:1/32`. */
export const played = (passage: Passage, voice = 0): string =>
  eventsOfVoice(performed(passage), voice).map(asText).join(' ');

/** Notes in order without their lengths: `e5 d5 e5 d5`. */
export const notes = (passage: Passage, voice = 0): string =>
  eventsOfVoice(performed(passage), voice)
    .map(({ pitch }) => (pitch === undefined ? 'r' : pitchText(pitch)))
    .join(' ');

/** Codes of what realising could not do. */
export const problemsIn = (passage: Passage): string[] =>
  performed(passage).problems.map(({ problem }) => problem.code);

/** Where a voice has neither note nor silence, or two at once: empty if its time is conserved. */
export function gaps(events: readonly PerformedEvent[], from: Time, length: Time): string[] {
  const found: string[] = [];
  const whole = add(from, length);
  let at = from;
  for (const event of events) {
    if (compare(event.onset, at) !== 0) found.push(`${format(at)} to ${format(event.onset)}`);
    at = add(event.onset, event.duration);
  }
  return compare(at, whole) === 0 ? found : [...found, `left ${format(subtract(whole, at))}`];
}
