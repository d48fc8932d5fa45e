/** Sounds notes as plucked strings. */
import type { PluckedNote } from '../../../server/features/protocol';
import { pluckOf } from '../../../server/sound/mix';
import { pluck } from '../../../server/sound/pluck';
import { awake, play } from './audio';

/** @returns false where the browser lets nothing sound before somebody has pressed something on the page */
export async function sound(notes: readonly PluckedNote[]): Promise<boolean> {
  const audio = await awake();
  if (audio === undefined) return false;
  const { currentTime, sampleRate } = audio;
  for (const stroke of notes) play(audio, pluck(pluckOf(stroke, sampleRate)), currentTime + stroke.at);
  return true;
}
