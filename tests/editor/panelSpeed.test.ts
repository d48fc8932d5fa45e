/** How long after a key is pressed the score panel shows what it does, in a long score: everything between is in it. */
import { expect, it } from 'vitest';
import { generateScore } from '../bench/generateScore';
import { median } from '../bench/measure';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

const ROUNDS = 12;
/** What is wished for, in milliseconds. */
const WISHED = 300;
/** Other work on the machine may make everything so many times as slow. */
const PATIENCE = 5;

const SCORE = generateScore(100_000);
/** All that stands before the place of an accidental: behind the letter of the first note that has none. */
const [BEFORE = ''] = /^ {2}dessus \|.*?(?<![a-z'{<])[cdega](?=\d? )/m.exec(SCORE) ?? [];

describeInEditor('an edit of a score of 100 kB', () => {
  it('is drawn in the panel', { timeout: 180_000 }, async () => {
    const bench = await Workbench.open({ files: { 'long.bent': SCORE } });
    try {
      await bench.openFile('long.bent');
      await bench.run('bentside.showPanel');
      await bench.view().locator('#score svg').first().waitFor({ timeout: 60_000 });
      await bench.run('workbench.action.focusFirstEditorGroup');
      await bench.caretBehind(BEFORE);
      await bench.view().locator('.at-caret').waitFor();
      const times: number[] = [];
      for (let round = 0; round < ROUNDS; round++) {
        times.push(await timeOf(bench, round % 2 === 0 ? '#' : 'Backspace'));
      }
      const all = times.map(Math.round).join(', ');
      console.info(`from a key to the drawn page: ${all} ms; median ${Math.round(median(times))}, wished < ${WISHED}`);
      await bench.picture('panel-long');
      expect(median(times)).toBeLessThan(WISHED * PATIENCE);
    } finally {
      await bench.close();
    }
  });
});

/** Milliseconds from a key to the frame of the browser in which the page is another. */
async function timeOf(bench: Workbench, key: string): Promise<number> {
  const score = bench.view().locator('#score');
  const window = bench.page.locator('body');
  await score.evaluate(noteDrawing);
  await window.evaluate(noteKey);
  await bench.page.keyboard.press(key);
  return (await score.evaluate(noted)) - (await window.evaluate(noted));
}

/** These run in the page. The clock is the machine's, since the panel's frame has an origin of its own. */
declare class MutationObserver {
  constructor(seen: () => void);
  observe(element: unknown, wish: { childList: boolean; subtree: boolean }): void;
  disconnect(): void;
}
declare const requestAnimationFrame: (work: () => void) => void;
declare const addEventListener: (name: string, seen: () => void, wish: { capture: boolean; once: boolean }) => void;
declare global {
  var moment: Promise<number>;
}

const noteDrawing = (score: unknown): void => {
  globalThis.moment = new Promise((resolve) => {
    // The mark of the caret is an attribute: that it moves is no drawing.
    const observer = new MutationObserver(() => {
      observer.disconnect();
      requestAnimationFrame(() => resolve(Date.now()));
    });
    observer.observe(score, { childList: true, subtree: true });
  });
};
const noteKey = (): void => {
  globalThis.moment = new Promise((resolve) =>
    addEventListener('keydown', () => resolve(Date.now()), { capture: true, once: true }),
  );
};
const noted = (): Promise<number> => globalThis.moment;
