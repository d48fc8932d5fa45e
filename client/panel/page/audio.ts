/** What sounds on a page. */

let context: AudioContext | undefined;

/** Milliseconds in which a browser that lets a page sound begins to. */
const PATIENCE = 500;

/** Undefined where the browser lets nothing sound before somebody has pressed something on the page. */
export async function awake(): Promise<AudioContext | undefined> {
  context ??= new AudioContext();
  await Promise.race([context.resume(), new Promise((resolve) => setTimeout(resolve, PATIENCE))]);
  return context.state === 'running' ? context : undefined;
}

/**
 * Sounds samples from a moment on, in seconds of the page’s clock.
 * @param into as a rule what everybody hears
 */
export function play(
  audio: AudioContext,
  samples: Float32Array,
  at: number,
  into: AudioNode = audio.destination,
): AudioBufferSourceNode {
  const buffer = audio.createBuffer(1, samples.length, audio.sampleRate);
  buffer.getChannelData(0).set(samples);
  const source = new AudioBufferSourceNode(audio, { buffer });
  source.connect(into);
  source.start(at);
  return source;
}
