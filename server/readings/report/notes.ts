/** Annotations, with who says so, how sure it is and on what evidence; the doubtful by themselves. */
import { annotationsOf, annotationsOfBarline, annotationText } from '../../score/annotations';
import type { Environment } from '../../score/environment';
import type { AppliedAnnotation, Score } from '../../score/score';
import { barlinesOf } from '../../score/walk';
import { type ReportSection, tableOf } from './document';
import { byBar, namedEvents, placeName } from './places';

interface Said {
  readonly place: string;
  /** The block of the text in which it stands. */
  readonly block: number;
  /** Index of its bar in its piece. */
  readonly bar: number;
  readonly applied: AppliedAnnotation;
}

const HEAD = ['place', 'about', 'annotation', 'by', 'certainty', 'evidence'];

/** Whether the notes of a bar are wanted, by the name of its piece and its number. */
type IsWanted = (piece: string, bar: string) => boolean;

/**
 * @param scores of all texts: what stands in one of them only is said there
 * @param isWanted as a rule those of all bars are
 */
export function notesSection(scores: readonly Score[], isWanted: IsWanted = () => true): ReportSection {
  const [main] = scores;
  if (main === undefined) return { heading: 'Annotations', said: [], tables: [] };
  const all = eachOnce(scores.flatMap((score) => annotationsIn(score, isWanted))).sort(byBar);
  const doubtful = all.filter(({ applied }) => isDoubtful(applied, main.environment));
  const sure = all.filter((one) => !doubtful.includes(one));
  return {
    heading: 'Annotations',
    said: [],
    tables: [
      ...tableOf(
        'Annotations',
        HEAD,
        sure.map((one) => rowOf(one, main.environment)),
      ),
      ...tableOf(
        'Doubtful: of low or unknown certainty',
        HEAD,
        doubtful.map((one) => rowOf(one, main.environment)),
      ),
    ],
  };
}

const isDoubtful = ({ annotation: { ref } }: AppliedAnnotation, { notes }: Environment): boolean =>
  ['low', 'unknown'].includes(notes.get(ref ?? '')?.certainty ?? '');

function rowOf({ place, applied }: Said, environment: Environment): readonly string[] {
  const { annotation } = applied;
  const note = environment.notes.get(annotation.ref ?? '');
  const by = environment.editors.get(note?.by ?? '')?.name ?? note?.by ?? '';
  return [
    place,
    note?.about ?? '',
    annotationText(annotation, environment),
    by,
    note?.certainty ?? '',
    note?.evidence ?? '',
  ];
}

/** What stands in several texts, or around several notes, is told at the first of them. */
function eachOnce(all: readonly Said[]): Said[] {
  const seen = new Set<string>();
  return all.filter(({ block, applied: { source } }) => {
    const key = `${block} ${source.lane} ${source.pos}`;
    return !seen.has(key) && seen.add(key);
  });
}

function annotationsIn(score: Score, isWanted: IsWanted): Said[] {
  const events = namedEvents(score).filter(({ piece, placed }) => isWanted(piece, placed.bar.number));
  const atEvents = events.flatMap(({ placed, place }) =>
    annotationsOf(placed.event).map((applied) => ({
      place,
      applied,
      block: placed.system.block,
      bar: placed.bar.index,
    })),
  );
  const atBarlines = score.pieces.flatMap((piece) =>
    piece.bars
      .filter(({ number }) => isWanted(piece.name, number))
      .flatMap((bar) => {
        const block = piece.systems[bar.system]?.block ?? 0;
        const place = `${placeName(piece.name, bar.number, '', 0)}, barline`;
        return barlinesOf(bar)
          .flatMap(annotationsOfBarline)
          .map((applied) => ({ place, applied, block, bar: bar.index }));
      }),
  );
  return [...atEvents, ...atBarlines];
}
