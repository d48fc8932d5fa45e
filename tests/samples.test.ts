/**
 * The samples as music: sound in proof, and in two voices what teachers of counterpoint ask (common practice).
 *
 * Parallel perfect fifths and octaves between the outer voices and unexplained augmented leaps are looked for in `written`
 * and in every witness. An exception is a row below with its reason, which also stands as a comment in the sample.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { add, compare, type Time } from '../grammar/time';
import type { NoteMember, Score } from '../server/score/score';
import { eventsOf } from '../server/score/walk';
import { analysed, scoreOf } from './helpers/music';

const FOLDER = join(import.meta.dirname, '../samples');
const names = readdirSync(FOLDER).filter((name) => name.endsWith('.bent'));

/** Exceptions, each with the words of the sample's comment that explain it. */
const EXPLAINED: readonly { sample: string; what: string; comment: string }[] = [];

interface Sounding {
  readonly onset: Time;
  readonly end: Time;
  readonly bar: string;
  readonly member: NoteMember;
}

/** Notes of a voice that take time, ties joined; of a chord the highest (`top`) or the lowest. */
function melody(score: Score, voice: string, top: boolean): Sounding[] {
  const index = score.environment.voices.findIndex((one) => one.name === voice);
  const found: Sounding[] = [];
  for (const piece of score.pieces) {
    for (const { event, onset, bar } of eventsOf(piece)) {
      if (event.voice !== index || event.kind !== 'note' || event.small !== undefined) continue;
      const sorted = [...event.members].sort((a, b) => a.midi - b.midi);
      const member = top ? sorted.at(-1) : sorted[0];
      if (member === undefined) continue;
      const before = found.at(-1);
      const end = add(onset, event.duration);
      if (member.tiedFrom && before !== undefined) found[found.length - 1] = { ...before, end };
      else found.push({ onset, end, bar: bar.number, member });
    }
  }
  return found;
}

const at = (notes: readonly Sounding[], time: Time): Sounding | undefined =>
  notes.find((note) => compare(note.onset, time) <= 0 && compare(time, note.end) < 0);

const PERFECT = new Map([
  [0, 'octaves'],
  [7, 'fifths'],
]);

/** Places where both voices move to the same perfect interval that they came from. */
function parallels(upper: readonly Sounding[], lower: readonly Sounding[]): string[] {
  const times = [...upper, ...lower].map((note) => note.onset).sort(compare);
  /** Undefined where one of the voices rests, which ends what could be parallel. */
  const pairs: ({ high: Sounding; low: Sounding } | undefined)[] = [];
  for (const time of times) {
    const [high, low] = [at(upper, time), at(lower, time)];
    const last = pairs.at(-1);
    if (high === undefined || low === undefined) pairs.push(undefined);
    else if (last?.high !== high || last.low !== low) pairs.push({ high, low });
  }
  return pairs.flatMap((pair, index) => {
    const before = pairs[index - 1];
    if (pair === undefined) return [];
    const { high, low } = pair;
    if (before === undefined || before.high === high || before.low === low) return [];
    if (before.high.member.midi === high.member.midi || before.low.member.midi === low.member.midi) return [];
    const interval = (high.member.midi - low.member.midi) % 12;
    const kind = PERFECT.get(interval);
    return kind !== undefined && (before.high.member.midi - before.low.member.midi) % 12 === interval
      ? [`parallel ${kind} in bar ${high.bar}`]
      : [];
  });
}

const steps = 'cdefgab';
/** Semitones of major and perfect intervals by their size in steps. */
const MAJOR = [0, 2, 4, 5, 7, 9, 11];

/** Leaps that are a semitone wider than major or perfect. */
function augmentedLeaps(notes: readonly Sounding[]): string[] {
  return notes.flatMap((note, index) => {
    const before = notes[index - 1];
    if (before === undefined) return [];
    const height = ({ member }: Sounding): number => member.octave * 7 + steps.indexOf(member.spelling.letter);
    const size = Math.abs(height(note) - height(before));
    const wide = Math.abs(note.member.midi - before.member.midi);
    const usual = (MAJOR[size % 7] ?? 0) + 12 * Math.floor(size / 7);
    return size > 0 && wide > usual ? [`augmented leap in bar ${note.bar}`] : [];
  });
}

const unexplained = (sample: string, text: string, found: readonly string[]): string[] =>
  [...new Set(found)].filter(
    (what) => !EXPLAINED.some((one) => one.sample === sample && one.what === what && text.includes(one.comment)),
  );

describe.each(names)('%s', (name) => {
  const text = readFileSync(join(FOLDER, name), 'utf8');
  const analysis = analysed(text);

  it('is sound: no finding of error or warning in any reading', () => {
    const grave = analysis.findings().filter(({ level }) => level === 'error' || level === 'warning');
    expect(grave.map((finding) => finding.message)).toEqual([]);
  });

  it.each([...analysis.choices])('has no parallel fifths or octaves between dessus and basse as %s reads', (choice) => {
    const score = scoreOf(analysis, choice);
    const found = parallels(melody(score, 'dessus', true), melody(score, 'basse', false));
    expect(unexplained(name, text, found)).toEqual([]);
  });

  it('has no augmented leap in any voice', () => {
    const score = scoreOf(analysis);
    const found = score.environment.voices.flatMap((voice) => augmentedLeaps(melody(score, voice.name, true)));
    expect(unexplained(name, text, found)).toEqual([]);
  });

  it('names the cadence that ends each section in a comment', () => {
    const sections = scoreOf(analysis).pieces.flatMap((piece) =>
      piece.sections.filter((one) => one.within === undefined),
    );
    const named = text.match(/\/\/.*\b(?:cadence|close)\b/gi) ?? [];
    expect(sections.length).toBeGreaterThan(0);
    expect(named.length).toBeGreaterThanOrEqual(sections.length);
  });
});

describe('the overture', () => {
  const analysis = analysed(readFileSync(join(FOLDER, 'overture.bent'), 'utf8'));
  it('has sixty bars or more, two witnesses and two readings', () => {
    expect(scoreOf(analysis).pieces[0]?.bars.length).toBeGreaterThanOrEqual(60);
    expect(analysis.environment.sources).toHaveLength(2);
    expect(analysis.environment.readings).toHaveLength(2);
  });
});

describe('the allemande', () => {
  const analysis = analysed(readFileSync(join(FOLDER, 'allemande.bent'), 'utf8'));
  it('has nine and ten bars after its upbeats and more than 25 signs', () => {
    const [piece] = scoreOf(analysis).pieces;
    expect(piece?.bars.at(-1)?.number).toBe('19');
    expect(piece?.bars.some((bar) => bar.number === '9a')).toBe(true);
    const signs = [...(piece === undefined ? [] : eventsOf(piece))].flatMap(({ event }) =>
      event.members.flatMap((member) => member.marks.filter((mark) => mark.form.type === 'sign')),
    );
    expect(signs.length).toBeGreaterThanOrEqual(25);
  });
});
