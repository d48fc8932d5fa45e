/** The measures of a piece within its sections and endings. */
import { isSpecial, type Piece, type Score, type Section } from '../../score/score';
import type { Measure } from '../measures';
import { type XmlAttributes, type XmlElement, xml } from '../xml';
import { declaredId } from './ids';
import type { Names } from './names';

/** What stands at a measure, before it and itself. */
export type MeasureElements = ReadonlyMap<Measure, readonly XmlElement[]>;

/** The section that holds all of a piece, with the orders in which its sections are played. */
export function pieceSection(
  { piece, measures, elements }: { piece: Piece; measures: readonly Measure[]; elements: MeasureElements },
  score: Score,
  names: Names,
): XmlElement {
  const sections = piece.sections.filter((section) =>
    measures.some(({ bar }) => section.firstBar <= bar.index && bar.index < section.endBar),
  );
  const number = score.pieces.indexOf(piece) + 1;
  const ids: SectionIds = new Map(
    sections.map((section) => [section, names.take(`section-${number}-${section.name}`)]),
  );
  return xml('section', {}, [...expansions(piece, score, ids), ...within(measures, sections, elements, ids)]);
}

type SectionIds = ReadonlyMap<Section, string>;

/** The order in force, then those that other readings state. */
function expansions({ order }: Piece, { environment, choice }: Score, ids: SectionIds): readonly XmlElement[] {
  const others = environment.readings.filter((reading) => reading.order !== undefined && reading.name !== choice.name);
  return [
    expansion(order, {}, ids),
    ...others.map((reading) => expansion(reading.order, { class: `#${declaredId('reading', reading.name)}` }, ids)),
  ].filter((element) => element !== undefined);
}

/** Undefined where the order names no section of the piece: one for the whole file may speak of another. */
function expansion(
  order: readonly string[] | undefined,
  attributes: XmlAttributes,
  ids: SectionIds,
): XmlElement | undefined {
  const played = (order ?? []).flatMap((name) => {
    const found = [...ids].find(([section]) => section.name === name);
    return found === undefined ? [] : [`#${found[1]}`];
  });
  if (order === undefined || played.length === 0) return undefined;
  return xml('expansion', { ...attributes, label: order.join(' '), plist: played.join(' ') });
}

/** Sections one inside another: a part of a section (`petite in B`) ends with it. */
function within(
  measures: readonly Measure[],
  sections: readonly Section[],
  elements: MeasureElements,
  ids: SectionIds,
): readonly XmlElement[] {
  const found: XmlElement[] = [];
  let loose: Measure[] = [];
  const flush = (): void => {
    found.push(...endingElements(loose, elements));
    loose = [];
  };
  for (let i = 0; i < measures.length; ) {
    const measure = measures[i];
    if (measure === undefined) break;
    const section = sections.find(
      ({ firstBar, endBar }) => firstBar <= measure.bar.index && measure.bar.index < endBar,
    );
    if (section === undefined) {
      loose.push(measure);
      i += 1;
      continue;
    }
    flush();
    const own = measures.slice(i).filter(({ bar }) => bar.index < section.endBar);
    const inner = sections.filter((other) => other !== section && isPart(other, section));
    found.push(xml('section', { 'xml:id': ids.get(section), label: section.name }, within(own, inner, elements, ids)));
    i += own.length;
  }
  flush();
  return found;
}

const isPart = (part: Section, whole: Section): boolean =>
  part.firstBar >= whole.firstBar && part.endBar <= whole.endBar;

/** An ending runs to the next ending, section or special barline. */
function endingElements(measures: readonly Measure[], elements: MeasureElements): readonly XmlElement[] {
  const found: XmlElement[] = [];
  let open: { readonly number: number; readonly content: XmlElement[] } | undefined;
  const close = (): void => {
    if (open !== undefined) found.push(xml('ending', { n: open.number }, open.content));
    open = undefined;
  };
  for (const measure of measures) {
    const { ending, closing } = measure.bar;
    if (ending !== undefined) {
      close();
      open = { number: ending, content: [] };
    }
    (open?.content ?? found).push(...(elements.get(measure) ?? []));
    if (isSpecial(closing)) close();
  }
  close();
  return found;
}
