import { describe, expect, it } from 'vitest';
import * as library from '../../server/library';
import { memoryFiles } from '../helpers/memoryFiles';
import { bentside, memoryHost } from '../helpers/memoryHost';

const { align, exportMusicXml, findingOf, helpOf, mend, proof, score, time, timeline } = library;

const SCORE = `bentside 1
source K "Thornmere Keyboard Book"
source L "A loose leaf"
reading plain "As the loose leaf has it"
  takes L
voice dessus lines 5
system  dessus G2  meter C
  dessus | 1 c5 | <K: 1 d ; L: 2 e f> |
`;

/** A bar of five crotchets where the meter asks for four. */
const LONG = SCORE.replace('1 c5', '1 c5 4 d');

describe('the library', () => {
  it('proofs a text and says what it can be read as', () => {
    expect(proof(SCORE)).toEqual({ findings: [], readings: ['written', 'plain', 'K', 'L'] });
  });

  it('gives findings their place, sentence and level', () => {
    const [finding] = proof(LONG, { file: 'a.bent' }).findings;
    expect(finding).toMatchObject({ level: 'error', file: 'a.bent', range: { start: { line: 8 } } });
    expect(finding?.message).toMatch(/^[A-Z“].*\.$/);
    expect(helpOf(finding?.code ?? '')?.level).toBe('error');
    expect(helpOf('toString')).toBeUndefined();
  });

  it('takes other levels, and leaves out what is to be ignored', () => {
    const wrong = LONG;
    const code = proof(wrong).findings[0]?.code;
    if (code === undefined) throw new Error('nothing found');
    expect(proof(wrong, { levels: { [code]: 'hint' } }).findings[0]?.level).toBe('hint');
    expect(proof(wrong, { levels: { [code]: 'ignore' } }).findings.map((one) => one.code)).not.toContain(code);
  });

  it('reads includes from the host it is given, and refuses them without one', () => {
    const text = SCORE.replace('source K "Thornmere Keyboard Book"', 'include "house.bent"');
    const host = memoryFiles({ 'house.bent': 'bentside 1\nsource K "Thornmere Keyboard Book"\n' });
    expect(proof(text, { host }).findings).toEqual([]);
    expect(proof(text).findings.map(({ code }) => code)).toContain('include-refused');
  });

  it('builds the score of a reading, and knows none that is not declared', () => {
    const notes = (reading: string) =>
      score(SCORE, { reading }).pieces.flatMap((piece) =>
        [...library.eventsOf(piece)].map(({ event }) => event.address),
      );
    expect(notes('written')).toHaveLength(2);
    expect(notes('plain')).toHaveLength(3);
    expect(() => score(SCORE, { reading: 'french' })).toThrow(
      new RangeError('no reading “french”, but written, plain, K, L'),
    );
  });

  it('gives exact times', () => {
    const events = timeline(score(SCORE, { reading: 'L' })).timeline?.pieces[0]?.events ?? [];
    const whole = time.sum(events.flatMap(({ duration }) => time.parseTime(duration) ?? []));
    expect(time.format(whole)).toBe('2');
  });

  it('exports, and its problems can be told with their places', () => {
    const broken = score(LONG, { file: 'a.bent' });
    const { text, problems } = exportMusicXml(broken, { clefs: 'source', leaveGaps: false });
    expect(text).toBe('');
    expect(problems.map((problem) => findingOf(broken, problem))).toMatchObject([
      { code: 'export-broken-bar', level: 'error', file: 'a.bent' },
    ]);
  });

  it('takes the source’s clefs and leaves no gaps where no options are given', () => {
    const plain = { clefs: 'source', leaveGaps: false } as const;
    const of = score(SCORE, { reading: 'K' });
    const { exportMei, exportMidi, exportMxl } = library;
    for (const make of [exportMusicXml, exportMxl, exportMei, exportMidi]) expect(make(of)).toEqual(make(of, plain));
    expect(exportMusicXml(of).text).toContain('<sign>G</sign>');
    expect(exportMusicXml(score(LONG)).text).toBe('');
  });

  it('says which function and which argument was given something else', async () => {
    // ECMA-262, 20.5.5.5: a TypeError says that an argument has a type that is not expected.
    const wrong = (call: () => unknown, message: string) => expect(call).toThrow(new TypeError(message));
    const bad = (value: unknown) => value as never;
    wrong(() => proof(bad(undefined)), 'proof: the argument “text” must be a text, not undefined');
    wrong(() => proof(SCORE, bad(null)), 'proof: the argument “options” must be an object, not null');
    wrong(() => proof(SCORE, bad({ file: 3 })), 'proof: the argument “options.file” must be a text, not number');
    wrong(() => align(bad(7)), 'align: the argument “text” must be a text, not number');
    wrong(
      () => exportMusicXml(bad(SCORE)),
      'exportMusicXml: the argument “of” must be a score, as score() gives it, not string',
    );
    wrong(
      () => exportMusicXml(score(SCORE), bad({ clefs: 'alto' })),
      'exportMusicXml: the argument “options.clefs” must be “source” or “modern”, not string',
    );
    const of = score(SCORE);
    wrong(() => library.eventsOf(bad(of)), 'eventsOf: the argument “piece” must be a piece of a score, not object');
    wrong(
      () => library.addressOf(bad(of), bad(5)),
      'addressOf: the argument “system” must be a system of a piece, not object',
    );
    wrong(
      () => library.edited(SCORE, bad([{ at: 3 }])),
      'edited: the argument “changes” must be a list of changes, not a list',
    );
    wrong(
      () => library.tuningByWords(of.environment, bad(4), 415),
      'tuningByWords: the argument “words” must be a text, not number',
    );
    wrong(
      () => library.tuningByWords(of.environment, 'equal', bad('415')),
      'tuningByWords: the argument “hertz” must be a number of hertz, not string',
    );
    const equal = library.tuningOf(of.environment, 'written');
    wrong(
      () => library.sheetOf(equal, bad('equal')),
      'sheetOf: the argument “before” must be a tuning, if anything, not string',
    );
    expect(library.sheetOf(equal).pitch).toBe(equal.pitch);
    wrong(
      () => library.frequencyOf(equal, bad({ letter: 'h', alteration: 0, octave: 4 })),
      'frequencyOf: the argument “pitch” must be a pitch, { letter, alteration, octave }, not object',
    );
    wrong(() => library.compare(SCORE, bad('K')), 'compare: the argument “names” must be a list of texts, not string');
    const levels = bad({ 'bar-too-long': 'grave' });
    wrong(
      () => proof(SCORE, { levels }),
      'proof: the argument “options.levels” must be levels by code, each of them error, warning, info, hint or ignore, not object',
    );
    const files = (options: object) => library.exportFiles(SCORE, { as: 'midi', ...options });
    for (const [field, what] of [
      ['tracks', '“voice” or “manual”'],
      ['layout', '“source” or “flow” or “line”'],
      ['midiTuning', '“notes” or “octave” or “octave-cents” or “bend” or “none”'],
      ['show', '“both”'],
      ['pace', 'a time above 0, { n, d }'],
      ['as', 'a text'],
    ])
      await expect(files({ [`${field}`]: 2 })).rejects.toThrow(
        new TypeError(`exportFiles: the argument “options.${field}” must be ${what}, not number`),
      );
    const host = { read: bad(async () => SCORE), resolve: (_: string, path: string) => path };
    wrong(
      () => proof('bentside 1\ninclude "house.bent"\n', { host }),
      'options.host.read must give a text or undefined, not a promise',
    );
    await expect(library.report(SCORE, { as: bad('pdf') })).rejects.toThrow('no form “pdf”, but md, html');
    await expect(library.exportFiles(SCORE, bad(undefined))).rejects.toThrow(
      'exportFiles: the argument “options” must be an object, not undefined',
    );
  });

  it('refuses nothing that its types allow', async () => {
    expect(proof(SCORE, { levels: { 'bar-too-long': undefined } }).findings).toEqual([]);
    const files = (pace: library.Time) => library.exportFiles(SCORE, { as: 'midi', pace });
    expect(await files({ n: 3n, d: 2n })).toEqual(await files({ n: 3, d: 2 }));
  });

  it('lays out a text without changing what it says', () => {
    const { text, findings } = align(SCORE.replace('| 1 c5 |', '|  1    c5 |'));
    expect(findings).toEqual([]);
    expect(timeline(score(text)).timeline?.pieces[0]?.events.map(({ pitch }) => pitch)).toEqual(['c5', 'd5']);
    expect(align(text).text).toBe(text);
  });

  it('mends what can be mended in one way, and leaves to the editor what only the source can tell', () => {
    const sign = SCORE.replace('1 c5', '1 c5’pince');
    const { text, mended } = mend(sign);
    expect(mended.map(({ code }) => code)).toEqual(['typographic-apostrophe']);
    expect(text).toContain("1 c5'pince");
    const shape = mend(text, { only: ({ code }) => code === 'sign-undecided' });
    expect(shape.mended.map(({ code }) => code)).toEqual(['sign-undecided']);
  });

  it('never fails on a text, however broken', () => {
    for (const text of ['', '\u0000', SCORE.slice(0, 200), SCORE.replaceAll(' ', ''), SCORE.replaceAll('|', '{')]) {
      expect(() => proof(text)).not.toThrow();
      expect(() => timeline(score(text))).not.toThrow();
      expect(() => align(text)).not.toThrow();
    }
  });
});

describe('files of the library', () => {
  const files = (as: string, more: object = {}) => library.exportFiles(SCORE, { file: 'a.bent', as, ...more });

  it('are those of the command line, each with its name', async () => {
    const { files: all } = await files('bent', { reading: 'all' });
    expect(all.map(({ name }) => name)).toEqual(['a.written.bent', 'a.plain.bent', 'a.K.bent', 'a.L.bent']);
    expect(all[3]?.content).toContain('| 1 c5 | 2 e f |');
    expect((await files('wav')).files[0]?.content).toBeInstanceOf(Uint8Array);
  });

  it('are none where the score has errors, which say why', async () => {
    const { files: none, findings } = await library.exportFiles(LONG, { as: 'mei' });
    expect([none, findings.map(({ code }) => code)]).toEqual([[], ['bar-too-long']]);
  });

  it('want a format and a reading that there are, and somebody to draw', async () => {
    await expect(files('musixml')).rejects.toThrow(/^no format “musixml”, but musicxml, /);
    await expect(files('mei', { reading: 'M' })).rejects.toThrow('no reading “M”, but written, plain, K, L');
    await expect(files('svg')).rejects.toThrow('the format svg is drawn: give an engraver');
  });

  it('may be the critical report', async () => {
    expect(await library.report(SCORE)).toMatch(/^# /);
    expect(await library.report(SCORE, { as: 'html' })).toMatch(/^<!doctype html>/i);
  });
});

describe('a text that begins with a byte order mark', () => {
  // The Unicode Standard, 23.8: a mark at the beginning of a file is no part of its text.
  const MARK = '\ufeff';
  const SHORT = `${MARK}bentside 1
voice dessus
system dessus G2 meter C
  dessus | 1 g4 | 2 c5 8 d 4 e | 2 g4 c5 |||
`;

  it('is mended like any other, and keeps the mark', () => {
    const dotted = SHORT.replace('4 e', '4. e');
    const short = proof(SHORT).findings.find(({ code }) => code === 'bar-too-short');
    expect(mend(SHORT).text).toBe(dotted);
    expect(library.edited(SHORT, short?.fixes[0]?.edits ?? [])).toBe(dotted);
  });
});

describe('what a command tells of files', () => {
  const FILE = 'leaf.bent';
  const LEAF = `bentside 1
title "Allmain"
signs anglebert-1689
reading house
voice dessus
system dessus G2 meter C tempo 4 at 60
  dessus | 4 d5'zz c b4 a'zz | 2. g4 |||
`;
  const told = async (...words: string[]): Promise<string> =>
    (await bentside(memoryHost({ [FILE]: LEAF }), ...words)).out;

  it('a script has by the same functions', async () => {
    const proofed = { file: FILE, ...proof(LEAF, { file: FILE, decisions: true }) };
    expect({ schema: 'bentside.proof/1', ...proofed }).toMatchObject(
      JSON.parse(await told('proof', '--decisions', '--json', FILE)),
    );
    expect(JSON.parse(JSON.stringify(library.sarifLog([proofed])))).toEqual(
      JSON.parse(await told('proof', '--decisions', '--sarif', FILE)),
    );
    const { environment } = score(LEAF);
    const sheet = library.sheetOf(library.tuningOf(environment, 'house'));
    expect(await library.tunersSheet(sheet)).toBe(await told('tune', '--reading', 'house', '--html', FILE));
  });

  it('two zigzags on descending notes are counted once a leaf, and twice in two', async () => {
    const uses = library.signUse(LEAF);
    expect(uses.signs.map(({ sign, times }) => [sign, times])).toEqual([['zz', 2]]);
    expect(uses.notes.times).toBe(5);
    expect(library.signUseTogether([uses, uses]).signs[0]?.times).toBe(4);
    expect(JSON.parse(await told('signs', '--use', '--json', FILE)).together).toEqual(uses);
  });

  // RFC 8089, 2 and E.2: the URI of a file has its whole path, with the letter of a drive; RFC 3986, 4.2: a reference has not.
  it.each([
    ['/home/Suite 1.bent', 'file:///home/Suite%201.bent'],
    ['C:/scores/a b.bent', 'file:///C:/scores/a%20b.bent'],
    ['../é:b.bent', '../%C3%A9%3Ab.bent'],
    ['a.bent', 'a.bent'],
  ])('names the file %s in a log', (file, uri) => {
    const log = JSON.stringify(library.sarifLog([{ file, ...proof(LONG, { file }) }]));
    expect([...log.matchAll(/"uri":"([^"]*)"/g)].map(([, found]) => found)).toEqual([uri]);
  });

  it('is refused what is none of these', () => {
    const given = (what: unknown): never => what as never;
    expect(() => library.sarifLog(given([{ findings: [] }]))).toThrow(/sarifLog: the argument “proofed”/);
    expect(() => library.signUseTogether(given([{}]))).toThrow(/signUseTogether: the argument “uses”/);
    expect(() => proof(LEAF, given({ decisions: 'yes' }))).toThrow(/proof: the argument “options.decisions”/);
    return expect(library.tunersSheet(given({}))).rejects.toThrow(/tunersSheet: the argument “sheet”/);
  });
});
