/** What is heard from the score panel: the samples that it gives to the loudspeakers, measured by a Fourier transform. */
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { measured } from '../helpers/frequency';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

/** Four seconds of d3 and c5, and as much again: no partial of the one is near the other. */
const CHORD = `bentside 1
pitch a4 = 415
tuning meantone 1/4 sc
tempo 4 at 60
stave upper
stave lower
voice dessus upper
voice basse lower
page "2v"
system upper G2 lower F4 meter C
  dessus | 1 c5 | c5 |||
  basse  | 1 d3 | d3 |||
`;

const A4 = 415;
const cents = (a: number, b: number): number => 1200 * Math.log2(a / b);
/** Of a4 upwards to c5: three fifths down and two octaves up, each fifth a quarter of the syntonic comma narrow (arithmetic). */
const FIFTH = 1200 * Math.log2(5 ** (1 / 4));
const MEANTONE_C = A4 * 2 ** ((2400 - 3 * FIFTH) / 1200);
const EQUAL_C = A4 * 2 ** (3 / 12);

describeInEditor('what is heard from the score panel', () => {
  let bench: Workbench;
  const at = (selector: string) => bench.view().locator(selector);
  const heard = async () => {
    // The string's first noise is over, and what sounded before has died away.
    await bench.page.waitForTimeout(1_200);
    const { samples, rate } = await at('#score').evaluate(hear);
    return { samples: Float32Array.from(samples), rate };
  };
  const c5 = async () => {
    const { samples, rate } = await heard();
    return measured(samples, EQUAL_C, rate, 0);
  };

  beforeAll(async () => {
    bench = await Workbench.open({ files: { 'chord.bent': CHORD } });
    await bench.page.addInitScript(listen);
    await bench.openFile('chord.bent');
    await bench.run('bentside.showPanel');
    await at('[data-id="e-2v-1-dessus-1.1"]').first().waitFor({ timeout: 30_000 });
    await at('#playback summary').click();
    await at('#tuning-b').selectOption('equal');
  });
  afterEach(({ task }) => bench?.keepFailure(task));
  afterAll(() => bench?.close());

  it('is in the temperament of the reading, and in the other when that is heard', async () => {
    await at('#play').click();
    await at('.sounding').first().waitFor();
    expect(Math.abs(cents(await c5(), MEANTONE_C))).toBeLessThan(1);
    await at('#side-b').click();
    expect(Math.abs(cents(await c5(), EQUAL_C))).toBeLessThan(1);
    await at('#play').click();
  });

  it('is silent when all voices are left out', async () => {
    const loudest = async () => Math.max(...(await heard()).samples.map(Math.abs));
    await at('#play').click();
    await at('.sounding').first().waitFor();
    const usual = await loudest();
    expect(usual).toBeGreaterThan(0.001);
    for (const voice of await at('#voices button').all()) await voice.click();
    expect(await loudest()).toBeLessThan(usual / 50);
    await at('#play').click();
  });
});

/** These run in the page. */
interface Sound {
  readonly context: { readonly destination: unknown; readonly sampleRate: number };
}
interface Ear extends Sound {
  readonly fftSize: number;
  getFloatTimeDomainData(into: Float32Array): void;
}
type Connect = (this: Sound, to: unknown) => unknown;
declare const AudioNode: { readonly prototype: { connect: Connect } };
declare const AnalyserNode: new (context: unknown, about: { readonly fftSize: number }) => Ear;
declare global {
  var ear: Ear | undefined;
}
/** Whatever goes to the loudspeakers goes to an ear, too. */
const listen = (): void => {
  const { connect } = AudioNode.prototype;
  AudioNode.prototype.connect = function (to) {
    if (to === this.context.destination) {
      globalThis.ear ??= new AnalyserNode(this.context, { fftSize: 32_768 });
      connect.call(this, globalThis.ear);
    }
    return connect.call(this, to);
  };
};
/** The last two thirds of a second. */
const hear = (): { readonly samples: readonly number[]; readonly rate: number } => {
  const { ear } = globalThis;
  if (ear === undefined) return { samples: [], rate: 1 };
  const samples = new Float32Array(ear.fftSize);
  ear.getFloatTimeDomainData(samples);
  return { samples: [...samples], rate: ear.context.sampleRate };
};
