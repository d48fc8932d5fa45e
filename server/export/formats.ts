/** The formats that a score can be exported to: one row each, for the command line and the editor alike. */
import type { PerformOptions } from '../readings/perform';
import { unfolded } from '../readings/unfold';
import type { Performance } from '../score/performance';
import type { PlacedProblem, Score } from '../score/score';
import { exportAlone } from './alone';
import type { FormOptions } from './form';
import type { Chunks } from './inChunks';
import type { BarRange } from './measures';
import { exportMei } from './mei';
import { exportMidi } from './midi';
import type { MidiTuning } from './midi/keys';
import { exportMusicXml, exportMxl } from './musicxml';
import { performedIn } from './ornaments';
import { exportTimeline } from './timeline';
import { exportWav } from './wav';

export interface ExportOptions extends FormOptions {
  /** Of what is played: repeats as the source draws them, or played out. As a rule as drawn. */
  readonly repeats?: PerformOptions['repeats'];
  /** As the source has them, or the treble and bass clefs of today. */
  readonly clefs: 'source' | 'modern';
  /** Leave a gap for each bar whose time is wrong or unknown, rather than refuse. */
  readonly leaveGaps: boolean;
  /** Of what is played: by how much it is quicker than the tempi stated. As a rule 1. */
  readonly pace?: PerformOptions['pace'];
  /** These bars only. */
  readonly bars?: BarRange;
  /** Where pages and systems end in a format that has any; as a rule where they do in the source. */
  readonly layout?: Layout;
  /** Of what is heard: a track for each voice or for each manual. As a rule for each voice. */
  readonly tracks?: 'voice' | 'manual';
  /** Of what is heard: what would stand after `tuning`, in the place of the reading’s. */
  readonly tuning?: string;
  /** How a synthesiser learns of the tuning. As a rule `notes`. */
  readonly midiTuning?: MidiTuning;
}

/** As the source has them, as they fit, or one long system. */
export type Layout = 'source' | 'flow' | 'line';

export interface Exported {
  /** Empty where the score is refused, which a problem of level `error` says. A list has one text a page, each a file. */
  readonly content: string | Uint8Array | Chunks | readonly string[];
  /** What the format cannot say, the bars left empty, or why there is no content. */
  readonly problems: readonly PlacedProblem[];
}

/** What a format is called, and what its files are like. */
export interface FormatNames {
  /** As typed after `--as`. */
  readonly name: string;
  /** In plain words. */
  readonly title: string;
  readonly extension: string;
  /** Text may go to standard output. */
  readonly isText: boolean;
}

/** A format that has a file for each reading. */
export interface ExportFormat extends FormatNames {
  write(score: Score, options: ExportOptions): Exported;
}

/** A format in whose one file several readings stand together. */
export interface EditionFormat extends FormatNames {
  writeEdition(edition: Edition, options: ExportOptions): Exported;
}

/** The texts of a file for a format that has several of them. */
export interface Edition {
  /** As `written`. */
  readonly main: Score;
  /** The readings that are wished for. */
  readonly readings: readonly Score[];
  /** Every source and hand that the file declares. */
  readonly sources: readonly Score[];
}

export const formats: readonly ExportFormat[] = [
  {
    name: 'musicxml',
    title: 'MusicXML 4.0',
    extension: 'musicxml',
    isText: true,
    write: (score, options) => {
      const { text, problems } = exportMusicXml(score, options);
      return { content: text, problems };
    },
  },
  {
    name: 'mxl',
    title: 'compressed MusicXML 4.0',
    extension: 'mxl',
    isText: false,
    write: (score, options) => {
      const { bytes, problems } = exportMxl(score, options);
      return { content: bytes, problems };
    },
  },
  {
    name: 'mei',
    title: 'MEI 5.1, with all sources and readings side by side',
    extension: 'mei',
    isText: true,
    write: (score, options) => {
      const { text, problems } = exportMei(score, options);
      return { content: text, problems };
    },
  },
  {
    name: 'json',
    title: 'a timeline for other programs (bentside.timeline/1)',
    extension: 'json',
    isText: true,
    write: (score, options) => {
      const { text, problems } = exportTimeline(played(score, options), options);
      return { content: text, problems };
    },
  },
  {
    name: 'midi',
    title: 'what is played as MIDI, in the tuning of the reading',
    extension: 'mid',
    isText: false,
    write: (score, options) => {
      const { bytes, problems } = exportMidi(score, options);
      return { content: bytes, problems };
    },
  },
  {
    name: 'wav',
    title: 'what is played as sound (WAV): plucked strings in the tuning of the reading',
    extension: 'wav',
    isText: false,
    write: (score, options) => {
      const { content = '', problems } = exportWav(score, options);
      return { content, problems };
    },
  },
  {
    name: 'bent',
    title: 'the witness or reading alone, as a text to go on with',
    extension: 'bent',
    isText: true,
    write: (score) => {
      const { text, problems } = exportAlone(score);
      return { content: text, problems };
    },
  },
];

function played(score: Score, options: ExportOptions): Performance {
  const performance = performedIn(score, options);
  return options.repeats === 'played' ? unfolded(performance) : performance;
}

/** "9-12", or "9" for one bar; undefined if it is neither. */
export function barRange(text: string): BarRange | undefined {
  const match = /^(\d+[a-z]?)(?:-(\d+[a-z]?))?$/.exec(text);
  const from = match?.[1];
  return from === undefined ? undefined : { from, to: match?.[2] ?? from };
}
