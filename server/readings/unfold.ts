/** A performance played out: sections in their order, repeats, endings, a petite reprise. */
import { putUnder } from '../../grammar/lists';
import { add, compare, equal, subtract, type Time } from '../../grammar/time';
import { endOf } from '../score/clock';
import { inOrder, type Performance, type PerformedEvent, type PerformedPiece } from '../score/performance';
import { type Pass, passesOf } from '../score/playing';

/** The performance in the order of playing; what is played twice has its events twice, from the same written notes. */
export const unfolded = (performance: Performance): Performance => ({
  ...performance,
  pieces: performance.pieces.map(unfoldedPiece),
});

function unfoldedPiece(performed: PerformedPiece): PerformedPiece {
  const passes = passesOf(performed.piece);
  const byBar = new Map<number, PerformedEvent[]>();
  for (const event of performed.events) {
    putUnder(byBar, event.from[0].placed.bar.index, event);
  }
  const events = passes.flatMap((pass, index) => played(pass, index, byBar));
  return { ...performed, events: joined(events, passes).sort(inOrder), passes };
}

/** The end of the bars of a pass, in the time of the source. */
function endOfPass({ bars }: Pass): Time {
  return endOf(bars.at(-1) ?? bars[0]);
}

/** What is played in a pass; a note that the source ties on over its end is held until then. */
function played(pass: Pass, index: number, byBar: ReadonlyMap<number, readonly PerformedEvent[]>): PerformedEvent[] {
  const [first] = pass.bars;
  const end = endOfPass(pass);
  return pass.bars
    .flatMap((bar) => byBar.get(bar.index) ?? [])
    .map((event) => {
      const over = compare(endOf(event), end) > 0;
      const duration = over ? subtract(end, event.onset) : event.duration;
      const onset = add(subtract(event.onset, first.onset), pass.onset);
      return { ...event, from: over ? before(event.from, end) : event.from, onset, duration, pass: index };
    });
}

/** Of tied notes those that begin before a moment. */
const before = ([first, ...others]: PerformedEvent['from'], end: Time): PerformedEvent['from'] => [
  first,
  ...others.filter(({ placed }) => compare(placed.onset, end) < 0),
];

/** Notes held to the end of a pass sound on in the next where that enters them, as a further ending enters what is tied to the first. */
function joined(events: readonly PerformedEvent[], passes: readonly Pass[]): PerformedEvent[] {
  const starts = new Map(passes.map(({ onset }, index) => [index, onset]));
  const kept: PerformedEvent[] = [];
  for (const event of events) {
    const { member, placed } = event.from[0];
    const start = starts.get(event.pass ?? 0);
    const enters = member?.tiedFrom === true && start !== undefined && equal(event.onset, start) && !event.small;
    const index = enters ? kept.findLastIndex((other) => leadsTo(other, event)) : -1;
    const held = kept[index];
    if (held === undefined || placed.event.small !== undefined) kept.push(event);
    else
      kept[index] = {
        ...held,
        duration: add(held.duration, event.duration),
        from: [...held.from, ...event.from],
      };
  }
  return kept;
}

const leadsTo = (before: PerformedEvent, event: PerformedEvent): boolean =>
  before.voice === event.voice &&
  before.pitch?.midi === event.pitch?.midi &&
  before.from.at(-1)?.member?.tie !== undefined &&
  equal(endOf(before), event.onset);
