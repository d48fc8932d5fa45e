/** Of a voice's lane and those of witnesses what a choice takes, bar by bar. */
import { ZERO } from '../../../grammar/time';
import type { VoiceBars } from '../bars';
import { type Choice, preferredWitness } from '../choice';
import type { RawBar, RawChange } from '../rawBars';
import { type DrawnBarline, isSpecial } from '../score';
import type { VoiceLanes } from './lanes';
import type { SystemTask } from './task';

type ChosenBar = VoiceBars['bars'][number];

/** Bar by bar the lane, or the witness lane of a witness that the choice prefers; its empty bars are as in the lane. */
export function chosenBars(lanes: VoiceLanes, { choice, carry }: SystemTask): VoiceBars {
  const { voice, name, lane, witnesses } = lanes;
  const bars: ChosenBar[] = [];
  for (const [index, bar] of lanes.bars.entries())
    bars.push(witnesses.length === 0 ? { lane, bar } : chosenBar(lanes, bar, index, choice));
  const opened = witnesses.filter((one) => one.opening !== undefined);
  const rival = opened.length === 0 ? undefined : preferredWitness(choice, opened);
  const runningOn = carry.voices[voice]?.runningOn ?? ZERO;
  return { voice, name, bars, opening: rival?.opening ?? lanes.opening, runningOn };
}

function chosenBar({ lane, witnesses }: VoiceLanes, bar: RawBar, index: number, choice: Choice): ChosenBar {
  const speaking = witnesses.filter((one) => saysSomething(one.bars[index]));
  const rival = preferredWitness(choice, speaking);
  const other = rival?.bars[index];
  if (rival === undefined || other === undefined) return { lane, bar };
  const closing = strongerBarline(other.closing, bar.closing);
  if (other.empty) return { lane, bar: { ...bar, closing } };
  return {
    lane: rival.lane,
    bar: { ...other, closing, changes: [...sharedChanges(bar, other), ...other.changes] },
  };
}

const saysSomething = (bar: RawBar | undefined): boolean => bar !== undefined && (!bar.empty || isSpecial(bar.closing));

/** A special barline is typed in one lane; a plain one elsewhere agrees. */
const strongerBarline = (own: DrawnBarline | undefined, other: DrawnBarline | undefined): DrawnBarline | undefined =>
  isSpecial(own) || !isSpecial(other) ? (own ?? other) : other;

/** Changes that concern all lanes and that the witness's own bar does not type again. */
export function sharedChanges(bar: RawBar, witness: RawBar): RawChange[] {
  const own = new Set(witness.changes.map(kindOfRaw));
  return bar.changes.filter((one) => one.change.change.word !== 'manual' && !own.has(kindOfRaw(one)));
}

const kindOfRaw = ({ change: { change } }: RawChange): string =>
  [change.word, ...change.clauses.map(({ name }) => name)].join(' ');
