/** The decisions list of the editor, and what its offers write into the text. */
import { describe, expect, it } from 'vitest';
import { signActions } from '../../server/features/openSigns/actions';
import { offersAt, openSignItems, settle } from '../../server/features/openSigns/list';
import { positionOfOffset } from '../../server/features/place';
import { FILE, projectNamed, withEdits } from '../helpers/editor';
import { analysed, errors } from '../helpers/music';

/** A dessus and a basse under a head of statements. */
const piece = (head: string, dessus: string, basse = '1 c3 |||'): string =>
  `bentside 1\n${head}stave upper\nstave lower\nvoice dessus upper\nvoice basse lower\nsystem upper G2 lower F4 meter C\n  dessus | ${dessus}\n  basse | ${basse}\n`;

const FRENCH = 'reading french\n  signs rameau-1724\ntempo 4 at 60\n';

const items = (text: string) => openSignItems(projectNamed(FILE, text));

/** What the list says: the bar, the sign, what each reading makes of it. */
const listed = (text: string): string[] =>
  items(text).map(({ bar, typed, ways }) => `${bar} ${typed} ${ways.join('; ')}`);

/** The text after the offer of a sign on the list, as a rule the first, whose title holds these words. */
function taken(text: string, words: string, reason?: string, nth = 0): string {
  const project = projectNamed(FILE, text);
  const at = items(text)[nth]?.range.start ?? { line: 0, character: 0 };
  const offers = offersAt(project, at);
  const offer = offers.find(({ title }) => title.includes(words));
  if (offer === undefined) throw new Error(`no such offer among: ${offers.map(({ title }) => title).join('; ')}`);
  return withEdits(text, settle(project, at, offer.id, reason ?? offer.reason) ?? []);
}

const lane = (text: string, voice = 'dessus'): string => new RegExp(`${voice} \\| (.*)`).exec(text)?.[1] ?? '';
const notes = (text: string): string[] => text.match(/^note .*/gm) ?? [];

describe('the list', () => {
  it('says bar by bar what each reading makes of a sign, and how sure that is', () => {
    const late = 'reading late from french\n  signs couperin-1713\n';
    expect(listed(piece(FRENCH + late, "2 d5'zzz c | 1 e5'ca |||", '1 c3 | 1 c3 |||'))).toEqual([
      expect.stringMatching(
        /^1 'zzz french: Cadence of rameau-1724 \(from memory\): e5 d5 .*; late: couperin-1713 says nothing of it, played plain$/,
      ),
      expect.stringMatching(/^2 'ca french: Pincé of rameau-1724 \(likely\): e5 d5 e5 /),
    ]);
  });

  it('leaves out a sign whose playing is said in round brackets, or by an annotation about performance', () => {
    const head = `${FRENCH}note n1 kind performance : "so"\nnote n2 kind layout : "paler ink"\n`;
    expect(
      listed(piece(head, "4 d5'zzz(with_stop) d'zzz*n1 d'zzz*n2 d'zzz(above) |||")).map((line) => line[2]),
    ).toHaveLength(2);
  });

  it('is empty without a table', () => {
    expect(items(piece('reading plain\n', "1 d5'zz |||"))).toEqual([]);
  });
});

describe('what is accepted', () => {
  it('is annotated at its sign, and off the list', () => {
    const text = taken(piece(FRENCH, "2 d5'zzz c |||"), 'Accept');
    expect(lane(text)).toBe("2 d5'zzz*n1 c |||");
    expect(notes(text)).toEqual(['note n1 kind performance : "Played as Cadence of rameau-1724 (from memory)"']);
    expect(items(text)).toEqual([]);
  });

  it('shares one annotation where the reason is the same', () => {
    const once = taken(piece(FRENCH, "2 d5'zzz c'zzz |||"), 'Accept');
    const twice = taken(once, 'Accept');
    expect(lane(twice)).toBe("2 d5'zzz*n1 c'zzz*n1 |||");
    expect(notes(twice)).toHaveLength(1);
  });

  it('is accepted at once with all signs of its name that are played alike', () => {
    const text = taken(piece(FRENCH, "4 d5'zzz c'zzz 2 e'ca | 1 d5'zzz |||", '1 c3 | 1 c3 |||'), 'Accept all 3');
    expect(lane(text)).toBe("4 d5'zzz*n1 c'zzz*n1 2 e'ca | 1 d5'zzz*n1 |||");
    expect(notes(text)).toHaveLength(1);
    expect(listed(text).map((line) => line.slice(0, 5))).toEqual(["1 'ca"]);
  });

  it('is signed by the editor, if the file names one', () => {
    const text = taken(piece(`${FRENCH}editor MK "an editor"\n`, "2 d5'zzz c |||"), 'Accept', 'as "he" plays');
    expect(notes(text)).toEqual(['note n1 kind performance by MK : "as ""he"" plays"']);
    expect(errors(analysed(text))).toEqual([]);
  });

  it('stands behind the accidental of a sign, and before the next sign of a set', () => {
    expect(lane(taken(piece(FRENCH, "2 d5'turn'n c |||"), 'Accept'))).toBe("2 d5'turn'n*n1 c |||");
    expect(lane(taken(piece(FRENCH, "2 d5'cb'ca c |||"), 'Accept'))).toBe("2 d5'cb*n1'ca c |||");
  });
});

describe('what is chosen otherwise', () => {
  it('is a word in round brackets, with who speaks for it', () => {
    const text = taken(piece(FRENCH, "2 e5'ca c |||"), '(single)');
    expect(lane(text)).toBe("2 e5'ca(single)*n1 c |||");
    expect(notes(text)).toEqual(['note n1 kind performance : "The shorter pincé, from memory."']);
  });

  it.each([
    ["2 e5'[ca]? c |||", "2 e5'[ca](single)?*n1 c |||"],
    ["2 e5'ca(above) c |||", "2 e5'ca(above single)*n1 c |||"],
    ["2 e5'ca:french c |||", "2 e5'ca(single):french*n1 c |||"],
  ])('finds its place in %s', (before, after) => {
    const text = taken(piece(FRENCH, before), '(single)');
    expect(lane(text)).toBe(after.replace('(single)?', '?(single)'));
    expect(errors(analysed(text))).toEqual([]);
  });

  it('says nothing, and is no slip, in a reading whose table does not know the word', () => {
    const strokes = 'reading virginals\n  signs english-strokes\nreading late\n  signs purcell-1696\n';
    const text = taken(piece(strokes, "1 d5'ss |||"), '(shake_upper)');
    expect(lane(text)).toBe("1 d5'ss(shake_upper)*n1 |||");
    expect(items(text)).toEqual([]);
  });
});

describe('what could not be played is mended at its sign', () => {
  const titles = (text: string): string[] => {
    const project = projectNamed(FILE, text);
    const at = positionOfOffset(project.tree, text.indexOf("'") + 1);
    return signActions(project, { start: at, end: at }).flatMap(({ title, kind }) =>
      kind === 'quickfix' ? title : [],
    );
  };

  it('a disputed sign by one of its readings', () => {
    expect(
      titles(piece('signs english-strokes\nreading virginals\n', "1 d5'ss |||")).map((title) => title.slice(0, 38)),
    ).toEqual(
      [
        "Play 'ss otherwise, (shake_main): on the",
        "Play 'ss otherwise, (shake_upper): on th",
        "Play 'ss otherwise, (shake_long): on the",
        "Play 'ss otherwise, (mordent): on the be",
      ].map((title) => title.slice(0, 38)),
    );
  });

  const silent = piece('reading old\n  signs chambonnieres-1670\n', "2 d5'zz c'zl |||");

  it('a sign that its table does not have, by a row of a table of the file’s own', () => {
    const text = taken(silent, 'as rameau-1724 does', '', 1);
    expect(text).toContain(
      'table house from chambonnieres-1670\n  zl "Cadence appuyée" : on beat, +1 leaned, (0 +1) repeated, hold\nreading old\n  signs house\n',
    );
    expect(errors(analysed(text))).toEqual([]);
    expect(listed(text)).toEqual([listed(silent)[0], expect.stringContaining('Cadence appuyée of house: d5 c5')]);
  });

  it('or by another table, in the reading that states it', () => {
    expect(taken(silent, 'Play all signs in old by anglebert-1689', '', 1)).toBe(
      silent.replace('chambonnieres-1670', 'anglebert-1689'),
    );
  });

  it('the row goes into the table in force, if that is the file’s own', () => {
    const own =
      'table house from chambonnieres-1670\n  zz "cadence" : on beat, (+1 0) repeated\nreading old\n  signs house\n';
    const text = taken(piece(own, "2 d5'zl c |||"), 'as rameau-1724 does');
    expect(text).toContain('repeated\n  zl "Cadence appuyée" : on beat, +1 leaned, (0 +1) repeated, hold\nreading');
  });

  it('and names every reading that this changes, also one that does not have the sign', () => {
    const head =
      'source K "f. 3v"\nsource L "leaf"\nreading old\n  signs chambonnieres-1670\nreading leaf from old\n  takes L\n';
    const text = piece(head, "<K: 2 d5'zl ; L: 2 d5> 2 c5 |||");
    expect(titles(text)).toContain('Play all signs in old, leaf by anglebert-1689');
  });

  it('but not by a row that says that nobody knows how it is played', () => {
    const text = piece('reading old\n  signs rameau-1724\n', "2 d5'ss c |||");
    expect(titles(text).filter((title) => title.includes('as english-strokes does'))).toEqual([]);
    expect(titles(text)).toContain('Play all signs in old by english-strokes');
  });

  it('the row stands on a line of its own, also where the table ends the file', () => {
    const own = piece('reading old\n  signs house\n', "2 d5'zl c |||").concat(
      'table house from chambonnieres-1670\n  zz "cadence" : on beat, (+1 0) repeated',
    );
    expect(taken(own, 'as rameau-1724 does')).toContain('(+1 0) repeated\n  zl "Cadence appuyée" : on beat');
  });

  it('where no reading states a table, by the file’s own statement', () => {
    const text = taken(piece('signs chambonnieres-1670\nreading old\n', "2 d5'zl c |||"), 'as rameau-1724 does');
    expect(text).toContain('table house from chambonnieres-1670\n');
    expect(text).toContain('\nsigns house\nreading old\n');
  });

  it('a sign that the table has for another place only, by the name of its row', () => {
    const text = piece('reading old\n  signs anglebert-1689\n', "2 d5'cb c |||");
    expect(titles(text)[0]).toContain('(cheute)');
  });

  it('an auxiliary that is undecided, by either accidental', () => {
    const text = piece('reading old\n  signs rameau-1724\n', "2 c#5'turn d |||", '2 bb3 a3 |||');
    expect(titles(text)).toEqual(["Write 'n after the sign", "Write 'b after the sign"]);
    expect(lane(taken(text, "'n after"))).toBe("2 c#5'turn'n d |||");
    expect(
      items(taken(text, "'n after"))
        .flatMap(({ findings }) => findings)
        .join(),
    ).not.toContain('auxiliary');
  });

  it('a word that says nothing, by the nearest that does', () => {
    expect(lane(taken(piece(FRENCH, "2 d5'zzz(form main) c |||"), 'Write from main'))).toBe(
      "2 d5'zzz(from main) c |||",
    );
    expect(lane(taken(piece(FRENCH, "2 e5'ca(singel) c |||"), 'Write single'))).toBe("2 e5'ca(single) c |||");
  });
});
