/** A piece with some of its events replaced by others: curves still begin and end where they did. */
import type { Curve, CurveEnd, Piece, ScoreSystem, SystemScore, SystemVoice, VoiceEvent } from '../../score/score';

/** An event that stands for a written one, or for a part of it. */
export interface Replacement {
  readonly event: VoiceEvent;
  /** For each of its members the written note from which it comes. */
  readonly heads: readonly Head[];
}

/** A written note by its event in its system and voice, and its place in the chord. */
export interface Head {
  readonly event: number;
  readonly member: number;
}

/** What stands for the events of a piece: by system and voice, then by the index of the event; others stay. */
export type Replacements = ReadonlyMap<ScoreSystem, ReadonlyMap<number, ReadonlyMap<number, readonly Replacement[]>>>;

export function withReplaced(piece: Piece, replacements: Replacements): Piece {
  if (replacements.size === 0) return piece;
  return { ...piece, systems: piece.systems.map((system) => replacedSystem(system, replacements)) };
}

function replacedSystem(system: ScoreSystem, replacements: Replacements): ScoreSystem {
  const own = replacements.get(system);
  if (own === undefined) return system;
  const { score } = system;
  const voices = score.voices.map((voice) => new ReplacedVoice(voice, own.get(voice.voice) ?? new Map()));
  const curves = score.curves.map((curve) => movedCurve(curve, voices));
  const replaced: SystemScore = { ...score, voices: voices.map(({ voice }) => voice), curves };
  return { ...system, score: replaced };
}

class ReplacedVoice {
  readonly voice: SystemVoice;
  private readonly all: readonly (Replacement & { readonly index: number })[];

  constructor({ voice, lane, events }: SystemVoice, by: ReadonlyMap<number, readonly Replacement[]>) {
    this.all = events.flatMap((event, index) =>
      (by.get(index) ?? [unchanged(event, index)]).map((one) => ({ ...one, index })),
    );
    this.voice = { voice, lane, events: this.all.map(({ event }) => event) };
  }

  /** The end of a curve at the first or last of the events that stand for the one where it was. */
  moved(end: CurveEnd, side: 'start' | 'end'): CurveEnd {
    const sounds = (one: Replacement): boolean => one.heads.some((head) => head.event === end.event);
    const stands = (one: Replacement & { readonly index: number }): boolean => one.index === end.event;
    const find = (test: typeof stands): number =>
      side === 'start' ? this.all.findIndex(test) : this.all.findLastIndex(test);
    const [sounding, standing] = [find(sounds), find(stands)];
    const event = sounding >= 0 ? sounding : standing;
    if (event < 0) return { ...end, event: this.all.length };
    const member = this.all[event]?.heads.findIndex((head) => head.event === end.event && head.member === end.member);
    return {
      ...end,
      event,
      member: end.member === undefined || member === undefined || member < 0 ? undefined : member,
    };
  }
}

const unchanged = (event: VoiceEvent, index: number): Replacement => ({
  event,
  heads: event.members.map((_, member) => ({ event: index, member })),
});

function movedCurve(curve: Curve, voices: readonly ReplacedVoice[]): Curve {
  const moved = (end: CurveEnd | undefined, side: 'start' | 'end'): CurveEnd | undefined =>
    end && (voices.find(({ voice }) => voice.voice === end.voice)?.moved(end, side) ?? end);
  return { ...curve, start: moved(curve.start, 'start'), end: moved(curve.end, 'end') };
}
