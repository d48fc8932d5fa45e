/** Tuplets after rhythm is written otherwise: what is left of one of the source is one by itself. */
import { divide, multiply, sum, time } from '../../../grammar/time';
import type { Piece, SystemVoice, Tuplet, VoiceEvent } from '../../score/score';
import { eventLike } from '../ornaments/events';
import { withVoices } from './voices';

export const withWholeTuplets = (piece: Piece): Piece => withVoices(piece, inVoice);

/** Runs of events in one tuplet; of a tuplet that is parted each run has its own. */
function inVoice(voice: SystemVoice): SystemVoice {
  const runs: { readonly tuplet: Tuplet; readonly events: VoiceEvent[] }[] = [];
  let before: Tuplet | undefined;
  for (const event of voice.events) {
    const tuplet = event.tuplets[0];
    if (tuplet !== undefined && tuplet === before) runs.at(-1)?.events.push(event);
    else if (tuplet !== undefined) runs.push({ tuplet, events: [event] });
    if (event.small === undefined) before = tuplet;
  }
  const parted = runs.filter(({ tuplet }) => runs.filter((run) => run.tuplet === tuplet).length > 1);
  if (parted.length === 0) return voice;
  const made = new Map(
    parted.flatMap(({ tuplet, events }) => {
      const whole = wholeOf(tuplet, events);
      return events.map((event) => [event, whole] as const);
    }),
  );
  return {
    ...voice,
    events: voice.events.map((event) => {
      const tuplet = made.get(event);
      return tuplet === undefined ? event : eventLike(event, { tuplets: [tuplet, ...event.tuplets.slice(1)] });
    }),
  };
}

function wholeOf(tuplet: Tuplet, events: readonly VoiceEvent[]): Tuplet {
  const filled = multiply(sum(events.map(({ duration }) => duration)), time(tuplet.n, tuplet.m));
  return { ...tuplet, unit: divide(filled, time(tuplet.n)) };
}
