/** What a source leaves in doubt: notes, values, ties, signs, curves, and whether a reading is this source's at all. */
import { annotationText } from '../../score/annotations';
import { isCurve } from '../../score/curveMarks';
import type { NoteMember, Score, VoiceEvent } from '../../score/score';
import { curvesOf, marksOfEvent } from '../../score/walk';
import { symbolInTrade } from '../compare/inTrade';
import { signName } from '../compare/symbols';
import { type ReportTable, tableOf } from './document';
import { eventsByPlace, inBarOrder, type NamedEvent, namedEvents, toldAt } from './places';

/** @param scores of all texts, the main one first: what stands in several is told once */
export function doubtfulTable(scores: readonly Score[]): readonly ReportTable[] {
  const told = new Set<string>();
  const rows = scores.flatMap((score) =>
    doubtsIn(score).flatMap(({ event, what, why }) => {
      const { system, event: symbol } = event.placed;
      const row = [event.place, symbolInTrade(symbol), what, why];
      const key = `${system.block} ${symbol.source.lane} ${symbol.source.pos} ${what}`;
      if (told.has(key)) return [];
      told.add(key);
      return [toldAt(event, row)];
    }),
  );
  return tableOf('Doubtful', ['place', 'symbol', 'what is doubtful', 'why'], inBarOrder(rows));
}

interface Doubt {
  readonly event: NamedEvent;
  readonly what: string;
  readonly why: string;
}

function doubtsIn(score: Score): Doubt[] {
  const events = namedEvents(score);
  const at = eventsByPlace(events);
  const attributions = attributionsOf(score);
  const ofEvents = events.flatMap((event) => [
    ...attributions(event),
    ...doubtsOf(event.placed.event).map((what) => ({ event, what, why: '' })),
    ...signDoubts(event, score),
  ]);
  const ofCurves = score.pieces.flatMap(curvesOf).flatMap(({ start, end, form }): Doubt[] => {
    const shown = start ?? end;
    const event = shown && at(shown);
    const isDoubtful = form.doubtful || end?.end.form.doubtful === true;
    return event !== undefined && isDoubtful ? [{ event, what: 'curve', why: '' }] : [];
  });
  return [...ofEvents, ...ofCurves];
}

const doubtsOf = ({ members, value }: VoiceEvent): string[] => [
  ...(value?.doubtful ? ['value'] : []),
  ...members.flatMap(({ spelling, tie }: NoteMember) => [
    ...(spelling.doubtful ? ['note'] : []),
    ...(tie?.doubtful ? ['tie'] : []),
  ]),
];

const signDoubts = (event: NamedEvent, { environment }: Score): Doubt[] =>
  marksOfEvent(event.placed.event)
    // Of curves both ends are told together.
    .filter(({ form }) => form.doubtful && !isCurve(form))
    .map((mark) => ({
      event,
      what: `'${signName(mark)}`,
      why: mark.annotations.map(({ annotation }) => annotationText(annotation, environment)).join('; '),
    }));

/** Each place once, at its first event. */
function attributionsOf({ environment }: Score): (event: NamedEvent) => Doubt[] {
  const told = new Set<unknown>();
  return (event) =>
    event.placed.event.chosen.flatMap((chosen): Doubt[] => {
      if (chosen.doubtful.length === 0 || told.has(chosen)) return [];
      told.add(chosen);
      const why = chosen.annotations.map(({ annotation }) => annotationText(annotation, environment)).join('; ');
      return [{ event, what: `whether ${chosen.doubtful.join(', ')} has it so`, why }];
    });
}
