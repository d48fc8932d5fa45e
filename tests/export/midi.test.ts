/** What is played as MIDI (Standard MIDI Files 1.0, RP-001), read by an independent reader. */
import { describe, expect, it } from 'vitest';
import { parseTime, toNumber } from '../../grammar/time';
import type { Analysis } from '../../server/document/analysis';
import type { ExportOptions } from '../../server/export/formats';
import { exportMidi, TICKS } from '../../server/export/midi';
import { exportTimeline } from '../../server/export/timeline';
import { perform } from '../../server/readings/perform';
import { duet, lane, passage, scoreOf } from '../helpers/music';
import { sampleAnalysis } from '../helpers/samples';
import { dumpedHertz, eventsOf, exclusiveOf, type MidiFile, notesOf, readMidi, textsOf } from '../helpers/smf';

const midi = (of: Analysis, reading = 'written', options: Partial<ExportOptions> = {}): MidiFile =>
  readMidi(exportMidi(scoreOf(of, reading), { clefs: 'source', leaveGaps: false, ...options }).bytes);

const CROTCHET = TICKS;
/** `c4 0-1`: key, beginning and end in crotchets. */
const played = (file: MidiFile, track = 1): string[] =>
  notesOf(file.tracks[track]).map(({ key, from, to }) => `${key} ${from / CROTCHET}-${to / CROTCHET}`);

const tempi = ({ tracks: [first] }: MidiFile): string[] =>
  eventsOf(first, 'setTempo').map(({ tick, microsecondsPerBeat }) => `${tick / CROTCHET}: ${microsecondsPerBeat}`);
/** `4: 6/8, 36`: meter and MIDI clocks of a beat. */
const meters = ({ tracks: [first] }: MidiFile): string[] =>
  eventsOf(first, 'timeSignature').map(
    ({ tick, numerator, denominator, metronome }) => `${tick / CROTCHET}: ${numerator}/${denominator}, ${metronome}`,
  );

describe('a MIDI file', () => {
  it('has a track for tempo and meter and one for each voice that sounds', () => {
    const file = midi(duet('4 c5 d e f', '1 c3'));
    expect([file.format, file.division, file.tracks.length]).toEqual([1, TICKS, 3]);
    expect(file.tracks.slice(1).map((track) => textsOf(track, 'trackName')[0]?.text)).toEqual(['dessus', 'basse']);
    expect(played(file)).toEqual(['72 0-1', '74 1-2', '76 2-3', '77 3-4']);
    expect(played(file, 2)).toEqual(['48 0-4']);
  });
  it('joins tied notes, plays chords at once, and has triplets and quintuplets at whole ticks', () => {
    expect(played(midi(lane('2 c5= c5 | 1 c5-e')))).toEqual(['72 0-4', '72 4-8', '76 4-8']);
    const triplets = notesOf(midi(lane('{3in2 8 c5 d e} 4 r {5in4 16 c5 d e f g} 4 r')).tracks[1]);
    expect(triplets.slice(0, 3).map(({ from }) => from)).toEqual([0, TICKS / 3, (2 * TICKS) / 3]);
    expect(triplets.slice(3).map(({ from }) => from)).toEqual([0, 1, 2, 3, 4].map((n) => 2 * TICKS + (n * TICKS) / 5));
  });
  it('says tempo in microseconds of a crotchet, and where it changes', () => {
    // 50 minims a minute: a crotchet of 0.6 seconds; 120 crotchets: half a second.
    const file = midi(lane('1 c5 | (now tempo 4 at 120) c', 'C', 'tempo 2 at 50\n'));
    expect(tempi(file)).toEqual(['0: 600000', '4: 500000']);
    expect(tempi(midi(lane('1 c5')))).toEqual(['0: 1000000']);
  });
  it('says the meter, its denominator as a power of two, compound beats as three', () => {
    expect(meters(midi(lane('1 c5 | (now meter 6/8) 2. c')))).toEqual(['0: 4/4, 24', '4: 6/8, 36']);
  });
  it('plays repeats, sections in their order and endings out, with a marker at each', () => {
    const music =
      'order A B A\nsection A\nsystem upper C1 lower F4 meter C\n  dessus | 1 c5 ||\nsection B\nsystem\n  dessus | 1 d5 |||\n';
    const file = midi(passage(music));
    expect(played(file)).toEqual(['72 0-4', '74 4-8', '72 8-12']);
    expect(textsOf(file.tracks[0], 'marker')).toEqual([
      { tick: 0, text: 'A, bar 1' },
      { tick: 4 * CROTCHET, text: 'B, bar 2' },
      { tick: 8 * CROTCHET, text: 'A (2), bar 1' },
    ]);
    expect(played(midi(passage(music), 'written', { repeats: 'written' }))).toEqual(['72 0-4', '74 4-8']);
    expect(played(midi(lane('1 c5 :|| d')))).toEqual(['72 0-4', '72 4-8', '74 8-12']);
  });
  it('has the bars that are named, from their beginning', () => {
    const file = midi(lane('1 c5 | d | e'), 'written', { bars: { from: '2', to: '3' } });
    expect(played(file)).toEqual(['74 0-4', '76 4-8']);
  });
  it('lets a key come up before it is struck again, and strikes once what two voices strike', () => {
    const shared = passage('system upper C1 lower F4 meter C\n  dessus | 2 g4 g |||\n  taille | 1 g4 |||\n');
    expect(() => notesOf(midi(shared, 'written', { midiTuning: 'bend' }).tracks[1])).not.toThrow();
    const all = midi(shared, 'written', { midiTuning: 'bend' });
    expect(all.tracks.slice(1).flatMap((track) => notesOf(track))).toHaveLength(2);
  });
  it('has a track for each manual where that is wished', () => {
    const two = 'instrument harpsichord compass g1-d6\n  manual upper stops 8\n  manual lower stops 8 4\n';
    const music =
      'system upper C1 lower F4 meter C\n  dessus | (manual upper) 2 c5 (manual lower) d |||\n  basse | (manual lower) 1 c3 |||\n';
    const file = midi(passage(music, two), 'written', { tracks: 'manual' });
    expect(file.tracks.slice(1).map((track) => textsOf(track, 'trackName')[0]?.text)).toEqual(['upper', 'lower']);
    expect(played(file, 2)).toEqual(['48 0-4', '74 2-4']);
  });
  it('is refused with broken bars, and has gaps where those are wished', () => {
    const broken = lane('1 c5 | 4 d e | 1 e');
    const { bytes, problems } = exportMidi(scoreOf(broken), { clefs: 'source', leaveGaps: false });
    expect(bytes).toHaveLength(0);
    expect(problems.map(({ problem }) => problem.code)).toContain('export-broken-bar');
    expect(played(midi(broken, 'written', { leaveGaps: true })).at(-1)).toMatch(/^76 /);
  });
  it('is the same to the byte each time', () => {
    const once = exportMidi(scoreOf(sampleAnalysis('gigue.bent'), 'gay'), { clefs: 'source', leaveGaps: false });
    const again = exportMidi(scoreOf(sampleAnalysis('gigue.bent'), 'gay'), { clefs: 'source', leaveGaps: false });
    expect(once.bytes).toEqual(again.bytes);
  });
});

describe('the tuning in a MIDI file', () => {
  const MEANTONE = 'pitch a4 = 415\ntuning meantone 1/4 wolf g#-eb\n';

  it('is dumped and set key by key, in a program that each channel chooses', () => {
    const file = midi(lane('1 c5', 'C', MEANTONE));
    const messages = exclusiveOf(file.tracks[0]);
    expect(
      messages.map((message) =>
        message
          .slice(0, 5)
          .map((byte) => byte.toString(16))
          .join(' '),
      ),
    ).toEqual(['f0 7e 7f 8 1', 'f0 7f 7f 8 2', 'f0 7f 7f 8 2']);
    const dump = messages[0] ?? [];
    // Middle C of quarter-comma meantone at a4 = 415, from the definition.
    expect(dumpedHertz(dump, 60)).toBeCloseTo(248.228, 2);
    const controls = eventsOf(file.tracks[1], 'controller').map(({ controllerType: of, value }) => `${of} ${value}`);
    expect(controls).toEqual(['101 0', '100 4', '6 0', '101 0', '100 3', '6 0']);
  });
  it('has the second note of a divided key on a channel and in a program of its own', () => {
    const divided = lane('2 eb5 d#', 'C', `${MEANTONE}instrument virginals compass c2-c6 split d#/eb\n`);
    const file = midi(divided);
    expect(notesOf(file.tracks[1]).map(({ key, channel }) => `${key} ${channel}`)).toEqual(['75 0', '75 15']);
    const [main = [], other = []] = exclusiveOf(file.tracks[0]).filter(([, kind]) => kind === 0x7e);
    // The lesser diesis, 41.059 cents.
    expect(1200 * Math.log2(dumpedHertz(main, 75) / dumpedHertz(other, 75))).toBeCloseTo(41.059, 1);
  });
  it('may be bent: a channel for each key of the octave, the whole semitone of the pitch played by other keys', () => {
    const file = midi(lane('2 c5 e', 'C', MEANTONE), 'written', { midiTuning: 'bend' });
    const notes = notesOf(file.tracks[1]);
    // a4 = 415 is 101.27 cents below 440: a semitone, and 1.27 cents.
    expect(notes.map(({ key }) => key)).toEqual([71, 75]);
    expect(new Set(notes.map(({ channel }) => channel)).size).toBe(2);
    const bends = eventsOf(file.tracks[1], 'pitchBend').map(({ value }) => (value / 8192) * 200);
    // c is 10.26 cents above equal temperament on the same a, e 3.42 below.
    expect(bends.map((cents) => cents.toFixed(1)).sort()).toEqual(['-4.7', '9.0']);
  });
  it('is bent by a range that is stated, of two semitones', () => {
    const file = midi(lane('1 c5', 'C', MEANTONE), 'written', { midiTuning: 'bend' });
    expect(eventsOf(file.tracks[1], 'controller').map(({ controllerType: of, value }) => `${of} ${value}`)).toEqual([
      '101 0',
      '100 0',
      '6 2',
    ]);
  });
  it('is bent for three divided keys; a fourth is told', () => {
    const four = `${MEANTONE}instrument virginals compass c2-c6 split d#/eb g#/ab a#/bb c#/db\n`;
    const score = scoreOf(lane('4 d#5 ab a# db | eb g# bb c#', 'C', four));
    const { bytes, problems } = exportMidi(score, { clefs: 'source', leaveGaps: false, midiTuning: 'bend' });
    const track = readMidi(bytes).tracks[1];
    const channels = notesOf(track).map(({ channel }) => channel);
    expect(new Set(channels).size).toBe(7);
    // c sharp and d flat are one.
    expect(channels[3]).toBe(channels[7]);
    const told = problems.find(({ problem }) => problem.code === 'export-midi-bend-channels');
    expect(told?.problem.slots.notes).toBe('db');
    // Each channel has one bend; a flat is a diesis above g sharp.
    const bends = new Map(eventsOf(track, 'pitchBend').map(({ channel, value }) => [channel, (value / 8192) * 200]));
    expect(bends.size).toBe(7);
    expect((bends.get(channels[1] ?? -1) ?? 0) - (bends.get(channels[5] ?? -1) ?? 0)).toBeCloseTo(41.06, 1);
  });
  it('may be told for the twelve keys of an octave', () => {
    const [message = []] = exclusiveOf(
      midi(lane('1 c5', 'C', MEANTONE), 'written', { midiTuning: 'octave' }).tracks[0],
    );
    expect(message).toHaveLength(33);
    const cents = Array.from({ length: 12 }, (_, key) => {
      const [high = 0, low = 0] = message.slice(8 + 2 * key, 10 + 2 * key);
      return ((high * 128 + low - 8192) / 8192) * 100;
    });
    // The key of g sharp plays a, that of b plays c.
    expect(cents[8]).toBeCloseTo(-1.27, 1);
    expect(cents[11]).toBeCloseTo(10.26 - 1.27, 1);
  });
  it('has divided keys of an octave on a channel of their own', () => {
    const divided = lane('2 eb5 d#', 'C', `${MEANTONE}instrument virginals compass c2-c6 split d#/eb\n`);
    const file = midi(divided, 'written', { midiTuning: 'octave-cents' });
    const [all = [], second = []] = exclusiveOf(file.tracks[0]);
    expect([all.slice(5, 8), second.slice(5, 8)]).toEqual([
      [0x03, 0x7f, 0x7f],
      [0x02, 0, 0],
    ]);
    // At 415 the key of d plays e flat; the lesser diesis is 41 cents.
    expect((all[8 + 2] ?? 0) - (second[8 + 2] ?? 0)).toBe(41);
    expect(notesOf(file.tracks[1]).map(({ key, channel }) => `${key} ${channel}`)).toEqual(['74 0', '74 15']);
  });
  it('says which notes lie beyond whole cents from -64 to 63', () => {
    // 427 is 51.9 cents below 440, so that e flat, 20.5 above equal temperament, lies 68.6 above its key.
    const told = (midiTuning: 'octave' | 'octave-cents') =>
      exportMidi(scoreOf(lane('1 c5', 'C', 'pitch a4 = 427\ntuning meantone 1/4\n')), {
        clefs: 'source',
        leaveGaps: false,
        midiTuning,
      }).problems.find(({ problem }) => problem.code === 'export-midi-octave-limit')?.problem.slots.notes;
    expect(told('octave')).toBeUndefined();
    expect(told('octave-cents')).toBe('eb, bb');
  });
  it('may be left to the synthesiser', () => {
    expect(exclusiveOf(midi(lane('1 c5', 'C', MEANTONE), 'written', { midiTuning: 'none' }).tracks[0])).toEqual([]);
  });
});

describe('the overture', () => {
  const overture = sampleAnalysis('overture.bent');

  // Cents of c above a in the lists of both temperaments.
  it.each([
    ['french', 'vallotti', 305.865],
    ['plain', 'meantone 1/4', 310.265],
  ])('in the reading %s, tuned to %s, sounds as long and as often as its timeline has it', (reading, tuning, cents) => {
    const file = midi(overture, reading, { tuning });
    const [dump = []] = exclusiveOf(file.tracks[0]);
    expect(1200 * Math.log2(dumpedHertz(dump, 60) / 196)).toBeCloseTo(cents, 1);
    const performance = perform(scoreOf(overture, reading), { repeats: 'played' });
    const { timeline } = exportTimeline(performance, { leaveGaps: false });
    const [piece] = timeline?.pieces ?? [];
    const beats = (text: string): number => Math.round(toNumber(parseTime(text) ?? { n: 0, d: 1 }) * 4 * TICKS);
    for (const [index, { name }] of scoreOf(overture, reading).environment.voices.entries()) {
      const track = file.tracks.find((one) => textsOf(one, 'trackName')[0]?.text === name);
      const inTimeline = (piece?.events ?? []).filter(
        (event) => event.voice === name && event.kind === 'note' && event.duration !== '0',
      );
      const onsets = new Set(inTimeline.map(({ onset, midi: key }) => `${key} ${beats(onset)}`));
      expect(new Set(notesOf(track).map(({ key, from }) => `${key} ${from}`))).toEqual(onsets);
      const released = new Map(
        performance.pieces[0]?.events
          .filter((event) => event.voice === index && event.pitch !== undefined)
          .map((event) => [`${event.pitch?.midi} ${Math.round(toNumber(event.onset) * 4 * TICKS)}`, event]),
      );
      for (const { key, from, to } of notesOf(track)) {
        const event = released.get(`${key} ${from}`);
        const sounds = toNumber(event?.duration ?? { n: 0, d: 1 }) - toNumber(event?.released ?? { n: 0, d: 1 });
        expect(to - from).toBeLessThanOrEqual(Math.round(sounds * 4 * TICKS) + 1);
      }
    }
  });
});

describe('another sign table than that of the reading', () => {
  it('is told where there is none of the name, since all signs stay as they are', () => {
    const codes = (table: string): string[] =>
      exportMidi(scoreOf(lane("1 c5'zz")), { clefs: 'source', leaveGaps: false, table }).problems.map(
        ({ problem }) => problem.code,
      );
    expect(codes('nobody-1700')).toContain('ornaments-unknown-table');
    expect(codes('anglebert-1689')).not.toContain('ornaments-unknown-table');
  });
});

describe('another tuning than that of the reading', () => {
  it('is taken by its name, and the reading’s where there is none of the name', () => {
    const c4 = (tuning: string): { hertz: number; codes: string[] } => {
      const { bytes, problems } = exportMidi(scoreOf(lane('1 c4')), { clefs: 'source', leaveGaps: false, tuning });
      const [dump = []] = exclusiveOf(readMidi(bytes).tracks[0]);
      return { hertz: dumpedHertz(dump, 60), codes: problems.map(({ problem }) => problem.code) };
    };
    expect(c4('meantone 1/4').hertz).toBeCloseTo(248.228, 2);
    expect(c4('equal').hertz).toBeCloseTo(246.76, 2);
    expect(c4('valotti').codes).toContain('export-unknown-tuning');
  });
});
