/** What sounds together, from moment to moment, and on which manual. */
import { keepingLast } from '../../grammar/keeping';
import type { Passage } from './lines';
import { type Line, type Sounding, ticksOf } from './sounding';
import type { View } from './systems';

/** A moment at which something is struck. */
export interface Moment {
  readonly at: number;
  /** Voice by voice; in no other order. */
  readonly sounding: readonly Sounding[];
}

/** All moments of a passage in their order; kept while one look after another asks for them. */
export const momentsOf = keepingLast(({ lines }: Passage): readonly Moment[] => {
  const moments: Moment[] = [];
  // The next note of each line, and what of it still sounds.
  const next = lines.map(() => 0);
  let sounding: readonly Sounding[] = [];
  for (let at = earliest(lines, next); at < Number.POSITIVE_INFINITY; at = earliest(lines, next)) {
    const now = sounding.filter(({ end }) => end > at);
    for (let line = 0; line < lines.length; line++) {
      const notes = lines[line] as Line;
      let index = next[line] as number;
      while (index < notes.length && (notes[index] as Sounding).onset === at) now.push(notes[index++] as Sounding);
      next[line] = index;
    }
    moments.push({ at, sounding: now });
    sounding = now;
  }
  return moments;
});

/** When the next note of any line is struck. */
function earliest(lines: readonly Line[], next: readonly number[]): number {
  let found = Number.POSITIVE_INFINITY;
  for (let line = 0; line < lines.length; line++) {
    const onset = lines[line]?.[next[line] as number]?.onset;
    if (onset !== undefined && onset < found) found = onset;
  }
  return found;
}

/** The manual of a voice at a moment; undefined where none is named. */
export type ManualOf = (voice: number, moment: number) => string | undefined;

const noManual: ManualOf = () => undefined;

/** The manuals of a system's voices; a system that names none is quick. @param unit ticks of a semibreve */
export function manualsIn({ score, before, facts }: View, unit: number): ManualOf {
  if (facts.keyboard.manuals < 2) return noManual;
  const changes = score.changes.flatMap(({ manual, onset }) =>
    manual === undefined ? [] : [{ ...manual, onset: ticksOf(onset, unit) }],
  );
  const carried = before?.carryOut.voices.map(({ manual }) => manual) ?? [];
  return (voice, moment) =>
    changes.findLast((one) => one.voice === voice && one.onset <= moment)?.name ?? carried[voice];
}
