/** What a lane says beyond notes: running through, groups of three, syllables, annotations, opening barlines. */
import { describe, expect, it } from 'vitest';
import { format } from '../../grammar/time';
import { codes, errors, eventsIn, lane, passage, scoreOf, sound } from '../helpers/music';

const C = 'system upper C1 lower F4 meter C\n';

describe('a note that runs through the barline', () => {
  it('may be followed by small notes', () => {
    expect(errors(lane("2 c5 1 d5'through {small 16 e5 f} | 2 g5"))).toEqual([]);
  });
  it('is the last of its bar', () => {
    expect(errors(lane("2 c5'through d"))).toEqual(['through-without-need']);
  });
  it('runs on in a loose system, where the barline stands within it', () => {
    const loose = passage(
      "system loose upper C1 lower F4 meter C\n dessus | 2 c5 1 d5'through | 2 e5 |||\n basse | 1 c3 | g |||\n",
    );
    expect(errors(loose)).toEqual([]);
    expect(scoreOf(loose).pieces[0]?.bars.map((bar) => format(bar.duration))).toEqual(['1', '1']);
  });
});

describe('values with x', () => {
  const groups = (music: string): string[] => {
    const seen = new Map<object, number>();
    for (const { event } of eventsIn(lane(music))) {
      for (const tuplet of event.tuplets) seen.set(tuplet, (seen.get(tuplet) ?? 0) + 1);
    }
    return [...seen].map(
      ([tuplet, count]) => `${count} in ${format((tuplet as { unit: { n: number; d: number } }).unit)}`,
    );
  };
  it('make one group though a note of it is divided', () => {
    expect(groups('8x c5 16x d e 8x f 2. g')).toEqual(['4 in 1/8']);
  });
  it('make one group though a note of it is dotted', () => {
    expect(groups('8.x c5 16x d 8x e 2. g')).toEqual(['3 in 1/8']);
  });
  it('make a group of a crotchet and a quaver', () => {
    expect(groups('4x c5 8x d 4x e 8x f 2 g')).toEqual(['2 in 1/8', '2 in 1/8']);
  });
});

describe('syllables', () => {
  const sung = (music: string): string =>
    eventsIn(passage(music))
      .map(({ event }) => event.syllable?.text ?? '.')
      .join(' ');
  it('stand on no note that is tied over a barline', () => {
    expect(sung(`${C} dessus | 1 c5= | 2 c5 d |||\n text | A- | men |||\n`)).toBe('A . men');
  });
  it('stand on no note that is tied over a system end', () => {
    expect(sung(`${C} dessus | 1 c5= |\n text | A- |\nsystem\n dessus | 2 c5 d |||\n text | men |||\n`)).toBe(
      'A . men',
    );
  });
  it('stand on the note after small notes', () => {
    expect(sung(`${C} dessus | 2 c5= {small 8 d5} c5 | 1 e5 |||\n text | A- | men |||\n`)).toBe('A . . men');
  });
  it('stand on no note tied into a second ending', () => {
    expect(sung(`${C} dessus | 1 c5= | (ending 1) 1 c5 :|| (ending 2) 2 c5 d |||\n text | A- | | men |||\n`)).toBe(
      'A . . men',
    );
  });
});

describe('an accidental', () => {
  it('does not reach over a repeat sign that opens a system', () => {
    const over = passage(`${C} dessus | 2 c5 c#5 |\nsystem\n dessus ||: 1 c5 :||\n`);
    expect(sound(over)).toBe('c5 c#5 c5');
  });
});

describe('a lone = after a rest', () => {
  it('is told, and so is the next one', () => {
    const alone = lane('4 r = = c5');
    expect(codes(alone).filter((code) => code === 'repeat-of-nothing')).toHaveLength(2);
    expect(eventsIn(alone).map(({ event }) => event.kind)).toEqual(['rest', 'rest', 'rest', 'note']);
  });
});

describe('an annotation', () => {
  const said = (list: readonly { annotation: { text?: string; ref?: string } }[] | undefined): string[] =>
    (list ?? []).map(({ annotation }) => annotation.ref ?? annotation.text ?? '');
  const N = 'note n1 : "blotted"\nnote n2 : "in another ink"\n';
  it('of a span reaches every note of it', () => {
    const spanned = passage(`${C} dessus | {unclear 2 c5 d}*n1 |||\n`, N);
    expect(eventsIn(spanned).map(({ event }) => said(event.spans[0]?.annotations))).toEqual([['n1'], ['n1']]);
  });
  it('of a tuplet reaches its notes', () => {
    const three = passage(`${C} dessus | {3in2 2 c5 d e}*n1 |||\n`, N);
    expect(said(eventsIn(three)[0]?.event.tuplets[0]?.annotations)).toEqual(['n1']);
  });
  it('of a place, and its reason, reach what is chosen there', () => {
    const place = passage(`${C} dessus | <v1*n1 K: 1 c5 ; L: 1 d5>*n2 |||\n`, N);
    expect(said(eventsIn(place)[0]?.event.chosen[0]?.annotations)).toEqual(['n1', 'n2']);
  });
  it('of an opening barline stands at the beginning of the bar', () => {
    const opened = passage(`${C} dessus |*n1 1 c5 |||\n`, N);
    expect(said(scoreOf(opened).pieces[0]?.bars[0]?.opening?.annotations)).toEqual(['n1']);
  });
});

describe('a named curve', () => {
  it('goes on over a system in which its voice has nothing', () => {
    const far = passage(`${C} dessus | 1 c5'u(q1) |\nsystem\n basse | 1 c3 |\nsystem\n dessus | 1 e5'.(q1) |||\n`);
    expect(errors(far)).toEqual([]);
  });
  it('may end in another voice', () => {
    expect(errors(passage(`${C} dessus | 1 c5'u(q1) |\nsystem\n basse | 1 c3'.(q1) |||\n`))).toEqual([]);
  });
});
