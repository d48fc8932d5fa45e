/** Where and how often signs stand in a performance: by that an editor decides what a sign means in a book. */
import type { Performance, PerformedEvent } from '../score/performance';
import { signsOf } from './bearing';
import { contextsOf } from './contexts';
import { Passage } from './passage';

/** How many of the things counted stand in a context (`dotted`), or in a voice. */
export type Counts = Readonly<Record<string, number>>;

export interface Use {
  readonly times: number;
  /** By context. */
  readonly where: Counts;
  readonly voices: Counts;
}

export interface SignUse extends Use {
  /** Short names of its shapes, joined by `+`. */
  readonly sign: string;
}

export interface Uses {
  /** The most frequent first. */
  readonly signs: readonly SignUse[];
  /** All notes, with a sign or without: what the counts of signs are held against. */
  readonly notes: Use;
}

const none: Use = { times: 0, where: {}, voices: {} };

/** The signs of a performance in which nothing is realised. */
export function signUses({ pieces, score }: Performance): Uses {
  const signs = new Map<string, Use>();
  let notes = none;
  for (const piece of pieces) {
    const passage = new Passage(piece);
    for (const event of piece.events.filter(({ kind, small }) => kind === 'note' && !small)) {
      const voice = score.environment.voices[event.voice]?.name ?? '';
      const useAt = (written: PerformedEvent['from'][number]): Use =>
        once(contextsOf({ passage, event, written }), voice);
      notes = sum(notes, useAt(event.from[0]));
      for (const { shapes, written } of signsOf(event)) {
        const key = shapes.join('+');
        signs.set(key, sum(signs.get(key) ?? none, useAt(written)));
      }
    }
  }
  return { signs: byFrequency(signs), notes };
}

/** The uses of several scores together. */
export function together(all: readonly Uses[]): Uses {
  const signs = new Map<string, Use>();
  for (const { sign, ...use } of all.flatMap((one) => one.signs)) signs.set(sign, sum(signs.get(sign) ?? none, use));
  return { signs: byFrequency(signs), notes: all.map(({ notes }) => notes).reduce(sum, none) };
}

const once = (contexts: readonly string[], voice: string): Use => ({
  times: 1,
  where: Object.fromEntries(contexts.map((context) => [context, 1])),
  voices: { [voice]: 1 },
});

const sum = (a: Use, b: Use): Use => ({
  times: a.times + b.times,
  where: added(a.where, b.where),
  voices: added(a.voices, b.voices),
});

function added(a: Counts, b: Counts): Counts {
  const all: Record<string, number> = { ...a };
  for (const [key, count] of Object.entries(b)) all[key] = (all[key] ?? 0) + count;
  return all;
}

const byFrequency = (signs: ReadonlyMap<string, Use>): SignUse[] =>
  [...signs].map(([sign, use]) => ({ sign, ...use })).sort((a, b) => b.times - a.times || (a.sign < b.sign ? -1 : 1));
