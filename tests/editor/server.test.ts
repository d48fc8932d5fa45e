/** The language server dies while the editor goes on. */
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

const AIR = `bentside 1
stave upper
voice dessus upper
page "2v"
system upper C1 meter C
  dessus | 4 c5 d e f | 1 g4 |||
`;

/** Until a worker is taken for dead, and the next one has started. */
const LONGEST = 60_000;

describeInEditor('a language server that dies without a word', () => {
  let bench: Workbench;

  beforeAll(async () => {
    bench = await Workbench.open({ files: { 'air.bent': AIR } });
    await bench.openFile('air.bent');
  });
  afterEach(({ task }) => bench?.keepFailure(task));
  afterAll(() => bench?.close());

  it('leaves the colours where they are, and is started again', { timeout: 3 * LONGEST }, async () => {
    await bench.caretBehind('4 c5');
    await bench.status('bar 1: 4 of 4').waitFor();
    await bench.endWorker('server.web.js');
    await bench.caretBehind('1 g4');
    expect(await bench.colour('4')).not.toBe(await bench.colour('dessus'));
    await bench.status('bar 2: 4 of 4').waitFor({ timeout: LONGEST });
  });

  it('says so when it dies again and again, and is started again by the user', { timeout: 6 * LONGEST }, async () => {
    for (let times = 0; times < 3; times++) await bench.endWorker('server.web.js', LONGEST);
    const told = bench.page.locator('.notification-list-item', {
      hasText: 'The language server of Bentside has stopped',
    });
    await told.first().waitFor({ timeout: LONGEST });
    expect(await told.count()).toBe(1);
    await bench.picture('server-stopped');
    await told.locator('.monaco-button', { hasText: 'Restart' }).click();
    await bench.caretBehind('4 c5');
    await bench.status('bar 1: 4 of 4').waitFor({ timeout: LONGEST });
  });
});
