/** The whole of a document: its head, and each piece as a movement. */
import type { ChosenOption, Piece, Score } from '../../score/score';
import { beamRuns } from '../beams';
import type { Chunk } from '../chunks';
import type { Losses } from '../losses';
import type { Measure } from '../measures';
import { type ClefChoice, Staves } from '../staves';
import { writtenOf } from '../written';
import { type XmlElement, xml } from '../xml';
import { besideMeasures } from './beside';
import { pageBreak, systemBreak } from './breaks';
import { changedDefinition, openingDefinition } from './definitions';
import { picturesOf } from './facsimile';
import { headElement } from './header';
import { incipitElement } from './incipit';
import { type Making, measureElement } from './measures';
import { Names } from './names';
import type { SaidOfPlace } from './placeNotes';
import { placeOf } from './places';
import { pieceSection } from './sections';
import { versesOf } from './verses';

const NAMESPACE = 'http://www.music-encoding.org/ns/mei';

/** A document, and the options in which the events with these ids stand. */
export interface Document {
  readonly root: XmlElement;
  readonly chosen: ReadonlyMap<string, readonly ChosenOption[]>;
  /** The measures with these ids. */
  readonly bars: ReadonlyMap<string, Measure>;
  /** The ids of the outermost places around the events with these ids. */
  readonly places: ReadonlyMap<string, string>;
  /** What is said of those places, which is not in the tree. */
  readonly said: readonly SaidOfPlace[];
}

/** The score as it is read by one choice; `measures`: those that are exported, one at least. */
export function documentOf(score: Score, measures: readonly Measure[], clefs: ClefChoice, losses: Losses): Document {
  const making = makingOf(score, measures);
  const pieces = [...new Set(measures.map(({ piece }) => piece))];
  const movements = pieces.map((piece) => new Movement(piece, making, clefs, losses));
  const incipits = new Map(movements.map((movement) => [movement.piece, movement.incipit()]));
  const isWhole = measures.length === score.pieces.flatMap(({ bars }) => bars).length;
  const root = xml('mei', { xmlns: NAMESPACE, meiversion: '5.1' }, [
    headElement(score, incipits, isWhole),
    xml('music', {}, [
      making.pictures.element,
      xml(
        'body',
        {},
        movements.map((movement) => movement.element()),
      ),
    ]),
  ]);
  const bars = new Map(measures.map((measure) => [making.names.ofBar(measure), measure]));
  return { root, bars, chosen: optionsOf(making), places: placesOf(making), said: making.said };
}

function optionsOf({ written, names }: Making): Document['chosen'] {
  const chunks = [...written.byVoice.values()].flat();
  return new Map(
    chunks.flatMap((chunk) => (chunk.event.chosen.length === 0 ? [] : [[names.of(chunk), chunk.event.chosen]])),
  );
}

function placesOf({ written, names }: Making): Document['places'] {
  const places = new Map<string, string>();
  for (const chunk of [...written.byVoice.values()].flat()) {
    const place = placeOf(chunk);
    if (place !== undefined) places.set(names.of(chunk), place);
  }
  return places;
}

function makingOf(score: Score, measures: readonly Measure[]): Making {
  const written = writtenOf(score, measures);
  const names = new Names(score, written);
  const voices = [...written.byVoice.values()];
  const beams = new Map<Chunk, readonly Chunk[]>();
  for (const run of voices.flatMap(beamRuns)) for (const chunk of run) beams.set(chunk, run);
  const verses = new Map(voices.flatMap((chunks) => [...versesOf(chunks, names)]));
  const { beside, said } = besideMeasures(score, written, names);
  return { score, written, names, beams, verses, beside, said, pictures: picturesOf(score.tree, measures) };
}

class Movement {
  private readonly measures: readonly Measure[];
  private readonly staves: Staves;
  private readonly elements = new Map<Measure, readonly XmlElement[]>();
  private readonly definition: XmlElement | undefined;

  constructor(
    readonly piece: Piece,
    private readonly making: Making,
    clefs: ClefChoice,
    losses: Losses,
  ) {
    this.measures = making.written.measures.filter((measure) => measure.piece === piece);
    this.staves = new Staves(making.score, piece, clefs);
    const [first] = this.measures;
    this.definition = first && openingDefinition(making.score, first, this.staves, losses);
    for (const [i, measure] of this.measures.entries()) {
      this.elements.set(measure, this.measureElements(measure, this.measures[i - 1]));
    }
  }

  element(): XmlElement {
    const { piece, measures, elements, definition } = this;
    const { score, names } = this.making;
    return xml('mdiv', { label: piece.name === '' ? undefined : piece.name }, [
      xml('score', {}, [definition, pieceSection({ piece, measures, elements }, score, names)]),
    ]);
  }

  /** Shows the clefs of the source, whatever clefs the export has. */
  incipit(): XmlElement {
    const { piece, making } = this;
    const [first] = this.measures;
    const measure = first && this.elements.get(first)?.at(-1);
    if (first === undefined || measure === undefined) return xml('score');
    const definition = openingDefinition(making.score, first, new Staves(making.score, piece, 'source'));
    return incipitElement(definition, measure);
  }

  private measureElements(measure: Measure, before: Measure | undefined): readonly XmlElement[] {
    const changed = before === undefined ? undefined : changedDefinition(this.making.score, measure, this.staves);
    return [
      ...this.breaksBefore(measure, before),
      ...(changed === undefined ? [] : [changed]),
      measureElement(measure, before, this.staves, this.making),
    ];
  }

  /** The system that begins with a measure, and its page where it is another than before. */
  private breaksBefore({ piece, bar, system }: Measure, before: Measure | undefined): readonly XmlElement[] {
    const { score, pictures } = this.making;
    const begins = piece.systems.filter((one) => one.firstBar === bar.index && one.score.bars[0]?.continues !== true);
    const systems = begins.length === 0 && before === undefined ? [system] : begins;
    return systems.flatMap((one) => [
      ...(one.page === before?.system.page ? [] : [pageBreak(one, pictures)]),
      systemBreak(one, score.environment, pictures),
    ]);
  }
}
