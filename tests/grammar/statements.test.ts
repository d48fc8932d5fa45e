import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { declarationFindings } from '../../grammar/findings/declaration';
import type { Problem } from '../../grammar/findings/finding';
import { recipeFindings } from '../../grammar/findings/recipe';
import { statementFindings } from '../../grammar/findings/statement';
import { sentence } from '../../grammar/findings/word';
import { nearest } from '../../grammar/nearest';
import { parseChange, parseStatement } from '../../grammar/statements/parser';
import type { Argument, Clause, Row, Span, StatementTree } from '../../grammar/tree';
import type { ChangeEntry, ClauseEntry, Part, RowEntry, StatementEntry, Take } from '../../grammar/vocabulary/parts';
import { changes, lookUp, statements, vocabularyPaths } from '../../grammar/vocabulary/statements';

/** A statement as the cut hands it over: its lines without indentation. */
function read(text: string): StatementTree {
  const lines = text.trim().split(/\n\s*/);
  const joints = lines.map((_, i) => lines.slice(0, i).join('\n').length + (i > 0 ? 1 : 0));
  return parseStatement(lines.join('\n'), joints);
}

/** An argument as one would type it. */
function typed(arg: Argument): string {
  switch (arg.kind) {
    case 'string':
      return `"${arg.text}"`;
    case 'names':
      return arg.names.map((name) => name.text).join(',');
    case 'value':
      return arg.form.text;
    case 'pitch':
      return arg.spelling.text;
    case 'ratio':
      return `${arg.sign}${arg.n}/${arg.d}`;
    case 'clef':
      return arg.clefs.map(({ letter, line }) => `${letter}${line}`).join('+');
    case 'region':
      return arg.numbers.join(',');
    case 'pair':
      return `${arg.first.text}~${arg.second.text}`;
    default:
      return arg.text;
  }
}

const said = (args: readonly Argument[]): string => args.map(typed).join(' ');
const clausesOf = (holder: { clauses: readonly Clause[] }): string[] =>
  holder.clauses.map(({ name, args }) => `${name}: ${said(args)}`);
const codes = (tree: { problems: readonly Problem[] }): string[] => tree.problems.map((problem) => problem.code);
const sentences = (tree: { problems: readonly Problem[] }): string[] =>
  tree.problems.map((problem) => sentence(problem.code, problem.slots));

/** The findings of a statement, a row of a table, a clause of a head or a lane's change, as a help page shows it. */
function findingsOf(text: string): string[] {
  const bracket = /\([a-z][^)]*\)/.exec(text);
  if (/^\w+ \| /.test(text)) return parseChange(bracket?.[0] ?? '(up)').problems.map(({ code }) => code);
  if (text.includes(' : ') && !/^(note|table)/.test(text)) return codes(read(`table house\n${text}`));
  const holder = { meter: 'system ', takes: 'reading x ' }[/^\w+/.exec(text)?.[0] ?? ''] ?? '';
  return codes(read(holder + text));
}

/** The text after the fixes of all problems, the first of each. */
function mended(text: string): string {
  const edits = parseStatement(text, [0]).problems.flatMap((problem) => problem.fixes?.[0]?.edits ?? []);
  return [...edits]
    .sort((a, b) => b.pos - a.pos)
    .reduce((was, edit) => was.slice(0, edit.pos) + edit.text + was.slice(edit.pos + edit.len), text);
}

describe('a statement', () => {
  it('of a source has a letter and a description, in which two quotes stand for one', () => {
    const tree = read('source K "The ""Thornmere"" Keyboard Book, f. 3v" // the larger hand');
    expect(said(tree.statement.args)).toBe('K "The "Thornmere" Keyboard Book, f. 3v"');
    expect(tree.problems).toEqual([]);
  });

  it('of a reading says what it takes and how it plays, on as many lines as one likes', () => {
    const tree = read(`reading french "Dots stretched" from plain
      takes K,L.2
      signs anglebert-1689   // the table of 1689
      practice overdot shortest in B
      practice inegal by-meter 2:1 stepwise short-long voice dessus
      at v3 takes L
      at v4 takes K
      order A A B`);
    expect(tree.problems).toEqual([]);
    expect(said(tree.statement.args)).toBe('french "Dots stretched"');
    expect(clausesOf(tree.statement)).toEqual([
      'from: plain',
      'takes: K,L.2',
      'signs: anglebert-1689',
      'practice: overdot shortest in B',
      'practice: inegal by-meter 2/1 stepwise short-long voice dessus',
      'at: v3 L',
      'at: v4 K',
      'order: A A B',
    ]);
  });

  it('of an instrument has its compass, its short octave, its split keys and a row for each manual', () => {
    const tree = read(`instrument harpsichord compass c2-c6 short-octave c/e broken split d#/eb g#/ab
      manual upper stops 8
      manual lower stops 8 4`);
    expect(tree.problems).toEqual([]);
    expect(clausesOf(tree.statement)).toEqual(['compass: c2~c6', 'short-octave: c/e broken', 'split: d#~eb g#~ab']);
    expect(tree.statement.rows.map((row) => `${said(row.args)} ${clausesOf(row)}`)).toEqual([
      'upper stops: 8',
      'lower stops: 8 4',
    ]);
  });

  it('of a system restates clefs, signature and meter, and says where it lies on the picture', () => {
    const tree = read(
      'system upper C1 lower F4+C6 key lower bb key bb4 bb5 meter cut-C = 4/2 tempo 4 at 63 at 120,340,1800,410',
    );
    expect(tree.problems).toEqual([]);
    expect(clausesOf(tree.statement)).toEqual([
      'clef: upper C1',
      'clef: lower F4+C6',
      'key: lower bb',
      'key: bb4 bb5',
      'meter: cut-C 4/2',
      'tempo: 4 63',
      'at: 120,340,1800,410',
    ]);
  });

  it('of a system may be loose or free, take the signature away, or draw naturals for it', () => {
    expect(said(read('system loose upper C1').statement.args)).toBe('loose');
    expect(said(read('system free key none').statement.args)).toBe('free');
    expect(clausesOf(read('system key bn en').statement)).toEqual(['key: bn en']);
    expect(clausesOf(read('system key none').statement)).toEqual(['key: none']);
  });

  it('of a temperament has a row for each fifth that is not pure', () => {
    const tree = read(`temperament house from kirnberger-3
      c-g -1/4 sc
      g-d +1/6 pc
      c4-g4 2.0 beats narrow
      g#-eb rest`);
    expect(tree.problems).toEqual([]);
    expect(tree.statement.rows.map((row) => said(row.args))).toEqual([
      'c~g -1/4 sc',
      'g~d +1/6 pc',
      'c4~g4 2.0 narrow',
      'g#~eb rest',
    ]);
  });

  it('of meantone names its comma and may name its wolf', () => {
    expect(said(read('tuning meantone 1/4 wolf g#-eb').statement.args)).toBe('meantone 1/4 wolf g#~eb');
    expect(said(read('tuning werckmeister-3').statement.args)).toBe('werckmeister-3');
  });

  it('of a full annotation says its kind, who says so, how sure it is and why', () => {
    const tree = read('note n7 kind reading by MK certainty high evidence "the ink is paler" : "a later hand"');
    expect(tree.problems).toEqual([]);
    expect(clausesOf(tree.statement)).toEqual([
      'kind: reading',
      'by: MK',
      'certainty: high',
      'evidence: "the ink is paler"',
      'text: "a later hand"',
    ]);
  });

  it('of any other kind reads as it is typed', () => {
    const lines = [
      'bentside 1',
      'title "Entrée"',
      'hand K.2 "paler ink"',
      'editor MK "M. Keene"',
      'pitch a4 = 415',
      'tempo 2 at 50',
      'accidentals note',
      'beaming 8 by 4',
      'stave upper lines 6',
      'voice dessus upper stems up',
      'voice canto lines 5',
      'page "3v" image "scans/3v.jpg"',
      'piece "Allemande"',
      'include "house.bent"',
      'section petite in B',
      'order A A B B petite',
      'signs house',
      'practice overdot double silent',
      'practice assimilate triplet',
      'practice snap',
      'practice upbeats late',
      'practice hemiola in C',
      'link v3 v9 v11',
    ];
    expect(lines.flatMap((line) => sentences(read(line)))).toEqual([]);
  });
});

describe('a change in a lane', () => {
  const change = (text: string): string => {
    const { change, problems } = parseChange(text);
    return [
      change?.word,
      said(change?.args ?? []),
      ...(change === undefined ? [] : clausesOf(change)),
      ...codes({ problems }),
    ]
      .filter((part) => part !== '')
      .join(' ');
  };

  it('of the source brings a clef, a signature, a meter and a tempo, several if need be', () => {
    expect(change('(now C3 meter 3/4)')).toBe('now clef: C3 meter: 3/4');
    expect(change('(now key f# c#)')).toBe('now key: f# c#');
    expect(change('(now key lower bb)')).toBe('now key: lower bb');
    expect(change('(now tempo 4 at 63)')).toBe('now tempo: 4 63');
  });

  it('moves a voice, its stems and its manual, announces a note, and marks endings and sections', () => {
    expect(['(up)', '(down)', '(home)', '(irregular)'].map(change)).toEqual(['up', 'down', 'home', 'irregular']);
    expect(change('(stems up)')).toBe('stems up');
    expect(change('(manual upper)')).toBe('manual upper');
    expect(change('(custos c5)')).toBe('custos c5');
    expect(change('(ending 1)')).toBe('ending 1');
    expect(change('(section petite in B)')).toBe('section petite in B');
  });

  it('is one object for one text', () => {
    expect(parseChange('(now G1)')).toBe(parseChange('(now G1)'));
  });

  it('counts its places from the opening bracket', () => {
    expect(parseChange('(now C3)').change?.clauses[0]).toMatchObject({ pos: 5, len: 2 });
  });

  it('that is unknown or says too little or too much is told so', () => {
    expect(parseChange('(nwo C3)').problems[0]).toMatchObject({ code: 'unknown-change', pos: 1, len: 3 });
    expect(parseChange('(nwo C3)').problems[0]?.fixes?.[0]?.edits).toEqual([{ pos: 1, len: 3, text: 'now' }]);
    for (const [typed, meant] of [
      ['(C3)', 'now C3'],
      ['(F4+C6)', 'now F4+C6'],
      ['(key bb eb)', 'now key'],
      ['(meter 3/2)', 'now meter'],
      ['(clef C3)', 'now'],
    ] as const) {
      expect(parseChange(typed).problems).toMatchObject([{ slots: { expected: `\`${meant}\`` } }]);
      expect(parseChange(typed).problems[0]?.fixes?.[0]?.edits).toMatchObject([{ pos: 1, text: meant }]);
    }
    // A note is no clef.
    for (const [typed, text] of [
      ['(now 3/4)', 'meter '],
      ['(now f# c#)', 'key '],
    ]) {
      expect(parseChange(typed ?? '').problems[0]?.fixes?.[0]?.edits).toEqual([{ pos: 5, len: 0, text }]);
    }
    expect(parseChange('(c5)').problems[0]?.fixes ?? []).toEqual([]);
    expect(change('(now)')).toBe('now missing-argument');
    expect(change('(custos c)')).toBe('custos wrong-argument');
    expect(change('(up twice)')).toBe('up too-much');
    expect(change('(ending 0)')).toBe('ending number-out-of-range');
    expect(parseChange('()').change).toBeUndefined();
  });
});

describe('what may be meant for several things', () => {
  it.each([
    'tempo 4 at 60-70',
    'instrument harpsichord compass GG-d3',
    'system upper G2 meter cut-O',
    'note n1 "a blot"',
    'note n1 evidence : "a blot"',
  ])('%s is told and left as it is', (text) => {
    expect(parseStatement(text, [0]).problems).not.toEqual([]);
    expect(mended(text)).toBe(text);
  });

  it('has the pitch standard by its number alone', () => {
    expect(mended('pitch 415')).toBe('pitch a4 = 415');
  });

  it.each([
    ['system upper G2, lower F4, meter C', 'system upper G2 lower F4 meter C'],
    ['order A, A, B, B', 'order A A B B'],
    ['system upper G2 key bb, eb', 'system upper G2 key bb eb'],
    ['instrument organ\n  manual great stops 8, 4', 'instrument organ\n  manual great stops 8 4'],
    ['instrument: harpsichord, compass: c2-c6', 'instrument harpsichord compass c2-c6'],
  ])('%s has signs that part nothing', (wrong, right) => {
    expect(mended(wrong)).toBe(right);
  });

  it('has a sign between a stave and its clef', () => {
    const { problems } = parseStatement('system upper: G2 key bb', [0]);
    expect(problems.map(({ code }) => code)).toEqual(['unknown-clause']);
    expect(mended('system upper: G2 key bb')).toBe('system upper G2 key bb');
    // What a row lacks is its sign, and not its `:` too much.
    expect(codes(read('table house\n: on beat, 0'))).toEqual(['missing-argument']);
    // Joined to the line above it would be of its comment.
    expect(mended('reading r from // loose\n: K')).toBe('reading r from // loose\n K');
  });
});

describe('a slip of the pen', () => {
  it.each([
    ['stav upper lines 5', 'stave upper lines 5'],
    ['voice dessus upper stms up', 'voice dessus upper stems up'],
    ['practice overdot doubel held', 'practice overdot double held'],
    ['accidentals nota', 'accidentals note'],
    ['system lose upper C1', 'system loose upper C1'],
    ['system upper g2', 'system upper G2'],
    ['system lower F4+C5', 'system lower F4+C6'],
    ['tempo 2 50', 'tempo 2 at 50'],
    ['pitch a4 415', 'pitch a4 = 415'],
    ['page 3v', 'page "3v"'],
    ['title Entrée for two, or three', 'title "Entrée for two, or three"'],
    ['title “Entrée”', 'title "Entrée"'],
    ['title „Entrée“', 'title "Entrée"'],
    ['title «Entrée»', 'title "Entrée"'],
    ['title "Entrée”', 'title "Entrée"'],
    ['title "Entrée', 'title "Entrée"'],
    ['title "La \\"Belle\\" dame"', 'title "La ""Belle"" dame"'],
    ['title "A pipe of 8\\""', 'title "A pipe of 8"""'],
    ['title "8\\" and 4\\" pipes"', 'title "8"" and 4"" pipes"'],
    ['reading plain takes K, L', 'reading plain takes K,L'],
    ['system at 120, 340, 1800, 410', 'system at 120,340,1800,410'],
    ['practice inegal 8 3/2', 'practice inegal 8 3:2'],
    ['pitch a = 415', 'pitch a4 = 415'],
    ['pitch a4 = 415Hz', 'pitch a4 = 415'],
    ['tempo 4 at 60bpm', 'tempo 4 at 60'],
    ['instrument "harpsichord"', 'instrument harpsichord'],
    ['instrument harpsichord c2-c6', 'instrument harpsichord compass c2-c6'],
    ['instrument harpsichord compass C2-c6', 'instrument harpsichord compass c2-c6'],
    ["instrument organ\n  manual great stops 8'", 'instrument organ\n  manual great stops 8'],
    ['temperament house\n  C-G -1/4 sc', 'temperament house\n  c-g -1/4 sc'],
    ['stave upper 6', 'stave upper lines 6'],
    ['instrument organ\n  manaul great stops 8', 'instrument organ\n  manual great stops 8'],
    ['voice haute-contre upper', 'voice haute_contre upper'],
    ['section séconde', 'section seconde'],
    ['title: "Entrée"', 'title "Entrée"'],
    ['title = "Entrée"', 'title "Entrée"'],
    ['system upper G2 meter=C', 'system upper G2 meter C'],
    ['reading plain takes: K', 'reading plain takes K'],
    ['section "A"', 'section A'],
    ['order A,A,B,B', 'order A A B B'],
    ['system upper G2 3/4', 'system upper G2 meter 3/4'],
    ['system upper G2 bb eb', 'system upper G2 key bb eb'],
    ['system upper G2 meter c', 'system upper G2 meter C'],
    ['system upper G2 meter Cut-C', 'system upper G2 meter cut-C'],
    ['reading plain accidentals bar literal', 'reading plain accidentals bar practice literal'],
  ])('%s is one finding and mended to %s', (wrong, right) => {
    expect(parseStatement(wrong, [0]).problems).toHaveLength(1);
    expect(mended(wrong)).toBe(right);
    expect(parseStatement(right, [0]).problems).toEqual([]);
  });

  it('typographic quotes inside a string are welcome', () => {
    expect(read('title "The “Thornmere” entrée"').problems).toEqual([]);
  });

  it('a string may end in a backslash', () => {
    expect(read('title "C:\\"').problems).toEqual([]);
    expect(codes(read('title "C:\\" // the "old" disk'))).toEqual([]);
  });

  it('an unclosed string is one finding and runs to the end of its line', () => {
    const tree = read('note n7 : "the dot // is doubtful\nby MK');
    expect(codes(tree)).toEqual(['unclosed-string']);
    expect(clausesOf(tree.statement)).toEqual(['text: "the dot // is doubtful"', 'by: MK']);
  });

  it('an unclosed string is closed before what may be a comment, or at the end of its line', () => {
    const { problems } = read('order A "e  // the reprise');
    const ends = problems.flatMap(({ fixes = [] }) => fixes.flatMap(({ edits }) => edits.map(({ pos }) => pos)));
    expect(ends).toEqual(['order A "e'.length, 'order A "e  // the reprise'.length]);
  });

  it('a word too few is said where it is missing, and the rest is read', () => {
    expect(sentences(read('reading french takes\nsigns house'))).toEqual([
      'Something is missing after `reading … takes`: the names of witnesses, such as K,L.',
    ]);
    expect(clausesOf(read('reading french takes\nsigns house').statement)).toEqual(['takes: ', 'signs: house']);
    expect(codes(read('tempo at 50'))).toEqual(['missing-argument']);
    expect(codes(read('practice assimilate'))).toEqual(['missing-argument']);
  });

  it('words too many are one finding up to the next clause', () => {
    const tree = read('reading french nonsense and more of it takes K');
    expect(codes(tree)).toEqual(['unknown-clause']);
    expect(clausesOf(tree.statement)).toEqual(['takes: K']);
    expect(codes(read('accidentals note and bar'))).toEqual(['too-much']);
  });

  it('a clause that stands twice where it can stand once is a warning', () => {
    expect(codes(read('reading french takes K takes L'))).toEqual(['repeated-clause']);
  });

  it('numbers that cannot be are told what they can be', () => {
    expect(sentences(read('stave upper lines 12'))).toEqual([
      '12 is out of range: a number of lines lies between 4 and 8.',
    ]);
    expect(codes(read('stave upper lines 3'))).toEqual(['number-out-of-range']);
    expect(codes(read('practice inegal 8 100:1'))).toEqual(['ratio-out-of-range']);
    expect(codes(read('practice inegal 8 3:0'))).toEqual(['ratio-out-of-range']);
    expect(codes(read('system meter C = 4/3'))).toEqual(['bar-out-of-range']);
    expect(codes(read('tempo 3 at 60'))).toEqual(['wrong-argument']);
  });

  it('a meter sign without a usual length needs one', () => {
    expect(codes(read('system meter cut-O'))).toEqual(['unknown-meter']);
    expect(codes(read('system meter cut-O = 3/1'))).toEqual([]);
  });

  it('a compass goes upwards, a fifth is a fifth, and a divided key has two names', () => {
    expect(codes(read('instrument harpsichord compass d6-g1'))).toEqual(['wrong-argument']);
    expect(codes(read('instrument harpsichord compass g-d'))).toEqual(['wrong-argument']);
    expect(codes(read('tuning meantone 1/4 wolf c-e'))).toEqual(['wrong-argument']);
    expect(codes(read('instrument harpsichord split d#/e'))).toEqual(['wrong-argument']);
  });
});

describe('a name', () => {
  it.each([
    'voice fig',
    'voice text upper',
    'stave key',
    'stave loose',
    'stave at',
    'reading written',
    'reading main "x"',
    'source sic "x"',
    'source omit "x"',
  ])('%s is reserved', (text) => {
    expect(codes(read(text))).toEqual(['reserved-name']);
  });

  it.each(['stave f', 'stave bb', 'stave c4', 'stave G2'])('%s would be read as a note or a clef', (text) => {
    expect(codes(read(text))).toEqual(['stave-like-note']);
  });

  it('is a letter, then letters, digits and low lines; tables and temperaments may have hyphens', () => {
    expect(codes(read('voice haute-contre upper'))).toEqual(['bad-name']);
    expect(codes(read('voice haute_contre2 upper'))).toEqual([]);
    expect(codes(read('signs anglebert-1689'))).toEqual([]);
    expect(codes(read('voice ténor upper'))).toEqual(['bad-name']);
  });
});

describe('the nearest word', () => {
  it('forgives a letter left out, added, mistaken or changed about', () => {
    const known = ['stave', 'voice', 'system'];
    expect(['stve', 'stavee', 'vioce', 'sistem', 'STAVE'].map((word) => nearest(word, known))).toEqual([
      'stave',
      'stave',
      'voice',
      'system',
      'stave',
    ]);
  });

  it('guesses nothing from afar', () => {
    expect(nearest('harpsichord', ['stave', 'voice'])).toBeUndefined();
    expect(nearest('x', ['at', 'up'])).toBeUndefined();
  });
});

describe('the vocabulary', () => {
  /** A way of using every path: the first words that lead there. */
  const heard = (text: string): Set<string> => {
    const paths = new Set<string>();
    if (text.startsWith('(')) parseChange(text, (path) => paths.add(path));
    else parseStatement(text.replace(/\n\s*/g, '\n'), [0], (path) => paths.add(path));
    return paths;
  };

  it('names in its paths all that a text takes from it', () => {
    expect([...heard('reading french practice overdot shortest')]).toEqual([
      'reading',
      'reading/reading',
      'reading/practice',
      'reading/practice/overdot',
      'reading/practice/overdot/shortest',
    ]);
    const known = new Set(vocabularyPaths());
    const texts = [
      'table house from x\n ca+cb "x" when before rest scope chord : on beat, (+1 0) repeated at 8 a pulse, 0 for 1/2, hold',
      'system free upper C1 key lower none meter 3 tempo 4 at 6 at 1,2,3,4',
      'temperament x from y\n c-g 2 beats wide',
      'instrument x short-octave g/b\n manual y stops 8',
      '(now C1 key none)',
      '(section x in y)',
    ];
    const unknown = texts.flatMap((text) => [...heard(text)]).filter((path) => !known.has(path));
    expect(unknown).toEqual([]);
  });

  it('can be written whole: every keyword, clause and word, without a finding', () => {
    const texts = [
      ...Object.entries(statements).flatMap(([keyword, entry]) => ways(keyword, entry)),
      ...Object.entries(changes).flatMap(([word, entry]) => ways(word, entry).map((text) => `(${text})`)),
    ].filter((text) => text !== '(now)');
    const wrong = texts.filter((text) => {
      const { problems } = text.startsWith('(') ? parseChange(text) : parseStatement(text, [0]);
      return problems.length > 0;
    });
    expect(wrong).toEqual([]);
    const used = new Set(texts.flatMap((text) => [...heard(text)]));
    expect(vocabularyPaths().filter((path) => !used.has(path))).toEqual([]);
    expect([...used].filter((path) => !vocabularyPaths().includes(path))).toEqual([]);
  });

  it('does not count a misspelt word as used', () => {
    expect(heard('practice overdt silent')).toEqual(new Set(['practice']));
  });

  it('describes every statement and clause', () => {
    const described = Object.values(statements).flatMap((entry) => [
      entry.describe,
      ...Object.values(entry.clauses).map((clause) => clause.describe),
    ]);
    expect(described.every((text) => /^[A-Z].*\.$/.test(text))).toBe(true);
  });

  it('has nothing of what every object inherits', () => {
    expect(lookUp(statements, 'constructor')).toBeUndefined();
    for (const word of ['constructor', '__proto__', 'toString']) {
      expect(codes(read(word))).toEqual(['unknown-statement']);
      expect(codes(read(`practice ${word}`))).toEqual(['unknown-word']);
      expect(parseChange(`(${word})`).problems.map(({ code }) => code)).toEqual(['unknown-change']);
    }
  });
});

/** Something that can be typed for each thing that is free. */
const examples: Record<Take, string> = {
  name: 'dessus',
  names: 'K,L.2',
  shapes: 'cb+ca',
  string: '"words"',
  whole: '5',
  decimal: '415',
  value: '4.',
  pitch: 'c5',
  keySign: 'bb4',
  pitchOfA: 'a4',
  meter: '3',
  barLength: '3/2',
  shares: '3:2',
  commaPart: '1/4',
  tempering: '-1/4',
  clef: 'F4+C6',
  region: '1,2,3,4',
  compass: 'g1-d6',
  fifth: 'c-g',
  splitKey: 'd#/eb',
};

/** Ways of writing parts, so many that each alternative is used once; the first is the shortest. */
function partWays(parts: readonly Part[]): string[] {
  const each = parts.map((part): string[] => {
    const lead = part.after === undefined ? '' : `${part.after} `;
    const body =
      part.kind === 'free'
        ? [part.role === 'layer' ? 'K.2' : `${part.range?.high ?? examples[part.take]}`]
        : part.kind === 'either'
          ? part.forms.flatMap(partWays)
          : Object.entries(part.words).flatMap(([word, entry]) =>
              partWays(entry.follow ?? []).map((w) => `${word} ${w}`),
            );
    return [...(part.optional ? [''] : []), ...body.map((text) => lead + text)];
  });
  const plain = each.map(([first = '']) => first);
  const varied = each.flatMap((some, i) =>
    some.slice(1).map((text) => plain.map((other, j) => (i === j ? text : other))),
  );
  return [plain, ...varied].map((pieces) => pieces.filter((piece) => piece !== '').join(' '));
}

const opening = (name: string, clause: ClauseEntry): string =>
  clause.opens === undefined ? name : clause.opens === ':' ? ':' : '';

const recipes = [
  'on beat, (+1 0) repeated at 11 a second, hold 1/4',
  'on beat, +1 leaned, (0 +1) repeated, hold',
  'on beat, spread up filled, hold',
  'on beat, spread down, hold',
  'before beat, -1 for 1/2 at 8 a pulse, 0 at 32, rest',
  'extends zz, 0',
  'unresolved "why"',
];

function ways(keyword: string, entry: StatementEntry | ChangeEntry): string[] {
  const clauses = Object.entries(entry.clauses).flatMap(([name, clause]) =>
    partWays(clause.parts).map((text) => `${opening(name, clause)} ${text}`),
  );
  const [head = '', ...others] = partWays(entry.parts);
  const rows = 'rows' in entry && entry.rows !== undefined ? rowWays(entry.rows) : [];
  return [
    ...[head, ...others].map((text) => `${keyword} ${text}`.trim()),
    ...clauses.map((clause) => `${keyword} ${head} ${clause}`),
    ...rows.map((row) => `${keyword} ${head}\n${row}`),
  ];
}

function rowWays(row: RowEntry): string[] {
  const { recipe, word = '' } = row;
  const plain = ways(word, { describe: '', parts: row.parts, clauses: row.clauses });
  return recipe ? plain.flatMap((text) => recipes.map((one) => `${text} : ${one}`)) : plain;
}

// ─── whatever is typed ───────────────────────────────────────────────────────────────────────────────────────────

/** Pieces of which statements are made, so that random texts come near to them. */
const pieces = [
  ...Object.keys(statements),
  ...Object.values(statements).flatMap((entry) => Object.keys(entry.clauses)),
  ...['\n', '\n', ' ', ' ', ' ', '"', '""', '“', '”', '//', '=', ':', ',', '(', ')', '+1', '0', '-1', '1/2', '3:2'],
  ...['C1', 'F4+C6', 'g1-d6', 'd#/eb', 'c-g', '8', '4.', 'zz', 'cb+ca', 'on beat', 'repeated', 'hold', 'at', 'for'],
  ...['K.2', 'K,L', 'none', 'bb', '\0', '\ud800', '\udfff', 'á', '\u00a0', '\t', '1,2,3,4', 'a second'],
];
const randomText = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.array(fc.constantFrom(...pieces), { maxLength: 40 }).map((all) => all.join(' ')),
  fc.array(fc.constantFrom(...pieces), { maxLength: 40 }).map((all) => all.join('')),
  fc
    .tuple(fc.constantFrom(...Object.keys(statements)), fc.array(fc.constantFrom(...pieces), { maxLength: 30 }))
    .map(([keyword, all]) => `${keyword} ${all.join(' ')}`),
);

const end = (span: Span): number => span.pos + span.len;
const within = (inner: Span, outer: Span): boolean =>
  inner.pos >= outer.pos && inner.len >= 0 && end(inner) <= end(outer);

/** Nodes one after another, each inside the whole. */
function expectOrdered(nodes: readonly Span[], outer: Span): void {
  nodes.forEach((node, i) => {
    expect(within(node, outer)).toBe(true);
    const before = nodes[i - 1];
    if (before !== undefined) expect(node.pos).toBeGreaterThanOrEqual(end(before));
  });
}

const expectClause = (clause: Clause): void => expectOrdered(clause.args, clause);

function expectRow(row: Row): void {
  const recipe = row.recipe === undefined ? [] : [row.recipe];
  expectOrdered([...row.args, ...row.clauses, ...recipe], row);
  row.clauses.forEach(expectClause);
  for (const { phrases, ...whole } of recipe) {
    expectOrdered(phrases, whole);
    for (const phrase of phrases) expectOrdered(phrase.steps, phrase);
  }
}

function expectProblems(problems: readonly Problem[], text: string): void {
  const whole = { pos: 0, len: text.length };
  for (const problem of problems) {
    expect(within(problem, whole)).toBe(true);
    expect(sentence(problem.code, problem.slots)).not.toMatch(/\{\w+\}/);
    for (const edit of problem.fixes?.flatMap((fix) => fix.edits) ?? []) expect(within(edit, whole)).toBe(true);
  }
}

describe('whatever is typed', () => {
  it('is read without fail, every node inside the text and in its order', () => {
    fc.assert(
      fc.property(randomText, (text) => {
        const { statement, problems } = parseStatement(text, [0]);
        const parts = [...statement.clauses, ...statement.rows].sort((a, b) => a.pos - b.pos);
        expectOrdered([...statement.args, ...parts], statement);
        statement.clauses.forEach(expectClause);
        statement.rows.forEach(expectRow);
        expectProblems(
          problems.filter(({ slots }) => !/[{}]/.test(Object.values(slots).join(''))),
          text,
        );
      }),
      { numRuns: 3000 },
    );
  });

  it('is read without fail in round brackets', () => {
    fc.assert(
      fc.property(randomText, (text) => {
        const { change, problems } = parseChange(`(${text})`);
        const whole = { pos: 0, len: text.length + 2 };
        expectOrdered([...(change?.args ?? []), ...(change?.clauses ?? [])], whole);
        change?.clauses.forEach(expectClause);
        expectProblems(
          problems.filter(({ slots }) => !/[{}]/.test(Object.values(slots).join(''))),
          `(${text})`,
        );
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    ['words', 'reading x practice '.repeat(1000)],
    ['clauses', `system ${'at '.repeat(7000)}`],
    ['clefs', `system ${'upper C1 '.repeat(2500)}`],
    ['quotes', `title ${'"”'.repeat(10_000)}`],
    ['pairs of quotes', `title ${'""'.repeat(10_001)}`],
    ['commas', `reading x takes ${'K, '.repeat(6000)}`],
    ['steps', `table x\nzz : ${'(+1 0) repeated, '.repeat(1500)}`],
    ['commas in steps', `table x\nzz : ${'0,'.repeat(10_000)}`],
    ['brackets', `table x\nzz : ${'('.repeat(20_000)}`],
    ['one word', `stave ${'x'.repeat(20_000)}`],
    ['misspelt clauses', `voice x ${'stms '.repeat(4000)}`],
  ])('a line of 20,000 characters of %s is read at once', (_, text) => {
    parseStatement(text, [0]);
    const before = performance.now();
    parseStatement(text, [0]);
    expect(performance.now() - before).toBeLessThan(1000);
  });
});

/** Those of declarations taken together no statement shows by itself. */
const ofStatements = { ...statementFindings, ...recipeFindings };
const all = { ...ofStatements, ...declarationFindings };

describe('every finding about statements', () => {
  it('has a help page that shows a text before and after it is mended', () => {
    for (const { help } of Object.values(all)) {
      expect(help).toMatch(/Before:\n```\n[^`]+```\nAfter:\n```\n[^`]+```/);
    }
  });

  it('is cured in the text after, as its help page shows it', () => {
    for (const [code, { help }] of Object.entries(all)) {
      const [before = '', after = ''] = [...help.matchAll(/```\n([^`]+)\n```/g)].map((match) => match[1]);
      const found = (text: string): string[] => text.split(/\n(?! )/).flatMap((one) => findingsOf(one));
      if (Object.hasOwn(ofStatements, code)) expect(found(before)).toContain(code);
      expect(found(after), code).toEqual([]);
    }
  });
});
