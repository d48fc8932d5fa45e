/** The decisions list as the editor shows it. */
import type { Position, TextEdit } from 'vscode-languageserver-types';
import type { Finding } from '../../../grammar/findings/finding';
import { decidedIn, isOfSign } from '../../document/decided';
import { addressOf } from '../../score/walk';
import { certainties } from '../../signs/tables/table';
import type { Project } from '../../workspace/project';
import { eventHere } from '../events';
import { hereAt } from '../nodes';
import { offsetOfPosition, rangeOfOffsets } from '../place';
import type { OpenSignItem, OpenSignOffer } from '../protocol';
import { textEdits } from '../quickFixes';
import { mendingWith, type Offer, offersOf } from './offers';
import { type OpenSign, openSignsOf, type Way } from './openSigns';

/** A place in the list: an open sign, or one that is settled but of which there is something to tell. */
export interface Listed {
  readonly start: number;
  readonly end: number;
  readonly item: Omit<OpenSignItem, 'range'>;
  readonly offers: () => readonly Offer[];
}

/** Of a sign, not once of all signs at the first. */
const isOfOneSign = (finding: Finding): boolean => isOfSign(finding) && finding.code !== 'tempo-assumed';

function listed(project: Project): Listed[] {
  const open = openSignsOf(project);
  const starts = new Set(open.map(({ start }) => start));
  const told = decidedIn(project.analysis).findings.filter(
    (finding) => isOfOneSign(finding) && !starts.has(finding.range.start.offset),
  );
  return [
    ...open.map((sign) => openListed(project, sign, open)),
    ...told.map((finding) => toldListed(project, finding)),
  ].sort((a, b) => a.start - b.start);
}

function openListed(project: Project, sign: OpenSign, open: readonly OpenSign[]): Listed {
  const { start, end, bar, voice, address, typed, ways, findings } = sign;
  const said = findings.map(({ message }) => message);
  const item = { bar: bar.number, voice, address, typed, ways: ways.map(wayInWords), findings: said, isOpen: true };
  return { start, end, item, offers: () => offersOf(project, sign, open) };
}

function toldListed(project: Project, finding: Finding): Listed {
  const { start, end } = finding.range;
  const here = hereAt(project.tree, start.offset);
  const at = here && eventHere(project, here, finding.readings);
  const address = at === undefined ? '' : addressOf(at.system, at.event);
  const typed = project.tree.text.slice(start.offset, end.offset);
  const item = { bar: at?.bar.number ?? '', voice: at?.event.laneName ?? '', address, typed, ways: [] };
  return {
    start: start.offset,
    end: end.offset,
    item: { ...item, findings: [finding.message], isOpen: false },
    offers: () => mendingWith(finding),
  };
}

/** "french: Cadence of rameau-1724 (from memory): e5 d5 e5 d5". */
function wayInWords({ readings, row, table, notes }: Way): string {
  const who = `${readings.join(', ')}: `;
  if (row === undefined) return `${who}${table} says nothing of it, played plain`;
  const sure = row.played === undefined ? '' : ` (${certainties[row.played]})`;
  return `${who}${row.label} of ${row.table}${sure}${notes.length === 0 ? ', played plain' : `: ${notes.join(' ')}`}`;
}

/** Everything on the list, by place. */
export const openSignItems = (project: Project): OpenSignItem[] =>
  listed(project).map(({ start, end, item }) => ({ ...item, range: rangeOfOffsets(project.tree, start, end) }));

/** What can be said of the sign at a place. */
export const offersAt = (project: Project, position: Position): OpenSignOffer[] =>
  (listedAt(project, position)?.offers() ?? []).map(({ kind, id, title, detail, reason }) => ({
    kind,
    id,
    title,
    detail,
    reason,
  }));

/** What an offer of the sign at a place does to the text; undefined if there is no such offer any more. */
export function settle(project: Project, position: Position, id: string, reason: string): TextEdit[] | undefined {
  const offer = listedAt(project, position)
    ?.offers()
    .find((one) => one.id === id);
  return offer && textEdits(project, offer.changes(reason));
}

/** What is listed of the sign at a place. */
export const listedAt = (project: Project, position: Position): Listed | undefined => {
  const offset = offsetOfPosition(project.tree, position);
  return listed(project).find(({ start, end }) => start <= offset && offset <= end);
};
