/**
 * What the tuning panel shows and sounds, without an editor.
 *
 * Beats of equal temperament on a4 = 440: Capleton, Journal of Neuroscience 32 (35), 2012, table 1, to one decimal; further
 * places, and those of quarter-comma meantone, are computed from the definition, |n f(low) − m f(high)|.
 */
import { describe, expect, it } from 'vitest';
import { beforeChoice, choiceOf, FROM_THE_FORK, wantedChoice } from '../../client/tuning/choices';
import type { PageOfTuning, ShownStep } from '../../client/tuning/messages';
import { frequenciesOf, notYetLaid, sounded, stepFrom } from '../../client/tuning/page/walk';
import { pageOf } from '../../client/tuning/words';
import { sheetOf } from '../../server/tuning/sheet';
import { measured } from '../helpers/frequency';
import { tunedTo } from '../helpers/tuned';

const RATE = 48_000;

const shown = (words: string, before?: string, pitch = 440): PageOfTuning =>
  pageOf({
    sheet: sheetOf(tunedTo(words, pitch), before === undefined ? undefined : tunedTo(before, pitch)),
    words,
    drawing: '',
    assumed: [],
    writes: [],
    obstacle: '',
  });

const stepOf = ({ steps }: PageOfTuning, interval: string): ShownStep => {
  const step = steps.find((one) => one.interval === interval);
  if (step === undefined) throw new Error(`no step ${interval}`);
  return step;
};

const rowsOf = ({ tables }: PageOfTuning, caption: string) => tables.find((one) => one.caption.includes(caption))?.rows;

describe('what the page says', () => {
  it.each([
    ['equal', 'f3-a3', '6.93 wide'],
    ['equal', 'g3-b3', '7.78 wide'],
    ['equal', 'c4-e4', '10.38 wide'],
    ['equal', 'f3-c4', '0.59 narrow'],
    ['equal', 'a3-d4', '0.99 wide'],
    ['meantone 1/4', 'f3-a3', 'pure'],
    ['meantone 1/4', 'f3-c4', '1.64 narrow'],
    ['meantone 1/4', 'g3-d4', '1.83 narrow'],
    ['meantone 1/4', 'a3-e4', '2.05 narrow'],
  ])('%s: %s beats %s', (words, interval, beats) => {
    expect(stepOf(shown(words), interval).beats).toBe(beats);
  });

  it('each step in words, with its place, its beats in a minute, and where they are heard', () => {
    const page = shown('meantone 1/4');
    expect(stepOf(page, 'f3-c4').says).toBe(
      'Step 5 of 12: f3 from c4, fifth: 1.64 beats a second (98 a minute), narrow. Listen where partial 3 of f3 meets partial 2 of c4, near 528 Hz.',
    );
    expect(stepOf(page, 'f3-a3').says).toMatch(/^Proof after step 5: f3-a3, major third: pure, without beats\./);
  });

  it('every fifth, third and key: the wolf of quarter-comma meantone is 35.682 cents wide, its eight good thirds pure', () => {
    const page = shown('meantone 1/4');
    expect(rowsOf(page, 'Fifths')?.at(-1)?.slice(0, 2)).toEqual(['g#-eb', '+35.68']);
    expect(rowsOf(page, 'Major thirds')?.filter(([, cents]) => cents === '0.00')).toHaveLength(8);
    expect(rowsOf(page, 'major keys')).toHaveLength(12);
    expect(rowsOf(page, 'minor keys')).toHaveLength(12);
  });

  it('what moves from one tuning to another, and that nothing does', () => {
    const page = shown('meantone 1/4 wolf g#-eb', 'meantone 1/4 wolf c#-ab');
    expect(page.stepsTitle).toBe('From meantone 1/4 wolf c#-ab, a4 = 440 Hz: what is set anew');
    // The lesser diesis, 41.059 cents.
    expect(rowsOf(page, 'What moves')).toEqual([['ab becomes g#', '−41.1']]);
    const same = shown('vallotti', 'vallotti');
    expect(same.stepsTitle).toBe('From vallotti, a4 = 440 Hz: nothing moves');
    expect(same.steps).toEqual([]);
  });

  it('what is assumed, and why it cannot be written', () => {
    const given = { sheet: sheetOf(tunedTo('equal', 415)), words: 'equal', drawing: '', writes: ['tuning equal'] };
    const page = pageOf({ ...given, assumed: ['temperament', 'pitch'], obstacle: '' });
    expect(page.under.slice(1).join(' ')).toMatch(/equal temperament is assumed.*a4 = 415 Hz is assumed/);
    expect([page.canWrite, page.writes]).toEqual([true, 'tuning equal']);
    expect(pageOf({ ...given, assumed: [], obstacle: 'no' })).toMatchObject({ canWrite: false, writes: 'no' });
  });
});

describe('what can be chosen', () => {
  const answer = {
    readings: [{ reading: 'written', title: 'Vallotti' }],
    offers: [{ words: 'vallotti', title: 'Vallotti' }],
  };
  const next = { uri: 'file:///next.bent', name: 'next.bent', reading: 'house' };

  it('is in groups, and comes back as it was', () => {
    const { groups, chosen } = wantedChoice(answer, [next], { reading: 'written', kind: 'reading' });
    expect(groups.map(({ options }) => options.map(({ label }) => label))).toEqual([
      ['written: Vallotti'],
      ['next.bent (house)'],
      ['vallotti: Vallotti'],
    ]);
    expect(choiceOf(chosen)).toEqual({ kind: 'reading', reading: 'written' });
    expect(chosen).toBe(groups[0]?.options[0]?.value);
  });

  it('has what was typed, too', () => {
    const { groups, chosen } = wantedChoice(answer, [], { kind: 'words', words: 'meantone 3/14' });
    expect(groups[0]?.options).toEqual([{ value: chosen, label: 'meantone 3/14' }]);
  });

  it('knows nothing of what the instrument has until it is told', () => {
    expect(beforeChoice(answer, [], undefined).chosen).toBe(FROM_THE_FORK);
  });
});

describe('the walk', () => {
  const { steps } = shown('vallotti');

  it('leaves fewer strings to be laid with each step that tunes, and none at its end', () => {
    const left = steps.map((_, at) => notYetLaid(steps, at).size);
    expect(left[0]).toBeGreaterThan(10);
    expect([...left].sort((a, b) => b - a)).toEqual(left);
    expect(
      notYetLaid(
        steps,
        steps.findLastIndex(({ tunes }) => tunes !== ''),
      ),
    ).toEqual(new Set(['']));
  });

  it('ends at both ends', () => {
    expect(stepFrom(steps, 0, -1)).toBe(0);
    expect(stepFrom(steps, 0, Number.POSITIVE_INFINITY)).toBe(steps.length - 1);
  });
});

/** How often a second the sound dies away and comes again at a frequency, over two seconds. */
function dipsASecond(samples: Float32Array, frequency: number): number {
  const [window, hop, from, until] = [0.05, 0.005, 0.2, 2.2].map((seconds) => Math.round(seconds * RATE)) as [
    number,
    number,
    number,
    number,
  ];
  const levels: number[] = [];
  for (let start = from; start < until; start += hop) {
    let [re, im] = [0, 0];
    for (let n = 0; n < window; n++) {
      const weight = 1 - Math.cos((2 * Math.PI * n) / window);
      const phase = (2 * Math.PI * frequency * (start + n)) / RATE;
      re += weight * (samples[start + n] ?? 0) * Math.cos(phase);
      im += weight * (samples[start + n] ?? 0) * Math.sin(phase);
    }
    levels.push(Math.hypot(re, im));
  }
  const dips = levels.flatMap((level, i) =>
    level < (levels[i - 1] ?? 0) && level < (levels[i + 1] ?? 0) ? [(i * hop) / RATE] : [],
  );
  return (dips.length - 1) / ((dips.at(-1) ?? 1) - (dips[0] ?? 0));
}

describe('the sound of a step', () => {
  const equal = shown('equal');

  it.each([
    ['f3-a3', 6.929],
    ['bb3-d4', 9.25],
    ['a3-c#4', 8.731],
  ])('%s beats as often as the table says: %d times a second', (interval, beats) => {
    const { hertz, partials } = stepOf(equal, interval);
    const meeting = (hertz[0] * partials[0] + hertz[1] * partials[1]) / 2;
    expect(dipsASecond(sounded(hertz, RATE), meeting)).toBeCloseTo(beats, 1);
  });

  it('has its partials where they meet: of f3 and c4 they are 0.591 hertz apart', () => {
    const { hertz, partials } = stepOf(equal, 'f3-c4');
    const [low, high] = hertz.map((one, i) => measured(sounded([one], RATE), one * (partials[i] ?? 1), RATE));
    expect((low ?? 0) - (high ?? 0)).toBeCloseTo(0.591, 1);
  });

  it('is pure where the string that is set is moved, and the other stays', () => {
    // The fifth is 3 to 2, the fourth 4 to 3, the major third 5 to 4.
    const [f3, c4] = frequenciesOf(stepOf(equal, 'f3-c4'), 'pure');
    expect([f3, c4]).toEqual([(c4 ?? 0) / 1.5, stepOf(equal, 'f3-c4').hertz[1]]);
    const [a3, d4] = frequenciesOf(stepOf(equal, 'a3-d4'), 'pure');
    expect([a3, (d4 ?? 0) / (a3 ?? 1)]).toEqual([220, expect.closeTo(4 / 3, 9)]);
    expect(frequenciesOf(stepOf(equal, 'f3-a3'), 'pure')[1]).toBeCloseTo(174.614 * 1.25, 3);
    expect(frequenciesOf(stepOf(equal, 'f3-a3'), 'tempered')).toEqual([174.614, 220]);
  });

  it('is of moderate loudness: two strings come to less than half of what can be', () => {
    const samples = sounded(stepOf(equal, 'f3-a3').hertz, RATE);
    expect(samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)).toBeLessThanOrEqual(0.41);
  });
});
