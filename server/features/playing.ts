/** A piece as it is played aloud in a reading: when keys go down and come up, what they sound, and where that is written. */
import { add, subtract, time, toNumber } from '../../grammar/time';
import { keyName } from '../checks/compass';
import { Seconds } from '../export/seconds';
import { type Heard, type SoundingNote, type SoundingPiece, soundingOf } from '../export/sounding';
import { manualNamesIn } from '../export/stops';
import { stringsIn } from '../export/strokes';
import { type Touched, touched } from '../export/touch';
import { type Instrument, instrumentOf, type Key, keyFor } from '../instrument/instrument';
import type { Bar, Piece, PlacedProblem, Score } from '../score/score';
import type { Project } from '../workspace/project';
import { handsOf } from './hands';
import { barOfId, eventOfId, pictureId, type SourcePage, scoreOf, sourcePages, systemsOf } from './pages';
import type { BeginOfPlaying, KeyOfStrip, Limb, PlayedBar, PlayedNote, Playing, WrittenPlace } from './protocol';

interface PlayingWish {
  readonly reading: string;
  readonly tuning: string | null;
  readonly pace: number;
  readonly begin: BeginOfPlaying;
}

/** No piece is played at less than a tenth or more than ten times its tempo. */
const PACES = { least: 0.1, most: 10 };

/** The piece in which it is to begin, played; undefined if there is no music yet. */
export function playingOf(project: Project, wish: PlayingWish): Playing | undefined {
  const score = scoreOf(project, wish.reading);
  const begin = score && beginOf(score, wish.begin);
  if (score === undefined || begin === undefined) return undefined;
  const { heard, problems } = soundingOf(score, {
    clefs: 'source',
    leaveGaps: true,
    repeats: 'played',
    pace: time(Math.round(Math.min(Math.max(wish.pace, PACES.least), PACES.most) * 1000), 1000),
    ...(wish.tuning === null ? {} : { tuning: wish.tuning }),
  });
  const played = heard?.pieces.find(({ piece }) => piece === begin.piece);
  if (heard === undefined || played === undefined) return undefined;
  return { ...new Player(score, played, heard).playing(), start: begin.start, assumed: assumedIn(problems) };
}

interface Begin {
  readonly piece: Piece;
  readonly start: WrittenPlace;
}

function beginOf(score: Score, begin: BeginOfPlaying): Begin | undefined {
  if ('page' in begin) return topOf(sourcePages(score), begin.page);
  if ('piece' in begin) return topOfPiece(score, begin.piece);
  const found = eventOfId(score, begin.id) ?? barOfId(score, begin.id);
  if (found === undefined) return topOfPiece(score, 0);
  const { piece, system, event } = found;
  const bar = piece.bars[system.firstBar + event.bar];
  const onset = bar === undefined ? 0 : toNumber(subtract(add(system.onset, event.onset), bar.onset));
  return { piece, start: { bar: bar?.index ?? 0, onset } };
}

function topOf(pages: readonly SourcePage[], page: number): Begin | undefined {
  const part = (pages[page] ?? pages.at(-1))?.parts[0];
  return part && { piece: part.piece, start: { bar: part.systems[0]?.firstBar ?? 0, onset: 0 } };
}

const topOfPiece = ({ pieces }: Score, index: number): Begin | undefined => {
  const piece = pieces[index];
  return piece && { piece, start: { bar: 0, onset: 0 } };
};

/** What nobody has stated, as the problem that tells it has it. */
const assumedIn = (problems: readonly PlacedProblem[]): string =>
  String(problems.find(({ problem }) => problem.code === 'export-sound-assumed')?.problem.slots?.assumed ?? '');

class Player {
  private readonly seconds: Seconds;
  private readonly instrument: Instrument | undefined;
  private readonly manualOf: ReturnType<typeof manualNamesIn>;
  private readonly stringsOf: ReturnType<typeof stringsIn>;

  constructor(
    private readonly score: Score,
    private readonly piece: SoundingPiece,
    private readonly heard: Heard,
  ) {
    this.seconds = new Seconds(piece.tempi);
    this.instrument = instrumentOf(score.environment);
    this.manualOf = manualNamesIn(piece.piece);
    this.stringsOf = stringsIn(score.environment, piece.piece, heard.tuning);
  }

  playing(): Omit<Playing, 'start' | 'assumed'> {
    const { environment } = this.score;
    const strokes = touched(this.piece, this.seconds);
    const bars = this.bars();
    const keys = this.keys(strokes);
    return {
      piece: this.score.pieces.indexOf(this.piece.piece),
      voices: environment.voices.map(({ name }) => name),
      notes: this.notes(strokes, keys, bars),
      bars: bars.map(({ played }) => played),
      keys: keys.map(stripKey),
      tuning: this.heard.tuning.temperament.title,
      pitch: this.heard.tuning.pitch,
      isFree: this.piece.piece.systems.some(({ score }) => score.kind === 'free'),
    };
  }

  private bars(): readonly PassedBar[] {
    const pages = sourcePages(this.score).map(systemsOf);
    const { systems } = this.piece.piece;
    const pageOf = ({ index }: Bar): number => {
      const system = systems.findLast(({ firstBar }) => firstBar <= index);
      return pages.findIndex((all) => system !== undefined && all.includes(system));
    };
    return this.piece.passes.flatMap(({ bars, onset }, pass) =>
      bars.map((bar) => {
        const begins = add(onset, subtract(bar.onset, bars[0].onset));
        const played = {
          index: bar.index,
          number: bar.number,
          at: rounded(this.seconds.at(begins)),
          until: rounded(this.seconds.at(add(begins, bar.duration))),
          page: pageOf(bar),
        };
        return { key: passKey(pass, bar), played };
      }),
    );
  }

  /** The keyboard that the file declares, or as many octaves as the piece needs. */
  private keys(strokes: readonly Touched[]): readonly Key[] {
    if (this.instrument !== undefined) return [...this.instrument.keys].sort((a, b) => a.lies - b.lies);
    const played = strokes.map(({ note }) => note.pitch.midi);
    if (played.length === 0) return [];
    const low = 12 * Math.floor(Math.min(...played) / 12);
    const high = 12 * Math.ceil(Math.max(...played) / 12);
    return Array.from({ length: high - low + 1 }, (_, index) => ({ lies: low + index, sounds: low + index }));
  }

  private notes(strokes: readonly Touched[], keys: readonly Key[], bars: readonly PassedBar[]): readonly PlayedNote[] {
    const { instrument } = this;
    const places = new Map(bars.map(({ key }, index) => [key, index]));
    const indices = new Map(keys.map((key, index) => [key, index]));
    const keyOf = ({ pitch }: SoundingNote): Key | undefined =>
      instrument === undefined ? keys[pitch.midi - (keys[0]?.lies ?? 0)] : keyFor(instrument, pitch.midi);
    const limbs = handsOf(
      strokes.map(({ note }) => ({
        at: toNumber(note.onset),
        until: toNumber(add(note.onset, note.duration)),
        lies: keyOf(note)?.lies ?? note.pitch.midi,
        of: this.limbOf(note),
      })),
    );
    const notes = strokes.map((stroke, index): PlayedNote => {
      const { note } = stroke;
      const { placed } = note.event.from[0];
      const key = keyOf(note);
      return {
        at: rounded(stroke.at),
        until: rounded(stroke.until),
        frequencies: this.stringsOf(note),
        voice: note.voice,
        ids: idsOf(note),
        bar: places.get(passKey(note.event.pass ?? 0, placed.bar)) ?? 0,
        onset: toNumber(subtract(placed.onset, placed.bar.onset)),
        key: (key && indices.get(key)) ?? null,
        limb: limbs[index] ?? 'right',
      };
    });
    return notes.sort((a, b) => a.at - b.at);
  }

  /** By the stave on which it stands; the feet have what is played on the pedal. */
  private limbOf(note: SoundingNote): Limb {
    if (this.manualOf(note) === 'pedal') return 'feet';
    return 2 * note.event.stave < this.score.environment.staves.length ? 'right' : 'left';
  }
}

interface PassedBar {
  /** Tells a bar of a pass from the same bar of another. */
  readonly key: string;
  readonly played: PlayedBar;
}

const passKey = (pass: number, { index }: Bar): string => `${pass} ${index}`;

/** To a tenth of a millisecond. */
const rounded = (seconds: number): number => Math.round(seconds * 10_000) / 10_000;

const idsOf = ({ event }: SoundingNote): string[] =>
  event.from.map(({ placed, member }) =>
    pictureId(placed.system, placed.event, member === undefined ? -1 : placed.event.members.indexOf(member)),
  );

const stripKey = ({ lies, sounds, half }: Key): KeyOfStrip => ({
  lies,
  place: keyName(lies),
  sounds: keyName(sounds),
  ...(half === undefined ? {} : { half }),
});
