import { describe, expect, it } from 'vitest';
import { sentence } from '../../grammar/findings/word';
import { parseStatement } from '../../grammar/statements/parser';
import type { Block, FileTree } from '../../grammar/tree';
import { choiceNames, choiceOf, lineage } from '../../server/readings/choices';
import { buildEnvironment, declaredNames, type Environment } from '../../server/score/environment';

/** A file of statements alone, each on lines of its own; `between` those that follow a system. */
function file(head: string, between = ''): FileTree {
  const block = (kind: Block['kind'], text: string): Block => {
    const statements = text
      .trim()
      .split(/\n(?!\s)\s*/)
      .filter((one) => one !== '')
      .map((one) => ({ tree: parseStatement(one.replace(/\n\s+/g, '\n'), [0]), starts: [0], lines: [0] }));
    const contents = { kind, statements, lanes: [], problems: [] };
    return { ...contents, contents, line: 0, offset: 0, length: text.length };
  };
  return { text: head + between, lineStarts: [0], blocks: [block('head', head), block('between', between)] };
}

const environmentOf = (head: string, included: Record<string, string> = {}): Environment =>
  buildEnvironment(
    'entree.bent',
    file(head),
    Object.entries(included).map(([name, text]) => ({ file: name, tree: file(text) })),
  );

const findings = (environment: Environment): string[] =>
  environment.problems.map(({ problem }) => sentence(problem.code, problem.slots));

const fixes = (environment: Environment): (string | undefined)[] =>
  environment.problems.map(({ problem }) => problem.fixes?.[0]?.edits[0]?.text);

const entree = `
bentside 1
title     "Entrée for the second manual"
source K  "Thornmere Keyboard Book, f. 3v"
source L  "Loose bifolium kept with K"
hand K.2  "paler ink"
editor MK "M. Keene"
reading french  "Dots stretched"
  takes     K
  signs     anglebert-1689
  practice  overdot
reading late from french
  accidentals bar
  at v3 takes L
reading plain  "As the loose leaf has it"
  takes L,K.2
instrument  harpsichord  compass g1-d6
pitch       a4 = 415
tempo       2 at 50
accidentals note
beaming 8 by 4
stave upper  lines 5
stave lower  lines 6
voice dessus upper  stems up
voice taille upper  stems down
voice basse  lower
note n7 kind reading by MK certainty high evidence "the ink" : "a later hand"`;

describe('the declarations of a file', () => {
  const environment = environmentOf(entree);

  it('are sound', () => {
    expect(findings(environment)).toEqual([]);
  });

  it('give staves with their lines, and voices on them', () => {
    expect(environment.staves.map(({ name, lines }) => `${name} ${lines}`)).toEqual(['upper 5', 'lower 6']);
    expect(environment.voices.map(({ name, stave, stems }) => `${name} ${stave} ${stems}`)).toEqual([
      'dessus 0 up',
      'taille 0 down',
      'basse 1 undefined',
    ]);
  });

  it('give sources with their layers, editors and annotations', () => {
    expect(environment.sources.map(({ name, hands }) => [name, hands])).toEqual([
      ['K', [{ layer: 2, description: 'paler ink' }]],
      ['L', []],
    ]);
    expect(environment.editors.get('MK')?.name).toBe('M. Keene');
    expect(environment.notes.get('n7')).toMatchObject({
      text: 'a later hand',
      about: 'reading',
      by: 'MK',
      certainty: 'high',
    });
  });

  it('give pitch, tempo, compass, beaming and the reach of accidentals', () => {
    expect(environment.title).toBe('Entrée for the second manual');
    expect(environment.pitch).toBe(415);
    expect(environment.tempo).toMatchObject({ value: { text: '2' }, perMinute: 50 });
    expect(environment.beaming).toMatchObject([{ value: { text: '8' }, by: 4 }]);
    expect(environment.accidentals).toBe('note');
    // MIDI keys: c4 is 60 (MIDI 1.0, as the standard's middle C), so g1 is 31 and d6 86.
    expect(environment.compass).toEqual({ low: 31, high: 86 });
  });

  it('say what was stated and so is no default', () => {
    expect(environment.stated.has('pitch')).toBe(true);
    expect(environment.stated.has('tuning')).toBe(false);
    expect(environmentOf('').accidentals).toBe('note');
  });

  it('give all names by what they stand for', () => {
    expect(declaredNames(environment)).toMatchObject({
      staves: ['upper', 'lower'],
      voices: ['dessus', 'taille', 'basse'],
      witnesses: ['K', 'L'],
      layers: ['K.2'],
      readings: ['french', 'late', 'plain'],
      notes: ['n7'],
      editors: ['MK'],
    });
  });
});

describe('a choice', () => {
  const environment = environmentOf(entree);

  it('is offered as written, for each reading, witness and layer', () => {
    expect(choiceNames(environment)).toEqual(['written', 'french', 'late', 'plain', 'K', 'L', 'K.2']);
  });

  it('of a reading prefers its own label, then those it is built on, then what they take', () => {
    expect(choiceOf(environment, 'late')?.labels).toEqual(['late', 'french', 'K']);
    expect(choiceOf(environment, 'plain')?.labels).toEqual(['plain', 'L', 'K.2']);
  });

  it('of a reading says what it takes at a named place', () => {
    expect(choiceOf(environment, 'late')?.at).toEqual(new Map([['v3', ['L']]]));
    expect(choiceOf(environment, 'french')?.at.size).toBe(0);
  });

  it('of a reading has its own practice of accidentals, its nearest ancestor’s, or the file’s', () => {
    expect(choiceOf(environment, 'late')?.accidentals).toBe('bar');
    expect(choiceOf(environment, 'french')?.accidentals).toBe('note');
  });

  it('of a witness takes its options, of a layer its own before those of its source', () => {
    expect(choiceOf(environment, 'K')?.labels).toEqual(['K']);
    expect(choiceOf(environment, 'K.2')?.labels).toEqual(['K.2', 'K']);
  });

  it('as written takes no side', () => {
    expect(choiceOf(environment, 'written')).toMatchObject({ name: 'written', labels: [] });
  });

  it('of a name that is not declared is none', () => {
    expect(choiceOf(environment, 'M')).toBeUndefined();
    expect(choiceOf(environment, 'K.3')).toBeUndefined();
  });

  it('of a nearer reading overrides its ancestor at a place', () => {
    const built = environmentOf(
      'source K "a"\nsource L "b"\nreading a at v1 takes K at v2 takes K\nreading b from a at v1 takes L',
    );
    expect(choiceOf(built, 'b')?.at).toEqual(
      new Map([
        ['v1', ['L']],
        ['v2', ['K']],
      ]),
    );
  });
});

describe('a voice without a stave', () => {
  it('has one of its own, of as many lines as it says, where it is declared', () => {
    const score = environmentOf('voice canto lines 5\nvoice alto\nvoice tenore\nvoice basso lines 6');
    expect(score.staves.map(({ name, lines }) => `${name} ${lines}`)).toEqual([
      'canto 5',
      'alto 5',
      'tenore 5',
      'basso 6',
    ]);
    expect(score.voices.map(({ stave }) => stave)).toEqual([0, 1, 2, 3]);
    expect(findings(score)).toEqual([]);
  });

  it('stands on the stave of its name if there is one', () => {
    const score = environmentOf('voice canto\nstave canto lines 4');
    expect(score.staves.map(({ name, lines }) => `${name} ${lines}`)).toEqual(['canto 4']);
    expect(score.voices[0]?.stave).toBe(0);
  });
});

describe('what does not hold together', () => {
  it('is a voice on a stave that is not there; the nearest is meant', () => {
    const score = environmentOf('stave upper\nstave lower\nvoice dessus uper');
    expect(findings(score)).toEqual(['No stave is called “uper”.']);
    expect(fixes(score)).toEqual(['upper']);
    expect(score.voices[0]?.stave).toBe(0);
  });

  it('is a voice that tells the lines of another stave', () => {
    expect(
      environmentOf('stave upper\nvoice dessus upper lines 6').problems.map(({ problem }) => problem.code),
    ).toEqual(['lines-of-another']);
  });

  it('is a name given twice, with the place where it was given first', () => {
    const twice = environmentOf('stave upper\nstave lower\nstave upper lines 6');
    expect(findings(twice)).toEqual(['The name “upper” is given twice; the first one counts.']);
    expect(twice.problems[0]).toMatchObject({ block: 0, statement: 2, problem: { pos: 6, len: 5 } });
    expect(twice.problems[0]?.related?.[0]?.source).toMatchObject({ block: 0, statement: 0, pos: 6, len: 5 });
    expect(twice.staves.map(({ name }) => name)).toEqual(['upper', 'lower']);
  });

  it('is a reading named as a source, but not a voice named as a stave', () => {
    expect(findings(environmentOf('source K "x"\nreading K'))).toEqual([
      'The name “K” is given twice; the first one counts.',
    ]);
    expect(findings(environmentOf('stave upper\nvoice upper upper'))).toEqual([]);
  });

  it('is a reading built on itself', () => {
    const circle = environmentOf('reading early from late\nreading late from early\nreading other from early');
    expect(findings(circle)).toEqual(['The reading “early” is built on itself, by way of late, early.']);
    expect(lineage(circle, 'other').map(({ name }) => name)).toEqual(['other', 'early', 'late']);
    expect(findings(environmentOf('reading a from a'))).toEqual(['The reading “a” is built on itself, by way of a.']);
  });

  it('is told once for each circle of readings, however many are on it', () => {
    const two = ['first from c', 'a from b', 'b from c', 'c from a', 'd from e', 'e from d'];
    expect(findings(environmentOf(two.map((one) => `reading ${one}`).join('\n')))).toEqual([
      'The reading “a” is built on itself, by way of b, c, a.',
      'The reading “d” is built on itself, by way of e, d.',
    ]);
  });

  it('is a reading built on one that is not there, or taking what is not there', () => {
    const reading = environmentOf(
      'source Kent "x"\nsource L "y"\nreading french from frnch takes L,Kant\n  at v3 takes M',
    );
    expect(findings(reading)).toEqual([
      'No source, layer or reading is called “Kant”.',
      'No source, layer or reading is called “M”.',
      'No reading is called “frnch”.',
    ]);
    expect(fixes(reading)).toEqual(['Kent', undefined, 'french']);
  });

  it('is not a reading that takes another reading’s options, a layer, or what was corrected', () => {
    expect(findings(environmentOf('source K "x"\nhand K.2 "y"\nreading a\nreading b takes a,K.2,sic'))).toEqual([]);
  });

  it('is a layer of a source that is not there', () => {
    expect(findings(environmentOf('source K "x"\nhand L.2 "y"'))).toEqual(['No source is called “L”.']);
  });

  it('is a sign table that is not there, chosen by the file or by a reading', () => {
    const tables = environmentOf('signs anglebert-1698\nreading french signs huose\ntable house from anglebert-1689');
    expect(findings(tables)).toEqual(['No sign table is called “anglebert-1698”.', 'No sign table is called “huose”.']);
    expect(fixes(tables)).toEqual(['anglebert-1689', 'house']);
  });

  it('is a table that comes from itself', () => {
    expect(findings(environmentOf('table a from b\ntable b from a'))).toEqual([
      'The table “a” comes from itself, by way of b, a.',
    ]);
  });

  it('is an annotation signed by nobody known', () => {
    expect(findings(environmentOf('note n1 by XY : "x"'))).toEqual(['No editor signs as “XY”.']);
  });

  it('is a practice for a voice that is not there', () => {
    const practice = environmentOf(
      'stave upper\nvoice dessus upper\npractice overdot voice desus\nreading a practice snap voice x',
    );
    expect(findings(practice)).toEqual(['No voice is called “desus”.', 'No voice is called “x”.']);
  });

  it('is what a file can state only once', () => {
    const twice = environmentOf('pitch a4 = 415\npitch a4 = 392');
    expect(findings(twice)).toEqual(['`pitch` is stated twice for the file; the first one counts.']);
    expect(twice.pitch).toBe(415);
  });
});

describe('a table of the file', () => {
  it('gives its rows names that can be typed, each for the shapes it draws', () => {
    const house = environmentOf(`table house from anglebert-1689
  zz "Tremblement appuyé" : on beat, (+1 0) repeated
  zz "Tremblement appuyé" when dotted : on beat, (+1 0) repeated, hold 1/2
  cb+ca "Cheute & pincé" : on beat, -1 0 -1 0
  comma_after : on beat, 0 -1 0`);
    expect(findings(house)).toEqual([]);
    expect(house.tables[0]?.rows).toEqual([
      { name: 'tremblement_appuye', shapes: ['zz'] },
      { name: 'cheute_pince', shapes: ['cb', 'ca'] },
    ]);
  });

  it('draws only shapes that there are', () => {
    const house = environmentOf('table house\n  zq "x" : on beat, 0\n  zz : extends nosuch, 0');
    expect(findings(house)).toEqual(['No sign is called “zq”.', 'No sign is called “nosuch”.']);
  });
});

describe('an include', () => {
  const people = 'editor MK "M. Keene"\nsource K "Thornmere Keyboard Book"\nstave strange\ntitle "Not this one"';

  it('brings tables, people and sources, and nothing else', () => {
    const environment = environmentOf('include "house.bent"\nreading a takes K\nnote n1 by MK : "x"', {
      'lib/house.bent': people,
    });
    expect(findings(environment)).toEqual([]);
    expect(environment.sources[0]?.file).toBe('lib/house.bent');
    expect(environment.staves).toEqual([]);
    expect(environment.title).toBeUndefined();
  });

  it('that gives a name which the file gives again is shown beside it', () => {
    const environment = environmentOf('include "house.bent"\nsource K "Another"', { 'lib/house.bent': people });
    expect(findings(environment)).toEqual(['The name “K” is given twice; the first one counts.']);
    expect(environment.problems[0]?.related?.[0]?.source).toMatchObject({ block: 0, statement: 0 });
  });

  it('that gives a name which another include gave is told at the include', () => {
    const environment = environmentOf('include "a.bent"\ninclude "b.bent"', { 'a.bent': people, 'b.bent': people });
    expect(new Set(environment.problems.map(({ statement }) => statement))).toEqual(new Set([1]));
    expect(environment.problems.map(({ problem }) => problem.slots.name)).toEqual(['K', 'MK']);
  });

  it('is proofed by itself: what is wrong in it is not told twice', () => {
    const environment = environmentOf('include "house.bent"', {
      'house.bent': 'table house from nowhere\nhand X.2 "x"',
    });
    expect(findings(environment)).toEqual([]);
  });
});

describe('what a reading takes at a place', () => {
  it('is said once; of two words the first counts', () => {
    const environment = environmentOf(
      'source K "a"\nsource L "b"\nreading late\n  at v1 takes L\n  at v1 takes K\n  at v2 takes K',
    );
    expect(findings(environment)).toEqual(['`at v1` stands twice in one `reading`; the first one counts.']);
    expect([...(environment.readings[0]?.at ?? [])]).toContainEqual(['v1', 'L']);
  });
});
