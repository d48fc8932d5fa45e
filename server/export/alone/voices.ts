/** The bars of a system's voices as a choice has them: out of which lane each is taken, and which are left out. */
import type { Block, PlacedLane } from '../../../grammar/tree';
import { type Choice, preferredWitness } from '../../score/choice';
import type { Environment } from '../../score/environment';
import { isSpecial } from '../../score/score';
import { resolvedLane, type TakenBar } from './resolve';

/** A lane of the block and its bars. */
export interface ResolvedLane {
  readonly index: number;
  readonly placed: PlacedLane;
  readonly bars: readonly TakenBar[];
  /** `fig` and `text` under it, by index in the block's lanes. */
  readonly subs: number[];
}

export interface ResolvedVoice {
  /** Index in the environment. */
  readonly voice: number;
  readonly main: ResolvedLane;
  readonly witnesses: (ResolvedLane & { readonly name: string })[];
}

/** A bar that stands in the main lane, and what is put in its place. */
export interface StandingBar {
  readonly own: TakenBar;
  readonly taken: TakenBar;
  /** Whose barline ends it: the bar's own, or that of the lane which is taken. */
  readonly ending: TakenBar;
}

/** As the score reads them: the first lane of each voice, and what witnesses have under it. */
export function voicesOf(block: Block, environment: Environment, choice: Choice): ResolvedVoice[] {
  const voices: ResolvedVoice[] = [];
  let current: ResolvedLane | undefined;
  block.lanes.forEach((placed, index) => {
    if (placed.tree.kind !== 'lane') {
      current?.subs.push(index);
      return;
    }
    const voice = environment.voices.findIndex(({ name }) => name === placed.name.text);
    const home = environment.voices[voice]?.stave ?? 0;
    const lane = { index, placed, bars: resolvedLane(placed, index, home, choice), subs: [] };
    const above = voices.find((one) => one.voice === voice);
    current = lane;
    if (voice < 0) current = undefined;
    else if (placed.witness === undefined && above === undefined) voices.push({ voice, main: lane, witnesses: [] });
    else if (placed.witness !== undefined) above?.witnesses.push({ ...lane, name: placed.witness.text });
  });
  return voices;
}

const saysSomething = (bar: TakenBar | undefined): boolean =>
  bar !== undefined && (!bar.isEmpty || isSpecial(bar.closing));

/** Bar by bar the lane, or the lane of the witness that the choice prefers; its empty bars are as in the lane. */
export function standingBars({ main, witnesses }: ResolvedVoice, choice: Choice): StandingBar[] {
  return main.bars.map((own, index) => {
    const speaking = witnesses.filter(({ bars }) => saysSomething(bars[index]));
    const rival = preferredWitness(choice, speaking)?.bars[index];
    if (rival === undefined) return { own, taken: own, ending: own };
    const isRivals = rival.closing !== undefined && (isSpecial(rival.closing) || !isSpecial(own.closing));
    return { own, taken: rival.isEmpty ? own : rival, ending: isRivals ? rival : own };
  });
}

const omitsSomething = ({ taken }: StandingBar): boolean => taken.steps.some(({ kind }) => kind === 'omit');
const hasEvents = ({ taken }: StandingBar): boolean =>
  taken.steps.some(({ kind }) => kind === 'event' || kind === 'lost');

/** What becomes of the n-th bars of a system's lanes. */
export interface BarFate {
  /** Nothing is left of them. */
  readonly isGone: boolean;
  /** No barline parts them from the next, for all lanes omit it. */
  readonly isJoined: boolean;
}

/**
 * Bars that all lanes omit are gone, and barlines that all omit part nothing.
 * @param continues the first bar has begun in the system before, so that something of it is left
 */
export function fatesOf(voices: readonly (readonly StandingBar[])[], continues: boolean): BarFate[] {
  const count = Math.max(0, ...voices.map((bars) => bars.length));
  const at = (index: number): StandingBar[] => voices.flatMap((bars) => bars[index] ?? []);
  const joined = Array.from(
    { length: count },
    (_, index) => index + 1 < count && at(index).every(({ taken }) => taken.closingOmitted),
  );
  const fates: BarFate[] = [];
  for (let first = 0; first < count; ) {
    let end = first + 1;
    while (joined[end - 1]) end++;
    const groups = voices.map((bars) => bars.slice(first, end)).filter(({ length }) => length > 0);
    const isLeftOut = groups.every((bars) => bars.some(omitsSomething) && !bars.some(hasEvents));
    const isGone = isLeftOut && !(continues && first === 0);
    for (let index = first; index < end; index++) fates.push({ isGone, isJoined: joined[index] === true });
    first = end;
  }
  return fates;
}

/** A barline that one lane omits parts nothing in it; what is left of its bars goes on. */
export const looseFatesOf = (bars: readonly StandingBar[]): BarFate[] =>
  bars.map(({ taken }) => ({ isGone: false, isJoined: taken.closingOmitted }));
