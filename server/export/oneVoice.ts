/** One voice of a score, on the staves on which its notes stand: for a picture of a few notes. */
import type { Bar, Curve, CurveEnd, Piece, Score, StateChange, SystemScore, VoiceEvent } from '../score/score';
import { eventsOf } from '../score/walk';
import { eventLike, noteLike } from './ornaments/events';

/**
 * The score with no other voice than this one, and what is held beside it.
 * @param voice index in `Environment.voices`
 * @param bars those that are to be seen; staves on which the voice has nothing in them are left out
 */
export function oneVoice(score: Score, voice: number, bars: ReadonlySet<Bar>): Score {
  const { environment } = score;
  const voices = environment.voices.flatMap(({ beside }, i) => (i === voice || beside === voice ? [i] : []));
  if (voices.length === 0) return score;
  const seen: Seen = { voices, staves: stavesIn(score, voice, bars) };
  return {
    ...score,
    environment: {
      ...environment,
      staves: environment.staves.filter((_, i) => seen.staves.includes(i)),
      voices: environment.voices
        .filter((_, i) => voices.includes(i))
        .map((declared) => ({ ...declared, stave: indexIn(seen.staves, declared.stave) })),
    },
    pieces: score.pieces.map((piece) => pieceOf(piece, seen)),
  };
}

/** What is seen: indices in the whole score. */
interface Seen {
  readonly voices: readonly number[];
  readonly staves: readonly number[];
}

/** The first for what is not seen. */
const indexIn = (seen: readonly number[], index: number): number => Math.max(0, seen.indexOf(index));

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

function pieceOf(piece: Piece, seen: Seen): Piece {
  const innerOf = ({ inner }: Bar): Bar['inner'] =>
    inner
      .filter(({ voice }) => seen.voices.includes(voice))
      .map((barline) => ({ ...barline, voice: indexIn(seen.voices, barline.voice) }));
  return {
    ...piece,
    bars: piece.bars.map((bar) => (bar.inner.length === 0 ? bar : { ...bar, inner: innerOf(bar) })),
    systems: piece.systems.map((system) => ({ ...system, score: systemOf(system.score, seen) })),
  };
}

const systemOf = (score: SystemScore, seen: Seen): SystemScore => ({
  ...score,
  voices: score.voices
    .filter(({ voice }) => seen.voices.includes(voice))
    .map(({ voice, lane, events }) => ({
      voice: indexIn(seen.voices, voice),
      lane,
      events: events.map((event) => eventOn(event, indexIn(seen.voices, voice), seen)),
    })),
  curves: score.curves.filter((curve) => isWithin(curve, seen)).map((curve) => curveOf(curve, seen)),
  changes: score.changes.flatMap((change) => changeOn(change, seen)),
});

const eventOn = (event: VoiceEvent, voice: number, { staves }: Seen): VoiceEvent => {
  const members = event.members.map((note) => noteLike(note, { stave: indexIn(staves, note.stave) }));
  return eventLike(event, { voice, stave: indexIn(staves, event.stave), members });
};

const isWithin = ({ voice, start, end }: Curve, { voices }: Seen): boolean =>
  [voice, start?.voice, end?.voice].every((one) => one === undefined || voices.includes(one));

function curveOf(curve: Curve, { voices }: Seen): Curve {
  const moved = (end: CurveEnd | undefined): CurveEnd | undefined =>
    end && { ...end, voice: indexIn(voices, end.voice) };
  return { ...curve, voice: indexIn(voices, curve.voice), start: moved(curve.start), end: moved(curve.end) };
}

function changeOn(change: StateChange, { voices, staves }: Seen): readonly StateChange[] {
  const { stave, manual } = change;
  if (manual !== undefined) {
    return voices.includes(manual.voice)
      ? [{ ...change, manual: { ...manual, voice: indexIn(voices, manual.voice) } }]
      : [];
  }
  if (stave === undefined) return [change];
  return staves.includes(stave) ? [{ ...change, stave: indexIn(staves, stave) }] : [];
}
