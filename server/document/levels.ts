/** How grave findings are, and how many are shown. */
import { catalogue, type FindingCode } from '../../grammar/findings/catalogue';
import type { Finding, Level } from '../../grammar/findings/finding';
import { sentence } from '../../grammar/findings/word';

/** From the gravest. */
export const LEVELS: readonly Level[] = ['error', 'warning', 'info', 'hint'];

/** Levels other than the catalogue's, by code; `ignore` hides a finding. */
export type Levels = Readonly<Partial<Record<FindingCode, Level | 'ignore'>>>;

/** Whether a level is as grave as another, or graver. */
export const atLeast = (level: Level, least: Level): boolean => LEVELS.indexOf(level) <= LEVELS.indexOf(least);

/**
 * The finding at the level wished for; undefined if it is to be ignored.
 * @param counsel whether counsel is wished for; a level of its own is a wish for a code of it
 */
export function levelled(finding: Finding, levels: Levels, counsel = true): Finding | undefined {
  const entry = catalogue[finding.code];
  const level = levels[finding.code] ?? (entry.counsel && !counsel ? 'ignore' : entry.level);
  if (level === 'ignore') return undefined;
  return level === finding.level ? finding : { ...finding, level };
}

const gravity = (finding: Finding): number => LEVELS.indexOf(finding.level);

/** By place, at one place from the gravest. */
export const byPlace = (a: Finding, b: Finding): number =>
  a.range.start.offset - b.range.start.offset ||
  gravity(a) - gravity(b) ||
  a.range.end.offset - b.range.end.offset ||
  (a.code < b.code ? -1 : a.code > b.code ? 1 : 0);

/** Not more than these are shown of one lane and of one file. */
export const MOST = { lane: 200, file: 2000 } as const;

/**
 * The gravest findings of each lane and, with the `others`, of the file, in the order of their places. What is left out of a lane becomes one
 * finding "and N more", or one for the whole file if that has too many still; it is as grave as the gravest it hides and
 * stands where the first of those does.
 */
export function capped(lanes: Iterable<readonly Finding[]>, others: readonly Finding[]): readonly Finding[] {
  const shown = [...others];
  const hidden: (readonly Finding[])[] = [];
  for (const findings of lanes) {
    const ofLane = cut(findings, MOST.lane);
    for (const one of ofLane.shown) shown.push(one);
    if (ofLane.hidden.length > 0) hidden.push(ofLane.hidden);
  }
  const whole = cut(shown, MOST.file);
  const more =
    whole.hidden.length === 0
      ? hidden.flatMap((ofLane) => andMore(ofLane, 'lane'))
      : andMore([...whole.hidden, ...hidden.flat()], 'file');
  return [...whole.shown, ...more].sort(byPlace);
}

/** One finding, and how many others there are in the file. */
export const aboveAll = (finding: Finding, others: readonly Finding[]): readonly Finding[] =>
  [finding, ...andMore(others, 'file')].sort(byPlace);

function cut(findings: readonly Finding[], most: number): { shown: readonly Finding[]; hidden: readonly Finding[] } {
  if (findings.length <= most) return { shown: findings, hidden: [] };
  const gravestFirst = [...findings].sort((a, b) => gravity(a) - gravity(b) || byPlace(a, b));
  return { shown: gravestFirst.slice(0, most), hidden: gravestFirst.slice(most) };
}

function andMore(hidden: readonly Finding[], where: keyof typeof MOST): Finding[] {
  const [first] = [...hidden].sort(byPlace);
  const [gravest] = [...hidden].sort((a, b) => gravity(a) - gravity(b));
  if (first === undefined || gravest === undefined) return [];
  const message = sentence('and-more', { count: hidden.length, where });
  return [{ ...first, code: 'and-more', level: gravest.level, message, related: [], fixes: [] }];
}
