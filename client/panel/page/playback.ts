/** Playing in the panel: what is asked for, what comes, and what of it is seen on the page. */
import type {
  BeginOfPlaying,
  ChoiceOffer,
  PlayedBar,
  PlayedNote,
  Playing,
  PluckedNote,
  TuningOffer,
} from '../../../server/features/protocol';
import type { FromPage } from '../messages';
import { awake } from './audio';
import { Controls } from './controls';
import { Course } from './course';
import type { Keyboard } from './keyboard';
import { beneath, type Marks } from './marks';
import { Player } from './player';
import { Strings } from './strings';
import { type Stretch, Timeline } from './timeline';

/** What playing needs of the rest of the page. */
export interface Stage {
  readonly marks: Marks;
  readonly keyboard: Keyboard;
  tell(message: FromPage): void;
  say(text: string): void;
  /** The note that is marked, by the id of its picture. */
  marked(): { readonly id: string; readonly bar: string } | undefined;
  /** Whether two readings are shown, A above B. */
  hasTwo(): boolean;
  /** Index of the leaf that is shown. */
  leaf(): number;
  /** Brings something into view. */
  follow(element: Element): void;
}

export class Playback {
  private readonly player = new Player();
  private readonly controls: Controls;
  private strings: Strings | undefined;
  /** What was asked for last: an answer to anything before is too late. */
  private asked = 0;
  /** It is to go on where it is, not to begin. */
  private goesOn = false;
  /** Where it was to begin, until the answer comes. */
  private awaited: BeginOfPlaying | undefined;
  private timeline: Timeline | undefined;
  private reading: string | undefined;
  /** What is seen to sound, as one text, and the bar that was brought into view. */
  private seen = '';
  private bar: PlayedBar | undefined;
  private isLooking = false;

  constructor(private readonly stage: Stage) {
    this.controls = new Controls({
      played: () => this.toggle(),
      changed: () => this.goOn(),
      read: (reading) => stage.tell({ kind: 'read', reading }),
      putBeneath: (reading) => stage.tell({ kind: 'beneath', reading }),
      loopChanged: () => this.loopChanged(),
      loudnessChanged: () => this.strings?.setLoudness(this.controls.loudness),
      muted: (voice, isMuted) => this.player.mute(voice, isMuted),
    });
  }

  /** Notes that are heard by themselves. */
  async sound(notes: readonly PluckedNote[]): Promise<void> {
    const strings = await this.open();
    if (strings === undefined) return;
    const { soonest } = strings;
    for (const stroke of notes) strings.pluck(stroke, soonest);
  }

  /** Undefined where nothing may sound, which is said. */
  private async open(): Promise<Strings | undefined> {
    this.strings ??= await Strings.open();
    if (this.strings === undefined) this.stage.say(this.controls.text('silent'));
    else this.strings.setLoudness(this.controls.loudness);
    return this.strings;
  }

  // ─── what is wished for ──────────────────────────────────────────────────────────────────────────────────────

  get isPlaying(): boolean {
    return this.player.course !== undefined;
  }

  toggle(): void {
    if (this.isPlaying) this.stop();
    else this.playFrom(this.controls.begin === 'leaf' ? undefined : this.stage.marked()?.id);
  }

  /** @param id of the picture of a note; the top of the leaf where there is none */
  playFrom(id: string | undefined): void {
    this.goesOn = false;
    this.ask(id === undefined ? { page: this.stage.leaf() } : { id });
  }

  stop(): void {
    this.asked++;
    this.awaited = undefined;
    this.player.stop();
    this.controls.showPlaying(false);
    this.see([]);
  }

  swap(): void {
    this.controls.swap();
  }

  toggleLoop(): void {
    this.controls.toggleLoop();
  }

  loopOver(from: string, to: string): void {
    this.controls.loopOver(from, to);
  }

  /** Another score is shown. */
  leave(): void {
    this.stop();
    this.timeline = undefined;
    this.controls.endLoop();
  }

  /** Another reading, temperament or tempo, at the same place. */
  goOn(): void {
    if (this.awaited !== undefined) this.ask(this.awaited);
    if (this.awaited !== undefined || !this.isPlaying) return;
    this.goesOn = true;
    this.ask({ piece: this.timeline?.playing.piece ?? 0 });
  }

  private ask(begin: BeginOfPlaying): void {
    // A browser lets a page sound while somebody presses something.
    void awake();
    this.awaited = begin;
    this.stage.tell({ kind: 'play', number: ++this.asked, wish: { ...this.controls.wish, begin } });
  }

  // ─── what comes ────────────────────────────────────────────────────────────────────────────────────────────────

  /**
   * @param number of what was asked for
   * @param playing null where there is nothing to play
   */
  async begin(number: number, playing: Playing | null): Promise<void> {
    if (number !== this.asked) return;
    this.awaited = undefined;
    const { controls, stage } = this;
    if (playing === null) {
      stage.say(controls.text('nothing'));
      return;
    }
    const strings = await this.open();
    if (strings === undefined || number !== this.asked) return;
    const next = new Timeline(playing);
    controls.showVoices(playing.voices);
    stage.keyboard.build(playing.keys);
    const second = this.beginIn(next);
    this.timeline = next;
    this.player.play(new Course(next, second, this.loop()), strings);
    this.showLoop();
    controls.showPlaying(true);
    if (!this.goesOn) stage.say(this.words(playing));
    if (!this.isLooking) this.look();
  }

  /** Where another has come to, or where it is to begin. */
  private beginIn(next: Timeline): number {
    const { second } = this.player;
    if (this.goesOn && this.timeline !== undefined && second !== undefined)
      return next.secondsOf(this.timeline.placeAt(second));
    const { start } = next.playing;
    return next.secondsOf({ ...start, before: 0, ...(this.controls.begin === 'bar' ? { onset: 0 } : {}) });
  }

  private words({ tuning, pitch, assumed, isFree }: Playing): string {
    const { controls } = this;
    return [
      `${tuning}, a4 = ${pitch}`,
      ...(assumed === '' ? [] : [controls.text('assumed', assumed)]),
      ...(isFree ? [controls.text('free')] : []),
    ].join(' · ');
  }

  /** @param reading that of the page, which is A's: where it has become another, that goes on */
  offered(reading: string, readings: readonly ChoiceOffer[], tunings: readonly TuningOffer[]): void {
    const isOther = this.reading !== undefined && this.reading !== reading;
    this.reading = reading;
    this.controls.offer(reading, readings, tunings);
    if (isOther) this.goOn();
  }

  /** Which reading stands beneath, where the page was there before. */
  showBeneath(reading: string | null): void {
    this.controls.showBeneath(reading);
  }

  // ─── the loop ──────────────────────────────────────────────────────────────────────────────────────────────────

  private loopChanged(): void {
    const marked = this.stage.marked();
    const second = this.player.second;
    const bar = second === undefined ? marked?.bar : this.timeline?.barAt(second)?.number;
    if (this.controls.isLooping && bar !== undefined) this.controls.loopUsually(bar);
    this.showLoop();
    if (this.timeline === undefined || this.strings === undefined || second === undefined) return;
    this.player.play(new Course(this.timeline, second, this.loop()), this.strings);
  }

  private loop(): Stretch | undefined {
    const { bars } = this.controls;
    return bars && this.timeline?.between(bars.from, bars.to);
  }

  private showLoop(): void {
    const loop = this.loop();
    this.controls.showLoop(this.controls.bars === undefined || this.timeline === undefined || loop !== undefined);
    const within = loop === undefined ? [] : (this.timeline?.struckIn(loop) ?? []);
    this.stage.marks.frame('looped', new Set(within.flatMap(({ ids }) => ids)), '.measure');
  }

  // ─── what is seen ──────────────────────────────────────────────────────────────────────────────────────────────

  /** From frame to frame, as long as something is played. */
  private look(): void {
    const { course, second } = this.player;
    this.isLooking = course !== undefined && second !== undefined;
    if (course === undefined) return;
    if (second === undefined) {
      this.stop();
      return;
    }
    this.see(course.timeline.soundingAt(second));
    this.turn(course.timeline, second);
    requestAnimationFrame(() => this.look());
  }

  private see(notes: readonly PlayedNote[]): void {
    const ids = notes.flatMap((note) => note.ids).map((id) => this.shown(id));
    const seen = ids.join(' ');
    if (seen === this.seen) return;
    this.seen = seen;
    this.stage.marks.show('sounding', new Set(ids));
    this.stage.keyboard.press(notes);
  }

  /** The picture of a note of what is heard: B stands beneath where both are shown. */
  private shown(id: string): string {
    return this.controls.heard === 'b' && this.stage.hasTwo() ? beneath(id) : id;
  }

  /** Turns to the leaf that is played, and brings each bar into view when it begins. */
  private turn(timeline: Timeline, second: number): void {
    const bar = timeline.barAt(second);
    if (bar === undefined || bar === this.bar) return;
    this.bar = bar;
    if (bar.page !== this.stage.leaf()) this.stage.tell({ kind: 'turn', page: bar.page });
    const [first] = timeline.struckIn({ from: bar.at, until: bar.until });
    const [element] = first === undefined ? [] : this.stage.marks.of(this.shown(first.ids[0] ?? ''));
    if (element !== undefined) this.stage.follow(element);
  }
}
