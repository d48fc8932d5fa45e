/** Small notes. */
import { isZero, toNumber } from '../../../grammar/time';
import type { Chunk } from '../chunks';
import { decimal, nominal } from '../values';
import { type XmlElement, xml } from '../xml';

/** Small notes at the end of a bar take at most half of the note before them, shared out by their values. */
const MOST = 50;

/**
 * `grace` of a small note. One that belongs to the event before it takes its written value from it, in hundredths; what
 * the others take is left to their performance.
 */
export function graceElement(chunk: Chunk, chunks: readonly Chunk[]): XmlElement {
  if (chunk.event.small?.to !== 'previous') return xml('grace');
  const share = shareOf(chunk, chunks);
  return xml('grace', { 'steal-time-previous': share === undefined ? undefined : decimal(share) });
}

function shareOf(chunk: Chunk, chunks: readonly Chunk[]): number | undefined {
  const at = chunks.indexOf(chunk);
  const before = chunks.slice(0, at).findLast(({ event }) => event.small === undefined);
  if (before === undefined || isZero(before.duration)) return undefined;
  const group = chunks.filter((c) => c.system === chunk.system && c.event.small?.group === chunk.event.small?.group);
  const length = (c: Chunk): number => (c.value === undefined ? 0 : toNumber(nominal(c.value)));
  const whole = group.reduce((sum, c) => sum + length(c), 0);
  const wanted = (100 * whole) / toNumber(before.duration);
  return whole === 0 ? undefined : (Math.min(wanted, MOST) * length(chunk)) / whole;
}
