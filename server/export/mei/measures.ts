/** A measure: its staves with their layers, then what stands beside them. */
import { compare, isZero, subtract } from '../../../grammar/time';
import { type Bar, isSpecial, type Score } from '../../score/score';
import type { Chunk } from '../chunks';
import type { Measure } from '../measures';
import type { Staves } from '../staves';
import type { Written } from '../written';
import { type XmlElement, xml } from '../xml';
import { pageBreak, systemBreak } from './breaks';
import { type Between, changesWithin, layerOf } from './definitions';
import { withDoubt } from './editorial';
import type { Pictures } from './facsimile';
import { layerContent } from './layers';
import type { Names } from './names';
import type { SaidOfPlace } from './placeNotes';
import { BARLINES } from './tables';

/** What all measures of an export are made from. */
export interface Making {
  readonly score: Score;
  readonly written: Written;
  readonly names: Names;
  readonly pictures: Pictures;
  /** The syllables sung under the notes. */
  readonly verses: ReadonlyMap<Chunk, readonly XmlElement[]>;
  /** The notes under one beam share one object, their run. */
  readonly beams: ReadonlyMap<Chunk, readonly Chunk[]>;
  /** What stands beside the staves of a measure, in its order: ties, curves, signs … */
  readonly beside: ReadonlyMap<Measure, readonly XmlElement[]>;
  /** What is said of places of options. */
  readonly said: readonly SaidOfPlace[];
}

export function measureElement(
  measure: Measure,
  before: Measure | undefined,
  staves: Staves,
  making: Making,
): XmlElement {
  const { score, names } = making;
  const layers = layersOf(measure, staves, making);
  const staffs = score.environment.staves.map((_, stave) => {
    const own = layers.filter((layer) => layer.stave === stave);
    return xml(
      'staff',
      { n: stave + 1 },
      own.length > 0 ? own.map(({ element }) => element) : [xml('layer', { n: 1 }, [xml('mSpace')])],
    );
  });
  const crossing = layers.flatMap((layer) => layer.crossing).map((run) => beamSpan(run, names));
  return xml(
    'measure',
    {
      'xml:id': names.ofBar(measure),
      n: measure.bar.number,
      metcon: isMetrical(measure) ? undefined : 'false',
      left: leftOf(measure, before),
      right: rightOf(measure.bar),
      type: typeOf(measure),
    },
    [...staffs, ...crossing, ...(making.beside.get(measure) ?? [])],
  );
}

// ─── layers ──────────────────────────────────────────────────────────────────────────────────────────────────────

interface Layer {
  readonly stave: number;
  readonly element: XmlElement;
  /** Runs of notes whose beam stands beside the layer. */
  readonly crossing: readonly (readonly Chunk[])[];
}

function layersOf(measure: Measure, staves: Staves, making: Making): readonly Layer[] {
  if (measure.broken) return [];
  const { score, written, beams } = making;
  const { environment } = score;
  const voices = [...(written.byMeasure.get(measure) ?? [])].map(([voice, chunks]) => ({
    voice,
    home: environment.voices[voice]?.stave ?? 0,
    chunks,
  }));
  const between = betweenOf(measure, staves, making).map((one) => ({ one, host: hostOf(one, voices) }));
  const layer = (home: number, n: number, chunks: readonly Chunk[], host: number): Layer => {
    const own = between.filter((other) => other.host === host && (host >= 0 || other.one.stave === home));
    const parts = { home, chunks, between: own.map(({ one }) => one), beams, duration: measure.duration };
    const { elements, crossing } = layerContent(parts, { ...making, environment });
    return {
      stave: home,
      element: xml('layer', { n }, elements),
      crossing: crossing as readonly (readonly Chunk[])[],
    };
  };
  const silent = new Set(between.flatMap(({ one, host }) => (host < 0 && one.stave !== undefined ? [one.stave] : [])));
  return [
    ...voices.map(({ voice, home, chunks }, index) => layer(home, layerOf(environment, voice), chunks, index)),
    ...[...silent].map((stave) => layer(stave, 1, [], -1)),
  ];
}

/** Changes inside the measure, and where a system of the source ends inside it. */
const betweenOf = (measure: Measure, staves: Staves, making: Making): readonly Between[] =>
  [
    ...changesWithin(measure, staves, making.score),
    ...breaksWithin(measure, making),
    ...innerBarlines(measure, making),
  ].sort((a, b) => compare(a.offset, b.offset));

function breaksWithin({ piece, bar }: Measure, { score, pictures }: Making): readonly Between[] {
  return piece.systems.flatMap((system) => {
    const begins = system.firstBar === bar.index && system.score.bars[0]?.continues === true;
    const offset = subtract(system.onset, bar.onset);
    if (!begins || isZero(offset)) return [];
    const before = piece.systems[piece.systems.indexOf(system) - 1];
    const turns = before !== undefined && before.page !== system.page;
    const breaks = [...(turns ? [pageBreak(system, pictures)] : []), systemBreak(system, score.environment, pictures)];
    return breaks.map((element) => ({ offset, stave: undefined, element }));
  });
}

/** Barlines that only one voice draws; what stands on them stands beside the staves. */
const innerBarlines = (measure: Measure, { names, score }: Making): readonly Between[] =>
  measure.bar.inner.map(({ voice, onset, shape, editors }, i) => {
    const drawn = xml('barLine', { 'xml:id': names.ofInnerBarline(measure, i), form: BARLINES[shape].right });
    const element = withDoubt(drawn, { editors }, score.environment);
    return { offset: subtract(onset, measure.bar.onset), stave: undefined, voice, element };
  });

/**
 * Its own voice, else the first of its stave that begins an event at that moment, else the first of its stave; -1 where no
 * voice has a layer there.
 */
function hostOf(
  { offset, stave, voice }: Between,
  voices: readonly { readonly voice: number; readonly home: number; readonly chunks: readonly Chunk[] }[],
): number {
  const isThere = ({ home }: { readonly home: number }): boolean => stave === undefined || home === stave;
  const own = voices.findIndex((one) => one.voice === voice);
  const beginning = voices.findIndex(
    (one) => isThere(one) && one.chunks.some((chunk) => compare(chunk.offset, offset) === 0),
  );
  return [own, beginning, voices.findIndex(isThere)].find((index) => index >= 0) ?? -1;
}

function beamSpan(run: readonly Chunk[], names: Names): XmlElement {
  const refs = run.map((chunk) => `#${names.of(chunk)}`);
  return xml('beamSpan', { startid: refs[0], endid: refs.at(-1), plist: refs.join(' ') });
}

// ─── the measure itself ──────────────────────────────────────────────────────────────────────────────────────────

/** Whether it is as long as its meter says. */
function isMetrical({ bar, system, duration }: Measure): boolean {
  if (system.score.kind === 'free' || bar.meter === undefined) return false;
  return compare(duration, bar.meter.length) === 0;
}

const rightOf = ({ closing }: Bar): string => (closing === undefined ? 'invis' : BARLINES[closing.shape].right);

/** The barline that opens a measure: one of its own, or the beginning of a repeat that the bar before draws. */
function leftOf({ bar, piece }: Measure, before: Measure | undefined): string | undefined {
  if (bar.opening !== undefined && isSpecial(bar.opening)) return BARLINES[bar.opening.shape].left;
  const drawn = before?.piece === piece ? before.bar.closing : undefined;
  return drawn === undefined ? undefined : BARLINES[drawn.shape].nextLeft;
}

/** What no attribute of `measure` says. */
function typeOf({ bar, system, broken }: Measure): string | undefined {
  const words = [
    system.score.kind === 'measured' ? undefined : system.score.kind,
    bar.irregular ? 'irregular' : undefined,
    broken ? 'broken' : undefined,
    bar.closing?.editors === true ? 'editorial-right' : undefined,
    bar.opening?.editors === true ? 'editorial-left' : undefined,
  ].filter((word) => word !== undefined);
  return words.length === 0 ? undefined : words.join(' ');
}
