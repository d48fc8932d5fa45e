/** Names that a file cites but nothing gives (common practice of editing: every siglum is declared). */
import { describe, expect, it } from 'vitest';
import { checks } from '../../server/checks';
import { errors, findingOf, lane, mended, passage } from '../helpers/music';

const bar = (music: string): string => `system upper C1 lower F4 meter C\n dessus | ${music} |||\n`;
const twoBars = (first: string, second: string): string => bar(`${first} | ${second}`);
const PLAIN = 'reading plain "at face value"\n';

/** What the text at a finding says. */
const marked = (analysis: ReturnType<typeof lane>, code: string): string => {
  const { start, end } = findingOf(analysis, code).range;
  return analysis.tree.text.slice(start.offset, end.offset);
};

describe('the list of checks', () => {
  it('names each check once and says what it needs', () => {
    expect(new Set(checks.map((one) => one.name)).size).toBe(checks.length);
    for (const one of checks) expect(one.needs.length).toBeGreaterThan(0);
  });
});

describe('whose an option is', () => {
  it('may be a source, a layer, a reading, the slip or its correction', () => {
    const all = '<K: 1 c5 ; K.2: 1 d5 ; plain: 1 e5 ; L?: 1 f5 ; corr: 1 g5>';
    expect(errors(passage(bar(all), `hand K.2 "paler ink"\n${PLAIN}`))).toEqual([]);
    expect(errors(lane('<sic: 1 c5 ; corr: 1 d5>'))).toEqual([]);
  });
  it('is told with the nearest reading as a fix', () => {
    const slip = passage(bar('<plaim: 1 d5 ; L: 1 e5>'), PLAIN);
    expect(errors(slip)).toEqual(['unknown-label']);
    expect(mended(slip, 'unknown-label')).toContain('<plain: 1 d5');
  });
  it('is told of a doubtful one without its query', () => {
    const slip = passage(bar('<K: 1 d5 ; plaim?: 1 e5>'), PLAIN);
    expect(marked(slip, 'unknown-label')).toBe('plaim');
    expect(mended(slip, 'unknown-label')).toContain('; plain?: 1 e5');
  });
  it('is told of a layer that no hand declares', () => {
    expect(errors(lane('<K: 1 c5 ; K.2: 1 d5>'))).toEqual(['unknown-label']);
  });
  it('is told of options within spans and options', () => {
    expect(errors(lane('<K: 1 c5 ; L: <M: 1 d5 ; K: 1 e5>>'))).toEqual(['unknown-label']);
    expect(errors(lane('{unclear <K: 1 c5 ; M: 1 d5>}'))).toEqual(['unknown-label']);
  });
});

describe('what is limited to readings', () => {
  it('may be limited to a source, a reading or what is written', () => {
    expect(errors(passage(bar("2 c5'zz:plain,K d'zz:!written"), PLAIN))).toEqual([]);
  });
  it.each([
    ['a mark', "1 c5'zz:K,plaim", "c5'zz:K,plain"],
    ['a mark with a word on how it is meant', "1 c5'zz(above):!plaim", "c5'zz(above):!plain"],
    ['a tie', '2 c5=:plaim c', 'c5=:plain c'],
    ["a tie with marks after it, on a chord's upper note", "2 c5-e=:plaim'zz c-e", "c5-e=:plain'zz"],
    ['a lone tie', '2 c5 =:plaim', 'c5 =:plain'],
    ['a span', '{overdot:plaim 4. c5 8 d} 2 e', '{overdot:plain 4.'],
    ['a barline', "2 c5'u d |'.:plaim 1 d5", "|'.:plain 1"],
  ])('mends the reading to which %s is limited', (_, music, right) => {
    const slip = passage(bar(music), PLAIN);
    expect(marked(slip, 'unknown-label')).toBe('plaim');
    expect(mended(slip, 'unknown-label')).toContain(right);
  });
  it('is told of a sign on the barline that opens a lane', () => {
    const slip = passage("system upper C1 lower F4 meter C\n dessus |'fermata:plaim 1 c5 |||\n", PLAIN);
    expect(mended(slip, 'unknown-label')).toContain("|'fermata:plain 1");
  });
  it('may be added by a hand that is declared', () => {
    expect(errors(lane('{added:K.2 1 c5}'))).toEqual(['unknown-label']);
    expect(errors(passage(bar('{added:K.2 1 c5}'), 'hand K.2 "paler ink"\n'))).toEqual([]);
  });
});

describe('an annotation that no note statement writes out', () => {
  const BLOT = 'note blot : "the head is blotted"\n';
  it.each([
    ['a note', '1 c5*blott', 'c5*blot '],
    ['a sign', "1 c5'zz*blott", "'zz*blot "],
    ['a span', '{unclear 1 c5}*blott', '}*blot '],
    ['a place', '<v3*blott K: 1 c5 ; L: 1 d5>', '<v3*blot K'],
    ['an option', '<K: 1 c5 ; L: 1 d5>*blott', '>*blot '],
    ['a barline', '1 c5 |*blott 1 d', '|*blot 1'],
  ])('is mended at %s', (_, music, right) => {
    const slip = passage(bar(music), BLOT);
    expect(errors(slip)).toEqual(['unknown-note']);
    expect(mended(slip, 'unknown-note')).toContain(right);
  });
});

describe('a manual', () => {
  it('is one that the instrument has', () => {
    const harpsichord = 'instrument harpsichord\n manual upper stops 8\n manual lower stops 8 4\n';
    expect(errors(passage(bar('(manual upper) 1 c5'), harpsichord))).toEqual([]);
    const slip = passage(bar('(manual uper) 1 c5'), harpsichord);
    expect(findingOf(slip, 'unknown-manual').message).toBe(
      'The instrument has no manual called “uper”; declared: upper, lower.',
    );
    expect(mended(slip, 'unknown-manual')).toContain('(manual upper)');
  });
});

describe('a place', () => {
  const named = '<tirade K: 1 c5 ; L: 1 e5>';
  it('of which a reading decides is borne by options', () => {
    expect(errors(passage(bar(named), 'reading late "as L"\n at tirade takes L\n'))).toEqual([]);
    const slip = passage(bar(named), 'reading late "as L"\n at tirad takes L\n');
    expect(errors(slip)).toEqual(['unknown-place']);
    expect(mended(slip, 'unknown-place')).toContain('at tirade takes L');
  });
  it('that is linked is borne by options', () => {
    expect(errors(passage(bar(named), 'link tirade run\n'))).toEqual(['unknown-place']);
  });
  it('may be borne by several options, with labels of their own', () => {
    const twice = twoBars('<run K: 1 c5 ; L: 1 e5>', '<run L: 1 c5 ; corr: 1 d5>');
    expect(errors(passage(twice))).toEqual([]);
  });
});

describe('a section', () => {
  const inB = 'reading one "stretched"\n practice overdot in B\n';
  it('may be named in a lane or before a system', () => {
    expect(errors(passage(bar('(section B) 1 c5'), inB))).toEqual([]);
    expect(errors(passage(`section B\n${bar('1 c5')}`, inB))).toEqual([]);
  });
  it('is told where a practice names one that is not there', () => {
    expect(errors(passage(bar('(section A) 1 c5'), inB))).toEqual(['unknown-section']);
    expect(errors(passage(bar('1 c5'), 'practice inegal 8 in B\n'))).toEqual(['unknown-section']);
  });
  it("is told where a reading's order names one that is not there", () => {
    const slip = passage(bar('(section grave) 1 c5'), 'reading one "twice"\n order grave grav\n');
    expect(mended(slip, 'unknown-section')).toContain('order grave grave');
  });
});

describe('a witness lane', () => {
  it('of an unknown witness is told once', () => {
    expect(errors(passage(`${bar('1 c5')} dessus M | 1 d5 |||\n`))).toEqual(['unknown-witness']);
  });
});
