/** What a picture of a score does not show, told as what other formats cannot say. */
import { HINTS } from '../export/hints';
import { Losses, whereBar } from '../export/losses';
import { type BarsWanted, type Measure, measuresFor } from '../export/measures';
import { tempiOf } from '../export/tempi';
import { annotationsOf, annotationsOfBarline } from '../score/annotations';
import type { PlacedProblem, Score, VoiceEvent } from '../score/score';
import { weightMarkOf } from '../score/unmeasured';
import { barlinesOf, eventsOf } from '../score/walk';

export function undrawn(score: Score, wanted: BarsWanted): readonly PlacedProblem[] {
  // Why bars are left out is told by whoever draws the others.
  const measures = measuresFor(score, wanted, new Losses()) ?? [];
  const losses = new Losses(score.pieces);
  tellEvents(score, measures, losses);
  for (const measure of measures) {
    tellBarlines(measure, losses);
    if (measure.opens) tellTempi(measure, score, measures, losses);
  }
  return losses.problems();
}

function tellEvents(score: Score, measures: readonly Measure[], losses: Losses): void {
  const bars = new Set(measures.map(({ bar }) => bar));
  for (const { event, system, bar } of score.pieces.flatMap((piece) => [...eventsOf(piece)])) {
    if (!bars.has(bar)) continue;
    const where = { source: event.source, system, bar };
    const voice = event.laneName;
    for (const { source } of annotationsOf(event)) losses.add('svg-annotation', { voice }, { ...where, source });
    for (const { labels } of event.chosen) losses.add('svg-option', { voice, labels: labels.join(', ') }, where);
    for (const hint of hintsOf(event)) losses.add('svg-hint', { voice, hint }, where);
    if (weightMarkOf(event) !== undefined) losses.add('svg-weight', { voice }, where);
  }
}

const hintsOf = ({ spans }: VoiceEvent): readonly string[] =>
  spans.flatMap(({ head: { word } }) => (word !== undefined && HINTS.has(word) ? [word] : []));

function tellBarlines({ bar, system }: Measure, losses: Losses): void {
  for (const { source } of barlinesOf(bar).flatMap(annotationsOfBarline))
    losses.add('svg-annotation', { voice: 'the barlines' }, { source, system, bar });
}

/** A tempo is the editor's measure of time, and no writing on the page. */
function tellTempi(first: Measure, score: Score, measures: readonly Measure[], losses: Losses): void {
  for (const { bar } of tempiOf(first, score)) {
    const measure = measures.find((one) => one.bar === bar);
    if (measure !== undefined) losses.add('svg-tempo', {}, whereBar(measure.system, bar));
  }
}
