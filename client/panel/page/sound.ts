/** Sounds notes as plucked strings. */
import type { PluckedNote } from '../../../server/features/protocol';
import { equalTemperament, pluck } from '../../../server/sound/pluck';

/** Seconds that a string rings on after its time. */
const RINGS_ON = 0.4;

let context: AudioContext | undefined;

export function sound(notes: readonly PluckedNote[], pitchOfA: number): void {
  context ??= new AudioContext();
  void context.resume();
  const { currentTime, sampleRate: rate, destination } = context;
  for (const { at, seconds, key } of notes) {
    const samples = pluck({ frequency: equalTemperament(key, pitchOfA), seconds: seconds + RINGS_ON, rate });
    const buffer = context.createBuffer(1, samples.length, rate);
    buffer.getChannelData(0).set(samples);
    const source = new AudioBufferSourceNode(context, { buffer });
    source.connect(destination);
    source.start(currentTime + at);
  }
}
