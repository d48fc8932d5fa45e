/**
 * MusicXML 4.0 (W3C Music Notation Community Group, 2021), as `score-partwise` with one part of as many staves as the
 * source has; where both rhythms are shown, with a second such part beneath.
 *
 * The export says what the source shows. What the format cannot say is a problem of level `info`, told once a voice.
 */
import { putUnder } from '../../grammar/lists';
import { subtract, type Time } from '../../grammar/time';
import type { Bar, PlacedProblem, Score } from '../score/score';
import { changesOf } from '../score/walk';
import { PARTS } from './both';
import { figureTime } from './chunks';
import { type FormOptions, inForm } from './form';
import { Losses, NOWHERE } from './losses';
import { type BarsWanted, type Measure, measuresFor } from './measures';
import { zipMusicXml } from './musicxml/archive';
import { Attributes } from './musicxml/attributes';
import { barlinesOf, innerBarlines } from './musicxml/barlines';
import { type MeasureParts, measureElement } from './musicxml/bars';
import { beamsOf } from './musicxml/beams';
import { breaksOf } from './musicxml/breaks';
import { slursOf } from './musicxml/curves';
import { directionsOf, type PieceDirections } from './musicxml/directions';
import { figuresOf } from './musicxml/figures';
import { headerElements, partId } from './musicxml/header';
import { lyricsOf } from './musicxml/lyrics';
import type { VoiceLinks } from './musicxml/notes';
import { tellMeasure } from './musicxml/tell';
import { tiesOf } from './musicxml/ties';
import { tupletsOf } from './musicxml/tuplets';
import { type Written, writtenOf } from './musicxml/written';
import type { ClefChoice } from './staves';
import { divisionsFor } from './values';
import { printXml, type XmlElement, xml } from './xml';

export interface MusicXmlOptions extends BarsWanted, FormOptions {
  /** The source's clefs, or a treble or bass clef for each stave. */
  readonly clefs: ClefChoice;
}

export interface MusicXmlExport {
  /** The document; empty where the score is refused, which a problem of level `error` says. */
  readonly text: string;
  readonly problems: readonly PlacedProblem[];
}

/** The largest number of divisions that every reader is sure to hold (MusicXML 4.0, `divisions`). */
const MOST_DIVISIONS = 16_383n;

/** The score as MusicXML. Equal scores give equal text. */
export function exportMusicXml(given: Score, options: MusicXmlOptions): MusicXmlExport {
  const losses = new Losses(given.pieces);
  const { score, beneath, problems } = inForm(given, inOneStave(options, losses));
  const measures = measuresFor(score, options, losses);
  if (measures?.length === 0) losses.add('export-no-music', {}, NOWHERE);
  if (measures === undefined || measures.length === 0) return { text: '', problems: losses.problems() };
  const upper = measureElements(score, measures, options.clefs, losses);
  const parts = beneath === undefined ? [upper] : [upper, partBeneath(beneath, options)];
  const root = xml('score-partwise', { version: '4.0' }, [
    ...headerElements(score, measures, options.clefs, beneath === undefined ? [] : PARTS),
    ...parts.map((content, index) => xml('part', { id: partId(index) }, content)),
  ]);
  const { text, replaced } = printXml(root);
  if (replaced > 0) losses.add('export-characters', {}, NOWHERE);
  return { text, problems: [...problems, ...losses.problems().filter((problem) => isUntold(problem, options))] };
}

/** The same bars as they are written; what they lose the part above them loses too. */
function partBeneath(score: Score, options: MusicXmlOptions): readonly XmlElement[] {
  const losses = new Losses(score.pieces);
  return measureElements(score, measuresFor(score, options, losses) ?? [], options.clefs, losses);
}

/** Hints of rhythm are told where the rhythm is as it is written; where it is as it is played they are followed. */
const isUntold = ({ problem }: PlacedProblem, { rhythm }: MusicXmlOptions): boolean =>
  problem.code !== 'musicxml-hint' || rhythm !== 'played';

/** A stave above another is a stave of the whole part, so small notes beside the signs say what they mean. */
function inOneStave(options: MusicXmlOptions, losses: Losses): FormOptions {
  if (options.ornaments !== 'above') return options;
  losses.add('musicxml-above', {}, NOWHERE);
  return { ...options, ornaments: 'small', keepSigns: true };
}

/** The score as a compressed MusicXML file (`.mxl`); no bytes where the score is refused. */
export function exportMxl(
  score: Score,
  options: MusicXmlOptions,
): { readonly bytes: Uint8Array; readonly problems: readonly PlacedProblem[] } {
  const { text, problems } = exportMusicXml(score, options);
  return { bytes: text === '' ? new Uint8Array() : zipMusicXml(text), problems };
}

function measureElements(
  score: Score,
  measures: readonly Measure[],
  clefs: ClefChoice,
  losses: Losses,
): readonly XmlElement[] {
  const written = writtenOf(score, measures);
  const links = linksOf(written, losses);
  const prints = breaksOf(measures, losses);
  const barlines = barlinesOf(measures, score.environment, losses);
  const titled = new Set(measures.map(({ piece }) => piece)).size > 1 || score.pieces.length > 1;
  const divisions = divisionsOf(written);
  let attributes: Attributes | undefined;
  let directions: PieceDirections = new Map();
  return measures.map((measure, i) => {
    if (measure.opens || attributes === undefined) {
      attributes = new Attributes(score, measure.piece, clefs, losses);
      directions = directionsOf(measure, score, titled);
    }
    tellMeasure(measure, written, score, losses);
    const parts: MeasureParts = {
      measure,
      print: prints[i],
      barlines: barlines[i],
      inner: innerBarlines(measure, score.environment),
      opening: measure.opens ? attributes.opening(measure) : undefined,
      divisions: divisions[i] ?? 1n,
      statesDivisions: divisions[i] !== divisions[i - 1],
      changes: attributes.changes(measure, measure.opens),
      directions: directions.get(measure.bar.index) ?? [],
      voices: links.flatMap((link) => {
        const chunks = written.byMeasure.get(measure)?.get(link.voice) ?? [];
        return chunks.length > 0 || measure.broken ? [{ links: link, chunks }] : [];
      }),
    };
    return measureElement(parts, score);
  });
}

function linksOf(written: Written, losses: Losses): readonly VoiceLinks[] {
  const pieces = new Set(written.measures.map(({ piece }) => piece));
  const slurs = slursOf(pieces, written, losses);
  return [...written.byVoice].map(([voice, chunks]) => ({
    voice,
    chunks,
    slurs,
    ties: tiesOf(chunks),
    beams: beamsOf(chunks),
    tuplets: tupletsOf(chunks),
    lyrics: lyricsOf(chunks),
    figures: figuresOf(chunks),
    passages: written.passages,
    elsewhere: written.elsewhere,
  }));
}

// ─── divisions ───────────────────────────────────────────────────────────────────────────────────────────────────

/** One number for all measures, or, if that is too large, one for each. */
function divisionsOf(written: Written): readonly bigint[] {
  const changes = new Map<Bar, Time[]>();
  for (const piece of new Set(written.measures.map((measure) => measure.piece))) {
    const moments = [
      ...changesOf(piece),
      ...piece.bars.flatMap((bar) => bar.inner.map(({ onset }) => ({ onset, bar }))),
    ];
    for (const { onset, bar } of moments) putUnder(changes, bar, subtract(onset, bar.onset));
  }
  const times = written.measures.map((measure) => [...timesOf(measure, written), ...(changes.get(measure.bar) ?? [])]);
  const common = divisionsFor(times.flat());
  return times.map((own) => (common <= MOST_DIVISIONS ? common : divisionsFor(own)));
}

/** Every time that the notes of a measure count. */
function timesOf(measure: Measure, written: Written): readonly Time[] {
  const chunks = [...(written.byMeasure.get(measure)?.values() ?? [])].flat();
  return [measure.duration, ...chunks.flatMap((chunk) => [chunk.offset, chunk.duration, figureTime(chunk)])];
}
