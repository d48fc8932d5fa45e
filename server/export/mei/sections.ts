/** The measures of a piece within its sections and endings. */
import { isSpecial, type Section } from '../../score/score';
import type { Measure } from '../measures';
import { type XmlElement, xml } from '../xml';

/** What stands at a measure, before it and itself. */
export type MeasureElements = ReadonlyMap<Measure, readonly XmlElement[]>;

/** A section with the ids of what can be played of it. */
export interface SectionIds {
  readonly of: (section: Section) => string;
}

/** Sections of a piece one inside another: a part of a section (`petite in B`) ends with it. */
export function sectionElements(
  measures: readonly Measure[],
  elements: MeasureElements,
  ids: SectionIds,
): readonly XmlElement[] {
  const [first] = measures;
  const sections = first?.piece.sections ?? [];
  return within(
    measures,
    sections.filter((section) => section.firstBar < section.endBar),
    elements,
    ids,
  );
}

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
    found.push(xml('section', { 'xml:id': ids.of(section), label: section.name }, within(own, inner, elements, ids)));
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
