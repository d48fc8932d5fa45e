/**
 * Bars that equal an earlier one but for a single note: the repetition may be the composer's, and one of the two a slip.
 *
 * Each system keeps the prints of its bars; the search goes over prints alone.
 */
import { keeping } from '../../grammar/keeping';
import { subtract } from '../../grammar/time';
import { degreeOf } from '../score/heights';
import type { NoteMember, Piece, PlacedProblem, ScoreSystem, SystemBar, SystemScore, VoiceEvent } from '../score/score';
import { checkOfWritten, problemAt } from './check';
import { noteName } from './pitches';

/**
 * A bar as values and rests, and apart from them its notes in order; both as texts, which are small and quick to compare. It
 * holds no event, since it is kept as long as its system while events are not.
 */
interface Print {
  readonly values: string;
  /** A character for each note says position and alteration. */
  readonly pitches: string;
}

/** A bar with fewer notes is too short for likeness to mean anything. */
const FEWEST_NOTES = 6;
/** In how many earlier bars of the same values a likeness is looked for. */
const FARTHEST = 100;

const pitchOf = (member: NoteMember): number => degreeOf(member) * 5 + member.alteration + 2;

/** A bar on two systems is compared in neither half. */
const isWhole = (bar: SystemBar): boolean => !bar.continues && bar.closing !== undefined && !bar.broken;

const KINDS = { note: 0, rest: 1, gap: 2, lost: 3 } as const;

const NEXT_VOICE = 0xff;
const BESIDE_FIGURES = 0xfe;

/** So many codes become text at once: a call does not take as many as a bar may have notes. */
const AT_ONCE = 10_000;

/** Characters of a print by their codes. */
class Characters {
  private readonly codes: number[] = [];

  code(code: number): void {
    this.codes.push(code);
  }

  /** A small number as one character, any other in figures between marks. */
  number(value: number | bigint): void {
    if (typeof value === 'number' && value >= 0 && value < 0xf0) {
      this.codes.push(value);
      return;
    }
    this.codes.push(BESIDE_FIGURES);
    for (const figure of `${value}`) this.codes.push(figure.charCodeAt(0));
    this.codes.push(BESIDE_FIGURES);
  }

  get length(): number {
    return this.codes.length;
  }

  get text(): string {
    let text = '';
    for (let at = 0; at < this.codes.length; at += AT_ONCE)
      text += String.fromCharCode(...this.codes.slice(at, at + AT_ONCE));
    return text;
  }
}

function printOf(bar: SystemBar, events: readonly VoiceEvent[]): Print | undefined {
  if (!isWhole(bar)) return undefined;
  const pitches = new Characters();
  const values = new Characters();
  let voice = -1;
  for (const { voice: of, onset, duration, kind, members } of events) {
    // Within a voice one event follows the other.
    if (of !== voice) {
      const from = subtract(onset, bar.onset);
      values.code(NEXT_VOICE);
      values.number(of);
      values.number(from.n);
      values.number(from.d);
      voice = of;
    }
    values.number(duration.n);
    values.number(duration.d);
    values.number(members.length * 4 + KINDS[kind]);
    for (const member of members) pitches.code(pitchOf(member));
  }
  return pitches.length < FEWEST_NOTES ? undefined : { values: values.text, pitches: pitches.text };
}

/** The prints of a system's bars; undefined of those that are not compared. */
export const printsOf = keeping(({ kind, bars, voices }: SystemScore): readonly (Print | undefined)[] => {
  if (kind !== 'measured') return [];
  const events = bars.map((): VoiceEvent[] => []);
  for (const voice of voices) for (const event of voice.events) events[event.bar]?.push(event);
  return bars.map((bar, index) => printOf(bar, events[index] ?? []));
});

interface PlacedPrint {
  readonly print: Print;
  readonly score: SystemScore;
  /** Index in the system's bars. */
  readonly index: number;
  /** Index in the piece's bars. */
  readonly bar: number;
  readonly block: number;
}

/** A system that neither changes nor moves keeps its own. */
const placedPrints = keeping(({ score, firstBar, block }: ScoreSystem): readonly PlacedPrint[] => {
  const placed: PlacedPrint[] = [];
  for (const [index, print] of printsOf(score).entries())
    if (print !== undefined) placed.push({ print, score, index, bar: firstBar + index, block });
  return placed;
});

/** The one note in which two bars of the same values differ: its index; -1 if none does, undefined if several do. */
function onlyDifference(a: Print, b: Print): number | undefined {
  let found = -1;
  for (let index = 0; index < a.pitches.length; index++) {
    if (a.pitches[index] === b.pitches[index]) continue;
    if (found >= 0) return undefined;
    found = index;
  }
  return found;
}

/** In steps: what a slip of the pen is wide, at most a third, or an octave. */
const isSlip = (a: NoteMember, b: NoteMember): boolean => {
  const steps = Math.abs(degreeOf(a) - degreeOf(b));
  return steps <= 2 || steps === 7;
};

interface Likeness {
  readonly earlier: PlacedPrint;
  readonly note: number;
}

/** The nearest earlier bar that differs in one note, if no earlier one is the same throughout. */
function likenessOf({ print, bar }: PlacedPrint, earlier: readonly PlacedPrint[]): Likeness | undefined {
  let found: Likeness | undefined;
  for (let index = earlier.length - 1; index >= Math.max(0, earlier.length - FARTHEST); index--) {
    const other = earlier[index];
    if (other === undefined) continue;
    const note = onlyDifference(print, other.print);
    if (note === -1) return undefined;
    // A figure that moves on from bar to bar changes one note at a time.
    if (found === undefined && note !== undefined && bar - other.bar > 1) found = { earlier: other, note };
  }
  return found;
}

/** Bars that are like an earlier one, each with it. */
function likenesses({ systems }: Piece): { readonly here: PlacedPrint; readonly like: Likeness }[] {
  const byValues = new Map<string, PlacedPrint[]>();
  const found: { here: PlacedPrint; like: Likeness }[] = [];
  for (const system of systems) {
    for (const here of placedPrints(system)) {
      const { values } = here.print;
      const earlier = byValues.get(values);
      const like = earlier && likenessOf(here, earlier);
      if (earlier === undefined) byValues.set(values, [here]);
      else earlier.push(here);
      if (like !== undefined) found.push({ here, like });
    }
  }
  return found;
}

/** A note of a bar by its number among all notes of the bar. */
function noteIn({ score, index }: PlacedPrint, number: number): { event: VoiceEvent; member: NoteMember } | undefined {
  const events = score.voices.flatMap((voice) => voice.events.filter(({ bar }) => bar === index));
  return events.flatMap((event) => event.members.map((member) => ({ event, member })))[number];
}

/** The number of an event in its bar and voice as critical reports count: what is drawn (common practice). */
function symbolIn({ score, index }: PlacedPrint, event: VoiceEvent): number {
  const own = score.voices.find(({ voice }) => voice === event.voice)?.events ?? [];
  return own.filter(({ bar, kind }) => bar === index && kind !== 'gap').indexOf(event) + 1;
}

function nearRepeats(piece: Piece, voiceName: (voice: number) => string): PlacedProblem[] {
  return likenesses(piece).flatMap(({ here, like }) => {
    const [note, other] = [noteIn(here, like.note), noteIn(like.earlier, like.note)];
    if (note === undefined || other === undefined || !isSlip(note.member, other.member)) return [];
    const slots = {
      bar: piece.bars[here.bar]?.number ?? '',
      earlier: piece.bars[like.earlier.bar]?.number ?? '',
      voice: voiceName(note.event.voice),
      symbol: symbolIn(here, note.event),
      here: noteName(note.member),
      there: noteName(other.member),
    };
    const problem = problemAt('bar-nearly-repeats', { ...note.member.source, block: here.block }, slots);
    const source = { ...other.member.source, block: like.earlier.block };
    return [{ ...problem, related: [{ message: `${slots.there} in bar ${slots.earlier}`, source }] }];
  });
}

// Witnesses differ in single notes by their nature.
export const nearlyRepeated = checkOfWritten('bar-nearly-repeats', ['score', 'environment'], ({ score, environment }) =>
  score.pieces.flatMap((piece) => nearRepeats(piece, (voice) => environment.voices[voice]?.name ?? '')),
);
