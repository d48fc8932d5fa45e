/** Where sources and the editor differ: one entry a place, the main text first. */
import { annotationText } from '../../score/annotations';
import type { Score } from '../../score/score';
import { type Agreement, agreementsIn, type Difference, kindInWords, nameOn, type Side } from '../compare/differences';
import { type ReportSection, tableOf } from './document';
import { placeName } from './places';

/** The main text among those that are compared. */
export const MAIN = 'written';

/** @param differences of the main text, every source and hand, and the text as the editor mends it */
export function entriesSection(
  main: Score,
  differences: readonly Difference[],
  names: readonly string[],
): ReportSection {
  const rows = differences.map((difference) => {
    const { piece, bar, voice, symbol, kind, sides } = difference;
    const own = sides.find((side) => side.names.includes(MAIN));
    const others = sides.filter((side) => side !== own);
    return [
      placeName(piece, bar, voice, symbol),
      mainText(own),
      others.map((side) => `${siglaOf(side)}: ${sideText(side)}`).join('; '),
      [kindInWords[kind], ...reasonsOf(main, difference)].join('. '),
    ];
  });
  const sources = names.filter((name) => name !== MAIN && name !== EDITOR);
  return {
    heading: 'Variants and emendations',
    said: rows.length === 0 ? [`${sources.join(', ')}: no differences.`] : [],
    tables: [
      ...tableOf('One entry a place', ['place', 'main text', 'others', 'what differs, and why'], rows),
      ...tableOf(
        'Who agrees against whom',
        ['groups', 'places'],
        agreementsIn(differences.map((difference) => ofSources(difference, sources)))
          .filter(({ groups }) => groups.length > 1)
          .map(agreementRow),
      ),
    ],
  };
}

/** With the sources that have it so. */
function mainText(side: Side | undefined): string {
  const sigla = side === undefined ? '' : siglaOf({ ...side, names: side.names.filter((name) => name !== EDITOR) });
  return sigla === '' ? sideText(side) : `${sideText(side)} (${sigla})`;
}

/** What the editor's mending is called. */
export const EDITOR = 'editor';

const siglaOf = (side: Side): string =>
  sourcesAlone(side.names)
    .map((name) => nameOn(side, name))
    .join(', ');

/** Without the main text, which is no source, and without hands that have what their source has. */
export const sourcesAlone = (names: readonly string[]): string[] =>
  names.filter((name) => name !== MAIN && !names.some((other) => name.startsWith(`${other}.`)));

/** Agreement is among sources: neither the main text nor the editor is one. */
const ofSources = (difference: Difference, order: readonly string[]): Difference => ({
  ...difference,
  sides: difference.sides
    .map((side) => ({ ...side, names: sourcesAlone(side.names).filter((name) => name !== EDITOR) }))
    .filter(({ names }) => names.length > 0)
    .sort((a, b) => order.indexOf(a.names[0] ?? '') - order.indexOf(b.names[0] ?? '')),
});

const agreementRow = ({ groups, places }: Agreement): readonly string[] => [
  groups.map((names) => names.join(', ')).join(' against '),
  `${places}`,
];

/** What one side has, in the form of reports. */
export function sideText(side: Side | undefined): string {
  if (side === undefined) return '';
  if (side.symbols.length > 0) return side.symbols.map(({ inTrade }) => inTrade).join(', ');
  return side.text === '' ? 'omitted' : side.text;
}

/** What is said of the places that differ, each thing once. */
export const reasonsOf = (main: Score, { sides }: Difference): string[] => [
  ...new Set(
    sides.flatMap(({ symbols }) =>
      symbols.flatMap(({ reasons }) => reasons.map(({ annotation }) => annotationText(annotation, main.environment))),
    ),
  ),
];
