/**
 * Each sample in each of its readings as MusicXML: valid by the schema of the W3C (MusicXML 4.0, 2021), and its notes as an
 * independent reader (musicxml-io) finds them compared with our own timeline.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'musicxml-io';
import { describe, expect, it } from 'vitest';
import { add, format, parseTime, type Time, toNumber, ZERO } from '../../grammar/time';
import { exportMusicXml } from '../../server/export/musicxml';
import { exportTimeline } from '../../server/export/timeline';
import { perform } from '../../server/readings/perform';
import type { Score } from '../../server/score/score';
import { analysed, scoreOf } from '../helpers/music';
import { type ReadNote, readNotes, validateMusicXml } from '../helpers/musicxml';
import { testWithSchema } from '../helpers/schemas';

const FOLDER = join(import.meta.dirname, '../../samples');
const samples = readdirSync(FOLDER).filter((name) => name.endsWith('.bent'));

const musicXml = (score: Score): string => exportMusicXml(score, { clefs: 'source', leaveGaps: false }).text;

const timeOf = (text: string): Time => parseTime(text) ?? ZERO;

/** "onset+duration pitch" of every sounding note of the timeline, small notes left out. */
function ours(score: Score): string[] {
  const pieces = exportTimeline(perform(score), { leaveGaps: false }).timeline?.pieces ?? [];
  return pieces.flatMap(({ events }) =>
    events
      .filter((event) => event.kind === 'note' && event.duration !== '0')
      .map(
        (event) =>
          `${toNumber(timeOf(event.onset)).toFixed(6)}+${toNumber(timeOf(event.duration)).toFixed(6)} ${event.pitch}`,
      ),
  );
}

const ties = (note: ReadNote): string[] => {
  const { tie, ties: several } = note.entry as { tie?: { type: string }; ties?: { type: string }[] };
  return [...(tie === undefined ? [] : [tie.type]), ...(several ?? []).map((one) => one.type)];
};

/** The same as the reader finds it: measures one after another, tied notes joined. */
function theirs(text: string, bars: readonly Time[]): string[] {
  const numbers = parse(text).parts[0]?.measures.map((measure) => measure.number) ?? [];
  const starts: number[] = [];
  bars.reduce((onset, duration) => {
    starts.push(toNumber(onset));
    return add(onset, duration);
  }, ZERO);
  const startOf = new Map(numbers.map((number, index) => [number, starts[index] ?? 0]));
  const open = new Map<string, { onset: number; duration: number; pitch: string }>();
  const found: { onset: number; duration: number; pitch: string }[] = [];
  for (const note of readNotes(text)) {
    if (note.pitch === 'r' || note.entry.grace !== undefined) continue;
    const key = `${note.voice} ${note.pitch}`;
    const types = ties(note);
    const before = types.includes('stop') ? open.get(key) : undefined;
    const whole = before ?? { onset: (startOf.get(note.measure) ?? 0) + note.onset, duration: 0, pitch: note.pitch };
    whole.duration += note.duration;
    if (before === undefined) found.push(whole);
    if (types.includes('start')) open.set(key, whole);
    else open.delete(key);
  }
  return found.map(({ onset, duration, pitch }) => `${onset.toFixed(6)}+${duration.toFixed(6)} ${pitch}`);
}

describe.each(samples)('%s as MusicXML', (name) => {
  const analysis = analysed(readFileSync(join(FOLDER, name), 'utf8'));

  it.each([...analysis.choices])('has the notes of the timeline as an independent reader finds them: %s', (choice) => {
    const score = scoreOf(analysis, choice);
    const bars = score.pieces.flatMap((piece) => piece.bars.map((bar) => bar.duration));
    const found = theirs(musicXml(score), bars);
    expect(found.length).toBeGreaterThan(100);
    expect(found.sort()).toEqual(ours(score).sort());
  });

  testWithSchema('musicxml-4.0/musicxml.xsd', 'is valid in every reading', async () => {
    for (const choice of analysis.choices) {
      expect([choice, ...(await validateMusicXml(musicXml(scoreOf(analysis, choice))))]).toEqual([choice]);
    }
  });

  it('lasts as long as its bars together', () => {
    for (const piece of scoreOf(analysis).pieces) {
      const sum = piece.bars.reduce((total, bar) => add(total, bar.duration), ZERO);
      expect(format(sum)).toBe(format(piece.duration));
    }
  });
});
