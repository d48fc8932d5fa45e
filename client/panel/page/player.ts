/** Plays a course: strings are made a little before they sound, a few at a time, so that the page stays free. */
import type { Course } from './course';
import type { Strings } from './strings';

/** Seconds by which strings are made before they sound, and the stretch that is made in one go. */
const AHEAD = 1;
const STEP = 0.05;
/** Milliseconds between two looks at what comes, and the most that one of them may take. */
const PERIOD = 50;
const BUDGET = 20;
/** Seconds after which a way that was made silent is taken away. */
const SILENT_AFTER = 0.5;

interface Running {
  readonly course: Course;
  readonly strings: Strings;
  /** On the clock of the strings. */
  readonly begun: number;
  readonly way: GainNode;
  readonly voices: Map<number, GainNode>;
  /** Seconds of the course for which strings are made. */
  made: number;
  timer: ReturnType<typeof setInterval> | undefined;
}

export class Player {
  private running: Running | undefined;
  private readonly muted = new Set<number>();

  get course(): Course | undefined {
    return this.running?.course;
  }

  /** The second of the piece that is heard; undefined where nothing is played. */
  get second(): number | undefined {
    const { running } = this;
    return running?.course.at(Math.max(0, running.strings.now - running.begun));
  }

  play(course: Course, strings: Strings): void {
    this.stop();
    const running: Running = {
      course,
      strings,
      begun: strings.soonest,
      way: strings.way(),
      voices: new Map(),
      made: 0,
      timer: undefined,
    };
    this.running = running;
    running.timer = setInterval(() => this.makeAhead(running), PERIOD);
    this.makeAhead(running);
  }

  stop(): void {
    const { running } = this;
    this.running = undefined;
    if (running === undefined) return;
    clearInterval(running.timer);
    running.strings.setWay(running.way, 0);
    setTimeout(() => running.way.disconnect(), SILENT_AFTER * 1000);
  }

  /** By the index of a voice. */
  mute(voice: number, isMuted: boolean): void {
    if (isMuted) this.muted.add(voice);
    else this.muted.delete(voice);
    const way = this.running?.voices.get(voice);
    if (way !== undefined) this.running?.strings.setWay(way, isMuted ? 0 : 1);
  }

  private makeAhead(running: Running): void {
    const started = performance.now();
    const { strings, begun, course } = running;
    const wished = strings.now - begun + AHEAD;
    while (running.made < wished && performance.now() - started < BUDGET) {
      const until = running.made + STEP;
      for (const { note, at, until: end } of course.struckIn(running.made, until)) {
        const way = this.wayOf(running, note.voice);
        for (const frequency of note.frequencies) strings.pluck({ frequency, at, until: end }, begun, way);
      }
      running.made = until;
    }
  }

  private wayOf({ strings, voices, way }: Running, voice: number): GainNode {
    const known = voices.get(voice);
    if (known !== undefined) return known;
    const made = strings.way(way);
    if (this.muted.has(voice)) made.gain.value = 0;
    voices.set(voice, made);
    return made;
  }
}
