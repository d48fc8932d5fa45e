/** What a change of the text reaches: the systems that are built again, and nothing else. */

import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../grammar/findings/finding';
import type { Analysis } from '../../server/document/analysis';
import { Document } from '../../server/document/document';
import { inTurns, type Turns } from '../../server/document/turns';
import type { SystemScore } from '../../server/score/score';
import { HEAD, scoreOf, sound } from '../helpers/music';

/** A piece in C; the third system shows rival readings, and the fourth draws the clefs again. */
const PIECE = `title "Prelude"
note n1  text "a note of the editor's"

system upper C1 lower F4 meter C
  dessus | 4 c5 d e f | 2 e5 c |
  basse  | 1 c3       | 1 c3   |
system
  dessus | 2 g4 e     | 1 d5   |
  basse  | 1 g2       | 1 g2   |
system
  dessus | 2 g4 <K: 2 e5 ; L: 4 e5 f> | 1 d5 |
  basse  | 1 g2                       | 1 g2 |
system upper C1 lower F4
  dessus | 2 e5 d     | 1 c5   |
  basse  | 1 g2       | 1 c3   |
system
  dessus | 1 c5 |||
  basse  | 1 c3 |||
`;

const TEXT = `${HEAD}${PIECE}`;

const opened = (text = TEXT): Document => {
  const document = new Document('prelude.bent');
  document.update(text);
  return document;
};

/** What an editor's change of some words makes anew. */
const changed = (document: Document, from: string | RegExp, to: string): Document['stats'] => {
  document.update(document.current?.tree.text.replace(from, to) ?? '');
  return document.stats;
};

const systemsOf = (analysis: Analysis | undefined, choice = 'written'): SystemScore[] =>
  analysis === undefined
    ? []
    : scoreOf(analysis, choice).pieces.flatMap((one) => one.systems.map(({ score }) => score));

describe('opening a text', () => {
  test('reads each lane once and builds each system once, the readings that part apart', () => {
    const { lexed, built } = opened().stats;
    const texts = TEXT.split('\n').filter((line) => line !== '');
    // Equal texts are read once; a lane's begins after its barline.
    expect(lexed).toBe(new Set(texts.map((line) => line.slice(line.indexOf('|') + 1))).size);
    // K takes what is written; L has the third system otherwise.
    expect(built).toBe(5 + 1);
  });

  test('readings share the systems in which they take the same', () => {
    const { current } = opened();
    const [written, ofL] = [systemsOf(current), systemsOf(current, 'L')];
    expect(ofL.map((one, index) => one === written[index])).toEqual([true, true, false, true, true]);
  });
});

describe('a change reaches', () => {
  test.each([
    ['an empty line', '\n'],
    ['a comment', '// from the facsimile\n'],
  ])('no system when %s is put at the top', (_, line) => {
    const document = opened();
    document.update(`${line}${TEXT}`);
    expect(document.stats).toEqual({ lexed: 0, built: 0 });
  });

  test('one system when a bar is put into it', () => {
    const document = opened();
    const last = systemsOf(document.current).at(-1);
    document.update(
      TEXT.replace('| 4 c5 d e f |', '| 4 c5 d e f | 1 c5 |').replace('| 1 c3       |', '| 1 c3 | rbar |'),
    );
    expect(document.stats).toEqual({ lexed: 2, built: 1 });
    expect(systemsOf(document.current).at(-1)).toBe(last);
    expect(scoreOf(document.current as Analysis).pieces[0]?.bars).toHaveLength(10);
  });

  test('one system when a mark is set', () => {
    expect(changed(opened(), '| 2 e5 c |', "| 2 e5'zz c |")).toEqual({ lexed: 1, built: 1 });
  });

  test('two systems when a tie leads over the end of the first', () => {
    expect(changed(opened(), '| 2 e5 c |', '| 2 e5 g= |')).toEqual({ lexed: 1, built: 2 });
  });

  test('in each reading the systems that an accidental reaches', () => {
    // The note before the system end has a sharp, which holds for its immediate repetition.
    expect(changed(opened(), '| 1 d5   |', '| 1 d#5   |').built).toBe(1 + 2);
  });

  test('the systems up to the next that draws the clef again', () => {
    expect(changed(opened(), 'system upper C1', 'system upper G2')).toEqual({ lexed: 1, built: 4 + 1 });
  });

  test('no system when the title, a note or what a source is called changes', () => {
    const document = opened();
    expect(changed(document, 'Prelude', 'Toccata')).toEqual({ lexed: 1, built: 0 });
    expect(changed(document, "editor's", "scribe's")).toEqual({ lexed: 1, built: 0 });
    expect(changed(document, 'a loose leaf', 'a bifolium')).toEqual({ lexed: 1, built: 0 });
    expect(document.current?.environment.title).toBe('Toccata');
  });

  test('where a witness is called otherwise, the lanes that cite it', () => {
    const document = opened();
    expect(changed(document, /\bL\b/g, 'M')).toEqual({ lexed: 2, built: 2 });
    expect(sound(document.current as Analysis, 'dessus', 'M')).toContain('e5 f5 d5');
  });

  test('all systems when a stave is declared', () => {
    expect(changed(opened(), 'voice basse lower', 'stave pedal\nvoice basse lower').built).toBe(5 + 1);
  });

  test('no system when it is taken back', () => {
    const document = opened();
    for (const text of [TEXT.replace('c5 d e f', 'c5 d e f#'), TEXT]) document.update(text);
    expect(document.stats).toEqual({ lexed: 0, built: 0 });
  });

  test('no system that moves', () => {
    const [head = '', ...systems] = TEXT.split(/^(?=system)/m);
    const document = opened();
    document.update([head, ...systems.slice(0, 2), systems[1], ...systems.slice(2)].join(''));
    expect(document.stats).toEqual({ lexed: 0, built: 0 });
  });
});

test('changes count in the text as it is', () => {
  const document = opened('system\n');
  document.update([
    { offset: 7, length: 0, text: '  basse | 1 c3 |\n' },
    { offset: 0, length: 6, text: 'system free' },
  ]);
  expect(document.current?.tree.text).toBe('system free\n  basse | 1 c3 |\n');
});

test('findings that neither change nor move are the same objects', () => {
  const document = opened(TEXT.replace('| 1 d5   |', '| 2 d5   |'));
  const short = (): Finding[] => document.current?.findings().filter(({ code }) => code === 'bar-too-short') ?? [];
  const before = short();
  expect(before).toHaveLength(1);
  changed(document, '| 1 c5 |||', "| 1 c5'zz |||");
  expect(short()[0]).toBe(before[0]);
});

const proofing = ({ current }: Document): ReturnType<Analysis['proofing']> => {
  if (current === undefined) throw new Error('there is no version');
  return current.proofing();
};

describe('an update in turns', () => {
  /** A clock on which everything takes six milliseconds. */
  const slow = (): Turns & { pauses: number } => ({
    pauses: 0,
    now: (
      (time) => () =>
        (time += 6)
    )(0),
    async pause() {
      this.pauses++;
    },
  });

  test('lets others have a turn and gives the same', async () => {
    const document = new Document('prelude.bent');
    const turns = slow();
    const analysis = await document.updateInTurns(TEXT, turns, { isCancellationRequested: false });
    expect(turns.pauses).toBeGreaterThan(5);
    expect(analysis).toBe(document.current);
    expect(analysis?.findings()).toEqual(opened().current?.findings());
  });

  test('that is cancelled leaves the version before it whole, and keeps what it built', async () => {
    const document = opened();
    const before = document.current;
    const token = { isCancellationRequested: false };
    const turns = slow();
    const work = document.updateInTurns(TEXT.replace('stave lower', 'stave lower lines 6'), turns, token);
    while (document.stats.built < 2) await turns.pause();
    token.isCancellationRequested = true;
    expect(await work).toBeUndefined();
    const { built } = document.stats;
    expect(document.current).toBe(before);
    expect(changed(document, 'stave lower', 'stave lower lines 6').built).toBe(6 - built);
  });

  test('leaves findings to be made in turns as well, the same that are made at once', async () => {
    const systems = 'system\n  dessus | 4 c5 d e f | 1 d5 |\n  basse | 1 c3 | g2 |\n'.repeat(1000);
    const long = TEXT.replaceAll('|||', '|').concat(systems);
    const document = opened(long);
    const turns = slow();
    const findings = await inTurns(proofing(document), turns, () => false);
    // Its text is looked over in pieces, and so are its names; each check is a piece by itself.
    expect(turns.pauses).toBeGreaterThan(10);
    expect(document.current?.findings()).toBe(findings);
    expect(findings).toEqual(opened(long).current?.findings());
  });

  test('gives way to a later one', async () => {
    const document = opened();
    const token = { isCancellationRequested: false };
    const first = document.updateInTurns(TEXT.replace('Prelude', 'Toccata'), slow(), token);
    document.update(TEXT.replace('Prelude', 'Ricercar'));
    expect(await first).toBeUndefined();
    expect(document.current?.environment.title).toBe('Ricercar');
  });
});

/** Lets the collector take what only this turn held. */
const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('a long session', () => {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  const heap = async (): Promise<number> => {
    await turn();
    collect();
    return process.memoryUsage().heapUsed;
  };
  const MB = 2 ** 20;

  test('lets go of events and builds them again when they are asked for', async () => {
    const document = opened();
    const text = (): string => JSON.stringify(systemsOf(document.current, 'L'));
    const before = text();
    const events = systemsOf(document.current, 'L').map(({ voices }) => new WeakRef(voices));
    await heap();
    await heap();
    expect(events.some((one) => one.deref() === undefined)).toBe(true);
    expect(text()).toBe(before);
  });

  test('of 500 changes to 200 kB neither fills the memory nor keeps what is gone', { timeout: 120_000 }, async () => {
    const system = (number: number): string => `system
  dessus | ${'4 c5 d e f | 8 g a b c5 4 d5 e | '.repeat(5)}
  basse  | ${'1 c3 | d | '.repeat(5)}
  basse L | 1 d3 "${number}" | ${'| '.repeat(9)}
`;
    const many = Array.from({ length: 200_000 / system(1000).length }, (_, number) => system(number));
    const document = new Document('long.bent');
    let after50 = 0;
    for (let edit = 0; edit < 500; edit++) {
      const at = (edit * 37) % many.length;
      // Each system becomes one that was never there.
      many[at] = system(1000 + edit);
      document.update([HEAD, ...many].join(''));
      if (edit % 25 === 0) document.current?.findings();
      await turn();
      if (edit === 50) after50 = await heap();
    }
    expect((await heap()) - after50).toBeLessThan(10 * MB);
    const { systems: kept, scores, carries, trees } = document.sizes;
    const live = new Set(document.current?.tree.blocks.map(({ contents }) => contents)).size;
    for (const size of [kept, carries]) expect(size).toBeLessThan(2 * live);
    // Two readings of a system part at most.
    expect(scores).toBeLessThan(2 * 2 * live);
    // Two lanes each.
    expect(trees).toBeLessThan(2 * 2 * live);
  });
});
