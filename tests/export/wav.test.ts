/**
 * What is played as sound. The file against the published layout of RIFF WAVE with PCM (Microsoft and IBM, Multimedia
 * Programming Interface and Data Specifications 1.0, from memory); frequencies against arithmetic, measured in the samples.
 */
import { describe, expect, it } from 'vitest';
import { parseTime, toNumber } from '../../grammar/time';
import type { Analysis } from '../../server/document/analysis';
import type { ExportOptions } from '../../server/export/formats';
import { together } from '../../server/export/inChunks';
import { exportMidi } from '../../server/export/midi';
import { Seconds } from '../../server/export/seconds';
import { soundingOf } from '../../server/export/sounding';
import { exportTimeline } from '../../server/export/timeline';
import { touched } from '../../server/export/touch';
import { exportWav } from '../../server/export/wav';
import { perform } from '../../server/readings/perform';
import { measured } from '../helpers/frequency';
import { lane, passage, scoreOf } from '../helpers/music';
import { sampleAnalysis } from '../helpers/samples';
import { readMidi, secondsOf } from '../helpers/smf';

const OPTIONS: ExportOptions = { clefs: 'source', leaveGaps: false };

interface Wav {
  readonly bytes: Uint8Array;
  readonly samples: Float32Array;
}

function wav(of: Analysis, reading = 'written', options: Partial<ExportOptions> = {}): Wav {
  const { content } = exportWav(scoreOf(of, reading), { ...OPTIONS, ...options });
  if (content === undefined) throw new Error('refused');
  const bytes = together(content);
  const view = new DataView(bytes.buffer);
  const samples = Float32Array.from(
    { length: (bytes.length - 44) / 2 },
    (_, n) => view.getInt16(44 + 2 * n, true) / 32767,
  );
  return { bytes, samples };
}

const RATE = 44_100;
/** The first sound begins after so many seconds. */
const LEAD = 0.2;
const loudest = (samples: Float32Array, from: number, to: number): number =>
  samples
    .subarray(Math.round(from * RATE), Math.round(to * RATE))
    .reduce((most, one) => Math.max(most, Math.abs(one)), 0);

/** When each key is struck and comes up, in seconds: `72 0.000-0.500`. */
const keys = (of: Analysis, reading = 'written'): string[] => {
  const [piece] = soundingOf(scoreOf(of, reading), OPTIONS).heard?.pieces ?? [];
  if (piece === undefined) throw new Error('nothing sounds');
  return touched(piece, new Seconds(piece.tempi)).map(
    ({ note, at, until }) => `${note.pitch.midi} ${at.toFixed(3)}-${until.toFixed(3)}`,
  );
};

describe('a WAV file', () => {
  it('has a header for one channel of 16 bits at 44,100, and all the samples it announces', () => {
    const { bytes } = wav(lane('2 c5 d', 'C', 'tempo 4 at 120\n'));
    const view = new DataView(bytes.buffer);
    const word = (at: number): string => new TextDecoder().decode(bytes.subarray(at, at + 4));
    expect([word(0), word(8), word(12), word(36)]).toEqual(['RIFF', 'WAVE', 'fmt ', 'data']);
    expect(view.getUint32(4, true)).toBe(bytes.length - 8);
    expect(
      [16, 20, 22, 24, 28, 32, 34].map((at) =>
        at === 24 || at === 28 || at === 16 ? view.getUint32(at, true) : view.getUint16(at, true),
      ),
    ).toEqual([16, 1, 1, RATE, 2 * RATE, 2, 16]);
    expect(view.getUint32(40, true)).toBe(bytes.length - 44);
  });
  it('is the same to the byte each time, and clips nowhere', () => {
    const [once, again] = [wav(sampleAnalysis('gigue.bent'), 'gay'), wav(sampleAnalysis('gigue.bent'), 'gay')];
    expect(Buffer.from(once.bytes).equals(Buffer.from(again.bytes))).toBe(true);
    expect(loudest(once.samples, 0, once.samples.length / RATE)).toBeLessThan(0.99);
  });
  it('says what it had to assume', () => {
    const assumed = (before: string): string[] =>
      exportWav(scoreOf(lane('1 c5', 'C', before)), OPTIONS).problems.flatMap(({ problem }) =>
        problem.code === 'export-sound-assumed' ? [`${problem.slots?.assumed}`] : [],
      );
    expect(assumed('')).toEqual(['60 crotchets a minute, a4 = 415, equal temperament']);
    expect(assumed('pitch a4 = 440\ntempo 4 at 80\ntuning vallotti\n')).toEqual([]);
  });
  it('says of an organ or a clavichord that strings are plucked', () => {
    const told = (name: string): boolean =>
      exportWav(scoreOf(lane('1 c5', 'C', `instrument ${name} compass c2-c6\n`)), OPTIONS).problems.some(
        ({ problem }) => problem.code === 'export-plucked',
      );
    expect(['organ-positive', 'clavichord-fretted', 'spinet', 'harpsichord'].map(told)).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });
  it('is refused with broken bars', () => {
    const { content, problems } = exportWav(scoreOf(lane('1 c5 | 4 d e | 1 f')), OPTIONS);
    expect(content).toBeUndefined();
    expect(problems.map(({ problem }) => problem.code)).toContain('export-broken-bar');
  });
});

describe('the pitch of its strings', () => {
  // Cents above c in the published lists, and middle C from a4 by arithmetic.
  it.each([
    ['meantone 1/4', 'e4', 386.314],
    ['meantone 1/4', 'g#4', 772.627],
    ['werckmeister-3', 'f#4', 588.27],
    ['vallotti', 'b4', 1090.225],
    ['equal', 'a4', 900],
  ])('is that of %s within a cent: %s', (tuning, note, cents) => {
    const before = `pitch a4 = 415\ntempo 4 at 30\ntuning ${tuning}\n`;
    const fundamental = (music: string, near: number): number =>
      measured(wav(lane(music, 'C', before)).samples, near, RATE, 13_000);
    const c = fundamental('1 c4', 247);
    const other = fundamental(`1 ${note}`, 247 * 2 ** (cents / 1200));
    expect(Math.abs(1200 * Math.log2(other / c) - cents)).toBeLessThan(1);
  });
  it('follows another tuning and the pitch standard', () => {
    const at = (options: Partial<ExportOptions>): number =>
      measured(
        wav(lane('1 c4', 'C', 'pitch a4 = 440\ntempo 4 at 30\n'), 'written', options).samples,
        262,
        RATE,
        13_000,
      );
    expect(1200 * Math.log2(at({}) / 261.625565)).toBeCloseTo(0, 0);
    // Quarter-comma meantone at a4 = 440, from the definition.
    expect(1200 * Math.log2(at({ tuning: 'meantone 1/4' }) / 263.181)).toBeCloseTo(0, 0);
  });
  it('has an octave more for a stop of four feet, and none of eight where there is none', () => {
    const two =
      'pitch a4 = 415\ntempo 4 at 30\ninstrument harpsichord compass g1-d6\n  manual upper stops 4\n  manual lower stops 8\n';
    const upper = wav(passage('system upper C1 lower F4 meter C\n  dessus | (manual upper) 1 a3 |||\n', two));
    expect(Math.abs(1200 * Math.log2(measured(upper.samples, 415, RATE, 13_000) / 415))).toBeLessThan(1);
    const lower = wav(passage('system upper C1 lower F4 meter C\n  dessus | (manual lower) 1 a3 |||\n', two));
    expect(Math.abs(1200 * Math.log2(measured(lower.samples, 207.5, RATE, 13_000) / 207.5))).toBeLessThan(1);
  });
});

/** Common practice of touch: quick notes let go, slurred ones held, chords spread a little, keys given time to speak again. */
describe('the touch', () => {
  const at60 = (music: string, before = ''): string[] => keys(lane(music, 'C', `tempo 4 at 60\n${before}`));

  it('lets quavers go before their end, crotchets by step a little, others not', () => {
    expect(at60('8 c5 e 4 d e g')).toEqual([
      '72 0.000-0.440',
      '76 0.500-0.940',
      '74 1.000-1.950',
      '76 2.000-3.000',
      '79 3.000-4.000',
    ]);
  });
  it('holds what is slurred to its end', () => {
    expect(at60("8 c5'u e'. 2. r")[0]).toBe('72 0.000-0.500');
  });
  it('lets a key come up in time to speak again', () => {
    expect(at60('2 c5 c').map((one) => one.slice(3))).toEqual(['0.000-1.750', '2.000-4.000']);
    expect(at60('16 c5 c c c 2. r')[0]).toBe('72 0.000-0.170');
    const onManuals = (taille: string): string[] =>
      keys(
        passage(
          `system upper C1 lower F4 meter C\n  dessus | (manual upper) 1 g4 |||\n  taille | (manual ${taille}) 2 r g4 |||\n`,
          'tempo 4 at 60\ninstrument harpsichord compass g1-d6\n  manual upper stops 8\n  manual lower stops 8\n',
        ),
      );
    expect(onManuals('upper')[0]).toBe('67 0.000-1.750');
    expect(onManuals('lower')[0]).toBe('67 0.000-4.000');
  });
  it('strikes once what two voices strike on one key, and twice what they strike on two manuals', () => {
    const two = 'tempo 4 at 60\ninstrument harpsichord compass g1-d6\n  manual upper stops 8\n  manual lower stops 8\n';
    const struck = (dessus: string, taille: string): Float32Array =>
      wav(passage(`system upper C1 lower F4 meter C\n  dessus | ${dessus} |||\n  taille | ${taille} |||\n`, two))
        .samples;
    const [once, both, apart] = [
      struck('(manual upper) 1 g4', '(manual upper) 1 r'),
      struck('(manual upper) 1 g4', '(manual upper) 2 g4 r'),
      struck('(manual upper) 1 g4', '(manual lower) 2 g4 r'),
    ];
    expect(both).toEqual(once);
    expect(loudest(apart, LEAD, LEAD + 1) / loudest(once, LEAD, LEAD + 1)).toBeCloseTo(2, 1);
  });
  it('spreads a chord of three or more by a hundredth of a second a note, and no sign’s', () => {
    expect(at60('1 c5-e-g').map((one) => one.slice(0, 8))).toEqual(['72 0.000', '76 0.010', '79 0.020']);
    expect(at60('1 c5-e').map((one) => one.slice(0, 8))).toEqual(['72 0.000', '76 0.000']);
  });
  it('is silent where nothing sounds, after the damper', () => {
    const { samples } = wav(lane('4 c5 r c r', 'C', 'tempo 4 at 60\n'));
    expect(loudest(samples, LEAD + 0.1, LEAD + 0.9)).toBeGreaterThan(0.005);
    expect(loudest(samples, LEAD + 1.1, LEAD + 1.9)).toBe(0);
  });
});

describe('unmeasured music', () => {
  it('flows: longer on the bass and before it, shorter by step, by the editor’s weight; a tenue holds', () => {
    const free = passage("system free upper C1 lower F4\n  dessus | c4'u g e4 f e c3'. c5'w2 g |||\n");
    const [piece] = soundingOf(scoreOf(free), OPTIONS).heard?.pieces ?? [];
    const seconds = new Seconds(piece?.tempi ?? []);
    const starts = (piece?.notes ?? []).map(({ onset }) => seconds.at(onset));
    const gaps = starts.slice(1).map((start, index) => (start - (starts[index] ?? 0)).toFixed(3));
    // From c, which begins the line, 1.6 of 0.45 s; g to e plain; by step 0.7; before the bass 1.8; after it 1.6; a weight of two.
    expect(gaps).toEqual(['0.720', '0.450', '0.315', '0.315', '0.810', '0.720', '0.900']);
    const first = touched(piece as NonNullable<typeof piece>, seconds)[0];
    expect(first?.until).toBeGreaterThan(starts[5] ?? Number.NaN);
  });
  it('holds a note whose tenue has no end until the next bass, or to the end where there is none', () => {
    const open = passage("system free upper C1 lower F4\n  dessus | c5'u e g c3 e4'u g |||\n");
    const [piece] = soundingOf(scoreOf(open), OPTIONS).heard?.pieces ?? [];
    const seconds = new Seconds(piece?.tempi ?? []);
    const all = touched(piece as NonNullable<typeof piece>, seconds);
    expect(all[0]?.until).toBeCloseTo(all[3]?.at ?? Number.NaN, 6);
    expect(all[4]?.until).toBeCloseTo(all[5]?.until ?? Number.NaN, 6);
    expect(all[1]?.until).toBeLessThan(all[2]?.until ?? Number.NaN);
  });
  it('plays signs in the time that its notes have, not in their nominal semibreves', () => {
    const free = passage(
      "system free upper C1 lower F4\n  dessus | c5 e'tr'w2 d c5'tr |||\n",
      'reading played\n  signs turk-1789\n',
    );
    const [piece] = soundingOf(scoreOf(free, 'played'), OPTIONS).heard?.pieces ?? [];
    const seconds = new Seconds(piece?.tempi ?? []);
    const strokes = (piece?.notes ?? []).map(({ onset }) => seconds.at(onset));
    const trill = strokes.filter((at) => at >= 0.449 && at < 1.079);
    // e, after 0.45 s, has twice the 0.315 s of a step; a quarter of that is its stop, the rest four strokes at eleven a second. Common practice.
    expect(trill.length).toBe(4);
    expect(Math.min(...trill.slice(1).map((at, index) => at - (trill[index] ?? 0)))).toBeGreaterThan(0.06);
  });
  it('ends in a chord that rings, and is spread over 1.2 of the time from note to note', () => {
    const free = passage('system free upper C1 lower F4\n  dessus | e5 d5 (down) c3-g-(up)e4-c5 |||\n');
    const [piece] = soundingOf(scoreOf(free), OPTIONS).heard?.pieces ?? [];
    const chord = touched(piece as NonNullable<typeof piece>, new Seconds(piece?.tempi ?? [])).slice(2);
    expect(chord.map(({ at }) => (at - (chord[0]?.at ?? 0)).toFixed(2))).toEqual(['0.00', '0.18', '0.36', '0.54']);
    expect((chord[0]?.until ?? 0) - (chord[0]?.at ?? 0)).toBeCloseTo(4 * 0.45, 6);
  });
  it('spreads the last of some bars as any other, and lets the last note ring, not a rest after it', () => {
    const free = scoreOf(
      passage('system free upper C1 lower F4\n  dessus | e5 (down) c3-g-(up)e4 | (home) d5 e5 r |||\n'),
    );
    const [first] = soundingOf(free, { ...OPTIONS, bars: { from: '1', to: '1' } }).heard?.pieces ?? [];
    const chord = touched(first as NonNullable<typeof first>, new Seconds(first?.tempi ?? [])).slice(1);
    expect(chord.map(({ at }) => (at - (chord[0]?.at ?? 0)).toFixed(2))).toEqual(['0.00', '0.01', '0.02']);
    const [whole] = soundingOf(free, OPTIONS).heard?.pieces ?? [];
    const last = touched(whole as NonNullable<typeof whole>, new Seconds(whole?.tempi ?? [])).at(-1);
    expect((last?.until ?? 0) - (last?.at ?? 0)).toBeCloseTo(4 * 0.45, 1);
  });
  it('keeps to its tempo again where measure begins', () => {
    const prelude = sampleAnalysis('prelude.bent');
    const [piece] = soundingOf(scoreOf(prelude), OPTIONS).heard?.pieces ?? [];
    expect(piece?.tempi.some(({ what }) => what.unmeasured === true)).toBe(true);
    expect(piece?.tempi.some(({ what }) => what.unmeasured === undefined)).toBe(true);
  });
});

describe('the overture', () => {
  const overture = sampleAnalysis('overture.bent');

  it.each([
    ['french', 'vallotti'],
    ['plain', 'meantone 1/4'],
  ])(
    'in the reading %s, tuned to %s, lasts as long as its timeline and begins each note when that says',
    (reading, tuning) => {
      const score = scoreOf(overture, reading);
      const { timeline } = exportTimeline(perform(score, { repeats: 'played' }), { leaveGaps: false });
      const [piece] = soundingOf(score, OPTIONS).heard?.pieces ?? [];
      const seconds = new Seconds(piece?.tempi ?? []);
      const [{ bars = [], events = [] } = {}] = timeline?.pieces ?? [];
      const number = (text: string | undefined): number => toNumber(parseTime(text ?? '0') ?? { n: 0, d: 1 });
      const length = number(bars.at(-1)?.onset) + number(bars.at(-1)?.duration);
      expect(toNumber(piece?.duration ?? { n: 0, d: 1 })).toBeCloseTo(length, 9);
      const inTimeline = events
        .filter(({ kind, duration }) => kind === 'note' && duration !== '0')
        .map(({ onset }) => number(onset));
      expect((piece?.notes ?? []).map(({ onset }) => toNumber(onset))).toEqual(inTimeline);
      const { samples } = wav(overture, reading, { tuning });
      const played = seconds.at(piece?.duration ?? { n: 0, d: 1 });
      expect(samples.length / RATE - LEAD).toBeGreaterThan(played - 0.5);
      expect(samples.length / RATE - LEAD).toBeLessThan(played + 0.5);
      const file = readMidi(exportMidi(score, { ...OPTIONS, tuning }).bytes);
      // To the time of a damper.
      expect(Math.abs(samples.length / RATE - LEAD - secondsOf(file))).toBeLessThan(0.15);
    },
  );
});
