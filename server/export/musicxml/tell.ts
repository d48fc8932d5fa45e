/** What is lost in a measure as a whole. */
import type { Score } from '../../score/score';
import type { Losses } from './losses';
import type { Measure } from './measures';
import { tellEvent } from './untold';
import type { Written } from './written';

export function tellMeasure(measure: Measure, written: Written, score: Score, losses: Losses): void {
  if (measure.opens && measure.piece.order !== undefined) {
    const order = measure.piece.order.join(' ');
    losses.add('musicxml-order', { order }, { source: undefined, system: measure.system, bar: undefined });
  }
  tellInnerBarlines(measure, written, score, losses);
  for (const chunk of [...(written.byMeasure.get(measure)?.values() ?? [])].flat()) tellEvent(chunk, score, losses);
}

/** A barline that only some voices draw stands in no measure of MusicXML's. */
function tellInnerBarlines(measure: Measure, written: Written, score: Score, losses: Losses): void {
  for (const { voice } of measure.bar.inner) {
    const name = score.environment.voices[voice]?.name ?? '';
    const chunk = written.byMeasure.get(measure)?.get(voice)?.[0];
    const where = { source: chunk?.event.source, system: chunk?.system ?? measure.system, bar: measure.bar };
    losses.add('musicxml-inner-barline', { voice: name }, where);
  }
}
