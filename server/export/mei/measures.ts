/** A measure: its staves with their layers, then what stands beside them. */
import { compare, isZero, subtract } from '../../../grammar/time';
import { type Bar, isSpecial, type Score } from '../../score/score';
import type { Chunk } from '../chunks';
import type { Measure } from '../measures';
import type { Staves } from '../staves';
import type { Written } from '../written';
import { type XmlElement, xml } from '../xml';
import { systemBreak } from './breaks';
import { type Between, changesWithin, layerOf } from './definitions';
import type { Pictures } from './facsimile';
import { layerContent } from './layers';
import type { Names } from './names';
import { BARLINES } from './tables';

/** What all measures of an export are made from. */
export interface Making {
  readonly score: Score;
  readonly written: Written;
  readonly names: Names;
  readonly pictures: Pictures;
  /** The syllables sung under the notes. */
  readonly verses: ReadonlyMap<Chunk, XmlElement>;
  /** The notes under one beam share one object, their run. */
  readonly beams: ReadonlyMap<Chunk, readonly Chunk[]>;
  /** What stands beside the staves of a measure, in its order: ties, curves, signs … */
  readonly beside: ReadonlyMap<Measure, readonly XmlElement[]>;
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
  const voices = [...(written.byMeasure.get(measure) ?? new Map<number, readonly Chunk[]>())];
  const between = betweenOf(measure, staves, making);
  return voices.map(([voice, chunks], index) => {
    const own = between.filter((one) => hostOf(one, voices) === index);
    const home = environment.voices[voice]?.stave ?? 0;
    const parts = { home, chunks, between: own, beams, duration: measure.duration };
    const { elements, crossing } = layerContent(parts, { ...making, environment });
    return {
      stave: home,
      element: xml('layer', { n: layerOf(environment, voice) }, elements),
      crossing: crossing as readonly (readonly Chunk[])[],
    };
  });
}

/** Changes inside the measure, and where a system of the source ends inside it. */
const betweenOf = (measure: Measure, staves: Staves, making: Making): readonly Between[] =>
  [...changesWithin(measure, staves), ...breaksWithin(measure, making), ...innerBarlines(measure)].sort((a, b) =>
    compare(a.offset, b.offset),
  );

function breaksWithin({ piece, bar }: Measure, { score, pictures }: Making): readonly Between[] {
  return piece.systems.flatMap((system) => {
    const begins = system.firstBar === bar.index && system.score.bars[0]?.continues === true;
    const offset = subtract(system.onset, bar.onset);
    return begins && !isZero(offset)
      ? [{ offset, stave: undefined, element: systemBreak(system, score.environment, pictures) }]
      : [];
  });
}

/** Barlines that only one voice draws. */
const innerBarlines = ({ bar }: Measure): readonly Between[] =>
  bar.inner.map(({ voice, onset, shape }) => ({
    offset: subtract(onset, bar.onset),
    stave: undefined,
    voice,
    element: xml('barLine', { form: BARLINES[shape].right }),
  }));

/** Its own voice, else the first that begins an event at that moment on that stave, else at that moment, else the first. */
function hostOf({ offset, stave, voice }: Between, voices: readonly (readonly [number, readonly Chunk[]])[]): number {
  const own = voices.findIndex(([one]) => one === voice);
  const begins = (onStave: boolean): number =>
    voices.findIndex(([, chunks]) =>
      chunks.some(
        (chunk) =>
          compare(chunk.offset, offset) === 0 && (!onStave || stave === undefined || chunk.event.stave === stave),
      ),
    );
  return [own, begins(true), begins(false)].find((index) => index >= 0) ?? 0;
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
