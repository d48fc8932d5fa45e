import { describe, expect, it } from 'vitest';
import { type Box, boxesIn, drawn, overlap } from '../helpers/drawn';
import { sampleAnalysis, sampleNames } from '../helpers/samples';

describe('probe', () => {
  it.each(sampleNames)('%s', async (name) => {
    const score = sampleAnalysis(name).score('written');
    if (score === undefined) throw new Error('');
    for (const [p, page] of (await drawn(score)).entries()) {
      const boxes = await boxesIn(page);
      for (let i = 0; i < boxes.length; i++)
        for (let j = i + 1; j < boxes.length; j++) {
          const [a, b] = [boxes[i] as Box, boxes[j] as Box];
          const o = overlap(a, b);
          if (o > 0.1 && a.id !== b.id) console.log(name, p + 1, o.toFixed(2), a.what, a.id, '|', b.what, b.id);
        }
    }
    expect(1).toBe(1);
  });
});
