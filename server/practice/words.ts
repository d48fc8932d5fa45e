/** Words of the source that speak of equal and unequal notes. */
import { add, compare, type Time } from '../../grammar/time';
import { type Bar, isSpecial } from '../score/score';
import type { Line, Stroke } from './lines';

/** They make notes equal until the strain ends or other words make them unequal (from memory). */
const EQUAL = /\bnotes?\s+[ée]gales?\b|\bmarqué|\bmouvement\s+décidé/i;
const UNEQUAL = /\binégal|\bpoint[ée]/i;
/** Words without one agreed meaning (the essay on terms of inequality that the facts cite, confirmed). */
const UNCERTAIN = /\b(?:point|piqu|lour)[ée]\w*|\bappuyé\w*/i;

/** Words that mean something here, with where they stand. */
export interface UncertainWord {
  readonly word: string;
  readonly stroke: Stroke;
}

export class RhythmWords {
  private readonly passages: { readonly from: Time; to: Time | undefined }[] = [];
  readonly uncertain: readonly UncertainWord[];

  constructor(lines: readonly Line[], bars: readonly Bar[]) {
    const all = lines.flatMap(({ strokes }) => strokes.filter(({ placed }) => placed.event.words.length > 0));
    this.uncertain = all.flatMap((stroke) => {
      const word = textOf(stroke).match(UNCERTAIN)?.[0];
      return word === undefined ? [] : [{ word, stroke }];
    });
    const telling = all.filter((stroke) => EQUAL.test(textOf(stroke)) || UNEQUAL.test(textOf(stroke)));
    for (const stroke of telling.sort((a, b) => compare(a.onset, b.onset))) this.take(stroke, bars);
  }

  private take(stroke: Stroke, bars: readonly Bar[]): void {
    const last = this.passages.at(-1);
    if (last !== undefined && (last.to === undefined || compare(last.to, stroke.onset) > 0)) last.to = stroke.onset;
    if (EQUAL.test(textOf(stroke))) this.passages.push({ from: stroke.onset, to: endOfStrain(stroke, bars) });
  }

  /** Whether words make notes equal at a moment. */
  equalAt(at: Time): boolean {
    return this.passages.some(({ from, to }) => compare(from, at) <= 0 && (to === undefined || compare(at, to) < 0));
  }
}

const textOf = ({ placed }: Stroke): string => placed.event.words.map(({ text }) => text).join(' ');

/** Where the next double bar or repeat sign stands; undefined if none comes. */
function endOfStrain({ placed }: Stroke, bars: readonly Bar[]): Time | undefined {
  const last = bars.slice(placed.bar.index).find(({ closing }) => isSpecial(closing));
  return last && add(last.onset, last.duration);
}
