/** The signs of a file, each once, with what every reading makes of it; and those of which the editor has not said how they are played. */
import type { Finding } from '../../../grammar/findings/finding';
import { putUnder } from '../../../grammar/lists';
import { decidedIn, type SignsOfReading, signsAround } from '../../document/decided';
import type { Bar } from '../../score/score';
import { addressOf, offsetOf } from '../../score/walk';
import type { PlayedSign } from '../../signs/decisions';
import type { Project } from '../../workspace/project';

/** A sign of the text, or several that are one. */
export interface SignHere {
  /** Offsets in the file, from the first mark to the last. */
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
}

export interface OpenSign extends SignHere {
  /** What could not be played, or had to be guessed. */
  readonly findings: readonly Finding[];
}

/** How readings that agree play a sign. */
export interface Way extends Pick<PlayedSign, 'row' | 'notes' | 'choices' | 'table' | 'settled'> {
  readonly readings: readonly string[];
}

/** By place; of a sign that some readings have settled the ways of the others. */
export function openSignsOf(project: Project): OpenSign[] {
  const told = new Map<number, Finding[]>();
  for (const finding of decidedIn(project.analysis).findings) {
    const { offset } = finding.range.start;
    putUnder(told, offset, finding);
  }
  return signsOf(project, ({ settled }) => !settled).map((sign) => ({ ...sign, findings: told.get(sign.start) ?? [] }));
}

/** All signs that a reading plays by a table, by place. */
export const signsOf = (project: Project, isMeant?: (sign: PlayedSign) => boolean): SignHere[] =>
  gathered(project, decidedIn(project.analysis).signs, isMeant);

/** The signs in the system of a block, as among those of the file; there may be others besides. */
export const signsNear = (project: Project, block: number): SignHere[] =>
  gathered(project, signsAround(project.analysis, block));

function gathered(
  { tree }: Project,
  played: readonly SignsOfReading[],
  isMeant: (sign: PlayedSign) => boolean = () => true,
): SignHere[] {
  const found = new Map<number, SignHere & { readonly ways: Way[] }>();
  for (const { score, table, signs } of played) {
    for (const sign of signs.filter(isMeant)) {
      const [{ mark, written }] = sign.signs;
      const { system, event, bar } = written.placed;
      const last = sign.signs.at(-1)?.mark.source ?? mark.source;
      const start = offsetOf(tree, system, mark.source);
      const known = found.get(start) ?? {
        start,
        end: offsetOf(tree, system, last) + last.len,
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
  return [...found.values()].sort((a, b) => a.start - b.start);
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
