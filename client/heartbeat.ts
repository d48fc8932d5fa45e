/** Asks the language server now and then whether it is still there: of a web worker that dies nobody is told. */

/** Milliseconds between two questions. */
const BEAT = 5_000;
/** After so many beats without an answer it has died … */
const MOST_MISSED = 6;
/** … or, where it has been given long work, after so many. */
const MOST_MISSED_AT_WORK = 120;

export class Heartbeat {
  private timer: ReturnType<typeof setInterval> | undefined;
  private isAsked = false;
  /** Beats are counted and not time: after a computer has slept one of them comes at once, and the answer with it. */
  private missed = 0;

  constructor(
    private readonly ask: () => Promise<unknown>,
    /** Whether the server has been given work during which it cannot answer for long. */
    private readonly isAtWork: () => boolean,
    private readonly died: () => void,
  ) {}

  /** The server is starting: an answer is expected. */
  begin(): void {
    this.end();
    this.isAsked = true;
    this.timer = setInterval(() => this.beat(), BEAT);
  }

  answered(): void {
    this.isAsked = false;
    this.missed = 0;
  }

  /** Nothing is expected any more. */
  end(): void {
    clearInterval(this.timer);
    this.answered();
  }

  private beat(): void {
    if (!this.isAsked) {
      this.isAsked = true;
      const answered = (): void => this.answered();
      void this.ask().then(answered, answered);
      return;
    }
    this.missed++;
    if (this.missed < (this.isAtWork() ? MOST_MISSED_AT_WORK : MOST_MISSED)) return;
    this.end();
    this.died();
  }
}
