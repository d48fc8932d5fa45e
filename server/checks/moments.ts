/** What sounds together, from moment to moment, and on which manual. */
import type { Passage } from './lines';
import type { Sounding } from './sounding';
import { ticksOf } from './sounding';
import type { View } from './systems';

/** What sounds at a moment at which something is struck; in no order. */
export type Visit = (moment: number, sounding: readonly Sounding[]) => void;

const byOnset = (a: Sounding, b: Sounding): number => a.onset - b.onset;

/** Goes over all moments of a passage at which a note is struck. */
export function eachMoment({ lines }: Passage, visit: Visit): void {
  const notes = lines.flat().sort(byOnset);
  let sounding: Sounding[] = [];
  for (let next = 0; next < notes.length; ) {
    const moment = (notes[next] as Sounding).onset;
    sounding = sounding.filter(({ end }) => end > moment);
    while (next < notes.length && (notes[next] as Sounding).onset === moment) sounding.push(notes[next++] as Sounding);
    visit(moment, sounding);
  }
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
