/** Work that waits until nothing has asked for it for some time. */
import type { Disposable } from 'vscode';

export class Delayed implements Disposable {
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly milliseconds: number,
    private readonly work: () => void,
  ) {}

  ask(): void {
    this.dispose();
    this.timer = setTimeout(this.work, this.milliseconds);
  }

  dispose(): void {
    clearTimeout(this.timer);
  }
}
