import { describe, expect, it } from 'vitest';
import { completion, resolved, TRIGGERS } from '../../server/features/completion';
import { documentSymbols } from '../../server/features/symbols';
import { type AtCaret, atCaret, FILE, inLane, projectNamed, withEdits } from '../helpers/editor';
import { HEAD } from '../helpers/music';
import { sampleText } from '../helpers/samples';

const items = ({ project, position }: AtCaret, triggered = false) => completion(project, position, triggered).items;
const labels = (place: AtCaret, triggered = false): string[] => items(place, triggered).map(({ label }) => label);

/** The text after an item was taken. */
function taken(place: AtCaret, label: string): string {
  const edit = items(place).find((one) => one.label === label)?.textEdit;
  if (edit === undefined || !('range' in edit)) throw new Error(`${label} is not among ${labels(place)}`);
  return withEdits(place.project.tree.text, [edit]);
}

const statement = (text: string): AtCaret => atCaret(`${HEAD}${text}`);

describe('signs after an apostrophe', () => {
  it('are the names of the chosen table, then all shapes with what is drawn', () => {
    const found = items(inLane("1 c5'‸", 'signs anglebert-1689\n'));
    expect(found[0]).toMatchObject({ label: 'tremblement_simple', detail: 'Tremblement simple, anglebert-1689' });
    expect(found.find(({ label }) => label === 'zz')).toMatchObject({ detail: 'a short zigzag, above the note' });
    expect(labels(inLane("1 c5'‸"))).not.toContain('pince');
    expect(labels(inLane("1 c5'‸"))).toContain('fermata');
  });

  it('replace what was typed of them', () => {
    expect(taken(inLane("1 c5'pi‸", 'signs anglebert-1689\n'), 'pince')).toContain("1 c5'pince |||");
  });

  it('are told in full when one is looked at', () => {
    const place = inLane("1 c5'‸", 'signs anglebert-1689\n');
    const pince = items(place).find(({ label }) => label === 'pince');
    if (pince === undefined) throw new Error('no pincé');
    expect(JSON.stringify(resolved(pince, place.project).documentation)).toContain('on beat, 0 -1 0, hold');
  });

  it('take places, rivals and readings', () => {
    expect(labels(inLane("1 c5'zz(‸"))).toContain('above');
    expect(labels(inLane("1 c5'tremblement_simple(‸", 'signs anglebert-1689\n'))[0]).toBe('with_stop');
    expect(labels(inLane("1 c5'zz:‸"))).toEqual(['K', 'L', 'written']);
    expect(labels(inLane("1 c5'zz:K,‸"))).toContain('L');
  });
});

describe('where sources differ', () => {
  it('labels are proposed that the place does not have', () => {
    expect(labels(inLane('<‸'))).toEqual(['K', 'L', 'sic', 'corr']);
    expect(labels(inLane('<K: 1 c5 ; ‸>'))).toEqual(['L', 'sic', 'corr']);
    expect(taken(inLane('<‸'), 'K')).toContain('<K:  |||');
  });

  it('places that have a name can go on', () => {
    expect(labels(inLane('<v1 K: 2 c5 ; L: 2 d5> <‸'))).toContain('v1');
  });
});

describe('in a lane', () => {
  it('annotations, spans and changes are proposed by their signs', () => {
    expect(labels(inLane('1 c5*‸', 'note n1 kind pitch : "a sharp"\n'))).toEqual(['n1']);
    expect(labels(inLane('{‸'))).toEqual(expect.arrayContaining(['3in2', 'small', 'overdot']));
    expect(labels(inLane('(‸'))).toEqual(expect.arrayContaining(['now', 'custos', 'above']));
    expect(labels(inLane('(stems ‸'))).toEqual(['up', 'down', 'home']);
  });

  it('a change proposes the clefs that fit the stave, the usual ones first', () => {
    const found = labels(inLane('(now ‸', 'stave upper lines 6\n'));
    expect(found.slice(0, 3)).toEqual(['G1', 'G2', 'C1']);
    expect(found).toEqual(expect.arrayContaining(['key', 'meter']));
  });

  it('values are proposed when they are asked for', () => {
    expect(labels(inLane('4 c5 ‸'))).toEqual(expect.arrayContaining(['4', '8', 'rbar']));
  });

  // Notes are typed fast: no list may take Space, Enter or the letter of a note.
  it.each(['4 c5 d‸', '4 c5 r‸', '4 c5 |‸', '4 c5 "tr‸', "4 c5 // c5'‸"])('nothing is proposed at %s', (music) => {
    expect(labels(inLane(music))).toEqual([]);
  });

  it('a colon that is no limit proposes nothing', () => {
    expect(labels(inLane('<K:‸'), true)).toEqual([]);
  });

  it('no space, end of line or barline opens the list', () => {
    for (const sign of [' ', '\n', '|', '\t']) expect(TRIGGERS).not.toContain(sign);
  });
});

describe('statements', () => {
  it.each([
    ['vo‸', 'voice'],
    ['voice canto ‸', 'upper'],
    ['voice canto upper stems ‸', 'down'],
    ['reading x\n  ‸', 'takes'],
    ['reading x\n  takes ‸', 'K'],
    ['reading x\n  takes K,‸', 'L'],
    ['reading x\n  practice ‸', 'overdot'],
    ['signs ‸', 'anglebert-1689'],
    ['tuning ‸', 'vallotti'],
    ['tuning mean‸', 'meantone'],
    ['tempo ‸', '4'],
    ['tempo 4 ‸', 'at'],
    ['note n2 kind ‸', 'emendation'],
    ['table house\n  zz "shake" : ‸', 'on beat'],
    ['table house\n  ‸', 'zz'],
    ['system upper ‸', 'C1'],
    ['system upper C1 ‸', 'meter'],
    ['system meter ‸', 'cut-C'],
    ['system upper C1 key ‸', 'none'],
    ['stave third lines ‸', '6'],
    ['system upper C1\n  lower ‸', 'F4'],
    ['system upper C1\n  key ‸', 'none'],
    ['system upper C1\n  meter ‸', 'cut-C'],
    ['system upper C1\n  ‸', 'meter'],
  ])('%s proposes %s', (text, label) => {
    expect(labels(statement(text))).toContain(label);
  });

  it('a stave whose clef is said already is not proposed again', () => {
    expect(labels(statement('system upper C1 ‸'))).not.toContain('upper');
    expect(labels(statement('system upper C1 ‸'))).toContain('lower');
  });

  it.each([
    ['', ['on beat', 'before beat', 'extends', 'unresolved']],
    ['on ', ['beat']],
    ['on beat, ', ['hold', 'rest', 'spread']],
    ['on beat, 0 -1 ', ['leaned', 'for', 'at']],
    ['on beat, (+1 0) ', ['repeated']],
    ['on beat, (+1 0) repeated at 11 ', ['a second', 'a pulse']],
    ['on beat, 0 -1 0, ho', ['hold', 'rest', 'spread']],
    ['on beat, spread ', ['up', 'down']],
    ['on beat, spread up ', ['filled']],
    ['on beat ', []],
  ])('a recipe that goes “%s” proposes what can follow', (recipe, words) => {
    expect(labels(statement(`table house\n  zz "shake: long" : ${recipe}‸`))).toEqual(words);
  });

  it('a clef after the name of a stave is the first to be proposed, and fits it', () => {
    expect(labels(statement('system upper ‸'))[0]).toBe('G1');
    expect(labels(statement('system upper ‸'))).not.toContain('C6');
  });

  it('a name that is given anew is not proposed', () => {
    expect(labels(statement('voice ‸'))).toEqual([]);
  });

  it('an instrument is called after a type', () => {
    expect(labels(statement('instrument ‸'))).toContain('ruckers-single');
    expect(taken(statement('instrument kirk‸'), 'kirkman')).toContain('instrument kirkman');
  });

  it.each([
    ['reading early\nreading late from ‸', ['early']],
    ['section B in ‸', []],
    ['reading x takes K,‸', ['L']],
    ['reading x takes ‸', ['K', 'L']],
  ])('%s proposes neither itself nor what its list has', (text, names) => {
    expect(labels(statement(text))).toEqual(names);
  });

  it.each(['table house from ‸', 'temperament house from ‸', 'voice house ‸'])('%s does not propose itself', (text) => {
    expect(labels(statement(text))).not.toContain('house');
    expect(labels(statement(text)).length).toBeGreaterThan(1);
  });

  it('a voice may be called after its stave', () => {
    expect(labels(statement('voice upper ‸'))).toContain('upper');
  });
});

describe('the beginning of a line in a system', () => {
  const SYSTEM = `${HEAD}system upper C1 lower F4 meter C\n  dessus | 1 c5 |\n  basse  | 1 c3 |\n`;

  it('after the last lane is first of all the next system with all its lanes', () => {
    const [first] = items(atCaret(`${SYSTEM}  ‸`));
    expect(first).toMatchObject({ label: 'system', preselect: true, insertTextFormat: 2 });
    expect(taken(atCaret(`${SYSTEM}  ‸`), 'system')).toBe(`${SYSTEM}system\n  dessus | \${1}\n  basse  | \${2}`);
    expect(items(atCaret(`${SYSTEM}‸`))[0]?.label).toBe('system');
  });

  it('proposes no system between two lanes, and one after them', () => {
    expect(labels(atCaret(SYSTEM.replace('  basse', '  ‸\n  basse')))).not.toContain('system');
    expect(labels(atCaret(`${SYSTEM}‸`)).filter((label) => label === 'system')).toHaveLength(1);
  });

  it('proposes the voices that have no lane yet, and witnesses after a voice', () => {
    expect(labels(atCaret(`${SYSTEM}  t‸`))).toEqual(['taille', 'fig', 'text']);
    expect(labels(atCaret(`${SYSTEM}  dessus ‸`))).toEqual(['K', 'L']);
  });
});

describe('broken text', () => {
  // Completion must not die inside broken text: each sample is cut at many places.
  it.each(['leaves.bent', 'toccata.bent'])('%s, cut anywhere, has a list and an outline', (name) => {
    const text = sampleText(name);
    for (let end = 1; end < text.length; end += 211) {
      const project = projectNamed(FILE, text.slice(0, end));
      const line = project.tree.lineStarts.length - 1;
      const position = { line, character: end - (project.tree.lineStarts[line] ?? 0) };
      expect(() => completion(project, position, false)).not.toThrow();
      expect(documentSymbols(project)).toBeDefined();
    }
  });

  it('proposes signs although a bracket before is open', () => {
    expect(labels(inLane("<K: {3in2 8 c5'‸"))).toContain('zz');
  });
});
