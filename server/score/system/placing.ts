/** Events, barlines and problems of voices put in the bars and the time of their system. */
import { add, type Time, ZERO } from '../../../grammar/time';
import type { Laid, VoiceBars } from '../bars';
import type { LaneEvent } from '../event';
import { type DrawnBarline, isSpecial, type PlacedProblem } from '../score';

/** The events of a voice, each put in its bar and time of the system. */
export function eventsIn(voice: VoiceBars, laid: Laid, v: number): LaneEvent[] {
  const { barOf } = laid;
  const starts = laid.voices[v]?.starts;
  let count = 0;
  for (const { bar } of voice.bars) count += bar.events.length;
  const all = new Array<LaneEvent>(count);
  let next = 0;
  for (const [index, { bar }] of voice.bars.entries()) {
    const onset = starts?.[index]?.onset ?? ZERO;
    for (const event of bar.events) {
      event.onset = add(onset, event.onset);
      event.bar = barOf === undefined ? index : barOf(event.onset);
      if (event.fills && event.small === undefined) event.duration = starts?.[index]?.filler ?? ZERO;
      all[next++] = event;
    }
  }
  return all;
}

/** When the barline before each event stands. */
export const barlinesOf = (voice: VoiceBars | undefined, laid: Laid, v: number): Time[] =>
  (voice?.bars ?? []).flatMap(({ bar }, index) => bar.events.map(() => laid.voices[v]?.starts[index]?.onset ?? ZERO));

/** A lane of a loose system counts its own bars; the sentence names the common bar in which that begins. */
export function inCommonBar(placed: PlacedProblem, voices: readonly VoiceBars[], laid: Laid): PlacedProblem {
  const { bar, lane } = placed;
  if (bar === undefined || lane === undefined) return placed;
  const v = voices.findIndex(({ bars }) => bars[bar]?.lane === lane);
  const start = laid.voices[v]?.starts[bar]?.onset;
  return start === undefined || laid.barOf === undefined ? placed : { ...placed, bar: laid.barOf(start) };
}

const hasOpening = ({ opening }: VoiceBars): boolean => opening !== undefined;

/** The barline that the lanes open with: a special one if any has it, with all that is glued to them. */
export function openingOf(lanes: readonly VoiceBars[]): DrawnBarline | undefined {
  if (!lanes.some(hasOpening)) return undefined;
  const all = lanes.flatMap(({ opening }) => opening ?? []);
  const shown = all.find(isSpecial) ?? all[0];
  return (
    shown && {
      ...shown,
      marks: all.flatMap(({ marks }) => marks),
      annotations: all.flatMap(({ annotations }) => annotations),
    }
  );
}
