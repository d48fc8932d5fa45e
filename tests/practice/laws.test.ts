/**
 * Laws of performed time, over every sample and invented passages: bars and voices keep their time, no note passes another of
 * its voice, what is struck together under one practice still is, a ratio of one changes nothing, the written time comes back.
 */
import { describe, expect, it } from 'vitest';
import { finished } from '../../grammar/finished';
import { add, compare, equal, format, isNegative, type Time, ZERO } from '../../grammar/time';
import { alteringRhythm } from '../../server/practice/alter';
import { type How, type Practice, USUAL } from '../../server/practice/practice';
import { perform } from '../../server/readings/perform';
import { type Performance, type PerformedEvent, performedOnset, writtenTime } from '../../server/score/performance';
import type { Score } from '../../server/score/score';
import { scoreOfSeed } from '../helpers/generate';
import { sampleAnalysis, sampleNames } from '../helpers/samples';
import { scoreOf } from '../helpers/scores';

const practice = (how: How): Practice => ({
  how,
  text: how.word,
  section: undefined,
  voice: undefined,
  distance: 0,
  source: { block: 0, statement: 0, lane: -1, pos: 0, len: 0 },
});

const EVERYTHING: readonly Practice[] = [
  practice(USUAL.overdot),
  practice({ ...USUAL.inegal, value: { n: 1, d: 8 } }),
  practice(USUAL.assimilate),
  practice(USUAL.snap),
  practice(USUAL.upbeats),
];

const asWritten = (score: Score): Performance => perform(score, { ornaments: 'sign', rhythm: 'written' });
const altered = (score: Score, practices = EVERYTHING): Performance =>
  finished(alteringRhythm(asWritten(score), { practices, undecided: true, tempo: undefined, ownTempo: false }));

const eventsOf = ({ pieces }: Performance): readonly PerformedEvent[] => pieces.flatMap(({ events }) => events);
const endOf = ({ onset, duration }: { readonly onset: Time; readonly duration: Time }): Time => add(onset, duration);

/** The notes, rests and gaps of each voice; a silence for a dot is not among them. */
function byVoice(performance: Performance): ReadonlyMap<string, readonly PerformedEvent[]> {
  const voices = new Map<string, PerformedEvent[]>();
  for (const [index, { events }] of performance.pieces.entries()) {
    for (const event of events) {
      const key = `${index} ${event.voice}`;
      voices.set(key, [...(voices.get(key) ?? []), event]);
    }
  }
  return voices;
}

const passages = Array.from({ length: 40 }, (_, seed) => scoreOf(scoreOfSeed(seed)));
const all: readonly (readonly [string, Score])[] = [
  ...sampleNames.flatMap((name) => {
    const analysis = sampleAnalysis(name);
    return analysis.choices.flatMap((choice): (readonly [string, Score])[] => {
      const score = analysis.score(choice);
      return score === undefined ? [] : [[`${name} ${choice}`, score]];
    });
  }),
  ...passages.map((score, index) => [`passage ${index}`, score] as const),
];

describe('performed time', () => {
  it('moves something in most samples, so that these laws are about something', () => {
    const moved = all.filter(([, score]) => eventsOf(altered(score)).some((event) => event.altered !== undefined));
    expect(moved.length).toBeGreaterThan(sampleNames.length);
  });

  it.each(all)('of %s keeps the time of every bar and voice', (_, score) => {
    const [before, after] = [asWritten(score), altered(score)];
    for (const [key, events] of byVoice(after)) {
      const written = byVoice(before).get(key) ?? [];
      expect(events.map(endOf).sort(compare).at(-1)).toEqual(written.map(endOf).sort(compare).at(-1));
      const total = (list: readonly PerformedEvent[]): Time =>
        list.reduce((sum, { duration }) => add(sum, duration), ZERO);
      // A chord is several events of one time: only what each voice holds one note at a time adds up to its length.
      if (events.every(({ from }) => from[0].placed.event.members.length < 2)) {
        expect(format(total(events))).toBe(format(total(written)));
      }
      for (const event of events) {
        const { bar } = event.from[0].placed;
        expect(compare(event.onset, bar.onset)).toBeGreaterThanOrEqual(0);
        expect(compare(event.onset, add(bar.onset, bar.duration))).toBeLessThanOrEqual(0);
        expect(isNegative(event.duration)).toBe(false);
      }
    }
  });

  it.each(all)('of %s keeps the order of onsets in a voice', (_, score) => {
    for (const events of byVoice(altered(score)).values()) {
      const byWritten = [...events].sort((a, b) => compare(writtenTime(a).onset, writtenTime(b).onset));
      byWritten.forEach((event, index) => {
        const next = byWritten[index + 1];
        if (next === undefined) return;
        const [written, other] = [writtenTime(event).onset, writtenTime(next).onset];
        if (equal(written, other)) return;
        expect(compare(performedOnset(event, 0), performedOnset(next, 0))).toBeLessThan(0);
      });
    }
  });

  it.each(all)('of %s keeps together what voices strike together under one practice', (_, score) => {
    const only = [practice(USUAL.overdot)];
    for (const { events } of altered(score, only).pieces) {
      const moments = new Map<string, Set<string>>();
      for (const event of events.filter(({ small, kind }) => !small && kind === 'note')) {
        const key = format(writtenTime(event).onset);
        moments.set(key, (moments.get(key) ?? new Set<string>()).add(format(performedOnset(event, 0))));
      }
      if (isMarked(events)) continue;
      for (const performed of moments.values()) expect(performed.size).toBe(1);
    }
  });

  it.each(all)('of %s gives the written time back', (_, score) => {
    const written = new Map(eventsOf(asWritten(score)).map((event) => [nameOf(event), event]));
    for (const event of eventsOf(altered(score)).filter(({ kind, from }) => kind === from[0].placed.event.kind)) {
      const original = written.get(nameOf(event));
      const { onset, duration } = writtenTime(event);
      expect([onset, duration]).toEqual([original?.onset, original?.duration]);
    }
  });

  it.each(all)('of %s stays as written where the practice is literal, or its ratio one', (_, score) => {
    const written = eventsOf(asWritten(score));
    if (isMarked(written)) return;
    const literal = [...EVERYTHING, practice(USUAL.literal)];
    const even = [practice({ ...USUAL.inegal, value: { n: 1, d: 8 }, ratio: { long: 1, short: 1 } })];
    expect(eventsOf(altered(score, literal))).toEqual(written);
    expect(eventsOf(altered(score, even))).toEqual(written);
  });
});

/** Where an event stands, and which note of a chord it is. */
const nameOf = ({ from: [{ placed, member }] }: PerformedEvent): string =>
  `${placed.system.block} ${placed.event.voice} ${placed.index} ${member === undefined ? '' : placed.event.members.indexOf(member)}`;

/** A mark in a lane acts whatever the reading says. */
const isMarked = (events: readonly PerformedEvent[]): boolean =>
  events.some(({ from }) =>
    from.some(({ placed }) => placed.event.spans.some(({ head }) => (head.word ?? '') in USUAL)),
  );
