/** What editor and hands did to a note, a sign or a rest: footnotes and editorial levels. */
import type { MarkType, SpanHead } from '../../../grammar/tree';
import type { Environment, NoteDeclaration } from '../../score/environment';
import type { AppliedAnnotation, AppliedMark, NoteMember, VoiceEvent } from '../../score/score';
import { marksAtNote } from '../../score/walk';
import { type XmlElement, xml } from '../xml';
import { LEVELS } from './tables';

/** Order as the group `editorial` wants it. */
export interface Editorial {
  readonly footnote: string | undefined;
  readonly level: string | undefined;
  readonly bracket: boolean;
}

export const editorialElements = ({ footnote, level, bracket }: Editorial): readonly XmlElement[] => [
  ...(footnote === undefined ? [] : [xml('footnote', {}, footnote)]),
  ...(level === undefined ? [] : [xml('level', { bracket: bracket ? 'yes' : undefined }, level)]),
];

const joined = (texts: readonly string[]): string | undefined => (texts.length === 0 ? undefined : texts.join('; '));

/** The words of annotations; those that name a `note` statement say all that it says. */
export function footnoteOf(annotations: readonly AppliedAnnotation[], environment: Environment): string | undefined {
  return joined(
    annotations.map(({ annotation: { text, ref = '' } }) => {
      const note = environment.notes.get(ref);
      return text ?? (note === undefined ? ref : noteText(ref, note));
    }),
  );
}

/** "The sharp is wanting (pitch, MK, certainty low, evidence: the ink)". */
function noteText(name: string, { text, about, by, certainty, evidence }: NoteDeclaration): string {
  const details = [
    about,
    by,
    certainty === undefined ? undefined : `certainty ${certainty}`,
    evidence === undefined ? undefined : `evidence: ${evidence}`,
  ].filter((detail) => detail !== undefined);
  return `${text ?? name}${details.length === 0 ? '' : ` (${details.join(', ')})`}`;
}

/** Level and footnote of one mark. */
export function ofMark(mark: AppliedMark, environment: Environment): Editorial {
  const { editors, doubtful } = mark.form;
  const words = [...(editors ? ["editor's"] : []), ...(doubtful ? ['doubtful'] : [])];
  return { footnote: footnoteOf(mark.annotations, environment), level: joined(words), bracket: editors };
}

/**
 * Level and footnote of a note, rest, gap or lacuna: the passages that it stands in, what is doubtful about it, and all
 * that is said of it and of the passages that begin with it.
 */
export function ofEvent(
  event: VoiceEvent,
  member: NoteMember | undefined,
  ofPassages: readonly AppliedAnnotation[],
  environment: Environment,
): Editorial {
  const passages = event.spans.flatMap(({ head }) => passageText(head, environment) ?? []);
  const isDoubtful =
    event.value?.doubtful === true ||
    member?.spelling.doubtful === true ||
    event.chosen.some(({ doubtful }) => doubtful.length > 0);
  const words = [...passages, ...(isDoubtful ? ['doubtful'] : []), ...(event.kind === 'lost' ? ['lost'] : [])];
  const first = member === undefined || member === event.members[0];
  const isDrawn = event.kind === 'note' || event.kind === 'rest';
  const annotations = [
    ...(first ? [...ofPassages, ...event.annotations] : []),
    ...(member?.annotations ?? []),
    ...marksAtNote(event, member)
      .filter((mark) => !isDrawn || isNoNotation(mark))
      .flatMap((mark) => mark.annotations),
  ];
  return {
    footnote: footnoteOf(annotations, environment),
    level: joined([...new Set(words)]),
    bracket: event.spans.some(({ head: { word } }) => word === 'supplied'),
  };
}

const NO_NOTATIONS: ReadonlySet<MarkType> = new Set(['curveStart', 'curveEnd', 'weight']);
const DIRECTIONS: ReadonlySet<string> = new Set(['renvoi', 'fin', 'through']);

/** Whether what is said of a mark finds no notation of its own to stand at, so that it stands at the note. */
const isNoNotation = ({ form: { type, name } }: AppliedMark): boolean =>
  NO_NOTATIONS.has(type) || (type === 'other' && DIRECTIONS.has(name));

/** "added in K.2 (paler ink, a later hand)". */
function passageText({ word, readings }: SpanHead, environment: Environment): string | undefined {
  const level = word === undefined ? undefined : LEVELS[word];
  if (level === undefined || readings === undefined) return level?.plain;
  return `${level.by} ${readings.names.map((name) => described(name, environment)).join(', ')}`;
}

function described(label: string, { sources }: Environment): string {
  const hands = sources.flatMap(({ name, hands: own }) =>
    own.map((hand) => ({ ...hand, label: `${name}.${hand.layer}` })),
  );
  const description = hands.find((hand) => hand.label === label)?.description ?? '';
  return description === '' ? label : `${label} (${description})`;
}
