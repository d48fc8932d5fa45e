/** Beams of all levels, hooks included. */
import { add, divide, type Time } from '../../../grammar/time';
import { beamRuns } from '../beams';
import { absolute, type Chunk } from '../chunks';
import { flags } from '../values';
import { type XmlElement, xml } from '../xml';

/** MusicXML 4.0, simple type `beam-level`: eight at the most. */
const LEVELS = 8;

export type Beams = ReadonlyMap<Chunk, readonly XmlElement[]>;

/** The beams of one voice. */
export function beamsOf(chunks: readonly Chunk[]): Beams {
  const beams = new Map<Chunk, readonly XmlElement[]>();
  for (const run of beamRuns(chunks)) {
    for (const [i, chunk] of run.entries()) beams.set(chunk, beamsAt(run, i));
  }
  return beams;
}

function beamsAt(run: readonly Chunk[], i: number): readonly XmlElement[] {
  const elements: XmlElement[] = [];
  const own = flags(run[i]?.value);
  for (let level = 1; level <= Math.min(own, LEVELS); level++) {
    const before = flags(run[i - 1]?.value) >= level;
    const after = flags(run[i + 1]?.value) >= level;
    elements.push(xml('beam', { number: level }, beamWord(run, i, before, after)));
  }
  return elements;
}

const beamWord = (run: readonly Chunk[], i: number, before: boolean, after: boolean): string =>
  before ? (after ? 'continue' : 'end') : after ? 'begin' : hookWord(run, i);

/** A hook points to the note with which it fills the next larger value. */
function hookWord(run: readonly Chunk[], i: number): string {
  const chunk = run[i];
  if (i === 0 || chunk === undefined) return 'forward hook';
  if (i === run.length - 1 || chunk.value === undefined) return 'backward hook';
  return isWhole(divide(absolute(chunk), add(chunk.value.base, chunk.value.base))) ? 'forward hook' : 'backward hook';
}

const isWhole = (t: Time): boolean => t.d === 1;
