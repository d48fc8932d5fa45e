/** Sounds notes as plucked strings. */
import type { PluckedNote } from '../../../server/features/protocol';
import { pluckOf } from '../../../server/sound/mix';
import { pluck } from '../../../server/sound/pluck';

let context: AudioContext | undefined;

/** Milliseconds in which a browser that lets a page sound begins to. */
const PATIENCE = 500;

/** @returns false where the browser lets nothing sound before somebody has pressed something on the page */
export async function sound(notes: readonly PluckedNote[]): Promise<boolean> {
  context ??= new AudioContext();
  await Promise.race([context.resume(), new Promise((resolve) => setTimeout(resolve, PATIENCE))]);
  if (context.state !== 'running') return false;
  const { currentTime, sampleRate: rate, destination } = context;
  for (const stroke of notes) {
    const samples = pluck(pluckOf(stroke, rate));
    const buffer = context.createBuffer(1, samples.length, rate);
    buffer.getChannelData(0).set(samples);
    const source = new AudioBufferSourceNode(context, { buffer });
    source.connect(destination);
    source.start(currentTime + stroke.at);
  }
  return true;
}
