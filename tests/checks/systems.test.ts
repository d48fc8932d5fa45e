/** Checks that go from system to system, and the one switch for counsel. */
import { describe, expect, it } from 'vitest';
import { catalogue, type FindingCode } from '../../grammar/findings/catalogue';
import { parseFile } from '../../grammar/parse';
import { unknownNames } from '../../server/checks/names';
import { keepingLooks, overSystems, problemIn, type View } from '../../server/checks/systems';
import { type AnalysisOptions, analyse } from '../../server/document/analysis';
import { choiceOf } from '../../server/readings/choices';
import { buildScore } from '../../server/score/build';
import { buildEnvironment } from '../../server/score/environment';
import type { Piece, Score } from '../../server/score/score';
import { HEAD } from '../helpers/music';

const MUSIC = `${HEAD}system upper C1 lower F4 meter C
 dessus | 1 c5 | d |
system
 dessus | 1 e5 |
system
 dessus | 1 f5 |||
`;

interface Made {
  readonly tree: ReturnType<typeof parseFile>;
  readonly environment: ReturnType<typeof buildEnvironment>;
  readonly score: Score;
}

function made(text: string): Made {
  const tree = parseFile(text);
  const environment = buildEnvironment('a.bent', tree, []);
  const choice = choiceOf(environment, 'written');
  if (choice === undefined) throw new Error('every text can be read as written');
  return { tree, environment, score: buildScore('a.bent', tree, environment, choice) };
}

/** A score of which one system is made anew and the others stay. */
function withNew(score: Score, index: number): Score {
  const anew = (piece: Piece): Piece => ({
    ...piece,
    systems: piece.systems.map((system, i) => (i === index ? { ...system, score: { ...system.score } } : system)),
  });
  return { ...score, pieces: score.pieces.map(anew) };
}

describe('a look at one system after another', () => {
  const seen: View[] = [];
  const look = overSystems(
    keepingLooks([
      (view) => {
        seen.push(view);
        const event = view.score.voices[0]?.events[0];
        if (event === undefined) return [];
        return [
          problemIn({
            code: 'ledger-lines',
            at: event.source,
            slots: {},
            bar: 0,
            bars: [
              { system: -1, bar: 0 },
              { system: 0, bar: 0 },
            ],
          }),
        ];
      },
    ]),
  );
  const file = made(MUSIC);
  const first = look.run(file);

  it('sees each with the one before it', () => {
    expect(seen.map(({ before }) => before)).toEqual([
      undefined,
      ...file.score.pieces.flatMap(({ systems }) => systems.slice(0, 2).map(({ score }) => score)),
    ]);
  });
  it('tells bars by the numbers of the piece and places by the blocks of the file', () => {
    expect(first.map(({ problem, block }) => [problem.slots.bar, problem.slots.bars, block])).toEqual([
      ['1', 'bar 1', 1],
      ['3', 'bars 1-3', 2],
      ['4', 'bars 3-4', 3],
    ]);
  });
  it('is not repeated while a system and its neighbour stay the same', () => {
    seen.length = 0;
    expect(look.run(file)).toEqual(first);
    expect(seen).toHaveLength(0);
    // A new middle system is looked at, and the one that follows it.
    look.run({ ...file, score: withNew(file.score, 1) });
    expect(seen).toHaveLength(2);
  });
  it('tells what it found as the same object while nothing of it has changed', () => {
    const again = look.run(file);
    expect(again.every((placed, index) => placed === first[index])).toBe(true);
    const upbeat = made(MUSIC.replace('1 c5 | d |', '4 c5 | 1 d | 1 d |'));
    expect(look.run(upbeat).map(({ problem }) => problem.slots.bar)).toEqual(['0', '3', '4']);
  });
  it('is repeated where the practice of the piece changes', () => {
    seen.length = 0;
    look.run({ ...file, score: { ...file.score, choice: { ...file.score.choice, accidentals: 'bar' } } });
    expect(seen).toHaveLength(3);
  });
});

describe('a check of names', () => {
  it('tells what it found as the same object while the block stays', () => {
    const slip = made(`${MUSIC.replace('1 f5 |||', '1 f5*n9 |||')}`);
    const [before, after] = [unknownNames.run(slip), unknownNames.run(slip)];
    expect(before.map(({ problem }) => problem.code)).toEqual(['unknown-note']);
    expect(after[0]).toBe(before[0]);
  });
});

describe('fractions beyond any music', () => {
  it('stop no check', () => {
    // Tuplets in tuplets, each nest over a prime of its own: the fraction of what follows has hundreds of digits.
    const nest = (prime: number, octave: number): string =>
      `${`{${prime}in2 `.repeat(30)}128 c#${octave} d${'}'.repeat(30)} c`;
    const line = (octave: number): string =>
      [53, 59, 61, 67, 71, 73, 79, 83, 89, 97].map((prime) => nest(prime, octave)).join(' ');
    const text = `${HEAD}system upper C1 lower F4 meter C\n dessus | ${line(5)} |||\n basse | ${line(3)} |||\n`;
    expect(() => analyse('a.bent', parseFile(text)).findings()).not.toThrow();
  });
});

describe('counsel', () => {
  const PARALLEL = `${HEAD}system upper C1 lower F4 meter C\n dessus | 2 f5 e |||\n basse | 2 f3 e |||\n`;
  const found = (options: AnalysisOptions): FindingCode[] =>
    analyse('a.bent', parseFile(PARALLEL), [], options)
      .findings()
      .map(({ code }) => code);
  it('is given as a rule and left out by one switch', () => {
    expect(found({})).toContain('consecutive-perfects');
    expect(found({ counsel: false })).not.toContain('consecutive-perfects');
    expect(found({ counsel: false })).toContain('unused-declaration');
  });
  it('is given where its code has a level of its own', () => {
    expect(found({ counsel: false, levels: { 'consecutive-perfects': 'warning' } })).toContain('consecutive-perfects');
  });
  it('is never graver than a hint', () => {
    const counsel = Object.values(catalogue).filter((entry) => entry.counsel);
    expect(counsel.length).toBeGreaterThan(5);
    expect(counsel.filter(({ level }) => level !== 'hint')).toEqual([]);
  });
});
