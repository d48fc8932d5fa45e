/** What is played of a piece, and in which order: by `order`, or else by the repeats that the source draws. */
import { add, subtract, type Time, ZERO } from '../../grammar/time';
import type { BarlineShape } from '../../grammar/tree';
import type { Bar, Piece } from './score';

/** Bars that follow one another in the source and in playing. */
export interface Pass {
  /** The section that is played; undefined where none has a name there. */
  readonly section: string | undefined;
  /** From 1: how often its section, or its strain, has been played with this time. */
  readonly time: number;
  readonly bars: readonly [Bar, ...Bar[]];
  /** Played: from the beginning of the piece. */
  readonly onset: Time;
}

interface Strain {
  readonly section: string | undefined;
  readonly time: number;
  readonly bars: readonly Bar[];
}

/** The bars of a piece in the order of playing; an order that names no section of it is not followed. The nth playing takes the nth ending, or the last. */
export function passesOf(piece: Piece): readonly Pass[] {
  const ordered = byOrder(piece);
  const strains = ordered.length > 0 ? ordered : byRepeats(piece);
  const passes: Pass[] = [];
  let onset = ZERO;
  for (const { section, time, bars } of strains) {
    for (const run of runsOf(bars, time)) {
      passes.push({ section, time, bars: run, onset });
      onset = add(onset, lengthOf(run));
    }
  }
  return passes;
}

const lengthOf = (run: readonly [Bar, ...Bar[]]): Time => {
  const last = run.at(-1) ?? run[0];
  return subtract(add(last.onset, last.duration), run[0].onset);
};

function byOrder({ sections, bars, order = [] }: Piece): Strain[] {
  const played = new Map<string, number>();
  return order.flatMap((name): Strain[] => {
    const section = sections.find((one) => one.name === name);
    if (section === undefined || section.endBar <= section.firstBar) return [];
    const time = (played.get(name) ?? 0) + 1;
    played.set(name, time);
    return [{ section: name, time, bars: bars.slice(section.firstBar, section.endBar) }];
  });
}

/** Dots of a barline on its left: what comes before it is repeated. */
export const repeatsBefore = (shape: BarlineShape | undefined): boolean => shape === ':||' || shape === ':||:';
/** Dots on its right: what comes after it. */
export const repeatsAfter = (shape: BarlineShape | undefined): boolean => shape === '||:' || shape === ':||:';

/** Strains from one double bar with dots to the next; what dots close is played as often as it has endings, at least twice. */
function byRepeats({ bars, sections }: Piece): Strain[] {
  const strains: Strain[] = [];
  let start = 0;
  const close = (end: number, repeated: boolean): void => {
    const own = bars.slice(start, end);
    const [first] = own;
    start = end;
    if (first === undefined) return;
    const section = sections.find((one) => one.firstBar <= first.index && first.index < one.endBar)?.name;
    const times = repeated ? Math.max(2, own.filter(({ ending }) => ending !== undefined).length) : 1;
    for (let time = 1; time <= times; time++) strains.push({ section, time, bars: own });
  };
  for (const [index, bar] of bars.entries()) {
    const next = bars[index + 1];
    const goesOn = next?.ending !== undefined && next.ending > 1;
    if (repeatsBefore(bar.closing?.shape) && !goesOn) close(index + 1, true);
    else if (bar.ending !== undefined && bar.ending > 1 && !goesOn) close(endOfEnding(bars, index), true);
    else if (repeatsAfter(bar.closing?.shape) || repeatsAfter(next?.opening?.shape)) close(index + 1, false);
  }
  close(bars.length, false);
  return strains;
}

/** A last ending without dots runs to the next special barline. */
function endOfEnding(bars: readonly Bar[], from: number): number {
  const end = bars.findIndex(({ closing }, index) => index >= from && closing !== undefined && closing.shape !== '|');
  return end < 0 ? bars.length : end + 1;
}

/** The bars of a strain that are played the nth time, those of other endings left out. */
function runsOf(bars: readonly Bar[], time: number): readonly (readonly [Bar, ...Bar[]])[] {
  const runs: [Bar, ...Bar[]][] = [];
  for (const { group, number, bar } of endingsIn(bars)) {
    if (number !== undefined && number !== Math.min(time, group)) continue;
    const run = runs.at(-1);
    if (run?.at(-1)?.index === bar.index - 1) run.push(bar);
    else runs.push([bar]);
  }
  return runs;
}

/** Each bar with the ending in which it stands, and how many endings there are in its place. */
function endingsIn(bars: readonly Bar[]): { bar: Bar; number: number | undefined; group: number }[] {
  const found: { bar: Bar; number: number | undefined; group: number }[] = [];
  let number: number | undefined;
  let ended = true;
  for (const bar of bars) {
    if (bar.ending !== undefined) number = bar.ending;
    else if (ended) number = undefined;
    ended = bar.closing !== undefined && bar.closing.shape !== '|';
    found.push({ bar, number, group: number ?? 0 });
  }
  // How many there are is known when the last of them has come.
  for (let index = found.length - 1; index >= 0; index--) {
    const [one, next] = [found[index], found[index + 1]];
    if (one?.number !== undefined && next?.number !== undefined && next.group > one.group) one.group = next.group;
  }
  return found;
}
