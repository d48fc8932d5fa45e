/** The two strings that ring: those of one step at a time. */
import { awake, play } from '../../panel/page/audio';
import { sounded } from './walk';

interface Ringing {
  readonly source: AudioBufferSourceNode;
  readonly gain: GainNode;
}

/** Seconds in which strings are damped, so that nothing clicks. */
const DAMPING = 0.15;

let ringing: Ringing | undefined;

/** @returns false where the browser lets nothing sound before somebody has pressed something on the page */
export async function pluckTogether(frequencies: readonly number[]): Promise<boolean> {
  const audio = await awake();
  if (audio === undefined) return false;
  damp();
  const gain = new GainNode(audio);
  gain.connect(audio.destination);
  const source = play(audio, sounded(frequencies, audio.sampleRate), audio.currentTime, gain);
  ringing = { source, gain };
  return true;
}

export function damp(): void {
  if (ringing === undefined) return;
  const { source, gain } = ringing;
  const now = gain.context.currentTime;
  gain.gain.setValueAtTime(1, now);
  gain.gain.linearRampToValueAtTime(0, now + DAMPING);
  source.stop(now + DAMPING);
  ringing = undefined;
}
