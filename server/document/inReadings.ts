/** Findings that are met in several readings: each once, saying in which it is if it is not in all. */
import type { Finding } from '../../grammar/findings/finding';

/** A finding, and where it is met. */
export interface Met {
  readonly finding: Finding;
  /** Undefined: it concerns the text that all readings share. */
  readings: Set<string> | undefined;
}

/** It is met once more: in a reading or, without one, in the text that all share. */
export function arises(one: Met, reading: string | undefined): void {
  if (reading === undefined) one.readings = undefined;
  else one.readings?.add(reading);
}

/** Each thing found once at its place, with all readings in which it is met, in the order of the first. */
export function eachOnce<One extends Met>(all: Iterable<One>): One[] {
  const found: One[] = [];
  // By place, since texts to look it up by would be as many as the findings.
  const byStart = new Map<number, One[]>();
  for (const one of all) {
    const { offset } = one.finding.range.start;
    const here = byStart.get(offset);
    const known = here?.find(({ finding }) => saySame(finding, one.finding));
    if (known !== undefined) {
      for (const reading of one.readings ?? [undefined]) arises(known, reading);
      continue;
    }
    found.push(one);
    if (here === undefined) byStart.set(offset, [one]);
    else here.push(one);
  }
  return found;
}

const saySame = (a: Finding, b: Finding): boolean =>
  a.code === b.code && a.range.end.offset === b.range.end.offset && a.message === b.message;

/** Findings of some readings only, by the finding of all and the readings in which it is met. */
const limited = new WeakMap<Finding, Map<string, Finding>>();

/**
 * One that is met in some readings only says in which: the same object for the same readings.
 * @param all readings, among them each in which it is met
 */
export function inSome({ finding, readings: met }: Met, all: readonly string[]): Finding {
  if (met === undefined || met.size === all.length) return finding;
  const readings = all.filter((reading) => met.has(reading));
  const known = limited.get(finding) ?? new Map<string, Finding>();
  const names = readings.join(' ');
  const said = known.get(names) ?? inReadings(finding, readings);
  limited.set(finding, known.set(names, said));
  return said;
}

/** "In french, german: …". */
export const inReadings = (finding: Finding, readings: readonly string[]): Finding => ({
  ...finding,
  message: `In ${readings.map(nameOf).join(', ')}: ${finding.message}`,
  readings,
});

const nameOf = (reading: string): string => (reading === 'written' ? 'the main text' : reading);
