/** A piece in time: what sounds at a moment, and where that is written; so that another reading goes on at the same place. */
import type { PlayedBar, PlayedNote, Playing, WrittenPlace } from '../../../server/features/protocol';

/** A written place, and how often its bar has been played before. */
export interface PlayedPlace extends WrittenPlace {
  readonly before: number;
}

/** Seconds from and until. */
export interface Stretch {
  readonly from: number;
  readonly until: number;
}

/** Fractions that were made numbers are the same within this. */
const NEAR = 1e-6;

export class Timeline {
  readonly length: number;
  /** By whole second: what sounds in it. */
  private readonly bySecond = new Map<number, PlayedNote[]>();
  /** The notes of each bar as they are played. */
  private readonly byBar = new Map<number, PlayedNote[]>();

  constructor(readonly playing: Playing) {
    this.length = playing.bars.at(-1)?.until ?? 0;
    for (const note of playing.notes) {
      put(this.byBar, note.bar, note);
      for (let second = Math.floor(note.at); second <= note.until; second++) put(this.bySecond, second, note);
    }
  }

  soundingAt(seconds: number): readonly PlayedNote[] {
    const near = this.bySecond.get(Math.floor(seconds)) ?? [];
    return near.filter(({ at, until }) => at <= seconds && seconds < until);
  }

  /** What is struck from a moment on and before another. */
  struckIn({ from, until }: Stretch): readonly PlayedNote[] {
    const { notes } = this.playing;
    const found: PlayedNote[] = [];
    for (let index = firstFrom(notes, from); (notes[index]?.at ?? until) < until; index++)
      found.push(notes[index] as PlayedNote);
    return found;
  }

  barAt(seconds: number): PlayedBar | undefined {
    return this.playing.bars.findLast(({ at }) => at <= seconds + NEAR);
  }

  /** Where that is written which was struck last. */
  placeAt(seconds: number): PlayedPlace {
    const { bars } = this.playing;
    const bar = Math.max(
      0,
      bars.findLastIndex(({ at }) => at <= seconds + NEAR),
    );
    const last = this.byBar.get(bar)?.findLast(({ at }) => at <= seconds + NEAR);
    const index = bars[bar]?.index ?? 0;
    const before = bars.slice(0, bar).filter((one) => one.index === index).length;
    return { bar: index, onset: last?.onset ?? 0, before };
  }

  /** When what is written at a place is played, or what comes next; where its bar is not played so often, the last time. */
  secondsOf({ bar, onset, before }: PlayedPlace): number {
    const played = this.playing.bars.flatMap(({ index }, at) => (index === bar ? [at] : []));
    const chosen = played[before] ?? played.at(-1) ?? this.playing.bars.findIndex(({ index }) => index > bar);
    const found = this.playing.bars[chosen];
    if (found === undefined) return 0;
    if (onset < NEAR) return found.at;
    const notes = this.byBar.get(chosen) ?? [];
    return notes.find((note) => note.onset >= onset - NEAR)?.at ?? found.until;
  }

  /** From one bar to another by their numbers, both included, whichever is named first; undefined where there is none. */
  between(one: string, other: string): Stretch | undefined {
    const { bars } = this.playing;
    const [from, to] = [one, other]
      .map((number) => bars.find((bar) => bar.number === number))
      .sort((a, b) => (a?.index ?? 0) - (b?.index ?? 0));
    if (from === undefined || to === undefined) return undefined;
    const end = bars.find(({ index, at }) => index === to.index && at >= from.at);
    return end && { from: from.at, until: end.until };
  }
}

function put<Key, One>(lists: Map<Key, One[]>, key: Key, one: One): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [one]);
  else list.push(one);
}

/** The index of the first note at or after a moment. */
function firstFrom(notes: readonly PlayedNote[], moment: number): number {
  let [low, high] = [0, notes.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((notes[middle]?.at ?? 0) < moment) low = middle + 1;
    else high = middle;
  }
  return low;
}
