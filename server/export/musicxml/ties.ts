/** The ties at each note: what sounds and what is drawn. */
import type { TieForm } from '../../../grammar/tree';
import type { Chunk } from '../chunks';
import { type Head, tieLinks } from '../tieLinks';
import { type XmlElement, xml } from '../xml';

/** The ties at a member of a chord. */
export interface MemberTies {
  /** The tie that ends here. */
  readonly stop: TieKind | undefined;
  /** The tie that begins here. */
  readonly start: TieKind | undefined;
  /** A tie that comes from a note which does not stand right before: from before the first ending, or not exported. */
  readonly entered: 'ending' | 'excerpt' | undefined;
  /** A tie begins in the source whose other note is not in the export. */
  readonly open: TieKind | undefined;
}

export type TieKind = 'plain' | 'editors' | 'doubtful';

export type Ties = ReadonlyMap<Chunk, readonly MemberTies[]>;

type Draft = { -readonly [K in keyof MemberTies]: MemberTies[K] };

export const NO_TIES: MemberTies = { stop: undefined, start: undefined, entered: undefined, open: undefined };

const kindOf = (tie: TieForm): TieKind => (tie.editors ? 'editors' : tie.doubtful ? 'doubtful' : 'plain');

/** The ties of one voice, whose chunks come in the order of the source. */
export function tiesOf(chunks: readonly Chunk[]): Ties {
  const notes = chunks.filter((chunk) => chunk.event.kind === 'note');
  const drafts = new Map<Chunk, Draft[]>(
    notes.map((chunk) => [chunk, chunk.event.members.map(() => ({ ...NO_TIES }))]),
  );
  const draftOf = ({ chunk, member }: Head): Draft | undefined => drafts.get(chunk)?.[member];
  for (const { from, to, form } of tieLinks(chunks)) {
    const kind = form === undefined ? 'plain' : kindOf(form);
    const draft = draftOf(from);
    const partner = to === undefined ? undefined : draftOf(to);
    if (draft === undefined) continue;
    if (partner === undefined) draft.open = kind;
    else {
      draft.start = kind;
      partner.stop = kind;
    }
  }
  for (const chunk of notes) enter(chunk, drafts.get(chunk) ?? []);
  return drafts;
}

/** What is tied from a note that no exported one before it is tied to. */
function enter(chunk: Chunk, drafts: readonly Draft[]): void {
  if (!chunk.first || chunk.event.small !== undefined) return;
  for (const [m, draft] of drafts.entries()) {
    if (chunk.event.members[m]?.tiedFrom !== true || draft.stop !== undefined) continue;
    draft.entered = (chunk.measure.bar.ending ?? 1) > 1 ? 'ending' : 'excerpt';
  }
}

// ─── elements ────────────────────────────────────────────────────────────────────────────────────────────────────

/** What sounds: the note of a second ending goes on sounding from before the first. */
export const tieElements = ({ stop, start, entered }: MemberTies): readonly XmlElement[] => [
  ...(stop !== undefined || entered === 'ending' ? [xml('tie', { type: 'stop' })] : []),
  ...(start === undefined ? [] : [xml('tie', { type: 'start' })]),
];

const LINES: Readonly<Record<TieKind, string | undefined>> = {
  plain: undefined,
  editors: 'dashed',
  doubtful: 'dotted',
};

const tied = (type: 'start' | 'stop', kind: TieKind): XmlElement => xml('tied', { type, 'line-type': LINES[kind] });

/** A tie drawn at one note alone is a start and a stop at that note (MusicXML 4.0, `tied`: "ties into or out of repeated sections"). */
const lone = (kind: TieKind): readonly XmlElement[] => [tied('start', kind), tied('stop', kind)];

/** What is drawn. */
export const tiedElements = ({ stop, start, entered, open }: MemberTies): readonly XmlElement[] => [
  ...(entered === undefined ? [] : lone('plain')),
  ...(stop === undefined ? [] : [tied('stop', stop)]),
  ...(start === undefined ? [] : [tied('start', start)]),
  ...(open === undefined ? [] : lone(open)),
];
