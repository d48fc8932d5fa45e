/** The voices of a system as lines of sounding notes, after those that sound before them. */
import { keepingLast } from '../../grammar/keeping';
import { ZERO } from '../../grammar/time';
import type { SystemBar, SystemScore } from '../score/score';
import {
  commonUnit,
  isDivided,
  isFurtherEnding,
  isParted,
  type Laid,
  type Line,
  type LineBar,
  laidOut,
  notesIn,
  type Sounding,
  soundingLike,
  surveyOf,
  ticksOf,
  tiedBefore,
} from './sounding';

/**
 * Bars of a system that are played one after another, with the last notes before them: those of the system before or, where
 * a further ending begins, those before the first ending.
 */
export interface Passage {
  /** Ticks of a semibreve. */
  readonly unit: number;
  /** All notes of each voice, in the order of the lanes. */
  readonly lines: readonly Line[];
  /** The line of each voice, one note at a time, in the order of the declarations; the first is the highest. */
  readonly melodies: readonly Line[];
  /** What the system's first bar has from the system before. */
  readonly elapsed: number;
  /** Letters that sound in more than one form, as bits: no others can stand against themselves. */
  readonly mixed: number;
}

// ─── what goes before ────────────────────────────────────────────────────────────────────────────────────────────

/** So many notes before a passage are enough for what the checks ask. */
const LOOK_BACK = 6;

const lastOf = (line: Line): Line => line.slice(-LOOK_BACK);

/** Notes moved to stand before a passage. */
function moved(lines: readonly Line[], by: number, strain: number, system?: -1): readonly Line[] {
  const bars = new Map<LineBar, LineBar>();
  const all: Line[] = [];
  for (const line of lines) {
    const notes: Sounding[] = [];
    for (const note of line) {
      const bar = bars.get(note.bar) ?? movedBar(note.bar, by, strain, system);
      bars.set(note.bar, bar);
      notes.push(soundingLike(note, note.onset + by, note.end + by, bar, note.leadsOn));
    }
    all.push(notes);
  }
  return all;
}

const movedBar = (bar: LineBar, by: number, strain: number, system = bar.system): LineBar => ({
  system,
  bar: bar.bar,
  own: false,
  start: bar.start + by,
  beat: bar.beat,
  beats: bar.beats,
  strain: bar.strain + strain,
});

/** Notes tied to those before them become one with them. */
function joined(before: Line, line: Line): Line {
  if (before.length === 0) return line;
  // Notes tied within the line are one already.
  if (!line.some(({ member }) => member.tiedFrom)) return before.concat(line);
  const tails = [...before];
  const rest: Sounding[] = [];
  for (const note of line) {
    const from = tiedBefore(tails, note);
    if (from === undefined) rest.push(note);
    else tails[tails.indexOf(from)] = soundingLike(from, from.onset, note.end, from.bar, note.leadsOn);
  }
  return [...tails, ...rest];
}

const allJoined = (before: readonly Line[], lines: readonly Line[]): readonly Line[] =>
  lines.map((line, index) => joined(before[index] ?? [], line));

/** The first ending to which a further one belongs: its index; -1 if it does not begin in these bars. */
const firstEnding = (bars: readonly SystemBar[], before = bars.length): number =>
  bars.slice(0, before).findLastIndex(({ ending }) => ending === 1);

/** Index of a voice in a system; -1 where it has no lane. */
function laneOf(voice: number, { voices }: SystemScore): number {
  for (let lane = 0; lane < voices.length; lane++) if (voices[lane]?.voice === voice) return lane;
  return -1;
}

/** A system beside the one before it. */
class Neighbours {
  readonly bars: readonly SystemBar[];
  readonly elapsed: number;
  private readonly own: Laid;
  private readonly earlier: Laid | undefined;

  /** @param before undefined if there is none or no unit fits both */
  constructor(
    private readonly score: SystemScore,
    private readonly before: SystemScore | undefined,
    readonly unit: number,
  ) {
    this.bars = score.bars;
    this.own = laidOut(score, unit);
    this.earlier = before && laidOut(before, unit);
    this.elapsed = score.bars[0]?.continues === true ? ticksOf(before?.carryOut.open?.elapsed ?? ZERO, unit) : 0;
  }

  /** The lines of some bars, with what goes before them. */
  linesOver(from: number, to: number): readonly Line[] {
    const isJoint = isFurtherEnding(this.bars[from] as SystemBar);
    return allJoined(isJoint ? this.beforeFirstEnding(from) : this.tail(), this.linesIn(from, to));
  }

  private linesIn(from: number, to: number): readonly Line[] {
    const { voices, bars } = this.score;
    if (from === 0 && to === bars.length) return this.own.lines;
    return voices.map((voice) => notesIn(voice, this.own.bars, this.unit, from, to));
  }

  /** Each voice's notes in the system before, up to a bar of it; none of a voice without a lane there. */
  private linesBefore(to: number): readonly Line[] {
    const { before, earlier } = this;
    if (before === undefined || earlier === undefined) return [];
    const lines: Line[] = [];
    for (const { voice } of this.score.voices) {
      const lane = laneOf(voice, before);
      const there = before.voices[lane];
      if (there === undefined) lines.push([]);
      else if (to === before.bars.length) lines.push(lastOf(earlier.lines[lane] ?? []));
      else lines.push(lastOf(notesIn(there, earlier.bars, this.unit, 0, to)));
    }
    return lines;
  }

  /** The strain of the last bar before this system, where its own first bar has 0. */
  private get lastStrain(): number {
    return isParted(this.before?.bars.at(-1), this.bars[0]) ? -1 : 0;
  }

  /** The end of the system before. */
  private tail(): readonly Line[] {
    const { before, earlier, unit } = this;
    if (before === undefined) return [];
    const strain = this.lastStrain - (earlier?.bars.at(-1)?.strain ?? 0);
    return moved(this.linesBefore(before.bars.length), -ticksOf(before.duration, unit), strain, -1);
  }

  /** What leads to the first ending leads to every other. */
  private beforeFirstEnding(from: number): readonly Line[] {
    const here = this.own.bars[from];
    const first = firstEnding(this.bars, from);
    const bar = this.own.bars[first];
    if (here === undefined || bar === undefined) return this.beforeEarlierEnding(from);
    const last = first === 0 ? this.before?.bars.at(-1) : this.bars[first - 1];
    const lastStrain = first === 0 ? this.lastStrain : (this.own.bars[first - 1]?.strain ?? 0);
    const lines = allJoined(this.tail(), this.linesIn(0, first)).map(lastOf);
    const strain = here.strain - lastStrain - (isDivided(last, this.bars[from]) ? 1 : 0);
    return moved(lines, here.start - bar.start, strain);
  }

  /** The same where the first ending begins in the system before. */
  private beforeEarlierEnding(from: number): readonly Line[] {
    const { before, earlier } = this;
    const first = firstEnding(before?.bars ?? []);
    const [here, bar, last] = [this.own.bars[from], earlier?.bars[first], earlier?.bars[first - 1]];
    if (here === undefined || bar === undefined || last === undefined) return [];
    const strain = here.strain - last.strain - (isDivided(before?.bars[first - 1], this.bars[from]) ? 1 : 0);
    return moved(this.linesBefore(first), here.start - bar.start, strain, -1);
  }
}

// ─── passages ────────────────────────────────────────────────────────────────────────────────────────────────────

/** The chord from an index on: the index after it. */
function chordEnd(line: Line, index: number): number {
  const { event } = line[index] as Sounding;
  let end = index + 1;
  while (end < line.length && line[end]?.event === event) end++;
  return end;
}

/**
 * One note at a time: of a chord the outer note in the outermost voices; an inner voice has no one line where it has
 * chords.
 */
function melodyOf(line: Line, part: 'highest' | 'lowest' | 'inner'): Line {
  const found: Sounding[] = [];
  for (let index = 0; index < line.length; ) {
    const end = chordEnd(line, index);
    let one = line[index] as Sounding;
    for (let i = index + 1; i < end; i++) {
      const note = line[i] as Sounding;
      if (part === 'lowest' ? note.midi < one.midi : note.midi >= one.midi) one = note;
    }
    if (part !== 'inner' || end === index + 1) found.push(one);
    index = end;
  }
  return found;
}

function melodiesOf(score: SystemScore, lines: readonly Line[], voices: number): readonly Line[] {
  const melodies: Line[] = [];
  for (let voice = 0; voice < voices; voice++) {
    for (const [index, line] of lines.entries()) {
      if (score.voices[index]?.voice !== voice) continue;
      melodies.push(melodyOf(line, voice === voices - 1 ? 'lowest' : voice === 0 ? 'highest' : 'inner'));
    }
  }
  return melodies;
}

/** Steps of an octave. */
export const OCTAVE = 7;

/** Letters that sound in more than one form, as bits. */
function mixedLetters(lines: readonly Line[]): number {
  const forms = [0, 0, 0, 0, 0, 0, 0];
  let mixed = 0;
  for (const line of lines) {
    for (const { step, member } of line) {
      const letter = step % OCTAVE;
      // Double flats are the lowest form.
      const form = 1 << (member.alteration + 2);
      const known = (forms[letter] ?? 0) | form;
      if (known !== form) mixed |= 1 << letter;
      forms[letter] = known;
    }
  }
  return mixed;
}

/** Whether the letter of a note sounds in another form too. */
export const isMixed = ({ mixed }: Passage, { step }: Sounding): boolean => (mixed & (1 << (step % OCTAVE))) !== 0;

/**
 * The passages of a system: one, and one more for each further ending. None where no unit fits its times.
 * @param voices how many the file has
 */
function newPassages(score: SystemScore, before: SystemScore | undefined, voices: number): readonly Passage[] {
  const { unit: own } = surveyOf(score);
  if (own === 0) return [];
  const common = before === undefined ? 0 : commonUnit(own, surveyOf(before).unit);
  const unit = common === 0 ? own : common;
  const neighbours = new Neighbours(score, common === 0 ? undefined : before, unit);
  const passages: Passage[] = [];
  for (let from = 0; from < score.bars.length; ) {
    const to = nextEnding(score.bars, from);
    const lines = neighbours.linesOver(from, to);
    const melodies = melodiesOf(score, lines, voices);
    passages.push({ unit, lines, melodies, elapsed: neighbours.elapsed, mixed: mixedLetters(lines) });
    from = to;
  }
  return passages;
}

/** Where the next further ending begins after a bar, or all bars end. */
function nextEnding(bars: readonly SystemBar[], from: number): number {
  let to = from + 1;
  while (to < bars.length && !isFurtherEnding(bars[to] as SystemBar)) to++;
  return to;
}

interface Beside {
  readonly before: SystemScore | undefined;
  readonly voices: number;
  readonly passages: readonly Passage[];
}

const passagesBeside = keepingLast((_: SystemScore): Beside[] => []);

/** The same; kept while one look after another asks for them. */
export function passagesOf(score: SystemScore, before: SystemScore | undefined, voices: number): readonly Passage[] {
  const beside = passagesBeside(score);
  const known = beside.find((one) => one.before === before && one.voices === voices);
  if (known !== undefined) return known.passages;
  const passages = newPassages(score, before, voices);
  beside.push({ before, voices, passages });
  return passages;
}

// ─── looking things up ───────────────────────────────────────────────────────────────────────────────────────────

/** How many notes of a line begin at a moment or before it. */
export function countTo(line: Line, moment: number): number {
  let [low, high] = [0, line.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((line[middle] as Sounding).onset > moment) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** So many notes back the widest chords are still whole. */
const FEW = 12;

/** The first of the last few notes up to an index: what sounds then, or has just ended, is among them. */
export const firstOfLast = (count: number): number => Math.max(0, count - FEW);

/** The last few notes of a line that begin at a moment or before it. */
export function lastTo(line: Line, moment: number): Line {
  const count = countTo(line, moment);
  return line.slice(firstOfLast(count), count);
}

/** The beat in which a note stands, counted from 0 and with its fraction; undefined in free music. */
export function beatIn({ elapsed }: Passage, { onset, bar }: Sounding): number | undefined {
  const offset = onset - bar.start + (bar.system === 0 && bar.bar === 0 ? elapsed : 0);
  return bar.beat === 0 || offset < 0 ? undefined : offset / bar.beat;
}
