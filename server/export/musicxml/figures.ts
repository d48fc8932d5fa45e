/** Figures over a bass. */
import { add, compare, earliest, latest, multiply, subtract, type Time, time, ZERO } from '../../../grammar/time';
import type { Figure } from '../../../grammar/tree';
import { absolute, type Chunk, figureTime } from '../chunks';
import { inDivisions } from '../values';
import { leaf, type XmlElement, xml } from '../xml';
import { ACCIDENTALS } from './tables';

/** The figures of one voice, by the chunk before which they stand. */
export type Figures = ReadonlyMap<Chunk, (divisions: bigint) => readonly XmlElement[]>;

/** A note with figures and all the chunks into which it was cut. */
interface Figured {
  readonly chunks: readonly Chunk[];
  readonly columns: readonly (readonly Figure[])[];
  readonly isHold: boolean;
}

export function figuresOf(chunks: readonly Chunk[]): Figures {
  const figured = figuredNotes(chunks);
  const found = new Map<Chunk, (divisions: bigint) => readonly XmlElement[]>();
  /** How many figures stand one above the other; none before the first. */
  let stack = 0;
  for (const [i, note] of figured.entries()) {
    const held = figured[i + 1]?.isHold === true;
    const [first] = note.chunks;
    if (first === undefined) continue;
    if (note.isHold) {
      // What nothing begins cannot be held: the proof tells it.
      if (stack === 0) continue;
      const extend = xml('figure', {}, [xml('extend', { type: held ? 'continue' : 'stop' })]);
      const lines = Array.from({ length: stack }, () => extend);
      found.set(first, () => [xml('figured-bass', {}, lines)]);
    } else {
      stack = note.columns.at(-1)?.length ?? 1;
      for (const [chunk, write] of writtenColumns(note, held)) found.set(chunk, write);
    }
  }
  return found;
}

/** Notes and rests that bear figures or hold them on. */
function figuredNotes(chunks: readonly Chunk[]): readonly Figured[] {
  return chunks.flatMap((chunk, i) => {
    const { figures, small, kind } = chunk.event;
    if (figures === undefined || figures.what === 'none' || !chunk.first || small !== undefined) return [];
    if (kind !== 'note' && kind !== 'rest') return [];
    let next = i + 1;
    while (chunks[next]?.first === false) next += 1;
    return [{ chunks: chunks.slice(i, next), columns: figures.columns, isHold: figures.what === 'hold' }];
  });
}

/**
 * The columns over each chunk. MusicXML counts the figures of a note from its beginning, so over a chunk that begins
 * within a column that column stands again, hidden.
 */
function writtenColumns({ chunks, columns }: Figured, held: boolean): Figures {
  const found = new Map<Chunk, (divisions: bigint) => readonly XmlElement[]>();
  for (const chunk of columns.length > 1 ? chunks : chunks.slice(0, 1)) {
    const parts = columns.flatMap((column, k) => {
      const part = partOver(chunk, chunks[0] ?? chunk, k);
      return part === undefined ? [] : [{ ...part, column, isLast: k === columns.length - 1 }];
    });
    found.set(chunk, (divisions) =>
      parts.map(({ column, duration, begins, isLast }) =>
        xml('figured-bass', { 'print-object': begins ? undefined : 'no' }, [
          ...column.map((figure) => figureElement(figure, held && isLast && begins)),
          columns.length > 1 ? leaf('duration', inDivisions(duration, divisions)) : undefined,
        ]),
      ),
    );
  }
  return found;
}

/** How long column `k` of a note stands over one of its chunks, and whether it begins there. */
function partOver(chunk: Chunk, first: Chunk, k: number): { duration: Time; begins: boolean } | undefined {
  const each = figureTime(first);
  const from = multiply(each, time(k));
  const chunkStart = subtract(absolute(chunk), absolute(first));
  const chunkEnd = add(chunkStart, chunk.duration);
  const start = latest(from, chunkStart);
  const duration = subtract(earliest(add(from, each), chunkEnd), start);
  return compare(duration, ZERO) > 0 ? { duration, begins: compare(from, chunkStart) >= 0 } : undefined;
}

/** An accidental by itself stands for the third and is MusicXML's prefix, as is one before its number. */
function figureElement(figure: Figure, held: boolean): XmlElement {
  const { number, accidental, accidentalFirst, stroked, editors } = figure;
  const sign = accidental === undefined ? undefined : ACCIDENTALS[accidental];
  const before = number === undefined || accidentalFirst === true || stroked;
  const suffix = stroked ? 'slash' : before ? undefined : sign;
  return xml('figure', {}, [
    before && sign !== undefined ? leaf('prefix', sign) : undefined,
    number === undefined ? undefined : leaf('figure-number', number),
    suffix === undefined ? undefined : leaf('suffix', suffix),
    held ? xml('extend', { type: 'start' }) : undefined,
    editors ? xml('level', { bracket: 'yes' }, "editor's") : undefined,
  ]);
}
