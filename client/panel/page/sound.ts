/** Sounds notes as plucked strings. */
import type { PluckedNote } from '../../../server/features/protocol';
import { equalTemperament, pluck } from '../../../server/sound/pluck';

/** Seconds that a string rings on after its time. */
const RINGS_ON = 0.4;

let context: AudioContext | undefined;

/** Milliseconds in which a browser that lets a page sound begins to. */
const PATIENCE = 500;

/** @returns false where the browser lets nothing sound before somebody has pressed something on the page */
export async function sound(notes: readonly PluckedNote[], pitchOfA: number): Promise<boolean> {
  context ??= new AudioContext();
  await Promise.race([context.resume(), new Promise((resolve) => setTimeout(resolve, PATIENCE))]);
  if (context.state !== 'running') return false;
  const { currentTime, sampleRate: rate, destination } = context;
  for (const { at, seconds, key } of notes) {
    const samples = pluck({ frequency: equalTemperament(key, pitchOfA), seconds: seconds + RINGS_ON, rate });
    const buffer = context.createBuffer(1, samples.length, rate);
    buffer.getChannelData(0).set(samples);
    const source = new AudioBufferSourceNode(context, { buffer });
    source.connect(destination);
    source.start(currentTime + at);
  }
  return true;
}
