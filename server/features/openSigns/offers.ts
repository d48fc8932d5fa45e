/** What can be said of an open sign: that it is played as it stands, or otherwise; and by which table, if its own is silent. */
import type { Finding } from '../../../grammar/findings/finding';
import type { TextChange } from '../../document/edits';
import type { SignChoice } from '../../signs/decisions';
import { recipeInWords } from '../../signs/recipeWords';
import { certainties } from '../../signs/tables/table';
import type { Project } from '../../workspace/project';
import { capital } from '../quickFixes';
import type { OpenSign, Way } from './openSigns';
import { settling } from './settling';
import { tableChanges } from './tableChanges';

export interface Offer {
  /** `accept`: as it is played now; `choice`: otherwise; `mend`: a change without a reason of its own. */
  readonly kind: 'accept' | 'choice' | 'mend';
  /** Tells it from the other offers of its sign. */
  readonly id: string;
  /** What it does: "Accept 'zz". */
  readonly title: string;
  /** How the sign is then played, in words; empty where the title says it. */
  readonly detail: string;
  /** Why, in words that the editor may put better; empty of a change that is not annotated. */
  readonly reason: string;
  /** @param reason stands in the annotation */
  changes(reason: string): readonly TextChange[];
}

/** @param open all open signs, among which there may be others that are played alike */
export function offersOf(project: Project, sign: OpenSign, open: readonly OpenSign[] = []): Offer[] {
  return [
    accepting(project, sign),
    ...acceptingAll(project, sign, open),
    ...otherwise(project, sign),
    ...mending(project, sign),
  ];
}

// ─── as it is ────────────────────────────────────────────────────────────────────────────────────────────────────

function accepting(project: Project, sign: OpenSign): Offer {
  const reason = reasonToAccept(sign);
  return {
    kind: 'accept',
    id: 'accept',
    title: `Accept ${sign.typed}`,
    detail: reason,
    reason,
    changes: (said) => settling(project, sign, said),
  };
}

/** All signs of one name that every reading plays by the same rows; their annotation is one. */
function acceptingAll(project: Project, sign: OpenSign, open: readonly OpenSign[]): Offer[] {
  const reason = reasonToAccept(sign);
  const alike = open.filter((other) => other.typed === sign.typed && reasonToAccept(other) === reason);
  if (alike.length < 2) return [];
  return [
    {
      kind: 'accept',
      id: 'accept-all',
      title: `Accept all ${alike.length} ${sign.typed} of this kind`,
      detail: reason,
      reason,
      changes: (said) => once(alike.flatMap((other) => settling(project, other, said))),
    },
  ];
}

/** The annotation that several signs share is declared once. */
const once = (changes: readonly TextChange[]): TextChange[] => [
  ...new Map(changes.map((change) => [`${change.offset} ${change.text}`, change])).values(),
];

/** "Played as Cadence of rameau-1724 (from memory)"; where readings differ what each plays. */
function reasonToAccept({ ways }: OpenSign): string {
  const said = ways.map((way) =>
    ways.length === 1 ? playedAs(way) : `in ${way.readings.join(', ')} ${playedAs(way)}`,
  );
  return capital(said.join('; '));
}

function playedAs({ row, table, notes }: Way): string {
  if (row === undefined) return `played plain, for ${table} says nothing of it`;
  const name = `${row.label} of ${row.table}`;
  if (row.recipe.unresolved !== undefined) return `played plain, for it is not settled how ${name} goes`;
  if (notes.length === 0) return `played plain, for there is no room for ${name}`;
  return `played as ${name}${row.played === undefined ? '' : ` (${certainties[row.played]})`}`;
}

// ─── otherwise ───────────────────────────────────────────────────────────────────────────────────────────────────

function otherwise(project: Project, sign: OpenSign): Offer[] {
  const seen = new Set<string>();
  return sign.ways.flatMap((way) =>
    way.choices.flatMap((choice): Offer[] => {
      // One word may choose in several readings.
      if (seen.has(choice.word)) return [];
      seen.add(choice.word);
      const reason = reasonToChoose(way, choice);
      const inReadings = sign.ways.length === 1 ? '' : ` in ${way.readings.join(', ')}`;
      return [
        {
          kind: 'choice',
          id: choice.word,
          title: `Play ${sign.typed}${inReadings} otherwise, (${choice.word})`,
          detail: recipeInWords(choice.recipe),
          reason,
          changes: (said) => settling(project, sign, said, choice.word),
        },
      ];
    }),
  );
}

function reasonToChoose({ row }: Way, { word, row: chosen, advocates }: SignChoice): string {
  if (advocates !== undefined) return advocates;
  if (chosen !== row) return `Played as ${chosen.label} of ${chosen.table}`;
  return word === 'from main' ? 'Begins with the note itself' : 'Begins with the note above';
}

// ─── by another table, or with the fix of a finding ──────────────────────────────────────────────────────────────

function mending(project: Project, sign: OpenSign): Offer[] {
  const fixes = sign.findings.flatMap(mendingWith);
  const tables = sign.ways.flatMap((way) => tableChanges(project, sign, way));
  return [...fixes, ...tables.map(({ title, changes }) => mend(title, changes))];
}

/** The fixes of a finding. */
export const mendingWith = ({ fixes }: Finding): Offer[] =>
  fixes.map(({ title, edits }) => mend(capital(title), edits));

const mend = (title: string, changes: readonly TextChange[]): Offer => ({
  kind: 'mend',
  id: title,
  title,
  detail: '',
  reason: '',
  changes: () => changes,
});
