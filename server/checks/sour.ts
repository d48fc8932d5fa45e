/** Wolf fifths and very wide thirds in chords that last: asked about, the most noticeable of a piece first. */
import { time } from '../../grammar/time';
import { counted } from '../score/amounts';
import type { Environment } from '../score/environment';
import type { Piece, PlacedProblem } from '../score/score';
import { placeOf } from '../tuning/fifths';
import { octaved } from '../tuning/temperament';
import { PURE_FIFTH, PURE_MAJOR_THIRD, size } from '../tuning/tempering';
import { centsFromC, placesIn, sounding, type Tuning } from '../tuning/tuning';
import type { Check } from './check';
import type { Passage } from './lines';
import { momentsOf } from './moments';
import { noteName } from './pitches';
import type { Sounding } from './sounding';
import {
  type Facts,
  type Found,
  factsOf,
  inPiece,
  keepingLooks,
  type Look,
  problemIn,
  type SystemProblem,
} from './systems';
import { allTunings, tuningFor } from './tuningFacts';

/** An interval that is asked about if it is farther from pure than this, in cents: on the line of fifths so many places apart. */
const KINDS = [
  { places: 1, pure: PURE_FIFTH, most: 10, name: 'a fifth' },
  // As wide as in a circle of pure fifths, 81/64, less what nobody could tell from it.
  { places: 4, pure: PURE_MAJOR_THIRD, most: 21, name: 'a third' },
] as const;

type Kind = (typeof KINDS)[number];

/** An interval in a system with what ranks it. */
interface Sour extends SystemProblem {
  readonly weight: number;
}

/** How much is heard of a beating interval at its height: less in the bass, where it is slow, and in the treble. */
const BASS = { below: 48, weight: 0.6 };
const TREBLE = { from: 72, weight: 0.8 };
const ON_FIRST_BEAT = 1.5;
/** So many of a piece are told. */
const MOST_TOLD = 5;

// ─── a system ────────────────────────────────────────────────────────────────────────────────────────────────────

/** How wide the intervals of one tuning are, each computed once. */
class Widths {
  private readonly known = new Map<number, number>();

  constructor(private readonly tuning: Tuning) {}

  /** Cents by which the interval from a place upwards is wider than pure. */
  of(low: number, { places, pure }: Kind): number {
    const key = low * 8 + places;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const cents = (place: number): number => centsFromC(this.tuning, sounding(this.tuning, place));
    const above = octaved(cents(low + places) - cents(low) - pure);
    const width = above > 600 ? above - 1200 : above;
    this.known.set(key, width);
    return width;
  }
}

const placeOfNote = ({ member }: Sounding): number =>
  placeOf({ letter: member.spelling.letter, alteration: member.alteration });

/** In ticks: a chord shorter than a beat or a crotchet passes too quickly to be asked about. */
const leastLength = ({ bar }: Sounding, unit: number): number => Math.max(bar.beat, unit / 4);

function sourIn(passage: Passage, widths: Widths): Sour[] {
  const found: Sour[] = [];
  for (const { at, sounding: notes } of momentsOf(passage)) {
    for (const low of notes) {
      for (const high of notes) {
        if (high.midi <= low.midi || (low.onset !== at && high.onset !== at)) continue;
        const apart = placeOfNote(high) - placeOfNote(low);
        const kind = KINDS.find(({ places }) => places === apart);
        if (kind === undefined) continue;
        const width = widths.of(placeOfNote(low), kind);
        const length = Math.min(low.end, high.end) - at;
        const struck = high.onset === at ? high : low;
        if (Math.abs(width) <= kind.most || length < leastLength(struck, passage.unit) || !struck.bar.own) continue;
        found.push(asked({ low, high, struck, kind, width, length, unit: passage.unit }));
      }
    }
  }
  return found;
}

interface Heard {
  readonly low: Sounding;
  readonly high: Sounding;
  readonly struck: Sounding;
  readonly kind: Kind;
  readonly width: number;
  readonly length: number;
  readonly unit: number;
}

function asked({ low, high, struck, kind, width, length, unit }: Heard): Sour {
  const sounds = time(length, unit);
  const { bar } = struck;
  const height = low.midi < BASS.below ? BASS.weight : low.midi >= TREBLE.from ? TREBLE.weight : 1;
  const place = struck.onset === bar.start ? ON_FIRST_BEAT : 1;
  return {
    ...problemIn({
      code: 'sour-interval',
      at: struck.member.source,
      bar: bar.bar,
      slots: {
        low: noteName(low.member),
        high: noteName(high.member),
        what: `${kind.name} ${Math.abs(width).toFixed(0)} cents ${width < 0 ? 'narrow' : 'wide'}`,
        length: counted(sounds, sounds).have,
      },
    }),
    weight: Math.abs(width) * (length / unit) * height * place,
  };
}

/** Whether anything in a tuning can be sour. */
const canBeSour = (tuning: Tuning, widths: Widths): boolean =>
  KINDS.some((kind) => placesIn(tuning).some((low) => Math.abs(widths.of(low, kind)) > kind.most));

/** What finds sour intervals by a tuning; undefined where there are none. */
type Finder = Found | undefined;

/** So many tunings are kept: a file has few. */
const MOST_TUNINGS = 8;
const byTuning = new Map<string, Finder>();

/** By all that can be told of a tuning in a system; that does not depend on the pitch. */
function finderFor(tuning: Tuning): Finder {
  const { first, fifths } = tuning.temperament;
  const key = JSON.stringify([first, fifths.map(size), tuning.more]);
  if (byTuning.has(key)) return byTuning.get(key);
  if (byTuning.size >= MOST_TUNINGS) byTuning.clear();
  const finder = newFinder(tuning);
  byTuning.set(key, finder);
  return finder;
}

function newFinder(tuning: Tuning): Finder {
  const widths = new Widths(tuning);
  if (!canBeSour(tuning, widths)) return undefined;
  const look: Look = ({ passages, score }) =>
    score.kind === 'free' ? [] : passages.flatMap((passage) => sourIn(passage, widths));
  return keepingLooks([look]);
}

/** The different tunings of a file in which something can be sour. */
export const sourTunings = (environment: Environment): readonly Found[] => [
  ...new Set(allTunings(environment).flatMap((tuning) => finderFor(tuning) ?? [])),
];

// ─── a piece ─────────────────────────────────────────────────────────────────────────────────────────────────────

const isSour = (problem: SystemProblem): problem is Sour => 'weight' in problem;

/** The most noticeable of a piece, in the order of their weight. */
function ranked(piece: Piece, found: Found, facts: Facts): PlacedProblem[] {
  const all = piece.systems.flatMap(({ score }, index) =>
    found(score, piece.systems[index - 1]?.score, undefined, facts)
      .filter(isSour)
      .map((problem) => ({ problem, index })),
  );
  const sorted = all.sort((a, b) => b.problem.weight - a.problem.weight || a.index - b.index);
  return sorted.slice(0, MOST_TOLD).map(({ problem: { weight: _, ...problem }, index }, rank) => {
    const placed = inPiece(problem, piece, index);
    const slots = { ...placed.problem.slots, rank: rankInWords(rank, sorted.length) };
    return { ...placed, problem: { ...placed.problem, slots } };
  });
}

const SUPERLATIVES = ['sourest', 'second sourest', 'third sourest', 'fourth sourest', 'fifth sourest'];
/** "sourest of 16". */
const rankInWords = (rank: number, count: number): string =>
  count === 1 ? 'only one' : `${SUPERLATIVES[rank]} of ${count}`;

export const sourIntervals: Check = {
  name: 'sour-intervals',
  needs: ['environment', 'score'],
  ofWritten: false,
  run: ({ environment, score }) => {
    const tuning = tuningFor(environment, score.choice.name);
    const found = tuning && finderFor(tuning);
    if (found === undefined) return [];
    const facts = factsOf(environment, score.choice);
    return score.pieces.flatMap((piece) => ranked(piece, found, facts));
  },
};
