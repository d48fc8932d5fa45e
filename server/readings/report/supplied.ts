/** Signs that the editor brings from elsewhere, in one table; what else is supplied; what the source leaves unclear. */
import type { AccidentalSign } from '../../../grammar/tree';
import { accidentalNames } from '../../../grammar/vocabulary/pitches';
import { annotationText } from '../../score/annotations';
import type { AppliedMark, AppliedSpan, NoteMember, Score, VoiceEvent } from '../../score/score';
import { barlinesOf, curvesOf, marksOfEvent } from '../../score/walk';
import { symbolInTrade } from '../compare/inTrade';
import { signName } from '../compare/symbols';
import { type ReportSection, tableOf } from './document';
import { doubtfulTable } from './doubtful';
import { eventsByPlace, inBarOrder, type NamedEvent, namedEvents, placeName, toldAt } from './places';

/** @param scores of all texts and readings, the main one first: a sign may stand in one of them only */
export function suppliedSection(scores: readonly Score[]): ReportSection {
  const [main] = scores;
  const events = main === undefined ? [] : namedEvents(main);
  return {
    heading: 'Signs supplied, other additions, the state of the sources',
    said: [],
    tables: [
      ...tableOf(
        'Signs that are the editor’s, or in some texts only',
        ['place', 'symbol', 'sign', 'how', 'why'],
        signRows(scores),
      ),
      ...tableOf(
        'Other additions of the editor',
        ['place', 'symbol', 'supplied'],
        main === undefined ? [] : [...events.flatMap(additionRows), ...curveRows(main, events), ...barlineRows(main)],
      ),
      ...doubtfulTable(scores),
      ...tableOf('The state of the sources', ['place', 'symbol', 'state'], events.flatMap(stateRows())),
    ],
  };
}

function signRows(scores: readonly Score[]): readonly (readonly string[])[] {
  const told = new Set<string>();
  const rows = scores.flatMap((score) =>
    namedEvents(score).flatMap((event) =>
      signsAt(event).flatMap((mark) => {
        const { block } = event.placed.system;
        const key = `${block} ${mark.source.lane} ${mark.source.pos}`;
        if (told.has(key)) return [];
        told.add(key);
        return [toldAt(event, signRow(event, mark, score))];
      }),
    ),
  );
  return inBarOrder(rows);
}

const signsAt = ({ placed: { event } }: NamedEvent): AppliedMark[] =>
  marksOfEvent(event).filter((mark) => mark.form.type === 'sign' && howTransferred(mark) !== '');

const signRow = ({ placed, place }: NamedEvent, mark: AppliedMark, { environment }: Score): string[] => [
  place,
  symbolInTrade(placed.event),
  `'${signName(mark)}`,
  howTransferred(mark),
  mark.annotations.map(({ annotation }) => annotationText(annotation, environment)).join('; '),
];

function howTransferred({ form: { editors, readings } }: AppliedMark): string {
  const names = readings?.names.join(', ');
  return [
    ...(editors ? ['the editor’s'] : []),
    ...(names === undefined ? [] : [readings?.not ? `not in ${names}` : `in ${names} only`]),
  ].join(', ');
}

const additionRows = ({ placed: { event }, place }: NamedEvent): string[][] =>
  [...event.members.flatMap(additionsAt), ...figuresAt(event)].map((what) => [place, symbolInTrade(event), what]);

const additionsAt = ({ spelling, tie, marks }: NoteMember): string[] => [
  ...(spelling.editors === undefined ? [] : [accidentalNames[spelling.editors]]),
  ...(tie?.editors ? ['tie'] : []),
  ...marks
    .filter(({ form }) => form.type === 'accidental' && form.editors)
    .map(({ form }) => `${accidentalNames[form.name as AccidentalSign]} above`),
];

const figuresAt = ({ figures }: VoiceEvent): string[] =>
  (figures?.columns ?? [])
    .flat()
    .flatMap(({ editors, number, accidental }) => (editors ? [`figure ${number ?? ''}${accidental ?? ''}`] : []));

function curveRows({ pieces }: Score, events: readonly NamedEvent[]): string[][] {
  const at = eventsByPlace(events);
  return pieces.flatMap(curvesOf).flatMap(({ form, start, end }): string[][] => {
    const shown = start ?? end;
    const event = shown && at(shown);
    return form.editors && event !== undefined
      ? [[event.place, symbolInTrade(event.placed.event), form.name === 'line' ? 'line' : 'curve']]
      : [];
  });
}

const barlineRows = ({ pieces }: Score): string[][] =>
  pieces.flatMap((piece) =>
    piece.bars.flatMap((bar) =>
      barlinesOf(bar).flatMap((line) =>
        line.editors ? [[`${placeName(piece.name, bar.number, '', 0)}, barline`, line.shape, 'barline']] : [],
      ),
    ),
  );

const STATES: Readonly<Record<string, string>> = {
  unclear: 'hard to read',
  supplied: 'supplied by the editor',
  deleted: 'struck out',
  added: 'added later',
};

/** Each span once, at its first event. */
function stateRows(): (event: NamedEvent) => string[][] {
  const told = new Set<AppliedSpan>();
  return ({ placed: { event }, place }) => {
    const spans = event.spans.filter((span) => STATES[span.head.word ?? ''] !== undefined && !told.has(span));
    for (const span of spans) told.add(span);
    const rows = spans.map(({ head }) => {
      const where = head.readings === undefined ? '' : ` in ${head.readings.names.join(', ')}`;
      return [place, `from ${symbolInTrade(event)}`, `${STATES[head.word ?? '']}${where}`];
    });
    return event.kind === 'lost' ? [...rows, [place, '', 'lost']] : rows;
  };
}
