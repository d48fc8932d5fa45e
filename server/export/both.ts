/** Two forms or readings of one score above one another: each stave and voice twice, in two parts. */
import { compare, equal, ZERO } from '../../grammar/time';
import type { Environment } from '../score/environment';
import type {
  Bar,
  Curve,
  CurveEnd,
  NoteMember,
  Piece,
  Score,
  ScoreSystem,
  StateChange,
  SystemBar,
  SystemScore,
  SystemVoice,
  VoiceEvent,
} from '../score/score';
import { eventLike, noteLike } from './ornaments/events';

/** Ends the names of the lower staves and voices, which are those of the source; whatever stands in them. */
const LOWER = 'written';

/** What the two parts are called where the rhythm stands above as it is played and beneath as it is written. */
export const PARTS = ['as played', 'as written'] as const;
export type PartNames = readonly [upper: string, lower: string];

/** The upper score with the lower beneath it; both have the same systems and bars: `areAlike`. */
export function above(upper: Score, lower: Score, names: PartNames = PARTS): Score {
  const { staves, voices } = upper.environment;
  const by: Shift = { staves: staves.length, voices: voices.length };
  return {
    ...upper,
    environment: doubled(upper.environment, by, names),
    pieces: upper.pieces.map((piece, index) => joinedPiece(piece, lower.pieces[index] ?? piece, by)),
  };
}

/** Whether one can stand above the other: as many systems, in each the same bars, of the same lengths. */
export const areAlike = (upper: Piece, lower: Piece): boolean =>
  upper.systems.length === lower.systems.length &&
  upper.systems.every((system, index) => haveBarsAlike(system, lower.systems[index] as ScoreSystem));

const haveBarsAlike = ({ score: { bars } }: ScoreSystem, { score: { bars: others } }: ScoreSystem): boolean =>
  bars.length === others.length &&
  bars.every(({ duration }, index) => equal(duration, others[index]?.duration ?? ZERO));

/** Each as a score of its own, with the names of parts, where they cannot stand in one. */
export function apart(upper: Score, lower: Score, names: PartNames): readonly [Score, Score] {
  const lowered = lower.pieces.map((piece) => ({
    ...piece,
    systems: piece.systems.map((system) => ({ ...system, score: withLowerLanes(system.score) })),
  }));
  return [inPart(upper, names[0]), inPart({ ...lower, pieces: lowered }, names[1])];
}

const inPart = (score: Score, part: string): Score => ({
  ...score,
  environment: { ...score.environment, staves: score.environment.staves.map((stave) => ({ ...stave, part })) },
});

const withLowerLanes = (score: SystemScore): SystemScore => ({
  ...score,
  voices: score.voices.map((voice) => ({
    ...voice,
    events: voice.events.map((event) => eventLike(event, { laneName: lowerName(event.laneName) })),
  })),
});

/** By how much the numbers of the lower staves and voices are higher. */
interface Shift {
  readonly staves: number;
  readonly voices: number;
}

/** What a stave, voice or lane is called in the lower part. */
export const lowerName = (name: string): string => `${name}.${LOWER}`;

/** The lane of the source, of one in either part. */
export const laneOfSource = (name: string): string => (isOfLower(name) ? name.slice(0, -LOWER.length - 1) : name);

/** Whether a lane is that of the lower part. */
export const isOfLower = (name: string): boolean => name.endsWith(`.${LOWER}`);

const doubled = (environment: Environment, by: Shift, [upper, lower]: PartNames): Environment => ({
  ...environment,
  staves: [
    ...environment.staves.map((stave) => ({ ...stave, part: upper })),
    ...environment.staves.map((stave) => ({ ...stave, name: lowerName(stave.name), part: lower })),
  ],
  voices: [
    ...environment.voices,
    ...environment.voices.map((voice) => ({ ...voice, name: lowerName(voice.name), stave: voice.stave + by.staves })),
  ],
});

const joinedPiece = (upper: Piece, lower: Piece, by: Shift): Piece => ({
  ...upper,
  bars: upper.bars.map((bar) => withInner(bar, by)),
  systems: upper.systems.map((system, index) => joinedSystem(system, lower.systems[index] ?? system, by)),
});

function joinedSystem(upper: ScoreSystem, lower: ScoreSystem, by: Shift): ScoreSystem {
  const { score } = upper;
  return {
    ...upper,
    score: {
      ...score,
      bars: score.bars.map((bar) => withInner(bar, by)),
      voices: [...score.voices, ...lower.score.voices.map((voice) => lowerVoice(voice, by))],
      curves: [...score.curves, ...lower.score.curves.map((curve) => lowerCurve(curve, by))],
      changes: [...score.changes, ...lower.score.changes.flatMap((change) => lowerChange(change, by))].sort(
        (a, b) => a.bar - b.bar || compare(a.onset, b.onset),
      ),
    },
  };
}

/** A barline of one voice is drawn in both of its forms. */
const withInner = <One extends Bar | SystemBar>(bar: One, by: Shift): One =>
  bar.inner.length === 0
    ? bar
    : { ...bar, inner: bar.inner.flatMap((line) => [line, { ...line, voice: line.voice + by.voices }]) };

/** What concerns all staves is said once. */
function lowerChange(change: StateChange, by: Shift): StateChange[] {
  const { stave, manual } = change;
  if (manual !== undefined) return [{ ...change, manual: { ...manual, voice: manual.voice + by.voices } }];
  return stave === undefined ? [] : [{ ...change, stave: stave + by.staves }];
}

const lowerVoice = ({ voice, lane, events }: SystemVoice, by: Shift): SystemVoice => ({
  voice: voice + by.voices,
  lane,
  events: events.map((event) => lowerEvent(event, by)),
});

const lowerEvent = (event: VoiceEvent, by: Shift): VoiceEvent =>
  eventLike(event, {
    voice: event.voice + by.voices,
    stave: event.stave + by.staves,
    members: event.members.map((member): NoteMember => noteLike(member, { stave: member.stave + by.staves })),
    laneName: lowerName(event.laneName),
    // Figures and words stand once.
    figures: undefined,
    syllables: [],
  });

const lowerEnd = (end: CurveEnd | undefined, by: Shift): CurveEnd | undefined =>
  end && { ...end, voice: end.voice + by.voices };

const lowerCurve = (curve: Curve, by: Shift): Curve => ({
  ...curve,
  voice: curve.voice + by.voices,
  start: lowerEnd(curve.start, by),
  end: lowerEnd(curve.end, by),
});
