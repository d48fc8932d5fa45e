/** Where systems and pages of the source begin. */
import type { Bar, ScoreSystem } from '../../score/score';
import { type Losses, whereBar } from '../losses';
import type { Measure } from '../measures';
import { type XmlElement, xml } from '../xml';

/** The `print` of each measure. A system that begins inside a bar breaks at the next one, and is told. */
export function breaksOf(measures: readonly Measure[], losses: Losses): readonly (XmlElement | undefined)[] {
  const begun = new Map<Bar, ScoreSystem>();
  for (const piece of new Set(measures.map((measure) => measure.piece))) {
    for (const system of piece.systems) {
      const inside = system.score.bars[0]?.continues === true;
      const bar = piece.bars[system.firstBar + (inside ? 1 : 0)];
      if (bar !== undefined) begun.set(bar, system);
    }
  }
  let page: string | undefined;
  return measures.map((measure) => {
    const system = begun.get(measure.bar) ?? (measure.index === 0 ? measure.system : undefined);
    if (system === undefined) return undefined;
    const turned = page !== undefined && system.page !== page;
    const known = page === system.page;
    page = system.page;
    if (measure.index > 0 && system.score.bars[0]?.continues === true) {
      const inside = measure.piece.bars[system.firstBar];
      if (inside !== undefined) losses.add('musicxml-break', {}, whereBar(system, inside));
    }
    return printElement(system, measure.index > 0, turned, known);
  });
}

function printElement(system: ScoreSystem, breaks: boolean, turned: boolean, known: boolean): XmlElement {
  return xml('print', {
    'new-system': breaks && !turned ? 'yes' : undefined,
    'new-page': turned ? 'yes' : undefined,
    'page-number': known ? undefined : system.page,
  });
}
