/**
 * Pairs of equal written notes are played unequally, long and short, or short and long; the beat stays even.
 *
 * All voices share one grid: what they strike together in the middle of a pair stays together. A voice asks for
 * inequality where nothing in it speaks against; one that asks takes the others along. What forbids it forbids it to all.
 */
import { add, compare, isMultiple, multiply, subtract, type Time, time } from '../../grammar/time';
import { secondsOf } from '../score/clock';
import { asksNot, forbids, isLeap, isMarked, leansOnSecond } from './cancelling';
import type { Grid } from './grid';
import type { Line, Stroke } from './lines';
import type { Inegal } from './practice';
import type { Acting } from './ruling';
import { fixed, type Stretch, type Together } from './stretch';
import { rowOf } from './unequal1719';
import type { View } from './view';

/** What a voice strikes, or falls silent with, in the middle of a pair. */
export interface Member {
  readonly line: Line;
  readonly acting: Acting<Inegal>;
  readonly first: Stroke;
  readonly second: Stroke;
}

/** A pair of the grid, and the voices that divide it. */
export interface Cell {
  readonly grid: Grid;
  readonly onset: Time;
  readonly unit: Time;
  readonly members: Member[];
}

export const inequalities = (view: View): Together[] => view.grids.flatMap((grid) => inBar(view, grid));

function inBar(view: View, grid: Grid): Together[] {
  const cells = cellsIn(view, grid).filter((cell) => !forbids(view, cell));
  const asking = new Set(askingMembers(view, cells));
  return cells
    .filter(({ members }) => members.some((member) => asking.has(member)))
    .map((cell) => togetherIn(view, cell));
}

// ─── pairs ───────────────────────────────────────────────────────────────────────────────────────────────────────

function cellsIn(view: View, grid: Grid): Cell[] {
  const cells = new Map<string, Cell>();
  for (const line of view.lines) {
    for (const second of line.beginningIn(grid.bar.onset, grid.end)) {
      const acting = view.ruling.at('inegal', second);
      const unit = acting && unitOf(acting, second, grid);
      const first = line.before(second);
      if (acting === undefined || unit === undefined || first === undefined) continue;
      const onset = subtract(second.onset, unit);
      if (!isCell(grid, onset, unit)) continue;
      const key = `${onset.n}/${onset.d} ${unit.n}/${unit.d}`;
      const cell = cells.get(key) ?? { grid, onset, unit, members: [] };
      cells.set(key, cell);
      cell.members.push({ line, acting, first, second });
      remarkSpeed(view, acting, second, unit);
    }
  }
  return [...cells.values()].sort((a, b) => compare(a.onset, b.onset));
}

/** The value that a mark surrounds, or the one given, or that which the sign of measure makes unequal. */
function unitOf({ how, span }: Acting<Inegal>, { onset, end }: Stroke, { meter }: Grid): Time | undefined {
  if (span !== undefined) return subtract(end, onset);
  return how.value ?? rowOf(meter.sign)?.value;
}

/** Pairs lie on the grid, whole beats are made of them, and they lie within the bar. */
function isCell({ bar, start, end, beat }: Grid, onset: Time, unit: Time): boolean {
  const pair = multiply(unit, time(2));
  if (!isMultiple(beat, pair) || !isMultiple(subtract(onset, start), pair)) return false;
  return compare(onset, bar.onset) >= 0 && compare(add(onset, pair), end) <= 0;
}

/** Seconds below which a tempo may be "very quick" for inequality: eight notes a second. Common practice; no source has a number. */
const QUICK = 1 / 8;

function remarkSpeed(view: View, { practice }: Acting<Inegal>, { onset }: Stroke, unit: Time): void {
  const lasts = secondsOf(view.clocks.at(onset), unit);
  if (practice === undefined || lasts >= QUICK) return;
  const why = `its notes last ${Math.round(lasts * 1000)} ms in places; at a very quick tempo they are equal`;
  view.remarks.atPractice(practice, 'practice-undecided', { why });
}

// ─── who asks for inequality ─────────────────────────────────────────────────────────────────────────────────────

function askingMembers(view: View, cells: readonly Cell[]): Member[] {
  const runs = new Map<Line, Run[]>();
  for (const cell of cells) {
    for (const member of cell.members.filter((one) => !asksNot(view, cell, one))) {
      const own = runs.get(member.line) ?? [];
      runs.set(member.line, own);
      const last = own.at(-1);
      if (last !== undefined && compare(last.end, cell.onset) === 0) {
        last.members.push(member);
        last.end = endOf(cell);
      } else own.push({ members: [member], end: endOf(cell) });
    }
  }
  return [...runs.values()].flat().flatMap(({ members }) => (leapsOverall(members) ? [] : members));
}

/** Pairs that follow one another in a voice. */
interface Run {
  readonly members: Member[];
  end: Time;
}

const endOf = ({ onset, unit }: Cell): Time => add(onset, multiply(unit, time(2)));

/** A run is equal where more than half of its pairs leap, never for one leap. */
const leapsOverall = (members: readonly Member[]): boolean =>
  2 * members.filter((member) => !isMarked(member) && isLeap(member.first, member.second)).length > members.length;

/** Where one voice leans on the second note all do, and a mark in one lane is for all, as they are struck together. */
function togetherIn(view: View, cell: Cell): Together {
  const turned = cell.members.some((member) => leansOnSecond(view, member));
  const marked = cell.members.find(isMarked)?.acting.how;
  return cell.members.map((member) => stretchOf(cell, member, marked ?? member.acting.how, turned));
}

function stretchOf(
  { onset, unit }: Cell,
  { line, acting, second }: Member,
  { ratio, longFirst }: Inegal,
  turned: boolean,
): Stretch {
  const share = time(longFirst && !turned ? ratio.long : ratio.short, ratio.long + ratio.short);
  const pair = multiply(unit, time(2));
  const performed = add(onset, multiply(pair, share));
  const knots = [fixed(onset), { written: second.onset, performed }, fixed(add(onset, pair))] as const;
  return { voice: line.voice, knots, acting, stroke: second };
}
