/** Plucked strings in a page, all of them through one way that can be made louder and softer. */
import { pluckOf, type Stroke } from '../../../server/sound/mix';
import { pluck } from '../../../server/sound/pluck';
import { awake, play } from './audio';

/** Seconds in which loudness changes, so that nothing clicks. */
const SMOOTH = 0.02;

export class Strings {
  private constructor(
    private readonly audio: AudioContext,
    private readonly output: GainNode,
  ) {}

  /** Undefined where the browser lets nothing sound before somebody has pressed something on the page. */
  static async open(): Promise<Strings | undefined> {
    const audio = await awake();
    if (audio === undefined) return undefined;
    const output = new GainNode(audio);
    output.connect(audio.destination);
    return new Strings(audio, output);
  }

  /** Seconds of the page's clock, as they are heard. */
  get now(): number {
    return this.audio.currentTime - (this.audio.outputLatency || 0);
  }

  /** When what is made now can begin. */
  get soonest(): number {
    return this.audio.currentTime + SMOOTH;
  }

  /** @param loudness from 0 to 1 */
  setLoudness(loudness: number): void {
    this.setWay(this.output, loudness);
  }

  /** A way into the sound that can be made louder and softer by itself. */
  way(into = this.output): GainNode {
    const way = new GainNode(this.audio);
    way.connect(into);
    return way;
  }

  setWay(way: GainNode, loudness: number): void {
    way.gain.setTargetAtTime(loudness, this.audio.currentTime, SMOOTH);
  }

  /** @param from seconds of the clock to which the stroke's own are added */
  pluck(stroke: Stroke, from: number, way = this.output): void {
    play(this.audio, pluck(pluckOf(stroke, this.audio.sampleRate)), from + stroke.at, way);
  }
}
