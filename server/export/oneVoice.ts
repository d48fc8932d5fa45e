/** One voice of a score, on the staves on which its notes stand: for a picture of a few notes. */
import type { Bar, Curve, Piece, Score, StateChange, SystemScore, VoiceEvent } from '../score/score';
import { eventsOf } from '../score/walk';
import { eventLike, noteLike } from './ornaments/events';

/**
 * The score with no other voice than this one.
 * @param voice index in `Environment.voices`
 * @param bars those that are to be seen; staves on which the voice has nothing in them are left out
 */
export function oneVoice(score: Score, voice: number, bars: ReadonlySet<Bar>): Score {
  const { environment } = score;
  const declared = environment.voices[voice];
  if (declared === undefined) return score;
  const staves = stavesIn(score, voice, bars);
  const stave = (old: number): number => Math.max(0, staves.indexOf(old));
  return {
    ...score,
    environment: {
      ...environment,
      staves: environment.staves.filter((_, i) => staves.includes(i)),
      voices: [{ ...declared, stave: stave(declared.stave) }],
    },
    pieces: score.pieces.map((piece) => pieceOf(piece, voice, staves)),
  };
}

/** From the highest; that of the voice where it has no note. */
function stavesIn(score: Score, voice: number, bars: ReadonlySet<Bar>): readonly number[] {
  const used = new Set<number>();
  for (const piece of score.pieces) {
    for (const { event, bar, voice: own } of eventsOf(piece)) {
      if (own.voice === voice && bars.has(bar)) for (const note of event.members) used.add(note.stave);
    }
  }
  return used.size === 0 ? [score.environment.voices[voice]?.stave ?? 0] : [...used].sort((a, b) => a - b);
}

function pieceOf(piece: Piece, voice: number, staves: readonly number[]): Piece {
  const ofVoice = (barline: Bar['inner'][number]): boolean => barline.voice === voice;
  return {
    ...piece,
    bars: piece.bars.map((bar) =>
      bar.inner.length === 0 ? bar : { ...bar, inner: bar.inner.filter(ofVoice).map((one) => ({ ...one, voice: 0 })) },
    ),
    systems: piece.systems.map((system) => ({ ...system, score: systemOf(system.score, voice, staves) })),
  };
}

const systemOf = (score: SystemScore, voice: number, staves: readonly number[]): SystemScore => ({
  ...score,
  voices: score.voices
    .filter((one) => one.voice === voice)
    .map((one) => ({ ...one, voice: 0, events: one.events.map((event) => eventOn(event, staves)) })),
  curves: score.curves.filter((curve) => isWithin(curve, voice)).map(asFirst),
  changes: score.changes.flatMap((change) => changeOn(change, voice, staves)),
});

const eventOn = (event: VoiceEvent, staves: readonly number[]): VoiceEvent => {
  const on = (stave: number): number => Math.max(0, staves.indexOf(stave));
  const members = event.members.map((note) => noteLike(note, { stave: on(note.stave) }));
  return eventLike(event, { voice: 0, stave: on(event.stave), members });
};

const isWithin = ({ voice, start, end }: Curve, only: number): boolean =>
  voice === only && [start, end].every((one) => one === undefined || one.voice === only);

const asFirst = (curve: Curve): Curve => ({
  ...curve,
  voice: 0,
  start: curve.start && { ...curve.start, voice: 0 },
  end: curve.end && { ...curve.end, voice: 0 },
});

function changeOn(change: StateChange, voice: number, staves: readonly number[]): readonly StateChange[] {
  const { stave, manual } = change;
  if (manual !== undefined) return manual.voice === voice ? [{ ...change, manual: { ...manual, voice: 0 } }] : [];
  if (stave === undefined) return [change];
  return staves.includes(stave) ? [{ ...change, stave: staves.indexOf(stave) }] : [];
}
