/** The body of an MEI document: each piece a movement. */
import type { Score } from '../../score/score';
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
import { type Making, measureElement } from './measures';
import { Names } from './names';
import { sectionElements } from './sections';

/** The music of the measures given: `music` with a movement a piece. */
export function musicElement(
  score: Score,
  measures: readonly Measure[],
  clefs: ClefChoice,
  losses: Losses,
): XmlElement {
  const written = writtenOf(score, measures);
  const names = new Names(score, written);
  const beams = new Map<Chunk, readonly Chunk[]>();
  for (const chunks of written.byVoice.values())
    for (const run of beamRuns(chunks)) for (const chunk of run) beams.set(chunk, run);
  const making: Making = { score, written, names, beams, beside: besideMeasures(score, written, names) };
  const pieces = [...new Set(measures.map(({ piece }) => piece))];
  const movements = pieces.map((piece) =>
    movement(
      measures.filter((measure) => measure.piece === piece),
      new Staves(score, piece, clefs),
      making,
      losses,
    ),
  );
  return xml('music', {}, [xml('body', {}, movements)]);
}

function movement(measures: readonly Measure[], staves: Staves, making: Making, losses: Losses): XmlElement {
  const { score, names } = making;
  const [first] = measures;
  const elements = new Map<Measure, readonly XmlElement[]>();
  for (const [i, measure] of measures.entries()) {
    const before = measures[i - 1];
    elements.set(measure, [
      ...breaksBefore(measure, before),
      ...(i === 0 ? [] : [changedDefinition(score, measure, staves)].filter((element) => element !== undefined)),
      measureElement(measure, before, staves, making),
    ]);
  }
  const sections = sectionElements(measures, elements, {
    of: ({ name }) => names.take(`section-${score.pieces.indexOf(first?.piece as never) + 1}-${name}`),
  });
  return xml('mdiv', { label: first?.piece.name === '' ? undefined : first?.piece.name }, [
    xml('score', {}, [
      first === undefined ? undefined : openingDefinition(score, first, staves, losses),
      xml('section', {}, sections),
    ]),
  ]);
}

/** The system that begins with a measure, and its page where it is another than before. */
function breaksBefore({ piece, bar, system }: Measure, before: Measure | undefined): readonly XmlElement[] {
  const begins = piece.systems.filter(
    ({ firstBar, score }) => firstBar === bar.index && score.bars[0]?.continues !== true,
  );
  const systems = begins.length === 0 && before === undefined ? [system] : begins;
  return systems.flatMap((one) => [...(one.page === before?.system.page ? [] : [pageBreak(one)]), systemBreak(one)]);
}
