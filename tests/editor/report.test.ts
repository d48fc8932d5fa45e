/** The critical report in a real browser, opened from disk with no network: what it fetches, how it prints, who can read it. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { reportPage } from '../../server/pages/report';
import { reportOf } from '../../server/readings/report';
import { scoreOf } from '../helpers/music';
import { sampleAnalysis } from '../helpers/samples';
import { FromDisk, overlapsInPage, PAPER } from './fromDisk';
import { describeInEditor } from './inEditor';

for (const name of ['overture', 'gigue', 'prelude'])
  describeInEditor(`the critical report of the ${name}`, () => {
    let report: FromDisk;
    beforeAll(async () => {
      const analysis = sampleAnalysis(`${name}.bent`);
      report = await FromDisk.open(reportPage(reportOf(scoreOf(analysis), (choice) => analysis.score(choice))));
    });
    afterAll(() => report.close());

    it('asks for nothing but itself, and nothing goes wrong in it', () => {
      expect([report.asked, report.errors]).toEqual([['page.html'], []]);
    });
    it('prints on A4, nothing wider than the paper and nothing over anything else', async () => {
      expect((await report.leaves())[0]).toEqual({ width: 210, height: 297 });
      await report.asOnPaper();
      expect(await report.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PAPER.width);
      expect(await report.page.evaluate(overlapsInPage)).toEqual([]);
    });
    it('keeps each row of its tables on one leaf', async () => {
      const rows = report.page.locator('tbody tr');
      expect(await rows.count()).toBeGreaterThan(10);
      const broken = await rows.evaluateAll(
        (all, height) =>
          all.filter(
            (one) => getComputedStyle(one).breakInside !== 'avoid' || one.getBoundingClientRect().height > height,
          ).length,
        PAPER.height,
      );
      expect(broken).toBe(0);
    });
    it('can be read by people who do not see it: axe finds nothing wrong', async () => {
      await report.page.emulateMedia({ media: 'screen' });
      expect(await report.violations()).toEqual([]);
    });
  });
