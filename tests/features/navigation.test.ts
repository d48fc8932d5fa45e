import { describe, expect, it } from 'vitest';
import { definition, highlights, references } from '../../server/features/navigation';
import { CannotRename, mayBeUsedElsewhere, prepareRename, rename } from '../../server/features/rename';
import { workspaceSymbols } from '../../server/features/symbols';
import { atCaret, FILE, markedIn, markedLines, markedWith, projectNamed, withEdits } from '../helpers/editor';

const SCORE = `bentside 1
source K "the Thornmere Keyboard Book"
source L "a loose leaf"
hand L.2 "paler ink"
reading plain "as the leaf has it"
  takes L,K
  at v1 takes L.2
stave upper
stave lower
voice dessus upper
voice basse lower
note n1 kind reading : "the leaf is careful elsewhere"
link v1 v2
section A
system upper C1 lower F4 meter C
  dessus   | 1 <v1 K: c5 ; L.2: d5>*n1 | <v2 K: 1 c5'zz:L ; L: 1 e5> |||
  dessus L |                           |                             |||
  basse    | 1 c3                      | c                           |||
order A A
`;

/** The lines in which the name under the caret is marked where it is given. */
const given = (marked: string, files = {}): string[] => {
  const { project, position } = atCaret(marked, files);
  const places = definition(project, position);
  return [project, ...project.included].flatMap(({ file }) => markedLines(markedIn(project, places, file)));
};

const caretBefore = (sign: string, nth = 0): string => {
  let at = -1;
  for (let count = 0; count <= nth; count++) at = SCORE.indexOf(sign, at + 1);
  return `${SCORE.slice(0, at)}‸${SCORE.slice(at)}`;
};

describe('a name leads to where it is given', () => {
  it.each([
    ['the voice of a lane', 'dessus   |', 'voice ⟦dessus⟧ upper'],
    ['the stave of a voice', 'upper\nvoice', 'stave ⟦upper⟧'],
    ['the stave of a clef', 'lower F4', 'stave ⟦lower⟧'],
    ['whose an option is', 'K: c5', 'source ⟦K⟧ "the Thornmere Keyboard Book"'],
    ['the layer of an option', '.2: d5', 'hand ⟦L.2⟧ "paler ink"'],
    ['the witness of a lane', 'L |   ', 'source ⟦L⟧ "a loose leaf"'],
    ['the witness to which a sign is limited', 'L ; L: 1', 'source ⟦L⟧ "a loose leaf"'],
    ['what a reading takes', 'L,K', 'source ⟦L⟧ "a loose leaf"'],
    ['an annotation', 'n1 |', 'note ⟦n1⟧ kind reading : "the leaf is careful elsewhere"'],
    ['a section in the order', 'A A', 'section ⟦A⟧'],
  ])('%s', (_, sign, line) => {
    expect(given(caretBefore(sign))).toEqual([line]);
  });

  it('a place that is linked, in the lane', () => {
    expect(given(caretBefore('v1 v2'))).toEqual([
      "dessus   | 1 <⟦v1⟧ K: c5 ; L.2: d5>*n1 | <v2 K: 1 c5'zz:L ; L: 1 e5> |||",
    ]);
  });

  it('a source of an included file, there', () => {
    const house = 'bentside 1\nsource T "Thornmere spinet book"\nvoice dessus\n';
    const score = 'bentside 1\ninclude "house.bent"\nvoice dessus\nreading x\n  takes ‸T\n';
    expect(given(score, { 'house.bent': house })).toEqual(['source ⟦T⟧ "Thornmere spinet book"']);
  });

  it('a note leads nowhere', () => {
    expect(given(caretBefore('c5 ; L.2'))).toEqual([]);
  });
});

it('a source is found wherever it is cited, in the name of its layer, too', () => {
  const { project, position } = atCaret(caretBefore('L "a loose'));
  expect(markedLines(markedIn(project, references(project, position, [project], true)))).toEqual([
    'source ⟦L⟧ "a loose leaf"',
    'hand ⟦L⟧.2 "paler ink"',
    'takes ⟦L⟧,K',
    'at v1 takes ⟦L⟧.2',
    "dessus   | 1 <v1 K: c5 ; ⟦L⟧.2: d5>*n1 | <v2 K: 1 c5'zz:⟦L⟧ ; ⟦L⟧: 1 e5> |||",
    'dessus ⟦L⟧ |                           |                             |||',
  ]);
  const cited = references(project, position, [project], false);
  expect(markedLines(markedIn(project, cited))).not.toContain('source ⟦L⟧ "a loose leaf"');
});

it('a voice is highlighted where it is given and in its lanes', () => {
  const { project, position } = atCaret(caretBefore('basse    |'));
  const marked = markedWith(
    SCORE,
    highlights(project, position).map(({ range }) => range),
  );
  expect(markedLines(marked)).toEqual([
    'voice ⟦basse⟧ lower',
    '⟦basse⟧    | 1 c3                      | c                           |||',
  ]);
});

const renamed = (marked: string, to: string, files = {}): string => {
  const { project, position } = atCaret(marked, files);
  return withEdits(project.tree.text, rename(project, position, to, [project]).changes?.[FILE] ?? []);
};

const refusal = (marked: string, to: string): string => {
  try {
    renamed(marked, to);
  } catch (error) {
    if (error instanceof CannotRename) return error.message;
    throw error;
  }
  return 'renamed';
};

describe('a name is written anew', () => {
  it('in statement, head and lanes', () => {
    expect(renamed(caretBefore('dessus   |'), 'canto')).toBe(SCORE.replaceAll('dessus', 'canto'));
    expect(renamed(caretBefore('lower F4'), 'bassus')).toBe(SCORE.replaceAll('lower', 'bassus'));
  });

  it('a source with its layers, and a layer by itself', () => {
    expect(renamed(caretBefore('L "a loose'), 'Q')).toBe(SCORE.replaceAll(/\bL\b/g, 'Q'));
    expect(renamed(caretBefore('.2: d5'), 'L.3')).toBe(SCORE.replaceAll('L.2', 'L.3'));
  });

  it('unless it would be no name, a taken one, or a word of the notation', () => {
    const voice = caretBefore('dessus   |');
    expect(refusal(voice, 'basse')).toBe('There is a voice “basse” already.');
    expect(refusal(voice, 'première')).toContain('is no name');
    expect(refusal(voice, 'fig')).toContain('has a meaning of its own');
    expect(refusal(caretBefore('upper\nvoice'), 'bb')).toContain('has a meaning of its own');
    expect(refusal(caretBefore('.2: d5'), 'M')).toContain('A layer is named by its source');
    expect(refusal(caretBefore('c5 ; L.2'), 'x')).toBe('There is no name here.');
  });

  it('not a table that is built in', () => {
    expect(refusal('bentside 1\nsigns ‸anglebert-1689\n', 'mine')).toContain('is given neither');
  });

  it('a voice that has a stave of its own with the stave in the heads', () => {
    const own = 'bentside 1\nvoice canto lines 5\nvoice basso\nsystem canto C1 basso F4 meter C\n  canto | 1 c5 |||\n';
    for (const marked of [own.replace('canto lines', 'can‸to lines'), own.replace('canto C1', 'can‸to C1')]) {
      expect(renamed(marked, 'alto')).toBe(own.replaceAll('canto', 'alto'));
      expect(refusal(marked, 'basso')).toBe(
        'There is a voice “basso” already.'.replace('voice', marked.includes('can‸to C1') ? 'stave' : 'voice'),
      );
      // A word that a voice may bear, but no stave: a head would read it otherwise.
      expect(refusal(marked, 'key')).toContain('has a meaning of its own');
    }
  });

  it('not to the name of something that is built in, nor of a layer to one of no source', () => {
    const tables = 'bentside 1\ntable o‸wn\n  zz : up\n';
    expect(refusal(tables, 'anglebert-1689')).toBe('“anglebert-1689” is a table that is built in.');
    expect(refusal(caretBefore('.2: d5'), 'Z.2')).toBe('There is no source “Z”.');
  });

  it('not where another file that shares it has the new one already', () => {
    const files = { 'house.bent': 'bentside 1\nsource T "Thornmere spinet book"\n' };
    const { project, position } = atCaret('bentside 1\ninclude "house.bent"\nreading x\n  takes ‸T\n', files);
    const other = projectNamed('other.bent', 'bentside 1\ninclude "house.bent"\nreading S\n  takes T\n', files);
    expect(() => rename(project, position, 'S', [project, other])).toThrow('There is a source or reading “S” already.');
    expect(mayBeUsedElsewhere(project, position)).toBe(true);
    const { project: alone, position: voice } = atCaret(caretBefore('dessus   |'));
    expect(mayBeUsedElsewhere(alone, voice)).toBe(false);
  });

  it('and is told beforehand, with the stretch that it fills', () => {
    const { project, position } = atCaret(caretBefore('sus   |'));
    expect(prepareRename(project, position)).toMatchObject({ placeholder: 'dessus' });
  });

  it('in the file that is included and in every open file that includes it', () => {
    const files = { 'house.bent': 'bentside 1\nsource T "Thornmere spinet book"\n' };
    const score = 'bentside 1\ninclude "house.bent"\nreading x\n  takes ‸T\n';
    const { project, position } = atCaret(score, files);
    const other = projectNamed('other.bent', 'bentside 1\ninclude "house.bent"\nreading y\n  takes T\n', files);
    const apart = projectNamed('apart.bent', 'bentside 1\nsource T "another T"\nreading y\n  takes T\n', files);
    const { changes = {} } = rename(project, position, 'S', [project, other, apart]);
    const changed = Object.entries(changes).map(([uri, edits]) => `${uri}: ${edits.length}`);
    expect(changed).toEqual(['score.bent: 1', 'house.bent: 1', 'other.bent: 1']);
  });
});

it('what open files declare is found by a few of its letters', () => {
  const project = projectNamed(FILE, SCORE);
  const found = (typed: string): string[] =>
    workspaceSymbols([project], [], typed).map(({ name, containerName }) => `${containerName} ${name}`);
  expect(found('ds')).toEqual(['voice dessus']);
  expect(found('plain')).toEqual(['reading plain']);
  expect(found('xyz')).toEqual([]);
});
