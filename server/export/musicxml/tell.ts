/** What is lost in a measure as a whole. */
import type { Score } from '../../score/score';
import { changesOf } from '../../score/walk';
import type { Losses } from '../losses';
import type { Measure } from '../measures';
import { orderOf, playedOrder } from './order';
import { tellEvent } from './untold';
import type { Written } from './written';

export function tellMeasure(measure: Measure, written: Written, score: Score, losses: Losses): void {
  if (measure.opens) tellPiece(measure, written, score, losses);
  tellInnerBarlines(measure, written, score, losses);
  for (const chunk of [...(written.byMeasure.get(measure)?.values() ?? [])].flat())
    tellEvent(chunk, written, score, losses);
}

/** The order of a piece, its manuals and, of a further piece, that it is one. */
function tellPiece({ piece, bar, system, index }: Measure, { measures }: Written, score: Score, losses: Losses): void {
  const where = { source: undefined, system, bar: undefined };
  const order = orderOf(piece);
  if (order !== undefined && bar.index === 0 && playedOrder(piece) === undefined) {
    losses.add('musicxml-order', { order: order.join(' ') }, where);
  }
  if (index > 0) losses.add('musicxml-pieces', {}, where);
  const exported = new Set(measures.map((measure) => measure.bar));
  for (const { change, bar: at, system: of } of changesOf(piece)) {
    if (change.manual === undefined || !exported.has(at)) continue;
    const voice = score.environment.voices[change.manual.voice]?.name ?? '';
    losses.add('musicxml-manual', { voice }, { source: change.source, system: of, bar: at });
  }
}

/** A barline that only some voices draw stands within a measure of MusicXML's, and crosses all staves. */
function tellInnerBarlines(measure: Measure, written: Written, score: Score, losses: Losses): void {
  for (const { voice } of measure.bar.inner) {
    const name = score.environment.voices[voice]?.name ?? '';
    const chunk = written.byMeasure.get(measure)?.get(voice)?.[0];
    const where = { source: chunk?.event.source, system: chunk?.system ?? measure.system, bar: measure.bar };
    losses.add('musicxml-inner-barline', { voice: name }, where);
  }
}
