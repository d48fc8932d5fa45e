/** Work that waits until its file has been quiet for a while. */

/** Runs work after some time; what it gives calls it off. */
export type Later = (milliseconds: number, work: () => void) => () => void;

export class Waiting {
  /** By file what calls off its work. */
  private readonly calls = new Map<string, () => void>();

  constructor(
    private readonly later: Later,
    private readonly milliseconds: number,
  ) {}

  /** Begins to wait, from the beginning if the file is waiting already. */
  start(uri: string, work: () => void): void {
    this.stop(uri);
    const run = (): void => {
      this.calls.delete(uri);
      work();
    };
    this.calls.set(uri, this.later(this.milliseconds, run));
  }

  stop(uri: string): void {
    this.calls.get(uri)?.();
    this.calls.delete(uri);
  }
}
