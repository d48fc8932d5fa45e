/** What holds of every sound score, whatever its music. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatFile } from '../../grammar/format';
import { parseFile } from '../../grammar/parse';
import { printFile } from '../../grammar/print';
import { add, compare, earliest, format, latest, subtract, sum, type Time, ZERO } from '../../grammar/time';
import { exportMusicXml } from '../../server/export/musicxml';
import type { Bar, CurveEnd, Piece, Score } from '../../server/score/score';
import { eventsOf, type PlacedEvent } from '../../server/score/walk';
import { anyScore } from '../helpers/generate';
import { analysed, scoreOf } from '../helpers/music';
import { validateMusicXml } from '../helpers/musicxml';
import { testWithSchema } from '../helpers/schemas';

const RUNS = { numRuns: 100 };
/** In a free system nothing has a measured length; everything else holds there too. */
const measured = anyScore({ free: false });

const law = (name: string, holds: (text: string) => void, files = anyScore()): void =>
  test(name, () => fc.assert(fc.property(files, holds), RUNS));

function scoresOf(text: string): Score[] {
  const analysis = analysed(text);
  return analysis.choices.map((choice) => scoreOf(analysis, choice));
}

const pieces = (text: string): Piece[] => scoresOf(text).flatMap((score) => score.pieces);

/** The events of each voice of a piece in order. */
function byVoice(piece: Piece): PlacedEvent[][] {
  const voices = new Map<number, PlacedEvent[]>();
  for (const placed of eventsOf(piece)) {
    const events = voices.get(placed.event.voice);
    if (events === undefined) voices.set(placed.event.voice, [placed]);
    else events.push(placed);
  }
  return [...voices.values()];
}

/** How much of an event lies in a bar. */
function within({ event, onset }: PlacedEvent, bar: Bar): Time {
  const start = latest(onset, bar.onset);
  const end = earliest(add(onset, event.duration), add(bar.onset, bar.duration));
  return compare(start, end) < 0 ? subtract(end, start) : ZERO;
}

/** Ends of curves that are drawn, not left open. */
const drawn = (ends: readonly (CurveEnd | undefined)[]): number =>
  ends.filter((end) => end !== undefined && !end.form.openEnded).length;

describe('in every score', () => {
  law('that is written well nothing is found to be an error', (text) => {
    expect(
      analysed(text)
        .findings()
        .filter(({ level }) => level === 'error')
        .map(({ code, message, range }) => `${range.start.line}: ${code}: ${message}`),
    ).toEqual([]);
  });

  // A bar lasts as long in every voice: common practice since bars are drawn.
  law('the events of each voice fill each bar', (text) => {
    for (const piece of pieces(text)) {
      for (const events of byVoice(piece)) {
        // A note may run through the barline: each bar has what sounds in it.
        const filled = piece.bars.map((bar) => sum(events.map((placed) => within(placed, bar))));
        expect(filled.map(format)).toEqual(piece.bars.map(({ duration }) => format(duration)));
      }
      expect(format(sum(piece.bars.map(({ duration }) => duration)))).toBe(format(piece.duration));
    }
  });

  law('each event begins where the one before it ends', (text) => {
    for (const piece of pieces(text)) {
      for (const events of byVoice(piece)) {
        for (const [index, { event, onset }] of events.entries()) {
          const next = events[index + 1];
          if (next === undefined) continue;
          expect(compare(onset, next.onset)).toBeLessThanOrEqual(0);
          expect(format(add(onset, event.duration))).toBe(format(next.onset));
        }
      }
    }
  });

  // "Tied notes are one note": common practice; so they sound one pitch.
  law('tied notes sound one pitch', (text) => {
    for (const piece of pieces(text)) {
      for (const events of byVoice(piece)) {
        let before: PlacedEvent | undefined;
        for (const placed of events) {
          for (const member of placed.event.members.filter(({ tiedFrom }) => tiedFrom)) {
            const from = before?.event.members.find(
              ({ tie, spelling, octave }) =>
                tie !== undefined && spelling.letter === member.spelling.letter && octave === member.octave,
            );
            expect(from?.midi, `${placed.event.address} is tied from nothing`).toBe(member.midi);
          }
          if (placed.event.small === undefined) before = placed;
        }
      }
    }
  });

  law('every tie arrives', (text) => {
    for (const piece of pieces(text)) {
      for (const events of byVoice(piece)) {
        const members = events.flatMap(({ event }) => event.members);
        const left = members.filter(({ tie }) => tie !== undefined).length;
        expect(members.filter(({ tiedFrom }) => tiedFrom)).toHaveLength(left);
      }
    }
  });

  law('every curve that begins ends', (text) => {
    for (const piece of pieces(text)) {
      const curves = piece.systems.flatMap(({ score }) => score.curves);
      const starts = drawn(curves.map(({ start }) => start));
      const ends = drawn(curves.map(({ end }) => end));
      expect(ends).toBe(starts);
    }
  });

  law('the text is printed as it was read', (text) => {
    expect(printFile(parseFile(text))).toBe(text);
  });

  law('laying out the lines changes no note', (text) => {
    const told = (of: string): string[] =>
      pieces(of).flatMap((piece) =>
        [...eventsOf(piece)].map(
          ({ event, onset }) =>
            `${event.address} ${format(onset)} ${format(event.duration)} ${event.kind} ${event.members.map(({ midi }) => midi)}`,
        ),
      );
    const laid = formatFile(text);
    expect(laid.problems).toEqual([]);
    expect(told(laid.text)).toEqual(told(text));
    expect(formatFile(laid.text).text).toBe(laid.text);
  });
});

// MusicXML 4.0, W3C Music Notation Community Group, 2021.
testWithSchema('musicxml-4.0/musicxml.xsd', 'exported scores are valid MusicXML', async () => {
  const asked = fc.sample(measured, { numRuns: 15, seed: 1689 });
  for (const text of asked) {
    const score = scoreOf(analysed(text));
    const exported = exportMusicXml(score, { clefs: 'source', leaveGaps: false });
    expect(exported.text).not.toBe('');
    expect(await validateMusicXml(exported.text), text).toEqual([]);
  }
});
