/** Signs where they belong, under the address of their text; what is the editor's looks other than the source's. */
import { describe, expect, it } from 'vitest';
import { shapes } from '../../grammar/vocabulary/shapes';
import { SPACE } from '../../server/engraving/additions/heads';
import { codeOfEnclosed, codeOfShape, standsOutside } from '../../server/engraving/font/codepoints';
import { below, classOf, glyphsOf, type SvgElement } from '../../server/engraving/svg';
import { boxesIn } from '../helpers/boxes';
import { collisions } from '../helpers/collisions';
import { drawn, ofClass, pictureOf } from '../helpers/drawn';
import { engraver } from '../helpers/engraver';
import { analysed, lane, passage, scoreOf } from '../helpers/music';

async function pageOf(music: string, before = ''): Promise<string> {
  const [page = ''] = await drawn(scoreOf(lane(music, 'C', before)));
  return page;
}

const byId = (page: string, id: string): SvgElement => {
  const found = [...below(pictureOf(page))].find(({ attributes }) => attributes['data-id'] === id);
  if (found === undefined) throw new Error(`${id} is not drawn`);
  return found;
};

const NOTE = 'e-1-1-dessus-1.1';
const SIGN = `${NOTE}-m1`;

const boxOf = async (page: string, id: string, what?: string) => {
  const box = (await boxesIn(page)).find((one) => one.id === id && (what === undefined || one.what === what));
  if (box === undefined) throw new Error(`${id} has no box`);
  return box;
};

describe('a sign', () => {
  it.each(shapes.filter(standsOutside).map(({ short }) => short))(
    "over its note is drawn with its glyph: '%s",
    async (short) => {
      const page = await pageOf(`2 c5'${short} d`);
      const shape = shapes.find((one) => one.short === short);
      const code = shape && codeOfShape(shape);
      expect(page).toContain(`href="#${code?.toString(16).toUpperCase()}-`);
      expect((await boxOf(page, SIGN)).bottom).toBeLessThan((await boxOf(page, NOTE, 'notehead')).top);
    },
  );

  it('stands left of the head where the source has it there, at its height', async () => {
    const page = await pageOf("2 c5'cb d");
    const [comma, head] = [await boxOf(page, SIGN), await boxOf(page, NOTE, 'notehead')];
    expect(comma.right).toBeLessThan(head.left + 0.1);
    expect((comma.top + comma.bottom) / 2).toBeCloseTo((head.top + head.bottom) / 2, 1);
  });

  it('stands right of the head and its dot, before the next note', async () => {
    const page = await pageOf("4. c5'ca 8 d 2 e");
    const [comma, head, next] = [
      await boxOf(page, SIGN),
      await boxOf(page, NOTE, 'notehead'),
      await boxOf(page, 'e-1-1-dessus-1.2', 'notehead'),
    ];
    expect(comma.left).toBeGreaterThan(head.right);
    expect(comma.right).toBeLessThan(next.left);
  });

  it('stands right of a flag that hangs down to it, still before the next note with its accidental', async () => {
    const page = await pageOf("8 c5'ca , d#5 2. e");
    const [flag] = ofClass(pictureOf(page), 'flag').flatMap(glyphsOf);
    const box = flag && (await engraver()).outline(flag.code)?.box;
    const right = ((flag?.x ?? Number.NaN) + (box?.right ?? Number.NaN) * (flag?.scale ?? Number.NaN)) / SPACE;
    expect((await boxOf(page, SIGN)).left).toBeGreaterThan(right);
    expect(collisions(await boxesIn(page))).toEqual([]);
  });

  it('crosses the stem of its note', async () => {
    const page = await pageOf("2 c5'ss d");
    const [stroke, head] = [await boxOf(page, SIGN), await boxOf(page, NOTE, 'notehead')];
    expect(stroke.bottom).toBeLessThan(head.bottom);
    expect((stroke.left + stroke.right) / 2).toBeCloseTo(head.right, 0);
  });

  it('has its hook where the source has it, at the foot or the head of an upright wavy line', async () => {
    const hookOf = async (sign: string): Promise<number> => {
      const hook = byId(await pageOf(`1 c5-e'${sign}`), 'e-1-1-dessus-1.1-n2-m1-hook');
      return Number(/^M\S+ (\S+)/.exec(hook.children[0]?.attributes.d ?? '')?.[1]);
    };
    expect(await hookOf('arpu')).toBeGreaterThan(await hookOf('arpd'));
  });

  it('has a hook that passes by the accidentals beside it', async () => {
    const page = await pageOf("2 c#5-e'arpu c5-e#'arpd");
    const accidentals = (await boxesIn(page)).filter(({ what }) => what === 'accid');
    const tipOf = (event: number): number => {
      const hook = byId(page, `e-1-1-dessus-1.${event}-n2-m1-hook`);
      return Number(/(\S+)$/.exec(hook.children[0]?.attributes.d ?? '')?.[1]) / SPACE;
    };
    const [first, second] = accidentals;
    expect(tipOf(1)).toBeGreaterThan(first?.bottom ?? 0);
    expect(tipOf(2)).toBeLessThan(second?.top ?? 0);
  });

  it("has its hook between the editor's brackets too", async () => {
    const page = await pageOf("1 c5-e'[arpu]");
    expect(byId(page, 'e-1-1-dessus-1.1-n2-m1-hook').children).toHaveLength(1);
  });

  it('stands over a head without stem', async () => {
    const page = await pageOf("1 c5'ss");
    expect((await boxOf(page, SIGN)).bottom).toBeLessThan((await boxOf(page, NOTE, 'notehead')).top);
  });
});

/** Common practice: what belongs to the lower of two voices on a stave stands under it, what belongs to the upper over it. */
describe('of two voices on a stave', () => {
  const bar = (dessus: string, taille: string) =>
    drawn(scoreOf(passage(`system upper G2 lower F4 meter C\n  dessus | ${dessus} |\n  taille | ${taille} |\n`)));

  it.each(['zz', 'turn', '3', 'fermata'])("each has its own '%s on its side", async (mark) => {
    const [page = ''] = await bar(`1 d5'${mark}`, `1 f4'${mark}`);
    const [upper, lower] = [await boxOf(page, 'e-1-1-dessus-1.1-m1'), await boxOf(page, 'e-1-1-taille-1.1-m1')];
    expect(upper.bottom).toBeLessThan((await boxOf(page, 'e-1-1-dessus-1.1', 'notehead')).top);
    expect(lower.top).toBeGreaterThan((await boxOf(page, 'e-1-1-taille-1.1', 'notehead')).bottom);
    expect(collisions(await boxesIn(page))).toEqual([]);
  });

  it('the lower has its sign above where the source has it there, and where it is alone', async () => {
    const [typed = ''] = await bar('1 d5', "1 f4'zz(above)");
    const [alone = ''] = await bar('__', "1 f4'zz");
    for (const page of [typed, alone])
      expect((await boxOf(page, 'e-1-1-taille-1.1-m1')).bottom).toBeLessThan(
        (await boxOf(page, 'e-1-1-taille-1.1', 'notehead')).top,
      );
  });
});

describe("what is the editor's", () => {
  it('stands in brackets', async () => {
    // SMuFL 1.4: U+E26C accidentalBracketLeft.
    const glyphs = [...below(byId(await pageOf("2 c5'[zz] d"), SIGN))].map(
      ({ attributes }) => attributes['xlink:href'],
    );
    expect(glyphs.filter((glyph) => /#E26[CD]/.test(glyph ?? ''))).toHaveLength(2);
    expect((await pageOf("2 c5'zz d")).match(/#E26C/)).toBeNull();
  });

  it.each([
    ['[#]', 's', 'brack'],
    ['(n)', 'n', 'paren'],
  ] as const)('is one glyph where it is an accidental, as a cautionary one is: c%s5', async (typed, accid, enclose) => {
    const [glyph] = ofClass(pictureOf(await pageOf(`2 c${typed}5 d`)), 'accid').flatMap(glyphsOf);
    expect(glyph?.code).toBe(codeOfEnclosed(accid, enclose));
  });

  it('has an accidental in brackets over a sign clear of it', async () => {
    const boxes = await boxesIn(await pageOf("2 c[#]5'zz d"));
    expect(boxes.map(({ what }) => what)).toEqual(expect.arrayContaining(['accid', 'mordent']));
    expect(collisions(boxes)).toEqual([]);
  });

  it('keeps its brackets after a note clear of dot and next note', async () => {
    const page = await pageOf("4. c5'[ca] 8 d 2 e");
    const [dot] = ofClass(pictureOf(page), 'dots').flatMap(({ children }) => children);
    const dotEnds = (Number(dot?.attributes.cx) + Number(dot?.attributes.rx)) / SPACE;
    const boxes = await boxesIn(page);
    const marks = boxes.filter(({ id }) => id === SIGN);
    expect(marks).toHaveLength(3);
    expect(Math.min(...marks.map(({ left }) => left))).toBeGreaterThan(dotEnds);
    expect(collisions(boxes)).toEqual([]);
  });

  it.each(shapes.filter(standsOutside).map(({ short }) => short))(
    "has its brackets beside the sign and at its height: '[%s]",
    async (short) => {
      const page = await pageOf(`2 c5'[${short}] d`);
      const boxes = (await boxesIn(page)).filter(({ id }) => id === SIGN).sort((a, b) => a.left - b.left);
      const [before, sign, after] = boxes;
      expect(boxes).toHaveLength(3);
      expect(before?.right).toBeLessThanOrEqual(sign?.left ?? Number.NaN);
      expect(after?.left).toBeGreaterThanOrEqual(sign?.right ?? Number.NaN);
      const middles = boxes.map(({ top, bottom }) => (top + bottom) / 2);
      for (const middle of middles) expect(middle).toBeCloseTo(middles[1] ?? Number.NaN, 1);
    },
  );

  it('has brackets around whole passages', async () => {
    const page = await pageOf('2 c5 {supplied 4 d e}');
    const brackets = byId(page, 'e-1-1-dessus-1.2-supplied');
    expect(brackets.children.filter(({ name }) => name === 'path')).toHaveLength(2);
  });

  it('is a broken line where it is a tie', async () => {
    const tied = byId(await pageOf('2 c5[=] 2 c5'), `${NOTE}-t1`);
    expect([...below(tied)].some(({ attributes }) => 'stroke-dasharray' in attributes)).toBe(true);
    const plain = byId(await pageOf('2 c5= 2 c5'), `${NOTE}-t1`);
    expect([...below(plain)].some(({ attributes }) => 'stroke-dasharray' in attributes)).toBe(false);
  });

  it('is told from what is doubtful, which is grey', async () => {
    const doubtful = byId(await pageOf("2 c5'zz? d"), SIGN);
    expect(doubtful.attributes.color).toBe('#707070');
  });
});

describe('music without bars', () => {
  const PRELUDE = `bentside 1\nstave upper\nstave lower\nvoice dessus upper\n
system free upper C1 lower F4\n  dessus | (down) f2'u f3 (home) c4 f 8 g f e f 1 (down) f2'. (home) c4 |||\n`;

  it('is drawn without measures that are counted, in semibreves without stems', async () => {
    const [page = ''] = await drawn(scoreOf(analysed(PRELUDE)));
    const heads = ofClass(pictureOf(page), 'notehead');
    expect(heads).toHaveLength(10);
    expect(ofClass(pictureOf(page), 'stem').filter(({ children }) => children.length > 0)).toHaveLength(4);
  });

  it('takes no more room where what its signs mean stands above it', async () => {
    const signed = PRELUDE.replace('c4 f 8', "c4'zz f 8").replace('system', 'signs anglebert-1689\nsystem');
    const distance = async (ornaments: 'sign' | 'above'): Promise<number> => {
      const [page = ''] = await drawn(scoreOf(analysed(signed)), { ornaments, layout: 'line' });
      const [from, to] = [await boxOf(page, NOTE, 'notehead'), await boxOf(page, 'e-1-1-dessus-1.2', 'notehead')];
      return to.left - from.left;
    };
    expect(await distance('above')).toBeCloseTo(await distance('sign'), 0);
  });

  it('has its curves from where a note begins to where the music reaches the other', async () => {
    const [page = ''] = await drawn(scoreOf(analysed(PRELUDE)));
    const curve = byId(page, `${NOTE}-u1`);
    expect(classOf(curve)).toBe('sign');
    const numbers = [...(curve.children[0]?.attributes.d ?? '').matchAll(/-?\d+/g)].map(Number);
    const [from, to] = [await boxOf(page, NOTE, 'notehead'), await boxOf(page, 'e-1-1-dessus-1.9', 'notehead')];
    expect(Math.min(...numbers.filter((_, i) => i % 2 === 0)) / 180).toBeGreaterThan(from.left);
    expect(Math.max(...numbers.filter((_, i) => i % 2 === 0)) / 180).toBeLessThan(to.left);
  });

  it('has no stub of a curve before the first note of a system, where it ends', async () => {
    const text = `bentside 1\nstave upper\nstave lower\nvoice dessus upper\nsystem free upper C1 lower F4
  dessus | (down) f2'u f3'u (home) c4\nsystem free\n  dessus | (down) 1 f2'. (home) c4'. |\n`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    // The curve that began last ends first.
    expect(byId(page, 'e-1-1-dessus-1.2-u1').children).toHaveLength(1);
    expect(byId(page, `${NOTE}-u1`).children).toHaveLength(2);
  });
});

describe('a straight line from a note to one under it', () => {
  const lineOver = async (taille: string) => {
    const text = `system upper G2 lower F4 meter C\n  dessus | 1 d5'line(h) |\n  taille | ${taille} |\n  basse | 1 g2'.(h) |\n`;
    const [page = ''] = await drawn(scoreOf(passage(text)));
    const boxes = await boxesIn(page);
    const [from, to] = [...(byId(page, `${NOTE}-u1`).children[0]?.attributes.d ?? '').matchAll(/(\d+) \d+/g)].map(
      ([, x]) => Number(x) / SPACE,
    );
    return { from, to, heads: boxes.filter(({ what }) => what === 'notehead' || what === 'rest') };
  };

  it('goes from middle to middle', async () => {
    const { from, to, heads } = await lineOver('__');
    expect(from).toBe(to);
    for (const { left, right } of heads) expect(from).toBeCloseTo((left + right) / 2, 1);
  });

  it.each(['1 f4', '1 r'])('passes by what stands between them: %s', async (taille) => {
    const { from, to, heads } = await lineOver(taille);
    expect(from).toBe(to);
    expect(heads).toHaveLength(3);
    for (const { right } of heads) expect(from).toBeGreaterThan(right);
  });
});
