/** A page of HTML as its user has it: opened from disk in a browser that has no network. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';

const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';

declare const axe: { run(options: object): Promise<{ readonly violations: readonly { readonly id: string }[] }> };

export class FromDisk {
  /** The names of the files that were asked for, and what went wrong in the page. */
  readonly asked: string[] = [];
  readonly errors: string[] = [];

  private constructor(
    private readonly browser: Browser,
    private readonly folder: string,
    readonly page: Page,
  ) {
    page.on('request', (request) => this.asked.push(request.url().replace(/^.*\//, '')));
    page.on('pageerror', ({ message }) => this.errors.push(message));
    page.on('console', (message) => {
      if (message.type() === 'error') this.errors.push(message.text());
    });
  }

  /** @param prepared runs in the page before its own script */
  static async open(content: string, prepared?: () => void): Promise<FromDisk> {
    const folder = mkdtempSync(join(tmpdir(), 'bentside-page-'));
    const file = join(folder, 'page.html');
    writeFileSync(file, content);
    const args = ['--no-sandbox', '--disable-gpu'];
    const browser = await chromium.launch({ executablePath: CHROMIUM, headless: true, args });
    const context = await browser.newContext({ offline: true });
    const opened = new FromDisk(browser, folder, await context.newPage());
    if (prepared !== undefined) await opened.page.addInitScript(prepared);
    await opened.page.goto(`file://${file}`);
    return opened;
  }

  async close(): Promise<void> {
    await this.browser.close();
    rmSync(this.folder, { recursive: true });
  }

  /** The rules of accessibility that axe finds broken. @param rules as a rule all */
  async violations(...rules: readonly string[]): Promise<string[]> {
    await this.page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
    return this.page.evaluate(
      async (only) => (await axe.run(only.length === 0 ? {} : { runOnly: only })).violations.map(({ id }) => id),
      rules,
    );
  }

  /** As it is printed: the sizes of its leaves in millimetres. */
  async leaves(): Promise<readonly { readonly width: number; readonly height: number }[]> {
    const pdf = (await this.page.pdf({ preferCSSPageSize: true })).toString('latin1');
    const count = pdf.match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;
    const [, width = '0', height = '0'] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf) ?? [];
    const inMillimetres = (points: string): number => Math.round((Number(points) / 72) * 25.4);
    return Array.from({ length: count }, () => ({ width: inMillimetres(width), height: inMillimetres(height) }));
  }

  /** The page laid out as for paper between its margins. */
  async asOnPaper(): Promise<void> {
    await this.page.emulateMedia({ media: 'print' });
    await this.page.setViewportSize({ width: PAPER.width, height: PAPER.height });
  }
}

/** A4 between the margins of our pages, 178 by 269 millimetres, in the browser's units of a 96th of an inch. */
export const PAPER = { width: Math.floor((178 / 25.4) * 96), height: Math.floor((269 / 25.4) * 96) };

/** Runs in the page: words, pictures and tables that run into one another, each pair in words. */
export function overlapsInPage(): string[] {
  const boxes: { readonly says: string; readonly box: DOMRect; readonly of: Element }[] = [];
  const isFolded = (of: Element): boolean => of.closest('details:not([open]) > :not(summary)') !== null;
  for (const of of document.querySelectorAll('h1, h2, h3, h4, p, li, figcaption, summary, caption, th, td, dt, dd')) {
    if (isFolded(of)) continue;
    const range = document.createRange();
    range.selectNodeContents(of);
    for (const box of range.getClientRects()) boxes.push({ says: (of.textContent ?? '').slice(0, 40), box, of });
  }
  for (const of of document.querySelectorAll('figure > svg, svg.strings')) {
    const box = of.getBoundingClientRect();
    if (!isFolded(of)) boxes.push({ says: of.getAttribute('aria-label') ?? 'strings', box, of });
  }
  boxes.sort((a, b) => a.box.top - b.box.top);
  const found: string[] = [];
  boxes.forEach((a, index) => {
    for (const b of boxes.slice(index + 1)) {
      if (b.box.top > a.box.bottom - 2) break;
      const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
      const down = Math.min(a.box.bottom, b.box.bottom) - b.box.top;
      if (across > 2 && down > 2 && !a.of.contains(b.of) && !b.of.contains(a.of)) found.push(`${a.says} / ${b.says}`);
    }
  });
  return found;
}
