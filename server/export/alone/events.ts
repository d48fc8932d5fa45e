/** Events of a system's score by the place where they are typed. */
import { putUnder } from '../../../grammar/lists';
import type { ScoreSystem, VoiceEvent } from '../../score/score';

export class EventsByPlace {
  private readonly events = new Map<string, VoiceEvent[]>();

  constructor({ score }: ScoreSystem) {
    for (const { events } of score.voices) {
      for (const event of events) {
        putUnder(this.events, `${event.source.lane} ${event.source.pos}`, event);
      }
    }
  }

  at(lane: number, pos: number): VoiceEvent | undefined {
    return this.all(lane, pos)[0];
  }

  /** Several where a place of options is omitted over barlines. */
  all(lane: number, pos: number): readonly VoiceEvent[] {
    return this.events.get(`${lane} ${pos}`) ?? [];
  }
}
