/** The signs of a file of which the editor has not said how they are played: each once, with what every reading makes of it. */
import type { Finding } from '../../../grammar/findings/finding';
import { decidedIn } from '../../document/decided';
import type { Bar } from '../../score/score';
import { addressOf, offsetOf } from '../../score/walk';
import type { PlayedSign } from '../../signs/decisions';
import type { Project } from '../../workspace/project';

/** A sign of the text, or several that are one. */
export interface OpenSign {
  /** Offsets of the first mark in the file. */
  readonly start: number;
  readonly end: number;
  /** As typed: `'cb'ca`. */
  readonly typed: string;
  readonly bar: Bar;
  readonly voice: string;
  /** Of the note that bears it. */
  readonly address: string;
  /** The marks in the reading that was looked at first. */
  readonly signs: PlayedSign['signs'];
  readonly ways: readonly Way[];
  /** What could not be played, or had to be guessed. */
  readonly findings: readonly Finding[];
}

/** How readings that agree play a sign. */
export interface Way extends Pick<PlayedSign, 'row' | 'notes' | 'choices' | 'table'> {
  readonly readings: readonly string[];
}

/** By place. */
export function openSignsOf({ tree, analysis }: Project): OpenSign[] {
  const { open, findings } = decidedIn(analysis);
  const found = new Map<number, Omit<OpenSign, 'ways' | 'findings'> & { readonly ways: Way[] }>();
  for (const { score, table, signs } of open) {
    for (const sign of signs) {
      const [{ mark, written }] = sign.signs;
      const { system, event, bar } = written.placed;
      const start = offsetOf(tree, system, mark.source);
      const known = found.get(start) ?? {
        start,
        end: start + mark.source.len,
        typed: sign.signs.map(({ name }) => `'${name}`).join(''),
        bar,
        voice: event.laneName,
        address: addressOf(system, event),
        signs: sign.signs,
        ways: [],
      };
      found.set(start, known);
      addWay(known.ways, { ...sign, table, readings: [score.choice.name] });
    }
  }
  return [...found.values()]
    .map((sign) => ({ ...sign, findings: findings.filter(({ range }) => range.start.offset === sign.start) }))
    .sort((a, b) => a.start - b.start);
}

/** Readings that play a sign by the same row agree, even if their tempi give it more or fewer notes. */
function addWay(ways: Way[], way: Way): void {
  const index = ways.findIndex((other) => agree(other, way));
  const same = ways[index];
  if (same === undefined) ways.push(way);
  else ways[index] = { ...same, readings: [...same.readings, ...way.readings] };
}

/** A row that two tables share is made for each of them, so rows are compared by what they say. */
const agree = (a: Way, b: Way): boolean =>
  a.row?.table === b.row?.table &&
  a.row?.label === b.row?.label &&
  (a.row !== undefined || a.table === b.table) &&
  (a.notes.length === 0) === (b.notes.length === 0);
