/** Figures over a bass. */
import { divide, type Time, time } from '../../../grammar/time';
import type { Figure } from '../../../grammar/tree';
import type { Chunk } from './chunks';
import { ACCIDENTALS } from './tables';
import { inDivisions } from './values';
import { leaf, type XmlElement, xml } from './xml';

/** The figures of one voice, by the chunk before which they stand. */
export type Figures = ReadonlyMap<Chunk, (divisions: bigint) => readonly XmlElement[]>;

/** How long each of several figures within one note lasts: equal parts of it. */
export function figureTime(chunk: Chunk): Time {
  const columns = chunk.event.figures?.columns.length ?? 0;
  return columns > 1 ? divide(chunk.duration, time(columns)) : chunk.duration;
}

export function figuresOf(chunks: readonly Chunk[]): Figures {
  const figured = chunks.flatMap((chunk) => {
    const { figures } = chunk.event;
    return figures === undefined || !chunk.first || chunk.event.small !== undefined ? [] : [{ chunk, figures }];
  });
  const found = new Map<Chunk, (divisions: bigint) => readonly XmlElement[]>();
  for (const [i, { chunk, figures }] of figured.entries()) {
    const held = figured[i + 1]?.figures.what === 'hold';
    if (figures.what === 'hold') {
      const extend = xml('figure', {}, [xml('extend', { type: held ? 'continue' : 'stop' })]);
      found.set(chunk, () => [xml('figured-bass', {}, [extend])]);
    } else if (figures.what === 'figures' && figures.columns.length > 0) {
      const last = figures.columns.length - 1;
      const stacks = figures.columns.map((stack, column) =>
        stack.map((figure) => figureElement(figure, held && column === last)),
      );
      const drawn = stacks.filter((stack) => stack.length > 0);
      found.set(chunk, (divisions) => drawn.map((stack) => figuredBass(stack, chunk, last > 0, divisions)));
    }
  }
  return found;
}

const figuredBass = (stack: readonly XmlElement[], chunk: Chunk, timed: boolean, divisions: bigint): XmlElement =>
  xml('figured-bass', {}, [...stack, timed ? leaf('duration', inDivisions(figureTime(chunk), divisions)) : undefined]);

/** A lone accidental stands for the third and is MusicXML's prefix; beside a number it follows it, as it is typed. */
function figureElement({ number, accidental, stroked, editors }: Figure, held: boolean): XmlElement {
  const sign = accidental === undefined ? undefined : ACCIDENTALS[accidental];
  const prefix = number === undefined || stroked ? sign : undefined;
  const suffix = stroked ? 'slash' : number === undefined ? undefined : sign;
  return xml('figure', {}, [
    prefix === undefined ? undefined : leaf('prefix', prefix),
    number === undefined ? undefined : leaf('figure-number', number),
    suffix === undefined ? undefined : leaf('suffix', suffix),
    held ? xml('extend', { type: 'start' }) : undefined,
    editors ? xml('level', { bracket: 'yes' }, "editor's") : undefined,
  ]);
}
