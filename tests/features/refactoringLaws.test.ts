/** Whatever is offered for whatever is selected in the samples leaves their music as it is, in every reading. */
import { describe, expect, it } from 'vitest';
import { nodeHost } from '../../server/cli/host';
import type { Analysis } from '../../server/document/analysis';
import { positionOfOffset } from '../../server/features/place';
import { refactorings } from '../../server/features/refactorings';
import type { Score } from '../../server/score/score';
import { addressOf, eventsOf, type PlacedEvent } from '../../server/score/walk';
import { Workspace } from '../../server/workspace/workspace';
import { withEdits } from '../helpers/editor';
import { sounding } from '../helpers/music';
import { sampleNames, samplePath, sampleText } from '../helpers/samples';

/** One selection in so many is tried: all of them take minutes. */
const STRIDE = Number(process.env.STRIDE ?? 97);
const LONGEST = 4;

/** Selections of a few words in the lines of lanes. */
function selections(text: string): (readonly [start: number, end: number])[] {
  return [...text.matchAll(/^ +\w.*\|.*$/gm)].flatMap(({ 0: line, index }) => {
    const words = [...line.matchAll(/\S+/g)].map((word) => [index + word.index, index + word.index + word[0].length]);
    return words.flatMap(([start = 0], at) =>
      words.slice(at, at + LONGEST).map(([, end = 0]) => [start, end] as const),
    );
  });
}

/** Time and pitch of every note of a score. @param byVoice whether it matters who sings it */
const sung = (score: Score | undefined, byVoice: boolean): string =>
  (score?.pieces ?? [])
    .flatMap((piece) => [...eventsOf(piece)].flatMap((placed) => notesOf(placed, byVoice)))
    .sort()
    .join('\n');

const notesOf = ({ event, system, onset }: PlacedEvent, byVoice: boolean): string[] =>
  event.members.map((note) => {
    const [from, lasts] = [onset, event.duration].map(({ n, d }) => `${n}/${d}`);
    const [page] = addressOf(system, event).split('/');
    return `${byVoice ? event.voice : ''} ${page} ${from} ${lasts} ${sounding(note)}`;
  });

/** Errors and warnings. That a witness is cited no more is true of whatever is begun. */
const faults = (analysis: Analysis): string[] =>
  analysis
    .findings()
    .filter(({ level, code }) => (level === 'error' || level === 'warning') && code !== 'witness-falls-silent')
    .map(({ code }) => code)
    .sort();

const told = (analysis: Analysis, byVoice: boolean): string =>
  [...faults(analysis), ...analysis.choices.map((choice) => sung(analysis.score(choice), byVoice))].join('\n\n');

describe.each(sampleNames)('%s', (name) => {
  it('says the same after any refactoring', () => {
    const file = samplePath(name);
    const text = sampleText(name);
    const workspace = new Workspace(nodeHost().includes(file));
    const before = workspace.update(file, text);
    const [byVoice, byAnybody] = [told(before.analysis, true), told(before.analysis, false)];
    for (const [index, [start, end]] of selections(text).entries()) {
      if (index % STRIDE !== 0) continue;
      const range = { start: positionOfOffset(before.tree, start), end: positionOfOffset(before.tree, end) };
      for (const { title, edit } of refactorings(before, range)) {
        const after = workspace.update(file, withEdits(text, edit?.changes?.[file] ?? []));
        const isGiven = title.startsWith('Give');
        const where = `${text.slice(start, end)} (${range.start.line + 1}): ${title}`;
        expect(told(after.analysis, !isGiven), where).toBe(isGiven ? byAnybody : byVoice);
      }
    }
  });
});
