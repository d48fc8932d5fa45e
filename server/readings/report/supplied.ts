/** Signs that the editor brings from elsewhere, in one table; what else is supplied; what the source leaves unclear. */
import type { AppliedMark, AppliedSpan, NoteMember, Score } from '../../score/score';
import { symbolInTrade } from '../compare/inTrade';
import { type ReportSection, tableOf } from './document';
import { annotationText } from './notes';
import { type NamedEvent, namedEvents } from './places';

/** @param scores of all texts, the main one first: a sign may stand in one of them only */
export function suppliedSection(scores: readonly Score[]): ReportSection {
  const events = scores.slice(0, 1).flatMap(namedEvents);
  return {
    heading: 'Signs supplied, other additions, the state of the sources',
    said: [],
    tables: [
      ...tableOf(
        'Signs that are the editor’s, doubtful, or in some texts only',
        ['place', 'symbol', 'sign', 'how', 'why'],
        signRows(scores),
      ),
      ...tableOf('Other additions of the editor', ['place', 'symbol', 'supplied'], events.flatMap(additionRows)),
      ...tableOf('The state of the sources', ['place', 'symbol', 'state'], events.flatMap(stateRows())),
    ],
  };
}

function signRows(scores: readonly Score[]): string[][] {
  const told = new Set<string>();
  return scores.flatMap((score) =>
    namedEvents(score).flatMap((event) =>
      signsAt(event).flatMap((mark) => {
        const { block } = event.placed.system;
        const key = `${block} ${mark.source.lane} ${mark.source.pos}`;
        if (told.has(key)) return [];
        told.add(key);
        return [signRow(event, mark, score)];
      }),
    ),
  );
}

const signsAt = ({ placed: { event } }: NamedEvent): AppliedMark[] =>
  [...event.members.flatMap(({ marks }) => marks), ...event.marks].filter(
    (mark) => mark.form.type === 'sign' && howTransferred(mark) !== '',
  );

const signRow = ({ placed, place }: NamedEvent, mark: AppliedMark, { environment }: Score): string[] => [
  place,
  symbolInTrade(placed.event),
  `'${mark.form.name}`,
  howTransferred(mark),
  mark.annotations.map(({ annotation }) => annotationText(annotation, environment)).join('; '),
];

function howTransferred({ form: { editors, doubtful, readings } }: AppliedMark): string {
  const names = readings?.names.join(', ');
  return [
    ...(editors ? ['the editor’s'] : []),
    ...(doubtful ? ['doubtful'] : []),
    ...(names === undefined ? [] : [readings?.not ? `not in ${names}` : `in ${names} only`]),
  ].join(', ');
}

const additionRows = ({ placed: { event }, place }: NamedEvent): string[][] =>
  event.members.flatMap((member) => additionsAt(member).map((what) => [place, symbolInTrade(event), what]));

const additionsAt = ({ spelling, tie, marks }: NoteMember): string[] => [
  ...(spelling.editors === undefined ? [] : [`accidental ${spelling.editors}`]),
  ...(spelling.cautionary === undefined ? [] : [`cautionary ${spelling.cautionary} in the source`]),
  ...(spelling.doubtful ? ['the note is doubtful'] : []),
  ...(tie?.editors ? ['tie'] : []),
  ...marks
    .filter(({ form }) => form.type === 'accidental' && form.editors)
    .map(({ form }) => `accidental ${form.name} above`),
];

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
