/** Whatever is offered for whatever is selected in the samples leaves their music as it is, in every reading. */
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { nodeHost } from '../../server/cli/host';
import { positionOfOffset } from '../../server/features/place';
import { refactorings } from '../../server/features/refactorings';
import type { Score } from '../../server/score/score';
import { addressOf, eventsOf } from '../../server/score/walk';
import { type Project, projectOf } from '../../server/workspace/project';
import { withEdits } from '../helpers/editor';
import { sounding } from '../helpers/music';
import { sampleNames, sampleText } from '../helpers/samples';

const FOLDER = join(import.meta.dirname, '../../samples');

/** One selection in so many is tried: all of them take a quarter of an hour. */
const STRIDE = Number(process.env.STRIDE ?? 211);

function opened(name: string, text: string): Project {
  const file = join(FOLDER, name);
  return projectOf(nodeHost().includes(file), file, text);
}

/** Selections of one to three words in the lines of lanes. */
function* selections(text: string): Generator<readonly [start: number, end: number]> {
  for (const { 0: line, index } of text.matchAll(/^ +\w.*\|.*$/gm)) {
    const words = [...line.matchAll(/\S+/g)].map((word) => [index + word.index, index + word.index + word[0].length]);
    for (const [at, [start]] of words.entries()) {
      for (const [, end] of words.slice(at, at + 3)) yield [start as number, end as number];
    }
  }
}

/** Time and pitch of every note of a score. @param byVoice whether it matters who sings it */
const sung = (score: Score | undefined, byVoice: boolean): string =>
  (score?.pieces ?? [])
    .flatMap((piece) =>
      [...eventsOf(piece)].flatMap(({ event, system, onset }) =>
        event.members.map(
          (note) =>
            `${byVoice ? event.voice : ''} ${onset.n}/${onset.d} ${event.duration.n}/${event.duration.d} ${sounding(note)} ${addressOf(system, event).slice(0, 4)}`,
        ),
      ),
    )
    .sort()
    .join('\n');

const faults = ({ analysis }: Project): number => analysis.findings().filter(({ level }) => level === 'error').length;

describe.each(sampleNames)('%s', (name) => {
  it('says the same after any refactoring', () => {
    const text = sampleText(name);
    const before = opened(name, text);
    let count = 0;
    for (const [start, end] of selections(text)) {
      if (count++ % STRIDE !== 0) continue;
      const range = { start: positionOfOffset(before.tree, start), end: positionOfOffset(before.tree, end) };
      for (const { title, edit } of refactorings(before, range)) {
        const after = opened(name, withEdits(text, edit?.changes?.[before.file] ?? []));
        const where = `${text.slice(start, end)} (${range.start.line + 1}): ${title}`;
        expect(faults(after), where).toBe(faults(before));
        const byVoice = !title.startsWith('Give');
        for (const choice of before.analysis.choices) {
          expect(sung(after.analysis.score(choice), byVoice), where).toBe(sung(before.analysis.score(choice), byVoice));
        }
      }
    }
  });
});
